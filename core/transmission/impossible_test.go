package transmission

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

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
