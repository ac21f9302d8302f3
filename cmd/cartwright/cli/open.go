package cli

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"cartwright/catalog"
	"cartwright/catalog/problem"
	"cartwright/optimize"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// open reads the scenario an argument names and the catalogue the scenario names, and checks one against
// the other. What is wrong with either is returned together. Every command that asks about a scenario
// begins here.
func (a *app) open(args []string) (question.Problem, error) {
	if err := optimize.CheckEngine(); err != nil {
		return question.Problem{}, wrong("leave it empty, or install lp_solve (Debian: lp-solve)", "%w", err)
	}
	where := "."
	if len(args) > 0 {
		where = args[0]
	}
	var mistakes problem.List
	s, err := a.scenario(where)
	if err := collect(&mistakes, err); err != nil {
		return question.Problem{}, err
	}
	p := question.Problem{Scenario: s}
	if s != nil {
		p.Catalog, err = readCatalog(s.CatalogDir, s.Dir)
		if err := collect(&mistakes, err); err != nil {
			return question.Problem{}, err
		}
	}
	if err := mistakes.Err(); err != nil {
		return question.Problem{}, err
	}
	if err := optimize.Check(p); err != nil {
		return question.Problem{}, err
	}
	a.warn(p.Scenario.Warnings, p.Catalog.Warnings)
	return p, nil
}

// warn tells of values that are possible but not plausible; they are used all the same.
func (a *app) warn(lists ...[]problem.Problem) {
	n := 0
	for _, list := range lists {
		for _, w := range list {
			fmt.Fprintln(a.stderr, w.Error())
		}
		n += len(list)
	}
	switch {
	case n == 1:
		fmt.Fprintln(a.stderr, "cartwright: warning: check the value above; it is used as it is")
	case n > 1:
		fmt.Fprintf(a.stderr, "cartwright: warning: check the %d values above; they are used as they are\n", n)
	}
}

// collect adds the mistakes that err holds to the list; any other error is returned.
func collect(list *problem.List, err error) error {
	var mistakes *problem.Error
	if !errors.As(err, &mistakes) {
		return err
	}
	for _, m := range mistakes.Problems {
		list.Add(m.Pos, m.Wrong, m.Right)
	}
	return nil
}

// scenario returns the demo of that name, else the scenario at that path. A demo's name means the demo even
// where a folder has the same name: ./name means the folder.
func (a *app) scenario(where string) (*scenarios.Scenario, error) {
	if slices.Contains(scenarios.DemoNames(), where) {
		if _, err := os.Stat(where); err == nil {
			fmt.Fprintf(a.stderr, "cartwright: hint: this is the demo %s; write %s for the folder\n",
				where, "."+string(filepath.Separator)+where)
		}
		return scenarios.Demo(where)
	}
	if _, err := os.Stat(where); errors.Is(err, os.ErrNotExist) && !strings.ContainsRune(where, filepath.Separator) {
		hint := "give a folder with a scenario.yaml, or a demo: " + strings.Join(scenarios.DemoNames(), ", ")
		if near := problem.Nearest(where, scenarios.DemoNames()); near != "" {
			hint = fmt.Sprintf("did you mean the demo %q?", near)
		}
		return nil, wrong(hint, "there is neither a demo nor a folder %q here", where)
	}
	return scenarios.Open(where)
}

// readCatalog returns the catalogue in the folder or workbook dir, which is relative to base, or the embedded one where
// dir is empty.
func readCatalog(dir, base string) (*catalog.Catalog, error) {
	if dir == "" {
		return catalog.Embedded(), nil
	}
	if !filepath.IsAbs(dir) {
		dir = filepath.Join(base, dir)
	}
	return catalog.Open(dir)
}
