package cli

import (
	"context"
	"errors"
	"fmt"

	"cartwright/cmd/cartwright/page/planner"
	"cartwright/cmd/cartwright/page/shop"
)

// pageFile writes the page as one file. The scenario and its parts have no mistakes: whoever gets the file is to see a plan.
func (a *app) pageFile(ctx context.Context, args []string, path string) error {
	if err := checkHTML("--file", path); err != nil {
		return err
	}
	p, err := a.open(args)
	if err != nil {
		return err
	}
	about, err := a.pageFiles(args)
	if err != nil {
		return err
	}
	bundle, err := about.Bundle()
	if err != nil {
		return err
	}
	if !shop.BuiltIn {
		fmt.Fprintln(a.stderr, "cartwright: building the planner for the browser; the first time this takes a minute or two")
	}
	engine, err := shop.Here(ctx)
	switch {
	case errors.Is(err, shop.ErrNoSource):
		return wrong("run it in a clone of its source with Go installed: go run ./cmd/cartwright page --file cart.html", "%w", err)
	case ctx.Err() != nil:
		return &outcome{code: codeUnproven, err: errors.New("stopped before all was written; no file was made or changed")}
	case err != nil:
		return unwritten(path, err)
	}
	text, err := shop.Write(bundle, &planner.Planner{Today: a.today}, engine)
	if err != nil {
		return err
	}
	return a.replace(p, path, text)
}
