package catalog

import "fmt"

func castersPart(c *Casters) *Part { return &c.Part }

var castersTable = table[Casters]{
	file: "casters.csv",
	pos:  posOf(castersPart),
	columns: common(castersPart, each(castersPart),
		count("set_of", 1, maxWheels, func(c *Casters) *int { return &c.SetOf }).or("4"),
		number("rating_kg", kilograms, positive, func(c *Casters) *float64 { return &c.RatingKg }).must(),
		wheels("brakes", func(c *Casters) *int { return &c.Brakes }).or("0"),
		wheels("swivel", func(c *Casters) *int { return &c.Swivel }).or("0"),
		number("wheel_mm", millimetres, zeroToo, func(c *Casters) *float64 { return &c.WheelM }).or("0"),
	),
	rules: append(eachRange(castersPart),
		atMostSet("brakes", func(c *Casters) int { return c.Brakes }),
		atMostSet("swivel", func(c *Casters) int { return c.Swivel }),
	),
}

// atMostSet is the rule that no more wheels have something than there are.
func atMostSet(name string, wheels func(*Casters) int) rule[Casters] {
	return rule[Casters]{name, []string{"set_of"}, func(c *Casters, at func(string) entry) *flaw {
		if wheels(c) <= c.SetOf {
			return nil
		}
		return &flaw{fmt.Sprintf("%s %s is more than the %d wheels of the set", at(name).header, at(name).text, c.SetOf),
			"count the wheels of the set that have it"}
	}}
}

func sundryPart(s *Sundry) *Part { return &s.Part }

var sundryTable = table[Sundry]{
	file: "sundries.csv",
	pos:  posOf(sundryPart),
	columns: common(sundryPart, each(sundryPart),
		text("role", "a word, for example shunt, disconnect, load-centre or receptacle",
			func(s *Sundry) *string { return &s.Role }).must(),
		number("rating_a", amperes, zeroToo, func(s *Sundry) *float64 { return &s.RatingA }).blankZero(),
		count("spaces", 0, maxCount, func(s *Sundry) *int { return &s.Spaces }).blankZero(),
		word("mount", mountWords, func(s *Sundry) *string { return &s.Mount }),
		number("volume_ml", millilitres, positive, func(s *Sundry) *float64 { return &s.VolumeM3 }).blankZero(),
	),
	rules: eachRange(sundryPart),
}
