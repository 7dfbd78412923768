package load

import (
	"math"

	"twoleaf/core/assembly"
	"twoleaf/core/unit"
)

// Section is how a channel bends.
type Section struct {
	Young   unit.Pressure // E, Pa
	Inertia float64       // I about the axis it bends over, m⁴; what is effective under load
	// Between and Over are the moments it may take between clips and over a clip, N·m;
	// 0 where none is known.
	Between, Over float64
}

const (
	inch4     = 0.0254 * 0.0254 * 0.0254 * 0.0254
	poundInch = 0.45359237 * unit.StandardGravity * 0.0254 // N·m
)

// Hat18 is hat channel 22 mm (7/8 in) deep of 0.46 mm (18 mil, 25 gauge) steel:
// I effective 0.0086 in⁴ (SSMA2022, p. 68), E 29 500 ksi (the value of
// cold-formed design, from memory). Moments calibrated: over a clip 252 lb·in
// from the four cells of the span table there that bending decides (w·l²/10);
// between clips 321 lb·in, the most that a printed cell reaches (CSA-FURRING, 3 ft, w·l²/8),
// so it may take more.
var Hat18 = Section{Young: 29.5e6 * psi, Inertia: 0.0086 * inch4, Between: 321 * poundInch, Over: 252 * poundInch}

// Hat27 is the same of 0.68 mm (27 mil, 22 gauge) steel: I calibrated to the
// single spans of SSMA2022, p. 68; between clips 391 lb·in, the most that a printed
// cell reaches; over a clip that of Hat18, the careful choice as none is known.
var Hat27 = Section{Young: 29.5e6 * psi, Inertia: 0.0131 * inch4, Between: 391 * poundInch, Over: 252 * poundInch}

// psi is one pound-force per square inch, Pa.
const psi = 0.45359237 * unit.StandardGravity / (0.0254 * 0.0254)

// SagLimit is what a span is divided by for its allowed deflection: L/240 for
// ceilings of gypsum board (SSMA2022, and the usual limit for brittle finishes).
const SagLimit = 240

// Spans is how a channel runs over its clips.
type Spans int

// The ways. Multiple is three equal spans, the case that published tables print.
const (
	Single Spans = iota
	Multiple
)

// SpanOf returns the longest span of a channel under an even load, m, and
// whether bending and not deflection decides it:
//
//	single    l³ = 384·E·I/(5·limit·w)    l² = 8·Mbetween/w
//	multiple  l³ = 145·E·I/(limit·w)      l² = 10·Mover/w
//
// w = g·mass per length [N/m], E [Pa], I [m⁴], M [N·m]; 1/145 = 0.0069 is the
// largest deflection over three equal spans in w·l⁴/EI. 0 without a section or a load.
//
// Source: beam formulas, checked against the span table of SSMA2022, p. 68.
func SpanOf(s Section, line unit.LineMass, spans Spans, limit float64) (span unit.Length, bending bool) {
	w := float64(line) * unit.StandardGravity
	ei := float64(s.Young) * s.Inertia
	if w <= 0 || ei <= 0 || limit <= 0 {
		return 0, false
	}
	stiff, most, part := 384.0/5, s.Between, 8.0
	if spans == Multiple {
		stiff, most, part = 145, s.Over, 10
	}
	l := math.Cbrt(stiff * ei / (limit * w))
	if strong := math.Sqrt(part * most / w); most > 0 && strong < l {
		return unit.Length(strong), true
	}
	return unit.Length(l), false
}

// ResilientRows returns the widest distance between rows of resilient channel
// without clips, m: 24 in on walls and on joists no more than 16 in apart, 16 in
// on ceilings with joists further apart; ok is false where the members are more
// than 24 in apart, which resilient channel is not meant to span.
//
// Source: installation sheet of a resilient channel filed with a county, 2023.
func ResilientRows(ceiling bool, members unit.Length) (rows unit.Length, ok bool) {
	switch {
	case unit.Over(members, 24.25*unit.Inch): // 610 and 616 mm are 24 in to the trade
		return 0, false
	case ceiling && unit.Over(members, 16.25*unit.Inch):
		return 16 * unit.Inch, true
	}
	return 24 * unit.Inch, true
}

// BoardSag returns how far the boards of a ceiling bend between rows, m, and
// that over rows/240:
//
//	δ = 0.0069·w·s⁴/D,   D = Σ E·t³/(12·2)
//
// w = g·mass per area [Pa], s distance of rows [m], E of the table's sound values
// [Pa], t thickness [m]; layers screwed together slide and add. The 2 is for a load that stays
// (creep and a static modulus below the dynamic one; our proposal). Boards over three spaces
// or more. 0 where nothing is known of the boards.
//
// Source: as SpanOf.
func BoardSag(leaf assembly.Leaf, load unit.SurfaceMass, rows unit.Length) (sag unit.Length, of float64) {
	stiff := 0.0
	for _, y := range leaf.Layers {
		t := float64(y.Board.Thickness)
		stiff += float64(y.Board.Sound.Young) * t * t * t / (12 * 2)
	}
	if stiff <= 0 || rows <= 0 {
		return 0, 0
	}
	s := float64(rows)
	sag = unit.Length(0.0069 * float64(load) * unit.StandardGravity * s * s * s * s / stiff)
	return sag, float64(sag/rows) * SagLimit
}
