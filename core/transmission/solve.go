package transmission

import "twoleaf/core/assembly"

const (
	maxLeaves  = assembly.MaxLeaves
	maxGaps    = maxLeaves - 1
	maxBridges = 2 * maxGaps
)

// wall is a build-up on a grid, ready to be solved.
type wall struct {
	s         *shared
	n         int // leaves
	leaves    [maxLeaves]leaf
	told      [maxLeaves]*leafTable
	gap       [maxGaps][][4]float64
	size      *size
	nb        int
	bridges   [maxBridges]bridge
	near, far [maxBridges]*held
	perimeter perimeter
	constants *Constants
}

// port is a symmetric two-port: what it adds to the diagonal of the leaf on
// its near and far side, and what it takes from the element between them.
type port struct{ aa, ab, bb complex128 }

// spread2 is a Hermitian 2×2 mean of products of two velocities or forces.
type spread2 struct {
	aa, bb float64
	ab     complex128 // <a·b*>
}

// under returns S·C·Sᴴ of a port with S = [[aa, −ab], [−ab, bb]].
func (s port) under(c spread2) spread2 {
	a, b, d := s.aa, -s.ab, s.bb
	// Rows of S·C.
	ca := conj(c.ab)
	x0, x1 := a*complex(c.aa, 0)+b*ca, a*c.ab+b*complex(c.bb, 0)
	y0, y1 := b*complex(c.aa, 0)+d*ca, b*c.ab+d*complex(c.bb, 0)
	return spread2{
		aa: real(x0*conj(a) + x1*conj(b)),
		bb: real(y0*conj(b) + y1*conj(d)),
		ab: x0*conj(b) + x1*conj(d),
	}
}

// heard returns the mean of |hᵀf|² for independent h and f.
func heard(h, f spread2) float64 {
	return h.aa*f.aa + h.bb*f.bb + 2*real(h.ab*f.ab)
}

func conj(z complex128) complex128 { return complex(real(z), -imag(z)) }

// field is what one frequency's directions sum to.
type field struct {
	coherent float64
	source   [maxGaps]spread2 // of 2×2 columns of A⁻¹ from the incident side, at the leaves of each gap
	receiver [maxGaps]spread2 // the same from the receiving side
	// cross[g][h]: mean of products of the elements of A⁻¹ between the leaves
	// of gaps g < h, weighted with μ; element index 2·(leaf of h) + (leaf of g).
	cross [maxGaps][maxGaps]spread4
}

// spread4 is a Hermitian 4×4 mean of products; only what lies above the
// diagonal, and the diagonal, are kept.
type spread4 struct {
	same [4]float64
	over [4][4]complex128
}

func (s *spread4) add(weight float64, a, b, c, d complex128) {
	x := [4]complex128{a, b, c, d}
	for p := range 4 {
		s.same[p] += weight * norm(x[p])
		y := complex(weight*real(x[p]), weight*imag(x[p]))
		for r := p + 1; r < 4; r++ {
			s.over[p][r] += y * conj(x[r])
		}
	}
}

func (s *spread4) at(p, r int) complex128 {
	switch {
	case p == r:
		return complex(s.same[p], 0)
	case p < r:
		return s.over[p][r]
	}
	return conj(s.over[r][p])
}

// transmission returns the transmission coefficient at frequency j of the
// grid: that of the uniform motion, through gaps and bridges alike, and that of
// the bridges' own waves.
func (w *wall) transmission(j int, f *field) (uniform, bridged float64) {
	hz := w.s.hz[j]
	if w.n == 1 {
		return 8 * airSpeed * airSpeed * w.single(j), 0
	}
	omega := 2 * pi * hz
	var smeared [maxGaps]port
	var ports [maxBridges]port
	for i := range w.nb {
		b := &w.bridges[i]
		k := b.stiffness(w.s.grid, j)
		fade := w.s.fade[j]
		p := &ports[i]
		p.aa, p.ab, p.bb = force(omega, w.near[i].firm[j], w.far[i].firm[j], k, b.loss, b.near*fade, b.far*fade)
		d := complex(b.density, 0)
		m := &smeared[b.gap]
		m.aa += d * p.aa
		m.ab += d * p.ab
		m.bb += d * p.bb
	}
	if w.n == 2 {
		w.two(j, &smeared[0], f)
	} else {
		w.many(j, &smeared, f)
	}
	uniform = 8 * airSpeed * airSpeed * f.coherent * w.perimeter.keeps(omega, w.stiffness(j))
	for i := range w.nb {
		r := 1 + w.near[i].free[j]
		bridged += 8 * airSpeed * w.along(j, i, 1, 1, r, f.source[w.bridges[i].gap], &ports, f)
	}
	return uniform, bridged
}

// stiffness returns the sum of the leaves' stiffnesses for free waves, N·m.
func (w *wall) stiffness(j int) float64 {
	b := 0.0
	for i := range w.n {
		b += w.told[i].stiff[j]
	}
	return b
}

// along returns the sound power that bridge i radiates, and those that follow
// it, per unit of (2·incident pressure)²: v is the spread of the velocities
// that drive it, chain what came before in strength, open and free the shares
// of its motion that directions and free waves carry.
func (w *wall) along(j, i int, chain, open, free float64, v spread2, ports *[maxBridges]port, f *field) float64 {
	b := &w.bridges[i]
	hz := w.s.hz[j]
	k0 := 2 * pi * hz / c0
	forces := ports[i].under(v)
	chain *= b.density
	open *= w.opening(i, j)
	// Power radiated per unit of mean square force: a line among like lines of
	// any phase along it, a point; velocities that it sets off where the next bridge is.
	radiated, carried := airSpeed*k0/2, k0/2
	if b.hold.point {
		radiated, carried = airSpeed*k0*k0/(2*pi), k0*k0/(2*pi)
	}
	share := open + free*(1+w.far[i].free[j]) - 1
	power := chain * radiated * share * heard(f.receiver[b.gap], forces)
	for l := i + 1; l < w.nb; l++ {
		next := &w.bridges[l]
		if next.gap == b.gap {
			continue
		}
		between := (1 + w.far[i].free[j]) * (1 + w.near[l].free[j])
		if next.gap == b.gap+1 { // both on one leaf, whose free waves carry once
			between = 1 + (w.far[i].free[j]+w.near[l].free[j])/2
		}
		velocities := carry(&f.cross[b.gap][next.gap], forces)
		power += w.along(j, l, chain*carried, open, free*between, velocities, ports, f)
	}
	return power
}

// opening returns the share of a bridge's motion beside the uniform one that
// can radiate: harmonics 2πn/b that lie within k0, and more of them along the
// line where screws act one by one.
//
//	w = 1/[1 + (c0/2bf)²]·{1 + max(a·k0/π − 1, 0)·D}
func (w *wall) opening(i, j int) float64 {
	b := &w.bridges[i]
	hz := w.s.hz[j]
	x := c0 * b.density / (2 * hz)
	x *= x
	if b.hold.point {
		x = c0 * c0 * b.density / (4 * hz * hz)
	}
	o := 1 / (1 + x)
	if a := b.hold.pitch * 2 * hz / c0; a > 1 {
		o *= 1 + (a-1)*(w.near[i].rows[j]+w.far[i].rows[j])/2
	}
	return o
}

// carry returns the spread of velocities at one bridge that the spread of
// forces at another makes.
func carry(cross *spread4, f spread2) spread2 {
	forces := [2][2]complex128{{complex(f.aa, 0), f.ab}, {conj(f.ab), complex(f.bb, 0)}}
	var v [2][2]complex128
	for a := range 2 {
		for c := range 2 {
			for b := range 2 {
				for d := range 2 {
					v[a][c] += cross.at(2*a+b, 2*c+d) * forces[b][d]
				}
			}
		}
	}
	return spread2{real(v[0][0]), real(v[1][1]), v[0][1]}
}

// single returns ∫σ/|A|²dμ of one leaf.
func (w *wall) single(j int) float64 {
	z, sum := w.told[0].z, 0.0
	for i := w.s.first[j]; i < w.s.first[j+1]; i++ {
		re, im := z[i][0]+2*airSpeed*w.size.sigma[i], z[i][1]
		sum += w.size.radiated[i] / (re*re + im*im)
	}
	return sum
}

// two sums over the directions of one frequency for two leaves: A is inverted
// by hand, with one division.
func (w *wall) two(j int, b *port, f *field) {
	from, to := w.s.first[j], w.s.first[j+1]
	weight := w.s.weight[from:to]
	n := len(weight) // said of each slice, so that the loop need not ask
	z1, z2, gap := w.told[0].z[from:to][:n], w.told[1].z[from:to][:n], w.gap[0][from:to][:n]
	sigma, radiated := w.size.sigma[from:to][:n], w.size.radiated[from:to][:n]
	aar, aai, abr, abi, bbr, bbi := real(b.aa), imag(b.aa), real(b.ab), imag(b.ab), real(b.bb), imag(b.bb)
	var coherent, s11, s22, sr, si, r11, r22, rr, ri float64
	for i := range weight {
		load := airSpeed * sigma[i]
		g, p, q := &gap[i], &z1[i], &z2[i]
		// A = [[x, −y], [−y, u]]
		zar, zai := load+g[0], g[1]
		xr, xi := p[0]+zar+aar, p[1]+zai+aai
		ur, ui := q[0]+zar+bbr, q[1]+zai+bbi
		yr, yi := g[2]+abr, g[3]+abi
		yy := yr*yr + yi*yi
		detr := xr*ur - xi*ui - yr*yr + yi*yi
		deti := xr*ui + xi*ur - 2*yr*yi
		per := 1 / (detr*detr + deti*deti)
		coherent += radiated[i] * yy * per
		share := weight[i] * per
		yy *= share
		// Columns (u, y)/det of the source, (y, x)/det of the receiver.
		s11 += share * (ur*ur + ui*ui)
		s22 += yy
		sr += share * (ur*yr + ui*yi)
		si += share * (ui*yr - ur*yi)
		r22 += share * (xr*xr + xi*xi)
		rr += share * (yr*xr + yi*xi)
		ri += share * (yi*xr - yr*xi)
	}
	r11 = s22
	f.coherent = coherent
	f.source[0] = spread2{s11, s22, complex(sr, si)}
	f.receiver[0] = spread2{r11, r22, complex(rr, ri)}
}

// many sums over the directions of one frequency for three or four leaves. A
// is symmetric and tridiagonal with elements −l beside its diagonal a; its
// leading and trailing minors give every element of its inverse with one
// division:
//
//	θi = ai·θi−1 − l²i−1·θi−2,  φi = ai·φi+1 − l²i·φi+2
//	A⁻¹ij = li·…·lj−1·θi−1·φj+1 / det A  (i ≤ j)
func (w *wall) many(j int, smeared *[maxGaps]port, f *field) {
	n := w.n
	var busy [maxGaps]bool
	for i := range w.nb {
		busy[w.bridges[i].gap] = true
	}
	f.coherent = 0
	for g := range n - 1 {
		f.source[g], f.receiver[g] = spread2{}, spread2{}
		for h := g + 1; h < n-1; h++ {
			f.cross[g][h] = spread4{}
		}
	}
	var a, l [maxLeaves]complex128            // l[k] is between leaves k and k+1
	var lead, trail [maxLeaves + 1]complex128 // minors of the first k, of the last n−k leaves
	var c [maxLeaves][maxLeaves]complex128    // A⁻¹·det A
	for i := w.s.first[j]; i < w.s.first[j+1]; i++ {
		load := complex(airSpeed*w.size.sigma[i], 0)
		for k := range n {
			a[k] = complex(w.told[k].z[i][0], w.told[k].z[i][1])
		}
		a[0] += load
		a[n-1] += load
		for k := range n - 1 {
			z := &w.gap[k][i]
			za := complex(z[0], z[1])
			a[k] += za + smeared[k].aa
			a[k+1] += za + smeared[k].bb
			l[k] = complex(z[2], z[3]) + smeared[k].ab
		}
		lead[0], lead[1] = 1, a[0]
		for k := 1; k < n; k++ {
			lead[k+1] = a[k]*lead[k] - l[k-1]*l[k-1]*lead[k-1]
		}
		trail[n], trail[n-1] = 1, a[n-1]
		for k := n - 2; k > 0; k-- {
			trail[k] = a[k]*trail[k+1] - l[k]*l[k]*trail[k+2]
		}
		for k := range n {
			x := lead[k]
			for m := k; m < n; m++ {
				if m > k {
					x *= l[m-1]
				}
				y := x * trail[m+1]
				c[k][m], c[m][k] = y, y
			}
		}
		per := 1 / norm(lead[n])
		f.coherent += w.size.radiated[i] * per * norm(c[0][n-1])
		weight := w.s.weight[i] * per
		for g := range n - 1 {
			if !busy[g] {
				continue
			}
			f.source[g].add(weight, c[g][0], c[g+1][0])
			f.receiver[g].add(weight, c[g][n-1], c[g+1][n-1])
			for h := g + 1; h < n-1; h++ {
				if busy[h] {
					f.cross[g][h].add(weight*w.s.mu[i], c[h][g], c[h][g+1], c[h+1][g], c[h+1][g+1])
				}
			}
		}
	}
}

func (s *spread2) add(weight float64, a, b complex128) {
	s.aa += weight * norm(a)
	s.bb += weight * norm(b)
	s.ab += complex(weight*real(a), weight*imag(a)) * conj(b)
}

// inverse returns 1/z without the library's care for infinities.
func inverse(z complex128) complex128 {
	q := 1 / norm(z)
	return complex(real(z)*q, -imag(z)*q)
}
