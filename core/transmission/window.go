package transmission

import "math"

// Finite size: a face of area S radiates and takes up sound at grazing angles
// less than an infinite one.
//
//	σ(μ) = 1/√(μ²+h²),  μ = cosθ,  x = k0√S
//	1/h = max( sinh(½(ln x + 0.16)), min(x²/2π, 0.4) )
//
// so that ∫σdμ = asinh(1/h) = ½(ln x + 0.16) is the diffuse forced radiation of
// a square (Sewell 1970), and the floor keeps σ from vanishing below some 40 Hz.

// grazing returns h at a frequency for an area, m².
func grazing(hz, area float64) float64 {
	x := 2 * pi * hz / c0 * math.Sqrt(area)
	return 1 / max(sinh((ln(x)+0.16)/2), min(x*x/(2*pi), 0.4))
}

// size holds σ at every node of a grid for one area, and the node's share of
// the diffuse field times σ, made to sum to ∫σdμ exactly.
type size struct {
	bands
	sigma, radiated []float64
}

func (s *size) fill(g *grid, area float64, first, last int) {
	for j := first; j < last; j++ {
		h := grazing(g.hz[j], area)
		sum := 0.0
		for i := g.first[j]; i < g.first[j+1]; i++ {
			s.sigma[i] = 1 / math.Sqrt(g.mu[i]*g.mu[i]+h*h)
			s.radiated[i] = g.weight[i] * s.sigma[i]
			sum += s.radiated[i]
		}
		whole := asinh(1/h) / sum
		for i := g.first[j]; i < g.first[j+1]; i++ {
			s.radiated[i] *= whole
		}
	}
}
