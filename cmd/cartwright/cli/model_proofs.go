package cli

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"cartwright/catalog/problem"
	"cartwright/cmd/cartwright/view"
	"cartwright/optimize"
	"cartwright/optimize/milp/proofs"
	"cartwright/optimize/question"
)

// writeProofs ranks the plans of a problem and makes a folder of the proofs that the ranking rests on.
func (a *app) writeProofs(ctx context.Context, p question.Problem, by question.By, dir string) error {
	files := []proofs.File{{Name: "README.txt", Text: proofs.Readme}}
	var failed error
	count := 0
	witness := func(e question.Proof) {
		count++
		pair, err := proofs.Write(count, e.About, e.File, e.Certificate)
		failed = errors.Join(failed, err)
		files = append(files, pair[:]...)
	}
	r, err := optimize.Rank(ctx, p, question.Options{By: by, Witness: witness})
	if err = errors.Join(stopped(err), failed); err != nil {
		return err
	}
	if r.Solver.Status != question.Optimal && r.Solver.Status != question.Infeasible {
		return &outcome{code: codeUnproven, err: fmt.Errorf("the ranking ended with %q; no folder was made", r.Solver.Status),
			hint: "give it more time, for example --time-limit 10m"}
	}
	err = newFolder(dir, "proofs", func(whole string) error {
		for _, f := range files {
			if err := createFile(filepath.Join(whole, f.Name), f.Text); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	told := fmt.Sprintf("%s\n%s\nThe proofs are in %s; to check them again: cartwright model --check %s\n",
		view.Work(r.Solver), view.Besides, dir, dir)
	return a.print([]byte(view.Wrapped(told, a.screenWidth())))
}

// checkProofs checks a folder of proofs.
func (a *app) checkProofs(dir string) error {
	info, err := os.Stat(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return wrong("cartwright model --proofs "+dir+" makes it", "there is no folder %s", dir)
	case err != nil:
		return wrong("", "cannot read %s: %v", dir, err)
	case !info.IsDir():
		return wrong("name the folder", "%s is no folder", dir)
	}
	r, err := proofs.Check(os.DirFS(dir), dir)
	var mistakes *problem.Error
	switch {
	case errors.As(err, &mistakes):
		return &outcome{code: codeInput, err: err, hint: "\"cartwright model --proofs\" makes such a folder"}
	case err != nil:
		return wrong("make sure that it may be read", "cannot read %s: %v", dir, err)
	case len(r.Wrong) > 0:
		for _, w := range r.Wrong {
			fmt.Fprintln(a.stderr, w.Error())
		}
		return &outcome{code: codeDisagree, err: fmt.Errorf("%d of %d proofs do not hold", len(r.Wrong), len(r.Wrong)+r.Count()),
			hint: "make them anew: cartwright model --proofs FOLDER"}
	}
	text := fmt.Sprintf("%s, each checked in exact arithmetic.\n", view.Count(r.Count(), "proof", "proofs"))
	if r.Least > 0 {
		text += fmt.Sprintf("  %d: nothing costs less than the point found, to within %.2g\n", r.Least, r.Short)
	}
	if r.Above > 0 {
		text += fmt.Sprintf("  %d: nothing costs less than a limit\n", r.Above)
	}
	if r.Impossible > 0 {
		text += fmt.Sprintf("  %d: nothing is possible\n", r.Impossible)
	}
	return a.tell(text)
}
