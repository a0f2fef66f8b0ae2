package formula

import (
	"math/big"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"foundrow/internal/measure"
	"foundrow/internal/source"
)

// builder makes formulas at random, as the parser would have read them.
type builder struct {
	t *rapid.T
	f Formula
}

// plainOps are worked on plain numbers alone; the others need kinds, names or pieces.
var plainOps = []op{opNumber, opNegate, opAdd, opSub, opMul, opDiv, opMin, opMax, opAbs, opShare, opRound}

var allOps = append([]op{opList, opName, opAsk, opPi, opRoot, opConvert, opRecast}, plainOps...)

func formulas(ops []op) *rapid.Generator[*Formula] {
	return rapid.Custom(func(t *rapid.T) *Formula {
		b := builder{t: t}
		b.node(ops, 4)
		return &b.f
	})
}

func (b *builder) decimal() measure.Num {
	return measure.Ratio(rapid.Int64Range(0, 2000).Draw(b.t, "n"), rapid.SampledFrom([]int64{1, 1, 2, 10}).Draw(b.t, "over"))
}

// node appends a node with its operands before it and returns its place.
func (b *builder) node(ops []op, depth int) int16 {
	o := rapid.SampledFrom(ops).Draw(b.t, "op")
	if depth == 0 {
		o = opNumber
	}
	n := node{op: o, a: none, b: none, c: none}
	operand := func() int16 { return b.node(ops, depth-1) }
	switch o {
	case opNumber:
		n.kind, n.num = Number, b.decimal()
		b.unit(&n, len(ops) > len(plainOps))
	case opList:
		n.kind, n.a = Number, int16(len(b.f.lists))
		for range 3 {
			b.f.lists = append(b.f.lists, b.decimal().Mul(measure.Int(rapid.SampledFrom([]int64{1, -1}).Draw(b.t, "sign"))))
		}
		n.b = int16(len(b.f.lists))
		b.unit(&n, true)
	case opName, opAsk:
		name := Name{Text: rapid.SampledFrom([]string{"chest", "rib_rows", "breite", "x2"}).Draw(b.t, "name")}
		if o == opAsk {
			name.Of = rapid.SampledFrom([]string{"rows", "left.row_ends"}).Draw(b.t, "of")
			name.Given = rapid.IntRange(0, 2).Draw(b.t, "given")
			if name.Given > 0 {
				n.a = operand()
			}
			if name.Given > 1 {
				n.b = operand()
			}
		}
		n.name = int16(len(b.f.names))
		b.f.names = append(b.f.names, name)
	case opPi:
		n.kind = Number
	case opNegate, opAbs, opRoot:
		n.a = operand()
	case opShare:
		n.kind, n.num, n.a = Number, b.decimal().Div(measure.Int(100)), operand()
	case opConvert, opRecast:
		n.a = operand()
		word := rapid.SampledFrom([]string{"stitches", "rows", "cm", "inch", "length", "number", "g"}).Draw(b.t, "to")
		n.kind, n.unit, _ = parseKind(word)
		if o == opConvert {
			n.gauge = rapid.SampledFrom([]string{"", "body"}).Draw(b.t, "gauge")
		}
	case opRound:
		n.a = operand()
		n.way = Way(rapid.IntRange(int(Up), int(Nearest)).Draw(b.t, "way"))
		if n.series = series(rapid.IntRange(int(toWhole), int(toQuantity)).Draw(b.t, "series")); n.series >= toMultiple {
			n.b = operand()
		}
		if n.series == toMultiple && rapid.Bool().Draw(b.t, "plus") {
			n.c = operand()
		}
	default:
		n.a, n.b = operand(), operand()
	}
	b.f.nodes = append(b.f.nodes, n)
	return int16(len(b.f.nodes) - 1)
}

func (b *builder) unit(n *node, units bool) {
	if units {
		word := rapid.SampledFrom([]string{"", "cm", "inch", "sts", "rows", "g", "yd"}).Draw(b.t, "unit")
		if kind, unit, ok := parseUnit(word); ok {
			n.kind, n.unit = kind, unit
		}
	}
}

// tree is a formula without the places where its words stand.
func tree(f *Formula) (nodes []node, names []Name) {
	nodes, names = slices.Clone(f.nodes), slices.Clone(f.names)
	for i := range nodes {
		nodes[i].at, nodes[i].to, nodes[i].span, nodes[i].inside = 0, 0, span{}, false
		if nodes[i].op == opShare {
			nodes[i].kind = Number
		}
	}
	for i := range names {
		names[i].Span = source.Span{}
	}
	return nodes, names
}

func TestPrintThenParse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := formulas(allOps).Filter(func(f *Formula) bool { return len(f.nodes) <= mostNodes && len(f.lists) <= mostNodes }).Draw(t, "formula")
		text := f.String()
		again, findings := Parse(source.NewFile("print", text), 0, text)
		if len(findings) > 0 {
			t.Fatalf("%s\n%s", findings[0], findings[0].Excerpt())
		}
		nodes, names := tree(f)
		nodesAgain, namesAgain := tree(again)
		if !slices.Equal(nodes, nodesAgain) || !slices.Equal(names, namesAgain) || !slices.Equal(f.lists, again.lists) {
			t.Fatalf("%s\nis read as %s:\n%v\n%v", text, again, nodes, nodesAgain)
		}
	})
}

// judge works a formula of plain numbers with big.Rat, by the definition of each operation. It gives nil where nothing comes out
// or where a part is longer than a Num is made for.
func judge(f *Formula, i int16) *big.Rat {
	n := f.nodes[i]
	var a, b *big.Rat
	if n.a != none {
		if a = judge(f, n.a); a == nil {
			return nil
		}
	}
	if n.b != none {
		if b = judge(f, n.b); b == nil {
			return nil
		}
	}
	out := new(big.Rat)
	switch n.op {
	case opNumber:
		out = big.NewRat(n.num.Over(), n.num.Under())
	case opNegate:
		out.Neg(a)
	case opAdd:
		out.Add(a, b)
	case opSub:
		out.Sub(a, b)
	case opMul:
		out.Mul(a, b)
	case opDiv:
		if b.Sign() == 0 {
			return nil
		}
		out.Quo(a, b)
	case opMin, opMax:
		if out = a; (b.Cmp(a) < 0) == (n.op == opMin) {
			out = b
		}
	case opAbs:
		out.Abs(a)
	case opShare:
		out.Mul(a, big.NewRat(n.num.Over(), n.num.Under()))
	case opRound:
		out = judgeRounding(f, n, a, b)
	}
	if out == nil || out.Num().BitLen() > 40 || out.Denom().BitLen() > 40 {
		return nil
	}
	return out
}

// judgeRounding finds the numbers of the series on either side by the definition, M·k + N with k from 0 on.
func judgeRounding(f *Formula, n node, x, step *big.Rat) *big.Rat {
	offset := new(big.Rat)
	switch n.series {
	case toWhole:
		step = big.NewRat(1, 1)
	case toEven:
		step = big.NewRat(2, 1)
	case toOdd:
		step, offset = big.NewRat(2, 1), big.NewRat(1, 1)
	}
	if n.c != none {
		if offset = judge(f, n.c); offset == nil {
			return nil
		}
	}
	if step.Sign() <= 0 {
		return nil
	}
	parts := new(big.Rat).Quo(new(big.Rat).Sub(x, offset), step)
	if parts.Sign() < 0 {
		return offset
	}
	if parts.Num().BitLen() > 60 || parts.Denom().BitLen() > 60 {
		return nil
	}
	k := new(big.Int).Div(parts.Num(), parts.Denom())
	at := func(k *big.Int) *big.Rat {
		return new(big.Rat).Add(new(big.Rat).Mul(step, new(big.Rat).SetInt(k)), offset)
	}
	lower, upper := at(k), at(new(big.Int).Add(k, big.NewInt(1)))
	if lower.Cmp(x) == 0 {
		return lower
	}
	toLower, toUpper := new(big.Rat).Sub(x, lower), new(big.Rat).Sub(upper, x)
	if n.way == Down || n.way == Nearest && toLower.Cmp(toUpper) < 0 {
		return lower
	}
	return upper
}

func TestWorkIsExact(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		f := formulas(plainOps).Filter(func(f *Formula) bool { return len(f.nodes) <= mostNodes }).Draw(t, "formula")
		want := judge(f, int16(len(f.nodes)-1))
		if want == nil {
			return
		}
		compared++
		checked, findings := f.Check(&Scope{Sizes: []string{""}})
		if len(findings) > 0 || checked.Kind != Number {
			t.Fatalf("%s is %v: %v", f, checked.Kind, findings)
		}
		v, _ := checked.Work(&Column{})
		if v.Num.IsLost() || big.NewRat(v.Num.Over(), v.Num.Under()).Cmp(want) != 0 {
			t.Fatalf("%s is %s, wanted %s", f, v.Num, want.RatString())
		}
	})
	if compared == 0 {
		t.Error("nothing was compared")
	}
}

// TestLine: where a formula follows a name in a straight line, the line gives what the formula does before its last rounding.
func TestLine(t *testing.T) {
	straight, bent := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		parts := []string{"w"}
		for range rapid.IntRange(1, 5).Draw(t, "parts") {
			parts = append(parts, rapid.SampledFrom([]string{
				"w", "2 * w", "w / 3", "-w", "10% of w", "4 cm", "max(other, 3 cm)", "(w - 4 cm) * 3", "w in cm", "max(w, 3 cm)", "(w, up to 2 cm)", "abs(w)",
			}).Draw(t, "part"))
		}
		text := strings.Join(parts, " + ")
		f, findings := Parse(source.NewFile("line", text), 0, text)
		if len(findings) > 0 {
			t.Fatal(findings)
		}
		checked, findings := f.Check(&Scope{Sizes: []string{""}, Name: func(n Name) (int, Kind) {
			if n.Text == "w" {
				return 0, Length
			}
			return 1, Length
		}})
		if len(findings) > 0 {
			t.Fatal(findings)
		}
		wish := measure.Ratio(rapid.Int64Range(1, 2000).Draw(t, "wish"), 10)
		col := Column{Figures: []Figure{{Num: wish}, {Num: measure.Int(7)}}}
		line, is := checked.Line(&col, func(place int) (Line, bool) {
			if place == 0 {
				return Line{Slope: measure.Int(1)}, true
			}
			return Line{Rest: col.Figures[place].Num}, true
		})
		if crooked := strings.ContainsAny(strings.ReplaceAll(text, "max(other, 3 cm)", ""), "x,a"); is == crooked {
			t.Fatalf("%s follows straight: %v", text, is)
		}
		if !is {
			bent++
			return
		}
		straight++
		v, _ := checked.Work(&col)
		if got := line.Slope.Mul(wish).Add(line.Rest); got != v.Num {
			t.Fatalf("%s at %v: the line gives %v, the formula %v", text, wish, got, v.Num)
		}
	})
	if straight == 0 || bent == 0 {
		t.Errorf("%d straight and %d bent", straight, bent)
	}
}
