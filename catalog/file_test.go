package catalog_test

import (
	"bytes"
	"io/fs"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// What can stand in a file's place, and what is said of it.
func TestWrongFiles(t *testing.T) {
	row := "bars,Bars,40,1,250,6\n"
	header := strings.TrimSuffix(smallest["busbars.csv"], row)
	for _, test := range []struct {
		name string
		file fstest.MapFile
		want string
	}{
		{"folder", fstest.MapFile{Mode: fs.ModeDir | 0o755}, `: is a folder; put a CSV file in its place`},
		{"pipe", fstest.MapFile{Mode: fs.ModeNamedPipe | 0o644}, `: is not a plain file; put a CSV file in its place`},
		{"17 MB", fstest.MapFile{Data: bytes.Repeat([]byte("#\n"), 17<<19)},
			`: the file has more than 16 MB; a catalogue file has at most 16 MB: keep only parts you may buy`},
		{"not UTF-8", fstest.MapFile{Data: []byte(header + "bars,B\xe4rs,40,1,250,6\n")},
			`:2:7: byte 0xe4 is not UTF-8; save the file as CSV in UTF-8`},
		{"not UTF-8 after others that are", fstest.MapFile{Data: []byte("# Bär\n" + header + "ä\xc3")},
			`:3:3: byte 0xc3 is not UTF-8; save the file as CSV in UTF-8`},
		{"UTF-16, low byte first", fstest.MapFile{Data: []byte("\xff\xfei\x00d\x00")}, `:1:1: the text is UTF-16; save the file as CSV in UTF-8`},
		{"UTF-16, high byte first", fstest.MapFile{Data: []byte("\xfe\xff\x00i\x00d")}, `:1:1: the text is UTF-16; save the file as CSV in UTF-8`},
		{"a very long row", fstest.MapFile{Data: []byte(header + row + strings.Repeat(",", 1<<21))},
			`:3:1: the row is longer than 1048576 bytes; look for a lost quote`},
		{"a quote lost in a long file", fstest.MapFile{Data: []byte(header + `"` + strings.Repeat(row, 1<<16))},
			`:2:1: the row is longer than 1048576 bytes; look for a lost quote`},
		{"nothing", fstest.MapFile{}, `: the file is empty; name the columns in the first line: id,name,price,mass_kg,rating_a,studs`},
	} {
		t.Run(test.name, func(t *testing.T) {
			files := with(nil)
			files["cart/busbars.csv"] = &test.file
			if got, want := mistakes(t, files), []string{"cart/busbars.csv" + test.want}; !slices.Equal(got, want) {
				t.Errorf("got %.300q\nwant %q", got, want)
			}
		})
	}
}

// broken is a file system whose files cannot be opened, or not be read to the end.
type broken struct {
	fstest.MapFS
	stat, open, read error
	grows            bool // has more bytes than it said
}

func (b broken) Open(name string) (fs.File, error) {
	f, err := b.MapFS.Open(name)
	if !strings.HasSuffix(name, "busbars.csv") || err != nil {
		return f, err
	}
	if b.open != nil {
		return nil, &fs.PathError{Op: "open", Path: name, Err: b.open}
	}
	if b.grows {
		return endless{f}, nil
	}
	return brokenFile{f, b.read}, nil
}

// Stat answers without opening the file.
func (b broken) Stat(name string) (fs.FileInfo, error) {
	if b.stat != nil && strings.HasSuffix(name, "busbars.csv") {
		return nil, b.stat
	}
	return fs.Stat(b.MapFS, name)
}

type brokenFile struct {
	fs.File
	err error
}

func (f brokenFile) Read([]byte) (int, error) { return 0, f.err }

// endless is a file that never ends.
type endless struct{ fs.File }

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = '\n'
	}
	return len(p), nil
}

func TestUnreadableFiles(t *testing.T) {
	for _, test := range []struct {
		name string
		fsys broken
		want string
	}{
		{"no permission", broken{MapFS: with(nil), open: fs.ErrPermission},
			"cart/busbars.csv: cannot be read: permission denied; make it a plain file that you may read"},
		{"fails halfway", broken{MapFS: with(nil), read: fs.ErrClosed},
			"cart/busbars.csv: cannot be read: file already closed; make it a plain file that you may read"},
		{"not even looked at", broken{MapFS: with(nil), stat: fs.ErrPermission},
			"cart/busbars.csv: cannot be read: permission denied; make it a plain file that you may read"},
		{"longer than it said", broken{MapFS: with(nil), grows: true},
			"cart/busbars.csv: the file has more than 16 MB; a catalogue file has at most 16 MB: keep only parts you may buy"},
	} {
		t.Run(test.name, func(t *testing.T) {
			_, err := readFrom(test.fsys)
			if err == nil || err.Error() != test.want {
				t.Errorf("got %v, want %s", err, test.want)
			}
		})
	}
}

// A file that is something else altogether does not bury its reader in messages.
func TestManyMistakes(t *testing.T) {
	const most = 200
	for _, test := range []struct{ name, rows, last string }{
		{"cells", strings.Repeat("x,x,x,1,1,1\n", most) + strings.Repeat("y,y,y,y,y,y\n", 999), "203:5"},
		{"quotes", strings.Repeat("x,\"x\"x\n", 999), "203:5"},
		{"ids", strings.Repeat("bars,Bars,40,1,250,6\n", 999), "203:1"},
	} {
		t.Run(test.name, func(t *testing.T) {
			got := mistakes(t, with(map[string]string{"busbars.csv": smallest["busbars.csv"] + test.rows}))
			want := "cart/busbars.csv:" + test.last + ": there are more than 200 mistakes; the rest is not listed; correct those first"
			if !slices.Contains(got, want) {
				t.Errorf("no %q in %q", want, got[len(got)-3:])
			}
			if len(got) > 2*(most+1) { // of cells, and of ids
				t.Errorf("%d messages", len(got))
			}
		})
	}
}
