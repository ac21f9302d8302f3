package optimize_test

import (
	"fmt"
	"testing"

	"cartwright/optimize/bench"
)

func TestZZ(t *testing.T) {
	p := Shopped(t, "cider-shed", 8, 200, 1)
	b, _ := bench.Lay(p, "", &bench.Before{})
	for _, s := range b.Fixed {
		fmt.Println(s.Name, len(s.Options))
	}
	for i, v := range b.Supplies {
		fmt.Println(v.Inverter.ID, v.Units, len(v.Main), len(v.Feeder))
		if i > 6 {
			break
		}
	}
	for _, k := range b.Stacks {
		fmt.Println(k.Battery.ID, len(k.Options))
	}
}
