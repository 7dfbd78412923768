package transmission

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"twoleaf/core/assembly"
)

// TestLawReciprocity: a build-up turned about stops the same, in every band.
func TestLawReciprocity(t *testing.T) {
	names, builds := ladder(t)
	_ = names
	ply := leafOf(t, "na_ply_soft_18")
	gyp := leafOf(t, "na_gyp_typeX_16")
	builds = append(builds,
		two(ply, filled(t, gapOf(t, "wood_38x89", 0.4064), 0.0889), gyp),
		two(joined(leafOf(t, "na_gyp_typeX_16", "na_ply_soft_18"), assembly.Film), fixed(t, gapOf(t, "steel_92_05", 0.61), "channel", "screwed"), gyp),
	)
	for i, b := range builds {
		a, r := loss(t, b, Options{}, nil), loss(t, b.Reversed(), Options{}, nil)
		for k := range a {
			assert.InDelta(t, a[k], r[k], 1e-6, "%d band %d", i, k)
			assert.False(t, math.IsNaN(a[k]))
		}
	}
}
