package search

import (
	"fmt"
	"strings"

	"cartwright/optimize/bench"
	"cartwright/optimize/model"
	"cartwright/optimize/question"
)

// count counts what was solved and proved, and passes the evidence to the witness.
func (r *ranking) count(c *bench.Core, a *model.Answer) {
	r.models += a.Solves
	r.proofs += a.Checked
	r.retries = append(r.retries, a.Retries...)
	if r.o.Witness == nil {
		return
	}
	for _, e := range a.Evidence {
		r.o.Witness(question.Proof{About: r.words(c), Evidence: e})
	}
}

// words describes a core.
func (r *ranking) words(c *bench.Core) string {
	var words []string
	for _, h := range c.Strings {
		stack := &r.b.Stacks[r.b.Groups[c.Group][h.Member]]
		words = append(words, fmt.Sprintf("%d x %s", h.N, stack.Battery.ID))
	}
	s := &r.b.Supplies[c.Supply]
	words = append(words, fmt.Sprintf("%d x %s", s.Units, s.Inverter.ID))
	if s.Array != nil {
		words = append(words, fmt.Sprintf("%d x %s", s.Array.Modules(), s.Array.Module.ID))
	}
	return strings.Join(words, ", ")
}
