package page

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"foundrow/internal/pattern"
)

// The filters of the catalogue, as they stand in addresses.
const (
	byKind   = "kind"
	bySkill  = "skill"
	byWeight = "weight"
)

// A Catalogue is one page of the catalogue: the front page with every pattern, or the patterns of one kind, skill or weight.
type Catalogue struct {
	Studio  Studio
	Menu    []Link
	Address string
	Title   string // "All patterns", "Hats"
	Shown   []Card // newest first
	Count   string // "3 patterns"
	Filters []Filter
}

// A Filter is one way to narrow the catalogue, as links to its pages.
type Filter struct {
	Label   string // "Kind"
	Choices []Choice
}

// A Choice is one page of a filter.
type Choice struct {
	Label   string
	Address string
	Count   int  // how many patterns it shows
	Here    bool // it is the page one is on
}

// A sieve is how a filter sorts cards: into which values, and in which order these are shown.
type sieve struct {
	label  string
	name   string // in addresses
	order  []string
	values func(Card) []string
	title  func(value string) string
}

func sieves() []sieve {
	return []sieve{
		{"Kind", byKind, pattern.Kinds, func(c Card) []string { return said(c.Kind) }, kindName},
		{"Skill", bySkill, pattern.Skills, func(c Card) []string { return said(c.Skill) }, capital},
		{"Yarn weight", byWeight, weightNumbers(), weightsOf, weightLabel},
	}
}

// Catalogues makes the front page and one page for each kind, skill and yarn weight that a pattern has.
func Catalogues(studio pattern.Studio, cards []Card, menu []Link) []Catalogue {
	cards = slices.Clone(cards)
	slices.SortStableFunc(cards, newestFirst)
	front := Catalogue{Studio: studioOf(studio), Menu: menu, Title: "All patterns", Shown: cards, Count: patterns(len(cards))}
	out := []Catalogue{front}
	for _, s := range sieves() {
		filter, pages := s.sift(cards)
		if len(filter.Choices) > 0 {
			out[0].Filters = append(out[0].Filters, filter)
		}
		for _, page := range pages {
			page.Studio, page.Menu = front.Studio, menu
			out = append(out, page)
		}
	}
	for i := 1; i < len(out); i++ {
		out[i].Filters = marked(out[0].Filters, out[i].Address)
	}
	return out
}

// sift returns the choices of a filter that some card has, in the trade's order and then any the trade has no place for, and
// a page for each.
func (s sieve) sift(cards []Card) (Filter, []Catalogue) {
	under := map[string][]Card{}
	order := slices.Clone(s.order)
	for _, c := range cards {
		for _, value := range s.values(c) {
			if under[value] == nil && !slices.Contains(order, value) {
				order = append(order, value)
			}
			under[value] = append(under[value], c)
		}
	}
	filter := Filter{Label: s.label}
	var pages []Catalogue
	for _, value := range order {
		shown := under[value]
		if len(shown) == 0 {
			continue
		}
		choice := Choice{Label: s.title(value), Address: FilterAddress(s.name, value), Count: len(shown)}
		title := choice.Label
		if s.name != byKind {
			title = s.label + ": " + title
		}
		filter.Choices = append(filter.Choices, choice)
		pages = append(pages, Catalogue{Address: choice.Address, Title: title, Shown: shown, Count: patterns(len(shown))})
	}
	return filter, pages
}

func patterns(n int) string { return Counted(strconv.Itoa(n), "patterns") }

// newestFirst puts patterns that are not out yet first, then those last released; patterns of one day by their titles.
func newestFirst(a, b Card) int {
	return cmp.Or(
		cmp.Compare(unreleased(b), unreleased(a)),
		strings.Compare(b.Released, a.Released),
		strings.Compare(a.Title, b.Title),
		strings.Compare(a.Slug, b.Slug),
	)
}

func unreleased(c Card) int {
	if c.Released == "" {
		return 1
	}
	return 0
}

func said(value string) []string {
	if value == "" {
		return nil
	}
	return []string{value}
}

func weightsOf(c Card) []string {
	var out []string
	for _, w := range c.Weights {
		if s := strconv.Itoa(w); w >= 0 && !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}

func weightNumbers() []string {
	out := make([]string, len(yarnWeights))
	for i := range out {
		out[i] = strconv.Itoa(i)
	}
	return out
}

func weightLabel(number string) string {
	n, err := strconv.Atoi(number)
	if name := WeightName(n); err == nil && name != "" {
		return name
	}
	return number
}

// kindName is a kind as the heading over several: "hat" gives "Hats".
func kindName(kind string) string {
	switch kind {
	case "socks", "mittens":
		return capital(kind)
	case "home":
		return "For the home"
	case "other":
		return "Other things"
	}
	return capital(kind) + "s"
}

// marked returns the filters with the choice of an address marked as the page one is on.
func marked(filters []Filter, here string) []Filter {
	out := slices.Clone(filters)
	for i := range out {
		out[i].Choices = slices.Clone(out[i].Choices)
		for j := range out[i].Choices {
			out[i].Choices[j].Here = out[i].Choices[j].Address == here
		}
	}
	return out
}
