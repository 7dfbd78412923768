// Package unit holds the quantities of the core as types over float64 in SI
// units, the customary units as constants of those types, the reading of
// quantities as people write them, and the one comparison that every limit uses.
//
// Write a customary quantity as a product (16 * unit.Inch) and leave SI with a
// division (float64(x / unit.Inch)). Mass and force are different types.
package unit

// Quantities, each stored in the SI unit named.
type (
	Length      float64 // metre
	Area        float64 // square metre
	Mass        float64 // kilogram
	SurfaceMass float64 // kilogram per square metre
	LineMass    float64 // kilogram per metre
	Density     float64 // kilogram per cubic metre
	Force       float64 // newton
	Frequency   float64 // hertz
	Pressure    float64 // pascal
	Decibel     float64 // decibel, re the quantity's own reference
	Money       float64 // one unit of the plan's currency
	MoneyRate   float64 // the plan's currency per square metre
)

// Customary units. Inch, foot and pound are exact by international agreement
// (1959); standard gravity is exact by definition (CGPM 1901).
const (
	Metre      Length = 1
	Millimetre Length = 1e-3
	Centimetre Length = 1e-2
	Inch       Length = 0.0254
	Foot       Length = 12 * Inch

	SquareMetre Area = 1
	SquareFoot  Area = 0.3048 * 0.3048

	Kilogram Mass = 1
	Gram     Mass = 1e-3
	Pound    Mass = 0.45359237
	Ounce    Mass = Pound / 16

	KilogramPerSquareMetre SurfaceMass = 1
	// PoundPerSquareFoot is the mass reading of "psf".
	PoundPerSquareFoot SurfaceMass = SurfaceMass(0.45359237 / (0.3048 * 0.3048))

	PoundPerFoot LineMass = LineMass(0.45359237 / 0.3048)

	Newton     Force = 1
	PoundForce Force = 0.45359237 * StandardGravity

	PoundPerCubicFoot Density = Density(0.45359237 / (0.3048 * 0.3048 * 0.3048))

	// StandardGravity turns a mass into the force it hangs with, N/kg.
	StandardGravity = 9.80665
)

// Slack is the share by which a value may exceed a limit and still not be over
// it: a tenth of a percent, so that two roundings of one weight stay equal.
const Slack = 1e-3

// Over reports whether value is more than limit by more than Slack of it;
// equal is not over. Every limit and every ranking uses it.
func Over[T ~float64](value, limit T) bool { return value > limit*(1+Slack) }

// Same reports whether neither of two values is over the other.
func Same[T ~float64](a, b T) bool { return !Over(a, b) && !Over(b, a) }
