package page

import (
	"slices"
	"strings"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
)

// notes are the lines that every pattern needs and no designer should have to write: how figures for the sizes are read, what
// turning chains count as, how lengths cross between units; and in other terms than the designer's, whose the wording is.
func notes(p *pattern.Pattern, s Sizes, carry carrier) []string {
	var out []string
	if carry.from != carry.to {
		out = append(out, "The designer writes in "+termsWords(carry.from)+". Here every stitch has its name in "+termsWords(carry.to)+"; the work and the counts are the same.")
	}
	if s.Key != "" {
		out = append(out, "Figures for the sizes stand in the order "+s.Key+". One figure alone is for every size.")
	}
	for _, t := range p.Turning {
		does := " does not count as a stitch."
		if t.Counts {
			does = " counts as a stitch."
		}
		out = append(out, "The turning chain of "+carry.stitch(t.Stitch.Text)+does)
	}
	return append(out, crossing(p.Tape))
}

// crossing says how the lengths of the thing made cross between centimetres and inches.
func crossing(t measure.Tape) string {
	inch := t.InCentimetres(measure.Int(1))
	if t.Unit != measure.Inch {
		inch = measure.Int(1).Div(t.InInches(measure.Int(1)))
	}
	if inch.Cmp(measure.GarmentInch) == 0 {
		return "What you make is reckoned at 2.5 cm to the inch, as a swatch of 10 cm is taken for one of 4 inches; bodies and yarn at 2.54."
	}
	return "Everything is reckoned at " + inch.Decimal(3) + " cm to the inch."
}

func caption(p pattern.Photo) string {
	var words []string
	if p.Shows != "" {
		words = append(words, "Shown in size "+p.Shows)
	}
	if p.Ease != "" {
		words = append(words, "with "+p.Ease+" of ease")
	}
	if len(words) == 0 {
		return ""
	}
	return capital(strings.Join(words, ", ")) + "."
}

func credits(p *pattern.Pattern) []Credit {
	var out []Credit
	for _, c := range p.Credits {
		out = append(out, Credit{Name(c.Role), c.Name})
	}
	for _, t := range p.Tested {
		role := "Made by hand"
		if manySizes(p) && len(t.Sizes) > 0 {
			role = "Made in " + runs(p.Sizes.Names, inRange(t.Sizes, len(p.Sizes.Names)))
		}
		if t.By != "" {
			out = append(out, Credit{role, t.By})
		}
	}
	return out
}

func inRange(sizes []int, n int) []int {
	return slices.DeleteFunc(slices.Clone(sizes), func(s int) bool { return s < 0 || s >= n })
}

// sources are the credits asked for by the owners of the tables a page was made with.
func sources(p *pattern.Pattern) []string {
	out := []string{standardsCredit} // abbreviations, hooks and yarn weights
	if c := p.Sizes.Credit; c != "" && !slices.Contains(out, c) {
		out = append(out, c)
	}
	return out
}

// contactLink makes a link of the studio's contact: an address of the web or of mail; "" for other words.
func contactLink(contact string) string {
	switch {
	case strings.HasPrefix(contact, "https://") || strings.HasPrefix(contact, "http://") || strings.HasPrefix(contact, "mailto:"):
		return contact
	case strings.Contains(contact, "@") && !strings.ContainsAny(contact, " /<>"):
		return "mailto:" + contact
	}
	return ""
}
