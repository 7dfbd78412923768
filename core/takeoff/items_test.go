package takeoff

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// Screws of one whole sheet, lines × (⌊length/spacing⌋ + 1): derived from the
// spacing rules, through the cut of a face of just that size. The trade's
// take-off figure beside it: about 1000 a 1000 ft², 32 a sheet (takeoff-book).
func TestPrintedScrewsPerSheet(t *testing.T) {
	const in, mm = unit.Inch, unit.Millimetre
	for _, row := range []struct {
		name                string
		long, wide          unit.Length
		upright             bool // lines run along the wide side of a lying sheet
		apart               unit.Length
		region              string
		place               Place
		channel, last, kept bool
		n                   int
	}{
		{"4x8 across studs 16 in, 16 in", 96 * in, 48 * in, true, 16 * in, "US", Wall, false, true, false, 28},
		{"the same, ceiling 12 in", 96 * in, 48 * in, true, 16 * in, "US", Ceiling, false, true, false, 35},
		{"the same, base layer 24 in", 96 * in, 48 * in, true, 16 * in, "US", Wall, false, false, false, 21},
		{"studs 24 in, 16 in", 96 * in, 48 * in, true, 24 * in, "US", Wall, false, true, false, 20},
		{"on channel rows 24 in, 12 in", 96 * in, 48 * in, true, 24 * in, "US", Wall, true, true, false, 25},
		{"on channel rows 16 in, 12 in", 96 * in, 48 * in, true, 16 * in, "US", Wall, true, true, false, 35},
		{"1200x2400 on 600 studs, 300", 2400 * mm, 1200 * mm, false, 600 * mm, "UK", Wall, false, true, false, 27},
	} {
		f := Face{ID: "x", Place: row.place, Width: row.long, Height: row.wide, Framing: Framing{Upright: row.upright, Spacing: row.apart}}
		s := ScrewSpacing(row.region, row.place, material.Gypsum, row.channel, row.last)
		l := list{}
		p := Piece{On: Rect{0, 0, row.long, row.wide}}
		if row.region == "UK" {
			s.Edge = s.Field // the row has 300 mm at the edges too
		}
		assert.Equal(t, row.n, l.screwsOf(p, f, s), row.name)
	}
	// 4x8 across studs 16 in, typed 6 in: seven lines of nine; wider than the rule, as by the rule.
	usual := ScrewSpacing("US", Wall, material.Gypsum, false, true)
	assert.Equal(t, 63, ScrewsIn(48*in, 5, 2, usual.Closer(6*in)))
	assert.Equal(t, RuleScrewTyped, usual.Closer(6*in).Rule)
	assert.Equal(t, usual, usual.Closer(24*in))
	assert.Equal(t, usual, usual.Closer(0))
	// 1200x2400 across joists at 400 mm, 230 mm: seven lines of six.
	assert.Equal(t, 42, ScrewsIn(1200*mm, 7, 0, Spacing{Field: 230 * mm}))
	assert.Equal(t, 230*mm, ScrewSpacing("UK", Ceiling, material.Gypsum, false, true).Field)
	assert.Equal(t, 150*mm, ScrewSpacing("UK", Ceiling, material.Gypsum, false, true).Edge)
}

// Metres of bead a cartridge, arithmetic on its volume.
func TestPrintedBead(t *testing.T) {
	for _, row := range []struct {
		ml   float64
		want [5]float64
	}{
		{300, [5]float64{23.9, 10.6, 6.0, 3.8, 2.7}},
		{600, [5]float64{47.7, 21.2, 11.9, 7.6, 5.3}},
		{825, [5]float64{65.7, 29.2, 16.4, 10.5, 7.3}},
	} {
		for i, mm := range []unit.Length{4, 6, 8, 10, 12} {
			assert.InDelta(t, row.want[i], float64(Bead(row.ml*1e-6, mm*unit.Millimetre)), 0.05)
		}
	}
	for i, want := range []float64{16.7, 9.4, 6.0} {
		assert.InDelta(t, want, float64(Fillet(300e-6, unit.Length(6+2*i)*unit.Millimetre)), 0.05)
	}
	assert.InDelta(t, 5, float64(Fill(300e-6, 6*unit.Millimetre, 10*unit.Millimetre)), 1e-9)
	// Two layers of 38 m in 8 mm: 5 large cartridges and no waste.
	assert.InDelta(t, 5, math.Ceil(2*38/float64(Bead(825e-6, 8*unit.Millimetre))), 0)
	// 10.1, 27 and 30 fl oz are 18.3, 48.7 and 54.1 cubic inches (sealant-faq).
	for oz, cubic := range map[float64]float64{10.1: 18.3, 27: 48.7, 30: 54.1} {
		assert.InDelta(t, cubic, oz*29.5735e-6/math.Pow(0.0254, 3), 0.1)
	}
}

// Two tubes to a 4x8 ft sheet, and to one of 1200x2400; a pail of 5 US gallons to about 11 sheets (film-note).
func TestPrintedFilm(t *testing.T) {
	assert.InDelta(t, 2, float64(32*unit.SquareFoot)*FilmRate/FilmTube, 0.05)
	assert.InDelta(t, 2, 2.88*FilmRate/FilmTube, 0.05)
	assert.InDelta(t, 11, 5*3.785e-3/(float64(32*unit.SquareFoot)*FilmRate), 0.5)
}

func TestLawRows(t *testing.T) {
	assert.Equal(t, 1, Rows([]unit.Length{3.6}, 3.6, 0.15))
	assert.Equal(t, 2, Rows([]unit.Length{3.7}, 3.6, 0.15))
	assert.Equal(t, 2, Rows([]unit.Length{2*3.6 - 0.15}, 3.6, 0.15))
	assert.Equal(t, 3, Rows([]unit.Length{2*3.6 - 0.14}, 3.6, 0.15))
	assert.Equal(t, 3, Rows([]unit.Length{4.5, 4.5, 0.3}, 3.6, 0.15), "what is left of one begins the next")
	assert.Zero(t, Rows([]unit.Length{1}, 0.1, 0.15))
	r := rand.New(rand.NewPCG(31, 32))
	for range 300 {
		var rows []unit.Length
		run, pieces := 0.0, 0
		for range 1 + r.IntN(9) {
			l := 0.3 + 6*r.Float64()
			rows = append(rows, unit.Length(l))
			n := math.Ceil((l - 0.15) / (3.6 - 0.15))
			pieces += int(max(1, n))
			run += l + 0.15*(max(1, n)-1)
		}
		n := Rows(rows, 3.6, 0.15)
		assert.GreaterOrEqual(t, float64(n)*3.6, run-1e-9, "enough with laps")
		assert.LessOrEqual(t, n, pieces, "never more than each row by itself")
	}
}

func goods() Goods {
	g := Goods{Region: "US", Clips: 94, Rows: []unit.Length{4, 4, 3.2, 3.2}, Batts: 44, Mounts: 2}
	for _, f := range Box(1, 1, 1) {
		for k, kind := range []material.Kind{material.Gypsum, material.Plywood, material.Gypsum} {
			g.Screws = append(g.Screws, Fixed{Face: f.ID, Layer: k, Length: []unit.Length{1, 1.625, 2}[k] * unit.Inch, Kind: kind, OnChannel: true})
		}
		g.Film = append(g.Film, Layer{Face: f.ID, Layer: 1})
	}
	return g
}

func TestLawItems(t *testing.T) {
	job := room()
	cut := Prepare(job).Cut(0, 1)
	g := goods()
	items := Items(job, cut, g)
	by := map[string]Item{}
	for _, i := range items {
		_, twice := by[i.Key()]
		require.False(t, twice, i.Key())
		by[i.Key()] = i
		assert.NotEmpty(t, i.Rule)
		assert.NotEmpty(t, i.Origin)
		assert.GreaterOrEqual(t, float64(i.Buy+i.Owned)*i.Pack, i.Amount*(1+i.Waste)-1e-6, "enough is bought: "+i.Key())
		assert.Less(t, float64(i.Buy+i.Owned-1)*i.Pack, i.Amount*(1+i.Waste), "and not one too many: "+i.Key())
	}
	for _, c := range []string{"sheets/gyp", "sheets/ply", "screws/254", "screws/413", "screws/508", "sealant/95", "damping", "clips", "channel/36576", "batts", "pads", "tape", "compound", "blocking"} {
		assert.Contains(t, by, c)
	}
	assert.InDelta(t, 8, by["pads"].Amount, 0)
	assert.InDelta(t, 4, by["channel/36576"].Args["rows"], 0)
	// Sealant: the perimeters of 18 layers and 10 holes, those of boxes and door on every layer.
	run := 0.0
	for _, h := range cut.Hung {
		run += 2 * float64(h.Area.W+h.Area.H)
	}
	assert.InDelta(t, run, by["sealant/95"].Args["edges"], 1e-9)
	assert.InDelta(t, 3*float64(2*(36+82)+2*(48+40)+8*16)*0.0254, by["sealant/95"].Args["holes"], 1e-9)
	// Damping on the net area of the layer below.
	assert.InDelta(t, float64(cut.Totals[1].Boarded), by["damping"].Args["area"], 1e-9)
	// Tape per area near the books': 1.25 m/m² with large sheets to 2.5 (24 ft a sheet).
	rate := by["tape"].Amount / by["compound"].Args["area"]
	assert.Greater(t, rate, 0.8)
	assert.Less(t, rate, 2.5)
	assert.NotContains(t, by, "backing", "channel runs into the corner")

	// Studs and three layers need backing in the corners: 3 · 15.9 + 20 = 68 mm.
	for i := range job.Faces {
		job.Faces[i].Framing = Framing{Upright: true, Spacing: 16 * unit.Inch}
	}
	items = Items(job, cut, g)
	at := slices.IndexFunc(items, func(i Item) bool { return i.Code == ItemBacking })
	require.GreaterOrEqual(t, at, 0)
	assert.InDelta(t, 4, items[at].Amount, 0)
	assert.InDelta(t, (0.5+0.625+0.5)*0.0254+0.020, items[at].Args["needs"], 1e-9)
}

func TestLawBill(t *testing.T) {
	job := room()
	job.Boards[0].Owned = 10
	cut := Prepare(job).Cut(0, 1)
	g := goods()
	g.Prices = map[string]Price{"sheets/gyp": {Each: 14.98, Has: true}, "clips": {Each: 6.75, Has: true}, "batts": {Each: 47.7, Pack: 8.2, Has: true}}
	items := Items(job, cut, g)
	want := unit.Money(float64(cut.Totals[0].Buy)*14.98 + 94*6.75 + math.Ceil(44*1.05/8.2)*47.7)
	b := BillOf(items, 0.10, 0.07, map[string]bool{"clips": true})
	assert.InDelta(t, float64(want), float64(b.Goods), 1e-9)
	assert.InDelta(t, float64(want-94*6.75), float64(b.StillToGet), 1e-9)
	assert.InDelta(t, float64(want)*1.1*1.07, float64(b.Total), 1e-9)
	assert.Positive(t, b.Unpriced)
	assert.InDelta(t, float64(b.BeforeTax+b.Tax), float64(b.Total), 1e-9)
}

func TestForgotten(t *testing.T) {
	job := room()
	cut := Prepare(job).Cut(0, 1)
	codes := func(job Job, g Goods) (out []Code) {
		for _, n := range Forgotten(job, cut, g) {
			out = append(out, n.Code)
		}
		return
	}
	all := codes(job, goods())
	for _, c := range []Code{ForgotBackerRod, ForgotPads, ForgotPilot, ForgotJamb, ForgotPanelLift, ForgotReveal} {
		assert.Contains(t, all, c)
	}
	plain := codes(Job{Faces: Box(1, 1, 1), Layers: job.Layers[:3], Boards: job.Boards}, Goods{})
	assert.NotContains(t, plain, ForgotPads)
	assert.NotContains(t, plain, ForgotPilot)
	assert.NotContains(t, plain, ForgotPanelLift, "only wall A")
	assert.Empty(t, Forgotten(job, Cut{}, Goods{}))
}

func TestLawOrder(t *testing.T) {
	job := room()
	cut := Prepare(job).Cut(0, 1)
	steps := Order(job, cut, goods())
	at := func(c Code, layer int) int {
		return slices.IndexFunc(steps, func(s Step) bool { return s.Code == c && s.Layer == layer })
	}
	hang, next := 0, 0
	for i, s := range steps {
		if s.Code != StepHang {
			continue
		}
		assert.Equal(t, cut.Hung[next].Face, s.Face, "in the order of the cut")
		next++
		hang++
		for _, c := range []Code{StepServices, StepPhotograph, StepFramingSeen, StepClipsSeen} {
			assert.Less(t, at(c, -1), i, "nothing is closed before %s", c)
			assert.True(t, steps[at(c, -1)].Hold)
		}
		if s.Layer > 0 {
			assert.Less(t, at(StepSealCheck, s.Layer-1), i, "the layer before is sealed and checked")
		}
	}
	assert.Equal(t, 18, hang)
	assert.Equal(t, StepFinalSeen, steps[len(steps)-1].Code)
	first := steps[at(StepHang, 0)]
	assert.Equal(t, "E", first.Face, "the ceiling first")
	assert.InDelta(t, 1, first.Args["left"], 0)
	assert.GreaterOrEqual(t, at(StepFilm, 2), 0, "compound goes on with the layer over it")
	assert.Equal(t, -1, at(StepFilm, 1))
	assert.NotEmpty(t, Order(Job{}, Cut{}, Goods{}), "holds stand even for nothing")
}
