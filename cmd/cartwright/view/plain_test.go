package view

import "testing"

// A paragraph is folded anew; a list hangs at its second column, a step at its words, a command goes on as a shell reads it.
func TestPlain(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"paragraph", "one two three four five six seven\neight nine ten\n\nnext",
			"one two three four five six seven eight\nnine ten\n\nnext"},
		{"list", "These:\n  axle   what the wheels of the cart turn on\n", "These:\n  axle   what the wheels of the cart\n         turn on\n"},
		{"list without room", "  a-name-that-takes-most   what it stands for here",
			"  a-name-that-takes-most: what it\n    stands for here"},
		{"step", "  1. put your parts and prices into the files", "  1. put your parts and prices into the\n     files"},
		{"command", "  cartwright compare x --buy 2xlfp-rack-5 --buy 3xlfp-rack-5",
			"  cartwright compare x \\\n    --buy 2xlfp-rack-5 \\\n    --buy 3xlfp-rack-5"},
		{"spaces at the end", "Flags:\n  --out file    \n", "Flags:\n  --out file\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := Plain(c.text, 40); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}
