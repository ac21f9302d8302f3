package scenarios

import (
	"fmt"
	"slices"
	"strconv"

	"cartwright/catalog/problem"
)

// oneAtATime reads lists of loads; of each list no two are ever on at the same moment.
func (s section) oneAtATime(loads []Load) [][]int {
	const form = `a list of lists of loads, for example one_at_a_time: [[saw, vacuum]]`
	n := s.value("one_at_a_time", isList, false, form)
	if n == nil {
		return nil
	}
	if len(loads) == 0 {
		if s.has("measured") {
			s.wrong("one_at_a_time", "one_at_a_time: measured loads have no names", "leave it out; what was measured was on when it was on")
		}
		return nil
	}
	var names []string
	for _, l := range loads {
		names = append(names, l.Name)
	}
	var lists [][]int
	first := map[int]problem.Pos{}
	for i, item := range n.items {
		path := s.at("one_at_a_time") + "[" + strconv.Itoa(i) + "]"
		s.r.places[path] = item.pos
		if item.kind != isList || len(item.items) < 2 {
			if item.kind != isRefused {
				s.r.problems.Add(item.pos, "this is not a list of two loads or more", "write "+form)
			}
			continue
		}
		var list []int
		for k, name := range item.items {
			s.r.places[path+"["+strconv.Itoa(k)+"]"] = name.pos
			if at, ok := s.loadNamed(name, names, first); ok {
				list = append(list, at)
			}
		}
		lists = append(lists, list)
	}
	return lists
}

// loadNamed returns the load that a name in a list means, the first time that it stands in one.
func (s section) loadNamed(name *node, names []string, first map[int]problem.Pos) (int, bool) {
	text := name.value
	if name.kind == isNumber {
		text = name.source // a load may be called 42
	} else if name.kind != isText {
		if name.kind != isRefused {
			s.r.problems.Add(name.pos, fmt.Sprintf("the name of a load is %v", name.kind), "write the name of one of loads")
		}
		return 0, false
	}
	at := slices.Index(names, text)
	if at < 0 {
		right := "write the name of one of loads"
		if near := problem.Nearest(text, names); near != "" {
			right = fmt.Sprintf("did you mean %q?", near)
		}
		s.r.problems.Add(name.pos, fmt.Sprintf("no load is called %q", text), right)
		return 0, false
	}
	if pos, twice := first[at]; twice {
		s.r.problems.Add(name.pos, fmt.Sprintf("the load %q is in a list already", text),
			fmt.Sprintf("name each load once; the first is in line %d", pos.Line))
		return 0, false
	}
	first[at] = name.pos
	return at, true
}
