package view

import (
	"slices"
	"strings"

	"cartwright/optimize"
)

// cautions lists what to keep in mind: first what is said of this answer, then in one block what is always so.
func cautions(list []string) sheet {
	var own, always []string
	for _, c := range list {
		if slices.Contains(optimize.Cautions(), c) {
			always = append(always, c)
		} else {
			own = append(own, c)
		}
	}
	var s sheet
	if len(own) > 0 {
		s = append(s, section{title: "Cautions", bullets: own})
	}
	if len(always) > 0 {
		s = append(s, section{title: "Always", prose: []string{strings.Join(always, " ")}})
	}
	return s
}
