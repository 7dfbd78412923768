package load

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/caution"
	"twoleaf/core/internal/refdata"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// Every cell of the ceiling joist table for 19.2 and 24 in, to the inch printed:
// wood, size factors, beam formulas and the two limits at once.
func TestPrintedCeilingJoists(t *testing.T) {
	cells := 0
	for _, row := range refdata.CSV(t, "load", "ceiling_joists.csv") {
		wood, ok := TimberOf(row["timber"])
		require.True(t, ok, row["timber"])
		spacing, _ := row.Num(t, "spacing_in")
		for column, deep := range map[string]float64{"2x4": 3.5, "2x6": 5.5, "2x8": 7.25, "2x10": 9.25} {
			want, _ := row.Num(t, column)
			j := Joist{Timber: wood, Width: in(1.5), Depth: in(deep), Span: in(want), Spacing: in(spacing), Dead: 10 * psf, Live: 20 * psf, Limit: 240}
			// Whole inches, so half an inch either way.
			assert.InDelta(t, want, float64(j.Bend().Longest/unit.Inch), 0.5+1e-9, "%s %s at %g in", row["timber"], column, spacing)
			cells++
		}
	}
	assert.Equal(t, 128, cells)
}

// GERE2009, problem 5.6-7 and its solution: joists 16 in apart over 10.5 ft under 120 psf have
// q = 13.333 lb/in, M = 26 460 lb·in and, at 1350 psi, S = 19.6 in³.
func TestPrintedFloorJoist(t *testing.T) {
	j := Joist{Timber: timbers[0], Width: in(1.5), Depth: in(9.25), Span: 10.5 * unit.Foot, Spacing: in(16), Live: 120 * psf}
	b := j.Bend()
	poundInch := float64(unit.PoundForce) * 0.0254
	assert.InDelta(t, 26460, b.Moment/poundInch, 1)
	assert.InDelta(t, 19.6, b.Moment/poundInch/1350, 0.05)
	assert.InDelta(t, 13.333, 2*float64(b.Shear/unit.PoundForce)/126, 0.001)
	// The 2 × 10 it chooses has S = 21.4 in³, by what it may take over its stress.
	assert.InDelta(t, 21.39, b.MomentMost/float64(j.Timber.Bends(j.Depth))/math.Pow(0.0254, 3), 0.01)
}

// Joists of 2x8 Douglas fir-larch No. 2, 16 in apart over 11 ft under 40 + 10 psf:
// what they do and what dead load they may have.
func ExampleJoist_Bend() {
	wood, _ := TimberOf("dfl-2")
	j := Joist{Timber: wood, Width: 1.5 * unit.Inch, Depth: 7.25 * unit.Inch, Span: 11 * unit.Foot, Spacing: 16 * unit.Inch,
		Dead: 10 * unit.PoundPerSquareFoot, Live: 40 * unit.PoundPerSquareFoot, Limit: 360}
	b := j.Bend()
	fmt.Printf("moment     %.0f of %.0f N·m\n", b.Moment, b.MomentMost) // 66.7 lb/ft × 11² / 8 = 1008 lb·ft
	fmt.Printf("shear      %.0f of %.0f N\n", float64(b.Shear), float64(b.ShearMost))
	// 53.3 lb/ft × 5 × 132⁴ / (12 × 384 × 1.6e6 × 47.6) = 0.23 in
	fmt.Printf("sag        %.1f of %.1f mm\n", float64(1000*b.Sag), float64(1000*b.SagMost))
	fmt.Printf("dead load  up to %.0f psf\n", float64(b.MostDead/unit.PoundPerSquareFoot))
	// Output:
	// moment     1367 of 1844 N·m
	// shear      1631 of 5805 N
	// sag        5.9 of 9.3 mm
	// dead load  up to 27 psf
}

func TestLawJoist(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	for range 500 {
		j := Joist{Timber: timbers[r.IntN(len(timbers))], Width: 0.038, Depth: unit.Length(0.08 + 0.25*r.Float64()),
			Span: unit.Length(1.5 + 5*r.Float64()), Spacing: 0.4, Dead: 60, Live: 100, Limit: 360}
		b := j.Bend()
		// Right at the longest span, and at the most dead load, it is just allowed.
		at := j
		at.Span = b.Longest
		assert.InDelta(t, 1, at.Bend().Of, 1e-9)
		if b.MostDead > 0 {
			at = j
			at.Dead, at.Limit = b.MostDead, 0
			assert.InDelta(t, 1, at.Bend().Of, 1e-9)
		}
		// Deeper joists of one wood never span less.
		deep := j
		deep.Depth *= 1.3
		assert.Greater(t, deep.Bend().Longest, b.Longest)
	}
	assert.Zero(t, Joist{}.Bend())
	_, ok := TimberOf("oak")
	assert.False(t, ok)
	assert.Len(t, Timbers(), len(timbers))
}

// Two layers of 5/8 in with channel, 4.6 psf, under a floor sized for 10 psf: nothing spare
// for them; one layer over a "no storage" attic leaves about 1 psf at best.
func TestDeadLoad(t *testing.T) {
	d := DeadOn(Ceiling{Above: FloorAbove, Region: "US", Spacing: in(16), Added: 4.6 * psf, Code: 4.6 * psf})
	assert.InDelta(t, 10-11-4.6, float64(d.LeftLow/psf), 1e-9)
	assert.InDelta(t, 10-7-4.6, float64(d.LeftHigh/psf), 1e-9)
	assert.InDelta(t, 4.6*16/12, float64(d.OnJoist/unit.PoundPerFoot), 1e-9)
	d = DeadOn(Ceiling{Above: AtticEmpty, Region: "US", Code: 1 * psf, There: 3 * psf})
	assert.InDelta(t, 1, float64(d.LeftLow/psf), 1e-9)
	d = DeadOn(Ceiling{Above: FloorAbove, Region: "CA", Code: 4.6 * psf, There: 10 * psf, Off: 2.2 * psf})
	assert.InDelta(t, -2.4, float64(d.LeftLow/psf), 1e-9, "the old ceiling taken off")
	d = DeadOn(Ceiling{Above: SlabAbove, Region: "US", Code: 4 * psf})
	assert.False(t, d.Known)
	for _, region := range []string{"US", "CA", "UK", "EU", "AU"} {
		for _, a := range []Above{FloorAbove, AtticEmpty, AtticStored, TrussAbove} {
			s, ok := SizedFor(a, region)
			assert.True(t, ok)
			assert.Positive(t, s.Dead)
			assert.Positive(t, s.Live)
			assert.NotEmpty(t, s.Origin)
			assert.Less(t, s.ThereLow, s.ThereHigh)
		}
	}
}

// The code's heavier mass counts for new layers only: 1/2 in regular board weighs
// 7.8 kg/m² and is 10.74 in the structural table (ASCE7).
func TestCodeMass(t *testing.T) {
	b := hung(1.6, 24, 48, 0.24, 36)
	light := Added(b, 0)
	assert.Equal(t, light, CodeAdded(b, 0), "a board without a code mass")
	y := &b.Leaves[0].Layers[0].Board
	y.Mass, y.CodeMass = 7.8, 10.74
	assert.InDelta(t, 2.94, float64(CodeAdded(b, 0)-Added(b, 0)), 1e-9)
	b.Leaves[0].Layers[0].There = true
	assert.Equal(t, Added(b, 0), CodeAdded(b, 0))
	y.CodeMass = 5
	b.Leaves[0].Layers[0].There = false
	assert.Equal(t, Added(b, 0), CodeAdded(b, 0), "never lighter than delivered")
	assert.Zero(t, CodeAdded(b, 9))
}

// By hand: a ceiling of 40 kg/m² over 3 m puts 60 kg/m on each of two walls; a wall of 30 kg/m² and studs of
// 1.5 kg/m at 0.4 m, 2.4 m high, with three plates is 72 + 9 + 4.5.
func TestInnerFrame(t *testing.T) {
	rests, others := InnerFrame{Ceiling: 40, Span: 3, Wall: 30, Height: 2.4, Stud: 1.5, Spacing: 0.4}.OnFloor()
	assert.InDelta(t, 85.5, float64(others), 1e-9)
	assert.InDelta(t, 145.5, float64(rests), 1e-9)
}

func TestEngineer(t *testing.T) {
	codes := func(f Facts) (out []caution.Code) {
		for _, c := range Engineer(f) {
			out = append(out, c.Code)
		}
		return out
	}
	assert.Empty(t, codes(Facts{}))
	light := Ceiling{Above: FloorAbove, Region: "US", Code: 1.9 * psf, There: 8 * psf}
	assert.Empty(t, codes(Facts{Ceiling: light}))
	light.Code = 2.1 * psf
	assert.Equal(t, []caution.Code{caution.CeilingDeadLoad, DeadPassed}, codes(Facts{Ceiling: light}))
	assert.Contains(t, codes(Facts{Ceiling: Ceiling{Above: TrussAbove, Region: "US", Code: 0.5 * psf}}), caution.TrussChord)
	wood, _ := TimberOf("spf-3")
	weak := Joist{Timber: wood, Width: in(1.5), Depth: in(5.5), Span: 4, Spacing: 0.4, Dead: 100, Live: 195, Limit: 360}
	assert.Equal(t, []caution.Code{JoistOver}, codes(Facts{Joist: &weak}))
	inner := InnerFrame{Ceiling: 40, Span: 3.7, Wall: 30, Height: 2.4, Stud: 1.5, Spacing: 0.4}
	all := codes(Facts{Cut: true, Sag: 0.02, Span: 4, Poured: 40, Masonry: 200, Inner: &inner, Suspended: true, WallOut: true, Built: 1925})
	assert.Equal(t, []caution.Code{JoistsCut, JoistsSag, caution.PouredFloor, caution.MasonryOnFloor, LongSpan, FrameOnFloor, WallOut, OldFrame}, all)
	inner.Span = 3.6
	assert.Empty(t, codes(Facts{Inner: &inner, Sag: 0.011, Span: 4, Masonry: 200, Built: 1940}))
}

func TestFasten(t *testing.T) {
	b := hung(4, 24, 48, 0.24, 36)
	codes := func(lengths ...unit.Length) (out []caution.Code) {
		for _, c := range Fasten(b, 0, lengths) {
			out = append(out, c.Code)
		}
		return out
	}
	assert.Equal(t, []caution.Code{FineThread}, codes())
	b.Leaves[0].Layers[0].Board.Kind = material.Plywood
	assert.Equal(t, []caution.Code{FineThread, PilotHoles, PanelGap}, codes())
	assert.InDelta(t, 9.0/64, Fasten(b, 0, []unit.Length{0.041})[1].Args["diameter"]/0.0254, 1e-9)
	assert.InDelta(t, 11.0/64, Fasten(b, 0, []unit.Length{in(2.5)})[1].Args["diameter"]/0.0254, 1e-9)
	b.Leaves[0].Layers[0].There = true
	assert.Equal(t, []caution.Code{FineThread}, codes(), "a panel that is there is not drilled")
	b.Leaves[0].Layers[0].There = false
	b.Gaps[0].Near.Fixing.Kind = material.Screwed
	b.Gaps[0].Frame = material.Frame{Kind: material.Wood}
	assert.Equal(t, []caution.Code{CoarseThread, PanelGap}, codes(), "wood holds by itself")
	b.Gaps[0].Frame = material.Frame{Kind: material.CStud, Sheet: 1.2 * unit.Millimetre}
	assert.Equal(t, []caution.Code{DrillPoint, PilotHoles, PanelGap}, codes())
	b.Gaps[0].Frame = material.Frame{Kind: material.Bare}
	assert.Empty(t, codes())
	assert.Empty(t, Fasten(b, 7, nil))
}

// A stud of 38 mm in the corner with 3 mm open: two layers of 12.5 mm leave 10 mm of it, so a
// second one is put beside it; one layer leaves 22.5 mm and is enough.
func TestCorner(t *testing.T) {
	c := CornerOf([]unit.Length{0.0125, 0.0125}, 0.003, 0.038, 0.038, 3)
	assert.InDelta(t, 0.048, float64(c.Need), 1e-9)
	assert.InDeltaSlice(t, []float64{0.010, 0.010, 0.010}, []float64{float64(c.Grip[0]), float64(c.Grip[1]), float64(c.Grip[2])}, 1e-9)
	assert.False(t, c.Ok)
	assert.Equal(t, 1, c.Add)
	c = CornerOf([]unit.Length{0.0125}, 0.003, 0.038, 0.038, 1)
	assert.True(t, c.Ok)
	assert.Zero(t, c.Add)
	c = CornerOf([]unit.Length{0.05, 0.05}, 0, 0.038, 0.038, 1)
	assert.Equal(t, 3, c.Add)
	assert.Zero(t, c.Grip[0])
}

// 45 kg/m² on 1.344 clips per m² of 150 kN/m is 10.65 Hz (derived); half the load
// is 41 % higher, a third 73 %.
func TestHanging(t *testing.T) {
	h := Hang(150e3, 75e3, 300e3, 1.344, 45, 0.1, nil)
	assert.InDelta(t, 10.65, float64(h.Frequency), 0.005)
	assert.InDelta(t, 1.41, float64(h.HalfLoad/h.Frequency), 0.005)
	third := Hang(150e3, 75e3, 300e3, 1.344, 15, 0.1, nil)
	assert.InDelta(t, 1.73, float64(third.Frequency/h.Frequency), 0.005)
	assert.InDelta(t, math.Sqrt2, float64(h.High/h.Frequency), 1e-9)
	assert.InDelta(t, math.Sqrt2, float64(h.Frequency/h.Low), 1e-9)
	assert.Greater(t, h.WithAir, h.Frequency)
	assert.Zero(t, Hang(0, 0, 0, 1, 45, 0.1, nil))
	// f = 15.76/√δ of static deflection in mm, times √1.4 for rubber: 18.6 Hz at 1 mm, 13 at 2, 11 at 3, 8 at 5.
	for mm, hz := range map[float64]float64{0.5: 26, 1: 19, 2: 13, 3: 11, 5: 8} {
		k := 45 * unit.StandardGravity * RubberRatio / (mm / 1000)
		h := Hang(k, k, k, 1, 45, 0, nil)
		assert.InDelta(t, mm, float64(1000*h.Deflection), 1e-9)
		assert.InDelta(t, hz, float64(h.Frequency), 0.5)
		assert.Zero(t, h.WithAir)
	}
}

// Clips at the corners of a ceiling carry less than half of the mean and sit higher.
func TestUneven(t *testing.T) {
	f := Face{Width: in(144), Height: in(120), Ceiling: true, Frame: Frame{Spacing: in(16), First: in(8)}}
	r := Usual(f)
	l := laid(t, f, r, boards(4.4), Ratings{})
	c, ok := Uneven(l, 150e3)
	require.True(t, ok)
	assert.LessOrEqual(t, c.Args["share"], 0.5)
	assert.Greater(t, c.Args["frequency"], c.Args["mean"])
	h := Hang(150e3, 75e3, 300e3, l.Per, unit.SurfaceMass(float64(l.Weight)/float64(l.Boarded)), 0.13, l.Spots)
	require.Len(t, h.Each, len(l.Spots))
	assert.InDelta(t, c.Args["mean"], float64(h.Frequency), 1e-9, "the leaf as one mass is the clip under the mean")
	_, ok = Uneven(Layout{Least: -1}, 1)
	assert.False(t, ok)
}
