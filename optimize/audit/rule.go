package audit

import "slices"

// A Rule is one check of the audit: its name, what must hold, and where that comes from.
type Rule struct {
	Name   string // stable; of the checks of cable paths it begins with the kind of path
	Unit   string // of value and limit; "" for a number of things and for money, which is in the currency
	Holds  string // what must hold
	Source string // of the limit; "" where each check names the table or clause of the rule set
}

// Rules lists every check there is, in the order in which an audit lists them.
func Rules() []Rule {
	return slices.Concat(figureRules, coreRules, hookupRules, supplyRules, rechargeRules, arrayRules, yearRules, runRules(),
		roleRules, busbarRules, shelfRules, balanceRules, needRules, billRules, priceRules, costRules, limitRules)
}

// ruleAt finds a rule's place in Rules by its name.
var ruleAt = func() map[string]int {
	at := map[string]int{}
	for i, r := range Rules() {
		at[r.Name] = i
	}
	return at
}()

var allRules = Rules()

// The sources that several rules share.
const (
	fromParts    = "recomputed from the parts"
	fromScenario = "the scenario's own limit"
	fromMaker    = "the maker's limit, in the catalogue"
	practice     = "common practice, no source"
)
