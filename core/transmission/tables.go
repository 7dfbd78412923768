package transmission

// Tables keep what has been worked out for single leaves and gaps, so that
// build-ups that share them are cheap. The caller owns them, one for each
// worker; they are bounded, and nil gives the same digits.
type Tables struct {
	constants Constants
	grids     map[gridKey]*shared
	held      int // numbers kept
}

// capacity is how many numbers Tables keep before they start afresh: 16 MB.
const capacity = 2_000_000

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

// leafTable is a leaf's impedance at every node, real and imaginary part in
// turn, and the mean of |ωm/Z|² at every frequency.
type leafTable struct{ z, near []float64 }

// gapTable is a gap's Za and Zb at every node, four numbers each.
type gapTable struct{ z []float64 }

func (t *Tables) count(n int) { t.held += n }

// room starts afresh when there is too much. It is called between build-ups only.
func (t *Tables) room() {
	if t.held > capacity {
		t.grids, t.held = map[gridKey]*shared{}, 0
	}
}

func (t *Tables) grid(key gridKey) *shared {
	s, ok := t.grids[key]
	if !ok {
		s = &shared{newGrid(key, &t.constants), map[leaf]*leafTable{}, map[cavity]*gapTable{}, map[holdKey]*held{}, map[float64]*size{}}
		t.grids[key] = s
		t.count(5 * len(s.mu))
	}
	return s
}

func (t *Tables) leaf(s *shared, f leaf) *leafTable {
	if l, ok := s.leaves[f]; ok {
		return l
	}
	l := &leafTable{make([]float64, 2*len(s.mu)), make([]float64, len(s.hz))}
	for j, hz := range s.hz {
		inertia := 2 * pi * hz * f.mass
		for i := s.first[j]; i < s.first[j+1]; i++ {
			z := f.impedance(hz, s.kk[i], s.cos2[i])
			l.z[2*i], l.z[2*i+1] = real(z), imag(z)
			l.near[j] += s.weight[i] * inertia * inertia / norm(z)
		}
		l.near[j] = max(l.near[j], 1)
	}
	s.leaves[f] = l
	t.count(len(l.z) + len(l.near))
	return l
}

func (t *Tables) gap(s *shared, v cavity) *gapTable {
	if g, ok := s.gaps[v]; ok {
		return g
	}
	g := &gapTable{make([]float64, 4*len(s.mu))}
	for j, hz := range s.hz {
		fluid, across := v.fluid(hz), v.closed.across(hz)
		for i := s.first[j]; i < s.first[j+1]; i++ {
			c2 := s.cos2[i]
			za, zb := fluid.impedances(hz, v.depth, s.kk[i]*(c2+across*(1-c2)))
			g.z[4*i], g.z[4*i+1], g.z[4*i+2], g.z[4*i+3] = real(za), imag(za), real(zb), imag(zb)
		}
	}
	s.gaps[v] = g
	t.count(len(g.z))
	return g
}

func (t *Tables) hold(s *shared, f leaf, h hold) *held {
	k := holdKey{f, h}
	if l, ok := s.holds[k]; ok {
		return l
	}
	l := newHeld(s.grid, &f, h, t.leaf(s, f).near, &t.constants)
	s.holds[k] = l
	t.count(4 * len(s.hz))
	return l
}

func (t *Tables) size(s *shared, area float64) *size {
	if z, ok := s.sizes[area]; ok {
		return z
	}
	z := newSize(s.grid, area)
	s.sizes[area] = z
	t.count(2 * len(s.mu))
	return z
}
