package transmission

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/assembly"
	"twoleaf/core/band"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// randomBuild is any build-up that passes the checks: boards of any kind,
// thickness and weight, every frame and fixing, fills, shorts, films and glue.
func randomBuild(r *rand.Rand) assembly.BuildUp {
	boards, frames, fixings, fills := material.All(), material.Frames(""), material.Fixings(), material.Fills("")
	pick := func(n int) int { return r.IntN(n) }
	wide := func(v, by float64) float64 { return v * math.Exp(by*(2*r.Float64()-1)) }
	var b assembly.BuildUp
	leaves := 1 + pick(assembly.MaxLeaves)
	for range leaves {
		var l assembly.Leaf
		for range 1 + pick(1+pick(4)) {
			x := boards[pick(len(boards))]
			rg := assembly.ThicknessRange(x.Kind)
			if pick(3) == 0 {
				x = x.WithThickness(unit.Length(math.Max(rg.Low, math.Min(rg.High, wide(float64(x.Thickness), 0.7)))))
			}
			if pick(3) == 0 {
				d := assembly.DensityRange(x.Kind)
				t := float64(x.Thickness)
				x = x.WithMass(unit.SurfaceMass(math.Max(d.Low*t*1.01, math.Min(d.High*t*0.99, wide(float64(x.Mass), 1)))))
			}
			l.Layers = append(l.Layers, assembly.Layer{Board: x, Join: []assembly.Join{assembly.Loose, assembly.Loose, assembly.Glued, assembly.Film}[pick(4)]})
		}
		b.Leaves = append(b.Leaves, l)
	}
	for range leaves - 1 {
		g := assembly.Gap{Frame: frames[pick(len(frames))], Spacing: unit.Length(wide(0.5, 0.9))}
		for _, h := range []*assembly.Held{&g.Near, &g.Far} {
			h.Fixing = fixings[pick(len(fixings))]
			h.Fixing.Stiffness = wide(h.Fixing.Stiffness, 2)
			h.Grid = assembly.Grid{Rows: unit.Length(wide(0.6, 1)), Along: unit.Length(wide(0.6, 1))}
			if pick(8) == 0 {
				h.Shorts = wide(1, 3)
			}
		}
		g.Depth = max(g.DefaultDepth(), unit.Length(wide(0.03, 3)))
		if pick(2) == 0 {
			g.Fill = fills[pick(len(fills))]
			g.FillDepth = max(unit.Length(float64(g.Depth)*r.Float64()), 1.01e-3)
			if g.FillDepth > g.Depth {
				g.FillDepth = g.Depth
			}
		}
		b.Gaps = append(b.Gaps, g)
	}
	if pick(3) == 0 {
		b.Width, b.Height = unit.Length(wide(3, 2)), unit.Length(wide(2.5, 2))
	}
	b.Horizontal = pick(4) == 0
	return b
}

// TestFinite: every build-up that can be has a finite loss that is nowhere
// below nothing, and the same from its other side.
func TestFinite(t *testing.T) {
	n := 4000
	if testing.Short() {
		n = 500
	}
	r := rand.New(rand.NewPCG(2, 1120))
	tables := NewTables()
	turned := 0
	for i := range n {
		b := randomBuild(r)
		if len(b.Check()) > 0 {
			continue
		}
		// All bands of some, the bass of most: time.
		o := Options{}.Bass()
		if i%5 == 0 {
			o = Options{}
		}
		l, err := LossOf(b, o, tables)
		require.NoError(t, err, "%d", i)
		for k, x := range l {
			require.False(t, math.IsNaN(x) || math.IsInf(x, 0), "%d %v Hz", i, band.Nominal[k])
			require.GreaterOrEqual(t, x, 0.0)
			require.Less(t, x, 301.0)
		}
		for _, f := range Resonances(b) {
			require.False(t, math.IsNaN(float64(f)) || math.IsInf(float64(f), 0) || f < 0)
		}
		if i%5 == 1 {
			back := loss(t, b.Reversed(), o, tables)
			for k := range l {
				require.InDelta(t, l[k], back[k], 1e-6, "%d %v Hz", i, band.Nominal[k])
			}
			turned++
		}
	}
	assert.Greater(t, turned, n/10)
}

// TestImpossible: what cannot be is named, with its place.
func TestImpossible(t *testing.T) {
	good := func() assembly.BuildUp {
		x := leafOf(t, "na_gyp_typeX_16")
		return two(x, filled(t, gapOf(t, "wood_38x89", 0.4064), 0.08), leafOf(t, "na_gyp_reg_13", "na_ply_soft_15"))
	}
	for says, spoil := range map[string]func(*assembly.BuildUp){
		"build-up: leaves is missing":         func(b *assembly.BuildUp) { b.Leaves, b.Gaps = nil, nil },
		"build-up: leaves is tooMany (5)":     func(b *assembly.BuildUp) { b.Leaves = append(b.Leaves, b.Leaves[0], b.Leaves[0], b.Leaves[0]) },
		"build-up: gaps is uneven":            func(b *assembly.BuildUp) { b.Gaps = nil },
		"leaf 2: layers is missing":           func(b *assembly.BuildUp) { b.Leaves[1].Layers = nil },
		"leaf 2, layer 1: thickness is zero":  func(b *assembly.BuildUp) { b.Leaves[1].Layers[0].Board.Thickness = 0 },
		"leaf 2, layer 2: mass is notNumber":  func(b *assembly.BuildUp) { b.Leaves[1].Layers[1].Board.Mass = unit.SurfaceMass(math.NaN()) },
		"leaf 1, layer 1: young is notNumber": func(b *assembly.BuildUp) { b.Leaves[0].Layers[0].Board.Sound.Young = unit.Pressure(math.Inf(1)) },
		"leaf 1, layer 1: loss is negative":   func(b *assembly.BuildUp) { b.Leaves[0].Layers[0].Board.Sound.Loss = -1 },
		"leaf 1, layer 1: nu is large":        func(b *assembly.BuildUp) { b.Leaves[0].Layers[0].Board.Sound.Nu = 0.5 },
		"gap 1: depth is zero":                func(b *assembly.BuildUp) { b.Gaps[0].Depth = 0; b.Gaps[0].Frame = material.Frame{} },
		"gap 1: fillDepth is notNumber":       func(b *assembly.BuildUp) { b.Gaps[0].FillDepth = unit.Length(math.NaN()) },
		"gap 1: spacing is zero":              func(b *assembly.BuildUp) { b.Gaps[0].Spacing = 0 },
		"gap 1: flow is notNumber":            func(b *assembly.BuildUp) { b.Gaps[0].Fill.Flow = math.Inf(1) },
		"gap 1: stiffness is negative":        func(b *assembly.BuildUp) { b.Gaps[0].Far.Fixing.Stiffness = -1 },
		"gap 1: shorts is negative":           func(b *assembly.BuildUp) { b.Gaps[0].Far.Shorts = -1 },
	} {
		b := good()
		spoil(&b)
		_, err := Loss(b, Ranking, nil)
		assert.ErrorContains(t, err, says)
	}
	_, err := Loss(good(), Ranking, nil)
	assert.NoError(t, err)
	_, err = LossOf(good(), Options{From: 3, To: 99}, nil)
	assert.Error(t, err)
	_, err = LossOf(good(), Options{Accuracy: 7}, nil)
	assert.Error(t, err)
}
