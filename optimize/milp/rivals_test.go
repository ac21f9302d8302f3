package milp

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"cartwright/optimize/milp/mps"
)

// rivalAnswer is what another solver says of a model.
type rivalAnswer struct {
	// status is Proved, Infeasible, Unbounded (also where it only knows that the relaxation has no limit),
	// Stopped for out of time, GaveUp for a crash.
	status Status
	// objective is to be minimised, as in the file.
	objective float64
	values    []float64 // by column
}

// rivalLimit is the time a rival has for one model.
const rivalLimit = 60 * time.Second

// writeModels writes models into a folder as 0.mps, 1.mps...
func writeModels(dir string, models []*Model) error {
	for i, m := range models {
		var b bytes.Buffer
		if err := m.WriteMPS(&b); err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(dir, strconv.Itoa(i)+".mps"), b.Bytes(), 0o644); err != nil {
			return err
		}
	}
	return nil
}

// glpsol asks GLPK for each of the models in a folder. It reads one model a run.
func glpsol(ctx context.Context, dir string, models []*Model) ([]rivalAnswer, error) {
	answers := make([]rivalAnswer, len(models))
	for i, m := range models {
		seconds := strconv.Itoa(int(rivalLimit.Seconds()))
		cmd := exec.CommandContext(ctx, "glpsol", "--freemps", strconv.Itoa(i)+".mps", "--tmlim", seconds, "-w", "glpsol.sol")
		cmd.Dir = dir
		if _, err := cmd.CombinedOutput(); err != nil {
			answers[i].status = GaveUp // 5.0 fails an assertion of its own on a few models without bounds
			continue
		}
		data, err := os.ReadFile(filepath.Join(dir, "glpsol.sol"))
		if err != nil {
			return nil, err
		}
		if answers[i], err = readGLPK(string(data), len(m.cols)); err != nil {
			return nil, err
		}
	}
	return answers, nil
}

// readGLPK reads GLPK's own format: "s bas rows cols primal dual objective" or "s mip rows cols status
// objective", then "j column ... value" with the value last for mip, third for bas.
func readGLPK(text string, cols int) (a rivalAnswer, err error) {
	a.values = make([]float64, cols)
	valueAt := 2
	for line := range strings.Lines(text) {
		f := strings.Fields(line)
		switch {
		case len(f) == 0:
		case f[0] == "s" && f[1] == "mip":
			a.status = map[string]Status{"o": Proved, "n": Infeasible, "u": Unbounded, "f": Stopped}[f[4]]
			a.objective, err = strconv.ParseFloat(f[5], 64)
		case f[0] == "s" && f[1] == "bas":
			valueAt = 3
			a.status = map[string]Status{"f f": Proved, "f n": Unbounded}[f[4]+" "+f[5]] // primal, dual: feasible or none
			if a.status == 0 {
				a.status = Infeasible
			}
			a.objective, err = strconv.ParseFloat(f[6], 64)
		case f[0] == "j":
			var j int
			if j, err = strconv.Atoi(f[1]); err == nil && j <= cols { // beyond stands the constant
				a.values[j-1], err = strconv.ParseFloat(f[valueAt], 64)
			}
		}
		if err != nil {
			return a, fmt.Errorf("glpsol: %q: %w", line, err)
		}
	}
	return a, nil
}

// cbc asks COIN-OR's cbc for each of the models in a folder. One process could read many, but 2.10.8 then
// carries something over from one to the next: it answers nan, or crashes.
func cbc(ctx context.Context, dir string, models []*Model) ([]rivalAnswer, error) {
	answers := make([]rivalAnswer, len(models))
	for i, m := range models {
		// All gaps at 0: a rival that stops early proves nothing.
		cmd := exec.CommandContext(ctx, "cbc", strconv.Itoa(i)+".mps", "-ratioGap", "0", "-allowableGap", "0",
			"-sec", strconv.Itoa(int(rivalLimit.Seconds())), "-solve", "-solution", "cbc.sol")
		cmd.Dir = dir
		if _, err := cmd.CombinedOutput(); err != nil {
			answers[i].status = GaveUp
			continue
		}
		data, err := os.ReadFile(filepath.Join(dir, "cbc.sol"))
		if err != nil {
			return nil, err
		}
		if answers[i], err = readCBC(string(data), m); err != nil {
			return nil, err
		}
	}
	return answers, nil
}

// readCBC reads "Optimal - objective value 12.5", then "number name value cost" for what is not 0.
func readCBC(text string, m *Model) (a rivalAnswer, err error) {
	a.values = make([]float64, len(m.cols))
	names := map[string]int{}
	for j, n := range mps.UniqueNames(len(m.cols), mps.Constant, func(j int) string { return m.cols[j].name }) {
		names[n] = j
	}
	head, body, _ := strings.Cut(text, "\n")
	what, value, _ := strings.Cut(head, " - objective value ")
	switch {
	case what == "Optimal":
		a.status = Proved
	case strings.Contains(what, "nfeasible"):
		a.status = Infeasible
	case what == "Unbounded":
		a.status = Unbounded
	default:
		a.status = Stopped
	}
	if a.objective, err = strconv.ParseFloat(strings.TrimSpace(value), 64); err != nil {
		return a, fmt.Errorf("cbc: %q: %w", head, err)
	}
	for line := range strings.Lines(body) {
		f := strings.Fields(strings.TrimPrefix(strings.TrimSpace(line), "**"))
		if len(f) < 3 {
			continue
		}
		if j, ok := names[f[1]]; ok {
			if a.values[j], err = strconv.ParseFloat(f[2], 64); err != nil {
				return a, fmt.Errorf("cbc: %q: %w", line, err)
			}
		}
	}
	return a, nil
}

// compare says who is right about a model: nobody is wrong (""), we are, or the rival is. The better of
// two points is believed where it keeps every row when evaluated here.
func compare(m *Model, s Solution, a rivalAnswer) (ours, theirs string) {
	const rivalTol = 1e-6 // both rivals accept rows and integers that are off by this
	agree := func(x, y float64) bool { return math.Abs(x-y) <= 1e-5*math.Max(1, math.Abs(y)) }
	switch {
	case a.status == Stopped || a.status == GaveUp:
		return "", ""
	case !s.Status.HasPoint() && (a.status == Infeasible || a.status == Unbounded):
		return "", "" // the twin without an objective tells the two apart
	case s.Status.HasPoint() && a.status == Proved && agree(m.sign()*s.Objective, a.objective):
		return "", ""
	}
	// Their point, integers rounded: does it hold, and is it better than ours?
	rounded := make([]float64, len(a.values))
	for j, x := range a.values {
		if rounded[j] = x; m.cols[j].integer {
			rounded[j] = math.Round(x)
		}
	}
	holds := a.status == Proved && len(Violations(m, rounded, rivalTol)) == 0
	at := m.sign() * m.objectiveAt(rounded)
	said := fmt.Sprintf("we: %v %v %q; they: %v %v", s.Status, m.sign()*s.Objective, s.Retries, a.status, a.objective)
	switch {
	case holds && (!s.Status.HasPoint() && s.Status != Unbounded || s.Status.HasPoint() && at < m.sign()*s.Objective && !agree(m.sign()*s.Objective, at)):
		return said + ", and their point is good", ""
	case s.Status == Proved && a.status != Unbounded:
		return "", said + ", and our point is good"
	}
	return said + ", undecided", ""
}

// twin returns a model without its objective: it cannot be without limit, so that who calls it impossible
// says that there is no point at all.
func twin(m *Model) *Model {
	t := *m // shares variables and rows, of which none is added
	t.Minimize(Expr{})
	return &t
}

// have makes sure that a rival is installed.
func have(program string) error {
	if _, err := exec.LookPath(program); err != nil {
		return fmt.Errorf("%s is needed for this test; install it: apt-get install glpk-utils coinor-cbc", program)
	}
	return nil
}

// unbounded reports whether a model has a variable without one of its bounds: then a row may be off by anything, and
// what follows from it can't be proved.
func unbounded(m *Model) bool {
	for _, c := range m.cols {
		if math.IsInf(c.lo, 0) || math.IsInf(c.hi, 0) {
			return true
		}
	}
	return false
}
