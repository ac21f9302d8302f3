package year

import "cartwright/catalog/source"

// Sources lists where the rules of this room come from.
func Sources() []source.Source {
	return []source.Source{
		{
			Kind: source.Formula, Name: "served share: 1 - energy short / energy asked for, in energy and not in hours",
			Source: "loss-of-load probability in its energy form", Confidence: source.ThreeTexts,
		},
		{
			Kind: source.Formula, Name: "store through the hours: charge min(surplus, limit, room), give min(need, store)",
			Source: "an open solar course, exercise 18", Confidence: source.OneText,
		},
		{
			Kind: source.Formula, Name: "least store: Newton's method on what is short; lossless it is the sequent peak",
			Source:     "Thomas and Burden (1963); Loucks and van Beek, Water Resource Systems Planning and Management, ch. 11",
			Confidence: source.TwoTexts,
		},
		{
			Kind: source.Formula, Name: "cycles: energy drawn over usable capacity",
			Source: "equivalent full cycles", Confidence: source.ThreeTexts,
		},
		source.Habit("a year of hours goes round: its store ends as it began"),
		source.Habit("saved is what the wall's energy would have cost for what is served; payback is cost over saved, at unchanged prices"),
	}
}
