// Package model writes the integer program of a space of plans, solves it and reads the choice out of its
// solution.
package model

import (
	"math"
	"strconv"

	"cartwright/optimize/bench"
	"cartwright/optimize/choice"
	"cartwright/optimize/market"
	"cartwright/optimize/milp"
)

// program is an integer linear program over a space, with the variables to read a plan from.
type program struct {
	Bench  *bench.Bench
	Space  space
	Model  *milp.Model
	market *market.Market

	one     milp.Var   // 1: what is the same in every plan
	supply  []milp.Var // by Space.supplies: 1 if it is chosen
	strings []milp.Var // by Space.strings: how many
	present []milp.Var // by Space.strings: 1 if there are any
	buses   []*bus
	// byCurrent has the indices into Space.supplies, those with the same bus current together.
	byCurrent [][]int
	oneOf     map[string]milp.Expr // see anyOf
	busOf     []*bus               // by Space.strings
	stand     [][]milp.Var         // by Space.strings and shelf: modules
	slots     []slotVars
	many      *milp.Var        // see bothEnds; nil: not made yet
	special   []int            // the special articles that the space can use; see market.Article.Special
	bought    map[int]purchase // by special article

	Cost milp.Expr // in currency units
	Mass milp.Expr // in kg
}

// slotVars is a slot in the program: how many of it each option fills.
type slotVars struct {
	slot        market.Slot
	kind        choice.SlotKind
	of          int       // index into Space.strings for a string run, into Space.supplies for a main or feeder
	count       milp.Expr // how many have to be filled
	least, most int       // of count
	alike       int       // how many equal paths each of its options stands for; 0: one
	filling     []milp.Var
}

// Write writes the model of a space. Its objective is left to the caller.
func Write(b *bench.Bench, name string, sp space) *program {
	p := lay(b, name, sp)
	p.write()
	return p
}

// lay finds what there is to choose in a space.
func lay(b *bench.Bench, name string, sp space) *program {
	p := &program{Bench: b, Space: sp, Model: milp.New(name), market: sp.market, bought: map[int]purchase{}, oneOf: map[string]milp.Expr{}}
	if p.market == nil {
		p.market = b.Market
	}
	p.one = p.Model.Continuous("one", 1, 1)
	p.step(p.chooseSupply, p.chooseStrings, p.layBuses, p.layCurrents, p.laySlots, p.trim)
	return p
}

// write writes the rows.
func (p *program) write() {
	p.step(p.orderParts, p.fillSlots, p.standModules, p.carryLoads, p.talk, p.recharge, p.serve, p.breakFaults, p.haveMust,
		p.weigh, p.balance, p.payParts)
}

// step takes steps until writing is to end.
func (p *program) step(steps ...func()) {
	for _, step := range steps {
		if p.ended() {
			break
		}
		step()
	}
}

// ended reports whether writing is to stop; the program is then incomplete and of no use. Long steps ask at each slot.
func (p *program) ended() bool { return p.Space.ended != nil && p.Space.ended() }

// number names the i-th of several, counting from 1.
func number(i int) string { return strconv.Itoa(i + 1) }

// sum adds up coefficients times variables.
func sum(vars []milp.Var, coefficient func(i int) float64) milp.Expr {
	var e milp.Expr
	for i, v := range vars {
		if c := coefficient(i); c != 0 {
			e.Add(c, v)
		}
	}
	return e
}

// minus returns a - b.
func minus(a, b milp.Expr) milp.Expr {
	var e milp.Expr
	e.AddExpr(1, a)
	e.AddExpr(-1, b)
	return e
}

func one(int) float64 { return 1 }

// bySupply adds up a figure of the supply that is chosen.
func (p *program) bySupply(figure func(v *bench.Supply) float64) milp.Expr {
	return sum(p.supply, func(i int) float64 { return figure(&p.Bench.Supplies[p.Space.supplies[i]]) })
}

// byString adds up a figure of each string.
func (p *program) byString(figure func(k *bench.Stack) float64) milp.Expr {
	return sum(p.strings, func(i int) float64 { return figure(p.stack(i)) })
}

// stack returns the stack of the i-th string range.
func (p *program) stack(i int) *bench.Stack { return &p.Bench.Stacks[p.Space.strings[i].stack] }

// largestSupply returns the largest figure among the supplies of the space.
func (p *program) largestSupply(figure func(v *bench.Supply) float64) float64 {
	largest := math.Inf(-1)
	for _, i := range p.Space.supplies {
		largest = math.Max(largest, figure(&p.Bench.Supplies[i]))
	}
	return largest
}

func (p *program) chooseSupply() {
	least := 0.0
	if len(p.Space.supplies) == 1 {
		least = 1
	}
	for _, i := range p.Space.supplies {
		v := &p.Bench.Supplies[i]
		p.supply = append(p.supply, p.Model.Integer("supply "+number(i)+" "+v.Inverter.ID+" x"+strconv.Itoa(v.Units), least, 1))
	}
	if len(p.supply) > 1 {
		p.Model.Row("one supply", sum(p.supply, one), milp.Equal, 1)
	}
}

// chooseStrings makes the counts of strings. Strings of only one group may be present.
func (p *program) chooseStrings() {
	chosen := map[int]milp.Var{}
	var groups []milp.Var
	for i, r := range p.Space.strings {
		k := p.stack(i)
		p.strings = append(p.strings, p.Model.Integer("strings "+k.Battery.ID, float64(r.lo), float64(r.hi)))
		if r.lo > 0 {
			// Always present: a variable that says so keeps the rows the same in every space.
			p.present = append(p.present, p.Model.Integer("present "+k.Battery.ID, 1, 1))
			continue
		}
		z := p.Model.Binary("present " + k.Battery.ID)
		p.present = append(p.present, z)
		p.Model.Row("strings only if present "+k.Battery.ID, milp.Sum(milp.T(1, p.strings[i]), milp.T(-float64(r.hi), z)), milp.AtMost, 0)
		p.Model.Row("present only with strings "+k.Battery.ID, milp.Sum(milp.T(1, p.strings[i]), milp.T(-1, z)), milp.AtLeast, 0)
		g := k.Group
		if _, ok := chosen[g]; !ok {
			chosen[g] = p.Model.Binary("group " + number(g))
			groups = append(groups, chosen[g])
		}
		p.Model.Row("present only in the group "+k.Battery.ID, milp.Sum(milp.T(1, z), milp.T(-1, chosen[g])), milp.AtMost, 0)
	}
	if len(groups) > 0 {
		p.Model.Row("one group", sum(groups, one), milp.AtMost, 1)
	}
	p.Model.Row("some string", sum(p.strings, one), milp.AtLeast, 1)
}

// recharge requires that the chargers can give, and the strings can take, the energy of the autonomy in time. The
// lossiest battery present decides how much has to go in.
func (p *program) recharge() {
	if p.Bench.Scenario.Recharge == nil {
		return
	}
	lossless, least := p.drawn("charging current without loss", p.Bench.LosslessA)
	most := 0.0
	for i := range p.Space.strings {
		most = math.Max(most, least/p.stack(i).Battery.RoundTrip)
	}
	asked := p.Model.Continuous("charging current", 0, most)
	for i := range p.Space.strings {
		own := p.stack(i)
		e := milp.Sum(milp.T(1, asked))
		e.AddExpr(-1/own.Battery.RoundTrip, lossless)
		e.Add(-most, p.present[i])
		p.Model.Row("charging current of "+own.Battery.ID, e, milp.AtLeast, -most)
		e = minus(p.shared(i, own.ChargeA), milp.Sum(milp.T(1, asked)))
		e.Add(-most, p.present[i])
		p.Model.Row("recharge of the batteries "+own.Battery.ID, e, milp.AtLeast, -most)
	}
	p.Model.Row("recharge by the charger", minus(p.bySupply(func(v *bench.Supply) float64 { return v.ChargerA }), milp.Sum(milp.T(1, asked))), milp.AtLeast, 0)
}

// carryLoads requires the energy of the autonomy, and strings that can carry the bus current, continuously and for a
// moment.
func (p *program) carryLoads() {
	const kilo = 1000
	p.Model.Row("autonomy", minus(
		p.byString(func(k *bench.Stack) float64 { return k.UsableWh / kilo }),
		p.bySupply(func(v *bench.Supply) float64 { return v.NeedWh / kilo })), milp.AtLeast, 0)
	p.shareOut("share of the bus current", func(k *bench.Stack) float64 { return k.DischargeA }, func(v *bench.Supply) float64 { return v.DrawA })
	if !p.Bench.Partial {
		p.shareOut("share of the peak current", func(k *bench.Stack) float64 { return k.PeakA }, func(v *bench.Supply) float64 { return v.PeakA })
	}
}

// Shortfall is the negative of the usable energy in kWh: the objective where the most energy is wanted.
func (p *program) Shortfall() milp.Expr {
	const kilo = 1000
	return p.byString(func(k *bench.Stack) float64 { return -k.UsableWh / kilo })
}
