package main

import "math"

// state is a point of the search with its residuals and their slopes.
type state struct {
	at    []float64
	res   []float64
	slope [][]float64 // of each free constant, nil until asked for
	cost  float64
}

// differences are the steps of the finite differences, as shares of a
// constant's range: where one finds no way down, the next may, for dips and the
// rules of the class make the cost rough.
var differences = [...]float64{0.02, 0.05, 0.008}

// start computes a point.
func (p *problem) start(at []float64, out func(int) bool) *state {
	s := &state{at: append([]float64(nil), at...), res: make([]float64, p.length)}
	for k, r := range p.compute(at, nil) {
		p.residuals(k, r, s.res)
	}
	s.cost = p.cost(s.res, at, out)
	return s
}

// slopes fills in the finite differences, computing for each constant only the
// tests that it is known to move (nil: all, and then which they are is noted).
func (p *problem) slopes(s *state, difference float64, moved [][]int) [][]int {
	note := moved == nil
	if note {
		moved = make([][]int, len(p.free))
	}
	s.slope = make([][]float64, len(p.free))
	for i := range p.free {
		at := append([]float64(nil), s.at...)
		h := difference
		if at[i]+h > 1 {
			h = -h
		}
		at[i] += h
		some := moved[i]
		if note {
			some = nil
		}
		res := append([]float64(nil), s.res...)
		for n, r := range p.compute(at, some) {
			k := n
			if some != nil {
				k = some[n]
			}
			p.residuals(k, r, res)
		}
		d := make([]float64, p.length)
		for k := range p.tests {
			touched := false
			for v := p.offset[k]; v < p.offset[k+1]; v++ {
				d[v] = (res[v] - s.res[v]) / h
				touched = touched || d[v] != 0
			}
			if note && touched {
				moved[i] = append(moved[i], k)
			}
		}
		if note && moved[i] == nil {
			moved[i] = []int{}
		}
		s.slope[i] = d
	}
	return moved
}

// move returns the step of Levenberg and Marquardt with damping, kept within
// the bounds: a constant at a bound that would leave it stays there.
func (p *problem) move(s *state, damping float64, out func(int) bool) []float64 {
	n := len(p.free)
	a := make([][]float64, n)
	g := make([]float64, n)
	for i := range n {
		a[i] = make([]float64, n)
	}
	for k := range p.tests {
		if out != nil && out(k) {
			continue
		}
		for v := p.offset[k]; v < p.offset[k+1]; v++ {
			for i := range n {
				di := s.slope[i][v]
				if di == 0 {
					continue
				}
				g[i] += di * s.res[v]
				for j := range i + 1 {
					a[i][j] += di * s.slope[j][v]
				}
			}
		}
	}
	for i := range n {
		a[i][i] += sq(2 * priorWeight)
		g[i] += 2 * priorWeight * prior(s.at[i])
		for j := range i {
			a[j][i] = a[i][j]
		}
	}
	fixed := make([]bool, n)
	for {
		step := solve(a, g, damping, fixed)
		again := false
		for i := range n {
			if to := s.at[i] + step[i]; !fixed[i] && (to <= 0 && s.at[i] <= 0 || to >= 1 && s.at[i] >= 1) {
				fixed[i], again = true, true
			}
		}
		if again {
			continue
		}
		at := make([]float64, n)
		for i := range n {
			at[i] = math.Min(1, math.Max(0, s.at[i]+step[i]))
		}
		return at
	}
}

// solve returns −(A + λ·diag A)⁻¹·g by Cholesky, 0 for what is fixed.
func solve(a [][]float64, g []float64, damping float64, fixed []bool) []float64 {
	var idx []int
	for i := range g {
		if !fixed[i] {
			idx = append(idx, i)
		}
	}
	n := len(idx)
	l := make([][]float64, n)
	y := make([]float64, n)
	for i := range n {
		l[i] = make([]float64, n)
		for j := range i + 1 {
			v := a[idx[i]][idx[j]]
			if i == j {
				v *= 1 + damping
			}
			for k := range j {
				v -= l[i][k] * l[j][k]
			}
			if i == j {
				l[i][i] = math.Sqrt(math.Max(v, 1e-12))
			} else {
				l[i][j] = v / l[j][j]
			}
		}
		v := -g[idx[i]]
		for k := range i {
			v -= l[i][k] * y[k]
		}
		y[i] = v / l[i][i]
	}
	out := make([]float64, len(g))
	x := make([]float64, n)
	for i := n - 1; i >= 0; i-- {
		v := y[i]
		for k := i + 1; k < n; k++ {
			v -= l[k][i] * x[k]
		}
		x[i] = v / l[i][i]
		out[idx[i]] = x[i]
	}
	return out
}

// search goes down from a point by at most rounds of slopes; say is told of
// every round. It ends where rounds with all
// differences win less than a ten-thousandth.
func (p *problem) search(s *state, moved [][]int, rounds int, out func(int) bool, say func(round int, cost float64)) (*state, [][]int) {
	damping, failed, at := 0.03, 0, 0
	for round := range rounds {
		if s.slope == nil {
			moved = p.slopes(s, differences[at], moved)
		}
		better := false
		for range 6 {
			next := p.start(p.move(s, damping, out), out)
			if next.cost < s.cost {
				won := s.cost - next.cost
				better = won > 1e-4*s.cost
				s = next
				damping = math.Max(damping/4, 1e-4)
				break
			}
			damping *= 4
		}
		if say != nil {
			say(round+1, s.cost)
		}
		if better {
			failed = 0
			continue
		}
		if failed++; failed == len(differences) {
			break
		}
		at, damping = (at+1)%len(differences), 0.03
		s.slope = nil
	}
	return s, moved
}

// polish tries every constant by itself a little up and a little down, by
// smaller and smaller shares of its range, for as long as that wins: small
// steps that a slope does not see.
func (p *problem) polish(s *state, moved [][]int, say func(round int, cost float64)) *state {
	round := 0
	for _, h := range [...]float64{0.04, 0.015, 0.006} {
		for range 3 {
			before := s.cost
			for i := range p.free {
				for _, d := range [...]float64{h, -h} {
					at := append([]float64(nil), s.at...)
					at[i] = math.Min(1, math.Max(0, at[i]+d))
					res := append([]float64(nil), s.res...)
					for n, r := range p.compute(at, moved[i]) {
						p.residuals(moved[i][n], r, res)
					}
					if cost := p.cost(res, at, nil); cost < s.cost {
						s = &state{at: at, res: res, cost: cost}
						break
					}
				}
			}
			round++
			if say != nil {
				say(round, s.cost)
			}
			if before-s.cost < 1e-4*before {
				break
			}
		}
	}
	return s
}
