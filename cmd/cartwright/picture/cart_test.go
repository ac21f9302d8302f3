package picture

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/picture/scene"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// An array on the cart is neither counted to the board nor drawn so that the cart is lost under it.
func TestAnArrayOnTheCart(t *testing.T) {
	q, _ := demo(t, "goat-dairy")
	ground, low := q.boardKg(), Cart(q)
	s, p := *q.Scenario, *q.Plan
	sun := *s.Sun
	sun.OnCart, sun.HeightM = true, 1.6
	s.Sun = &sun
	on := &Subject{Scenario: &s, Catalog: q.Catalog, Plan: &p, Units: q.Units}
	kg := on.arrayKg()
	if kg < 50 {
		t.Fatalf("%v kg of solar modules", kg)
	}
	p.MassKg += kg
	if got := on.boardKg(); math.Abs(got-ground) > 1e-9 {
		t.Errorf("the board has %v kg, %v kg where the modules are on the ground", got, ground)
	}
	high := Cart(on)
	legible(t, "an array on the cart", high)
	widest := func(s *scene.Scene) float64 { // of the largest battery module
		most := 0.0
		for _, m := range s.Paths {
			if path, ok := m.(scene.Path); ok && path.Closed && path.Pen == outline() && len(path.Points) == 4 && path.Fill == scene.Paper {
				most = math.Max(most, path.Points[1].X-path.Points[0].X)
			}
		}
		return most
	}
	if small, large := widest(high), widest(low); small < large/2 {
		t.Errorf("under the array the modules are %v wide, without it %v", small, large)
	}
}

// What the wheels carry adds up to the cart, and more of it is on the side of what stands to one side.
func TestSidewaysIsWhereTheWeightIs(t *testing.T) {
	s := &scenarios.Scenario{Cart: scenarios.Cart{TrackM: 0.6, Backboard: scenarios.Backboard{OffsetM: 0.2}}}
	q := &Subject{Scenario: s, Catalog: &catalog.Catalog{}, Plan: &plan.Plan{MassKg: 100}}
	s.Cart.Frame = scenarios.Mass{MassKg: 60}
	if got := q.sidewaysM(); math.Abs(got-40*0.2/100) > 1e-12 {
		t.Errorf("the centre is %v m to the side, want 0.08", got)
	}
}
