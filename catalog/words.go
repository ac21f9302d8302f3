package catalog

import (
	"fmt"
	"slices"
	"strings"

	"cartwright/catalog/problem"
)

// choice is a column of one of a few words; case and spaces do not matter.
func choice[T any](name string, known []string, field func(*T) *string) column[T] {
	return column[T]{
		name:     name,
		words:    known,
		expected: anyOf(known),
		read: func(v *T, in entry) *flaw {
			word, wrong := knownWord(in, known)
			if wrong == nil {
				*field(v) = word
			}
			return wrong
		},
		write: func(v *T) string { return *field(v) },
	}
}

// marked is a column of two words, the second of which marks the part.
func marked[T any](name string, words [2]string, field func(*T) *bool) column[T] {
	return column[T]{
		name:     name,
		words:    words[:],
		expected: anyOf(words[:]),
		read: func(v *T, in entry) *flaw {
			word, wrong := knownWord(in, words[:])
			*field(v) = word == words[1]
			return wrong
		},
		write: func(v *T) string {
			if *field(v) {
				return words[1]
			}
			return words[0]
		},
	}
}

// knownWord returns which of some words a cell holds.
func knownWord(in entry, known []string) (string, *flaw) {
	word := strings.ReplaceAll(in.text, " ", "")
	for _, k := range known {
		if strings.EqualFold(word, k) {
			return k, nil
		}
	}
	right := "write " + anyOf(known)
	if near := problem.Nearest(word, known); near != "" {
		right = fmt.Sprintf("did you mean %q? Write %s", near, anyOf(known))
	}
	return "", &flaw{fmt.Sprintf("%s %s is none of the choices", in.header, quote(in.text)), right}
}

// answer is a column of a question that may be left open.
func answer[T any](name string, field func(*T) *Answer) column[T] {
	known := []string{string(Yes), string(No)}
	return column[T]{
		name:     name,
		words:    known,
		expected: anyOf(known),
		read: func(v *T, in entry) *flaw {
			if in.text == "" {
				return nil
			}
			word, wrong := knownWord(in, known)
			*field(v) = Answer(word)
			return wrong
		},
		write: func(v *T) string { return string(*field(v)) },
	}
}

// word is a column of a word that parts are matched by; case does not matter.
func word[T any](name, example string, field func(*T) *string) column[T] {
	c := text(name, example, field)
	plain := c.read
	c.read = func(v *T, in entry) *flaw {
		bad := plain(v, in)
		*field(v) = strings.ToLower(*field(v))
		return bad
	}
	return c
}

// list is a column of any number of words, separated by spaces, commas or semicolons; case and order do not matter.
func list[T any](name, example string, field func(*T) *[]string) column[T] {
	c := column[T]{name: name, expected: example}
	c.read = func(v *T, in entry) *flaw {
		var words string
		if bad := text(name, example, func(*T) *string { return &words }).read(v, in); bad != nil {
			return bad
		}
		separated := strings.FieldsFunc(strings.ToLower(words), func(r rune) bool { return r == ' ' || r == ',' || r == ';' })
		slices.Sort(separated)
		if len(separated) > 0 {
			*field(v) = slices.Compact(separated)
		}
		return nil
	}
	c.write = func(v *T) string { return strings.Join(*field(v), " ") }
	return c
}
