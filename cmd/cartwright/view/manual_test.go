package view

import "testing"

// Each kind of block of a manual, on a screen of 40 columns.
func TestManual(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"prose", "# Title\n\nOne line that is\ngoing on, with [a link](../x.md#y) and [] in it.\n",
			"# Title\n\nOne line that is going on, with a link\nand [] in it.\n"},
		{"list", "- the first entry of a list, which\n  goes on\n- the second\n", "- the first entry of a list, which goes\n  on\n- the second\n"},
		{"table", "| key | what it is |\n| --- | --- |\n| `name` * | text |\n", "key     what it is\n------------------\nname *  text\n"},
		{"table without room", "| key | value | what it is |\n| --- | --- | --- |\n| `a.long.key` | number | how many there are of it on the cart |\n",
			"a.long.key\n  value: number\n  what it is: how many there are of it\n  on the cart\n"},
		{"formula", "where\n\n    D = P / e + u * i\n\nholds\n", "where\n\n    D = P / e + u * i\n\nholds\n"},
		{"json", "```json\n{\"a\": 1,\n \"first\": [\"\"], \"second\": [\"a plan\"], \"third\": 0}\n```\n",
			"```json\n{\"a\": 1,\n \"first\": [\"\"], \"second\": [\"a plan\"],\n   \"third\": 0}\n```\n"},
		{"run", "```console\n$ cartwright plan a-folder-of-mine --full\n```\n", "```console\n$ cartwright plan a-folder-of-mine\n  --full\n```\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Manual(c.text, 40)
			if err != nil {
				t.Fatal(err)
			}
			if got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}
