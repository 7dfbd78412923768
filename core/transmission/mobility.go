package transmission

import "math"

// hold is how a leaf is held by the bridges of a gap. With the leaf it is the
// key of the table of its mobility and free waves.
type hold struct {
	point   bool
	spacing float64 // of lines b, m; of points the bay between frames, m
	density float64 // points per m²
	lattice float64 // smearing of the bay resonance, beside the leaf's own loss
	bay     float64 // effective bay over spacing
	pitch   float64 // of screws on a line, m; 0 none
	air     cavity  // what lies behind the leaf, whose drag damps it; of a line
}

// held is a leaf as a bridge meets it, at every frequency of a grid.
type held struct {
	bands
	// firm is one over the mobility without the uniform motion, N·s/m² of a line, N·s/m of a point.
	firm []complex128
	free []float64 // what free waves radiate over what the bridge's own near field does
	rows []float64 // how far screws act one by one, 0 to 1
}

// fill works out one leaf under one hold; near is mean |ωm/Z|² over directions.
func (t *held) fill(g *grid, f *leaf, h *hold, near []float64, c *Constants, first, last int) {
	for j := first; j < last; j++ {
		hz := g.hz[j]
		b, eta := f.free(hz)
		w := 2 * pi * hz
		var y complex128
		if h.point {
			y = pointMobility(w, f.mass, b, h.density)
		} else {
			// Waves that the lines hold to their spacing, then free ones.
			free := math.Sqrt(math.Sqrt(w * w * f.mass / b))
			drag := h.air.drag(hz, max(2*pi/h.spacing, free)) / f.mass
			y = latticeMobility(w, f.mass, b, h.lattice+eta+drag, h.bay*h.spacing)
			eta += h.air.drag(hz, free) / f.mass
			if h.pitch > 0 {
				// λB = 2π/kB; screws act one by one when λB < 2a.
				x := pi / (h.pitch * math.Sqrt(math.Sqrt(w*w*f.mass/b)))
				x *= x
				x *= x
				t.rows[j] = 1 / (1 + x*x)
				y += complex(h.pitch/(8*math.Sqrt(b*f.mass))*t.rows[j], 0)
			}
		}
		t.free[j] = freeWaves(hz, f.mass, b, eta, h, max(real(y), 0), c) / near[j]
		t.firm[j] = 1 / y
	}
}

// latticeMobility returns the mobility of a plate under a row of like lines a
// distance b′ apart, without its uniform part, m²/(N·s):
//
//	Y = (jω/B)·{ [−cot κ − coth κ]/(4kB³) + 1/(kB⁴b′) },  κ = kB·b′/2
//	kB = (ω²m/B)^¼·[1 − ¼j·η]
//
// the sum over all harmonics 2πn/b′ of a thin plate but n = 0, which moves with
// the whole leaf. Low f: jω·b′³/720B, a bay clamped at both studs; high f:
// 1/[2m·cB(1+j)] less the uniform part.
func latticeMobility(w, mass, stiff, eta, bay float64) complex128 {
	kb := complex(math.Sqrt(math.Sqrt(w*w*mass/stiff)), 0) * complex(1, -eta/4)
	k := kb * complex(bay/2, 0)
	jwb := complex(0, w/stiff)
	if norm(k) < 0.09 {
		k2 := k * k
		return jwb * complex(bay*bay*bay/720, 0) * (1 + k2*k2/105)
	}
	q := cexp(complex(2*imag(k), -2*real(k))) // e^{−2jκ}
	p := cexp(-2 * k)
	cot := 1i * (1 + q) / (1 - q)
	coth := (1 + p) / (1 - p)
	kb3 := kb * kb * kb
	return jwb * ((-cot-coth)/(4*kb3) + 1/(kb3*kb*complex(bay, 0)))
}

// pointMobility returns the mobility of a plate under n points per m² without
// its uniform part, m/(N·s):
//
//	Y = Yp·jr/(1+jr),  Yp = 1/8√(Bm),  r = 0.0464·ω√(m/B)/n
//
// Low f: jω·0.0058/(B·n), the flexibility of a plate on a grid of points; high
// f: the infinite plate (Cremer and Heckl; HOPKINS2007 eq. 2.190).
func pointMobility(w, mass, stiff, density float64) complex128 {
	jr := complex(0, 0.0464*w*math.Sqrt(mass/stiff)/density)
	return complex(1/(8*math.Sqrt(stiff*mass)), 0) * jr / (1 + jr)
}

// lineMobility returns that of an infinite plate on one line, 1/[2m·cB(1+j)], m²/(N·s).
func lineMobility(w, mass, stiff float64) complex128 {
	cb := math.Sqrt(math.Sqrt(w * w * stiff / mass))
	return 1 / (complex(2*mass*cb, 0) * (1 + 1i))
}

// bayHeight is how far a bay between studs runs before something crosses it, m (from memory).
const bayHeight = 2.5

// edgeRadiation returns the radiation efficiency of free bending waves below
// the critical frequency, from the edges of a bay of b × 2.5 m:
//
//	σ = (U·λc/S)·[(1−a²)·ln((1+a)/(1−a)) + 2a] / [4π²(1−a²)^{3/2}],  a = √(f/fc)
//
// (Leppington; HOPKINS2007 section 2.9), capped near fc; 0 above it, where the
// directions hold the coincidence themselves.
func edgeRadiation(hz, fc, b, most float64) float64 {
	if hz >= fc {
		return 0
	}
	a := math.Sqrt(hz / fc)
	r := 1 - a*a
	s := 2 * (b + bayHeight) * c0 / (fc * b * bayHeight) * (r*ln((1+a)/(1-a)) + 2*a) / (4 * pi * pi * r * math.Sqrt(r))
	return min(s, most)
}

// freeWaves returns the sound power of the free waves that a bridge sets off in
// a leaf over that of its near field on the bare mass, both per unit force:
//
//	line: 2m·c0·σ·Re(Y)/ηt;  point: 2πm·c0²·σ·Re(Y)/(ω·ηt)
//	ηt = η + 2ρ0c0σ/ωm
//
// By reciprocity it also is how much more a bridge is driven by the free waves
// that a sound field sets off.
func freeWaves(hz, mass, stiff, eta float64, h *hold, re float64, c *Constants) float64 {
	s := edgeRadiation(hz, critical(mass, stiff), h.spacing, c.FreeWaveCap)
	w := 2 * pi * hz
	loss := eta + 2*airSpeed*s/(w*mass)
	if h.point {
		return 2 * pi * mass * c0 * c0 * s * re / (w * loss)
	}
	return 2 * mass * c0 * s * re / loss
}
