package plan

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

var regions = []Region{US, CA, UK, EU, AU}

func clean(t *testing.T, faults []*Fault) {
	t.Helper()
	for _, f := range faults {
		t.Error(f.Words)
	}
	if len(faults) > 0 {
		t.FailNow()
	}
}

// The wall of the first minute: two layers of type X on clips, 5 1/8 in of gap, 1/2 in there already.
func ExampleFirst() {
	p := First(US)
	r, _ := Resolve(p, "")
	a := r.Assembly
	in := func(l unit.Length) float64 { return float64(l / unit.Inch) }
	cost, _ := a.Leaves[0].Cost()
	fmt.Printf("%s, %.2f psf, $%.2f per ft²\n", r.Surface.Name, float64(a.Leaves[0].Mass()/unit.PoundPerSquareFoot), float64(cost)*float64(unit.SquareFoot))
	fmt.Printf("%.2f + %.3f + %.1f in, wool %.1f in, studs %.0f in\n", in(a.Leaves[0].Thickness()), in(a.Gaps[0].Depth), in(a.Leaves[1].Thickness()), in(a.Gaps[0].FillDepth), in(a.Gaps[0].Spacing))
	fmt.Printf("clips %.0f × %.0f in rated %.0f lb, %s\n", in(a.Gaps[0].Near.Grid.Rows), in(a.Gaps[0].Near.Grid.Along), float64(a.Gaps[0].Near.Rating/unit.Pound), r.Gaps[0].Near.Rating.Origin)
	fmt.Printf("%.1f ft², beyond: %s\n", float64(r.Face/unit.SquareFoot), r.Surface.Beyond)
	// Output:
	// wall, 4.38 psf, $1.12 per ft²
	// 1.25 + 5.125 + 0.5 in, wool 3.5 in, studs 16 in
	// clips 24 × 48 in rated 42 lb, demo
	// 106.7 ft², beyond: bedroom
}

func TestExamplesCanBeBuilt(t *testing.T) {
	for _, region := range regions {
		for name, p := range map[string]Plan{"first": First(region), "demo": Demo(region), "room": Roomed(First(region))} {
			clean(t, Check(p))
			assert.Equal(t, p, Renumbered(p), "%s %s: the ids are those that a link gives", region, name)
			assert.Empty(t, Changed(p))
			for _, s := range p.Surfaces {
				r, faults := Resolve(p, s.ID)
				clean(t, faults)
				assert.Positive(t, float64(r.Face), s.Name)
				for _, l := range r.Assembly.Leaves {
					_, ok := l.Cost()
					assert.True(t, ok, "%s %s: every new board has an invented price, missing %v", region, s.Name, l.Unpriced())
				}
				for _, row := range append(r.Rows(), Candidate{Layers: r.Reference()}) {
					_, faults := r.WithLeaf(row.Layers)
					clean(t, faults)
				}
			}
		}
		rows := StartingRows(region)
		require.Len(t, rows, 8)
		for _, y := range ReferenceLayers(region) {
			b, _ := material.ByID(y.Board)
			assert.True(t, b.Usual && b.FireRated, "the reference is the region's usual heavy gypsum board")
		}
		for _, c := range rows {
			for _, y := range c.Layers {
				b, ok := material.ByID(y.Board)
				require.True(t, ok, y.Board)
				assert.Contains(t, []string{material.Everywhere, material.TableRegion(string(region))}, b.Region, "%s is sold in %s", y.Board, region)
			}
		}
	}
	assert.True(t, Demo(US).Surfaces[1].Garage, "a garage room calls for fire words")
	assert.Contains(t, Demo(EU).Notes, "invented")
}

// A wall that is made a room keeps its build-up, who is beyond it, its sizes as the room's.
func TestRoomed(t *testing.T) {
	p := tagged()
	r := Roomed(p)
	clean(t, Check(r))
	require.Len(t, r.Surfaces, 6)
	assert.Equal(t, p.BuildUps[0].Leaves, r.BuildUps[0].Leaves)
	assert.Equal(t, "bedroom", r.Surfaces[0].Beyond)
	assert.Equal(t, p.Surfaces[0].Width, r.Surfaces[4].Width, "the ceiling is as long")
	assert.Equal(t, p.Shelf, r.Shelf)
	assert.Equal(t, "A wall", p.Name, "the plan that was given stays as it is")
	assert.Equal(t, r, Roomed(r), "a room stays as it is")
	p.Room = &Room{Width: "11 ft"}
	assert.EqualValues(t, "11 ft", Roomed(p).Surfaces[2].Width, "a size of the room that was typed holds")
}

// tagged is the yard case: common-practice tags typed for 4x8 ft sheets.
func tagged() Plan {
	p := First(US)
	p.Shelf = []Shelf{
		{Board: "na_gyp_typeX_16", Weight: "72 lb", Sheet: "4x8 ft"},
		{Board: "na_gyp_light_16", Weight: "56 lb", Sheet: "4x8 ft"},
		{Board: "na_gyp_light_13", Weight: "39 lb", Sheet: "4x8 ft"},
		{Board: "na_ply_soft_18", Weight: "66 lb", Sheet: "4x8 ft", Thickness: "19 mm"},
	}
	return p
}

// Two sheets of 72 lb are as heavy as 39 + 66 + 39 lb: 4.50 psf, equal and so
// not over, whatever the order and the units of typing (common practice). With
// the typical masses the same sandwich is over.
func TestPrintedYardCase(t *testing.T) {
	sandwich := layersOf("na_gyp_light_13", "na_ply_soft_18", "na_gyp_light_13")
	for _, metric := range []bool{false, true} {
		p := tagged()
		if metric {
			// The same tags as somebody with a metric scale would read them, to 10 g.
			for i, kg := range []unit.Quantity{"32.66 kg", "25.4 kg", "17.69 kg", "29.94 kg"} {
				p.Shelf[i].Weight, p.Shelf[i].Sheet = kg, "1219.2x2438.4 mm"
			}
		}
		ref, faults := ResolveLeaf(p, "s1", ReferenceLayers(US))
		clean(t, faults)
		yours, faults := ResolveLeaf(p, "s1", sandwich)
		clean(t, faults)
		a, b := ref.Assembly.Leaves[0].Mass(), yours.Assembly.Leaves[0].Mass()
		assert.InDelta(t, 4.50, float64(a/unit.PoundPerSquareFoot), 0.001)
		assert.False(t, unit.Over(b, a))
		assert.True(t, unit.Same(a, b))
		stack, ok := yours.Assembly.Leaves[0].Stack()
		require.True(t, ok)
		assert.InDelta(t, 144, float64(stack/unit.Pound), 0.02)
	}
	p := First(US)
	ref, _ := ResolveLeaf(p, "s1", ReferenceLayers(US))
	yours, _ := ResolveLeaf(p, "s1", sandwich)
	assert.True(t, unit.Over(yours.Assembly.Leaves[0].Mass(), ref.Assembly.Leaves[0].Mass()))
}

// critical is proportional to the critical frequency, √(m/B) with B ∝ E·t³.
func critical(b material.Board) float64 {
	return math.Sqrt(float64(b.Mass) / (float64(b.Sound.Young) * math.Pow(float64(b.Thickness), 3)))
}

// A typed weight keeps thickness × critical frequency; a typed thickness
// changes both mass and critical frequency and keeps that product too. Gypsum
// board between paper faces does not: see material.TestLawPaperFaces.
func TestLawTypedMass(t *testing.T) {
	for _, b := range material.All() {
		if len(b.Sheets) == 0 || b.Sheets[0].Area() == 0 {
			continue
		}
		table := critical(b) * float64(b.Thickness)
		for _, k := range []float64{0.8, 1, 1.3} {
			w := unit.Of(math.Round(k*float64(b.Mass)*float64(b.Area())*1000)/1000, unit.KG)
			h, faults := BoardHere(Plan{Region: US, Shelf: []Shelf{{Board: b.ID, Weight: w}}}, b.ID)
			if len(faults) > 0 {
				continue // a lath or a steel plate may leave the range of weights
			}
			assert.InEpsilon(t, k*float64(b.Mass), float64(h.Board.Mass), 1e-3)
			assert.Equal(t, b.Thickness, h.Board.Thickness)
			if b.Sound.Faces == 0 { // paper faces stay what they are, whatever the core weighs
				assert.InEpsilon(t, table, critical(h.Board)*float64(h.Board.Thickness), 1e-12, b.ID)
			}
			assert.Equal(t, Typed, h.Mass.Origin)
			assert.Equal(t, w, h.Mass.As)
		}
		thick := unit.Of(math.Round(1.1*float64(b.Thickness)*1e5)/100, unit.MM)
		h, faults := BoardHere(Plan{Region: US, Shelf: []Shelf{{Board: b.ID, Thickness: thick}}}, b.ID)
		clean(t, faults)
		grown := float64(h.Board.Thickness / b.Thickness)
		assert.InEpsilon(t, grown*float64(b.Mass), float64(h.Board.Mass), 1e-12)
		if b.Sound.Faces == 0 {
			assert.InEpsilon(t, critical(b)/grown, critical(h.Board), 1e-12)
		}
		assert.Equal(t, Computed, h.Mass.Origin)
	}
}

// The four ways of telling a weight give one mass.
func TestLawWeights(t *testing.T) {
	const board = "na_gyp_typeX_16"
	var want unit.SurfaceMass
	for i, s := range []Shelf{
		{Weight: "70 lb"},
		{Weight: "2.1875 psf", Per: PerArea},
		{Weight: "2380 lb", Per: PerPallet, Of: "34"},
		{Weight: "245.5 lb", Less: "175.5 lb", Per: OnScale},
		{Weight: "70 lb", Per: OnScale}, // nothing else on the scale
		{Weight: "1120 oz"},
		{Weight: "87.5 lb", Sheet: "4x10 ft"},
	} {
		s.Board = board
		h, faults := BoardHere(Plan{Region: US, Units: Customary, Shelf: []Shelf{s}}, board)
		clean(t, faults)
		if i == 0 {
			want = h.Board.Mass
		}
		assert.InEpsilon(t, float64(want), float64(h.Board.Mass), 1e-12, "%+v", s)
	}
}

func TestPrices(t *testing.T) {
	const board = "na_gyp_typeX_16"
	rate := func(p Plan) (float64, Here) {
		h, faults := BoardHere(p, board)
		clean(t, faults)
		return float64(h.Rate), h
	}
	area := 32 * float64(unit.SquareFoot)
	p := Plan{Region: US, Units: Customary}
	_, h := rate(p)
	assert.False(t, h.Priced, "nothing typed, nothing known")
	assert.Equal(t, Unknown, h.Price.Origin)

	p.Shelf = []Shelf{{Board: board, Price: "16 $"}}
	r, h := rate(p)
	assert.InEpsilon(t, 16/area, r, 1e-12)
	assert.Equal(t, From{Typed, "16 $"}, h.Price)
	money, ok := h.SheetPrice()
	assert.True(t, ok)
	assert.InEpsilon(t, 16, float64(money), 1e-12)

	p.Shelf[0] = Shelf{Board: board, Price: "0.5 $", PriceArea: true}
	r, _ = rate(p)
	assert.InEpsilon(t, 16/area, r, 1e-12, "50 cents per ft²")
	p.Units = Metric
	r, _ = rate(p)
	assert.InEpsilon(t, 0.5, r, 1e-12, "and per m² where the plan is metric")

	p.Shelf[0] = Shelf{Board: board, Price: "0 $"}
	_, h = rate(p)
	assert.True(t, h.Priced, "what is given away has a price")

	p.Shelf, p.Prices = []Shelf{{Board: board, Sheet: "4x12 ft"}}, DemoPrices
	r, h = rate(p)
	demo, _ := material.Demo(board, "US")
	assert.InEpsilon(t, float64(demo.Amount)/area, r, 1e-12, "the invented price is of the table's sheet")
	assert.Equal(t, Invented, h.Price.Origin)

	p.Shelf = []Shelf{{Board: board, Price: "16 €"}}
	_, faults := BoardHere(p, board)
	require.Len(t, faults, 1)
	assert.Equal(t, "unit", faults[0].Code)
	assert.Equal(t, []string{"16 $"}, faults[0].Mend)
}

func TestFilm(t *testing.T) {
	p := First(US)
	p.BuildUps[0].Leaves[0].Layers[0].Join = "film"
	cost := func() (float64, bool) {
		r, faults := Resolve(p, "")
		clean(t, faults)
		c, ok := r.Assembly.Leaves[0].Cost()
		return float64(c), ok
	}
	with, ok := cost()
	assert.True(t, ok)
	p.BuildUps[0].Leaves[0].Layers[0].Join = ""
	without, _ := cost()
	demo, _ := material.Demo(material.DampingFilm, "US")
	assert.InDelta(t, float64(demo.Amount), with-without, 1e-9)

	p.BuildUps[0].Leaves[0].Layers[0].Join = "film"
	p.Prices = NoPrices
	p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Price: "18 $"}}
	_, ok = cost()
	assert.False(t, ok, "no price of the film")
	p.Shelf = append(p.Shelf, Shelf{Board: material.DampingFilm, Price: "1 $"})
	c, ok := cost()
	assert.True(t, ok)
	assert.InDelta(t, 2*18/(32*float64(unit.SquareFoot))+1/float64(unit.SquareFoot), c, 1e-9)
	clean(t, Check(p))
}

func TestShelfOfSheets(t *testing.T) {
	p := First(US)
	p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Sheet: "4x10 ft", Stock: "0", Owned: "3"}}
	r, faults := Resolve(p, "")
	clean(t, faults)
	h := r.Boards["na_gyp_typeX_16"]
	assert.InDelta(t, 40, float64(h.Area()/unit.SquareFoot), 1e-9)
	assert.Equal(t, unit.Quantity("4x10 ft"), h.Board.Sizes[0])
	assert.Len(t, h.Board.Sizes, 3, "the sizes as sold stay, none twice")
	assert.True(t, h.StockSaid)
	assert.Zero(t, h.Stock)
	assert.Equal(t, 3, h.Owned)
	table, _ := material.ByID("na_gyp_typeX_16")
	assert.Equal(t, unit.Quantity("4x8 ft"), table.Sizes[0], "the table is not touched")
	assert.Equal(t, table.Mass, h.Board.Mass, "another sheet of the same board is as heavy per area")
}

func TestMetricDefaults(t *testing.T) {
	r, faults := Resolve(First(EU), "")
	clean(t, faults)
	g := r.Assembly.Gaps[0]
	assert.InDelta(t, 0.6, float64(g.Near.Grid.Rows), 1e-9)
	assert.InDelta(t, 1.2, float64(g.Near.Grid.Along), 1e-9)
	assert.InDelta(t, 0.095, float64(g.FillDepth), 1e-9)
	p := First(EU)
	p.BuildUps[0].Gaps[0].Frame = "steel_92_05"
	r, faults = Resolve(p, "")
	clean(t, faults)
	assert.InDelta(t, 0.6, float64(r.Assembly.Gaps[0].Spacing), 1e-9, "24 in of a common row are 600 mm here")
	assert.InDelta(t, 0.075, float64(r.Assembly.Gaps[0].FillDepth), 1e-9, "the deepest slab that goes between 92 mm studs")
	p.BuildUps[0].Gaps[0].Fill = "xx_cellulose"
	r, faults = Resolve(p, "")
	clean(t, faults)
	assert.InDelta(t, 0.092, float64(r.Assembly.Gaps[0].FillDepth), 1e-9, "what is blown in takes all of it")
}

func TestHeldAndCeiling(t *testing.T) {
	p := First(US)
	p.Surfaces[0].Kind = Ceiling
	h := &p.BuildUps[0].Gaps[0].Near
	h.Rows, h.Along, h.Extra, h.Shorts = "16 in", "32 in", "0.5 psf", true
	r, faults := Resolve(p, "")
	clean(t, faults)
	g := r.Assembly.Gaps[0]
	assert.True(t, g.FillLies && r.Assembly.Horizontal)
	assert.Equal(t, From{Typed, "16 in"}, r.Gaps[0].Near.Rows)
	assert.InDelta(t, 32, float64(g.Near.Grid.Along/unit.Inch), 1e-9)
	assert.InDelta(t, 0.5, float64(g.Near.Extra/unit.PoundPerSquareFoot), 1e-9)
	// One crossing in ten of channels at 16 in and studs at 16 in.
	assert.InDelta(t, 0.1/(0.4064*0.4064), g.Near.Shorts, 1e-9)
	h.Rating, h.Screws = "36 lb", "150 mm"
	r, _ = Resolve(p, "")
	assert.InDelta(t, 0.15, float64(r.Assembly.Gaps[0].Near.Screws), 1e-12)
	assert.Equal(t, From{Typed, "150 mm"}, r.Gaps[0].Near.Screws)
	assert.Zero(t, r.Assembly.Gaps[0].Far.Screws, "as usual")
	assert.Equal(t, Typed, r.Gaps[0].Near.Rating.Origin, "another rating is no longer the example's")
}

// spoilt is a plan with one thing wrong and what must be said of it.
func TestFaults(t *testing.T) {
	for _, c := range []struct {
		name              string
		spoil             func(*Plan)
		code, field, word string
	}{
		{"a sheet of 580 lb", func(p *Plan) { p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Weight: "580 lb"}} }, "large", "weight", "wall, leaf 1, layer 1, Gypsum board type X 5/8 in: weight is 580 lb; 5 to 250 lb is allowed"},
		{"no thickness", func(p *Plan) { p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Thickness: "0 in"}} }, "zero", "thickness", "wall, leaf 1, layer 1, Gypsum board type X 5/8 in: thickness is 0"},
		{"of the far leaf", func(p *Plan) { p.Shelf = []Shelf{{Board: "na_gyp_reg_13", Thickness: "0 mm"}} }, "zero", "thickness", "wall, leaf 2, layer 1"},
		{"five metres", func(p *Plan) { p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Thickness: "5 m"}} }, "large", "thickness", "3.2 to 101 mm"},
		{"five inches", func(p *Plan) { p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Thickness: "5 in"}} }, "large", "thickness", "1/8 to 4 in"},
		{"below nothing", func(p *Plan) { p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Weight: "-70 lb"}} }, "negative", "weight", "less than nothing"},
		{"words", func(p *Plan) { p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Weight: "heavy"}} }, "notNumber", "weight", "“heavy”"},
		{"not a number", func(p *Plan) { p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Weight: "NaN lb"}} }, "notNumber", "weight", "not a number"},
		{"inches of weight", func(p *Plan) { p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Weight: "70 in"}} }, "unit", "weight", "no mass"},
		{"a pallet of nothing", func(p *Plan) {
			p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Per: PerPallet, Weight: "2400 lb", Of: "0"}}
		}, "zero", "of", "sheets in the pallet is 0"},
		{"a pallet not counted", func(p *Plan) { p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Per: PerPallet, Weight: "2400 lb"}} }, "missing", "of", "needs the number"},
		{"half a sheet", func(p *Plan) { p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Owned: "2.5"}} }, "notNumber", "owned", "whole number"},
		{"a scale backwards", func(p *Plan) {
			p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Per: OnScale, Weight: "170 lb", Less: "240 lb"}}
		}, "small", "weight", "not more than 240 lb"},
		{"too heavy for so thin", func(p *Plan) { p.Shelf = []Shelf{{Board: "na_hardboard_3", Weight: "200 lb"}} }, "large", "weight", "at this thickness"},
		{"weight of a sheet of block", func(p *Plan) {
			p.BuildUps[0].Leaves[1].Layers[0].Board = "na_brick_4"
			p.Shelf = []Shelf{{Board: "na_brick_4", Weight: "70 lb"}}
		}, "missing", "sheet", "size of the sheet"},
		{"unknown board", func(p *Plan) { p.BuildUps[0].Leaves[0].Layers[1].Board = "cheese" }, "unknown", "board", "wall, leaf 1, layer 2: board “cheese” is not known"},
		{"unknown board on the shelf", func(p *Plan) { p.Shelf = []Shelf{{Board: "cheese"}} }, "unknown", "board", "shelf: board “cheese”"},
		{"unknown frame", func(p *Plan) { p.BuildUps[0].Gaps[0].Frame = "bamboo" }, "unknown", "frame", "wall, gap: frame “bamboo”"},
		{"unknown fixing", func(p *Plan) { p.BuildUps[0].Gaps[0].Near.Fixing = "tape" }, "unknown", "fixing", "“tape”"},
		{"unknown fill", func(p *Plan) { p.BuildUps[0].Gaps[0].Fill = "egg boxes" }, "unknown", "fill", "egg boxes"},
		{"unknown joint", func(p *Plan) { p.BuildUps[0].Leaves[0].Layers[0].Join = "string" }, "unknown", "join", "joint “string”"},
		{"no layers", func(p *Plan) { p.BuildUps[0].Leaves[1].Layers = nil }, "missing", "layers", "wall, leaf 2: the leaf has no board"},
		{"thousands of layers", func(p *Plan) { p.BuildUps[0].Leaves[0].Layers = make([]Layer, 5000) }, "tooMany", "layers", "wall, leaf 1: 5000 layers are too many; at most 12"},
		{"thousands of surfaces", func(p *Plan) { p.Surfaces = make([]Surface, 5000) }, "tooMany", "surfaces", "5000 surfaces are too many; at most 24"},
		{"five leaves", func(p *Plan) { p.BuildUps[0].Leaves = make([]Leaf, 5) }, "tooMany", "leaves", "at most 4"},
		{"no surface", func(p *Plan) { p.Surfaces = nil }, "missing", "surfaces", "at least one"},
		{"gaps missing", func(p *Plan) { p.BuildUps[0].Gaps = nil }, "uneven", "gaps", "2 leaves need 1 gaps"},
		{"a build-up missing", func(p *Plan) { p.Surfaces[0].BuildUp = "b9" }, "unknown", "buildUp", "wall: build-up “b9”"},
		{"ids twice", func(p *Plan) { p.BuildUps[0].Leaves[0].Layers[1].ID = "l1" }, "twice", "id", "“l1” is there twice"},
		{"no id", func(p *Plan) { p.BuildUps[0].Gaps[0].ID = "" }, "missing", "id", "an id is missing"},
		{"gap not deep enough", func(p *Plan) { p.BuildUps[0].Gaps[0].Depth = "4 in" }, "small", "depth", "wall, gap: depth is 4 in, but frame and fixings take 5 1/8 in"},
		{"gap without depth", func(p *Plan) { p.BuildUps[0].Gaps[0].Frame, p.BuildUps[0].Gaps[0].Near = "none", screwed() }, "missing", "depth", "needs its depth"},
		{"more fill than gap", func(p *Plan) { p.BuildUps[0].Gaps[0].FillDepth = "6 in" }, "large", "fillDepth", "the fill is 6 in deep in a gap of 5 1/8 in"},
		{"a rating of tons", func(p *Plan) { p.BuildUps[0].Gaps[0].Near.Rating = "42000 lb" }, "large", "rating", "1 to 1000 lb"},
		{"screws twelve feet apart", func(p *Plan) { p.BuildUps[0].Gaps[0].Near.Screws = "12 ft" }, "large", "screws", "distance between screws is 12 ft; "},
		{"screws on top of each other", func(p *Plan) { p.BuildUps[0].Gaps[0].Far.Screws = "1 in" }, "small", "screws", "wall, gap: distance between screws is 1 in; 2 to 39 in is allowed"},
		{"screws apart by nothing", func(p *Plan) { p.BuildUps[0].Gaps[0].Far.Screws = "0 mm" }, "zero", "screws", "distance between screws is 0"},
		{"screws in pounds", func(p *Plan) { p.BuildUps[0].Gaps[0].Far.Screws = "6 lb" }, "unit", "screws", "no length"},
		{"a wall of a mile", func(p *Plan) { p.Surfaces[0].Width = "5280 ft" }, "large", "width", "1 to 100 ft"},
		{"waste of all", func(p *Plan) { p.Waste = "150 %" }, "large", "waste", "0 to 100 %"},
		{"a leaf that is not there", func(p *Plan) { p.BuildUps[0].Compare.Leaf = 7 }, "unknown", "leaf", "no leaf 8"},
		{"unknown region", func(p *Plan) { p.Region = "MOON" }, "unknown", "region", "region “MOON”"},
		{"a name without end", func(p *Plan) { p.Name = strings.Repeat("x", 500) }, "large", "name", "at most 120"},
		{"unknown board side by side", func(p *Plan) {
			p.BuildUps[0].Compare.Rows = []Candidate{{ID: "c1", Layers: layersOf("cheese")}}
		}, "unknown", "board", "wall, row 1 side by side"},
		{"a price of a house", func(p *Plan) { p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Price: "500000 $"}} }, "large", "price", "0 to 5000 $"},
	} {
		p := First(US)
		c.spoil(&p)
		faults := Check(p)
		if assert.Len(t, faults, 1, "%s: %v", c.name, faults) {
			f := faults[0]
			assert.Equal(t, c.code, f.Code, c.name)
			assert.Equal(t, c.field, f.Field, c.name)
			assert.Contains(t, f.Words, c.word, c.name)
			assert.Equal(t, f.Words, f.Error())
		}
	}
}

func TestMends(t *testing.T) {
	p := First(US)
	p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Weight: "580 lb"}}
	f := Check(p)[0]
	assert.Equal(t, []string{"58 lb"}, f.Mend)
	assert.Equal(t, "5 lb", f.Low)
	assert.Equal(t, "250 lb", f.High)
	assert.Equal(t, "na_gyp_typeX_16", f.Board)
	assert.Equal(t, "l1", f.Layer)
	p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Thickness: "5 m"}}
	assert.Contains(t, Check(p)[0].Mend, "5 mm")
}

// Faults in one surface do not hinder another.
func TestFaultStaysInItsSurface(t *testing.T) {
	p := Demo(US)
	p.BuildUps[3].Gaps[0].Depth = "1 in"
	_, faults := Resolve(p, "s1")
	assert.Empty(t, faults)
	_, faults = Resolve(p, "s5")
	assert.Len(t, faults, 1)
	assert.Equal(t, "ceiling E, gap: depth is 1 in, but frame and fixings take 10 7/8 in", faults[0].Words)
}

func TestRead(t *testing.T) {
	for _, c := range []struct{ what, text, in, want string }{
		{"mass", "72", "lb", "72 lb"}, {"mass", "32.5kg", "lb", "32.5 kg"}, {"length", `5/8"`, "in", "0.625 in"},
		{"length", "1 1/4", "in", "1.25 in"}, {"sheet", "4' x 8'", "ft", "4x8 ft"}, {"sheet", "1200x2400", "mm", "1200x2400 mm"},
		{"money", "$14.98", "$", "14.98 $"}, {"count", "36", "", "36"}, {"percent", "10", "%", "10 %"}, {"surfaceMass", "2.2", "psf", "2.2 psf"},
		{"area", "106.7", "ft2", "106.7 ft2"}, {"mass", "12,5", "kg", "12.5 kg"},
	} {
		q, f := Read(c.what, c.text, c.in)
		require.Nil(t, f, "%+v", c)
		assert.Equal(t, c.want, string(q))
	}
	_, f := Read("mass", "1,200", "lb")
	require.NotNil(t, f)
	assert.Equal(t, "ambiguous", f.Code)
	assert.Equal(t, []string{"1200 lb", "1.2 lb"}, f.Mend)
	assert.Equal(t, -1, f.Leaf)
	_, f = Read("temper", "hot", "")
	assert.Equal(t, "unknown", f.Code)
	_, f = Read("mass", "", "lb")
	assert.Equal(t, "empty", f.Code)
}

func TestParse(t *testing.T) {
	for _, region := range regions {
		for _, p := range []Plan{First(region), Demo(region)} {
			text, err := json.Marshal(p)
			require.NoError(t, err)
			back, f := Parse(text)
			require.Nil(t, f)
			assert.Equal(t, p, back)
		}
	}
	for _, c := range []struct{ text, code, word string }{
		{"", "unreadable", "breaks off"},
		{"{", "unreadable", "breaks off"},
		{`[1]`, "unreadable", "does not belong"},
		{`{"name":"x"}`, "unreadable", "names no format"},
		{`{"format":0}`, "unreadable", "names no format"},
		{`{"format":1.5}`, "unreadable", "names no format"},
		{`{"format":2}`, "newer", "newer version (format 2"},
		{`{"format":1,"surfaces":"x"}`, "unreadable", "surfaces is a string"},
		{`{"format":1}{"format":1}`, "unreadable", "follows"},
		{strings.Repeat(" ", MaxText+1), "tooLong", "at most 1024 kB"},
	} {
		_, f := Parse([]byte(c.text))
		if assert.NotNil(t, f, c.text) {
			assert.Equal(t, c.code, f.Code, c.text)
			assert.Contains(t, f.Words, c.word)
		}
	}
}

// What is not known is not read, and said.
func TestParseUnread(t *testing.T) {
	text, _ := json.Marshal(First(US))
	var doc map[string]any
	require.NoError(t, json.Unmarshal(text, &doc))
	doc["wallpaper"] = "roses"
	doc["surfaces"].([]any)[0].(map[string]any)["smell"] = 3
	text, _ = json.Marshal(doc)
	p, f := Parse(text)
	require.Nil(t, f)
	assert.Equal(t, []string{"surfaces.smell", "wallpaper"}, p.Unread)
	changes := Changed(p)
	require.Len(t, changes, 1)
	assert.Equal(t, UnreadFields, changes[0].Code)
	clean(t, Check(p))
	out, _ := json.Marshal(p)
	assert.NotContains(t, string(out), "roses")
}

func TestMarkupInNamesIsText(t *testing.T) {
	p := First(US)
	p.Name = `<img src=x onerror=alert(1)>`
	p.Surfaces[0].Name = "</script><b>"
	p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Weight: "<b>"}}
	text, err := json.Marshal(p)
	require.NoError(t, err)
	assert.NotContains(t, string(text), "<")
	back, f := Parse(text)
	require.Nil(t, f)
	assert.Equal(t, p.Name, back.Name)
	faults := Check(p)
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Words, "</script><b>, leaf 1", "as typed; the page writes it as text")
}

func TestMigrate(t *testing.T) {
	list := []migration{
		{1, "name to title", "", func(d map[string]any) map[string]any { d["title"] = d["name"]; delete(d, "name"); return d }},
		{2, "title in capitals", "", func(d map[string]any) map[string]any {
			d["title"] = strings.ToUpper(d["title"].(string))
			return d
		}},
	}
	doc := migrate(map[string]any{"format": 1, "name": "a"}, 1, list)
	assert.Equal(t, map[string]any{"format": 3, "title": "A"}, doc)
	doc = migrate(map[string]any{"format": 2, "title": "b"}, 2, list)
	assert.Equal(t, map[string]any{"format": 3, "title": "B"}, doc)
	// The list that ships leads without gaps from the first format to this one.
	require.Len(t, migrations, Format-1)
	for i, m := range migrations {
		assert.Equal(t, i+1, m.from)
		assert.NotEmpty(t, m.title)
		assert.NotEmpty(t, m.says)
	}
}

func TestChanged(t *testing.T) {
	now, _ := material.ByID("na_gyp_typeX_16")
	list := []moved{
		{2, "na_gyp_typeX_16", "mass", 10.1},
		{3, "na_gyp_typeX_16", "mass", 10.4},
		{2, "na_mdf_19", "mass", 1},
	}
	p := First(US)
	p.Table = 1
	got := changed(p, list, 3)
	require.Len(t, got, 1, "only what the plan uses, once")
	assert.Equal(t, 10.1, got[0].Args["was"])
	assert.Equal(t, float64(now.Mass), got[0].Args["now"])
	p.Table = 2
	assert.Equal(t, 10.4, changed(p, list, 3)[0].Args["was"])
	p.Table = 3
	assert.Empty(t, changed(p, list, 3))
	p.Table = 4
	assert.Equal(t, TableNewer, changed(p, list, 3)[0].Code)
	p.Table = 1
	p.Shelf = []Shelf{{Board: "na_gyp_typeX_16", Weight: "70 lb"}}
	assert.Empty(t, changed(p, list, 3), "a typed weight does not move")
	for _, m := range history {
		assert.LessOrEqual(t, m.version, material.TableVersion)
	}
}

func TestResolveDoesNotTouchThePlan(t *testing.T) {
	p := Demo(US)
	before, _ := json.Marshal(p)
	r, _ := Resolve(p, "s2")
	r2, faults := r.WithLeaf(layersOf("na_mdf_19"))
	clean(t, faults)
	assert.Len(t, r.Assembly.Leaves[0].Layers, 3, "the first is as it was")
	assert.Len(t, r2.Assembly.Leaves[0].Layers, 1)
	assert.NotContains(t, r.Boards, "na_mdf_19")
	after, _ := json.Marshal(p)
	assert.Equal(t, string(before), string(after))
}

func TestSay(t *testing.T) {
	for q, want := range map[unit.Quantity]string{
		"0.125 in": "1/8 in", "4 in": "4 in", "1.25 in": "1 1/4 in", "5.015625 in": "5 1/64 in", "0.1 in": "0.1 in",
		"58 lb": "58 lb", "2 kg/m2": "2 kg/m²", "10 ft2": "10 ft²", "": "", "nonsense": "nonsense",
	} {
		assert.Equal(t, want, say(q))
	}
}

// Every kind has limits in both systems that are round, in order and no wider than the assembly's.
func TestLimits(t *testing.T) {
	for _, k := range []material.Kind{material.Gypsum, material.Block, material.Lead, material.Steel, material.Glass, material.Topping, material.Limp} {
		l := thicknessLimits(k)
		r := assembly.ThicknessRange(k)
		for i := range 2 {
			low, ok1 := l.low[i].Length()
			high, ok2 := l.high[i].Length()
			require.True(t, ok1 && ok2, "%s %v", k, l)
			assert.Less(t, low, high)
			assert.False(t, unit.Over(r.Low, float64(low)), "%s %v", k, l)
			assert.False(t, unit.Over(float64(high), r.High), "%s %v", k, l)
		}
		m := areaLimits(k, unit.Length(r.Low*3))
		for i := range 2 {
			low, ok1 := m.low[i].SurfaceMass()
			high, ok2 := m.high[i].SurfaceMass()
			require.True(t, ok1 && ok2, "%s %v", k, m)
			assert.Less(t, low, high)
		}
	}
}

func FuzzParse(f *testing.F) {
	text, _ := json.Marshal(Demo(UK))
	f.Add(text)
	f.Add([]byte(`{"format":1,"surfaces":[{"id":"a","width":"1e9 m"}],"buildUps":[{"id":"a","gaps":[{}]}]}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		p, fault := Parse(text)
		if fault != nil {
			return
		}
		for _, f := range Check(p) {
			if f.Words == "" || f.Code == "" || f.Field == "" {
				t.Fatalf("a fault without words: %+v", f)
			}
		}
		if len(Check(p)) == 0 {
			for _, s := range p.Surfaces {
				if _, faults := Resolve(p, s.ID); len(faults) > 0 {
					t.Fatal("checked, and yet", faults[0])
				}
			}
		}
	})
}

func BenchmarkCheck(b *testing.B) {
	p := Demo(US)
	for b.Loop() {
		if len(Check(p)) > 0 {
			b.Fatal("faults")
		}
	}
}

func BenchmarkResolve(b *testing.B) {
	p := Demo(US)
	for b.Loop() {
		if _, faults := Resolve(p, "s2"); len(faults) > 0 {
			b.Fatal("faults")
		}
	}
}
