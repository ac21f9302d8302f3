package scenarios

import "slices"

// Keys returns every key that a scenario file may have, in any section.
func Keys() []string {
	return slices.Concat(topKeys, busKeys, loadKeys, rechargeKeys, cartKeys, frameKeys, deckItemKeys, shelfKeys,
		backboardKeys, limitKeys, runKeys, circuitKeys, receptacleKeys, needKeys, holdingKeys, moneyKeys, savingsKeys,
		solverKeys)
}
