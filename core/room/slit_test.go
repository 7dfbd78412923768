package room

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func loss(tau float64) float64 { return -10 * math.Log10(tau) }

// Without viscosity the slit is the printed equation; the figures were computed
// from that equation by another program at 343 m/s, hence the shift of frequency.
func TestPrintedSlit(t *testing.T) {
	for _, c := range []struct{ w, d, f, want float64 }{
		{2, 100, 100, 4.30}, {2, 100, 250, 7.88}, {2, 100, 500, 9.75},
		{2, 100, 1000, 7.75}, {2, 100, 2000, 1.78}, {2, 100, 4000, 2.41},
		{1, 16, 125, -6.04}, {1, 16, 500, -0.44}, {1, 16, 2000, 4.54},
		{5, 45, 125, -3.29}, {5, 45, 500, 1.75}, {5, 45, 2000, 0.83},
	} {
		got := loss(slitAt(c.f*airSpeed/343, c.w/1000, c.d/1000, diffuse, inFace, 0))
		assert.InDelta(t, c.want, got, 0.05, "%v x %v mm at %v Hz", c.w, c.d, c.f)
	}
}
func TestPrintedHole(t *testing.T) {
	for _, c := range []struct{ a, d, f, want float64 }{
		{5, 16, 125, 10.79}, {5, 16, 500, 10.73}, {5, 16, 2000, 9.79},
		{25, 125, 125, 13.31}, {25, 125, 500, 10.14}, {25, 125, 1000, -7.86},
	} {
		got := loss(holeAt(c.f*airSpeed/343, c.a/1000, c.d/1000, 0))
		assert.InDelta(t, c.want, got, 0.05, "%v, %v mm at %v Hz", c.a, c.d, c.f)
	}
	assert.InDelta(t, 0.993, holeAt(50000, 0.02, 0.001, 0), 0.02)
}
