package load

import (
	"math"

	"twoleaf/core/unit"
)

// Timber is what a joist's wood may take.
type Timber struct {
	ID      string // species and grade: "dfl-2"
	Region  string // NA, EU or AU
	Young   unit.Pressure
	Bending unit.Pressure // before the factors of size, see Bends
	Shear   unit.Pressure
	size    sizing
	deep    [5]float64 // psi at 3.5, 5.5, 7.25, 9.25, 11.25 in, where bending is given by size
}

type sizing byte

const (
	byFactor sizing = iota // North American dimension lumber
	byTable                // the same, bending given for every depth
	byDepth                // British grade stresses
)

// Timbers of dimension lumber and strength classes. NA: reference design values
// of visually graded lumber (NDS-SUPPLEMENT, from memory; all 128 cells of the
// 2018 table of IRC-JOISTS follow from the bending values and moduli to the inch). EU:
// grade stresses of BS5268 (from memory). AU: permissible bending as 0.42 of the characteristic
// strength, a little under the 0.43 to 0.46 that British grade stresses are of their class
// (derived; strengths from memory).
var timbers = []Timber{
	na("dfl-ss", 1500, 180, 1.9), na("dfl-1", 1000, 180, 1.7), na("dfl-2", 900, 180, 1.6), na("dfl-3", 525, 180, 1.4),
	na("hf-ss", 1400, 150, 1.6), na("hf-1", 975, 150, 1.5), na("hf-2", 850, 150, 1.3), na("hf-3", 500, 150, 1.2),
	na("spf-ss", 1250, 135, 1.5), na("spf-1", 875, 135, 1.4), na("spf-2", 875, 135, 1.4), na("spf-3", 500, 135, 1.2),
	sp("sp-ss", 1.8, [5]float64{2350, 2100, 1950, 1700, 1600}), sp("sp-1", 1.6, [5]float64{1500, 1350, 1250, 1050, 1000}),
	sp("sp-2", 1.4, [5]float64{1100, 1000, 925, 800, 750}), sp("sp-3", 1.3, [5]float64{650, 575, 525, 475, 450}),
	{ID: "c16", Region: "EU", Young: 8.8e9, Bending: 5.3e6, Shear: 0.67e6, size: byDepth},
	{ID: "c24", Region: "EU", Young: 10.8e9, Bending: 7.5e6, Shear: 0.71e6, size: byDepth},
	{ID: "mgp10", Region: "AU", Young: 10e9, Bending: 0.42 * 17e6 / 1.375, Shear: 0.7e6, size: byDepth},
	{ID: "mgp12", Region: "AU", Young: 12.7e9, Bending: 0.42 * 28e6 / 1.375, Shear: 0.7e6, size: byDepth},
}

func na(id string, bending, shear, young float64) Timber {
	return Timber{ID: id, Region: "NA", Young: unit.Pressure(young * 1e6 * psi), Bending: unit.Pressure(bending * psi), Shear: unit.Pressure(shear * psi)}
}

func sp(id string, young float64, deep [5]float64) Timber {
	t := na(id, deep[2], 175, young)
	t.size, t.deep = byTable, deep
	return t
}

// Timbers returns the species and grades, strongest of a species first.
func Timbers() []Timber { return append([]Timber(nil), timbers...) }

// TimberOf returns a timber by its id.
func TimberOf(id string) (Timber, bool) {
	for _, t := range timbers {
		if t.ID == id {
			return t, true
		}
	}
	return Timber{}, false
}

// depths of dimension lumber, in, and the size factor of bending up to each;
// 0.9 beyond (NELMA-FACTORS, Table A).
var (
	depths = [...]float64{3.5, 4.5, 5.5, 7.25, 9.25, 11.25}
	factor = [...]float64{1.5, 1.4, 1.3, 1.2, 1.1, 1.0}
)

// Repetitive is how much more joists that share the load through boards may
// take: 1.15, spaced no more than 24 in (NELMA-FACTORS, Table B).
const Repetitive = 1.15

// Bends returns the bending stress allowed in a joist of this depth that shares
// its load with its neighbours, Pa, under the loads of a floor:
//
//	North America  f = F·CF·1.15       CF by depth, 1.5 (2x4) to 1.0 (2x12)
//	elsewhere      f = F·(0.3/h)^0.11·1.1·1.25, h in m, 72 mm and more
//
// 1.1 is for sharing, 1.25 for a load that is there for weeks and not for ever (BS5268, from memory).
func (t Timber) Bends(depth unit.Length) unit.Pressure {
	if t.size == byDepth {
		h := math.Max(float64(depth), 0.072)
		return t.Bending * unit.Pressure(math.Pow(0.3/h, 0.11)*1.1*1.25)
	}
	d := float64(depth / unit.Inch)
	c := 0.9
	for i := len(depths) - 1; i >= 0; i-- {
		if d <= depths[i]+0.05 {
			c = factor[i]
		}
	}
	if t.size == byFactor {
		return t.Bending * unit.Pressure(c*Repetitive)
	}
	f := t.deep[4] * 0.9
	for i, at := range [...]float64{11.25, 9.25, 7.25, 5.5, 3.5} {
		if d <= at+0.05 {
			f = t.deep[4-i]
		}
	}
	return unit.Pressure(f * psi * Repetitive)
}

// Joist is one joist of a floor or ceiling under an even load.
type Joist struct {
	Timber       Timber
	Width, Depth unit.Length
	Span         unit.Length // clear
	Spacing      unit.Length
	Dead, Live   unit.SurfaceMass // all that is there and is added; kg/m² as the mass that weighs as much
	Limit        float64          // of deflection under live load: 360 floors, 240 ceilings
}

// Bending is what a joist does.
type Bending struct {
	Moment, MomentMost float64    // N·m
	Shear, ShearMost   unit.Force // at the support
	Sag, SagMost       unit.Length
	SagAll             unit.Length // under dead and live load
	Of                 float64     // the largest of the three over what is allowed
	MostDead           unit.SurfaceMass
	// Longest is the span at which the first of bending, shear and deflection is reached.
	Longest unit.Length
}

// Bend returns moment, shear and deflection of a joist and what it may take:
//
//	M = w·l²/8     allowed  f·b·h²/6
//	V = w·l/2      allowed  2/3·fv·b·h
//	δ = 5·wlive·l⁴/(384·E·I)   allowed  l/Limit,   I = b·h³/12
//
// w = g·(dead + live)·spacing [N/m], l span [m], f and fv allowed stresses [Pa].
// MostDead is the dead load at which bending or shear is just allowed, 0 if none
// is. Sound wood, no notches, no holes, no point loads, ends held upright.
//
// Source: simple beam, GERE2009; stresses see Timber.
func (j Joist) Bend() (b Bending) {
	l, h, w := float64(j.Span), float64(j.Depth), float64(j.Width)
	if !(l > 0 && h > 0 && w > 0 && j.Spacing > 0 && j.Timber.Young > 0) {
		return b
	}
	line := unit.StandardGravity * float64(j.Dead+j.Live) * float64(j.Spacing)
	live := unit.StandardGravity * float64(j.Live) * float64(j.Spacing)
	ei := float64(j.Timber.Young) * w * h * h * h / 12
	b.Moment, b.MomentMost = line*l*l/8, float64(j.Timber.Bends(j.Depth))*w*h*h/6
	b.Shear, b.ShearMost = unit.Force(line*l/2), j.force(2.0/3*w*h)
	b.Sag, b.SagAll = unit.Length(5*live*l*l*l*l/(384*ei)), unit.Length(5*line*l*l*l*l/(384*ei))
	b.Of = max(b.Moment/b.MomentMost, float64(b.Shear/b.ShearMost))
	most := min(8*b.MomentMost/(l*l), 2*float64(b.ShearMost)/l)
	b.MostDead = max(0, unit.SurfaceMass(most/(unit.StandardGravity*float64(j.Spacing)))-j.Live)
	longest := math.Inf(1)
	if line > 0 {
		longest = min(math.Sqrt(8*b.MomentMost/line), 2*float64(b.ShearMost)/line)
	}
	if j.Limit > 0 {
		b.SagMost = unit.Length(l / j.Limit)
		b.Of = max(b.Of, float64(b.Sag/b.SagMost))
		if live > 0 {
			longest = min(longest, math.Cbrt(384*ei/(5*j.Limit*live)))
		}
	}
	b.Longest = unit.Length(longest)
	return b
}

func (j Joist) force(area float64) unit.Force { return unit.Force(float64(j.Timber.Shear) * area) }
