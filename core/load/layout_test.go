package load

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/caution"
	"twoleaf/core/unit"
)

const psf = unit.PoundPerSquareFoot

func in(x float64) unit.Length { return unit.Length(x) * unit.Inch }

// ceiling is 13 ft 4 in by 10 ft 8 in, joists 16 in apart.
func ceiling() Face {
	return Face{Width: in(160), Height: in(128), Ceiling: true, Frame: Frame{Spacing: in(16), First: in(8)}}
}

// boards is so many psf with channel of 0.3 lb/ft.
func boards(p float64) Carried {
	return Carried{Area: unit.SurfaceMass(p) * psf, Channel: 0.3 * unit.PoundPerFoot, Section: Hat18}
}

func laid(t *testing.T, f Face, r Rules, c Carried, rating Ratings) Layout {
	t.Helper()
	l, err := Lay(f, r, c, rating)
	require.NoError(t, err)
	return l
}

func has(l Layout, c caution.Code) bool {
	for _, n := range l.Notes {
		if n.Code == c {
			return true
		}
	}
	return false
}

// Three layers on a ceiling with joists 16 in apart: the tape's marks of every
// row, and what its clips carry against 42 lb. Golden, printed by this code; by
// hand the second clip of an inner row has 8 ft² × 4.375 psf + 4 ft × 0.3 lb/ft =
// 36.2 lb, 86 %, and the first one (8 + 24) in of the same row, 24.1 lb, 57 %.
func ExampleLay() {
	f := ceiling()
	r := Usual(f)
	l, _ := Lay(f, r, boards(4.375), Ratings{Pull: 42 * unit.Pound})
	for _, row := range l.Rows {
		fmt.Printf("%5.0f in:", float64(row.At/unit.Inch))
		for i, k := range row.Clips {
			fmt.Printf("  %.0f in %.0f %%", float64(row.Marks[i]/unit.Inch), 100*l.Spots[k].Of)
		}
		fmt.Println()
	}
	fmt.Printf("%d clips, %.2f per m², worst %.1f lb of a mean of %.1f lb\n", len(l.Spots), l.Per,
		float64(l.Spots[l.Worst].Load/unit.Pound), float64(l.Mean/unit.Pound))
	// Output:
	//     6 in:  8 in 44 %  56 in 71 %  104 in 71 %  152 in 44 %
	//    30 in:  8 in 57 %  56 in 93 %  104 in 93 %  152 in 57 %
	//    54 in:  8 in 57 %  56 in 93 %  104 in 93 %  152 in 57 %
	//    78 in:  8 in 57 %  56 in 93 %  104 in 93 %  152 in 57 %
	//   102 in:  8 in 53 %  56 in 86 %  104 in 86 %  152 in 53 %
	//   122 in:  8 in 39 %  56 in 63 %  104 in 63 %  152 in 39 %
	// 24 clips, 1.82 per m², worst 39.2 lb of a mean of 26.9 lb
}

// The table of TestPrintedTributary again, from the layout of a large face: an
// inner clip of it, with 0.15 psf of channel at this distance of rows.
func TestPrintedTributaryLaid(t *testing.T) {
	want := map[[2]float64][]float64{
		{24, 48}: {14.0, 18.8, 26.8, 36.4, 54.0, 71.6}, {24, 36}: {10.5, 14.1, 20.1, 27.3, 40.5, 53.7},
		{24, 24}: {7.0, 9.4, 13.4, 18.2, 27.0, 35.8}, {16, 48}: {9.3, 12.5, 17.9, 24.3, 36.0, 47.7},
		{16, 32}: {6.2, 8.4, 11.9, 16.2, 24.0, 31.8}, {16, 24}: {4.7, 6.3, 8.9, 12.1, 18.0, 23.9},
	}
	for g, column := range want {
		for i, p := range []float64{1.6, 2.2, 3.2, 4.4, 6.6, 8.8} {
			f := Face{Width: in(5 * g[1]), Height: in(4*g[0] + 12), Frame: Frame{Spacing: in(g[1] / 2), First: in(g[1] / 4)}}
			r := Usual(f)
			r.Rows, r.Every, r.First, r.Last, r.End = in(g[0]), 2, in(6), in(6), in(g[1]/4)
			c := Carried{Area: unit.SurfaceMass(p) * psf, Channel: unit.LineMass(0.15*g[0]/12) * unit.PoundPerFoot}
			l := laid(t, f, r, c, Ratings{Shear: 36 * unit.Pound})
			row := l.Rows[2]
			s := l.Spots[row.Clips[2]]
			assert.InDelta(t, g[0]*g[1]/144, float64(s.Area/unit.SquareFoot), 1e-9)
			// Half of the last printed digit, and of 9.35 rounded either way.
			assert.InDelta(t, column[i], float64(s.Share/unit.Pound), 0.0501, "%g psf at %g × %g in", p, g[0], g[1])
		}
	}
}

// A ceiling of 3 × 4 m takes 6 rows of 4 to 5 clips, 24 to 30 or 2.0 to 2.5 per m²
// (common practice), against 1.35 per m² of the inner grid alone.
func TestPrintedCount(t *testing.T) {
	f := Face{Width: 4, Height: 3, Ceiling: true, Frame: Frame{Spacing: 0.4, First: 0.2}}
	l := laid(t, f, Usual(f), boards(4), Ratings{})
	assert.Len(t, l.Rows, 6)
	assert.GreaterOrEqual(t, len(l.Spots), 24)
	assert.LessOrEqual(t, len(l.Spots), 30)
	assert.InDelta(t, 2.25, l.Per, 0.25)
	assert.InDelta(t, l.Per, l.Grid.PerArea(), 1e-12)
}

// The middle of two spans carries 1.25 of its share and the inner clip of three
// 1.10, where the channel ends at its outer clips; the outer ones 0.75 and 0.80.
func TestPrintedContinuousRow(t *testing.T) {
	for spans, want := range map[int]float64{2: 1.25, 3: 1.10} {
		f := Face{Width: in(48 * float64(spans)), Height: in(24), Frame: Frame{Spacing: in(48), First: 0}}
		r := Usual(f)
		r.Every, r.First, r.Last, r.Short, r.End = 1, in(24), in(24), 0, in(0.001)
		l := laid(t, f, r, Carried{Area: 20}, Ratings{})
		require.Len(t, l.Spots, spans+1)
		s := l.Spots[1]
		assert.InDelta(t, want, float64(s.Beam/s.Share), 1e-3)
		assert.Equal(t, max(s.Beam, s.Share), s.Load)
	}
}

// random is any face, with up to three openings, and rules for it.
func random(r *rand.Rand) (Face, Rules) {
	u := func(a, b float64) unit.Length { return unit.Length(a + (b-a)*r.Float64()) }
	f := Face{Width: u(0.4, 6), Height: u(0.4, 4), Ceiling: r.IntN(2) == 0, Frame: Frame{
		Spacing: []unit.Length{0, in(16), in(24), 0.6, 0.45}[r.IntN(5)], First: u(0, 0.6),
		AlongX: r.IntN(2) == 0, Ends: r.IntN(2) == 0, Jambs: r.IntN(2) == 0}}
	for range r.IntN(4) {
		f.Openings = append(f.Openings, Rect{u(-0.5, float64(f.Width)), u(-0.5, float64(f.Height)), u(0.1, 1.5), u(0.1, 2.2)})
	}
	rules := Usual(f)
	rules.Rows = []unit.Length{in(24), in(16), 0.6, 0.4}[r.IntN(4)]
	rules.Every = 1 + r.IntN(3)
	rules.Staggered, rules.Even = r.IntN(2) == 0, r.IntN(2) == 0
	if r.IntN(3) == 0 {
		rules.AtOpenings = 0
	}
	return f, rules
}

// Whatever the face: tributary areas sum to the boarded area, both ways of
// loading sum to the weight, and the drawn pieces tile the boards.
func TestLawLayout(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	laidOut := 0
	for range 1500 {
		f, rules := random(r)
		c := Carried{Area: unit.SurfaceMass(5 + 40*r.Float64()), Channel: 0.36, Section: Hat18}
		for range r.IntN(3) {
			c.Hung = append(c.Hung, Hung{unit.Length(r.Float64()) * f.Width, unit.Length(r.Float64()) * f.Height, 0.3, 0.2, unit.Mass(8 * r.Float64())})
		}
		l, err := Lay(f, rules, c, Ratings{Shear: 16, Pull: 16})
		if err != nil {
			fault := err.(*Fault)
			if fault.Code == FaultHung { // and the place it names works
				i := int(fault.Args["number"])
				c.Hung[i].X, c.Hung[i].Y = unit.Length(fault.Args["x"]), unit.Length(fault.Args["y"])
				_, err = Lay(f, rules, Carried{Area: 1, Hung: c.Hung[i : i+1]}, Ratings{})
				assert.NoError(t, err)
			} else {
				assert.Equal(t, FaultOpenings, fault.Code)
			}
			continue
		}
		laidOut++
		area, share, beam := 0.0, 0.0, 0.0
		var pieces []Rect
		for _, s := range l.Spots {
			area += float64(s.Area)
			share += float64(s.Share)
			beam += float64(s.Beam)
			own := 0.0
			for _, p := range s.Pieces {
				own += float64(p.Area())
			}
			require.InDelta(t, float64(s.Area), own, 1e-9)
			pieces = append(pieces, s.Pieces...)
			require.GreaterOrEqual(t, float64(s.Load), max(float64(s.Share), float64(s.Beam)))
		}
		require.InDelta(t, float64(l.Boarded), area, 1e-9)
		require.InDelta(t, float64(l.Weight), share, 1e-6)
		require.InDelta(t, float64(l.Weight), beam, 1e-6)
		require.InDelta(t, float64(l.Weight), float64(l.Mean)*float64(len(l.Spots)), 1e-9)
		require.InDelta(t, l.Per, l.Grid.PerArea(), 1e-9)
		for range 40 { // any place of the face: on boards in just one piece, in an opening in none
			x, y := unit.Length(r.Float64())*f.Width, unit.Length(r.Float64())*f.Height
			n, open := 0, 0
			for _, p := range pieces {
				if p.X < x && x < p.X+p.Width && p.Y < y && y < p.Y+p.Height {
					n++
				}
			}
			for _, o := range f.Openings {
				if o.X < x && x < o.X+o.Width && o.Y < y && y < o.Y+o.Height {
					open = 1
				}
			}
			require.Equal(t, 1-open, n)
		}
	}
	assert.Greater(t, laidOut, 700)
}

// No clip stands in an opening or off its channel, none is further from an end
// of its channel than the rule, no two further apart than theirs; rows likewise.
func TestLawDistances(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 1500 {
		f, rules := random(r)
		l, err := Lay(f, rules, Carried{Area: 20}, Ratings{})
		if err != nil {
			continue
		}
		step := rules.Along
		if f.Frame.Spacing > 0 {
			step = f.Frame.Spacing * unit.Length(rules.Every)
		}
		high := f.Height
		if !l.AlongX {
			high = f.Width
		}
		const tiny = 1e-6
		last := unit.Length(-1)
		for _, row := range l.Rows {
			marks := row.Marks
			n := len(marks)
			if n > 1 {
				require.LessOrEqual(t, marks[0]-row.From, rules.End+tiny)
				require.LessOrEqual(t, row.To-marks[n-1], rules.End+tiny)
			} else {
				require.Less(t, row.To-row.From, twoClips+tiny)
			}
			require.GreaterOrEqual(t, marks[0], row.From)
			require.LessOrEqual(t, marks[n-1], row.To)
			for i := 1; i < n; i++ {
				require.LessOrEqual(t, marks[i]-marks[i-1], step+tiny)
				require.Greater(t, marks[i], marks[i-1])
			}
			if !row.Added {
				if last < 0 && len(f.Openings) == 0 {
					require.LessOrEqual(t, row.At, max(rules.First, high/2)+tiny)
				}
				last = row.At
			}
		}
		if len(f.Openings) == 0 {
			require.LessOrEqual(t, high-last, max(rules.Last, high/2)+tiny)
			at := l.Rows[0].At
			for _, row := range l.Rows {
				require.LessOrEqual(t, row.At-at, rules.Rows+tiny)
				at = row.At
			}
		}
		for _, s := range l.Spots {
			for _, o := range f.Openings {
				inside := s.X > o.X && s.X < o.X+o.Width && s.Y > o.Y && s.Y < o.Y+o.Height
				require.False(t, inside)
			}
		}
	}
}

// On a regular grid more clips never load the worst more, but for the one case
// that beams know: a clip put in the middle of a row of two carries 1.25 of its
// half, more than either of the two did.
func TestLawMoreClips(t *testing.T) {
	for _, rows := range []float64{24, 16, 12} {
		worst := math.Inf(1)
		for _, every := range []int{3, 2, 1} {
			f := Face{Width: in(16 + 16*18), Height: in(108), Frame: Frame{Spacing: in(16), First: in(8)}}
			r := Usual(f)
			r.First, r.Rows, r.Every, r.Even = in(6), in(rows), every, true
			w := laid(t, f, r, Carried{Area: 21}, Ratings{})
			assert.Less(t, float64(w.Spots[w.Worst].Load), worst)
			worst = float64(w.Spots[w.Worst].Load)
		}
	}
	row := func(n float64) float64 {
		f := Face{Width: 1.2, Height: 0.25, Frame: Frame{Spacing: unit.Length(1.2 / n)}}
		r := Usual(f)
		r.Every, r.Short, r.End = 1, 0, 1e-6
		l := laid(t, f, r, Carried{Area: 10}, Ratings{})
		return float64(l.Spots[l.Worst].Load) / float64(l.Weight)
	}
	assert.InDelta(t, 0.5, row(1), 1e-3)
	assert.InDelta(t, 0.625, row(2), 1e-3)
	for n := 3.0; n < 9; n++ {
		assert.Less(t, row(n), row(n-1))
	}
}

// Staggering moves clips and neither area nor weight; clips of two rows next to
// each other then stand on different joists but for the ends.
func TestStagger(t *testing.T) {
	f := ceiling()
	r := Usual(f)
	plain := laid(t, f, r, boards(4), Ratings{})
	r.Staggered = true
	l := laid(t, f, r, boards(4), Ratings{})
	assert.InDelta(t, float64(plain.Weight), float64(l.Weight), 1e-9)
	a, b := l.Rows[0].Marks, l.Rows[1].Marks
	assert.InDeltaSlice(t, []float64{8, 56, 104, 152}, inches(a), 1e-9)
	assert.InDeltaSlice(t, []float64{8, 24, 72, 120, 152}, inches(b), 1e-9)
	// Behind a door the same goes from the stud beside it: none is 8 in from the next.
	f.Openings = []Rect{{in(20), 0, in(34), in(82)}}
	f.Frame.Jambs = true
	l = laid(t, f, r, boards(4), Ratings{})
	for _, row := range l.Rows {
		for i := 1; i < len(row.Marks) && len(row.Marks) > 2; i++ {
			assert.Greater(t, row.Marks[i]-row.Marks[i-1], in(12))
		}
	}
}

func inches(l []unit.Length) (out []float64) {
	for _, x := range l {
		out = append(out, float64(x/unit.Inch))
	}
	return out
}

// Spans of 48, 48 and 16 in lift the last clip and load the one before it; even
// ones are 32, 48 and 32, with as many clips.
func TestEven(t *testing.T) {
	f := Face{Width: in(128), Height: in(108), Ceiling: true, Frame: Frame{Spacing: in(16), First: in(8)}}
	r := Usual(f)
	odd := laid(t, f, r, boards(4), Ratings{})
	assert.InDeltaSlice(t, []float64{8, 56, 104, 120}, inches(odd.Rows[1].Marks), 1e-9)
	r.Even = true
	even := laid(t, f, r, boards(4), Ratings{})
	assert.InDeltaSlice(t, []float64{8, 40, 88, 120}, inches(even.Rows[1].Marks), 1e-9)
	assert.Len(t, even.Spots, len(odd.Spots))
	assert.Less(t, float64(even.Spots[even.Worst].Load), float64(odd.Spots[odd.Worst].Load))
}

// Resilient channel without clips is laid out on every stud, and wants no rating.
func TestResilientLaid(t *testing.T) {
	b := hungOnChannel(2.2)
	c, rating, ok := CarriedBy(b, 0)
	require.True(t, ok)
	assert.Zero(t, rating)
	f := Face{Width: in(144), Height: in(96), Frame: Frame{Spacing: in(16), First: in(15.25), Ends: true}}
	l := laid(t, f, UsualResilient(f), c, Ratings{})
	assert.False(t, has(l, caution.NoRating))
	assert.Equal(t, len(l.Spots), l.Count.Unrated)
	assert.Equal(t, OnEnd, l.Spots[0].Seat)
	f.Ceiling, f.Frame.Spacing = true, in(24)
	assert.Equal(t, in(16), UsualResilient(f).Rows)
	_, _, ok = CarriedBy(b, 1)
	assert.False(t, ok)
	// The same sum as OnClip's.
	b = hung(4.4, 24, 48, 0.24, 42)
	b.Gaps[0].FillLies = true
	c, rating, _ = CarriedBy(b, 0)
	clip, _ := OnClip(b, 0)
	assert.Equal(t, clip.Boards+clip.Fill+clip.Extra, c.Area)
	assert.Equal(t, clip.Rating, rating)
	assert.Equal(t, Hat18, c.Section)
}

// A wall with a door and a window: channel is cut, clips sit on the studs beside
// the openings, short rows hold the boards at head and sill.
func TestOpenings(t *testing.T) {
	f := Face{Width: in(144), Height: in(96), Frame: Frame{Spacing: in(16), First: in(15.25), Ends: true, Jambs: true},
		Openings: []Rect{{in(20), 0, in(34), in(82)}, {in(84), in(36), in(36), in(44)}}}
	l := laid(t, f, Usual(f), boards(4.4), Ratings{Shear: 36 * unit.Pound})
	byHeight := map[int]int{}
	for _, row := range l.Rows {
		byHeight[int(math.Round(float64(row.At/unit.Inch)))]++
	}
	// 3, 27, 51, 75, 90 in is the rhythm; the door cuts the first four, the window
	// two of them. Head and sill all have a row within 12 in.
	assert.Equal(t, map[int]int{3: 2, 27: 2, 51: 3, 75: 3, 90: 1}, byHeight)
	jambs := 0
	for _, s := range l.Spots {
		if s.Seat == OnJamb {
			jambs++
		}
	}
	assert.Positive(t, jambs)
	assert.False(t, has(l, LooseStrip))
	// A sill at 44 in is 17 in above a row: a short one goes 6 in below it, and less
	// hangs on the clips around.
	f.Openings[1] = Rect{in(84), in(44), in(36), in(36)}
	l = laid(t, f, Usual(f), boards(4.4), Ratings{})
	added := 0
	for _, row := range l.Rows {
		if row.Added {
			added++
			assert.InDelta(t, 38, float64(row.At/unit.Inch), 1e-9)
			assert.Less(t, row.From, in(84))
			assert.Greater(t, row.To, in(120))
		}
	}
	assert.Equal(t, 1, added)
	r := Usual(f)
	r.AtOpenings = 0
	bare := laid(t, f, r, boards(4.4), Ratings{})
	assert.Len(t, bare.Rows, len(l.Rows)-1)
	assert.Less(t, float64(l.Spots[l.Worst].Load), float64(bare.Spots[bare.Worst].Load)+1e-9)
	// A window up to 4 in below the ceiling: no row fits above it.
	f.Openings = []Rect{{in(40), in(30), in(48), in(63)}}
	assert.True(t, has(laid(t, f, r, boards(4.4), Ratings{}), LooseStrip) == false, "3 in is not worth a word")
	f.Openings[0].Height = in(61)
	assert.True(t, has(laid(t, f, r, boards(4.4), Ratings{}), LooseStrip))
}

// An air box of 12 lb between two clips goes to both by the lever, and the
// mend is the clip that brings the worst down again.
func TestHung(t *testing.T) {
	f, c := ceiling(), boards(4.375)
	r := Usual(f)
	rating := Ratings{Pull: 36 * unit.Pound}
	before := laid(t, f, r, c, rating)
	c.Hung = []Hung{{X: in(92), Y: in(54), Mass: 12 * unit.Pound}}
	l := laid(t, f, r, c, rating)
	at := func(l Layout, x float64) Spot {
		for _, k := range l.Rows[2].Clips {
			if math.Abs(float64(l.Spots[k].X/unit.Inch)-x) < 0.1 {
				return l.Spots[k]
			}
		}
		return Spot{}
	}
	assert.InDelta(t, 3, float64((at(l, 56).Share-at(before, 56).Share)/unit.Pound), 1e-9)
	assert.InDelta(t, 9, float64((at(l, 104).Share-at(before, 104).Share)/unit.Pound), 1e-9)
	assert.InDelta(t, 12, float64((l.Weight-before.Weight)/unit.Pound), 1e-9)
	assert.Equal(t, l.Spots[l.Worst], at(l, 104))
	assert.Equal(t, Over, l.Spots[l.Worst].State)
	place, mended, ok := Mend(f, r, c, rating)
	require.True(t, ok)
	assert.InDelta(t, 54, float64(place.Y/unit.Inch), 1e-9)
	assert.InDelta(t, 88, float64(place.X/unit.Inch), 1e-9)
	assert.Less(t, mended.Spots[mended.Worst].Of, l.Spots[l.Worst].Of)
	assert.Len(t, mended.Spots, len(l.Spots)+1)

	c.Hung[0].Width, c.Hung[0].Height = in(24), in(24)
	wide := laid(t, f, r, c, rating)
	assert.InDelta(t, float64(l.Weight), float64(wide.Weight), 1e-12)
	assert.Less(t, float64(at(wide, 104).Share), float64(at(l, 104).Share), "a wide box reaches other rows")
	c.Hung[0].X = in(200)
	_, err := Lay(f, r, c, rating)
	assert.Equal(t, FaultHung, err.(*Fault).Code)
	assert.InDelta(t, 160*0.0254, err.(*Fault).Args["x"], 1e-9)
}

// The widest that holds: one step wider does not, unless it is not one of the steps.
func TestWidest(t *testing.T) {
	f := ceiling()
	steps := []unit.Length{in(24), in(16), in(12)}
	rules, l, err := Widest(f, Usual(f), boards(4.375), Ratings{Pull: 42 * unit.Pound}, steps)
	require.NoError(t, err)
	assert.Equal(t, in(24), rules.Rows)
	assert.Equal(t, 3, rules.Every)
	assert.True(t, l.Held())
	rules, l, err = Widest(f, Usual(f), boards(6.6), Ratings{Pull: 36 * unit.Pound}, steps)
	require.NoError(t, err)
	assert.True(t, l.Held())
	// By hand over all that was asked: none with fewer clips holds.
	for _, step := range steps {
		for every := 1; every <= 3; every++ {
			for _, even := range []bool{false, true} {
				other := Usual(f)
				other.Rows, other.Every, other.Even = step, every, even
				if w := laid(t, f, other, boards(6.6), Ratings{Pull: 36 * unit.Pound}); w.Held() {
					assert.GreaterOrEqual(t, len(w.Spots), len(l.Spots))
				}
			}
		}
	}
	assert.True(t, rules.Rows < in(24) || rules.Every < 3)

	tight, _, err := Widest(f, Usual(f), boards(30), Ratings{Pull: 10 * unit.Pound}, steps)
	fault := err.(*Fault)
	assert.Equal(t, FaultNoneHolds, fault.Code)
	assert.Equal(t, in(12), unit.Length(fault.Args["rows"]))
	// What it says would hold is right at the rating.
	c := boards(0)
	c.Area = unit.SurfaceMass(fault.Args["most"])
	just := laid(t, f, tight, c, Ratings{Pull: 10 * unit.Pound})
	assert.InDelta(t, 1, just.Spots[just.Worst].Of, 1e-6)
	_, _, err = Widest(f, Usual(f), boards(4), Ratings{Shear: 10}, steps)
	assert.Equal(t, FaultUnrated, err.(*Fault).Code)
}

func TestDirection(t *testing.T) {
	f := ceiling()
	l := laid(t, f, Usual(f), boards(4), Ratings{Shear: 20, Pull: 30})
	assert.Equal(t, unit.Mass(30), l.Rating, "a ceiling pulls")
	f.Ceiling = false
	l = laid(t, f, Usual(f), boards(4), Ratings{Shear: 20, Pull: 30})
	assert.Equal(t, unit.Mass(20), l.Rating, "a wall shears")
	l = laid(t, f, Usual(f), boards(4), Ratings{Pull: 30})
	assert.True(t, has(l, RatedOtherWay))
	assert.Equal(t, Unrated, l.Spots[0].State)
	assert.Positive(t, l.Spots[0].Load, "the loads are shown without a rating")
	assert.Equal(t, len(l.Spots), l.Count.Unrated)
	l = laid(t, f, Usual(f), boards(4), Ratings{})
	assert.True(t, has(l, caution.NoRating))
}

// Two layers on 24 × 48 in sag within L/240 over three spans; three do not.
func TestChannelInLayout(t *testing.T) {
	f := ceiling()
	f.Width = in(48*5 + 16)
	l := laid(t, f, Usual(f), boards(4.4), Ratings{})
	assert.False(t, has(l, ChannelSags))
	assert.Positive(t, l.Rows[1].SagOf)
	l = laid(t, f, Usual(f), boards(6.6), Ratings{})
	assert.True(t, has(l, ChannelBends) || has(l, ChannelSags))
	f.Ceiling = false
	l = laid(t, f, Usual(f), boards(6.6), Ratings{})
	assert.Zero(t, l.Rows[1].SagOf, "a wall's channel does not hang")
}

// Said in codes, with the nearest thing that works.
func TestFaults(t *testing.T) {
	f := ceiling()
	code := func(f Face, r Rules, c Carried) caution.Code {
		_, err := Lay(f, r, c, Ratings{})
		if err == nil {
			return ""
		}
		assert.NotEmpty(t, err.Error())
		return err.(*Fault).Code
	}
	r := Usual(f)
	assert.Equal(t, FaultFace, code(Face{Width: 0.05, Height: 2, Frame: f.Frame}, r, boards(4)))
	assert.Equal(t, FaultFace, code(Face{Width: unit.Length(math.NaN()), Height: 2}, r, boards(4)))
	assert.Equal(t, FaultFace, code(Face{Width: 101, Height: 2}, r, boards(4)))
	full := f
	full.Openings = []Rect{{-1, -1, 9, 9}}
	assert.Equal(t, FaultOpenings, code(full, r, boards(4)))
	full.Openings = []Rect{{0.03, 0.03, in(160) - 0.06, in(128) - 0.06}}
	assert.Equal(t, FaultOpenings, code(full, Rules{Rows: 1, Every: 1, First: 0.5, Last: 0.5, End: 0.2, Short: 0.006}, boards(4)), "3 cm beside it")
	bad := r
	bad.Rows = 0
	assert.Equal(t, FaultRule, code(f, bad, boards(4)))
	bad = r
	bad.Every = 0
	assert.Equal(t, FaultRule, code(f, bad, boards(4)))
	bare := f
	bare.Frame = Frame{}
	bad = r
	bad.Along = 0
	assert.Equal(t, FaultRule, code(bare, bad, boards(4)), "masonry wants a distance along the row")
	assert.Equal(t, caution.Code(""), code(f, bad, boards(4)), "a frame does not")
	assert.Equal(t, FaultMass, code(f, r, Carried{Area: -1}))

	small := laid(t, Face{Width: in(20), Height: in(8), Frame: f.Frame}, r, boards(4), Ratings{})
	assert.True(t, has(small, OneRow))
	assert.Len(t, small.Rows, 1)
	assert.InDelta(t, 4, float64(small.Rows[0].At/unit.Inch), 1e-9)
	tiny := laid(t, Face{Width: in(6), Height: in(60), Frame: f.Frame}, r, boards(4), Ratings{})
	assert.True(t, has(tiny, OneClip))
	// Joists 48 in apart, none near the walls: blocking is asked for.
	far := f
	far.Frame = Frame{Spacing: in(48), First: in(30)}
	assert.True(t, has(laid(t, far, Usual(far), boards(4), Ratings{}), NeedsBlocking))
}

// No number, however odd, panics, hangs or gives a load that is none.
func TestLawOdd(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 16))
	odd := []float64{0, -1, 1e-12, 1e9, math.Inf(1), math.Inf(-1), math.NaN(), 0.05, 1}
	for range 1500 {
		f, rules := random(r)
		c := Carried{Area: 20, Channel: 0.36, Section: Hat18, Hung: []Hung{{1, 1, 0, 0, 1}}}
		rules.Plus = []Place{{1, 1}}
		v := odd[r.IntN(len(odd))]
		l := unit.Length(v)
		places := []*unit.Length{&f.Width, &f.Height, &f.Frame.Spacing, &f.Frame.First, &rules.Rows, &rules.Along, &rules.First, &rules.Last,
			&rules.End, &rules.Short, &rules.AtOpenings, &c.Hung[0].X, &c.Hung[0].Width, &rules.Plus[0].X}
		if len(f.Openings) > 0 {
			o := &f.Openings[0]
			places = append(places, &o.X, &o.Y, &o.Width, &o.Height)
		}
		switch k := r.IntN(len(places) + 4); k {
		default:
			*places[k] = l
		case len(places):
			c.Area = unit.SurfaceMass(v)
		case len(places) + 1:
			c.Channel = unit.LineMass(v)
		case len(places) + 2:
			c.Hung[0].Mass = unit.Mass(v)
		case len(places) + 3:
			rules.Every = []int{0, -1, 1 << 40, 1}[r.IntN(4)]
		}
		lay, err := Lay(f, rules, c, Ratings{})
		if err != nil {
			continue
		}
		for _, s := range lay.Spots {
			require.False(t, math.IsNaN(float64(s.Load)) || math.IsInf(float64(s.Load), 0))
		}
	}
}

// Turned about its diagonal a face gives the same loads.
func TestLawTurned(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for range 300 {
		f, rules := random(r)
		g := f
		g.Width, g.Height, g.Frame.AlongX = f.Height, f.Width, !f.Frame.AlongX
		g.Openings = nil
		for _, o := range f.Openings {
			g.Openings = append(g.Openings, Rect{o.Y, o.X, o.Height, o.Width})
		}
		a, errA := Lay(f, rules, Carried{Area: 20}, Ratings{})
		b, errB := Lay(g, rules, Carried{Area: 20}, Ratings{})
		require.Equal(t, errA == nil, errB == nil)
		require.Len(t, b.Spots, len(a.Spots))
		for i := range a.Spots {
			require.Equal(t, a.Spots[i].Load, b.Spots[i].Load)
			require.Equal(t, a.Spots[i].X, b.Spots[i].Y)
		}
	}
}

// BenchmarkRoom lays out six faces, three with an opening.
func BenchmarkRoom(b *testing.B) {
	var faces []Face
	for i := range 6 {
		f := ceiling()
		f.Ceiling = i > 3
		if i < 3 {
			f.Openings = []Rect{{in(40), 0, in(34), in(82)}, {in(100), in(36), in(36), in(40)}}
		}
		faces = append(faces, f)
	}
	b.ReportAllocs()
	for b.Loop() {
		for _, f := range faces {
			_, _ = Lay(f, Usual(f), boards(4.4), Ratings{Shear: 36, Pull: 36})
		}
	}
}
