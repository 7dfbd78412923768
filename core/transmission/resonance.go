package transmission

import (
	"math"

	"twoleaf/core/assembly"
	"twoleaf/core/unit"
)

// Resonances returns the mass-air-mass resonances of a build-up, lowest first,
// one fewer than leaves: the roots of
//
//	det|K − ω²M| = 0,  Kii = s(i−1) + si,  Ki,i+1 = −si
//
// with the spring of each gap per area, N/m³, air adiabatic and fill
// isothermal, in series, and what points or lines beside it add:
//
//	s = 1/[d·((1−a)/γP0 + a/P0)] + n/(1/K + Σ leaves' own compliance)
//
// For two leaves f = (1/2π)·√[s(1/m1 + 1/m2)]. Springs of rigid frames are left
// out: with them the leaves move as one.
func Resonances(b assembly.BuildUp) []unit.Frequency {
	n := len(b.Leaves)
	if n < 2 || n > maxLeaves || len(b.Gaps) != n-1 {
		return nil
	}
	c := Defaults()
	var leaves [maxLeaves]leaf
	for i, l := range b.Leaves {
		leaves[i] = newLeaf(l, &c)
		if !(leaves[i].mass > 0) {
			return nil
		}
	}
	// √M⁻¹·K·√M⁻¹, symmetric and tridiagonal.
	var diag, off [maxLeaves]float64
	for i := range b.Gaps {
		g := &b.Gaps[i]
		v := newCavity(g, &leaves[i], &leaves[i+1], &c)
		s := 1 / (v.depth*((1-v.filled)/(adiabat*p0)+v.filled/p0) + v.face/p0)
		found, k := bridges(&b, i, leaves[:n], &c)
		for _, r := range found[:k] {
			if added := r.density * r.still(&leaves[i], &leaves[i+1]); added < s {
				s += added
			}
		}
		if !(s > 0) || math.IsInf(s, 0) {
			return nil
		}
		diag[i] += s / leaves[i].mass
		diag[i+1] += s / leaves[i+1].mass
		off[i] = -s / math.Sqrt(leaves[i].mass*leaves[i+1].mass)
	}
	roots := eigenvalues(diag[:n], off[:n-1])
	out := make([]unit.Frequency, 0, n-1)
	for _, x := range roots[1:] { // the first is 0: all leaves together
		out = append(out, unit.Frequency(math.Sqrt(max(x, 0))/(2*pi)))
	}
	return out
}

// still returns the stiffness at low frequency of the springs in series with
// the leaves they pull at: a bay clamped at its lines, b′³/720B each, or a plate
// on a grid of points, 0.0058/Bn.
func (b *bridge) still(near, far *leaf) float64 {
	soft := 0.0
	for _, s := range b.springs[:b.n] {
		soft += 1 / s.stiffness
	}
	for _, f := range [...]*leaf{near, far} {
		if b.hold.point {
			soft += 0.0058 / (f.stiff * b.density)
			continue
		}
		bay := b.hold.bay * b.hold.spacing
		soft += bay * bay * bay / (720 * f.stiff)
	}
	return 1 / soft
}

// eigenvalues of a symmetric tridiagonal matrix, rising, by bisection on how
// many pivots of A − x are negative (Sturm).
func eigenvalues(diag, off []float64) []float64 {
	top := 0.0
	for i, d := range diag {
		r := math.Abs(d)
		if i > 0 {
			r += math.Abs(off[i-1])
		}
		if i < len(off) {
			r += math.Abs(off[i])
		}
		top = max(top, r)
	}
	below := func(x float64) (count int) {
		p := 1.0
		for i, d := range diag {
			o := 0.0
			if i > 0 {
				o = off[i-1] * off[i-1] / p
			}
			if p = d - x - o; p == 0 {
				p = -top * 1e-18
			}
			if p < 0 {
				count++
			}
		}
		return count
	}
	roots := make([]float64, len(diag))
	for i := range roots {
		lo, hi := 0.0, top
		for range 100 {
			mid := (lo + hi) / 2
			if below(mid) > i {
				hi = mid
			} else {
				lo = mid
			}
		}
		roots[i] = (lo + hi) / 2
	}
	return roots
}
