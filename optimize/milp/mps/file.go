// Package mps writes integer programs as free MPS and reads back what it writes.
//
// Of the format only that is used which glpsol --freemps, cbc and others read alike: to minimise; integers between
// markers, each with both bounds; a row has one side; the objective's constant is the cost of a column named CONSTANT
// that is fixed at 1, since a right-hand side of the objective is added by one reader and subtracted by the other.
// Numbers are the shortest decimals that stand for the same doubles.
package mps

import (
	"strconv"
	"strings"

	"cartwright/optimize/milp/proof"
)

// File is a program with its names, which have no white space and are unique.
type File struct {
	Name     string
	Comments []string // lines on top
	Program  proof.Program
	proof.Names
}

// Names of a file's own, and how long the others may be: glpsol reads 255 characters.
const (
	Objective   = "OBJ"
	Constant    = "CONSTANT"
	LongestName = 200
)

// UniqueNames cleans n names and keeps them apart from each other and from a reserved one. Names keep their
// letters, digits and "_.[]" up to LongestName characters; every other character becomes "_"; a first character that
// is no letter gets "_" before it; a name that is then taken has "_2", "_3"... added, in order.
func UniqueNames(n int, reserved string, name func(int) string) []string {
	used := map[string]bool{reserved: true}
	names := make([]string, n)
	for i := range names {
		clean := cleanName(name(i))
		try := clean
		for k := 2; used[try]; k++ {
			try = clean + "_" + strconv.Itoa(k)
		}
		used[try], names[i] = true, try
	}
	return names
}

// cleanName replaces what a reader of MPS might trip over.
func cleanName(name string) string {
	clean := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', strings.ContainsRune("_.[]", r):
			return r
		}
		return '_'
	}, name)
	if clean == "" || !(clean[0] >= 'a' && clean[0] <= 'z' || clean[0] >= 'A' && clean[0] <= 'Z') {
		clean = "_" + clean
	}
	return clean[:min(len(clean), LongestName)]
}
