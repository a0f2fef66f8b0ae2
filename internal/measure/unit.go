package measure

// A Unit is what a length or a mass is written in.
type Unit uint8

const (
	NoUnit Unit = iota
	Centimetre
	Millimetre
	Inch
	Metre
	Yard
	Gram
	Ounce
)

// unitNames lists every spelling read, the printed one first for each unit.
var unitNames = []struct {
	name string
	unit Unit
}{
	{"cm", Centimetre}, {"mm", Millimetre}, {"inch", Inch}, {"inches", Inch}, {`"`, Inch},
	{"m", Metre}, {"yd", Yard}, {"g", Gram}, {"oz", Ounce},
}

// ParseUnit reads a unit as designers write it. "in" is never the inch: in a formula it converts.
func ParseUnit(s string) (Unit, bool) {
	for _, u := range unitNames {
		if u.name == s {
			return u.unit, true
		}
	}
	return NoUnit, false
}

// String returns the unit as it is printed after a number.
func (u Unit) String() string {
	for _, n := range unitNames {
		if n.unit == u {
			return n.name
		}
	}
	return ""
}

// IsMass reports whether the unit weighs rather than measures.
func (u Unit) IsMass() bool { return u == Gram || u == Ounce }

// The international inch, yard and pound: exact by the agreement of 1959 (US Federal Register 59-5442), 1 inch = 2.54 cm,
// 1 yard = 0.9144 m, 1 ounce = 28.349523125 g.
var (
	InternationalInch = Ratio(254, 100)
	yardInCentimetres = Ratio(9144, 100)
	ounceInGrams      = Ratio(28349523125, 1000000000)
)

// GarmentInch is the centimetres to an inch that the trade reckons garments with, because a swatch of 4 inches is taken as one
// of 10 cm: with 2.54 the stated centimetres disagree with the counts, and the gap grows with the size.
// Source: four technical editors, among them jennabarron.com and frasierknits.net on conversion mistakes.
var GarmentInch = Ratio(25, 10)

// A Tape is the tape measure a pattern is written with: the unit its lengths are reckoned in, centimetre or inch, and the
// centimetres to an inch of a garment. Every length of a pattern is held in the tape's unit. Bodies and yarn are physical and
// always cross at 2.54; what is crocheted crosses at the garment's ratio.
type Tape struct {
	Unit Unit // Centimetre or Inch; the zero value reads as Centimetre
	Inch Num  // centimetres to a garment inch; the zero value reads as GarmentInch
}

func (t Tape) garmentInch() Num {
	if t.Inch.Sign() == 0 {
		return GarmentInch
	}
	return t.Inch
}

// Garment returns a length of something crocheted in the tape's unit. Metres and yards, which measure yarn and never a
// garment, cross physically.
func (t Tape) Garment(n Num, u Unit) Num {
	if u == Metre || u == Yard {
		return t.Body(n, u)
	}
	return t.cross(n, u, t.garmentInch())
}

// Body returns a length of a body or of yarn in the tape's unit.
func (t Tape) Body(n Num, u Unit) Num { return t.cross(n, u, InternationalInch) }

// cross brings n of a unit to the tape's, an inch having the given centimetres.
func (t Tape) cross(n Num, u Unit, inch Num) Num {
	if t.Unit == Inch {
		if u == Inch {
			return n
		}
		return centimetres(n, u).Div(inch)
	}
	if u == Inch {
		return n.Mul(inch)
	}
	return centimetres(n, u)
}

// centimetres returns n of a unit other than the inch in centimetres.
func centimetres(n Num, u Unit) Num {
	switch u {
	case Millimetre:
		return n.Div(Int(10))
	case Metre:
		return n.Mul(Int(100))
	case Yard:
		return n.Mul(yardInCentimetres)
	}
	return n
}

// InCentimetres and InInches take a garment's length in the tape's unit to a printed one.
func (t Tape) InCentimetres(n Num) Num {
	if t.Unit == Inch {
		return n.Mul(t.garmentInch())
	}
	return n
}

func (t Tape) InInches(n Num) Num {
	if t.Unit == Inch {
		return n
	}
	return n.Div(t.garmentInch())
}

// BodyInCentimetres and BodyInInches do the same for a body's length.
func (t Tape) BodyInCentimetres(n Num) Num {
	if t.Unit == Inch {
		return n.Mul(InternationalInch)
	}
	return n
}

func (t Tape) BodyInInches(n Num) Num {
	if t.Unit == Inch {
		return n
	}
	return n.Div(InternationalInch)
}

// Grams returns a mass in grams.
func Grams(n Num, u Unit) Num {
	if u == Ounce {
		return n.Mul(ounceInGrams)
	}
	return n
}

// InOunces returns grams in ounces.
func InOunces(grams Num) Num { return grams.Div(ounceInGrams) }

// Centimetres prints a length given in centimetres as a tape shows it, on the half centimetre: "106.5".
func Centimetres(n Num) string { return Nearest(n, Ratio(1, 2), Num{}).Decimal(1) }

// Inches prints a length given in inches as a tape shows it, on the quarter inch: "41¾".
func Inches(n Num) string {
	q := Nearest(n, Ratio(1, 4), Num{})
	if q.IsLost() {
		return q.String()
	}
	sign := ""
	if q.Sign() < 0 {
		sign = "-"
	}
	whole := q.Abs().Floor()
	fraction := [4]string{"", "¼", "½", "¾"}[q.Abs().Sub(whole).Mul(Int(4)).Over()]
	if whole.Sign() == 0 && fraction != "" {
		return sign + fraction
	}
	return sign + whole.String() + fraction
}
