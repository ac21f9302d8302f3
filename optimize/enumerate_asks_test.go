package optimize_test

import (
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// option is what one way to wire a path takes, and what it asks of bond and load centre.
type option struct {
	takes []take
	asks  asks
}

// asks is what paths ask of a bond and a load centre, of one path or of all together.
type asks struct {
	poles    int                // of the branches' breakers
	strange  [mounts]bool       // by mount: some branch has a breaker of another
	feeding  [mounts]int        // by mount: poles of the feeders' breakers of it
	feedersA float64            // ratings of the feeders' devices
	bond     [materials]float64 // by material: the area in mm2 that the mains ask for; +Inf: none will do
	bonding  [materials]float64 // by material: the area in mm2 that there is
}

// The mounts of breakers and the materials of bonds in random problems.
const (
	mounts    = 2
	materials = 2
)

var (
	mountNames    = [mounts]string{"rail", "plug-in"}
	materialNames = [materials]string{"copper", "aluminium"}
)

// with returns what two paths ask together.
func (a asks) with(b asks) asks {
	a.poles += b.poles
	a.feedersA += b.feedersA
	for i := range mounts {
		a.strange[i] = a.strange[i] || b.strange[i]
		a.feeding[i] += b.feeding[i]
	}
	for i := range materials {
		a.bond[i], a.bonding[i] = max(a.bond[i], b.bond[i]), max(a.bonding[i], b.bonding[i])
	}
	return a
}

// within reports whether a asks no more than b.
func (a *asks) within(b *asks) bool {
	for i := range mounts {
		if a.strange[i] && !b.strange[i] || a.feeding[i] > b.feeding[i] {
			return false
		}
	}
	for i := range materials {
		if a.bond[i] > b.bond[i] || a.bonding[i] < b.bonding[i] {
			return false
		}
	}
	return a.poles <= b.poles && a.feedersA <= b.feedersA
}

// fits reports whether a load centre, where there is one, stands the feeders and takes all breakers.
func (w *wired) fits(centre *catalog.Sundry) bool {
	if centre == nil {
		return true
	}
	poles := w.asks.poles
	if m := slices.Index(mountNames[:], centre.Mount); m >= 0 {
		if w.asks.strange[m] {
			return false
		}
		poles += w.asks.feeding[m]
	}
	return reaches(centre.RatingA, w.asks.feedersA) && (centre.Spaces == 0 || poles <= centre.Spaces)
}

// bonded reports whether the bond, where there is one, is large enough for every main.
func (w *wired) bonded() bool {
	for m := range materials {
		if w.asks.bonding[m] > 0 {
			return reaches(w.asks.bonding[m], w.asks.bond[m])
		}
	}
	return true
}

// asksOf returns what an option asks of bond and load centre.
func (e *enumeration) asksOf(d wiring.Duty, o wiring.Option) asks {
	var a asks
	centre := slices.ContainsFunc(e.s.Needs, func(n scenarios.Need) bool { return n.Role == "load-centre" })
	breaker := o.Device != nil && o.Device.Type == "breaker"
	switch {
	case d.Kind == scenarios.RunBranch && centre:
		if breaker {
			a.poles = o.Device.Poles
			for m, name := range mountNames {
				a.strange[m] = o.Device.Mount != name
			}
		}
	case d.Kind == scenarios.RunFeeder && centre:
		if a.feedersA = d.OwnBreakerA; o.Device != nil {
			a.feedersA = o.Device.RatingA
		}
		for m, name := range mountNames {
			if breaker && o.Device.Mount == name {
				a.feeding[m] = o.Device.Poles
			}
		}
	case d.Kind == scenarios.RunMain && e.s.Run(scenarios.RunBond) != nil:
		for m, material := range materialNames {
			mm2, ok := wiring.BondMM2(e.rules, d, o, material)
			if a.bond[m] = mm2; !ok {
				a.bond[m] = math.Inf(1)
			}
		}
	case d.Kind == scenarios.RunBond:
		a.bonding[slices.Index(materialNames[:], o.Ground.Material)] = o.Ground.Size.AreaMM2()
	}
	return a
}
