package proof

import (
	"strings"
	"testing"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

func wordsOf(text string, kind passageKind) []word {
	c := cutter{
		file:  source.NewFile("pattern.md", text),
		slots: []pattern.Slot{{Span: source.Span{From: strings.Index(text, "{"), To: strings.Index(text, "}") + 1}}},
	}
	c.take(kind, source.Span{From: 0, To: len(text)})
	return c.words
}

// Each line is cut into the words that follow it, numbers with what they are worth.
func TestCut(t *testing.T) {
	for _, c := range []struct{ text, words string }{
		{"Sc in next 5 sts.", "Sc in next 5=5 sts ."},
		{"54.5 cm, 21¼ in or 21 1/4\"", "54.5=54 1/2 cm , 21¼=21 1/4 in or 21 1/4=21 1/4 \""},
		{"½ a ball, 3/4 of it", "½=1/2 a ball , 3/4=3/4 of it"},
		{"1,200 m (1,200,000)", "1,200=1200 m ( 1=1 , 200=200 , 000=0 )"},
		{"62 (68,740,800) sts", "62=62 ( 68=68 , 740=740 , 800=800 ) sts"},
		{"the 38th st, the 1st and 21st, and 3st", "the 38th=38 st , the 1st=1 and 21st=21 , and 3=3 st"},
		{"ch-2 sp, row-end, 4-ply", "ch-2 sp , row - end , 4=4 - ply"},
		{"sizes 2X and 3X at 11:40", "sizes 2X and 3X at 11:40"},
		{"10cm and 5sc", "10=10 cm and 5=5 sc"},
		{"write \\htr or `htr2tog`, \\{", "write or , {"},
		{"[the cuffs](#cuffs) and <https://films.example/2>", "[ the cuffs ] and"},
		{"*all* of **{front}** sts", "all of front# sts"},
		{"don't use right_front 2-3", "don't use right_front 2=2 - 3=3"},
		{"an open `code and { brace", "an open code and { brace"},
	} {
		var got []string
		for _, w := range wordsOf(c.text, paragraph) {
			said := w.text
			switch w.kind {
			case number, ordinal:
				said += "=" + w.num.String()
			case value:
				said += "#"
			}
			got = append(got, said)
		}
		if s := strings.Join(got, " "); s != c.words {
			t.Errorf("%q is cut into\n\t%s\nwanted\n\t%s", c.text, s, c.words)
		}
	}
}

// The quantities of each line, for patterns of four sizes unless it says otherwise.
func TestQuantities(t *testing.T) {
	for _, c := range []struct {
		text  string
		sizes int
		want  string
	}{
		{"62 (68, 74, 80) sts", 4, "62|68|74|80 stitches [1 3]"},
		{"1 (2, 3, 4, 5) (6, 7, 8, 9) balls", 9, "1|2|3|4|5|6|7|8|9 [1 4 4]"},
		{"18 (20, 22, 24)\" [45.5 (51, 56, 61) cm]", 4, `18|20|22|24 in [1 3]; 45 1/2|51|56|61 cm [1 3]`},
		{"work - (-, 3, 6) rows", 4, "3; 6"},
		{"4 (-, 3, 6) rows", 4, "4|-|3|6 rows [1 3]"},
		{"10 (12) cm", 2, "10|12 cm [1 1]"},
		{"10 (12) cm", 4, "10; 12"},
		{"54 cm (21 in)", 2, "54 cm; 21 in"},
		{"7 (4.5 mm)", 2, "7; 4 1/2 mm"},
		{"18\" (20\", 22\", 24\")", 4, `18|20|22|24 in [1 3]`},
		{"62 hdc sts and 30 foundation chains", 4, "62 stitches; 30 stitches"},
		{"ch 74, 5 times", 4, "74 stitches; 5"},
		{"in the 38th st", 4, "38 stitches"},
		{"10 in each corner, 10 in wide", 4, "10; 10 in"},
		{"(86, 94, 102)", 4, "86; 94; 102"},
		{"62 (68, 74", 4, "62; 68; 74"},
		{"5 (sc, hdc, dc)", 4, "5"},
	} {
		words := wordsOf(c.text, paragraph)
		var got []string
		for _, q := range quantities(words, c.sizes) {
			got = append(got, say(q))
		}
		if s := strings.Join(got, "; "); s != c.want {
			t.Errorf("%q for %d sizes has\n\t%s\nwanted\n\t%s", c.text, c.sizes, s, c.want)
		}
	}
}

func say(q quantity) string {
	var nums []string
	for _, e := range q.entries {
		if e.absent {
			nums = append(nums, "-")
		} else {
			nums = append(nums, e.num.String())
		}
	}
	s := strings.Join(nums, "|")
	if q.unit != measure.NoUnit {
		s += " " + shortUnit(q.unit)
	}
	if q.counts != formula.Unknown {
		s += " " + q.counts.String()
	}
	if q.isList() {
		s += " ["
		for i, n := range q.shape {
			if i > 0 {
				s += " "
			}
			s += measure.Int(int64(n)).String()
		}
		s += "]"
	}
	return s
}

// A word knows where it stands, however it was found.
func TestWordsStandWhereTheySay(t *testing.T) {
	text := "## 1:30 Back\n\nEach *side* has {front} sts, ½ of them live: é 21¼ in.\n"
	for _, kind := range []passageKind{paragraph, heading, table, row} {
		for _, w := range wordsOf(text, kind) {
			stands := text[w.span.From:w.span.To]
			if w.kind == value {
				stands = strings.Trim(stands, "{}")
			}
			if stands != w.text {
				t.Errorf("%q stands at %v, where the text says %q", w.text, w.span, stands)
			}
		}
	}
}

func TestHouseShape(t *testing.T) {
	for _, c := range []struct {
		sizes int
		want  string
	}{
		{2, "a (b)"}, {6, "a (b, c, d, e, f)"}, {7, "a (b, c, d) (e, f, g)"}, {8, "a (b, c, d, e) (f, g, h)"}, {9, "a (b, c, d, e) (f, g, h, i)"},
		{10, "a (b, c, d, e, f) (g, h, i, j)"},
	} {
		if got := shaped(houseShape(c.sizes)); got != c.want {
			t.Errorf("%d sizes are set %s, wanted %s", c.sizes, got, c.want)
		}
	}
}
