package view

import (
	"fmt"
	"math"
	"strconv"

	"cartwright/catalog"
)

// kindTable says how the parts of one kind are listed.
type kindTable struct {
	kind    catalog.Kind
	title   string
	columns []column
	fill    func(Parts, *table)
}

// partKinds lists the kinds in the order of a bill, with masses and lengths in the units they are told in.
func partKinds(u units) []kindTable {
	kg, m, mm, perM := u.unit("kg"), u.unit("m"), u.unit("mm"), u.unit("kg/m")
	return []kindTable{
		{catalog.KindBattery, "Batteries, a module each", []column{text("id"), text("chemistry"), number("V"), number("kWh"),
			number("usable\n%"), number("most\nA"), number("cycles"), number(kg), number("price ")}, Parts.batteries},
		{catalog.KindInverter, "Inverters", []column{text("id"), text("AC\nV"), number("DC\nV"), number("steady\nW"), number("surge\nW"),
			number("effi-\nciency\n%"), number("idle\nW"), number("charge\nA"), number(kg), number("price ")}, Parts.inverters},
		{catalog.KindCable, "Cables, 1 " + m + " of one conductor", []column{text("id"), text("size"), text("material"),
			number("insulation\nC"), text("use"), number(perM), number("price/" + m + " "), number("one end")}, Parts.cables},
		{catalog.KindDevice, "Fuses and breakers", []column{text("id"), text("type"), text("class"), number("A"), number("poles"),
			number("DC\nV"), number("DC\nkA"), number("AC\nV"), number("AC\nkA"), number(kg), number("price ")}, Parts.devices},
		{catalog.KindBusbar, "Bus bars, a pair each", []column{text("id"), number("A"), number("studs"), number(kg), number("price ")},
			Parts.busbars},
		{catalog.KindCasters, "Casters, a set each", []column{text("id"), number("set of"), number("rated, each\n" + kg), number("brakes"),
			number("swivel"), number("wheel\n" + mm), number("set\n" + kg), number("price ")}, Parts.casters},
		{catalog.KindSolar, "Solar modules", []column{text("id"), number("W"), number("open\nV"), number("work\nV"), number("short\nA"),
			number("work\nA"), number(kg), number("price ")}, Parts.solar},
		{catalog.KindSundry, "Sundries", []column{text("id"), text("role"), number("A"), number("spaces"), number(kg), number("price ")},
			Parts.sundries},
		{catalog.KindConduit, "Conduits, 1 " + m, []column{text("id"), text("trade\nsize"), text("type"), number("inside\nmm2"), number(perM),
			number("price/" + m + " "), number("one end")}, Parts.conduits},
		{catalog.KindSection, "Sections for frames and rails, 1 " + m, []column{text("id"), text("shape"), number("width\n" + mm), number("height\n" + mm),
			number("wall\n" + mm), number("yield\nMPa"), number(perM), number("price/" + m + " ")}, Parts.sections},
	}
}

// common returns mass and price, the last columns of every table.
func (p Parts) common(part *catalog.Part) []string {
	return []string{fixed(p.units().figure(part.MassKg, "kg"), 2), price(fixed(part.Price.Units(), 2), part.Stale(p.AsOf))}
}

func (p Parts) batteries(t *table) {
	for i := range p.Catalog.Batteries {
		b := &p.Catalog.Batteries[i]
		t.row(append([]string{b.ID, b.Chemistry, short(b.NominalV, 1), fixed(b.CapacityWh/1000, 2),
			fixed(100*b.UsableFraction, 0), short(b.MaxDischargeA, 0), stated(b.CycleLife, 0)}, p.common(&b.Part)...)...)
	}
}

func (p Parts) inverters(t *table) {
	for i := range p.Catalog.Inverters {
		v := &p.Catalog.Inverters[i]
		t.row(append([]string{v.ID, v.ACV, short(v.DCMinV, 1) + "-" + short(v.DCMaxV, 1), short(v.ContinuousW, 0),
			short(v.SurgeW, 0), short(100*v.Efficiency, 1), short(v.IdleW, 1), stated(v.ChargerA, 0)}, p.common(&v.Part)...)...)
	}
}

func (p Parts) cables(t *table) {
	u := p.units()
	for i := range p.Catalog.Cables {
		c, use := &p.Catalog.Cables[i], "any"
		if c.GroundOnly {
			use = "ground"
		}
		t.row(c.ID, string(c.Size), c.Material, short(c.InsulationC, 0), use, fixed(u.figure(c.KgPerM, "kg/m"), 3),
			price(fixed(c.CentsPerM/100/u.figure(1, "m"), 2), c.Stale(p.AsOf)), fixed(c.EndPrice.Units(), 2))
	}
}

func (p Parts) devices(t *table) {
	for i := range p.Catalog.Devices {
		d := &p.Catalog.Devices[i]
		t.row(append([]string{d.ID, d.Type, d.Class, short(d.RatingA, 1), strconv.Itoa(d.Poles), stated(d.MaxDCV, 0),
			stated(d.InterruptingDCA/1000, 1), stated(d.MaxACV, 0), stated(d.InterruptingACA/1000, 1)}, p.common(&d.Part)...)...)
	}
}

func (p Parts) busbars(t *table) {
	for i := range p.Catalog.Busbars {
		b := &p.Catalog.Busbars[i]
		t.row(append([]string{b.ID, short(b.RatingA, 0), strconv.Itoa(b.Studs)}, p.common(&b.Part)...)...)
	}
}

func (p Parts) casters(t *table) {
	u := p.units()
	for i := range p.Catalog.Casters {
		c := &p.Catalog.Casters[i]
		t.row(append([]string{c.ID, strconv.Itoa(c.SetOf), short(u.figure(c.RatingKg, "kg"), 0), strconv.Itoa(c.Brakes),
			strconv.Itoa(c.Swivel), stated(u.figure(math.Round(1000*c.WheelM), "mm"), 1)}, p.common(&c.Part)...)...)
	}
}

func (p Parts) solar(t *table) {
	for i := range p.Catalog.Solar {
		s := &p.Catalog.Solar[i]
		t.row(append([]string{s.ID, short(s.Watts, 0), short(s.VocV, 1), short(s.VmpV, 1), short(s.IscA, 1),
			short(s.ImpA, 1)}, p.common(&s.Part)...)...)
	}
}

func (p Parts) sundries(t *table) {
	for i := range p.Catalog.Sundries {
		s := &p.Catalog.Sundries[i]
		t.row(append([]string{s.ID, s.Role, stated(s.RatingA, 1), stated(float64(s.Spaces), 0)}, p.common(&s.Part)...)...)
	}
}

func (p Parts) conduits(t *table) {
	u := p.units()
	for i := range p.Catalog.Conduits {
		c := &p.Catalog.Conduits[i]
		t.row(c.ID, c.TradeSize, c.Type, short(c.InsideMM2, 0), fixed(u.figure(c.KgPerM, "kg/m"), 2), price(fixed(c.CentsPerM/100/u.figure(1, "m"), 2), c.Stale(p.AsOf)),
			fixed(c.EndPrice.Units(), 2))
	}
}

func (p Parts) sections(t *table) {
	u := p.units()
	mm := func(m float64) float64 { return u.figure(1000*m, "mm") }
	for i := range p.Catalog.Sections {
		s := &p.Catalog.Sections[i]
		each := none + " "
		if s.CentsPerM > 0 {
			each = price(fixed(s.CentsPerM/100/u.figure(1, "m"), 2), s.Stale(p.AsOf))
		}
		t.row(s.ID, string(s.Shape), short(mm(s.WidthM), 2), stated(mm(s.HeightM), 2), stated(mm(s.WallM), 2),
			short(s.YieldPa/1e6, 0), fixed(u.figure(s.KgPerM, "kg/m"), 2), each)
	}
}

// offers lists the prices of vendors.
func (p Parts) offers() section {
	t := &table{columns: []column{text("part"), text("vendor"), number("from"), text("unit"), number("price "), number("shipping")}}
	u := p.units()
	for _, o := range p.Catalog.Offers {
		each, unit := o.Price.Units(), "each"
		if byLength(p.Catalog, o.PartID) {
			each, unit = o.CentsPerM/100/u.figure(1, "m"), "m"
		}
		t.row(o.PartID, o.Vendor, short(u.figure(o.MinQty, unit), 2), u.unit(unit), price(fixed(each, 2), o.Stale(p.AsOf)), fixed(o.Shipping.Units(), 2))
	}
	t.notes = []string{"Shipping is paid once for all that is bought from a vendor: the largest of the lines bought."}
	return section{title: fmt.Sprintf("Offers: %d", len(t.rows)), table: t}
}
