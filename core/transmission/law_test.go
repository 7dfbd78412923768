package transmission

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/assembly"
	"twoleaf/core/band"
)

// zoo is one build-up of every kind that is unlike from its two sides.
func zoo(t testing.TB) map[string]assembly.BuildUp {
	const sp = 0.4064
	x16, x16x2 := leafOf(t, "na_gyp_typeX_16"), leafOf(t, "na_gyp_typeX_16", "na_gyp_typeX_16")
	reg, ply := leafOf(t, "na_gyp_reg_13"), leafOf(t, "na_ply_soft_18")
	damped := joined(leafOf(t, "na_gyp_typeX_16", "na_gyp_reg_13"), assembly.Film)
	glued := joined(leafOf(t, "na_gyp_reg_13", "na_ply_soft_15"), assembly.Glued)
	block := leafOf(t, "xx_block190_hollow")
	batt := func(g assembly.Gap) assembly.Gap { return filled(t, g, float64(g.Depth)*0.8) }
	wood := gapOf(t, "wood_38x89", sp)
	steel := gapOf(t, "steel_92_05", 0.61)
	shorted := fixed(t, wood, "channel", "screwed")
	shorted.Near.Shorts = 1
	middle := fixed(t, gapOf(t, "none", 0), "channel", "screwed")
	middle.Depth = 0.025
	middle.Near.Grid.Along = sp
	standing := fixed(t, gapOf(t, "standing_64", 0.61), "screwed", "untied")
	bare := fixed(t, gapOf(t, "bare", 0), "screwed", "channel")
	bare.Far.Grid.Along = sp
	ceiling := two(leafOf(t, "na_osb_18_23-32"), batt(fixed(t, gapOf(t, "joist_38x235", sp), "screwed", "clip")), x16x2)
	ceiling.Horizontal = true
	panes := two(leafOf(t, "xx_glass_4"), assembly.Gap{Depth: 0.1}, leafOf(t, "xx_glass_lam_6"))
	side := func(g assembly.Gap) assembly.Gap { return assembly.BuildUp{Gaps: []assembly.Gap{g}}.Reversed().Gaps[0] }
	return map[string]assembly.BuildUp{
		"one against two":     two(reg, batt(wood), x16x2),
		"wood against gypsum": two(ply, batt(wood), x16),
		"damped on channel":   two(damped, batt(fixed(t, wood, "channel", "screwed")), x16),
		"glued on steel":      two(glued, batt(steel), x16),
		"channels both sides": two(x16x2, fixed(t, steel, "channel", "channel"), ply),
		"clip":                two(damped, batt(fixed(t, wood, "clip", "screwed")), ply),
		"clip and channel":    two(damped, fixed(t, wood, "clip", "channel"), x16),
		"shorted channel":     two(x16x2, batt(shorted), reg),
		"staggered, channel":  two(ply, batt(fixed(t, gapOf(t, "staggered_38x89", sp), "channel", "screwed")), x16x2),
		"two rows":            two(x16x2, batt(gapOf(t, "double_38x89", sp)), ply),
		"load-bearing":        two(reg, batt(gapOf(t, "steel_152_14", sp)), ply),
		"untied":              two(reg, batt(fixed(t, wood, "untied", "screwed")), ply),
		"lined block":         {Leaves: []assembly.Leaf{x16, block, x16x2}, Gaps: []assembly.Gap{batt(standing), bare}},
		"strapped, open block": {Leaves: []assembly.Leaf{reg, leafOf(t, "xx_block190_open"), x16x2},
			Gaps: []assembly.Gap{batt(gapOf(t, "strap_38", 0.61)), gapOf(t, "zbar_50", 0.61)}},
		"floor":        ceiling,
		"panes":        panes,
		"three leaves": {Leaves: []assembly.Leaf{ply, reg, x16x2}, Gaps: []assembly.Gap{batt(wood), batt(steel)}},
		"channel between boards": {Leaves: []assembly.Leaf{x16x2, reg, ply},
			Gaps: []assembly.Gap{middle, batt(wood)}},
		"four leaves": {Leaves: []assembly.Leaf{ply, reg, damped, x16x2},
			Gaps: []assembly.Gap{batt(wood), side(shorted), batt(steel)}},
		"four leaves, points": {Leaves: []assembly.Leaf{ply, reg, x16, x16x2},
			Gaps: []assembly.Gap{batt(wood), middle, fixed(t, steel, "clip", "screwed")}},
		"masonry":       one(leafOf(t, "xx_block190_hollow", "na_gyp_reg_13")),
		"cavity blocks": two(leafOf(t, "xx_block140_hollow"), assembly.Gap{Depth: 0.05}, leafOf(t, "xx_concrete_100")),
	}
}

// TestLawReciprocity: a build-up turned about stops the same in every band.
// The method is reciprocal in its equations; 1e-6 dB is what rounding may do.
func TestLawReciprocity(t *testing.T) {
	for name, b := range zoo(t) {
		for _, a := range []Accuracy{Ranking, Converged} {
			there, back := loss(t, b, Options{Accuracy: a}, nil), loss(t, b.Reversed(), Options{Accuracy: a}, nil)
			for i := range there {
				require.False(t, math.IsNaN(there[i]) || math.IsInf(there[i], 0), name)
				assert.InDelta(t, there[i], back[i], 1e-6, "%s, %v Hz", name, band.Nominal[i])
			}
		}
	}
}

// TestLawOrder: the order of boards screwed together dry changes no digit.
func TestLawOrder(t *testing.T) {
	g := filled(t, gapOf(t, "wood_38x89", 0.4064), 0.08)
	far := leafOf(t, "na_gyp_typeX_16")
	a := loss(t, two(leafOf(t, "na_gyp_light_13", "na_ply_soft_15", "na_gyp_reg_13"), g, far), Options{}, nil)
	b := loss(t, two(leafOf(t, "na_gyp_reg_13", "na_gyp_light_13", "na_ply_soft_15"), g, far), Options{}, nil)
	assert.Equal(t, a, b)
}

// TestTablesChangeNothing: with tables, without, and with tables that other
// build-ups have filled, the digits are the same; a part of the bands too.
func TestTablesChangeNothing(t *testing.T) {
	tables := NewTables()
	all := zoo(t)
	for _, b := range all {
		loss(t, b, Options{}, tables)
	}
	for name, b := range all {
		fresh := loss(t, b, Options{}, nil)
		assert.Equal(t, fresh, loss(t, b, Options{}, tables), name)
		bass := loss(t, b, Options{}.Bass(), tables)
		assert.Equal(t, fresh[band.First50:band.First125+1], bass[band.First50:band.First125+1], name)
		assert.Zero(t, bass[band.First125+1])
	}
}

// TestTablesAreBounded: tables start afresh before they grow beyond what they may.
func TestTablesAreBounded(t *testing.T) {
	tables := NewTables()
	g := filled(t, gapOf(t, "wood_38x89", 0.4064), 0.08)
	most, afresh := 0, false
	for i := range 400 {
		l := leafOf(t, "na_gyp_reg_13")
		l.Layers[0].Board.Sound.Loss += float64(i) * 1e-6
		loss(t, two(l, g, l), Options{Accuracy: Converged}.Bass(), tables)
		afresh = afresh || tables.held < most
		most = max(most, tables.held)
	}
	assert.True(t, afresh)
	assert.Less(t, most, 2*capacity)
}
