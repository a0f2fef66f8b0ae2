package proof

import (
	"fmt"
	"strings"

	"foundrow/internal/source"
)

// A Hand is how findings are written out. The zero Hand writes plain text.
type Hand struct {
	Colour bool
}

// The colours of a terminal, by ECMA-48 (Select Graphic Rendition): which red or yellow is the terminal's choice.
const (
	red    = "\x1b[1;31m"
	yellow = "\x1b[1;33m"
	bold   = "\x1b[1m"
	faint  = "\x1b[2m"
	plain  = "\x1b[0m"
)

// Print writes findings as compilers print them, a line each, with the words they are about and the fix below.
func (h Hand) Print(findings source.Findings) string {
	var b strings.Builder
	for _, f := range findings {
		b.WriteString(h.line(f) + "\n" + h.excerpt(f))
	}
	return b.String()
}

func (h Hand) line(f source.Finding) string {
	if !h.Colour {
		return f.String()
	}
	colour := red
	if f.Severity == source.Query {
		colour = yellow
	}
	said := f.String()
	place, rest, _ := strings.Cut(said, ": "+f.Severity.String()+": ")
	rest, rule := strings.TrimSuffix(rest, " ["+f.Rule+"]"), " ["+f.Rule+"]"
	return bold + place + ":" + plain + " " + colour + f.Severity.String() + ":" + plain + " " + rest + faint + rule + plain
}

func (h Hand) excerpt(f source.Finding) string { return f.Excerpt() }

// Count words how many findings there are: "no findings", "2 errors and 1 query".
func Count(findings source.Findings) string {
	var errors, queries int
	for _, f := range findings {
		if f.Severity == source.Query {
			queries++
		} else {
			errors++
		}
	}
	var words []string
	if errors > 0 {
		words = append(words, Number(errors, "error", "errors"))
	}
	if queries > 0 {
		words = append(words, Number(queries, "query", "queries"))
	}
	if words == nil {
		return "no findings"
	}
	return source.List(words, "and")
}

// Number words a number of things: "1 query", "2 queries".
func Number(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprint(n) + " " + many
}
