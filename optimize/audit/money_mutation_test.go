package audit

import (
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// bill changes one line of the bill.
func bill(part, kind string, change func(l *plan.Line)) func(k *cart) {
	return func(k *cart) { change(k.line(part, kind)) }
}

var billMutations = append(stated([]mutation{
	mutated("cable by the piece", newFair, bill("c35", "cable", func(l *plan.Line) { l.Unit = "each" }), ruleLines),
	mutated("ends by the metre", newFair, bill("c35", "cable-end", func(l *plan.Line) { l.Unit = "m" }), ruleLines),
	mutated("a line twice", newFair, func(k *cart) {
		k.p.Bill = append(k.p.Bill, plan.Line{Part: "gg-10", Kind: "device", Unit: "each", UnitPrice: 4})
	}, ruleLines),
	mutated("part of a piece sold", newBarn, bill("old-inverter", "inverter", func(l *plan.Line) { l.Sell, l.Credit = 1.5, 22500 }), ruleLines, ruleCredit),
	mutated("more owned than installed", newBarn, func(k *cart) {
		k.s.Have[0].Count = 3
		k.line("slab", "battery").Have = 3
	}, ruleLines, rulePerKWh),
	mutated("a battery less on the bill", newFair, bill("block", "battery", func(l *plan.Line) { l.Quantity = 3 }), ruleQuantities),
	mutated("an end less on the bill", newFair, bill("c50", "cable-end", func(l *plan.Line) { l.Quantity = 15 }), ruleQuantities),
	mutated("a metre less on the bill", newBarn, bill("g12", "cable", func(l *plan.Line) { l.Quantity = 14 }), ruleQuantities),
	mutated("an inverter nobody installs", newBarn, func(k *cart) {
		k.s.Have[1].Sell = nil
		l := k.line("old-inverter", "inverter")
		l.Sell, l.Credit, l.Quantity, l.Have = 0, 0, 1, 1
	}, ruleQuantities, ruleCredit),
	mutated("free ends miscounted", newFair, func(k *cart) {
		k.p.Bill = append(k.p.Bill, plan.Line{Part: "c1.5", Kind: "cable-end", Unit: "each", Quantity: 11, Buy: 11})
	}, ruleQuantities),
	mutated("bought too few", newFair, bill("gg-125", "device", func(l *plan.Line) { l.Buy, l.Line = 1, 1800 }), ruleEnough, ruleSpend),
	mutated("bought too little", newFair, bill("c50", "cable", func(l *plan.Line) { l.Buy, l.Line = 3.99, 2195 }), ruleEnough, ruleSpend),
	mutated("a part that was to be kept", newBarn, func(k *cart) { k.s.Have[0].Count, k.s.Have[0].Keep = 3, true }, ruleKept, rulePerKWh),
	mutated("a kept part off the bill", newFair, func(k *cart) {
		k.s.Have = []scenarios.Holding{{PartID: "gg-125", Count: 3, Keep: true}}
	}, ruleKept),
	mutated("conduit by the piece", newBarn, bill("emt-3/4", "conduit", func(l *plan.Line) { l.Unit = "each" }), ruleLines),
	mutated("an end of conduit less on the bill", newBarn, bill("emt-3/4", "conduit-end", func(l *plan.Line) { l.Quantity = 3 }), ruleQuantities),
	mutated("a piece of the frame less on the bill", newFair, bill("tube-30", "section", func(l *plan.Line) { l.Quantity = 5 }), ruleQuantities),
	mutated("used more than owned", newBarn, func(k *cart) { k.s.Have[0].Count = 0 }, ruleOwned, rulePerKWh),
	mutated("used a cable that is not owned", newBarn, func(k *cart) { k.s.Have[2].Count = 1.4 }, ruleOwned),
	mutated("ends that are owned", newBarn, bill("g8", "cable-end", func(l *plan.Line) { l.Have, l.Buy, l.Line = 2, 14, 560 }), ruleOwned, ruleSpend),
	mutated("oversold", newBarn, bill("old-inverter", "inverter", func(l *plan.Line) { l.Sell, l.Credit = 3, 45000 }), ruleSold, ruleCredit),
	mutated("used and sold too", newBarn, bill("fuse-100", "device", func(l *plan.Line) { l.Sell, l.Credit = 1, 1000 }), ruleSold, ruleCredit),
	mutated("sold what is not for sale", newBarn, func(k *cart) {
		k.s.Have[1].Sell = nil
		k.line("old-inverter", "inverter").Credit = 0
	}, ruleSold, ruleCredit),
	mutated("sold one of what is not for sale", newBarn, func(k *cart) {
		k.s.Have[1].Sell = nil
		l := k.line("old-inverter", "inverter")
		l.Sell, l.Credit = 1, 0
	}, ruleSold, ruleCredit),
	mutated("credit a cent off", newBarn, func(k *cart) {
		k.line("old-inverter", "inverter").Credit++
		k.p.Credit++
		k.p.Cost--
	}, ruleCredits),
	mutated("cable sold at another price", newBarn, func(k *cart) {
		k.s.Have[2].Count = 3.5
		l := k.line("g8", "cable")
		l.Sell, l.Credit = 2, 241
		k.p.Credit += 241
		k.p.Cost -= 241
	}, ruleCredits, rulePerKWh, rulePerLife, ruleLimits),
}), []mutation{
	mutated("ends told as cable", newBarn, func(k *cart) { k.line("g1", "cable-end").Kind = "cable" },
		ruleLines, ruleQuantities, rulePrices),
}...)

var moneyMutations = stated([]mutation{
	mutated("another price", newFair, bill("gg-10", "device", func(l *plan.Line) { l.UnitPrice = 3.99 }), rulePrices, ruleAmount),
	mutated("another price of a metre", newFair, bill("c35", "cable", func(l *plan.Line) { l.UnitPrice = 4.11 }), rulePrices, ruleAmount),
	mutated("another price of an end", newFair, bill("c35", "cable-end", func(l *plan.Line) { l.UnitPrice = 0.81 }), rulePrices, ruleAmount),
	mutated("wrong vendor", newBarn, bill("split-3", "inverter", func(l *plan.Line) { l.Vendor = "Alder" }), rulePrices),
	mutated("no vendor", newBarn, bill("split-3", "inverter", func(l *plan.Line) { l.Vendor = "" }), rulePrices),
	mutated("vendor without an offer", newBarn, bill("brick", "battery", func(l *plan.Line) { l.Vendor = "Alder" }), rulePrices, ruleShipping),
	mutated("own price though there are offers", newBarn, bill("brick", "battery", func(l *plan.Line) {
		l.Vendor, l.UnitPrice, l.Line = "", 650, 65000
	}), rulePrices, ruleSpend, ruleShipping),
	mutated("quantity break not reached", newBarn, bill("slab", "battery", func(l *plan.Line) { l.UnitPrice, l.Line = 1100, 110000 }), rulePrices, ruleSpend),
	mutated("offer of a cable from a length on", newBarn, func(k *cart) { k.c.Offers[3].MinQty = 3.5 }, rulePrices),
	mutated("ends from a vendor", newBarn, bill("g1", "cable-end", func(l *plan.Line) { l.Vendor = "Birch" }), rulePrices),
	mutated("a part that went up", newBarn, func(k *cart) { k.part("bars-250").Price++ }, rulePrices),

	mutated("wrong cent", newBarn, func(k *cart) {
		k.line("panel-8", "sundry").Line++
		k.p.Spend++
		k.p.Cost++
	}, ruleAmount),
	mutated("half a cent rounded too far", newBarn, func(k *cart) {
		k.line("g1", "cable").Line -= 2 // 2437.5 cents
		k.p.Spend -= 2
		k.p.Cost -= 2
	}, ruleAmount),
	mutated("spend two cents off", newFair, func(k *cart) { k.p.Spend += 2; k.p.Cost += 2 }, ruleSpend, rulePerKWh, rulePerLife, ruleYearFigures),
	mutated("shipping left out", newBarn, func(k *cart) {
		k.p.Shipping, k.p.Tax, k.p.Cost = 9000, 32425, k.p.Cost-6000-420
	}, ruleShipping, rulePerKWh, rulePerLife, ruleLimits),
	mutated("shipping of each line", newBarn, func(k *cart) { k.c.Offers[3].Shipping = 6500 }, ruleShipping),
	mutated("tax off a cent", newBarn, func(k *cart) { k.p.Tax--; k.p.Cost-- }, ruleTax),
	mutated("tax of nothing", newFair, func(k *cart) { k.p.Tax += 2; k.p.Cost += 2 }, ruleTax, rulePerKWh, rulePerLife, ruleYearFigures),
	mutated("credit a cent off its lines", newBarn, func(k *cart) { k.p.Credit++; k.p.Cost-- }, ruleCredit),
	mutated("cost a cent off", newBarn, func(k *cart) { k.p.Cost-- }, ruleCost),
	mutated("cost per kWh misstated", newBarn, func(k *cart) { k.p.CostPerUsableKWh += 0.01 }, rulePerKWh),
	mutated("cost per lifetime kWh misstated", newBarn, func(k *cart) { k.p.CostPerLifetimeKWh += 0.0001 }, rulePerLife),
	mutated("age that ends it sooner", newBarn, func(k *cart) { k.battery("slab").CalendarYears = 20 }, rulePerLife),
	mutated("used less often", newBarn, func(k *cart) { k.s.UseDays = 100 }, rulePerLife),
	mutated("lifetime that nobody states", newBarn, func(k *cart) { k.battery("brick").CycleLife, k.battery("brick").CalendarYears = 0, 0 }, rulePerLife),

	mutated("limit not told", newBarn, func(k *cart) { k.p.Limits = k.p.Limits[1:] }, ruleLimits),
	mutated("limit told twice", newBarn, func(k *cart) { k.p.Limits = append(k.p.Limits, k.p.Limits[3]) }, ruleLimits),
	mutated("limit there is not", newFair, func(k *cart) { k.p.Limits[2].Name = "noise" }, ruleLimits),
	mutated("limit's value misstated", newFair, func(k *cart) { k.p.Limits[2].Value *= 1.0001 }, ruleLimits),
	mutated("limit misstated", newFair, func(k *cart) { k.p.Limits[2].Limit *= 1.0001 }, ruleLimits),
	mutated("limit's unit misstated", newFair, func(k *cart) { k.p.Limits[2].Unit = "VA" }, ruleLimits),
	mutated("what is left misstated", newFair, func(k *cart) { k.p.Limits[2].Slack *= 1.0001 }, ruleLimits),
	mutated("binding misstated", newFair, func(k *cart) { k.p.Limits[2].Binding = true }, ruleLimits),
	mutated("not binding misstated", newFair, func(k *cart) {
		full := slices.IndexFunc(k.p.Limits, func(l plan.Limit) bool { return l.Name == "bus bar studs" })
		k.p.Limits[full].Binding = false
	}, ruleLimits),
})

var budgetMutations = []mutation{
	mutated("quantity break reached with another part's pieces", newBarn, func(k *cart) {
		k.line("slab", "battery").UnitPrice = 1100
		k.c.Busbars[0].Price = 110000
		l := k.line("bars-250", "busbar")
		l.UnitPrice, l.Buy = 1100, 3
	}, rulePrices),
	mutated("quantity break reached with pieces of another price", newBarn, func(k *cart) {
		l := *k.line("slab", "battery")
		l.Quantity, l.Have, l.Buy, l.UnitPrice = 0, 0, 2, 1100 // from three on
		k.s.Limits.Budget *= 2
		k.p.Bill = append(k.p.Bill, l)
	}, rulePrices),
	mutated("budget broken by a cent", newBarn, func(k *cart) { k.s.Limits.Budget = 472058 - 50000 - 1 }, ruleBudget),
	mutated("nothing in hand", newBarn, func(k *cart) { k.s.Sold, k.s.Limits.Budget = 0, 458330 }, ruleBudget),
}

var harmlessMoney = append(stated([]mutation{
	mutated("half a cent either way", newFair, func(k *cart) {
		k.cable("c50").CentsPerM, k.line("c50", "cable").UnitPrice = 550.1, 5.501 // 2750.5 cents
	}),
	mutated("ends at the cable's vendor", newFair, func(k *cart) {
		k.part("c35").Vendor = "Oak"
		k.line("c35", "cable").Vendor, k.line("c35", "cable-end").Vendor = "Oak", "Oak"
	}),
	mutated("ends at no vendor's", newFair, func(k *cart) {
		k.part("c35").Vendor = "Oak"
		k.line("c35", "cable").Vendor = "Oak"
	}),
	mutated("the same offer dearer to ship", newBarn, func(k *cart) {
		k.c.Offers = append(k.c.Offers, catalog.Offer{PartID: "brick", Vendor: "Birch", Price: 64000, MinQty: 1, Shipping: 9000})
	}),
	mutated("the same offer from two on", newBarn, func(k *cart) {
		k.c.Offers = append(k.c.Offers, catalog.Offer{PartID: "brick", Vendor: "Birch", Price: 64000, MinQty: 2, Shipping: 1000})
	}),
	mutated("more bought than installed", newBarn, func(k *cart) {
		k.c.Offers[1].MinQty = 1.5
		k.c.Offers[1].Price = 57500
		l := k.line("slab", "battery")
		l.UnitPrice, l.Buy = 575, 2
	}),
	mutated("lengths rounded in their seventh digit", newFair, bill("c1.5", "cable", func(l *plan.Line) {
		l.Quantity, l.Buy = 20.400001, 20.399999
	})),
	mutated("a vendor whom nothing is bought from", newBarn, func(k *cart) {
		k.c.Offers = append(k.c.Offers, catalog.Offer{PartID: "old-inverter", Vendor: "Alder", Price: 50000, MinQty: 1, Shipping: 9500})
		k.line("old-inverter", "inverter").Vendor = "Alder"
	}),
	mutated("price of what is not bought", newBarn, bill("old-inverter", "inverter", func(l *plan.Line) { l.UnitPrice, l.Vendor = 1, "Elm" })),
	mutated("free ends on the bill", newFair, func(k *cart) {
		k.p.Bill = append(k.p.Bill, plan.Line{Part: "c1.5", Kind: "cable-end", Unit: "each", Quantity: 22, Buy: 22})
	}),
}), []mutation{
	mutated("budget to the cent", newBarn, func(k *cart) { k.s.Limits.Budget = 472058 - 50000 }),
	mutated("given away", newBarn, func(k *cart) {
		*k.s.Have[1].Sell = 0
		k.line("old-inverter", "inverter").Credit = 0
	}),
	mutated("a part that is kept and used", newBarn, func(k *cart) { k.s.Have[0].Keep = true }),
	mutated("owned twice", newBarn, func(k *cart) {
		k.s.Have[0].Count = 0.5
		k.s.Have = append(k.s.Have, k.s.Have[0])
	}),
}...)
