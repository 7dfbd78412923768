package core

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/plan"
)

// The ladder ends where the build-up is, and its steps add up.
func TestLawLadderAddsUp(t *testing.T) {
	for _, region := range []plan.Region{plan.US, plan.EU} {
		p := plan.Demo(region)
		for _, s := range p.Surfaces {
			r := report(t, p, Want{Surface: s.ID, Ladder: true})
			if len(r.Leaves) < 2 {
				assert.Empty(t, r.Ladder)
				continue
			}
			bass := 0.0
			for i, step := range r.Ladder {
				if testing.Verbose() {
					fmt.Printf("%s %-8s %-6s %-22s bass %.1f rating %.0f", s.Name, step.Rung, step.Where, step.Short+" "+step.Nominal, step.Bass.V, step.Rating.V)
					if step.Cost != nil {
						fmt.Printf(" cost %.0f", step.Cost.V)
					}
					fmt.Println()
				}
				if step.Where == "open" {
					continue
				}
				if i == 0 {
					assert.Equal(t, "bare", step.Rung)
					bass = step.Bass.V
					continue
				}
				bass += *step.Bass.Diff
				if step.Where == "here" {
					assert.InDelta(t, r.Yours.Bass.V, step.Bass.V, 1e-9)
					assert.InDelta(t, r.Yours.Bass.V, bass, 1e-9)
					assert.Equal(t, r.Yours.Rating.V, step.Rating.V)
				}
			}
			require.NotEmpty(t, r.Ladder)
			assert.False(t, math.IsNaN(bass))
		}
	}
}
