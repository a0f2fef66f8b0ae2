package page

import (
	"strings"

	"foundrow/internal/pattern"
	"foundrow/internal/prose"
)

// A Caution says what to watch for in a thing made for a child, a baby or an animal. It points at standards by their number
// and never says that one is met.
type Caution struct{ Title, Text string }

// CautionsClosing ends every list of cautions.
const CautionsClosing = "These lines point at standards; they do not say that anything made from this pattern meets one. The rules of the place where you live, give or sell come first."

// Everything here is worded for this program; which standard covers what, and where it was read, stands beside each.
var (
	// 16 CFR 1120 and ASTM F1816-18: webstore.ansi.org, tuvsud.com e-ssentials 8/2019; EN 14682:2014: standards.iteh.ai.
	cordCaution = Caution{"Cords and ties", "A cord, tie or ribbon at the neck, hood or hem of a child’s garment can catch and strangle. See ASTM F1816 and 16 CFR part 1120 (United States) and EN 14682 (Europe and United Kingdom) for where cords may be and how long; a button or a sewn band does the same work without one."}
	// Makers' reports of a ribbon laced through a blanket's edge and of a bonnet's ribbon swallowed:
	// sparrowinthesnow.blogspot.com/2009/04 and knittinghelp.com archive t-100654.
	ribbonCaution = Caution{"Ribbon", "Ribbon laced through an edge can be pulled into a loop or come away and be swallowed. For a baby, work the edge without it."}
	// 16 CFR 1501: ecfr.gov/current/title-16/part-1501; EN 71-1: dokumen.tips "Safety of toys". Embroidery instead of buttons
	// for under threes: cansoid.com.
	partsCaution = Caution{"Small parts", "Buttons, beads, eyes and anything else that can come off can choke. See 16 CFR part 1501 (United States) and EN 71-1 (Europe and United Kingdom). For a child under three, embroider instead; for anyone older, sew on fast and pull-test after every wash."}
	// Advice against pompoms and strings under three: knittingparadise.com, a reader's report; no standard.
	tuftCaution = Caution{"Pompoms and fringe", "Pompoms, tassels and fringe shed strands that a small child can swallow or wind round a finger. Leave them off for a child under three."}
	// crochets.site/resources (EN 71 and CPSIA for handmade toys), joygiftlondon.com/blogs (toy standards of the world).
	toyCaution = Caution{"Giving or selling a toy", "Rules for toys bind everyone who sells one, made by hand or not. See EN 71 parts 1 to 3 and Directive 2009/48/EC (European Union), the UKCA rules (Great Britain), ASTM F963 and the CPSIA (United States), AS/NZS ISO 8124 (Australia and New Zealand) and the CCPSA (Canada). “For collectors” on a label changes nothing."}
	// American Academy of Pediatrics, safe sleep policy, read in summaries (AAP 2011 review, fdocuments.us).
	sleepCaution = Caution{"Sleep", "Keep loose blankets, pillows and soft toys out of a sleeping baby’s bed. See the safe sleep policy of the American Academy of Pediatrics, or the advice of your own health service."}
	// A reader's report of an injury in an open-work cocoon: knittingparadise.com; no standard.
	openCaution = Caution{"Openings", "Fingers and toes go through open stitches and loose ends inside. For a baby, keep the fabric close and weave every end in tightly."}
	// Non-shedding yarn for babies: cansoid.com; no standard.
	fluffCaution = Caution{"Fluffy yarn", "Mohair and brushed yarns shed fibres that a baby breathes in or swallows. Choose a smooth yarn that does not shed."}
	// Common practice, no source.
	petCaution = Caution{"Pets", "Try it on for a short while with you there, check that nothing rubs, and take it off an animal that is alone. Anything that can be chewed off will be."}
)

// cautions gives the cautions for the wearer and the kind of thing, and those that words of the pattern call for.
func cautions(p *pattern.Pattern) []Caution {
	wearer := p.Wearer
	if wearer == "" {
		wearer = p.Sizes.Wearer
	}
	baby, pet, toy := wearer == pattern.Baby, wearer == pattern.Pet, p.Kind.Text == "toy"
	young := baby || wearer == pattern.Child || toy
	if !young && !pet {
		return nil
	}
	says := wordsOf(p)
	var out []Caution
	add := func(when bool, c Caution) {
		if when {
			out = append(out, c)
		}
	}
	add(pet, petCaution)
	add(says("cord", "cords", "tie", "ties", "drawstring", "drawstrings", "ribbon", "ribbons"), cordCaution)
	add(baby && says("ribbon", "ribbons"), ribbonCaution)
	add(says("button", "buttons", "bead", "beads", "eye", "eyes", "bell", "bells", "squeaker", "toggle", "toggles"), partsCaution)
	add(young && says("pompom", "pompoms", "fringe", "tassel", "tassels"), tuftCaution)
	add(toy, toyCaution)
	add(toy || baby && (p.Kind.Text == "blanket" || p.Kind.Text == "home" || says("cocoon", "blanket", "pillow", "cushion")), sleepCaution)
	add(baby, openCaution)
	add((baby || toy) && says("mohair", "brushed", "fluffy", "eyelash", "angora"), fluffCaution)
	return out
}

// wordsOf returns a function that tells whether any of some words stands anywhere in the pattern: its title and summary, text,
// rows, notions and yarns.
func wordsOf(p *pattern.Pattern) func(words ...string) bool {
	used := map[string]bool{}
	note := func(text string) {
		for word := range strings.FieldsFuncSeq(strings.ToLower(text), func(r rune) bool { return r < 'a' || r > 'z' }) {
			used[word] = true
		}
	}
	note(p.Title.Text)
	note(p.Summary.Text)
	prose.Walk(p.Text, func(l prose.Line) { note(l.Words(nil)) })
	for _, piece := range p.Pieces {
		note(p.File.Slice(piece.Body))
	}
	for _, n := range p.Notions {
		note(n.Name.Text + " " + n.What)
	}
	for _, y := range p.Yarns {
		note(y.Wanted + " " + y.Fibre)
	}
	return func(words ...string) bool {
		for _, w := range words {
			if used[w] {
				return true
			}
		}
		return false
	}
}
