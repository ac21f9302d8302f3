package view

import "cartwright/optimize/plan"

// The rest of a plan in JSON: what stands on the cart, what is connected to it, its limits and its year.

type shelfRecord struct {
	Shelf     string               `json:"shelf"`
	Batteries []shelfModulesRecord `json:"batteries"`
	MassKg    float64              `json:"mass_kg"`
}

type shelfModulesRecord struct {
	Part    string `json:"part"`
	Modules int    `json:"modules"`
}

func shelfOf(s plan.Shelf) shelfRecord {
	return shelfRecord{s.Shelf, each(s.Batteries, func(m plan.ShelfModules) shelfModulesRecord { return shelfModulesRecord(m) }), s.MassKg}
}

type castersRecord struct {
	Part         string  `json:"part"`
	Count        int     `json:"count"`
	LoadEachKg   float64 `json:"load_each_kg"`
	RatingEachKg float64 `json:"rating_each_kg"`
}

type balanceRecord struct {
	CGHeightMM  float64 `json:"cg_height_mm"`
	TiltDeg     float64 `json:"tilt_deg"`
	RequiredDeg float64 `json:"required_deg"`
}

type circuitRecord struct {
	Circuit  string   `json:"circuit"`
	Leg      string   `json:"leg"`
	Loads    []string `json:"loads"`
	CurrentA float64  `json:"current_a"`
	DeviceA  float64  `json:"device_a"`
}

func circuitOf(c plan.Circuit) circuitRecord {
	r := circuitRecord(c)
	r.Loads = listed(c.Loads)
	return r
}

type legRecord struct {
	Load string `json:"load"`
	Leg  string `json:"leg"`
}

type limitRecord struct {
	Name    string  `json:"name"`
	Value   float64 `json:"value"`
	Limit   float64 `json:"limit"`
	Unit    string  `json:"unit"`
	Slack   float64 `json:"slack"`
	Binding bool    `json:"binding"`
}

// checksRecord is the outcome of the independent re-check.
type checksRecord struct {
	Passed bool          `json:"passed"`
	Checks []checkRecord `json:"checks"`
}

type checkRecord struct {
	Name   string  `json:"name"`
	Passed bool    `json:"passed"`
	Value  float64 `json:"value"`
	Limit  float64 `json:"limit"`
	Unit   string  `json:"unit,omitempty"`
	Source string  `json:"source"`
	Detail string  `json:"detail,omitempty"`
}

func checkOf(c plan.Check) checkRecord { return checkRecord(c) }

// yearRecord is what the sun's year comes to.
type yearRecord struct {
	Served        float64             `json:"served"`
	ShortH        float64             `json:"short_h"`
	LongestShortH float64             `json:"longest_short_h"`
	WallKWh       float64             `json:"wall_kwh"`
	SpilledKWh    float64             `json:"spilled_kwh"`
	ClippedKWh    float64             `json:"clipped_kwh"`
	SunKWh        float64             `json:"sun_kwh"`
	Cycles        float64             `json:"cycles"`
	Months        []monthEnergyRecord `json:"months"`
	Saved         *plan.Money         `json:"saved,omitempty"`
	PaybackYears  *float64            `json:"payback,omitempty"`
}

// monthEnergyRecord is a month's energy in kWh.
type monthEnergyRecord struct {
	Sun     float64 `json:"sun"`
	Load    float64 `json:"load"`
	Short   float64 `json:"short"`
	Spilled float64 `json:"spilled"`
}

func yearOf(y *plan.Year) *yearRecord {
	if y == nil {
		return nil
	}
	return &yearRecord{y.Served, y.ShortH, y.LongestShortH, y.WallKWh, y.SpilledKWh, y.ClippedKWh, y.SunKWh, y.Cycles,
		each(y.Months, func(m plan.Month) monthEnergyRecord { return monthEnergyRecord(m) }), y.Saved, y.PaybackYears}
}
