package transmission

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"twoleaf/core/band"
)

// TestConverged: twice as many frequencies and directions move no band below 60 dB by more than 0.3 dB.
func TestConverged(t *testing.T) {
	was := finenesses[Converged]
	t.Cleanup(func() { finenesses[Converged] = was })
	for name, b := range varied(t) {
		finenesses[Converged] = was
		once := loss(t, b, Options{Accuracy: Converged}, nil)
		finer := was
		finer.sub, finer.spread, finer.boards, finer.sharp = 2*was.sub, 2*was.spread, 2*was.boards, 2*was.sharp
		finenesses[Converged] = finer
		twice := loss(t, b, Options{Accuracy: Converged}, nil)
		for i := range once {
			if once[i] < 60 {
				assert.LessOrEqual(t, math.Abs(twice[i]-once[i]), 0.3, "%s, %v Hz", name, band.Nominal[i])
			}
		}
	}
}
