package web

import (
	"html/template"
	"io"
	"reflect"
	"regexp"
	"strconv"
	"strings"

	"github.com/tdewolff/minify/v2"

	"foundrow/internal/page"
	"foundrow/internal/source"
)

// templateOf parses the templates of one kind of page. Mistakes are looked for in the text as it was written, because a
// minified one has lost its lines; the page is set with the minified one.
func templateOf(k kind, parts map[string]string, m *minify.M) (*template.Template, source.Findings) {
	written, dense := template.New(k.name), template.New(k.name)
	entry := k.entry + "/" + k.entry + ".html"
	var findings source.Findings
	for _, part := range k.parts {
		name := part + "/" + part + ".html"
		text := parts[name]
		if _, err := written.New(name).Parse(text); err != nil {
			findings = append(findings, mistake(parts, name, err))
			continue
		}
		small, err := m.String("text/html", text)
		if err == nil {
			_, err = dense.New(name).Parse(small)
		}
		if err != nil { // the minifier lost its way where the template did not
			template.Must(dense.New(name).Parse(text))
		}
	}
	if findings.Errors() {
		return nil, findings
	}
	empty := Setting{Pattern: new(page.Page), Catalogue: new(page.Catalogue)}
	for _, data := range [...]any{&empty, filled(reflect.TypeFor[*Setting]())} {
		t, err := written.Clone()
		if err == nil {
			err = t.ExecuteTemplate(io.Discard, entry, data)
		}
		if err != nil {
			return nil, append(findings, mistake(parts, entry, err))
		}
	}
	return dense.Lookup(entry), findings
}

// filled returns a value of a type with one entry in every list and something in every field, so that executing a template
// with it reaches what stands inside "if", "with" and "range".
func filled(t reflect.Type) any { return fill(t, 0).Interface() }

func fill(t reflect.Type, depth int) reflect.Value {
	v := reflect.New(t).Elem()
	if depth > 12 {
		return v
	}
	switch t.Kind() {
	case reflect.String:
		v.SetString("x")
	case reflect.Int:
		v.SetInt(1)
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Pointer:
		v.Set(reflect.New(t.Elem()))
		v.Elem().Set(fill(t.Elem(), depth+1))
	case reflect.Slice:
		v.Set(reflect.Append(v, fill(t.Elem(), depth+1)))
	case reflect.Struct:
		for i := range t.NumField() {
			if t.Field(i).IsExported() && t.Field(i).Type.Kind() != reflect.Interface {
				v.Field(i).Set(fill(t.Field(i).Type, depth+1))
			}
		}
	}
	return v
}

// faultAt finds the file and line that an error of a template names, and what it says.
var faultAt = regexp.MustCompile(`([a-z]+/[a-z]+\.html):(?:(\d+):)?(?:\d+:)? ((?s).*)`)

// mistake turns an error of a template into a finding at the line it names. The file may be another than the one at hand: a
// part is only found wrong when a page calls it.
func mistake(parts map[string]string, name string, err error) source.Finding {
	message, line := err.Error(), 1
	if m := faultAt.FindStringSubmatch(message); m != nil {
		name, message = m[1], m[3]
		if n, err := strconv.Atoi(m[2]); err == nil {
			line = n
		}
	}
	file := source.NewFile(folder+name, parts[name])
	return source.Finding{Rule: "layout-syntax", Place: file.Place(lineOf(file.Text, line)), Message: "the template cannot be used: " + firstLine(message)}
}

func firstLine(s string) string {
	s, _, _ = strings.Cut(strings.TrimSpace(s), "\n")
	return strings.TrimSuffix(s, ".")
}

// lineOf returns the span of a line, counted from 1, without the space at its head.
func lineOf(text string, line int) source.Span {
	from := 0
	for range line - 1 {
		next := strings.IndexByte(text[from:], '\n')
		if next < 0 {
			break
		}
		from += next + 1
	}
	whole, _, _ := strings.Cut(text[from:], "\n")
	to := from + len(whole)
	return source.Span{From: to - len(strings.TrimLeft(whole, " \t")), To: to}
}
