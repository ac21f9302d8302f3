package scenarios

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"cartwright/catalog/problem"
)

// Edit is one change of a scenario's file, by the path of a value: "limits.mass", "loads[2].watts".
type Edit struct {
	Path string
	// Value is what is to stand there; "" takes the key away.
	Value string
	// Add, where given, is a new item for the list at Path: its keys with their values, in order.
	Add []Pair
	// Remove takes the item at Path out of its list.
	Remove bool
}

// Pair is a key and what stands behind it.
type Pair struct{ Key, Value string }

// EditValues returns a scenario file's text with one value changed in place. All other bytes stay, comments,
// order and line ends included. The new text is read again before it is returned: it is an error where it
// would mean anything but what is wanted, or where the file is written in a way that can be read but not
// edited. Whether the value makes sense is not checked.
func EditValues(data []byte, file string, e Edit) ([]byte, error) {
	body, marked := strings.CutPrefix(string(data), mark)
	root, err := reparse(body, file)
	if err != nil {
		return nil, err
	}
	t := newText(file, body)
	if err := t.editValue(root, e); err != nil {
		return nil, err
	}
	out, _, err := t.apply()
	if err != nil {
		return nil, err
	}
	after, err := reparse(out, file)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be edited in place: %w", file, err)
	}
	if !edited(root, after, e) {
		return nil, fmt.Errorf("%s cannot be edited in place at %s: the new text would mean something else", file, e.Path)
	}
	if marked {
		out = mark + out
	}
	return []byte(out), nil
}

// ValuesOf returns the value at each path of a scenario's file that holds one, and how many items each list
// has: "loads[]" is the number of loads.
func ValuesOf(data []byte, file string) (map[string]string, error) {
	root, err := reparse(strings.TrimPrefix(string(data), mark), file)
	if err != nil {
		return nil, err
	}
	all := map[string]string{}
	collectValues(root, "", all)
	return all, nil
}

func collectValues(n *node, path string, all map[string]string) {
	switch n.kind {
	case isMapping:
		for _, e := range n.keys {
			collectValues(e.value, strings.TrimPrefix(path+"."+e.key, "."), all)
		}
	case isList:
		all[path+"[]"] = strconv.Itoa(len(n.items))
		for i, item := range n.items {
			collectValues(item, fmt.Sprintf("%s[%d]", path, i), all)
		}
	case isText, isNumber, isTruth:
		all[path] = n.value
	}
}

// step is a part of a path: a key, or the place in a list.
type step struct {
	key   string // "" for a place
	place int
}

var pathStep = regexp.MustCompile(`^(?:\.?([a-z_]+)|\[(\d{1,5})\])`)

// steps takes a path apart.
func steps(path string) ([]step, error) {
	var list []step
	for rest := path; rest != ""; {
		m := pathStep.FindStringSubmatch(rest)
		if m == nil {
			return nil, fmt.Errorf("%q is no path of a scenario", path)
		}
		n, _ := strconv.Atoi(m[2]) // digits alone, or nothing
		list = append(list, step{m[1], n})
		rest = rest[len(m[0]):]
	}
	if len(list) == 0 || list[0].key == "" {
		return nil, fmt.Errorf("%q is no path of a scenario", path)
	}
	return list, nil
}

// descend follows steps from a node; nil where there is nothing.
func (n *node) descend(path []step) *node {
	for _, s := range path {
		switch {
		case n == nil:
			return nil
		case s.key != "":
			e := n.child(s.key)
			if e == nil {
				return nil
			}
			n = e.value
		case n.kind != isList || s.place >= len(n.items):
			return nil
		default:
			n = n.items[s.place]
		}
	}
	return n
}

// edited reports whether after means what before does with an edit made.
func edited(before, after *node, e Edit) bool {
	path, err := steps(e.Path)
	if err != nil {
		return false
	}
	switch parent, last := path[:len(path)-1], path[len(path)-1]; {
	case e.Remove:
		list := after.descend(parent)
		was := before.descend(parent)
		if list == nil {
			return len(was.items) == 1 && sameElsewhere(before, after, parent)
		}
		return slices.EqualFunc(list.items, slices.Delete(slices.Clone(was.items), last.place, last.place+1), alike) &&
			sameElsewhere(before, after, parent)
	case e.Add != nil:
		list := after.descend(path)
		var was []*node
		if n := before.descend(path); n != nil {
			was = n.items
		}
		if list == nil || len(list.items) != len(was)+1 || !slices.EqualFunc(list.items[:len(was)], was, alike) {
			return false
		}
		fresh := list.items[len(was)]
		return slices.EqualFunc(fresh.keys, e.Add, func(k entry, p Pair) bool { return k.key == p.Key && k.value.value == p.Value }) &&
			sameElsewhere(before, after, path)
	case e.Value == "":
		return after.descend(path) == nil && sameElsewhere(before, after, path)
	}
	n := after.descend(path)
	return n != nil && n.value == e.Value && sameElsewhere(before, after, path)
}

// sameElsewhere reports whether two trees are alike but for what is at a path. A section that an edit added, or
// removed with its only key, does not count.
func sameElsewhere(a, b *node, path []step) bool {
	if len(path) == 0 {
		return true
	}
	if a == nil || b == nil {
		return true
	}
	if path[0].key == "" {
		if a.kind != isList || b.kind != isList || len(a.items) != len(b.items) {
			return false
		}
		for i := range a.items {
			if i == path[0].place && !sameElsewhere(a.items[i], b.items[i], path[1:]) || i != path[0].place && !alike(a.items[i], b.items[i]) {
				return false
			}
		}
		return true
	}
	if !sameBut(a, b, path[0].key) {
		return false
	}
	x, y := a.child(path[0].key), b.child(path[0].key)
	if x == nil || y == nil {
		return true
	}
	return sameElsewhere(x.value, y.value, path[1:])
}

// problemAt is the error of a place that cannot be edited.
func problemAt(pos problem.Pos, wrong, right string) error {
	var list problem.List
	list.Add(pos, wrong, right)
	return list.Err()
}
