package scenarios

import "strings"

// groups are the groups of keys of a scenario's file, in its order: where each stands, and its keys.
var groups = []struct {
	path string // "cart.shelves[]." stands before the keys of each shelf
	keys []string
}{
	{"", topKeys}, {"bus.", busKeys}, {"loads[].", loadKeys}, {"recharge.", rechargeKeys},
	{"recharge.supply.", supplyKeys}, {"use.", useKeys}, {"cart.", cartKeys}, {"cart.frame.", frameKeys},
	{"cart.frame.pieces[].", pieceKeys}, {"cart.deck_items[].", deckItemKeys}, {"cart.shelves[].", shelfKeys},
	{"cart.shelves[].rails.", railKeys}, {"cart.backboard.", backboardKeys}, {"limits.", limitKeys}, {"cable.", cableKeys},
	{"runs[].", runKeys}, {"circuits[].", circuitKeys}, {"circuits[].receptacle.", receptacleKeys}, {"needs[].", needKeys},
	{"have[].", holdingKeys}, {"sun.", sunKeys}, {"sun.room.", roomKeys}, {"money.", moneyKeys}, {"savings.", savingsKeys}, {"solver.", solverKeys},
}

// Keys returns the paths of all keys that a scenario's file may have and that hold a value, for example
// "cart.shelves[].rails.span", in the order they are best written. Keys that hold other keys are not among them.
func Keys() []string {
	holds := map[string]bool{}
	for _, g := range groups {
		holds[strings.TrimSuffix(strings.TrimSuffix(g.path, "."), "[]")] = true
	}
	var paths []string
	for _, g := range groups {
		for _, key := range g.keys {
			if !holds[g.path+key] {
				paths = append(paths, g.path+key)
			}
		}
	}
	return paths
}
