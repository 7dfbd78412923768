package assembly

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/material"
	"twoleaf/core/unit"
)

var sheet4x8 = material.Sheet{Width: 4 * unit.Foot, Length: 8 * unit.Foot}

// tagged is a board of which the tag tells the weight of a 4x8 ft sheet in lb.
func tagged(id string, kind material.Kind, mm, lb, price float64) Layer {
	area := sheet4x8.Area()
	return Layer{
		ID: id,
		Board: material.Board{
			ID: id, Kind: kind, Thickness: unit.Length(mm) * unit.Millimetre,
			Mass:   unit.SurfaceMass(lb*float64(unit.Pound)) / unit.SurfaceMass(area),
			Sheets: []material.Sheet{sheet4x8},
		},
		Price: unit.MoneyRate(price / float64(area)), Priced: true,
	}
}

// Tags of common practice: type X 15.9 mm 72 lb, lightweight 12.7 mm 39 lb, plywood 19 mm 66 lb.
func typeX() Layer   { return tagged("x", material.Gypsum, 15.9, 72, 18) }
func light() Layer   { return tagged("light", material.Gypsum, 12.7, 39, 15) }
func plywood() Layer { return tagged("ply", material.Plywood, 19, 66, 47) }

func clipFixing() material.Fixing {
	return material.Fixing{ID: "clip", Kind: material.Clip, StandOff: 1.625 * unit.Inch, LineMass: 0.3557, Clear: 1.625 * unit.Inch}
}

func wall() BuildUp {
	there := light()
	there.There = true
	return BuildUp{
		Leaves: []Leaf{{Layers: []Layer{typeX(), typeX()}}, {Layers: []Layer{there}}},
		Gaps: []Gap{{
			ID:      "g",
			Frame:   material.Frame{ID: "w", Kind: material.Wood, Depth: 3.5 * unit.Inch, Plate: 3.5 * unit.Inch},
			Spacing: 16 * unit.Inch, Depth: 5.125 * unit.Inch,
			Fill: material.Fill{ID: "f", Density: 42}, FillDepth: 3.5 * unit.Inch,
			Near:  Held{Fixing: clipFixing(), Grid: Grid{Rows: 24 * unit.Inch, Along: 48 * unit.Inch}, Rating: 42 * unit.Pound},
			Far:   Held{Fixing: material.Fixing{ID: "s", Kind: material.Screwed}},
			There: true,
		}},
	}
}

// Two type X of 72 lb weigh as much as plywood between two lightweight boards:
// 144 lb a stack, 4.50 psf (common practice).
func ExampleLeaf_Mass() {
	two := Leaf{Layers: []Layer{typeX(), typeX()}}
	sandwich := Leaf{Layers: []Layer{light(), plywood(), light()}}
	for _, l := range []Leaf{two, sandwich} {
		stack, _ := l.Stack()
		cost, _ := l.Cost()
		fmt.Printf("%.2f psf, %.0f lb, %.2f in, %.3f per ft²\n",
			float64(l.Mass()/unit.PoundPerSquareFoot), float64(stack/unit.Pound),
			float64(l.Thickness()/unit.Inch), float64(cost)*float64(unit.SquareFoot))
	}
	fmt.Println("sandwich over the two:", unit.Over(sandwich.Mass(), two.Mass()))
	// Output:
	// 4.50 psf, 144 lb, 1.25 in, 1.125 per ft²
	// 4.50 psf, 144 lb, 1.75 in, 2.406 per ft²
	// sandwich over the two: false
}

func TestLawMassAndCostAdd(t *testing.T) {
	a, b := Leaf{Layers: []Layer{typeX(), light()}}, Leaf{Layers: []Layer{plywood()}}
	both := Leaf{Layers: append(append([]Layer{}, a.Layers...), b.Layers...)}
	assert.InDelta(t, float64(a.Mass()+b.Mass()), float64(both.Mass()), 1e-12)
	assert.InDelta(t, float64(a.Thickness()+b.Thickness()), float64(both.Thickness()), 1e-15)
	ca, _ := a.Cost()
	cb, _ := b.Cost()
	cost, ok := both.Cost()
	require.True(t, ok)
	assert.InDelta(t, float64(ca+cb), float64(cost), 1e-12)
	sa, _ := a.Stack()
	sb, _ := b.Stack()
	stack, ok := both.Stack()
	require.True(t, ok)
	assert.InDelta(t, float64(sa+sb), float64(stack), 1e-12)
}

// The order of layers screwed loosely together changes no figure, not even in the last digit.
func TestLawOrderChangesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		n := 1 + r.IntN(MaxLayers)
		l := Leaf{}
		for i := range n {
			l.Layers = append(l.Layers, tagged(fmt.Sprint(i), material.Gypsum, 3.3+50*r.Float64(), 10+r.Float64()*90, r.Float64()*70))
		}
		cost, _ := l.Cost()
		stack, _ := l.Stack()
		m := Leaf{Layers: append([]Layer{}, l.Layers...)}
		r.Shuffle(n, func(i, j int) { m.Layers[i], m.Layers[j] = m.Layers[j], m.Layers[i] })
		c, _ := m.Cost()
		s, _ := m.Stack()
		assert.Equal(t, l.Mass(), m.Mass())
		assert.Equal(t, l.Thickness(), m.Thickness())
		assert.Equal(t, cost, c)
		assert.Equal(t, stack, s)
	}
}

func TestCostIsOfNewLayersOnly(t *testing.T) {
	l := Leaf{Layers: []Layer{typeX(), typeX()}}
	one, _ := Leaf{Layers: []Layer{typeX()}}.Cost()
	l.Layers[1].There = true
	l.Layers[1].Priced = false // no matter: it is paid for
	cost, ok := l.Cost()
	assert.True(t, ok)
	assert.Equal(t, one, cost)
	assert.Equal(t, typeX().Board.Mass, l.NewMass())
	assert.Equal(t, 2*typeX().Board.Mass, l.Mass())

	l.Layers[0].Priced = false
	_, ok = l.Cost()
	assert.False(t, ok, "a missing price leaves the cost unknown")
	assert.Equal(t, []string{"x"}, l.Unpriced())
	_, ok = BuildUp{Leaves: []Leaf{l}}.Cost()
	assert.False(t, ok)
}

func TestFilm(t *testing.T) {
	l := Leaf{Layers: []Layer{typeX(), typeX()}}
	bare := l.Mass()
	l.Layers[0].Join = Film
	l.Layers[1].Join = Film // the last one has nothing to be joined to
	assert.InDelta(t, float64(bare+FilmMass), float64(l.Mass()), 1e-12)
	assert.Equal(t, []string{FilmID}, l.Unpriced())
	l.Layers[0].JoinPrice, l.Layers[0].JoinPriced = 7.8, true
	cost, ok := l.Cost()
	require.True(t, ok)
	assert.InDelta(t, 7.8+2*float64(typeX().Price), float64(cost), 1e-12)
}

func TestStackNeedsSheets(t *testing.T) {
	block := Layer{Board: material.Board{Kind: material.Block, Mass: 200, Thickness: 0.19}}
	_, ok := Leaf{Layers: []Layer{block, typeX()}}.Stack()
	assert.False(t, ok)
	block.There = true
	m, ok := Leaf{Layers: []Layer{block, typeX()}}.Stack()
	assert.True(t, ok)
	assert.InDelta(t, 72, float64(m/unit.Pound), 1e-9)
}

func TestDefaultDepth(t *testing.T) {
	b := wall()
	// 3 1/2 in studs and 1 5/8 in of clip and channel.
	assert.InDelta(t, 5.125, float64(b.Gaps[0].DefaultDepth()/unit.Inch), 1e-12)
	two := Gap{Frame: material.Frame{Kind: material.Double, Depth: 3.5 * unit.Inch, Plate: 8 * unit.Inch}}
	assert.InDelta(t, 8, float64(two.DefaultDepth()/unit.Inch), 1e-12)
	two.Frame.Plate = 0
	assert.InDelta(t, 7, float64(two.DefaultDepth()/unit.Inch), 1e-12)
	assert.Zero(t, Gap{Frame: material.Frame{Kind: material.NoFrame}}.DefaultDepth())
}

func TestLawReversed(t *testing.T) {
	b := wall()
	b.Leaves[0].Layers[0].Join = Film
	b.Leaves[0].Layers[0].JoinPriced = true
	b.Leaves[0].Layers = append(b.Leaves[0].Layers, light())
	b.Leaves[0].Layers[1].Join = Glued
	r := b.Reversed()
	assert.Equal(t, b.Mass(), r.Mass())
	assert.Equal(t, b.Thickness(), r.Thickness())
	assert.Equal(t, b.Leaves[0].Mass(), r.Leaves[1].Mass())
	assert.Equal(t, material.Clip, r.Gaps[0].Far.Fixing.Kind)
	// light–glue–X–film–X from the other side.
	got := r.Leaves[1].Layers
	assert.Equal(t, []Join{Glued, Film, Loose}, []Join{got[0].Join, got[1].Join, got[2].Join})
	assert.True(t, got[1].JoinPriced)
	assert.Equal(t, b, r.Reversed())
	r.Leaves[0].Layers[0].ID = "changed"
	assert.NotEqual(t, "changed", b.Leaves[1].Layers[0].ID, "nothing is shared")
}

func TestHolder(t *testing.T) {
	b := wall()
	gap, near, ok := b.Holder(0)
	assert.True(t, ok && near && gap == 0)
	_, _, ok = b.Holder(1)
	assert.False(t, ok, "the far leaf is screwed")
	gap, near, ok = b.Fixed(1)
	assert.True(t, ok && !near && gap == 0)
	_, _, ok = b.Holder(7)
	assert.False(t, ok)
}

func TestCheckAcceptsWhatIsBuilt(t *testing.T) {
	assert.Empty(t, wall().Check())
	assert.Empty(t, BuildUp{Leaves: []Leaf{{Layers: []Layer{{Board: material.Board{Kind: material.Lead, Thickness: 0.0004, Mass: 4.5}}}}}}.Check())
	assert.Empty(t, BuildUp{Leaves: []Leaf{{Layers: []Layer{{Board: material.Board{Kind: material.Brick, Thickness: 0.6, Mass: 1100}}}}}}.Check())
}

func TestCheckNamesWhatIsImpossible(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name  string
		spoil func(*BuildUp)
		want  Problem // Code, place and field
	}{
		{"no leaf", func(b *BuildUp) { *b = BuildUp{} }, Problem{Code: Missing, Leaf: -1, Layer: -1, Gap: -1, Field: "leaves"}},
		{"five leaves", func(b *BuildUp) {
			for range 3 {
				b.Leaves, b.Gaps = append(b.Leaves, b.Leaves[0]), append(b.Gaps, b.Gaps[0])
			}
		}, Problem{Code: TooMany, Leaf: -1, Layer: -1, Gap: -1, Field: "leaves"}},
		{"a leaf without board", func(b *BuildUp) { b.Leaves[1].Layers = nil }, Problem{Code: Missing, Leaf: 1, Layer: -1, Gap: -1, Field: "layers"}},
		{"thousands of layers", func(b *BuildUp) { b.Leaves[0].Layers = make([]Layer, 5000) }, Problem{Code: TooMany, Leaf: 0, Layer: -1, Gap: -1, Field: "layers"}},
		{"a gap too few", func(b *BuildUp) { b.Gaps = nil }, Problem{Code: Uneven, Leaf: -1, Layer: -1, Gap: -1, Field: "gaps"}},
		{"no thickness", func(b *BuildUp) { b.Leaves[0].Layers[1].Board.Thickness = 0 }, Problem{Code: Zero, Leaf: 0, Layer: 1, Gap: -1, Field: "thickness"}},
		{"five metres of board", func(b *BuildUp) { b.Leaves[0].Layers[0].Board.Thickness = 5 }, Problem{Code: Large, Leaf: 0, Layer: 0, Gap: -1, Field: "thickness"}},
		{"a board of 0.61 m of brick", func(b *BuildUp) {
			b.Leaves[0].Layers[0].Board.Kind = material.Brick
			b.Leaves[0].Layers[0].Board.Thickness = 0.61
		}, Problem{Code: Large, Leaf: 0, Layer: 0, Gap: -1, Field: "thickness"}},
		{"negative mass", func(b *BuildUp) { b.Leaves[1].Layers[0].Board.Mass = -1 }, Problem{Code: Negative, Leaf: 1, Layer: 0, Gap: -1, Field: "mass"}},
		{"mass not a number", func(b *BuildUp) { b.Leaves[1].Layers[0].Board.Mass = unit.SurfaceMass(nan) }, Problem{Code: NotNumber, Leaf: 1, Layer: 0, Gap: -1, Field: "mass"}},
		{"modulus not a number", func(b *BuildUp) { b.Leaves[0].Layers[0].Board.Sound.Young = unit.Pressure(math.Inf(1)) }, Problem{Code: NotNumber, Leaf: 0, Layer: 0, Gap: -1, Field: "young"}},
		{"heavier than lead", func(b *BuildUp) { b.Leaves[0].Layers[0].Board.Mass = 300 }, Problem{Code: Large, Leaf: 0, Layer: 0, Gap: -1, Field: "mass"}},
		{"gap of no depth", func(b *BuildUp) { b.Gaps[0].Depth = 0 }, Problem{Code: Zero, Leaf: -1, Layer: -1, Gap: 0, Field: "depth"}},
		{"frame deeper than its gap", func(b *BuildUp) { b.Gaps[0].Depth = 4 * unit.Inch }, Problem{Code: Small, Leaf: -1, Layer: -1, Gap: 0, Field: "depth"}},
		{"fill deeper than its gap", func(b *BuildUp) { b.Gaps[0].FillDepth = 6 * unit.Inch }, Problem{Code: Large, Leaf: -1, Layer: -1, Gap: 0, Field: "fillDepth"}},
		{"fill of no depth", func(b *BuildUp) { b.Gaps[0].FillDepth = 0 }, Problem{Code: Zero, Leaf: -1, Layer: -1, Gap: 0, Field: "fillDepth"}},
		{"studs at nothing", func(b *BuildUp) { b.Gaps[0].Spacing = 0 }, Problem{Code: Zero, Leaf: -1, Layer: -1, Gap: 0, Field: "spacing"}},
		{"no rows", func(b *BuildUp) { b.Gaps[0].Near.Grid.Rows = 0 }, Problem{Code: Zero, Leaf: -1, Layer: -1, Gap: 0, Near: true, Field: "rows"}},
		{"a rating of a ton", func(b *BuildUp) { b.Gaps[0].Near.Rating = 1000 }, Problem{Code: Large, Leaf: -1, Layer: -1, Gap: 0, Near: true, Field: "rating"}},
		{"a price below nothing", func(b *BuildUp) { b.Leaves[0].Layers[0].Price = -1 }, Problem{Code: Negative, Leaf: 0, Layer: 0, Gap: -1, Field: "price"}},
	} {
		b := wall()
		c.spoil(&b)
		problems := b.Check()
		if assert.Len(t, problems, 1, c.name) {
			p := *problems[0]
			p.Value, p.Low, p.High = 0, 0, 0
			assert.Equal(t, c.want, p, c.name)
			assert.NotEmpty(t, problems[0].Error())
		}
	}
}

func TestMassDoesNotAllocate(t *testing.T) {
	l := Leaf{Layers: []Layer{light(), plywood(), light()}}
	assert.Zero(t, testing.AllocsPerRun(100, func() { _ = l.Mass() }))
}
