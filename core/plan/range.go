package plan

import (
	"strconv"
	"strings"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// Counts that a plan may not exceed: a house has fewer, and a plan that has
// more was not written by hand (our own choice).
const (
	MaxSurfaces = 24
	MaxBuildUps = 24
	MaxShelf    = 200
	MaxRows     = 60
	MaxName     = 120    // characters of a name
	MaxNotes    = 20_000 // characters of the notes
	MaxID       = 60
)

// limits are the least and the greatest a field may be, in customary and in
// metric units, each round in its own; an edge is allowed.
type limits struct{ low, high [2]unit.Quantity }

func between(usLow, usHigh, siLow, siHigh unit.Quantity) limits {
	return limits{[2]unit.Quantity{usLow, siLow}, [2]unit.Quantity{usHigh, siHigh}}
}

func same(low, high unit.Quantity) limits { return between(low, high, low, high) }

// The ranges of typed quantities. They enclose what is sold and built with room
// to spare and keep slips of the decimal point and of the unit out (our own choice).
var (
	weightRange  = between("5 lb", "250 lb", "2 kg", "115 kg")
	palletRange  = between("20 lb", "12000 lb", "10 kg", "5500 kg")
	scaleRange   = between("5 lb", "800 lb", "2 kg", "360 kg")
	piecesRange  = same("1", "500")
	sideRange    = between("0.5 ft", "24 ft", "150 mm", "7500 mm")
	priceRange   = between("0", "5000", "0", "5000") // of any currency, see currency
	stockRange   = same("0", "100000")
	wallRange    = between("1 ft", "100 ft", "300 mm", "30000 mm")
	faceRange    = between("1 ft2", "10000 ft2", "0.1 m2", "1000 m2")
	wasteRange   = same("0 %", "100 %")
	levelRange   = same("20", "140")
	depthRange   = between("0.03125 in", "78 in", "1 mm", "2000 mm")
	fillRange    = between("0.25 in", "78 in", "5 mm", "2000 mm")
	spacingRange = between("4 in", "96 in", "100 mm", "2500 mm")
	gridRange    = between("4 in", "118 in", "100 mm", "3000 mm")
	screwRange   = between("2 in", "39 in", "50 mm", "1000 mm")
	ratingRange  = between("1 lb", "1000 lb", "0.5 kg", "450 kg")
	extraRange   = between("0 psf", "20 psf", "0 kg/m2", "100 kg/m2")
)

// thicknessLimits are of a board's kind, as assembly has them.
func thicknessLimits(k material.Kind) limits {
	r := assembly.ThicknessRange(k)
	const steps = 64 // of an inch
	low := float64(int(r.Low/float64(unit.Inch)*steps+0.999)) / steps
	high := float64(int(r.High/float64(unit.Inch)*steps+0.001)) / steps
	return between(
		unit.Of(low, unit.IN), unit.Of(high, unit.IN),
		unit.Of(float64(int(r.Low*1e4+0.999))/10, unit.MM), unit.Of(float64(int(r.High*1e3+0.001)), unit.MM),
	)
}

// areaLimits are the masses per area that a board of a kind and thickness may
// have, as assembly has them, in round figures.
func areaLimits(k material.Kind, t unit.Length) limits {
	r := assembly.DensityRange(k)
	low, high := r.Low*float64(t), r.High*float64(t)
	psf := float64(unit.PoundPerSquareFoot)
	return between(
		unit.Of(roundUp(low/psf), unit.PSF), unit.Of(roundDown(high/psf), unit.PSF),
		unit.Of(roundUp(low), unit.KGM2), unit.Of(roundDown(high), unit.KGM2),
	)
}

// roundUp and roundDown give two figures, never outside the exact limit.
func roundUp(x float64) float64   { return twoFigures(x, 1) }
func roundDown(x float64) float64 { return twoFigures(x, 0) }

func twoFigures(x, up float64) float64 {
	step := 1.0
	for x/step >= 100 {
		step *= 10
	}
	for x/step < 10 && step > 1e-6 {
		step /= 10
	}
	n := float64(int(x/step)) + up
	if step < 1 {
		return n / float64(int(1/step+0.5))
	}
	return n * step
}

// of picks the pair whose unit system a quantity was typed in.
func (l limits) of(u unit.Unit) (low, high unit.Quantity) {
	i := 1
	switch u {
	case unit.IN, unit.FT, unit.LB, unit.OZ, unit.FT2, unit.PSF, unit.CFM:
		i = 0
	}
	low, high = l.low[i], l.high[i]
	// Money and counts are the same number in whatever the field counts.
	if kind, _ := low.Unit().SI(); kind == unit.OfCount && u != unit.One {
		n, _ := low.Parts()
		m, _ := high.Parts()
		low, high = unit.Quantity(n+" "+string(u)), unit.Quantity(m+" "+string(u))
	}
	return low, high
}

// say writes a quantity as people do: sixteenths and the like of an inch as
// fractions, "0.125 in" as "1/8 in", "1.25 in" as "1 1/4 in".
func say(q unit.Quantity) string {
	n, u := q.Parts()
	switch u {
	case unit.M2:
		return n + " m²"
	case unit.FT2:
		return n + " ft²"
	case unit.KGM2:
		return n + " kg/m²"
	case unit.IN:
	default:
		return string(q)
	}
	v, ok := q.Value()
	if !ok || v < 0 || v > 1e4 {
		return string(q)
	}
	const steps = 64
	parts := v * steps
	if parts != float64(int(parts)) {
		return string(q)
	}
	whole, over := int(parts)/steps, int(parts)%steps
	under := steps
	for over > 0 && over%2 == 0 {
		over, under = over/2, under/2
	}
	switch {
	case over == 0:
		return strconv.Itoa(whole) + " in"
	case whole == 0:
		return strconv.Itoa(over) + "/" + strconv.Itoa(under) + " in"
	}
	return strings.Join([]string{strconv.Itoa(whole), strconv.Itoa(over) + "/" + strconv.Itoa(under), "in"}, " ")
}
