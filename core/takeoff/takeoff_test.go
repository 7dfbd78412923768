package takeoff

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// A wall of 13 ft 4 in by 8 ft takes four 4x8 sheets a layer, twelve for three layers.
func ExampleSheets() {
	face := unit.Area(160 * unit.Inch * 8 * unit.Foot)
	fmt.Println(Sheets(face, 32*unit.SquareFoot, UsualWaste), 3*Sheets(face, 32*unit.SquareFoot, UsualWaste))
	// Output: 4 12
}

func TestLawSheets(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 500 {
		face, sheet, waste := unit.Area(0.5+60*r.Float64()), unit.Area(0.5+4*r.Float64()), 0.3*r.Float64()
		n := Sheets(face, sheet, waste)
		need := float64(face) * (1 + waste)
		assert.GreaterOrEqual(t, float64(n)*float64(sheet), need*(1-1e-8), "enough")
		assert.Less(t, float64(n-1)*float64(sheet), need, "not one too many")
		assert.LessOrEqual(t, n, Sheets(face*2, sheet, waste))
	}
	assert.Equal(t, 3, Sheets(3*2.88, 2.88, 0), "exactly three are three")
	assert.Equal(t, 11, Sheets(10*32*unit.SquareFoot, 32*unit.SquareFoot, 0.1), "and with 10 % eleven")
	assert.Zero(t, Sheets(0, 2.88, 0.1))
	assert.Zero(t, Sheets(10, 0, 0.1))
	assert.Zero(t, Sheets(unit.Area(math.NaN()), 2.88, 0.1))
	assert.Equal(t, MaxSheets, Sheets(unit.Area(math.Inf(1)), 2.88, 0.1))
}

// on is a leaf of n boards of one thickness, room side, on a frame or channel.
func on(f material.Frame, x material.Fixing, n int, thick unit.Length) assembly.BuildUp {
	l := assembly.Leaf{}
	for range n {
		l.Layers = append(l.Layers, assembly.Layer{Board: material.Board{Kind: material.Gypsum, Thickness: thick, Mass: 10}})
	}
	return assembly.BuildUp{
		Leaves: []assembly.Leaf{l, {Layers: []assembly.Layer{{There: true, Board: material.Board{Thickness: 0.0127}}}}},
		Gaps:   []assembly.Gap{{Frame: f, Near: assembly.Held{Fixing: x}, Far: assembly.Held{Fixing: material.Fixing{Kind: material.Screwed}}}},
	}
}

var (
	woodStud  = material.Frame{Kind: material.Wood, Depth: 0.089}
	screwed   = material.Fixing{Kind: material.Screwed}
	resilient = material.Fixing{Kind: material.Channel, Clear: 0.5 * unit.Inch}
	onClips   = material.Fixing{Kind: material.Clip, Clear: 1.625 * unit.Inch}
)

// Lengths in common use for the first, second and third layer (trade guides,
// code-fastening articles and, for the stock lengths, memory). Where the
// strict rule allows a shorter screw than is usual, strict says so.
func TestPrintedScrews(t *testing.T) {
	const in, mm = unit.Inch, unit.Millimetre
	for _, row := range []struct {
		name   string
		region string
		thick  unit.Length
		fix    material.Fixing
		usual  [3][2]unit.Length // shortest and longest in use
		strict [3]unit.Length    // 0: the rule gives the usual one
	}{
		{"1/2 in over wood", "US", 12.7 * mm, screwed, [3][2]unit.Length{{1.25 * in, 1.25 * in}, {1.625 * in, 1.625 * in}, {2.25 * in, 2.25 * in}}, [3]unit.Length{}},
		// 5/8 + 5/8 = 1 1/4 in strictly fits; 1 5/8 in is usual.
		{"5/8 in over wood", "US", 15.9 * mm, screwed, [3][2]unit.Length{{1.625 * in, 1.625 * in}, {2 * in, 2 * in}, {2.5 * in, 2.5 * in}}, [3]unit.Length{1.25 * in}},
		{"12.5 mm over wood", "UK", 12.5 * mm, screwed, [3][2]unit.Length{{32 * mm, 35 * mm}, {42 * mm, 45 * mm}, {55 * mm, 60 * mm}}, [3]unit.Length{}},
		// 15 + 16 = 31 mm: 32 mm strictly fits; 35 mm is usual.
		{"15 mm over wood", "UK", 15 * mm, screwed, [3][2]unit.Length{{35 * mm, 35 * mm}, {50 * mm, 50 * mm}, {65 * mm, 65 * mm}}, [3]unit.Length{32 * mm}},
		{"1/2 in over channel", "US", 12.7 * mm, onClips, [3][2]unit.Length{{1 * in, 1 * in}, {1.625 * in, 1.625 * in}, {2 * in, 2 * in}}, [3]unit.Length{}},
		{"5/8 in over channel", "US", 15.9 * mm, onClips, [3][2]unit.Length{{1 * in, 1 * in}, {1.625 * in, 1.625 * in}, {2.25 * in, 2.5 * in}}, [3]unit.Length{}},
		{"12.5 mm over channel", "UK", 12.5 * mm, onClips, [3][2]unit.Length{{25 * mm, 25 * mm}, {35 * mm, 38 * mm}, {50 * mm, 50 * mm}}, [3]unit.Length{}},
		{"15 mm over channel", "UK", 15 * mm, onClips, [3][2]unit.Length{{25 * mm, 25 * mm}, {42 * mm, 42 * mm}, {55 * mm, 60 * mm}}, [3]unit.Length{}},
	} {
		screws := Screws(on(woodStud, row.fix, 3, row.thick), 0, row.region)
		slices.Reverse(screws) // nearest the frame first
		for i, s := range screws {
			if row.strict[i] > 0 {
				assert.InDelta(t, float64(row.strict[i]), float64(s.Length), 1e-9, "%s, layer %d by the strict rule", row.name, i+1)
				continue
			}
			assert.GreaterOrEqual(t, float64(s.Length), float64(row.usual[i][0])-1e-9, "%s, layer %d", row.name, i+1)
			assert.LessOrEqual(t, float64(s.Length), float64(row.usual[i][1])+1e-9, "%s, layer %d", row.name, i+1)
		}
	}
}

// A single 5/8 in board on resilient channel takes a 1 in screw and no longer:
// the next length would touch the stud (consultant's note on channel).
func TestPrintedChannelMaximum(t *testing.T) {
	s := Screws(on(woodStud, resilient, 1, 15.9*unit.Millimetre), 0, "US")[0]
	assert.InDelta(t, 1, float64(s.Length/unit.Inch), 1e-9)
	assert.Equal(t, Channel, s.Why)
	assert.InDelta(t, 15.9+12.7, float64(s.Most/unit.Millimetre), 1e-9)
	assert.True(t, unit.Over(1.25*unit.Inch, s.Most))
	tight := resilient
	tight.Clear = 8 * unit.Millimetre
	s = Screws(on(woodStud, tight, 1, 15.9*unit.Millimetre), 0, "US")[0]
	assert.Equal(t, Touches, s.Why)
}

func TestScrewOrder(t *testing.T) {
	b := on(woodStud, screwed, 2, 0.0127)
	near := Screws(b, 0, "US")
	assert.Greater(t, near[0].Length, near[1].Length, "on the room side the last layer is nearest the frame")
	b.Leaves[1].Layers = append([]assembly.Layer{}, b.Leaves[0].Layers...)
	far := Screws(b, 1, "US")
	assert.Less(t, far[0].Length, far[1].Length, "beyond the gap the first is")
	assert.Equal(t, near[0].Length, Longest(near))
}

func TestScrewReasons(t *testing.T) {
	b := on(woodStud, screwed, 2, 0.0127)
	b.Leaves[0].Layers[1].There = true
	s := Screws(b, 0, "US")
	assert.Equal(t, There, s[1].Why)
	assert.InDelta(t, 1.625, float64(s[0].Length/unit.Inch), 1e-9, "the layer that is there is screwed through")

	steel := material.Frame{Kind: material.CStud, Depth: 0.092, Sheet: 0.0005}
	assert.Equal(t, Steel, Screws(on(steel, screwed, 1, 0.0127), 0, "US")[0].Why)
	assert.Equal(t, Masonry, Screws(on(material.Frame{Kind: material.Bare}, screwed, 1, 0.0127), 0, "UK")[0].Why)
	assert.Equal(t, NoFrame, Screws(on(woodStud, material.Fixing{Kind: material.Untied}, 1, 0.0127), 0, "UK")[0].Why)
	long := Screws(on(woodStud, screwed, 12, 0.0127), 0, "EU")
	assert.Equal(t, TooLong, long[0].Why)
	assert.Zero(t, long[0].Length)
	assert.Nil(t, Screws(b, 5, "US"))
	require.Empty(t, Longest(nil))
}

func TestLawScrewHolds(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for _, region := range []string{"US", "CA", "UK", "EU", "AU"} {
		list := Stock(region)
		require.True(t, slices.IsSorted(list) && len(list) > 5, region)
		for range 100 {
			n, thick := 1+r.IntN(3), unit.Length(0.009+0.012*r.Float64())
			for _, s := range Screws(on(woodStud, screwed, n, thick), 0, region) {
				if s.Length == 0 {
					continue
				}
				assert.False(t, unit.Over(s.Least-unit.Length(n)*printed, s.Length))
				for _, shorter := range list {
					if shorter < s.Length {
						assert.Less(t, shorter, s.Least, "no shorter one would hold")
					}
				}
			}
		}
	}
}
