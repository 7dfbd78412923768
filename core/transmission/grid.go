package transmission

import (
	"math"

	"twoleaf/core/band"
)

// Accuracy chooses the grid of frequencies and directions.
type Accuracy int

const (
	// Ranking is for typing, comparing and searching.
	Ranking Accuracy = iota
	// Converged is for final figures and tests.
	Converged
)

// fineness is how many frequencies a band has, and how many directions each of
// them: spread over the half-space, spread in coincidence frequency over what
// boards have, and around each sharp coincidence, one of a smaller loss factor
// than dull. For final figures almost every board's is sharp.
type fineness struct {
	sub, spread, boards, sharp int
	dull                       float64
}

var finenesses = [...]fineness{
	Ranking:   {6, 5, 5, 4, 0.045},
	Converged: {9, 34, 10, 16, 0.13},
}

// Grid: one set of frequencies and directions for all build-ups, so that what
// is told of a leaf or a gap is computed once and the error of the sums is
// common to all. It is dense where boards have their coincidence, between
// boardsFrom and the frequency itself; only a leaf whose coincidence is sharper
// than that (masonry, panes, metal) adds directions of its own.
const (
	boardsFrom = 700.0 // Hz; thicker boards than any that is hung have theirs below
	gridArea   = 10.0  // m², whose grazing density the spread directions follow
)

// sharp is a coincidence that the grid has to know of: critical frequency, loss
// of the boards and of the edges, √(Bx/By), and B/Gs, by which shear moves it.
type sharp struct{ fc, loss, edge, ratio, thick float64 }

// before orders coincidences, so that a build-up turned about has the same grid.
func (s *sharp) before(o *sharp) bool {
	for _, p := range [...][2]float64{{s.fc, o.fc}, {s.loss, o.loss}, {s.edge, o.edge}, {s.ratio, o.ratio}, {s.thick, o.thick}} {
		if p[0] != p[1] {
			return p[0] < p[1]
		}
	}
	return false
}

// maxSharp is one for each leaf.
const maxSharp = 4

// gridKey names a grid: everything it depends on.
type gridKey struct {
	accuracy Accuracy
	n        int
	sharp    [maxSharp]sharp
}

// short leaves a number seven digits, so that a board of another weight, which
// has the same coincidence but for its last digit, has the same grid.
func short(x float64) float64 { return float64(float32(x)) }

// declare adds the coincidence of a leaf if it is sharp, sorted, each once.
func (k *gridKey) declare(f *leaf) {
	s := sharp{fc: short(critical(f.mass, f.stiff)), loss: short(f.loss), edge: short(f.edge), ratio: short(f.ratio), thick: short(f.stiff / f.shear)}
	if s.fc > 6000 || f.film.n > 0 {
		return // above all bands, or damped
	}
	if s.fc > boardsFrom && f.damping(max(s.fc, 31.5)) >= finenesses[k.accuracy].dull {
		return
	}
	at := k.n
	for i, o := range k.sharp[:k.n] {
		if o == s {
			return
		}
		if s.before(&o) {
			at = i
			break
		}
	}
	copy(k.sharp[at+1:k.n+1], k.sharp[at:k.n])
	k.sharp[at] = s
	k.n++
}

// grid is the nodes: frequencies band by band, and the directions of each.
type grid struct {
	bands                // whose nodes are placed
	key                  gridKey
	sub                  int       // frequencies of a band
	hz                   []float64 // of each frequency
	first                []int     // first node of each frequency, and the end
	mu, weight, kk, cos2 []float64 // cosθ, share of the diffuse field (Σ = 1), k0²sin²θ, cos²φ
	growth               [laws][]float64
	fade                 []float64 // of a frame's mass
}

// The golden ratio's and the plastic number's steps fill an interval evenly for any number of nodes.
const (
	golden  = 0.6180339887498949
	plastic = 0.7548776662466927
)

func frac(x float64) float64 { return x - math.Floor(x) }

// tenths are 10^(k/10), so that band frequencies have the same digits everywhere.
var tenths = [10]float64{
	1, 1.2589254117941673, 1.5848931924611136, 1.9952623149688795, 2.51188643150958,
	3.1622776601683795, 3.9810717055349722, 5.011872336272722, 6.309573444801933, 7.943282347242816,
}

// exact returns the exact mid-band frequency of band i, Hz (see band.Exact).
func exact(i int) float64 {
	f := tenths[(15+i)%10]
	for range (15 + i) / 10 {
		f *= 10
	}
	return f
}

func newGrid(key gridKey, c *Constants) *grid {
	fine := finenesses[key.accuracy]
	g := &grid{key: key, sub: fine.sub}
	const half = 0.23025850929940458 // ln of the ratio of a band's edges
	nodes := 0
	for b := range band.Count {
		for s := range fine.sub {
			hz := exact(b) * exp(half*((float64(s)+0.5)/float64(fine.sub)-0.5))
			g.hz = append(g.hz, hz)
			g.first = append(g.first, nodes)
			nodes += fine.spread + fine.boards
			for _, p := range key.sharp[:key.n] {
				if p.near(hz) {
					nodes += fine.sharp
				}
			}
		}
	}
	g.first = append(g.first, nodes)
	g.mu, g.weight, g.kk, g.cos2 = make([]float64, nodes), make([]float64, nodes), make([]float64, nodes), make([]float64, nodes)
	g.laws(c)
	return g
}

// near reports whether a coincidence is within reach of a frequency.
func (p *sharp) near(hz float64) bool { return hz > 0.95*p.fc }

// place sets the nodes of a stretch of frequencies: quantiles of a mixture of
// densities, so that each node stands for what its density says.
func (g *grid) place(first, last int) {
	fine, sharps := finenesses[g.key.accuracy], g.key.sharp[:g.key.n]
	for j := first; j < last; j++ {
		hz, s := g.hz[j], float64(j%g.sub)
		k0 := 2 * pi * hz / c0
		h := grazing(hz, gridArea)
		m := mixture{h: h, t: asinh(1 / h), spread: float64(fine.spread + fine.boards)}
		if hz > boardsFrom*1.05 {
			m.spread = float64(fine.spread)
			m.boards = float64(fine.boards)
			m.edge = boardsFrom / hz
			m.log = -ln(m.edge)
		}
		from, total := g.first[j], g.first[j+1]-g.first[j]
		offset := frac(0.5 + s*golden)
		sum, mu := 0.0, 0.0
		for i := range total {
			phi := pi / 2 * frac((float64(i)+0.5)*golden+s*plastic)
			cos := math.Cos(phi)
			m.cauchy(hz, cos*cos, float64(fine.sharp), sharps)
			mu = m.quantile((float64(i)+offset)/float64(total), mu)
			w := 1 / m.density(mu)
			sum += w
			g.mu[from+i], g.weight[from+i] = mu, w
			g.kk[from+i], g.cos2[from+i] = k0*k0*(1-mu*mu), cos*cos
		}
		for i := range total {
			g.weight[from+i] /= sum
		}
	}
}

// mixture is a density over μ in (0, 1), not yet divided by its whole.
type mixture struct {
	spread, h, t      float64 // grazing density 1/T√(μ²+h²)
	boards, edge, log float64 // even in ln F, F = f·sin²θ from boardsFrom
	n                 int
	peaks             [maxSharp]struct{ share, mid, half, low, norm float64 }
}

// cauchy sets the peaks at the coincidence angles at one azimuth.
func (m *mixture) cauchy(hz, cos2, share float64, sharps []sharp) {
	m.n = 0
	for _, p := range sharps {
		if !p.near(hz) {
			continue
		}
		// Where B·k⁴/(1 + B·k²/Gs) = ω²m: shear moves that of a thick plate towards grazing.
		o := orthotropy(p.ratio, cos2)
		fc := p.fc / math.Sqrt(o)
		k0 := 2 * pi * hz / c0
		y := k0 * k0 * fc / hz * p.thick * o / 2
		fc *= y + math.Sqrt(y*y+1)
		c := &m.peaks[m.n]
		m.n++
		c.share = share
		c.mid = math.Sqrt(max(1-fc/hz, 0))
		c.half = (p.loss + p.edge*math.Sqrt(100/hz)) * fc / (4 * hz * max(c.mid, 0.15))
		c.low = math.Atan(-c.mid / c.half)
		c.norm = math.Atan((1-c.mid)/c.half) - c.low
	}
}

func (m *mixture) density(mu float64) float64 {
	d := m.spread / (m.t * math.Sqrt(mu*mu+m.h*m.h))
	if m.boards > 0 && 1-mu*mu > m.edge {
		d += m.boards * 2 * mu / ((1 - mu*mu) * m.log)
	}
	for _, c := range m.peaks[:m.n] {
		x := (mu - c.mid) / c.half
		d += c.share / (c.norm * c.half * (1 + x*x))
	}
	return d
}

func (m *mixture) below(mu float64) float64 {
	p := m.spread * asinh(mu/m.h) / m.t
	if m.boards > 0 {
		p += m.boards * min(-ln(max(1-mu*mu, m.edge))/m.log, 1)
	}
	for _, c := range m.peaks[:m.n] {
		p += c.share * (math.Atan((mu-c.mid)/c.half) - c.low) / c.norm
	}
	return p
}

// quantile returns the μ below which a share u lies, by Newton steps kept in a
// bracket, from the one found before.
func (m *mixture) quantile(u, from float64) float64 {
	lo, hi, mu := 0.0, 1.0, from
	want := u * m.below(1)
	for range 60 {
		e := m.below(mu) - want
		if e > 0 {
			hi = mu
		} else {
			lo = mu
		}
		next := mu - e/m.density(mu)
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		if math.Abs(next-mu) < 1e-10 {
			return next
		}
		mu = next
	}
	return mu
}
