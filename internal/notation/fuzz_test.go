package notation_test

import (
	"os"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// FuzzParse feeds anything at all to the parser: it must not panic, every span must lie inside the file, every line that is not blank
// must be in the tree, and whatever is read must print and be read again.
func FuzzParse(f *testing.F) {
	rows, err := os.ReadFile("testdata/rows.txt")
	if err != nil {
		f.Fatal(err)
	}
	for line := range strings.Lines(string(rows)) {
		if !strings.HasPrefix(line, "    ") {
			f.Add(strings.TrimSpace(line), uint8(len(line)%4))
		}
	}
	f.Add("Row 1: ((((((((((((((((((((((((((((((((sc))))", uint8(0))
	f.Add("Row 1: ***********sc, *, **, rep from *", uint8(1))
	f.Fuzz(func(t *testing.T, text string, kind uint8) {
		terms := stitch.Terms(kind & 1)
		var sizes []string
		if kind&2 != 0 {
			sizes = []string{"S", "M", "L"}
		}
		b, fs := read(text, terms, sizes, []string{"cl3", "Big Star"})
		lines := 0
		for line := range strings.Lines(text) {
			if strings.TrimSpace(line) != "" {
				lines++
			}
		}
		if len(b.Lines) < lines {
			t.Errorf("%d lines of %d are in the tree", len(b.Lines), lines)
		}
		inside(t, reflect.ValueOf(b), len(text), "")
		for _, f := range fs {
			if f.Message == "" || f.Rule == "" || f.Place.Line < 1 || f.Place.Column < 1 {
				t.Errorf("a finding without a place or words: %v", f)
			}
		}
		for _, l := range b.Lines {
			for _, in := range []stitch.Terms{stitch.US, stitch.UK} {
				notation.Print(l, in)
				notation.Source(l, in, strconv.Itoa)
			}
		}
		if printed := write(b, terms); len(printed) < 1<<14 {
			read(printed, terms, sizes, nil)
		}
	})
}

// inside checks every span of a tree.
func inside(t *testing.T, v reflect.Value, size int, path string) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			inside(t, v.Elem(), size, path)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			inside(t, v.Index(i), size, path)
		}
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[source.Span]() {
			from, to := v.Field(0).Int(), v.Field(1).Int()
			if from < 0 || from > to || to > int64(size) {
				t.Errorf("%s: span %d to %d in a file of %d", path, from, to, size)
			}
			return
		}
		for i := range v.NumField() {
			inside(t, v.Field(i), size, path+"."+v.Type().Field(i).Name)
		}
	}
}
