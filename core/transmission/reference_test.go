package transmission

import (
	"math"
	"math/cmplx"
	"testing"

	"github.com/stretchr/testify/assert"

	"twoleaf/core/assembly"
	"twoleaf/core/band"
)

// plainLoss is the method written as its equations stand: complex numbers, a
// whole matrix inverted by elimination, means over directions taken over every
// pair and triple of them, nothing kept. It shares the leaves, gaps and bridges
// with the package and checks how they are put together and summed.
func plainLoss(b assembly.BuildUp, from, to int) band.Spectrum {
	c := Defaults()
	var w wall
	w.prepare(&b, Options{To: band.Count}, newTables(c))
	g := w.s.grid
	var r band.Spectrum
	for i := from; i < to; i++ {
		tau := 0.0
		for j := i * g.sub; j < (i+1)*g.sub; j++ {
			tau += plainTau(&w, j) + w.plateau(&b, g.hz[j])
		}
		r[i] = -10 * math.Log10(math.Min(tau/float64(g.sub)+w.leaks(&b), 1))
	}
	return r
}

func plainTau(w *wall, j int) float64 {
	g, hz := w.s.grid, w.s.hz[j]
	omega, k0, n := 2*math.Pi*hz, 2*math.Pi*hz/c0, w.n
	// Force matrix of every bridge.
	s := make([][2][2]complex128, w.nb)
	for i := range w.nb {
		br := &w.bridges[i]
		k := complex(br.stiffness(g, j), 0) * complex(1, br.loss)
		ya, yb := 1/w.near[i].firm[j], 1/w.far[i].firm[j]
		kappa := k / complex(0, omega)
		d1 := 1/ya + complex(0, omega*br.near*g.fade[j])
		d2 := 1/yb + complex(0, omega*br.far*g.fade[j])
		d := d1*d2 + kappa*(d1+d2)
		s[i] = [2][2]complex128{
			{1/ya - (d2+kappa)/(ya*ya*d), -kappa / (ya * yb * d)},
			{-kappa / (ya * yb * d), 1/yb - (d1+kappa)/(yb*yb*d)},
		}
	}
	var inv [][][]complex128
	coherent := 0.0
	for p := g.first[j]; p < g.first[j+1]; p++ {
		a := make([][]complex128, n)
		for k := range n {
			a[k] = make([]complex128, n)
			a[k][k] = complex(w.told[k].z[p][0], w.told[k].z[p][1])
		}
		a[0][0] += complex(airSpeed*w.size.sigma[p], 0)
		a[n-1][n-1] += complex(airSpeed*w.size.sigma[p], 0)
		for k := range n - 1 {
			za, zb := complex(w.gap[k][p][0], w.gap[k][p][1]), complex(w.gap[k][p][2], w.gap[k][p][3])
			a[k][k] += za
			a[k+1][k+1] += za
			a[k][k+1] -= zb
			a[k+1][k] -= zb
		}
		for i := range w.nb {
			k, d := w.bridges[i].gap, complex(w.bridges[i].density, 0)
			for x := range 2 {
				for y := range 2 {
					a[k+x][k+y] += d * s[i][x][y]
				}
			}
		}
		m := invert(a)
		inv = append(inv, m)
		coherent += w.size.radiated[p] * norm(m[n-1][0])
	}
	b := 0.0
	for k := range n {
		b += w.told[k].stiff[j]
	}
	tau := 8 * airSpeed * airSpeed * coherent * w.perimeter.keeps(omega, b)
	weight := g.weight[g.first[j]:g.first[j+1]]
	mu := g.mu[g.first[j]:g.first[j+1]]
	// column returns what a unit pressure on one face does at a bridge.
	at := func(p, leaf, gap int) [2]complex128 { return [2]complex128{inv[p][gap][leaf], inv[p][gap+1][leaf]} }
	radiated := func(i int) float64 {
		if w.bridges[i].hold.point {
			return airSpeed * k0 * k0 / (2 * math.Pi)
		}
		return airSpeed * k0 / 2
	}
	carried := func(i int) float64 { return radiated(i) / airSpeed }
	mul := func(m [2][2]complex128, v [2]complex128) [2]complex128 {
		return [2]complex128{m[0][0]*v[0] + m[0][1]*v[1], m[1][0]*v[0] + m[1][1]*v[1]}
	}
	dot := func(a, b [2]complex128) complex128 { return a[0]*b[0] + a[1]*b[1] }
	for i := range w.nb {
		gi := w.bridges[i].gap
		power := 0.0
		for p := range weight {
			force := mul(s[i], at(p, 0, gi))
			for q := range weight {
				power += weight[p] * weight[q] * norm(dot(at(q, n-1, gi), force))
			}
		}
		share := w.opening(i, j) + (1+w.near[i].free[j])*(1+w.far[i].free[j]) - 1
		tau += 8 * airSpeed * w.bridges[i].density * radiated(i) * share * power
		for l := i + 1; l < w.nb; l++ {
			gl := w.bridges[l].gap
			if gl == gi {
				continue
			}
			power := 0.0
			for p := range weight {
				force := mul(s[i], at(p, 0, gi))
				for q := range weight {
					velocity := [2]complex128{
						inv[q][gl][gi]*force[0] + inv[q][gl][gi+1]*force[1],
						inv[q][gl+1][gi]*force[0] + inv[q][gl+1][gi+1]*force[1],
					}
					next := mul(s[l], velocity)
					for r := range weight {
						power += weight[p] * weight[q] * mu[q] * weight[r] * norm(dot(at(r, n-1, gl), next))
					}
				}
			}
			middle := (1 + w.far[i].free[j]) * (1 + w.near[l].free[j])
			if gl == gi+1 {
				middle = 1 + (w.far[i].free[j]+w.near[l].free[j])/2
			}
			share := w.opening(i, j)*w.opening(l, j) + (1+w.near[i].free[j])*middle*(1+w.far[l].free[j]) - 1
			tau += 8 * airSpeed * w.bridges[i].density * carried(i) * w.bridges[l].density * radiated(l) * share * power
		}
	}
	return tau
}

// invert by Gauss and Jordan, largest pivot first.
func invert(a [][]complex128) [][]complex128 {
	n := len(a)
	out := make([][]complex128, n)
	for i := range n {
		out[i] = make([]complex128, n)
		out[i][i] = 1
	}
	for k := range n {
		best := k
		for i := k; i < n; i++ {
			if cmplx.Abs(a[i][k]) > cmplx.Abs(a[best][k]) {
				best = i
			}
		}
		a[k], a[best] = a[best], a[k]
		out[k], out[best] = out[best], out[k]
		p := a[k][k]
		for c := range n {
			a[k][c] /= p
			out[k][c] /= p
		}
		for i := range n {
			if i == k {
				continue
			}
			f := a[i][k]
			for c := range n {
				a[i][c] -= f * a[k][c]
				out[i][c] -= f * out[k][c]
			}
		}
	}
	return out
}

// TestReference: the fast sums agree with the plain ones to 1e-9 dB, for walls
// of one to three leaves (chains over three bridges are left to reciprocity).
func TestReference(t *testing.T) {
	for name, b := range zoo(t) {
		if len(b.Leaves) > 3 {
			continue
		}
		from, to := 0, band.Count
		if len(b.Leaves) > 2 {
			from, to = 5, 8 // triple sums take their time
		}
		want, got := plainLoss(b, from, to), loss(t, b, Options{From: from, To: to}, nil)
		for i := from; i < to; i++ {
			assert.InDelta(t, want[i], got[i], 1e-9, "%s, %v Hz", name, band.Nominal[i])
		}
	}
}
