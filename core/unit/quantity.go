package unit

import (
	"math"
	"strconv"
	"strings"
)

// Quantity is a quantity as somebody wrote it: decimal text, a space, and the
// unit as typed, "58 lb", "1.25 in"; a sheet is two of them with one unit,
// "4x8 ft". Fractions become decimals only where that is exact. The text is
// what a plan keeps; SI is computed from it each time.
type Quantity string

// Unit is the symbol of a unit as it stands in a Quantity.
type Unit string

// The units that are read.
const (
	MM   Unit = "mm"
	CM   Unit = "cm"
	M    Unit = "m"
	IN   Unit = "in"
	FT   Unit = "ft"
	KG   Unit = "kg"
	G    Unit = "g"
	LB   Unit = "lb"
	OZ   Unit = "oz"
	M2   Unit = "m2"
	FT2  Unit = "ft2"
	KGM2 Unit = "kg/m2"
	PSF  Unit = "psf"
	CFM  Unit = "cfm" // cubic feet a minute
	LPS  Unit = "L/s"
	Pct  Unit = "%"
	One  Unit = "" // a bare count
	USD  Unit = "$"
	GBP  Unit = "£"
	EUR  Unit = "€"
)

// Kind says what a unit measures.
type Kind string

// The kinds of quantity.
const (
	OfLength      Kind = "length"
	OfMass        Kind = "mass"
	OfArea        Kind = "area"
	OfSurfaceMass Kind = "mass per area"
	OfFlow        Kind = "flow of air"
	OfMoney       Kind = "money"
	OfCount       Kind = "count"
	OfPercent     Kind = "percent"
)

// SI returns what the unit measures and how many SI units it is: metres,
// kilograms, square metres, kilograms per square metre, cubic metres a second; 1 for money and
// counts; 0.01 for a per cent. An unknown unit returns "", 0.
func (u Unit) SI() (Kind, float64) {
	switch u {
	case MM:
		return OfLength, float64(Millimetre)
	case CM:
		return OfLength, float64(Centimetre)
	case M:
		return OfLength, 1
	case IN:
		return OfLength, float64(Inch)
	case FT:
		return OfLength, float64(Foot)
	case KG:
		return OfMass, 1
	case G:
		return OfMass, float64(Gram)
	case LB:
		return OfMass, float64(Pound)
	case OZ:
		return OfMass, float64(Ounce)
	case M2:
		return OfArea, 1
	case FT2:
		return OfArea, float64(SquareFoot)
	case KGM2:
		return OfSurfaceMass, 1
	case PSF:
		return OfSurfaceMass, float64(PoundPerSquareFoot)
	case CFM:
		return OfFlow, float64(Foot*Foot*Foot) / 60
	case LPS:
		return OfFlow, 0.001
	case Pct:
		return OfPercent, 0.01
	case USD, GBP, EUR:
		return OfMoney, 1
	case One:
		return OfCount, 1
	}
	return "", 0
}

// Of returns the quantity of value in a unit, with as few digits as name the value.
func Of(value float64, u Unit) Quantity {
	return join(strconv.FormatFloat(value, 'f', -1, 64), u)
}

func join(number string, u Unit) Quantity {
	if u == One {
		return Quantity(number)
	}
	return Quantity(number + " " + string(u))
}

// Parts returns the number as text and the unit.
func (q Quantity) Parts() (number string, u Unit) {
	n, s, _ := strings.Cut(string(q), " ")
	return n, Unit(s)
}

// Unit returns the unit as typed.
func (q Quantity) Unit() Unit { _, u := q.Parts(); return u }

// Value returns the number in the unit as typed; false if the text is none.
func (q Quantity) Value() (float64, bool) {
	n, _ := q.Parts()
	return decimal(n)
}

// decimal reads canonical decimal text only: no exponent, no "NaN", no "0x".
func decimal(n string) (float64, bool) {
	if n == "" || strings.Trim(strings.TrimPrefix(n, "-"), "0123456789.") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(n, 64)
	return v, err == nil && !math.IsInf(v, 0)
}

// si returns the quantity in SI units if it is one of the kind.
func (q Quantity) si(k Kind) (float64, bool) {
	n, u := q.Parts()
	kind, factor := u.SI()
	v, ok := decimal(n)
	return v * factor, ok && kind == k
}

// Length returns the length; false if the text is none.
func (q Quantity) Length() (Length, bool) { v, ok := q.si(OfLength); return Length(v), ok }

// Mass returns the mass; false if the text is none.
func (q Quantity) Mass() (Mass, bool) { v, ok := q.si(OfMass); return Mass(v), ok }

// Area returns the area; false if the text is none.
func (q Quantity) Area() (Area, bool) { v, ok := q.si(OfArea); return Area(v), ok }

// SurfaceMass returns the mass per area; false if the text is none.
func (q Quantity) SurfaceMass() (SurfaceMass, bool) {
	v, ok := q.si(OfSurfaceMass)
	return SurfaceMass(v), ok
}

// Money returns the amount in the currency as typed; false if the text is none.
func (q Quantity) Money() (Money, bool) { v, ok := q.si(OfMoney); return Money(v), ok }

// Count returns a number of pieces; false if the text is none.
func (q Quantity) Count() (int, bool) {
	v, ok := q.si(OfCount)
	if !ok || v != math.Trunc(v) || math.Abs(v) > 1e9 {
		return 0, false
	}
	return int(v), true
}

// Share returns a percentage as a share of one, "10 %" as 0.1; false if the text is none.
func (q Quantity) Share() (float64, bool) { return q.si(OfPercent) }

// Sheet returns the two sides of a sheet, shorter first; false if the text is none.
// A side of nothing but a width, "54 in", is a roll: its long side is 0.
func (q Quantity) Sheet() (width, length Length, ok bool) {
	n, u := q.Parts()
	kind, factor := u.SI()
	if kind != OfLength {
		return 0, 0, false
	}
	a, b, two := strings.Cut(n, "x")
	x, ok := decimal(a)
	if !two {
		return Length(x * factor), 0, ok
	}
	y, ok2 := decimal(b)
	if y < x {
		x, y = y, x
	}
	return Length(x * factor), Length(y * factor), ok && ok2
}
