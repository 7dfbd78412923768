package transmission

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"twoleaf/core/assembly"
)

// varied is the zoo, the handbooks' ladder, and single leaves of every sharpness of coincidence.
func varied(t testing.TB) map[string]assembly.BuildUp {
	all := zoo(t)
	names, builds, _ := rungs(t)
	for i, b := range builds {
		all["ladder: "+names[i]] = b
	}
	for _, id := range []string{"na_gyp_reg_13", "na_ply_soft_18", "xx_glass_6", "xx_steel_1_52", "xx_concrete_150"} {
		all["single "+id] = one(leafOf(t, id))
	}
	return all
}

// TestRankingFollowsConverged: what ranks build-ups gives the STC of final
// figures within 1.
func TestRankingFollowsConverged(t *testing.T) {
	for name, b := range varied(t) {
		final, ranked := loss(t, b, Options{Accuracy: Converged}, nil), loss(t, b, Options{Accuracy: Ranking}, nil)
		assert.InDelta(t, stc(final), stc(ranked), 1, name)
	}
}
