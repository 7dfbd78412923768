package load

// A run of channel is a beam over its clips: rigid supports, one section all
// along, ends free beyond the outer clips. Loads are masses [kg], lengths m,
// moments kg·m; times standard gravity they are forces. Sagging moments are positive.

// spread is an even load on a stretch of the beam, kg/m.
type spread struct{ from, to, w float64 }

// lump is a load at one place of the beam, kg.
type lump struct{ at, m float64 }

// beam is supports in rising order and what lies on it.
type beam struct {
	at      []float64
	spreads []spread
	lumps   []lump
	// solved
	react, moment []float64
}

// solve finds the reactions and the moments over the supports by the theorem
// of three moments,
//
//	Mi−1·li + 2·Mi·(li + li+1) + Mi+1·li+1 = −Bi − Ai+1
//
// li is the span left of support i [m]; Bi = Σ ∫ w·x·(li²−x²)/li dx over the
// loads of span i with x from its left end, Ai the same with x from its right
// end (6·area·centroid/l of the moment diagram of the simple span); the moments
// of the free ends stand at both outer supports. One support takes everything.
//
// Source: theorem of three moments (Clapeyron 1857), derived here; the reactions over equal
// spans are printed in HICKS2002, Table 2.1.
func (b *beam) solve() {
	n := len(b.at)
	// One backing for all that is needed: react, moment, A, B, two of the elimination.
	room := make([]float64, 6*n)
	b.react, b.moment = room[:n], room[n:2*n]
	left, right := room[2*n:3*n], room[3*n:4*n] // A and B of the span that begins at i
	diag, rest := room[4*n:5*n], room[5*n:]
	add := func(k int, x0, x1, w float64) {
		l := b.at[k+1] - b.at[k]
		mass, g := w*(x1-x0), (x0+x1)/2
		b.react[k] += mass * (l - g) / l
		b.react[k+1] += mass * g / l
		term := func(x float64) float64 { return w / l * x * x * (l*l/2 - x*x/4) }
		right[k] += term(x1) - term(x0)
		left[k] += term(l-x0) - term(l-x1)
	}
	for _, s := range b.spreads {
		if n == 1 {
			b.react[0] += s.w * (s.to - s.from)
			continue
		}
		if to := min(s.to, b.at[0]); to > s.from {
			mass := s.w * (to - s.from)
			b.react[0] += mass
			b.moment[0] -= mass * (b.at[0] - (to+s.from)/2)
		}
		if from := max(s.from, b.at[n-1]); s.to > from {
			mass := s.w * (s.to - from)
			b.react[n-1] += mass
			b.moment[n-1] -= mass * ((s.to+from)/2 - b.at[n-1])
		}
		for k := range n - 1 {
			if from, to := max(s.from, b.at[k]), min(s.to, b.at[k+1]); to > from {
				add(k, from-b.at[k], to-b.at[k], s.w)
			}
		}
	}
	for _, p := range b.lumps {
		switch {
		case n == 1:
			b.react[0] += p.m
		case p.at < b.at[0]:
			b.react[0] += p.m
			b.moment[0] -= p.m * (b.at[0] - p.at)
		case p.at > b.at[n-1]:
			b.react[n-1] += p.m
			b.moment[n-1] -= p.m * (p.at - b.at[n-1])
		default:
			k := b.span(p.at)
			l := b.at[k+1] - b.at[k]
			x := p.at - b.at[k]
			b.react[k] += p.m * (l - x) / l
			b.react[k+1] += p.m * x / l
			right[k] += p.m * x * (l*l - x*x) / l
			left[k] += p.m * (l - x) * (l*l - (l-x)*(l-x)) / l
		}
	}
	for i := 1; i < n-1; i++ {
		l, next := b.at[i]-b.at[i-1], b.at[i+1]-b.at[i]
		diag[i] = 2 * (l + next)
		rest[i] = -right[i-1] - left[i]
		if i == 1 {
			rest[i] -= l * b.moment[0]
		} else {
			f := l / diag[i-1]
			diag[i] -= f * l
			rest[i] -= f * rest[i-1]
		}
	}
	for i := n - 2; i >= 1; i-- {
		b.moment[i] = (rest[i] - (b.at[i+1]-b.at[i])*b.moment[i+1]) / diag[i]
	}
	for k := range n - 1 {
		lean := (b.moment[k+1] - b.moment[k]) / (b.at[k+1] - b.at[k])
		b.react[k] += lean
		b.react[k+1] -= lean
	}
}

// span returns the span that a place between the outer supports is in.
func (b *beam) span(at float64) int {
	k := 0
	for k < len(b.at)-2 && at > b.at[k+1] {
		k++
	}
	return k
}

// samples is in how many parts a span is looked at for its largest moment and
// sag; the middle is one of the places, and between places a parabola is laid.
const samples = 16

// bend returns the largest sagging moment of span k and its largest deflection
// times EI: kg·m and kg·m³. After solve.
//
//	y(x)·EI = x·(l−x)/(6l)·[Ml·(2l−x) + Mr·(l+x)] + Σ of the loads on a simple span
//
// where a load at a, b = l−a, gives m·b·x·(l²−b²−x²)/(6l) at x ≤ a, and the same
// turned about beyond it.
func (b *beam) bend(k int) (moment, sag float64) {
	l := b.at[k+1] - b.at[k]
	ml, mr := b.moment[k], b.moment[k+1]
	var y [samples + 1]float64
	for i := 1; i < samples; i++ {
		x := l * float64(i) / samples
		m := ml + (mr-ml)*x/l
		d := x * (l - x) / (6 * l) * (ml*(2*l-x) + mr*(l+x))
		point := func(a, mass float64) {
			c, z := l-a, x
			if x > a {
				c, z = a, l-x
			}
			m += mass * c * z / l
			d += mass * c * z * (l*l - c*c - z*z) / (6 * l)
		}
		even := func(from, to, w float64) {
			if to <= from { // two points of Gauss are exact up to the third power
				return
			}
			const third = 0.5773502691896257 / 2
			half := w * (to - from) / 2
			point((from+to)/2-third*(to-from), half)
			point((from+to)/2+third*(to-from), half)
		}
		for _, s := range b.spreads {
			from, to := max(s.from-b.at[k], 0), min(s.to-b.at[k], l)
			even(from, min(to, x), s.w)
			even(max(from, x), to, s.w)
		}
		for _, p := range b.lumps {
			if a := p.at - b.at[k]; a > 0 && a < l {
				point(a, p.m)
			}
		}
		y[i] = d
		moment = max(moment, m)
	}
	for i := 1; i < samples; i++ {
		top := y[i]
		if a, c := y[i-1], y[i+1]; top >= a && top >= c {
			if curve := 2*top - a - c; curve > 0 {
				top += (c - a) * (c - a) / (8 * curve)
			}
		}
		sag = max(sag, top)
	}
	return moment, sag
}
