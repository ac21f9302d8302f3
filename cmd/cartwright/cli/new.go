package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"cartwright/catalog"
	"cartwright/scenarios"
)

const newHelp = `Makes a folder to start from: a scenario.yaml that shows every key with a
comment, and a catalogue of one's own, CSV files that open in any spreadsheet.
--rules says under which rules the cart is wired: nec with 120 and 240 V, or iec
with 230 V. The parts that come with the program and suit these rules are copied;
with --xlsx into one workbook with a sheet for each kind of part.
The folder must not exist yet; nothing is ever overwritten.`

const newExample = `  cartwright new my-cart
  cartwright new our-cart --rules iec --xlsx
  cartwright plan my-cart`

// partsFolder is where the starter's scenario.yaml looks for its catalogue, partsWorkbook what it may be instead.
const (
	partsFolder   = "parts"
	partsWorkbook = "parts.xlsx"
)

// newCommand makes a folder of one's own.
func (a *app) newCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:     "new folder",
		Short:   "Make a folder with a scenario and a catalogue to start from",
		Long:    newHelp,
		Example: newExample,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) != 1 {
				return wrong("name the folder to make: cartwright new my-cart", "new takes one folder, but got %d", len(args))
			}
			return nil
		},
		ValidArgsFunction: completeFolder,
	}
	rules := addChoice(cmd, "rules", "rule set: nec (120 and 240 V) or iec (230 V)", []string{string(scenarios.NEC), string(scenarios.IEC)})
	workbook := cmd.Flags().Bool("xlsx", false, "parts as a workbook, instead of CSV files")
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if err := makeFolder(args[0], scenarios.Rules(rules.value), *workbook); err != nil {
			return err
		}
		parts := "the files of " + filepath.Join(args[0], partsFolder)
		if *workbook {
			parts = filepath.Join(args[0], partsWorkbook)
		}
		return a.tell(fmt.Sprintf(`%s is ready for the %s rules, %s. Next:
  1. put your parts and prices into %s
  2. say in %s what the cart has to do and what you own
  3. run: cartwright plan %s
`, args[0], rules.value, supplies[scenarios.Rules(rules.value)], parts,
			filepath.Join(args[0], scenarios.FileName), args[0]))
	}
	return cmd
}

// supplies says what a rule set has, and how to get the other.
var supplies = map[scenarios.Rules]string{
	scenarios.NEC: "120 and 240 V (--rules iec: 230 V)",
	scenarios.IEC: "230 V (--rules nec: 120 and 240 V)",
}

// makeFolder makes a folder of the starter of a rule set and its parts.
func makeFolder(dir string, rules scenarios.Rules, workbook bool) error {
	if dir == "" {
		return wrong("name the folder to make: cartwright new my-cart", "the folder has no name")
	}
	return newFolder(dir, "my-cart", func(whole string) error {
		if err := copyFiles(scenarios.Starter(rules), whole, nil); err != nil {
			return err
		}
		if workbook {
			return startWorkbook(whole, rules)
		}
		return copyFiles(catalog.EmbeddedFiles(), filepath.Join(whole, partsFolder), partsFor(rules))
	})
}

// newFolder fills a folder beside dir and then gives it the name dir, so that there is a whole folder or none.
// Where dir is . or .. or /, the error suggests a folder called name in it.
func newFolder(dir, name string, fill func(whole string) error) error {
	dir = filepath.Clean(dir)
	if _, err := os.Lstat(dir); err == nil {
		free := dir + "-2"
		if base := filepath.Base(dir); base == "." || base == ".." || base == string(filepath.Separator) {
			free = filepath.Join(dir, name)
		}
		return wrong("give a name that is free, for example "+free, "%s exists already; nothing is overwritten", dir)
	}
	parent := filepath.Dir(dir)
	if info, err := os.Stat(parent); err != nil || !info.IsDir() {
		return wrong("make it first: mkdir -p "+parent, "there is no folder %s to put it in", parent)
	}
	// The folder within the temporary one is made with the usual permissions; the temporary one is private.
	temporary, err := os.MkdirTemp(parent, "."+filepath.Base(dir)+"-")
	if err != nil {
		return unchanged(dir, err)
	}
	defer os.RemoveAll(temporary)
	whole := filepath.Join(temporary, "whole")
	if err := os.Mkdir(whole, 0o777); err != nil {
		return unchanged(dir, err)
	}
	if err := fill(whole); err != nil {
		return unchanged(dir, err)
	}
	if err := os.Rename(whole, dir); err != nil {
		return unchanged(dir, err)
	}
	return nil
}

// copyFiles copies a file system into a folder, each file safe on disk before the next. Keep reports whether a line
// is copied; nil: all are.
func copyFiles(from fs.FS, to string, keep func(line string) bool) error {
	return fs.WalkDir(from, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		target := filepath.Join(to, filepath.FromSlash(name))
		if entry.IsDir() {
			return os.MkdirAll(target, 0o777)
		}
		data, err := fs.ReadFile(from, name)
		if err != nil {
			return err
		}
		if keep != nil {
			data = keptLines(data, keep)
		}
		return createFile(target, data)
	})
}

// createFile writes a file that does not exist yet.
func createFile(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err == nil {
		err = f.Sync()
	}
	return errors.Join(err, f.Close())
}
