package scenarios

import (
	"fmt"
	"strconv"
	"strings"

	"cartwright/catalog/problem"
)

// reader collects the mistakes of one scenario file and the places of its values.
type reader struct {
	file     string
	problems *problem.List
	warnings problem.List
	places   map[string]problem.Pos
}

// section is a group of keys in the file: the whole of it, a part like cart, or one item of a list. Its
// methods read one key each into SI. What cannot be read is added to the reader's problems and returned
// as NaN, -1 or zero, which later checks do not report again.
type section struct {
	r     *reader
	path  string // "cart.shelves[0]"; "" for the whole file
	noun  string // what the section is called in a message, "a shelf"
	pos   problem.Pos
	nodes map[string]*node
	meant map[string]bool // keys that are there misspelt, which was reported
}

// newSection begins to read a mapping, and reports keys that are unknown or there twice.
func (r *reader) newSection(n *node, path, noun string, known []string) section {
	s := section{r: r, path: path, noun: noun, pos: n.pos, nodes: map[string]*node{}, meant: map[string]bool{}}
	r.places[path] = n.pos
	first := map[string]problem.Pos{}
	for _, e := range n.keys {
		if at, twice := first[e.key]; twice {
			r.problems.Add(e.pos, fmt.Sprintf("key %q stands twice in %s", e.key, noun),
				fmt.Sprintf("keep one; the first is in line %d", at.Line))
			continue
		}
		first[e.key] = e.pos
		if !contains(known, e.key) {
			right := "the keys here are " + strings.Join(known, ", ")
			if near := problem.Nearest(e.key, known); near != "" {
				right = fmt.Sprintf("did you mean %q?", near)
				s.meant[near] = true
			}
			r.problems.Add(e.pos, fmt.Sprintf("unknown key %q in %s", e.key, noun), right)
			continue
		}
		s.nodes[e.key] = e.value
		r.places[s.at(e.key)] = e.value.pos
	}
	return s
}

// at returns the path of a key of the section.
func (s section) at(key string) string {
	if s.path == "" {
		return key
	}
	return s.path + "." + key
}

// has reports whether the key stands in the section, with or without a value.
func (s section) has(key string) bool { return s.nodes[key] != nil }

// value returns the node of a key that should be of kind want. It returns nil where the key is absent,
// which is a mistake if it is required, and where its value is missing or of another kind, which always
// is one. form is what would be right, "text, for example length: 3 ft".
func (s section) value(key string, want kind, required bool, form string) *node {
	n := s.nodes[key]
	switch {
	case n == nil:
		if required && !s.meant[key] {
			s.r.problems.Add(s.pos, fmt.Sprintf("%s has no %q", s.noun, key), "add it, "+form)
		}
		return nil
	case n.kind == want:
		return n
	case n.kind == isEmpty:
		right := "write " + form
		if !required {
			right += ", or leave the key out"
		}
		s.r.problems.Add(n.pos, fmt.Sprintf("%q has no value", key), right)
	case n.kind == isRefused:
	case n.kind == isTruth:
		s.r.problems.Add(n.pos, fmt.Sprintf("%q is the bare word %s", key, n.source), "write "+form)
	default:
		s.r.problems.Add(n.pos, fmt.Sprintf("%q is %v", key, n.kind), "write "+form)
	}
	return nil
}

// wrong adds a mistake at the value of a key.
func (s section) wrong(key, wrong, right string) {
	pos := s.pos
	if n := s.nodes[key]; n != nil {
		pos = n.pos
	}
	s.r.problems.Add(pos, wrong, right)
}

// doubtful adds a warning at the value of a key: what is possible, but not plausible.
func (s section) doubtful(key, wrong, right string) {
	pos := s.pos
	if n := s.nodes[key]; n != nil {
		pos = n.pos
	}
	s.r.warnings.Add(pos, wrong, right)
}

// sub returns the section under a key, and whether there is one.
func (s section) sub(key, noun string, required bool, known []string) (section, bool) {
	n := s.value(key, isMapping, required, "a group of the keys "+strings.Join(known, ", "))
	if n == nil {
		return section{}, false
	}
	return s.r.newSection(n, s.at(key), noun, known), true
}

// items returns the sections of a list under a key. A required list has at least one.
func (s section) items(key, noun string, required bool, known []string) []section {
	n := s.value(key, isList, required, "a list of groups of the keys "+strings.Join(known, ", "))
	if n == nil {
		return nil
	}
	if required && len(n.items) == 0 {
		s.r.problems.Add(n.pos, fmt.Sprintf("%q is an empty list", key), "write at least one")
	}
	var out []section
	for i, item := range n.items {
		path := s.at(key) + "[" + strconv.Itoa(i) + "]"
		if item.kind == isRefused {
			continue
		}
		if item.kind != isMapping {
			s.r.problems.Add(item.pos, fmt.Sprintf("%s is %v", noun, item.kind),
				"write its keys: "+strings.Join(known, ", "))
			continue
		}
		out = append(out, s.r.newSection(item, path, noun, known))
	}
	return out
}

// distinct reports sections whose key has the same text as an earlier one.
func distinct(sections []section, key string) {
	first := map[string]problem.Pos{}
	for _, s := range sections {
		n := s.nodes[key]
		if n == nil || n.value == "" {
			continue
		}
		if at, twice := first[n.value]; twice {
			s.wrong(key, fmt.Sprintf("%s called %q is there twice", s.noun, n.value),
				fmt.Sprintf("give each its own; the first is in line %d", at.Line))
			continue
		}
		first[n.value] = n.pos
	}
}

func contains(names []string, name string) bool {
	for _, n := range names {
		if n == name {
			return true
		}
	}
	return false
}
