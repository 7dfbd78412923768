package load

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// Span table of hat channel at L/240, SSMA2022, p. 68, to the inch: 4, 6 and
// 13 psf; single, then multiple spans; channel 12, 16 and 24 in apart.
func TestPrintedSpans(t *testing.T) {
	rows := []float64{12, 16, 24}
	check := func(s Section, psf float64, spans Spans, want [3]float64) {
		for i, r := range rows {
			line := unit.LineMass(psf) * unit.LineMass(unit.PoundPerSquareFoot) * unit.LineMass(r*0.0254)
			got, _ := SpanOf(s, line, spans, SagLimit)
			// Whole inches are printed, some rounded up and some down.
			assert.InDelta(t, want[i], float64(got/unit.Inch), 0.75, "%g psf, rows %g in, spans %d", psf, r, spans)
		}
	}
	check(Hat18, 4, Single, [3]float64{62, 57, 49})
	check(Hat18, 6, Single, [3]float64{54, 49, 43})
	check(Hat18, 13, Single, [3]float64{42, 38, 33})
	check(Hat18, 4, Multiple, [3]float64{77, 70, 61})
	check(Hat18, 6, Multiple, [3]float64{67, 61, 50})
	check(Hat18, 13, Multiple, [3]float64{48, 42, 34})
	check(Hat27, 4, Single, [3]float64{72, 65, 57})
	check(Hat27, 6, Single, [3]float64{63, 57, 50})
	check(Hat27, 13, Single, [3]float64{48, 44, 38})
}

// CSA-FURRING, single span, rows 24 in apart, hat channel of 0.0188 in: psf at
// 4 and 3 ft. It is a little stiffer than the other table's: with the I of its
// 4 ft cell the rest follows. At 2 ft it prints 25 psf, less than deflection or
// bending ask for: an end reaction of 50 lb, which the rating of a clip covers here.
func TestPrintedFurring(t *testing.T) {
	s := Hat18
	s.Inertia *= 5.0 / most(s, 4, 240)
	assert.InDelta(t, 3.3, most(s, 4, 360), 0.05)
	assert.InDelta(t, 11.9, most(s, 3, 240), 0.06)
	assert.InDelta(t, 7.9, most(s, 3, 360), 0.06)
	assert.Greater(t, most(s, 2, 240), 25.0, "neither deflection nor bending decides there")
	assert.Less(t, most(Hat18, 4, 240), 5.0, "the section used is on the careful side")
}

// most is the load in psf whose longest span is so many feet.
func most(s Section, feet, limit float64) float64 {
	low, high := 0.0, 100.0
	for range 60 {
		mid := (low + high) / 2
		line := unit.LineMass(mid) * unit.LineMass(unit.PoundPerSquareFoot) * unit.LineMass(2*unit.Foot)
		if span, _ := SpanOf(s, line, Single, limit); float64(span/unit.Foot) > feet {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// Rows 24 in apart and clips at 48 in, with 0.15 psf of channel: one layer of
// 5/8 in is within, two only as several spans, three are out.
func TestReadingOfSpans(t *testing.T) {
	holds := func(psf float64, spans Spans) bool {
		span, _ := SpanOf(Hat18, unit.LineMass((psf+0.15)*float64(unit.PoundPerSquareFoot)*0.6096), spans, SagLimit)
		return !unit.Over(48*unit.Inch, span)
	}
	assert.True(t, holds(2.2, Single))
	assert.False(t, holds(4.4, Single))
	assert.True(t, holds(4.4, Multiple))
	assert.False(t, holds(6.6, Multiple))
}

// Half the load spans 2^(1/3) as far where deflection decides.
func TestLawSpan(t *testing.T) {
	a, bending := SpanOf(Hat18, 8, Single, SagLimit)
	assert.False(t, bending)
	b, _ := SpanOf(Hat18, 4, Single, SagLimit)
	assert.InDelta(t, 1.259921, float64(b/a), 1e-6)
	_, bending = SpanOf(Hat18, 40, Multiple, SagLimit)
	assert.True(t, bending)
	zero, _ := SpanOf(Section{}, 8, Single, SagLimit)
	assert.Zero(t, zero)
}

func TestResilientRows(t *testing.T) {
	for _, c := range []struct {
		ceiling       bool
		members, want float64
		ok            bool
	}{{false, 24, 24, true}, {false, 16, 24, true}, {true, 16, 24, true}, {true, 24, 16, true}, {true, 19.2, 16, true}, {false, 32, 0, false}} {
		got, ok := ResilientRows(c.ceiling, unit.Length(c.members)*unit.Inch)
		assert.Equal(t, c.ok, ok)
		assert.InDelta(t, c.want, float64(got/unit.Inch), 1e-9)
	}
}

// By hand: 15.9 mm of E 2 GPa is D = 335 N·m at half; 22 kg/m² on rows 0.6 m apart
// bends it by 0.0069 × 215.7 × 0.1296 / 335 = 0.58 mm of the 2.5 allowed.
func TestBoardSag(t *testing.T) {
	leaf := assembly.Leaf{Layers: []assembly.Layer{{Board: material.Board{Thickness: 0.0159, Sound: material.Sound{Young: 2e9}}}}}
	sag, of := BoardSag(leaf, 22, 0.6)
	assert.InDelta(t, 0.58e-3, float64(sag), 0.005e-3)
	assert.InDelta(t, 0.58/2.5, of, 0.002)
	leaf.Layers = append(leaf.Layers, leaf.Layers[0])
	half, _ := BoardSag(leaf, 22, 0.6)
	assert.InDelta(t, float64(sag)/2, float64(half), 1e-12)
	sag, of = BoardSag(assembly.Leaf{}, 22, 0.6)
	assert.Zero(t, sag)
	assert.Zero(t, of)
}
