// Package audit recomputes a finished plan from its parts: every limit, every stated figure and every
// cent, without a solver and without the model's code, so that a mistake of either cannot vouch for
// itself. It also judges what is installed on a cart today (Installed).
//
// What a plan claims is only read, never trusted: design currents, fault currents, counts, masses, the
// balance, the year and the bill are derived here from the core, the catalogue and the scenario. Value tables and
// single formulas of the trade come from the rooms wiring/nec, wiring/iec, energy/sun and scenarios/sky, which have
// their own tests against published examples; how they are put together is written here a second time. The places that
// chassis gives the modules in drawings are checked as a person would who looks at the shelf.
//
// Each check has a stable name; Rules lists them with what must hold and where that comes from. A check
// that holds for several things (every string, every line of the bill) is listed once, for the worst of
// them, and its detail says which. A check that does not apply (no push limit, no feeder) is not listed.
//
// Stated figures may be rounded to six significant digits; money may not be rounded at all. Tolerances
// are named in tolerance.go, each with what it guards.
//
// Left out: whether the plan is the cheapest (the solver's proof), whether prices are still good, and
// whether the parts are what their makers say.
package audit
