package catalog

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Size is a conductor size in its canonical spelling: "14 AWG" to "1 AWG", "1/0 AWG" to "4/0 AWG",
// "250 kcmil", "1.5 mm2". Value tables are keyed by it.
type Size string

// ParseSize reads a conductor size; spelling is free in case and spaces ("4/0awg", "35 MM2", "35 mm²").
func ParseSize(text string) (Size, error) {
	t := strings.ToLower(strings.ReplaceAll(strings.TrimSpace(text), " ", ""))
	t = strings.ReplaceAll(t, "mm²", "mm2")
	bad := func() (Size, error) {
		return "", fmt.Errorf("conductor size %q is not one; write for example 4/0 AWG, 250 kcmil or 35 mm2", text)
	}
	switch {
	case strings.HasSuffix(t, "awg"):
		g := strings.TrimSuffix(t, "awg")
		if n, ok := strings.CutSuffix(g, "/0"); ok {
			k, err := strconv.Atoi(n)
			if err != nil || k < 1 || k > 4 {
				return bad()
			}
			return Size(fmt.Sprintf("%d/0 AWG", k)), nil
		}
		k, err := strconv.Atoi(g)
		if err != nil || k < 1 || k > 36 {
			return bad()
		}
		return Size(fmt.Sprintf("%d AWG", k)), nil
	case strings.HasSuffix(t, "kcmil"):
		v, err := strconv.ParseFloat(strings.TrimSuffix(t, "kcmil"), 64)
		if err != nil || !(v > 0) || math.IsInf(v, 0) {
			return bad()
		}
		return Size(strconv.FormatFloat(v, 'f', -1, 64) + " kcmil"), nil
	case strings.HasSuffix(t, "mm2"):
		v, err := strconv.ParseFloat(strings.TrimSuffix(t, "mm2"), 64)
		if err != nil || !(v > 0) || math.IsInf(v, 0) {
			return bad()
		}
		return Size(strconv.FormatFloat(v, 'f', -1, 64) + " mm2"), nil
	}
	return bad()
}

// Metric reports whether the size is a nominal cross-section in mm2.
func (s Size) Metric() bool { return strings.HasSuffix(string(s), " mm2") }

// Gauge returns the wire gauge number n of ASTM B258, where 1/0 is 0 and 4/0 is -3, and whether the
// size is a gauge at all.
func (s Size) Gauge() (n int, ok bool) {
	g, ok := strings.CutSuffix(string(s), " AWG")
	if !ok {
		return 0, false
	}
	if k, zeros := strings.CutSuffix(g, "/0"); zeros {
		n, _ = strconv.Atoi(k)
		return 1 - n, true
	}
	n, _ = strconv.Atoi(g)
	return n, true
}

// AreaMM2 returns the conductor's cross-section in mm2: nominal for a metric size, by definition of the
// circular mil for kcmil, by the gauge formula for AWG.
//
//	d = 0.127 mm · 92^((36-n)/39)      ASTM B258
//	1 cmil = 5.067075e-4 mm2           definition
func (s Size) AreaMM2() float64 {
	if n, ok := s.Gauge(); ok {
		d := 0.127 * math.Pow(92, float64(36-n)/39)
		return math.Pi / 4 * d * d
	}
	number, unit, _ := strings.Cut(string(s), " ")
	v, _ := strconv.ParseFloat(number, 64)
	if unit == "kcmil" {
		return v * 1000 * 5.067075e-4
	}
	return v
}
