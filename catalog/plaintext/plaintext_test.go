package plaintext_test

import (
	"encoding/binary"
	"io/fs"
	"testing"
	"unicode/utf16"

	"cartwright/catalog/plaintext"
)

// in16 returns text in UTF-16 of one byte order.
func in16(text string, order binary.ByteOrder) []byte {
	var out []byte
	for _, u := range utf16.Encode([]rune(text)) {
		var pair [2]byte
		order.PutUint16(pair[:], u)
		out = append(out, pair[:]...)
	}
	return out
}

func TestUTF16(t *testing.T) {
	const text = "id,name,price\nrack,Überbau 5 kWh,1180\n"
	for name, test := range map[string]struct {
		data []byte
		want bool
	}{
		"little end first":      {in16(text, binary.LittleEndian), true},
		"big end first":         {in16(text, binary.BigEndian), true},
		"with a mark":           {in16("\ufeff日本", binary.LittleEndian), true},
		"UTF-8":                 {[]byte(text), false},
		"UTF-8 with a mark":     {[]byte("\ufeff" + text), false},
		"empty":                 {nil, false},
		"one byte":              {[]byte{0}, false},
		"zeros":                 {make([]byte, 100), false},
		"a stray zero in UTF-8": {[]byte("a,b\x00,c,d,e,f\n"), false},
	} {
		if got := plaintext.UTF16(test.data); got != test.want {
			t.Errorf("%s: %v", name, got)
		}
	}
}

func TestBadByte(t *testing.T) {
	for text, want := range map[string]int{"": -1, "aé日": -1, "a\xe9b": 1, "\xff": 0, "é\xc3": 2} {
		if got := plaintext.BadByte([]byte(text)); got != want {
			t.Errorf("%q: %d, want %d", text, got, want)
		}
	}
}

func TestSeparator(t *testing.T) {
	for text, want := range map[string]struct {
		rune
		rest string
	}{
		"sep=;\na;b\n":       {';', "#ep=;\na;b\n"},
		"\"sep=,\"\r\na,b\n": {',', "#sep=,\"\r\na,b\n"},
		"sep=\t\na\tb\n":     {'\t', "#ep=\t\na\tb\n"},
		"a,b\nsep=;\n":       {',', "a,b\nsep=;\n"},
		"sep=x\na,b\n":       {',', "sep=x\na,b\n"},
		"":                   {',', ""},
	} {
		if data, got := plaintext.Separator([]byte(text)); got != want.rune || string(data) != want.rest {
			t.Errorf("%q: %q, %q", text, got, data)
		}
	}
}

func TestSpecial(t *testing.T) {
	for mode, want := range map[fs.FileMode]string{
		0o644: "", fs.ModeDir | 0o755: "", fs.ModeNamedPipe | 0o644: "a pipe", fs.ModeSocket: "a socket",
		fs.ModeDevice | fs.ModeCharDevice: "a device", fs.ModeIrregular: "not a plain file",
	} {
		if got := plaintext.Special(mode); got != want {
			t.Errorf("%v: %q, want %q", mode, got, want)
		}
	}
}
