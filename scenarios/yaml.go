package scenarios

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"cartwright/catalog/problem"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/lexer"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"
)

// Bounds that refuse a file made to exhaust the parser, whose time grows with the square of the keys. The
// deepest value a scenario has is five levels down, the longest line of a demo has some 130 bytes, and a
// load has some forty tokens: words and marks.
const (
	maxFlowDepth = 16
	maxLineBytes = 4000
	maxTokens    = 20000
)

// tree is a YAML text on its way into nodes.
type tree struct {
	file  string
	lines []string
	list  *problem.List
}

// parseTree reads YAML text into nodes, or adds to the list why it cannot be read and returns nil.
// Anchors, aliases, merge keys, tags, directives and further documents are refused, each where it stands:
// nothing in a scenario needs them, and they are how a small file can be made to stand for a huge one.
func parseTree(data []byte, file string, list *problem.List) *node {
	source := strings.ReplaceAll(string(data), "\r\n", "\n")
	t := &tree{file: file, lines: strings.Split(source, "\n"), list: list}
	for i, line := range t.lines {
		if len(line) > maxLineBytes {
			t.list.Add(problem.Pos{File: file, Line: i + 1, Column: maxLineBytes + 1},
				fmt.Sprintf("the line has %d bytes", len(line)), fmt.Sprintf("write at most %d in a line", maxLineBytes))
			return nil
		}
	}
	return t.parse(source)
}

// parse turns the text into nodes.
func (t *tree) parse(source string) *node {
	var tokens token.Tokens
	if err := guard(func() error { tokens = lexer.Tokenize(source); return nil }); err != nil {
		t.unreadable(problem.Pos{File: t.file}, err.Error())
		return nil
	}
	if len(tokens) > maxTokens {
		t.list.Add(t.pos(tokens[maxTokens]), fmt.Sprintf("the scenario has more than %d words and marks", maxTokens), "write fewer")
		return nil
	}
	if !t.shallow(tokens) {
		return nil
	}
	var f *ast.File
	err := guard(func() (err error) {
		f, err = parser.Parse(tokens, 0, parser.AllowDuplicateMapKey())
		return err
	})
	if err != nil {
		var syntax *yaml.SyntaxError
		if errors.As(err, &syntax) && syntax.Token != nil {
			t.unreadable(t.pos(syntax.Token), strings.ReplaceAll(syntax.Message, "'\t'", "tab"))
		} else {
			t.unreadable(problem.Pos{File: t.file}, err.Error())
		}
		return nil
	}
	var body ast.Node
	for _, doc := range f.Docs {
		if doc.Body == nil {
			continue
		}
		if d, ok := doc.Body.(*ast.DirectiveNode); ok {
			t.refuse(d.GetToken(), "a directive", "leave it out")
			continue
		}
		if body != nil {
			t.refuse(doc.Body.GetToken(), "a second document", "keep one scenario in a file")
			continue
		}
		body = doc.Body
	}
	if body == nil {
		return &node{kind: isEmpty, pos: problem.Pos{File: t.file, Line: 1, Column: 1}}
	}
	return t.node(body)
}

// guard runs a part of the YAML parser and returns a panic of it as an error: broken text of a user must
// not bring the program down, whoever is at fault.
func guard(parse func() error) (err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = fmt.Errorf("the parser failed: %v", fault)
		}
	}()
	return parse()
}

// shallow reports whether brackets and braces are nested no deeper than maxFlowDepth.
func (t *tree) shallow(tokens token.Tokens) bool {
	depth := 0
	for _, tk := range tokens {
		switch tk.Type {
		case token.MappingStartType, token.SequenceStartType:
			depth++
		case token.MappingEndType, token.SequenceEndType:
			depth--
		}
		if depth > maxFlowDepth {
			t.refuse(tk, fmt.Sprintf("brackets more than %d deep", maxFlowDepth), "close them, or nest less")
			return false
		}
	}
	return true
}

// pos returns the place of a token. The YAML parser counts columns in runes, a Pos in bytes.
func (t *tree) pos(tk *token.Token) problem.Pos {
	p := problem.Pos{File: t.file}
	if tk == nil || tk.Position == nil || tk.Position.Line < 1 || tk.Position.Line > len(t.lines) {
		return p
	}
	line := t.lines[tk.Position.Line-1]
	column := 0
	for runes := 1; runes < tk.Position.Column && column < len(line); runes++ {
		_, size := utf8.DecodeRuneInString(line[column:])
		column += size
	}
	p.Line, p.Column = tk.Position.Line, column+1
	return p
}

func (t *tree) refuse(tk *token.Token, what, right string) {
	t.list.Add(t.pos(tk), what+" is not read in a scenario", right)
}

func (t *tree) unreadable(pos problem.Pos, why string) {
	wrong := "this cannot be read as YAML"
	if why != "" {
		wrong += ": " + why
	}
	t.list.Add(pos, wrong, "indent with spaces, and close every quote and bracket")
}
