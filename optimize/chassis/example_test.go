package chassis_test

import (
	"fmt"

	"cartwright/catalog"
	"cartwright/optimize/chassis"
	"cartwright/scenarios"
)

const poundKg = 0.45359237 // kg, the international avoirdupois pound, by definition

// A caster handbook: 3000 lb on four casters with a safety factor of 1.33 takes 997.5 lb each, "about
// 1000"; 1.33 is 4/3, which makes a quarter of the load as large as the third that is used here;
// confirmed in 1 text.
func ExampleCasterLoadKg_threeThousandPounds() {
	fmt.Printf("%.0f lb\n", chassis.CasterLoadKg(3000*poundKg, 1, 4)/poundKg)
	fmt.Printf("%.1f lb\n", chassis.CasterLoadKg(3000*poundKg, 1.33*3/4, 4)/poundKg)
	// Output:
	// 1000 lb
	// 997.5 lb
}

// A caster handbook: 300 kg on four casters, divided by three: 100 kg each; confirmed in 1 text.
func ExampleCasterLoadKg_threeHundredKilograms() {
	fmt.Printf("%.0f kg\n", chassis.CasterLoadKg(300, 1, 4))
	// Output: 100 kg
}

// UK HSE guidance on pushing and pulling: 200 kg on a level floor take 4 kgf (confirmed in 1 text),
// 400 kg take 8 kgf, and on a slope of 1 in 12 more than 30 kgf (both in HSE's own text, one origin).
func ExamplePushN_healthAndSafetyExecutive() {
	kgf := func(newtons float64) float64 { return newtons / chassis.StandardGravity }
	fmt.Printf("%.0f kgf\n", kgf(chassis.PushN(200, chassis.RollingCoefficient, 0)))
	fmt.Printf("%.0f kgf\n", kgf(chassis.PushN(400, chassis.RollingCoefficient, 0)))
	fmt.Printf("%.1f kgf\n", kgf(chassis.PushN(400, chassis.RollingCoefficient, 1.0/12)))
	// Output:
	// 4 kgf
	// 8 kgf
	// 41.3 kgf
}

// Hibbeler, Engineering Mechanics: Statics and Dynamics, 14th ed., problem 11-43: a truck of 20 Mg with
// its mass centre 3.5 m up and its wheels 1.5 m to either side stands across a slope of at most 23.2
// degrees; confirmed in 1 text and recomputed.
func ExampleTilt_hibbelerProblem1143() {
	h, tilt := chassis.Tilt([]chassis.Body{{MassKg: 20000, HeightM: 3.5}}, chassis.Rectangle(2*1.5, 10))
	fmt.Printf("%.1f m, %.1f degrees\n", h, tilt)
	// Output: 3.5 m, 23.2 degrees
}

// Giancoli, Physics: Principles with Applications, 6th ed., problem 9-63: a truck 2.4 m wide with its
// centre of gravity 2.2 m up stands across a slope of 29 degrees. The question is confirmed in 2 texts,
// the printed answer is from memory and recomputed: 28.6.
func ExampleTilt_giancoliProblem963() {
	_, tilt := chassis.Tilt([]chassis.Body{{MassKg: 1, HeightM: 2.2}}, chassis.Rectangle(2.4, 10))
	fmt.Printf("%.0f degrees\n", tilt)
	// Output: 29 degrees
}

// Six lithium iron phosphate modules of 5 kWh at 48 V, about 45 kg each (common practice, no source),
// fill two shelves of a light frame: each of four casters must carry 132 kg, and the cart stands on
// more than the 10 degrees of IEC 62368-1.
func ExampleTilt_cart() {
	module := &catalog.Battery{Part: catalog.Part{MassKg: 45}, HeightM: 0.16}
	low, high := &scenarios.Shelf{ElevationM: 0.2}, &scenarios.Shelf{ElevationM: 0.45}
	bodies := []chassis.Body{{MassKg: 46, HeightM: 0.4}} // the frame
	for range 3 {
		bodies = append(bodies, chassis.ModuleBody(low, module), chassis.ModuleBody(high, module))
	}
	h, tilt := chassis.Tilt(bodies, chassis.Rectangle(0.6, 0.9))
	fmt.Printf("%.0f kg on each caster\n", chassis.CasterLoadKg(chassis.MassKg(bodies), 1.25, 4))
	fmt.Printf("centre of mass %.0f mm up, stands on %.1f degrees\n", 1000*h, tilt)
	// Output:
	// 132 kg on each caster
	// centre of mass 404 mm up, stands on 36.6 degrees
}

// Halliday and Resnick: a wheel of 0.8 kg and 6 cm over a step of 3 cm takes 13.6 N.
func ExampleStepN() {
	fmt.Printf("%.1f N\n", chassis.StepN(0.8, 0.06, 0.03))
	// Output: 13.6 N
}

// A cart of 300 kg with two braked wheels of four, grip 0.5: by statics it holds a slope of 25 %.
func ExampleHeldSlope() {
	fmt.Printf("%.0f %%\n", 100*chassis.HeldSlope(0.5, 2, 4))
	// Output: 25 %
}
