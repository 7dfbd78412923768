package transmission

import (
	"math"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
)

// laminate is what joints between boards add to the sum of their stiffnesses:
// boards hinder each other's stretching through a film that shears.
//
// For boards i of extensional stiffness Ki, joints j of shear compliance
// cj = h/G(1+jη2) and arms dj between the middles of the boards they join, the
// shear stresses tj at wavenumber k obey
//
//	[k²cj + 1/Kj + 1/Kj+1]·tj − tj−1/Kj − tj+1/Kj+1 = dj,  BΔ = Σ dj·tj
//
// which for two boards is the constrained layer of Ross, Kerwin and Ungar
// (1959), BΔ·g/(1+g). A glued joint has no compliance, a dry one takes no shear.
//
// A film with the same loss factor at all frequencies stiffens with them, or it
// would act before it is strained (Kramers and Kronig; derived):
//
//	G(f) = G0·(f/f0)^α,  tan(α·π/2) = η2
type laminate struct {
	n     int // boards
	k     [assembly.MaxLayers]float64
	arm   [assembly.MaxLayers - 1]float64
	soft  [assembly.MaxLayers - 1]float64 // h/G at f0, m³/N; 0 glued, < 0 dry
	loss  float64                         // η2
	power float64                         // α
}

// filmHz is where the modulus of a film is stated, f0, Hz: the middle of the
// range in which a wall's rating is decided (common practice).
const filmHz = 500

func newLaminate(layers []assembly.Layer, c *Constants) laminate {
	var m laminate
	joined := false
	for i, y := range layers {
		b := y.Board
		t, nu := float64(b.Thickness), b.Sound.Nu
		m.k[i] = max(b.Stretch()/(1-nu*nu), 1)
		if i == len(layers)-1 {
			break
		}
		next := float64(layers[i+1].Board.Thickness)
		m.arm[i] = (t + next) / 2
		switch y.Join {
		case assembly.Film:
			m.soft[i] = float64(assembly.FilmDepth) / c.FilmModulus
			m.arm[i] += float64(assembly.FilmDepth)
			joined = true
		case assembly.Glued:
			joined = true
		default:
			m.soft[i] = -1
		}
	}
	if !joined {
		return laminate{}
	}
	m.n, m.loss, m.power = len(layers), c.FilmLoss, 2/pi*math.Atan(c.FilmLoss)
	// Turned about it is the same leaf: keep the one that reads first, so
	// that both have the same digits.
	if r := m.reversed(); r.before(&m) {
		return r
	}
	return m
}

func (m *laminate) reversed() laminate {
	r := laminate{n: m.n, loss: m.loss, power: m.power}
	for i := range m.n {
		r.k[i] = m.k[m.n-1-i]
		if i < m.n-1 {
			r.arm[i], r.soft[i] = m.arm[m.n-2-i], m.soft[m.n-2-i]
		}
	}
	return r
}

func (m *laminate) before(o *laminate) bool {
	for i := range m.n {
		if m.k[i] != o.k[i] {
			return m.k[i] < o.k[i]
		}
	}
	for i := range m.n - 1 {
		if m.soft[i] != o.soft[i] {
			return m.soft[i] < o.soft[i]
		}
		if m.arm[i] != o.arm[i] {
			return m.arm[i] < o.arm[i]
		}
	}
	return false
}

// rigid returns what glue adds to the stiffness where no joint is a film, N·m;
// 0 where one is, or nothing is joined.
func (m *laminate) rigid() float64 {
	if m.n == 0 {
		return 0
	}
	for _, s := range m.soft[:m.n-1] {
		if s > 0 {
			return 0
		}
	}
	return real(m.stiffness(filmHz, 0))
}

// stiffness returns BΔ at a frequency and wavenumber k, N·m; k2 is k². Its
// imaginary part is the film's loss.
func (m *laminate) stiffness(hz, k2 float64) complex128 {
	var diag, rhs, shear [assembly.MaxLayers - 1]complex128
	n := m.n - 1
	film := complex(k2*pow(filmHz/hz, m.power), 0) / complex(1, m.loss)
	off := func(i int) complex128 { // between joints i−1 and i, through board i
		if i == 0 || m.soft[i-1] < 0 || m.soft[i] < 0 {
			return 0
		}
		return complex(-1/m.k[i], 0)
	}
	for i := range n {
		diag[i] = complex(1/m.k[i]+1/m.k[i+1], 0)
		rhs[i] = complex(m.arm[i], 0)
		if m.soft[i] > 0 {
			diag[i] += film * complex(m.soft[i], 0)
		} else if m.soft[i] < 0 {
			diag[i], rhs[i] = 1, 0
		}
		if o := off(i); o != 0 {
			f := o / diag[i-1]
			diag[i] -= f * o
			rhs[i] -= f * rhs[i-1]
		}
	}
	var b complex128
	for i := n - 1; i >= 0; i-- {
		shear[i] = rhs[i]
		if i < n-1 {
			shear[i] -= off(i+1) * shear[i+1]
		}
		shear[i] /= diag[i]
		if m.soft[i] >= 0 {
			b += shear[i] * complex(m.arm[i], 0)
		}
	}
	return b
}

// Composite returns the bending stiffness per width, N·m, and the loss factor
// of two boards with a damping film between them at a frequency, Hz, and
// wavenumber k, 1/m (Ross, Kerwin and Ungar 1959), each board's own loss included.
func Composite(a, b material.Board, hz, k float64) (stiff, loss float64) {
	c := Defaults()
	m := newLaminate([]assembly.Layer{{Board: a, Join: assembly.Film}, {Board: b}}, &c)
	pa, pb := plate(a), plate(b)
	total := complex(pa+pb, pa*a.Sound.Loss+pb*b.Sound.Loss) + m.stiffness(hz, k*k)
	if math.IsNaN(real(total)) {
		return 0, 0
	}
	return real(total), imag(total) / real(total)
}
