package stitch

// Where the figures and names come from. The Council asks to be credited as "Craft Yarn Council's www.YarnStandards.com".
const (
	council  = "Craft Yarn Council's www.YarnStandards.com, crochet abbreviations and term differences"
	chartKey = "Craft Yarn Council's www.YarnStandards.com, crochet chart symbols"
	ladder   = "by the ladder of the Craft Yarn Council's term differences: each UK name stands one step higher"
	usual    = "common practice, no source"
	memory   = "from memory"
)

// dictionary holds the stitches. Heights in chains are the usual ch 1 : sc 1 : hdc 2 : dc 3 : tr 4 : dtr 5; row-ends follow drawn
// charts (sc 1, hdc 1½, dc 2, tr 3) and pick-up habits (two to a dc row). Turning chains: seven pages agree on 0, 1, 2, 3, 4, 5, six on
// which of them count; dummies.com, How to crochet a turning chain, is one. Symbols are named after the Council's chart key.
var dictionary = [...]Entry{
	{Name: "ch", Class: Chains, Uses: 0, Makes: 1, Chains: 1, Halves: 2, Counts: NotCounted, Symbol: "oval", Source: council,
		US: Names{Abbr: "ch", Words: "chain", Also: []string{"chain stitch", "ch st"}},
		UK: Names{Abbr: "ch", Words: "chain", Also: []string{"chain stitch", "ch st"}}},
	{Name: "sl st", Class: Slip, Uses: 1, Makes: 1, Chains: 0, Halves: 1, Turning: 0, Counts: NotCounted, Symbol: "dot", Source: council,
		US: Names{Abbr: "sl st", Words: "slip stitch", Also: []string{"ss", "slst", "sl-st", "slip-stitch", "slip st", "sl stitch", "s.s"}},
		UK: Names{Abbr: "ss", Words: "slip stitch", Also: []string{"sl st", "slst", "sl-st", "slip-stitch", "slip st", "sl stitch", "s.s"}}},

	{Name: "sc", Uses: 1, Makes: 1, Chains: 1, Halves: 2, Turning: 1, Counts: NotCounted, Symbol: "cross", Source: council,
		US: Names{Abbr: "sc", Words: "single crochet", Also: []string{"single", "s.c", "single crochet stitch"}},
		UK: Names{Abbr: "dc", Words: "double crochet", Also: []string{"double", "d.c", "close double crochet", "double stitch"}}},
	{Name: "esc", Uses: 1, Makes: 1, Chains: 2, Halves: 3, Turning: 2, Counts: NotCounted, Symbol: "tall-cross", Source: ladder + "; turning chain from memory",
		US: Names{Abbr: "esc", Words: "extended single crochet", Also: []string{"exsc"}},
		UK: Names{Abbr: "edc", Words: "extended double crochet", Also: []string{"exdc"}}},
	{Name: "hdc", Uses: 1, Makes: 1, Chains: 2, Halves: 3, Turning: 2, Counts: Unsettled, Symbol: "t", Source: council,
		US: Names{Abbr: "hdc", Words: "half double crochet", Also: []string{"half double", "h.d.c", "half-double", "half-double crochet"}},
		UK: Names{Abbr: "htr", Words: "half treble crochet", Also: []string{"half treble", "h.tr", "half-treble", "short treble"}}},
	{Name: "ehdc", Uses: 1, Makes: 1, Chains: 3, Halves: 4, Turning: 2, Counts: Unsettled, Symbol: "tall-t", Source: ladder + "; height and turning chain from memory",
		US: Names{Abbr: "ehdc", Words: "extended half double crochet", Also: []string{"exhdc"}},
		UK: Names{Abbr: "ehtr", Words: "extended half treble crochet", Also: []string{"exhtr"}}},
	{Name: "dc", Uses: 1, Makes: 1, Chains: 3, Halves: 4, Turning: 3, Counts: Counted, Symbol: "t-bar", Source: council,
		US: Names{Abbr: "dc", Words: "double crochet", Also: []string{"double", "d.c", "double crochet stitch"}},
		UK: Names{Abbr: "tr", Words: "treble crochet", Also: []string{"treble", "long", "long treble", "treble stitch"}}},
	{Name: "edc", Uses: 1, Makes: 1, Chains: 4, Halves: 5, Turning: 3, Counts: Counted, Symbol: "tall-t-bar", Source: ladder + "; height and turning chain from memory",
		US: Names{Abbr: "edc", Words: "extended double crochet", Also: []string{"exdc"}},
		UK: Names{Abbr: "etr", Words: "extended treble crochet", Also: []string{"extr"}}},
	{Name: "tr", Uses: 1, Makes: 1, Chains: 4, Halves: 6, Turning: 4, Counts: Counted, Symbol: "t-2-bars", Source: council,
		US: Names{Abbr: "tr", Words: "treble crochet", Also: []string{"treble", "trc", "triple crochet"}},
		UK: Names{Abbr: "dtr", Words: "double treble crochet", Also: []string{"double treble", "d.tr"}}},
	{Name: "etr", Uses: 1, Makes: 1, Chains: 5, Halves: 7, Turning: 4, Counts: Counted, Source: ladder + "; height and turning chain from memory",
		US: Names{Abbr: "etr", Words: "extended treble crochet", Also: []string{"extr"}},
		UK: Names{Abbr: "edtr", Words: "extended double treble crochet"}},
	{Name: "dtr", Uses: 1, Makes: 1, Chains: 5, Halves: 8, Turning: 5, Counts: Counted, Symbol: "t-3-bars", Source: council,
		US: Names{Abbr: "dtr", Words: "double treble crochet", Also: []string{"double treble"}},
		UK: Names{Abbr: "trtr", Words: "triple treble crochet", Also: []string{"ttr", "triple treble", "treble treble"}}},
	{Name: "trtr", Uses: 1, Makes: 1, Chains: 6, Halves: 10, Turning: 6, Counts: Counted, Symbol: "t-4-bars", Source: ladder + "; the UK abbreviation from memory",
		US: Names{Abbr: "trtr", Words: "triple treble crochet", Also: []string{"triple treble", "ttr"}},
		UK: Names{Abbr: "qtr", Words: "quadruple treble crochet", Also: []string{"quadtr", "quad tr", "quadruple treble"}}},
	{Name: "quad tr", Uses: 1, Makes: 1, Chains: 7, Halves: 12, Turning: 7, Counts: Counted, Symbol: "t-5-bars", Source: ladder + "; abbreviations from memory",
		US: Names{Abbr: "quad tr", Words: "quadruple treble crochet", Also: []string{"quadtr", "quadruple treble"}},
		UK: Names{Abbr: "quint tr", Words: "quintuple treble crochet", Also: []string{"quinttr", "quintr", "quintuple treble"}}},

	// Stitches that make their own foundation. The Council's list leaves them to the pattern; the names are usual.
	{Name: "fsc", Class: Foundation, Makes: 1, Chains: 1, Halves: 2, Turning: 1, Counts: NotCounted, Symbol: "cross-over-oval", Source: usual,
		US: Names{Abbr: "fsc", Words: "foundation single crochet", Also: []string{"foundation sc", "chainless sc"}},
		UK: Names{Abbr: "fdc", Words: "foundation double crochet", Also: []string{"foundation dc"}}},
	{Name: "fhdc", Class: Foundation, Makes: 1, Chains: 2, Halves: 3, Turning: 2, Counts: Unsettled, Symbol: "t-over-oval", Source: usual,
		US: Names{Abbr: "fhdc", Words: "foundation half double crochet", Also: []string{"foundation hdc"}},
		UK: Names{Abbr: "fhtr", Words: "foundation half treble crochet", Also: []string{"foundation htr"}}},
	{Name: "fdc", Class: Foundation, Makes: 1, Chains: 3, Halves: 4, Turning: 3, Counts: Counted, Symbol: "t-bar-over-oval", Source: usual,
		US: Names{Abbr: "fdc", Words: "foundation double crochet", Also: []string{"foundation dc"}},
		UK: Names{Abbr: "ftr", Words: "foundation treble crochet", Also: []string{"foundation tr"}}},
	{Name: "ftr", Class: Foundation, Makes: 1, Chains: 4, Halves: 6, Turning: 4, Counts: Counted, Source: usual,
		US: Names{Abbr: "ftr", Words: "foundation treble crochet", Also: []string{"foundation tr"}},
		UK: Names{Abbr: "fdtr", Words: "foundation double treble crochet", Also: []string{"foundation dtr"}}},

	// Changes of the stitch in hand.
	{Name: "inc", Class: Change, Uses: 1, Makes: 2, Source: council,
		US: Names{Abbr: "inc", Words: "increase: 2 sts in one st", Also: []string{"increase"}},
		UK: Names{Abbr: "inc", Words: "increase: 2 sts in one st", Also: []string{"increase"}}},
	{Name: "dec", Class: Change, Uses: 2, Makes: 1, Source: council,
		US: Names{Abbr: "dec", Words: "decrease: 2 sts worked together", Also: []string{"decrease"}},
		UK: Names{Abbr: "dec", Words: "decrease: 2 sts worked together", Also: []string{"decrease"}}},
	{Name: "invdec", Class: Change, Uses: 2, Makes: 1, Chains: 1, Halves: 2, Symbol: "joined-tops", Source: usual,
		US: Names{Abbr: "invdec", Words: "invisible decrease", Also: []string{"inv dec", "inv-dec", "invisible dec", "idec"}},
		UK: Names{Abbr: "invdec", Words: "invisible decrease", Also: []string{"inv dec", "inv-dec", "invisible dec", "idec"}}},

	// Variants of the plain stitches.
	{Name: "rsc", Uses: 1, Makes: 1, Chains: 1, Halves: 2, Counts: NotCounted, Symbol: "tilde-cross", Source: usual,
		US: Names{Abbr: "rsc", Words: "reverse single crochet", Also: []string{"reverse sc", "rev sc", "crab st", "crab stitch", "revsc"}},
		UK: Names{Abbr: "rdc", Words: "reverse double crochet", Also: []string{"reverse dc", "rev dc", "crab st", "crab stitch"}}},
	{Name: "spike sc", Uses: 1, Makes: 1, Chains: 1, Halves: 2, Turning: 1, Counts: NotCounted, Symbol: "long-cross", Source: usual,
		US: Names{Abbr: "spike sc", Words: "spike single crochet", Also: []string{"spike st", "spike stitch", "spike", "long sc", "ssc"}},
		UK: Names{Abbr: "spike dc", Words: "spike double crochet", Also: []string{"spike st", "spike stitch", "spike", "long dc"}}},
	{Name: "long dc", Uses: 1, Makes: 1, Chains: 3, Halves: 4, Turning: 3, Counts: Counted, Source: usual,
		US: Names{Abbr: "long dc", Words: "long double crochet", Also: []string{"spike dc"}},
		UK: Names{Abbr: "long tr", Words: "long treble crochet", Also: []string{"spike tr"}}},
	{Name: "mosaic dc", Uses: 1, Makes: 1, Chains: 3, Halves: 4, Turning: 3, Counts: Counted, Source: usual,
		US: Names{Abbr: "mosaic dc", Words: "mosaic double crochet", Also: []string{"mdc"}},
		UK: Names{Abbr: "mosaic tr", Words: "mosaic treble crochet", Also: []string{"mtr"}}},
	{Name: "linked dc", Uses: 1, Makes: 1, Chains: 3, Halves: 4, Turning: 3, Counts: Counted, Source: usual,
		US: Names{Abbr: "ldc", Words: "linked double crochet", Also: []string{"linked dc"}},
		UK: Names{Abbr: "ltr", Words: "linked treble crochet", Also: []string{"linked tr"}}},
	{Name: "linked tr", Uses: 1, Makes: 1, Chains: 4, Halves: 6, Turning: 4, Counts: Counted, Source: usual,
		US: Names{Abbr: "linked tr", Words: "linked treble crochet"},
		UK: Names{Abbr: "linked dtr", Words: "linked double treble crochet"}},

	// Units: what each is made of is the pattern's to say; these are the usual sizes.
	{Name: "cluster", Class: Unit, Uses: 1, Makes: 1, Chains: 3, Halves: 4, Symbol: "stems-joined-twice", Source: council,
		US: Names{Abbr: "CL", Words: "cluster", Also: []string{"clus", "cluster st", "cluster stitch"}},
		UK: Names{Abbr: "CL", Words: "cluster", Also: []string{"clus", "cluster st", "cluster stitch"}}},
	{Name: "bobble", Class: Unit, Uses: 1, Makes: 1, Chains: 3, Halves: 4, Symbol: "stems-joined-twice", Source: council,
		US: Names{Abbr: "bo", Words: "bobble", Also: []string{"bob", "mb", "bobble st", "bobble stitch", "bbl"}},
		UK: Names{Abbr: "bo", Words: "bobble", Also: []string{"bob", "mb", "bobble st", "bobble stitch", "bbl"}}},
	{Name: "puff", Class: Unit, Uses: 1, Makes: 1, Chains: 2, Halves: 3, Symbol: "narrow-stems-joined-twice", Source: council,
		US: Names{Abbr: "puff", Words: "puff stitch", Also: []string{"ps", "puff st", "pst", "pf"}},
		UK: Names{Abbr: "puff", Words: "puff stitch", Also: []string{"ps", "puff st", "pst", "pf"}}},
	{Name: "popcorn", Class: Unit, Uses: 1, Makes: 1, Chains: 3, Halves: 4, Symbol: "stems-closed-top", Source: council,
		US: Names{Abbr: "pc", Words: "popcorn", Also: []string{"pop", "popcorn st", "popcorn stitch", "pcn"}},
		UK: Names{Abbr: "pc", Words: "popcorn", Also: []string{"pop", "popcorn st", "popcorn stitch", "pcn"}}},
	{Name: "shell", Class: Unit, Uses: 1, Makes: 5, Chains: 3, Halves: 4, Symbol: "stems-from-one-foot", Source: council + "; five dc is the chart key's",
		US: Names{Abbr: "sh", Words: "shell", Also: []string{"shell st", "shell stitch"}},
		UK: Names{Abbr: "sh", Words: "shell", Also: []string{"shell st", "shell stitch"}}},
	{Name: "V-st", Class: Unit, Uses: 1, Makes: 2, Chains: 3, Halves: 4, Symbol: "two-stems-from-one-foot", Source: usual,
		US: Names{Abbr: "V-st", Words: "V-stitch", Also: []string{"v st", "v stitch", "vst", "v"}},
		UK: Names{Abbr: "V-st", Words: "V-stitch", Also: []string{"v st", "v stitch", "vst", "v"}}},
	{Name: "fan", Class: Unit, Uses: 1, Makes: 5, Chains: 3, Halves: 4, Symbol: "stems-from-one-foot", Source: usual,
		US: Names{Abbr: "fan", Words: "fan", Also: []string{"fan st", "fan stitch"}},
		UK: Names{Abbr: "fan", Words: "fan", Also: []string{"fan st", "fan stitch"}}},
	{Name: "star", Class: Unit, Uses: 2, Makes: 2, Chains: 2, Halves: 3, Source: memory,
		US: Names{Abbr: "star st", Words: "star stitch", Also: []string{"star"}},
		UK: Names{Abbr: "star st", Words: "star stitch", Also: []string{"star"}}},
	{Name: "cross", Class: Unit, Uses: 2, Makes: 2, Chains: 3, Halves: 4, Symbol: "crossed-stems", Source: usual,
		US: Names{Abbr: "X-st", Words: "crossed stitch", Also: []string{"cross st", "cross stitch", "crossed st", "x st", "x stitch", "cross"}},
		UK: Names{Abbr: "X-st", Words: "crossed stitch", Also: []string{"cross st", "cross stitch", "crossed st", "x st", "x stitch", "cross"}}},
	{Name: "block", Class: Unit, Uses: 3, Makes: 3, Chains: 3, Halves: 4, Source: memory,
		US: Names{Abbr: "blk", Words: "block", Also: []string{"solid mesh"}},
		UK: Names{Abbr: "blk", Words: "block", Also: []string{"solid mesh"}}},
	{Name: "mesh", Class: Unit, Uses: 3, Makes: 3, Chains: 3, Halves: 4, Source: memory,
		US: Names{Abbr: "mesh", Words: "open mesh"},
		UK: Names{Abbr: "mesh", Words: "open mesh"}},
	{Name: "loop st", Class: Unit, Uses: 1, Makes: 1, Chains: 1, Halves: 2, Source: usual,
		US: Names{Abbr: "loop st", Words: "loop stitch", Also: []string{"lp st", "fur st", "fur stitch"}},
		UK: Names{Abbr: "loop st", Words: "loop stitch", Also: []string{"lp st", "fur st", "fur stitch"}}},
	{Name: "bullion", Class: Unit, Uses: 1, Makes: 1, Chains: 3, Halves: 4, Source: usual,
		US: Names{Abbr: "bullion", Words: "bullion stitch", Also: []string{"bullion st"}},
		UK: Names{Abbr: "bullion", Words: "bullion stitch", Also: []string{"bullion st"}}},

	{Name: "picot", Class: Trim, Symbol: "loop-and-dot", Source: chartKey,
		US: Names{Abbr: "picot", Words: "picot", Also: []string{"p"}},
		UK: Names{Abbr: "picot", Words: "picot", Also: []string{"p"}}},
	{Name: "magic ring", Class: Ring, Symbol: "ring", Source: usual,
		US: Names{Abbr: "MR", Words: "magic ring", Also: []string{"magic circle", "magic loop", "sliding loop", "adjustable ring"}},
		UK: Names{Abbr: "MR", Words: "magic ring", Also: []string{"magic circle", "magic loop", "sliding loop", "adjustable ring"}}},
}

// byName finds the entry of a Stitch by its Name.
var byName = func() map[string]int {
	m := make(map[string]int, len(dictionary))
	for i := range dictionary {
		m[dictionary[i].Name] = i
	}
	return m
}()
