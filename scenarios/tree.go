package scenarios

import (
	"strings"

	"cartwright/catalog/problem"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"
)

// kind is the shape of a node.
type kind int

const (
	isEmpty   kind = iota // nothing stands there, or null
	isText                // a string, quoted or not
	isNumber              // an unquoted number
	isTruth               // an unquoted true or false
	isList                // a sequence
	isMapping             // keys with values
	isRefused             // what a scenario may not have; that was reported
)

// String returns the kind as messages name it.
func (k kind) String() string {
	return [...]string{"nothing", "text", "a number", "true or false", "a list", "a group of keys", "refused"}[k]
}

// node is a value in the file. Pos and source are kept so that mistakes are reported with their place, and so that a
// value can be replaced in place, leaving comments and order as they are.
type node struct {
	kind   kind
	pos    problem.Pos
	value  string  // of text, number and truth
	source string  // the value as it stands in the file, with its quotes
	keys   []entry // of a mapping, in file order
	items  []*node // of a list
}

// entry is a key and its value.
type entry struct {
	key   string
	pos   problem.Pos
	value *node
}

// node turns a node of the YAML parser into one of ours.
func (t *tree) node(n ast.Node) *node {
	out := &node{pos: t.pos(n.GetToken())}
	switch n := n.(type) {
	case *ast.MappingNode:
		out.kind = isMapping
		for _, v := range n.Values {
			t.entry(out, v)
		}
		out.place(n.IsFlowStyle)
	case *ast.MappingValueNode:
		out.kind = isMapping
		t.entry(out, n)
		out.place(n.IsFlowStyle)
	case *ast.SequenceNode:
		out.kind = isList
		for _, v := range n.Values {
			out.items = append(out.items, t.node(v))
		}
	case *ast.NullNode:
		out.kind = isEmpty
	case *ast.BoolNode:
		t.scalar(out, isTruth, n.GetToken())
	case *ast.IntegerNode, *ast.FloatNode, *ast.InfinityNode, *ast.NanNode:
		t.scalar(out, isNumber, n.GetToken())
	case *ast.StringNode:
		t.scalar(out, isText, n.GetToken())
	case *ast.LiteralNode:
		out.kind = isText
		if n.Value != nil {
			out.value = n.Value.Value
		}
	case *ast.AnchorNode, *ast.AliasNode:
		t.refuse(n.GetToken(), "an anchor or alias", "write the value out where it is wanted")
		out.kind = isRefused
	case *ast.TagNode:
		t.refuse(n.GetToken(), "a tag", "write the value alone")
		out.kind = isRefused
	default:
		t.refuse(n.GetToken(), "this", "write keys and values")
		out.kind = isRefused
	}
	return out
}

// entry adds a key and its value to a mapping.
func (t *tree) entry(out *node, v *ast.MappingValueNode) {
	key := v.Key.GetToken()
	switch v.Key.(type) {
	case *ast.MergeKeyNode:
		t.refuse(key, "a merge key", "write the keys out where they are wanted")
		return
	case *ast.MappingKeyNode:
		t.refuse(key, "a key that begins with ?", "write key: value")
		return
	}
	e := entry{key: key.Value, pos: t.pos(key)}
	if v.Value == nil {
		e.value = &node{kind: isEmpty, pos: e.pos}
	} else {
		e.value = t.node(v.Value)
		if e.value.kind == isEmpty && e.value.source == "" {
			e.value.pos = e.pos // an absent value has no place of its own
		}
	}
	out.keys = append(out.keys, e)
}

// place puts a mapping written with indents where its first key stands: the YAML parser has it at the
// colon.
func (n *node) place(flow bool) {
	if !flow && len(n.keys) > 0 {
		n.pos = n.keys[0].pos
	}
}

// scalar fills in a single value.
func (t *tree) scalar(out *node, k kind, tk *token.Token) {
	out.kind, out.value, out.source = k, tk.Value, strings.TrimSpace(tk.Origin)
	out.pos = t.mended(out.pos, out.source)
}

// mended returns the place of a value in its line. The YAML parser puts some that are followed by blanks too far to
// the right.
func (t *tree) mended(pos problem.Pos, source string) problem.Pos {
	if pos.Line == 0 || source == "" {
		return pos
	}
	line := t.lines[pos.Line-1]
	from := min(pos.Column-1, len(line))
	if strings.HasPrefix(line[from:], source) {
		return pos
	}
	if at := strings.LastIndex(line[:min(len(line), from+len(source)-1)], source); at >= 0 {
		pos.Column = at + 1
	}
	return pos
}
