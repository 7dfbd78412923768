package transmission

import "twoleaf/core/band"

// Tables keep what has been worked out for single leaves and gaps, so that
// build-ups that share them are cheap. The caller owns them, one for each
// worker; they are bounded, and nil gives the same digits.
type Tables struct {
	constants Constants
	grids     map[gridKey]*shared
	held      int // numbers kept
}

// capacity is how many numbers Tables keep before they start afresh: 10 MB.
const capacity = 1_200_000

// NewTables returns empty tables.
func NewTables() *Tables { return newTables(Defaults()) }

func newTables(c Constants) *Tables {
	return &Tables{constants: c, grids: map[gridKey]*shared{}}
}

// shared is a grid and what is known on it.
type shared struct {
	*grid
	leaves map[leaf]*leafTable
	gaps   map[cavity]*gapTable
	holds  map[holdKey]*held
	sizes  map[float64]*size
}

type holdKey struct {
	leaf leaf
	hold hold
}

// bands marks which bands of a table are worked out: only those asked for.
type bands [band.Count]bool

// missing calls fill with the frequencies of each band of a stretch that is not there yet.
func (b *bands) missing(g *grid, from, to int, fill func(first, last int)) {
	for i := from; i < to; i++ {
		if !b[i] {
			b[i] = true
			fill(i*g.sub, (i+1)*g.sub)
		}
	}
}

// leafTable is a leaf's impedance at every node, real and imaginary part, and at
// every frequency the mean of |ωm/Z|² and the stiffness for free waves.
type leafTable struct {
	bands
	z           [][2]float64
	near, stiff []float64
}

// gapTable is a gap's Za and Zb at every node, real and imaginary part of each.
type gapTable struct {
	bands
	z [][4]float64
}

// room starts afresh when there is too much. It is called between build-ups only.
func (t *Tables) room() {
	if t.held > capacity {
		t.grids, t.held = map[gridKey]*shared{}, 0
	}
}

func (t *Tables) grid(key gridKey, from, to int) *shared {
	s, ok := t.grids[key]
	if !ok {
		s = &shared{newGrid(key, &t.constants), map[leaf]*leafTable{}, map[cavity]*gapTable{}, map[holdKey]*held{}, map[float64]*size{}}
		t.grids[key] = s
		t.held += 4*len(s.mu) + 6*len(s.hz)
	}
	s.missing(s.grid, from, to, s.place)
	return s
}

func (t *Tables) leaf(s *shared, f *leaf, from, to int) *leafTable {
	l, ok := s.leaves[*f]
	if !ok {
		l = &leafTable{z: make([][2]float64, len(s.mu)), near: make([]float64, len(s.hz)), stiff: make([]float64, len(s.hz))}
		s.leaves[*f] = l
		t.held += 2*len(l.z) + 2*len(l.near)
	}
	l.missing(s.grid, from, to, func(first, last int) { l.fill(s.grid, f, first, last) })
	return l
}

func (l *leafTable) fill(g *grid, f *leaf, first, last int) {
	for j := first; j < last; j++ {
		hz := g.hz[j]
		inertia := 2 * pi * hz * f.mass
		sum := 0.0
		for i := g.first[j]; i < g.first[j+1]; i++ {
			z := f.impedance(hz, g.kk[i], g.cos2[i])
			l.z[i] = [2]float64{real(z), imag(z)}
			sum += g.weight[i] * inertia * inertia / norm(z)
		}
		l.near[j] = max(sum, 1)
		l.stiff[j], _ = f.free(hz)
	}
}

func (t *Tables) gap(s *shared, v *cavity, from, to int) *gapTable {
	g, ok := s.gaps[*v]
	if !ok {
		g = &gapTable{z: make([][4]float64, len(s.mu))}
		s.gaps[*v] = g
		t.held += 4 * len(g.z)
	}
	g.missing(s.grid, from, to, func(first, last int) { g.fill(s.grid, v, first, last) })
	return g
}

func (t *gapTable) fill(g *grid, v *cavity, first, last int) {
	for j := first; j < last; j++ {
		hz := g.hz[j]
		fluid, across := v.fluid(hz), v.closed.across(hz)
		for i := g.first[j]; i < g.first[j+1]; i++ {
			c2 := g.cos2[i]
			za, zb := fluid.impedances(hz, v.depth, g.kk[i]*(c2+across*(1-c2)))
			t.z[i] = [4]float64{real(za), imag(za), real(zb), imag(zb)}
		}
	}
}

func (t *Tables) hold(s *shared, l *leafTable, f *leaf, h *hold, from, to int) *held {
	k := holdKey{*f, *h}
	x, ok := s.holds[k]
	if !ok {
		n := len(s.hz)
		x = &held{firm: make([]complex128, n), free: make([]float64, n), rows: make([]float64, n)}
		s.holds[k] = x
		t.held += 4 * n
	}
	x.missing(s.grid, from, to, func(first, last int) { x.fill(s.grid, f, h, l.near, &t.constants, first, last) })
	return x
}

func (t *Tables) size(s *shared, area float64, from, to int) *size {
	z, ok := s.sizes[area]
	if !ok {
		z = &size{sigma: make([]float64, len(s.mu)), radiated: make([]float64, len(s.mu))}
		s.sizes[area] = z
		t.held += 2 * len(s.mu)
	}
	z.missing(s.grid, from, to, func(first, last int) { z.fill(s.grid, area, first, last) })
	return z
}
