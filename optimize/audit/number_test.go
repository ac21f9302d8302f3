package audit

import (
	"fmt"
	"reflect"
	"strconv"

	"cartwright/optimize/plan"
)

// number is one number of a plan, to be read and changed.
type number struct{ v reflect.Value }

func (n number) float() bool { return n.v.Kind() == reflect.Float64 }

func (n number) get() float64 {
	if n.float() {
		return n.v.Float()
	}
	return float64(n.v.Int())
}

func (n number) set(x float64) {
	if n.float() {
		n.v.SetFloat(x)
		return
	}
	n.v.SetInt(int64(x))
}

// eachNumber visits every number of a plan but those of its audit; eachText every text.
func eachNumber(p *plan.Plan, visit func(path string, n number)) {
	walk(reflect.ValueOf(p).Elem(), "", func(path string, v reflect.Value) {
		switch v.Kind() {
		case reflect.Float64, reflect.Int, reflect.Int64:
			visit(path, number{v})
		}
	})
}

func eachText(p *plan.Plan, visit func(path string, get func() string, set func(string))) {
	walk(reflect.ValueOf(p).Elem(), "", func(path string, v reflect.Value) {
		if v.Kind() == reflect.String {
			visit(path, v.String, v.SetString)
		}
	})
}

func walk(v reflect.Value, path string, visit func(path string, v reflect.Value)) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if name := v.Type().Field(i).Name; name != "Audit" {
				walk(v.Field(i), path+"."+name, visit)
			}
		}
	case reflect.Pointer:
		if !v.IsNil() {
			walk(v.Elem(), path, visit)
		}
	case reflect.Slice:
		for i := range v.Len() {
			walk(v.Index(i), fmt.Sprintf("%s[%d]", path, i), visit)
		}
	default:
		visit(path, v)
	}
}

// sixSignificant rounds to six significant digits.
func sixSignificant(x float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 6, 64), 64)
	if err != nil {
		panic(err)
	}
	return r
}
