package energy

import "cartwright/scenarios"

// part is one load's part of something shared: volt-amperes of an inverter or a leg, amperes of a circuit.
type part struct {
	list   int     // index of the OneAtATime list the load is on; -1: none
	amount float64 // with all its units on
	start  float64 // on top of amount while one unit starts
}

// peaks adds up what can be on together: the largest part of each list, and every part that is on none. Surge is the
// most that can be on with one load's start on top, where that load stands for its list.
//
//	peak = sum of what is on no list + sum over the lists of their largest
//	surge = max over the loads of (peak with that load standing for its list + its start)
//
// That two motors do not start in the same moment is common practice, no source.
func peaks(parts []part, lists int) (peak, surge float64) {
	var few [4]float64
	largest := few[:min(lists, len(few))]
	if lists > len(few) {
		largest = make([]float64, lists)
	}
	for _, p := range parts {
		if p.list < 0 {
			peak += p.amount
		} else {
			largest[p.list] = max(largest[p.list], p.amount)
		}
	}
	for _, most := range largest {
		peak += most
	}
	surge = peak
	for _, p := range parts {
		own := 0.0
		if p.list >= 0 {
			own = p.amount - largest[p.list]
		}
		surge = max(surge, peak+own+p.start)
	}
	return peak, surge
}

// listOf returns for each load the index of the OneAtATime list it is on; -1 for none.
func listOf(s *scenarios.Scenario) []int {
	lists := make([]int, len(s.Loads))
	for i := range lists {
		lists[i] = -1
	}
	for k, list := range s.OneAtATime {
		for _, i := range list {
			if i >= 0 && i < len(lists) {
				lists[i] = k
			}
		}
	}
	return lists
}

// voltAmperes returns the apparent power of a load with all its units on.
//
//	S = P / power factor      definition of the power factor, IEC 60050-131-11-46 (from memory)
func voltAmperes(l *scenarios.Load) float64 { return peakW(l) / powerFactor(l) }

// startVA returns the volt-amperes one unit of a load takes on top while it starts.
func startVA(l *scenarios.Load) float64 {
	if l.Count < 1 {
		return 0
	}
	return max(0, (l.Start-1)*l.Watts/powerFactor(l))
}

// powerFactor returns a load's power factor; 1 where a load made in code states none.
func powerFactor(l *scenarios.Load) float64 {
	if l.PowerFactor > 0 {
		return l.PowerFactor
	}
	return 1
}
