package notation_test

import (
	"reflect"
	"strconv"
	"strings"
	"testing"

	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// read parses a text whose values are written {0}, {1}, …: the number is the index of the slot.
func read(text string, terms stitch.Terms, sizes, specials []string) (*notation.Block, source.Findings) {
	file := source.NewFile("rows", text)
	return notation.Parse(notation.Input{
		File: file, Body: source.Span{To: len(text)}, Terms: terms, Sizes: sizes, Specials: specials,
		Slot: func(from int) int {
			end := strings.IndexByte(text[from:], '}')
			if end < 0 {
				return -1
			}
			n, err := strconv.Atoi(text[from+1 : from+end])
			if err != nil || n > 999 {
				return -1
			}
			return n
		},
	})
}

// write prints a block as source text, its values as read takes them.
func write(b *notation.Block, terms stitch.Terms) string {
	lines := make([]string, len(b.Lines))
	for i, l := range b.Lines {
		lines[i] = notation.Source(l, terms, strconv.Itoa)
	}
	return strings.Join(lines, "\n")
}

// same reports whether two blocks say the same, wherever they stand.
func same(a, b *notation.Block) bool {
	forget(reflect.ValueOf(a))
	forget(reflect.ValueOf(b))
	return reflect.DeepEqual(a, b)
}

// forget sets every span in a tree to nowhere, and every empty list to none.
func forget(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			forget(v.Elem())
		}
	case reflect.Slice:
		if v.Len() == 0 && v.CanSet() {
			v.SetZero()
		}
		for i := range v.Len() {
			forget(v.Index(i))
		}
	case reflect.Array:
		for i := range v.Len() {
			forget(v.Index(i))
		}
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[source.Span]() {
			if v.CanSet() {
				v.SetZero()
			}
			return
		}
		for i := range v.NumField() {
			forget(v.Field(i))
		}
	}
}

// check reads a text, prints it, and reads it again: in its own terms and in the others the tree is the same, and the print is too.
func check(t testing.TB, text string, terms stitch.Terms, sizes, specials []string) {
	t.Helper()
	first, fs := read(text, terms, sizes, specials)
	if len(fs) > 0 {
		return // what was not understood is printed as it stands and promises nothing
	}
	for _, in := range []stitch.Terms{terms, terms.Other()} {
		printed := write(first, in)
		again, fs := read(printed, in, sizes, specials)
		if len(fs) > 0 {
			t.Errorf("%s\nprinted in %s: %s\nis not understood: %s", text, in, printed, fs[0])
			continue
		}
		back := write(again, terms)
		if want := write(first, terms); back != want {
			t.Errorf("%s\nprinted in %s: %s\ncomes back as:  %s\ninstead of:     %s", text, in, printed, back, want)
		}
		one, _ := read(text, terms, sizes, specials)
		if !same(one, again) {
			t.Errorf("%s\nprinted in %s: %s\nsays something else%s", text, in, printed, difference(reflect.ValueOf(one), reflect.ValueOf(again), ""))
		}
	}
}

// difference names the first place in which two trees differ.
func difference(a, b reflect.Value, path string) string {
	if a.Kind() != b.Kind() || a.IsValid() != b.IsValid() || a.IsValid() && a.Type() != b.Type() {
		return "\n" + path + ": other kinds"
	}
	switch a.Kind() {
	case reflect.Pointer, reflect.Interface:
		if a.IsNil() || b.IsNil() {
			if a.IsNil() != b.IsNil() {
				return "\n" + path + ": nil in one"
			}
			return ""
		}
		return difference(a.Elem(), b.Elem(), path)
	case reflect.Slice:
		if a.Len() != b.Len() {
			return "\n" + path + ": " + strconv.Itoa(a.Len()) + " and " + strconv.Itoa(b.Len())
		}
		for i := range a.Len() {
			if d := difference(a.Index(i), b.Index(i), path+"["+strconv.Itoa(i)+"]"); d != "" {
				return d
			}
		}
	case reflect.Struct:
		for i := range a.NumField() {
			if d := difference(a.Field(i), b.Field(i), path+"."+a.Type().Field(i).Name); d != "" {
				return d
			}
		}
	case reflect.String:
		if a.String() != b.String() {
			return "\n" + path + ": " + a.String() + " and " + b.String()
		}
	case reflect.Bool:
		if a.Bool() != b.Bool() {
			return "\n" + path + ": true in one"
		}
	case reflect.Int, reflect.Int64:
		if a.Int() != b.Int() {
			return "\n" + path + ": " + strconv.FormatInt(a.Int(), 10) + " and " + strconv.FormatInt(b.Int(), 10)
		}
	case reflect.Uint8:
		if a.Uint() != b.Uint() {
			return "\n" + path + ": " + strconv.FormatUint(a.Uint(), 10) + " and " + strconv.FormatUint(b.Uint(), 10)
		}
	}
	return ""
}
