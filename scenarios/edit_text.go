package scenarios

import (
	"regexp"
	"strconv"
	"strings"
)

// editValue notes the edits that one change takes.
func (t *text) editValue(root *node, e Edit) error {
	path, err := steps(e.Path)
	if err != nil {
		return err
	}
	parent, last := root.descend(path[:len(path)-1]), path[len(path)-1]
	switch {
	case e.Remove:
		return t.removeItem(root, path)
	case e.Add != nil:
		return t.addItem(root, path, e.Add)
	case parent == nil && len(path) == 2 && e.Value != "":
		// The section itself is not there yet.
		t.appendKey(root, path[0].key, "{"+last.key+": "+scalarText(last.key, e.Value)+"}")
		return nil
	case parent == nil:
		return problemAt(root.pos, "there is nothing at "+e.Path, "add its section to the file first")
	case parent.kind == isList && last.key == "" && root.descend(path) != nil && e.Value != "":
		return t.replaceScalar(root.descend(path), "name", e.Value)
	case parent.kind != isMapping || last.key == "":
		return t.odd(parent.pos)
	}
	have := parent.child(last.key)
	switch {
	case have == nil && e.Value == "":
		return nil
	case have == nil:
		t.appendKey(parent, last.key, scalarText(last.key, e.Value))
		return nil
	case e.Value == "":
		return t.removeKey(parent, have)
	}
	return t.replaceScalar(have.value, last.key, e.Value)
}

// replaceScalar puts another single value in the place of one. The key says how words are written.
func (t *text) replaceScalar(n *node, key, value string) error {
	if n.kind == isMapping || n.kind == isList || n.kind == isEmpty {
		return t.odd(n.pos)
	}
	end, err := t.end(n)
	if err != nil {
		return err
	}
	t.replace(t.at(n.pos), end, scalarText(key, value))
	return nil
}

// appendKey adds a key with a value at the end of a mapping.
func (t *text) appendKey(in *node, key, value string) {
	if len(in.keys) == 0 {
		if t.isFlow(in) {
			t.insert(t.at(in.pos)+1, key+": "+value)
		}
		return
	}
	line := t.keyText(in, key) + ": " + value
	end, err := t.end(in.keys[len(in.keys)-1].value)
	indent := in.keys[0].pos.Column - 1
	switch {
	case err != nil: // the end of the last is not known: put it before the others
		t.addKey(in, key, value)
	case t.isFlow(in):
		t.insert(end, ", "+line)
	case indent == 0:
		t.insertLines(len(t.data), line)
	default:
		t.insertLines(max(0, end-1), strings.Repeat(" ", indent)+line)
	}
}

// removeKey takes a key and its value out of a mapping.
func (t *text) removeKey(in *node, e *entry) error {
	end, err := t.end(e.value)
	if err != nil {
		return err
	}
	at := t.at(e.pos)
	if t.isFlow(in) {
		t.removeBetween(at, end)
		return nil
	}
	// A key that shares its line, with the dash of its item or with others, keeps the line.
	line := t.lineOf(at)
	if strings.TrimSpace(t.data[t.starts[line]:at]) != "" || len(in.keys) == 1 {
		return t.odd(e.pos)
	}
	t.replace(t.starts[line], t.lineEnd(t.lineOf(max(at, end-1))), "")
	return nil
}

// removeBetween takes what stands between two offsets out of a list in brackets, with one of its commas.
func (t *text) removeBetween(from, to int) {
	rest := t.data[to:]
	if after := strings.TrimLeft(rest, " \t"); strings.HasPrefix(after, ",") {
		to += len(rest) - len(after) + 1
		for to < len(t.data) && t.data[to] == ' ' {
			to++
		}
	} else if before := strings.TrimRight(t.data[:from], " \t\r\n"); strings.HasSuffix(before, ",") {
		from = len(before) - 1
	}
	t.replace(from, to, "")
}

// removeItem takes an item out of its list, and the list with the last of its items.
func (t *text) removeItem(root *node, path []step) error {
	list, last := root.descend(path[:len(path)-1]), path[len(path)-1]
	item := root.descend(path)
	if item == nil || last.key != "" {
		return problemAt(root.pos, "there is no such item to take away", "read the file again")
	}
	end, err := t.end(item)
	if err != nil {
		return err
	}
	if t.isFlow(list) {
		t.removeBetween(t.at(item.pos), end)
		return nil
	}
	from, err := t.dash(item)
	if err != nil {
		return err
	}
	if len(list.items) == 1 {
		owner := root.descend(path[:len(path)-2])
		key := owner.child(path[len(path)-2].key)
		from = t.at(key.pos)
		if strings.TrimSpace(t.data[t.starts[t.lineOf(from)]:from]) != "" {
			return t.odd(key.pos)
		}
	}
	t.replace(t.starts[t.lineOf(from)], t.lineEnd(t.lineOf(max(from, end-1))), "")
	return nil
}

// addItem puts an item at the end of a list, or begins the list.
func (t *text) addItem(root *node, path []step, pairs []Pair) error {
	var words []string
	for _, p := range pairs {
		words = append(words, p.Key+": "+scalarText(p.Key, p.Value))
	}
	item := "{" + strings.Join(words, ", ") + "}"
	list := root.descend(path)
	switch {
	case list == nil && len(path) == 1:
		t.insertLines(len(t.data), path[0].key+":", "  - "+item)
		return nil
	case list == nil || list.kind != isList:
		return problemAt(root.pos, "there is no list to add to", "write it into the file first")
	case len(list.items) == 0 && t.isFlow(list):
		t.insert(t.at(list.pos)+1, item)
		return nil
	case len(list.items) == 0:
		return t.odd(list.pos)
	}
	final := list.items[len(list.items)-1]
	end, err := t.end(final)
	if err != nil {
		return err
	}
	if t.isFlow(list) {
		t.insert(end, ", "+item)
		return nil
	}
	dash, err := t.dash(final)
	if err != nil {
		return err
	}
	t.insertLines(max(0, end-1), t.indent(dash)+"- "+item)
	return nil
}

// plainValue matches what may stand in YAML without quotes, in brackets too.
var plainValue = regexp.MustCompile(`^[\pL\pN][\pL\pN ./%+*_²°-]*$`)

// reservedWord matches words that YAML reads as something else than text.
var reservedWord = regexp.MustCompile(`(?i)^(true|false|null|yes|no|on|off|y|n)$`)

// numberLike matches what would be read as a number and not as words.
var numberLike = regexp.MustCompile(`^[0-9.+-][0-9a-zA-Z.+_-]*$`)

// scalarText writes a value as a file has it: in quotes where it needs them.
func scalarText(key, value string) string {
	truth := contains([]string{"dc", "neutral", "keep"}, key) && (value == "true" || value == "false")
	words := contains([]string{"name", "part", "circuit", "leg", "role", "run", "conduit", "section", "currency", "catalog", "measured"}, key)
	reserved := !truth && reservedWord.MatchString(value)
	switch {
	case !plainValue.MatchString(value), strings.HasSuffix(value, " "), reserved, words && numberLike.MatchString(value):
		return strconv.Quote(value)
	}
	return value
}
