package evidence

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Odd texts of files of one's own are read as something that can be built, or
// refused in words; never with a panic.
func TestOddTextsDoNotBreak(t *testing.T) {
	for _, leaf := range []string{"gypsum 12.7 x1 or ", " or ", "gypsum 12.7 x99999999999", "gypsum", "x", "gypsum 12.7 typeX x2 + ", "@ 400", "-", "gypsum 0 x1"} {
		built, err := ReadText(Text{Leaf1: leaf, Framing: "wood 38x89 @400 single", Fill: "none", Leaf2: leaf, Kind: "wall wood single"})
		for _, b := range built.BuildUps {
			assert.Empty(t, b.Check(), "%q", leaf)
		}
		assert.True(t, err != nil || len(built.BuildUps) > 0, "%q", leaf)
	}
}
