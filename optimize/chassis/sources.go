package chassis

import (
	"cartwright/catalog/source"
	"cartwright/optimize/chassis/frame"
)

// Sources lists where the formulas and values of this room come from.
func Sources() []source.Source {
	return append([]source.Source{
		{
			Kind: source.Formula, Name: "modules on a shelf: whole columns of rows and layers, the better of two ways to turn them",
			Source: "plane geometry", Confidence: source.Definition,
		},
		{
			Kind: source.Rule, Name: "caster load: mass / (casters - 1), one wheel in the air, at most three carry",
			Source:     "caster handbooks and trade texts: three points define a plane",
			Confidence: "confirmed in five independent texts",
		},
		{
			Kind: source.Practice, Name: "caster factor 1.0-1.5 indoors, 1.5-2.2 outdoors, pushed by hand, together with casters - 1",
			Source:     "trade texts for the factors; the two together are practice",
			Confidence: source.OneText,
		},
		source.Habit("two opposite wheels of a stiff cart carry it all on an uneven floor: worth a caution"),
		{
			Kind: source.Formula, Name: "tipping: tan(tilt) = half the base / height of the centre of mass",
			Source:     "statics; Hibbeler, Engineering Mechanics, 14th ed., problem 11-43; Giancoli, Physics, 6th ed., problem 9-63",
			Confidence: source.TwoTexts,
		},
		{
			Kind: source.Formula, Name: "three wheels stand on a triangle: the distance of its sides, which run askew",
			Source: "plane geometry, the distance of a point from a line", Confidence: source.Definition,
		},
		source.Habit("offsets to the two sides are not set off against each other"),
		source.Habit("a module's mass is half the height of a full stack above the shelf, in the middle of the cart"),
		{
			Kind: source.Rule, Name: "equipment stands on a slope of 10 degrees in any direction",
			Source: "IEC 62368-1 (ed. 3), static stability", Confidence: source.TwoTexts,
		},
		{
			Kind: source.Table, Name: "rolling force 0.02 of the load on a hard level floor",
			Source:     "UK HSE, Manual handling, guidance L23 and INDG143",
			Confidence: "confirmed in HSE guidance, one origin",
		},
		{
			Kind: source.Formula, Name: "push force while rolling: (rolling + slope) · M · g",
			Source:     "UK HSE guidance as above, its example of 400 kg on 1 in 12",
			Confidence: "confirmed in HSE guidance, one origin",
		},
		{
			Kind: source.Formula, Name: "force to lift a wheel over a step: m g sqrt(2 r h - h²) / (r - h)",
			Source: "torques about the step's edge; Halliday and Resnick, Fundamentals of Physics, chapter 12", Confidence: source.OneText,
		},
		{
			Kind: source.Formula, Name: "braked wheels hold: grip · braked / casters · cos(slope) >= sin(slope)",
			Source: "Coulomb friction, the weight even on all wheels", Confidence: source.Definition,
		},
		{
			Kind: source.Practice, Name: "a lithium iron phosphate module of 5 kWh at 48 V weighs about 45 kg (examples only)",
			Source: "none", Confidence: source.CommonNotRead,
		},
		{
			Kind: source.Table, Name: "standard gravity 9.80665 m/s²",
			Source: "ISO 80000-3:2006, item 3-9.2; CODATA", Confidence: source.Definition,
		},
	}, frame.Sources()...)
}
