package unit_test

import (
	"math"
	"testing"

	"twoleaf/core/unit"
)

// Customary units, each way, within the last bits. Inch and pound are exact by
// international agreement (1959); the rest is printed to the figures given
// (NIST Special Publication 811, Appendix B.8; from memory).
func TestPrintedConversions(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
		figures   float64 // half a unit of the last printed figure, relative
	}{
		{"1 in in m", float64(unit.Inch), 0.0254, 1e-15},
		{"1 ft in m", float64(unit.Foot), 0.3048, 1e-15},
		{"1 lb in kg", float64(unit.Pound), 0.45359237, 1e-15},
		{"16 oz in lb", float64(16 * unit.Ounce / unit.Pound), 1, 1e-15},
		{"1 ft² in m²", float64(unit.SquareFoot), 0.09290304, 1e-15},
		{"1 psf in kg/m²", float64(unit.PoundPerSquareFoot), 4.882428, 1e-7},
		{"1 lb/ft in kg/m", float64(unit.PoundPerFoot), 1.488164, 4e-7},
		{"1 lb/ft³ in kg/m³", float64(unit.PoundPerCubicFoot), 16.01846, 4e-7},
		{"1 lbf in N", float64(unit.PoundForce), 4.448222, 2e-7},
		{"a kilogram hangs with", unit.StandardGravity, 9.80665, 0},
	} {
		if math.Abs(c.got/c.want-1) > c.figures {
			t.Errorf("%s: %v, printed %v", c.name, c.got, c.want)
		}
	}
}

func TestLawThereAndBack(t *testing.T) {
	for _, u := range []unit.Unit{
		unit.MM, unit.CM, unit.M, unit.IN, unit.FT, unit.KG, unit.G, unit.LB, unit.OZ, unit.M2, unit.FT2, unit.KGM2, unit.PSF,
		unit.Pct, unit.USD, unit.GBP, unit.EUR, unit.One,
	} {
		kind, factor := u.SI()
		if kind == "" || factor <= 0 {
			t.Errorf("%q measures nothing", u)
		}
		q := unit.Of(12.75, u)
		if v, ok := q.Value(); !ok || v != 12.75 || q.Unit() != u {
			t.Errorf("12.75 %s is %q", u, q)
		}
		if kind == unit.OfCount {
			continue // pieces come whole
		}
		if again, err := unit.Read(kind, string(q), u); err != nil || again != q {
			t.Errorf("%q reads as %q, %v", q, again, err)
		}
	}
	if kind, _ := unit.Unit("stone").SI(); kind != "" {
		t.Errorf("stone measures %s", kind)
	}
}
