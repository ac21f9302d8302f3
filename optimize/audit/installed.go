package audit

import (
	"fmt"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Report says how the owned parts make up a cart today, and whether that cart meets the scenario's limits.
type Report struct {
	Passed  bool         // nothing is missing and every check passed
	Parts   []Owned      // every owned part, in the order of a bill
	Core    plan.Core    // what is taken to be installed
	Runs    []OwnedRun   // the cable paths that can be wired from what is owned
	Shelves []plan.Shelf // where the modules stand
	Missing []string     // what is not owned at all
	Checks  []plan.Check
	// Notes say which searches were cut short, so that a better use of the parts may exist.
	Notes []string
}

// Owned is an owned part and what it is taken for.
type Owned struct {
	Part string
	Kind string
	Have float64
	Used float64
	Unit string // "each" or "m"
	As   string // what it is used as, in words; "spare" if it is not used
}

// OwnedRun is a number of equal cable paths wired from owned parts, and the checks they fail.
type OwnedRun struct {
	plan.Run
	Passed bool
	Failed []plan.Check
}

// Installed checks what is owned today against the scenario's limits, as if everything that can be was
// installed: every battery that fills a string, every unit of the inverter kind with most power, one
// pair of bus bars, one set of casters, and the sundries that are asked for. Owned cables and devices go to
// the cable paths so that as many as possible pass; a path for which nothing passes gets what comes
// nearest; modules are put on the shelves as low as possible. Money is not looked at.
//
// It returns an error for owned parts or loads that no reader accepts: a part that is not in the catalogue, a
// count that is not a number.
func Installed(s *scenarios.Scenario, c *catalog.Catalog) (Report, error) {
	in, err := newInstaller(s, c)
	if err != nil {
		return Report{}, err
	}
	in.installCore()
	in.installArray()
	in.hangLoads()
	in.installSingles()
	in.installSundries()
	in.installRuns()
	in.installModules()
	return in.report(), nil
}

// installer puts owned parts together into a plan and notes what is missing.
type installer struct {
	s       *scenarios.Scenario
	c       *catalog.Catalog
	x       *Auditor
	stock   *stock
	p       *plan.Plan
	owned   *tally
	left    *tally              // of owned
	as      map[string][]string // part -> what it is taken for
	missing []string
	notes   []string
	spare   []string // faults of the core: inverters that can't be installed with the others

	mostMatchings, mostPlacings int // bounds of the searches
}

func newInstaller(s *scenarios.Scenario, c *catalog.Catalog) (*installer, error) {
	if _, err := recordOf(s, newHookup(s).legs); err != nil {
		return nil, fmt.Errorf("audit: %w", err)
	}
	x := For(s, c)
	in := &installer{s: s, c: c, x: x, stock: x.stock, p: &plan.Plan{Core: plan.Core{Batteries: []plan.CoreBattery{}, Solar: []plan.CoreSolar{}}, Shelves: []plan.Shelf{}},
		owned: &tally{}, left: &tally{}, as: map[string][]string{}, missing: []string{},
		mostMatchings: mostMatchings, mostPlacings: mostPlacings}
	held := map[string]float64{}
	for _, h := range s.Have {
		if _, ok := in.stock.parts[h.PartID]; !ok {
			return nil, fmt.Errorf("audit: part %q is owned but not in the catalogue", h.PartID)
		}
		if !(h.Count >= 0 && h.Count <= mostCount) {
			return nil, fmt.Errorf("audit: %g of part %q cannot be owned; the count must be from 0 to %d", h.Count, h.PartID, mostCount)
		}
		held[h.PartID] += h.Count
	}
	for _, e := range c.All() {
		if count, ok := held[e.ID]; ok {
			in.owned.add(article{part: e.ID}, count)
			in.left.add(article{part: e.ID}, count)
		}
	}
	return in, nil
}

// count returns how many of a part are owned.
func (in *installer) count(part string) int { return int(in.owned.quantity[article{part: part}]) }

// use takes owned parts for a purpose and puts them on the bill.
func (in *installer) use(part string, quantity float64, as string) {
	x := article{part: part}
	in.left.quantity[x] -= quantity
	in.as[part] = append(in.as[part], as)
	for i := range in.p.Bill {
		if l := &in.p.Bill[i]; l.Part == part {
			l.Quantity += quantity
			return
		}
	}
	in.p.Bill = append(in.p.Bill, plan.Line{Part: part, Kind: string(in.stock.kinds[part]), Quantity: quantity})
}

// lack notes that something is not owned at all.
func (in *installer) lack(format string, args ...any) {
	in.missing = append(in.missing, fmt.Sprintf(format, args...))
}

// auditor returns an auditor of what has been put together so far.
func (in *installer) auditor() *auditor {
	a := in.x.of(in.p)
	a.recognise()
	return a
}

// report makes the checks and returns what was found.
func (in *installer) report() Report {
	a := in.auditor()
	a.findings = findings{} // parts were found in the catalogue one by one
	a.installed()
	a.none(ruleCore, in.spare)
	checks := a.audit()
	r := Report{
		Passed: checks.Passed && len(in.missing) == 0,
		Parts:  []Owned{}, Runs: []OwnedRun{},
		Core: in.p.Core, Shelves: in.p.Shelves, Missing: in.missing, Checks: checks.Checks, Notes: in.notes,
	}
	for _, x := range in.owned.order {
		r.Parts = append(r.Parts, in.ownedPart(x))
	}
	tasks := a.tasks()
	for i := range in.p.Runs {
		run := &in.p.Runs[i]
		t := taskOf(tasks, run)
		var of findings
		for _, c := range a.rule(t, run).checks {
			if !c.passed {
				of.passOn(t.kind, c, t.name()+": "+run.Cable)
			}
		}
		failed := of.audit().Checks
		r.Runs = append(r.Runs, OwnedRun{Run: *run, Passed: len(failed) == 0, Failed: failed})
	}
	return r
}

// ownedPart says what an owned part is used as.
func (in *installer) ownedPart(x article) Owned {
	o := Owned{
		Part: x.part, Kind: string(in.stock.kinds[x.part]), Have: in.owned.quantity[x], Unit: "each",
		Used: in.owned.quantity[x] - in.left.quantity[x], As: "spare",
	}
	if in.stock.byLength(x.part) {
		o.Unit = "m"
	}
	if as := in.as[x.part]; len(as) > 0 {
		o.As = list(as)
	}
	return o
}

// list joins what is said more than once into "2 x said", in the order first said.
func list(said []string) string {
	count := map[string]int{}
	for _, s := range said {
		count[s]++
	}
	text := ""
	for _, s := range said {
		n := count[s]
		if n == 0 {
			continue
		}
		count[s] = 0
		if text != "" {
			text += ", "
		}
		if n > 1 {
			text += fmt.Sprintf("%d x ", n)
		}
		text += s
	}
	return text
}
