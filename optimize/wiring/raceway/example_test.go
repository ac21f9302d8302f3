package raceway_test

import (
	"fmt"

	"cartwright/catalog"
	"cartwright/optimize/wiring/raceway"
)

// Steel Tube Institute: 3 x 12, 4 x 10 and 8 x 8 AWG THWN take 0.4171 in2, which asks for EMT of 1 1/4 in (1.496 in2
// inside, 40 % of it 0.598; of 1 in, 0.864, 40 % are 0.346).
func ExampleAreaMM2() {
	sum := 0.0
	for size, n := range map[catalog.Size]float64{"12 AWG": 3, "10 AWG": 4, "8 AWG": 8} {
		mm2, _ := raceway.AreaMM2(&catalog.Cable{Size: size})
		sum += n * mm2 / (25.4 * 25.4)
	}
	fill := raceway.Fill(15, false)
	fmt.Printf("%.4f in2; 1 in: %v, 1 1/4 in: %v\n", sum, sum <= fill*0.864, sum <= fill*1.496)
	// Output: 0.4171 in2; 1 in: false, 1 1/4 in: true
}
