package page

import (
	"slices"
	"strings"

	"foundrow/internal/notation"
	"foundrow/internal/prose"
)

// A Special is a stitch of the pattern's own.
type Special struct {
	Short, Name string
	How         prose.Line
}

// specials are the stitches that the front matter defines, and those that rules of its pieces do.
func (s *setter) specials() []Special {
	carry := s.carrier()
	var out []Special
	for _, def := range s.p.Special {
		how := prose.Line{prose.Text(carry.words(def.How.Text))}
		if len(def.Worked) > 0 {
			how = s.line(notation.Print(&notation.Row{Body: def.Worked}, s.terms).Body)
		} else if s.used != nil {
			s.used.Read(def.How.Text, s.p.Terms)
		}
		out = append(out, Special{def.Abbr.Text, carry.words(def.Name), how})
	}
	for _, w := range s.worked {
		for _, l := range w.rows {
			rule, is := l.(*notation.Rule)
			if !is || rule.Kind != notation.Defines {
				continue
			}
			if def := s.defined(rule); !slices.ContainsFunc(out, func(have Special) bool { return have.Short == def.Short }) {
				out = append(out, def)
			}
		}
	}
	return out
}

// defined is the stitch of a rule, which is printed "shell = 5 dc in one st".
func (s *setter) defined(rule *notation.Rule) Special {
	body := s.line(notation.Print(rule, s.terms).Body)
	if len(body) == 0 {
		return Special{Short: rule.Name}
	}
	text, _ := body[0].(prose.Text)
	for _, behind := range [...]string{" = ", " makes ", " uses "} {
		if name, rest, found := strings.Cut(string(text), behind); found {
			if behind != " = " {
				rest = strings.TrimLeft(behind, " ") + rest
			}
			body[0] = prose.Text(capital(rest))
			return Special{Short: name, How: body}
		}
	}
	return Special{Short: rule.Name, How: body}
}
