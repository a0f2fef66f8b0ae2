package measure

import (
	"strings"
	"testing"
)

func TestUnits(t *testing.T) {
	cm, inch := Tape{}, Tape{Unit: Inch}
	for _, f := range records(t, "units.txt") {
		n := num(t, f[0])
		u, ok := ParseUnit(f[1])
		if !ok {
			t.Fatalf("%q is no unit", f[1])
		}
		said := strings.Join([]string{
			"garment", cm.Garment(n, u).Decimal(4), "cm", inch.Garment(n, u).Decimal(4), "inch",
			"body", cm.Body(n, u).Decimal(4), "cm", inch.Body(n, u).Decimal(4), "inch"}, " ")
		if want := strings.Join(f[2:], " "); said != want {
			t.Errorf("%s %s: %s, wanted %s", f[0], f[1], said, want)
		}
	}
}

// TestTapeAndBack: what a tape takes in it gives out, whichever unit it has and whatever an inch is.
func TestTapeAndBack(t *testing.T) {
	for _, tape := range []Tape{{}, {Unit: Inch}, {Unit: Centimetre, Inch: InternationalInch}, {Unit: Inch, Inch: InternationalInch}} {
		for _, n := range []Num{Int(36), Ratio(83, 4), Ratio(-1, 3), {}} {
			if x := tape.InCentimetres(tape.Garment(n, Centimetre)); x != n {
				t.Errorf("%v: %v cm of a garment comes back as %v", tape, n, x)
			}
			if x := tape.InInches(tape.Garment(n, Inch)); x != n {
				t.Errorf("%v: %v inches of a garment come back as %v", tape, n, x)
			}
			if x := tape.BodyInCentimetres(tape.Body(n, Centimetre)); x != n {
				t.Errorf("%v: %v cm of a body comes back as %v", tape, n, x)
			}
			if x := tape.BodyInInches(tape.Body(n, Inch)); x != n {
				t.Errorf("%v: %v inches of a body come back as %v", tape, n, x)
			}
		}
	}
	exact := Tape{Inch: InternationalInch}
	if x := exact.Garment(Int(4), Inch); x.Decimal(2) != "10.16" {
		t.Errorf("4 inches at the exact ratio are %s cm", x.Decimal(2))
	}
}

func TestMasses(t *testing.T) {
	if g := Grams(Int(1), Ounce).Decimal(3); g != "28.35" {
		t.Errorf("an ounce is %s g", g)
	}
	if oz := InOunces(Grams(Ratio(7, 4), Ounce)); oz != Ratio(7, 4) {
		t.Errorf("1 3/4 oz come back as %v", oz)
	}
	if g := Grams(Int(50), Gram); g != Int(50) || !Gram.IsMass() || Inch.IsMass() {
		t.Errorf("50 g are %v", g)
	}
}

// TestPrintedLengths: nothing is printed that a tape does not show.
// Source: jennabarron.com, Common measurement errors: quarters of an inch, halves of a centimetre.
func TestPrintedLengths(t *testing.T) {
	for _, c := range []struct{ n, cm, inches string }{
		{"0", "0", "0"},
		{"106.3", "106.5", "106¼"},
		{"106.25", "106.5", "106¼"},
		{"41.75", "42", "41¾"},
		{"0.5", "0.5", "½"},
		{"0.1", "0", "0"},
		{"-5.72", "-5.5", "-5¾"},
		{"-0.3", "-0.5", "-¼"},
		{"12.9", "13", "13"},
	} {
		n := num(t, c.n)
		if Centimetres(n) != c.cm || Inches(n) != c.inches {
			t.Errorf("%s prints as %s cm and %s inches, wanted %s and %s", c.n, Centimetres(n), Inches(n), c.cm, c.inches)
		}
	}
}

func TestUnitNames(t *testing.T) {
	for _, s := range []string{"cm", "mm", "inch", "inches", `"`, "m", "yd", "g", "oz"} {
		if _, ok := ParseUnit(s); !ok {
			t.Errorf("%s is no unit", s)
		}
	}
	for _, s := range []string{"in", "", "CM", "metre"} {
		if u, ok := ParseUnit(s); ok {
			t.Errorf("%q reads as %v", s, u)
		}
	}
	if s := Inch.String(); s != "inch" {
		t.Errorf("the inch prints as %s", s)
	}
}
