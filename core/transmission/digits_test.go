package transmission

import (
	"fmt"
	"hash/fnv"
	"math"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
)

// pinned are constants that no fit moves, so that golden figures stay.
var pinned = Constants{
	BayFactor: 1.2, LatticeLoss: 0.07, ScrewPitch: 0.2, FreeWaveCap: 0.8, BayLoss: 60,
	MasonryLoss: 180, PaneLoss: 340, PanePower: 0.45, EdgeLoss: 0.02, EdgeMass: 4850,
	EdgeCap: 0.042, StackLoss: 0.01, WoodStud: 1e+09, Stud: 600000, StudThick: 3, StudDepth: 0.5,
	StudGrowth: 1.05, StudCorner: 400, StudMass: 1.26, Channel: 160000, ChannelCorner: 63, Clip: 150000,
	ClipGrowth: 0.5, Staggered: 9e+06, Edge: 330000, EdgeSpacing: 1.2, BridgeLoss: 0.25, MassReference: 5.7,
	FrameFade: 1500, PerimeterHold: 1, StudOpening: 0.06, StudThroat: 0.056, FaceDepth: 0.01, FaceLoss: 0.45,
	Strapping: 4.3e+06, ZBar: 71000, ZBarSpacing: 0.6, Standing: 110000, LiningLoss: 0.1,
	LiningLattice: 0.15, JoistLine: 1e+08, JoistLattice: 1, Furring: 1e+07,
	FilmModulus: 400000, FilmLoss: 0.9, Porosity: 0.2, Tortuosity: 2, Plateau: 0.02, FrameLeak: 1.6e-06,
	ShortPoint: 1e+08,
}

// digest is of every bit of a spectrum.
func digest(t testing.TB, b assembly.BuildUp, o Options) string {
	h := fnv.New64a()
	for _, x := range loss(t, b, o, nil) {
		fmt.Fprintf(h, "%016x", math.Float64bits(x))
	}
	return fmt.Sprintf("%016x", h.Sum64())
}

// TestSameDigits: native and WebAssembly give the same bits. The figures are
// golden, printed by this code: they say nothing of truth, and a change of the
// method changes them.
func TestSameDigits(t *testing.T) {
	if runtime.GOARCH != "amd64" && runtime.GOARCH != "wasm" {
		t.Skip("a machine that fuses a multiplication and a sum rounds once less")
	}
	gyp := plain(0.0159, 11.4, 2.2e9, 0.25, 0.07)
	gyp.Sound.Ratio = 1.7
	ply := plain(0.018, 10.7, 6e9, 0.25, 0.05)
	ply.Kind, ply.Sound.Ratio = material.Plywood, 3
	block := plain(0.19, 256, 1.2e10, 0.2, 0.014)
	block.Kind = material.Block
	film := assembly.Leaf{Layers: []assembly.Layer{{Board: gyp, Join: assembly.Film}, {Board: ply}}}
	gap := func(k material.FrameKind, far material.FixingKind) assembly.Gap {
		return assembly.Gap{
			Frame: material.Frame{Kind: k, Depth: 0.089, Width: 0.038, Mass: 1.5}, Spacing: 0.4, Depth: 0.13,
			Fill: material.Fill{ID: "fibre", Density: 16, Flow: 8000}, FillDepth: 0.09,
			Near: assembly.Held{Fixing: material.Fixing{Kind: material.Screwed}},
			Far:  assembly.Held{Fixing: material.Fixing{Kind: far, Stiffness: 1.5e5, StandOff: 0.03}, Grid: assembly.Grid{Rows: 0.6, Along: 0.4}},
		}
	}
	c := pinned
	for _, v := range []struct {
		name, golden string
		b            assembly.BuildUp
	}{
		{"one board", "d358dfd88f574245", one(layer(gyp))},
		{"wood", "e90b04a1495600b6", two(layer(ply), gap(material.Wood, material.Screwed), layer(gyp))},
		{"film on channel", "cdc97c1ea13aecaf", two(layer(gyp), gap(material.CStud, material.Channel), film)},
		{"lined block", "c9363d5f4cb757d4", assembly.BuildUp{
			Leaves: []assembly.Leaf{layer(block), film, layer(gyp)},
			Gaps:   []assembly.Gap{gap(material.Strapping, material.Screwed), gap(material.Wood, material.Clip)}}},
	} {
		got := digest(t, v.b, Options{Constants: &c})
		assert.Equal(t, v.golden, got, "%s on %s", v.name, runtime.GOARCH)
	}
}

// TestElementary: the package's own functions are those of the library to the
// last digits.
func TestElementary(t *testing.T) {
	for x := -700.0; x < 700; x += 0.37 {
		require.InEpsilon(t, math.Exp(x), exp(x), 4e-16)
	}
	for x := 1e-300; x < 1e300; x *= 1.9 {
		if math.Abs(math.Log(x)) > 1e-3 {
			require.InEpsilon(t, math.Log(x), ln(x), 4e-16)
		}
		require.InEpsilon(t, math.Pow(x, 0.3), pow(x, 0.3), 1e-13)
	}
	for i := range 23 {
		require.InEpsilon(t, math.Pow(10, float64(15+i)/10), exact(i), 1e-15)
	}
	require.Equal(t, 1.0, exp(0))
	require.Zero(t, exp(-1e9))
	require.True(t, math.IsInf(exp(1e9), 1))
	require.True(t, math.IsNaN(exp(math.NaN())))
	require.True(t, math.IsNaN(ln(-1)))
	for _, z := range []complex128{4, -4, 3i, -3i, 3 + 4i, 3 - 4i, -3 + 4i, -3 - 4i} {
		r := csqrt(z)
		require.InDelta(t, 0, real(r*r-z), 1e-14)
		require.InDelta(t, 0, imag(r*r-z), 1e-14)
		require.GreaterOrEqual(t, real(r), 0.0)
	}
}

// TestConstants: every field of Constants has one row with a value inside its
// bounds, a meaning and an origin.
func TestConstants(t *testing.T) {
	c := Defaults()
	seen := map[*float64]string{}
	names := map[string]bool{}
	for _, r := range Table() {
		at := r.At(&c)
		assert.Empty(t, seen[at], "%s and %s are one field", r.Name, seen[at])
		seen[at] = r.Name
		assert.False(t, names[r.Name], r.Name)
		names[r.Name] = true
		assert.Equal(t, r.Value, *at, r.Name)
		assert.LessOrEqual(t, r.Low, r.Value, r.Name)
		assert.GreaterOrEqual(t, r.High, r.Value, r.Name)
		assert.NotEmpty(t, r.Meaning, r.Name)
		assert.Contains(t, []string{"calibrated", "derived", "from memory", "common practice", "sourced"}, r.Origin, r.Name)
		moved, ok := c.With(r.Name, r.Value+1)
		assert.True(t, ok)
		assert.Equal(t, r.Value+1, *r.At(&moved), r.Name)
	}
	_, ok := c.With("nothing", 1)
	assert.False(t, ok)
}
