package web

import (
	"reflect"
	"testing"

	"foundrow/internal/page"
	"foundrow/internal/prose"
)

// poisoned is a page with the same words in every field, and in every kind of block and line.
func poisoned(t *testing.T, hostile string) *page.Page {
	t.Helper()
	p := filled(reflect.TypeFor[*page.Page]()).(*page.Page)
	spread(reflect.ValueOf(p), hostile)
	p.Address, p.Beside, p.Print = "patterns/x/", "patterns/x/", "patterns/x/print/"
	p.Slots = []page.Slot{{All: hostile + " (" + hostile + ")"}}
	line := prose.Line{
		prose.Text(hostile), prose.CodeText(hostile), prose.Slot{}, prose.Newline{Hard: true},
		&prose.Marked{Line: prose.Line{prose.Text(hostile)}},
		&prose.Link{To: hostile, Line: prose.Line{prose.Text(hostile)}},
		&prose.Link{To: "javascript:alert(1)", Line: prose.Line{prose.Text("x")}},
		&prose.Link{To: "JaVaScript:alert(1)", Line: prose.Line{prose.Text("x")}},
		&prose.Image{From: hostile, Alt: prose.Line{prose.Text(hostile)}},
	}
	p.Pieces = []page.Piece{{Name: hostile, Title: hostile, Asks: hostile, Lines: []page.Line{{Label: line, Only: line, Side: hostile, Text: line, Count: line, Film: 10}}}}
	p.Intro = nil
	p.Text = []prose.Block{
		&prose.Heading{Level: 2, ID: hostile, Film: 10, Line: line},
		&prose.Paragraph{Line: line},
		&prose.List{Items: [][]prose.Block{{&prose.Paragraph{Line: line}}}},
		&prose.Table{Head: []prose.Line{line}, Rows: [][]prose.Line{{line}}},
		&prose.Quote{Blocks: []prose.Block{&prose.Paragraph{Line: line}}},
		&prose.Code{Text: hostile, Info: hostile},
		&prose.Piece{},
	}
	return p
}

// spread puts words into every string that can be reached.
func spread(v reflect.Value, words string) {
	switch v.Kind() {
	case reflect.String:
		if v.CanSet() {
			v.SetString(words)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			spread(v.Elem(), words)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				spread(v.Field(i), words)
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			spread(v.Index(i), words)
		}
	}
}
