package catalog

// Cable is a cable of one size, bought by length.
type Cable struct {
	Part
	CentsPerM float64 // unrounded; a line of a bill is rounded to whole cents
	// LowCentsPerM and HighCentsPerM bound a price that is a guess, as PriceLow and PriceHigh of a Part;
	// both zero where the row states none.
	LowCentsPerM, HighCentsPerM float64
	KgPerM                      float64
	Size                        Size
	Material                    string  // "copper" or "aluminium"
	InsulationC                 float64 // 60, 70, 75, 90 or 105
	EndPrice                    Cents   // one crimped end
	GroundOnly                  bool    // green: for grounding conductors only
	Fine                        bool    // fine strands, for what moves; else strands of building wire
	OuterM                      float64 // outer diameter; 0: not stated
}

// Device is a fuse or a breaker.
type Device struct {
	Part
	Type            string // "fuse" or "breaker"
	Class           string
	RatingA         float64
	Poles           int
	MaxDCV          float64 // 0: not rated for direct current
	InterruptingDCA float64
	MaxACV          float64 // 0: not rated for alternating current
	InterruptingACA float64
	TerminalC       float64
	Polarised       Answer // whether it breaks direct current one way only
	Mount           string // what it is mounted on, in lower case: "plug-in", "rail", "bolted"; "": not stated
	Listed          Answer // whether a testing laboratory lists it for its use
}

// Busbar is a positive and negative pair of bus bars.
type Busbar struct {
	Part
	RatingA float64
	Studs   int
}

// Conduit is a tube or hose that conductors run in, bought by length.
type Conduit struct {
	Part
	CentsPerM                   float64 // unrounded, as of a Cable
	LowCentsPerM, HighCentsPerM float64
	KgPerM                      float64
	TradeSize                   string  // "3/4", "20 mm"
	Type                        string  // in lower case: "emt", "pvc-40", "flexible"
	InsideMM2                   float64 // the whole area inside, in mm2
	EndPrice                    Cents   // what one end of a run takes
}
