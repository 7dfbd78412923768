package transmission

import (
	"fmt"
	"math"

	"twoleaf/core/assembly"
	"twoleaf/core/band"
)

// Options say what of a build-up's loss is asked for. The zero value is
// ranking accuracy, all bands, and no limit but the build-up's own.
type Options struct {
	Accuracy Accuracy
	// From and To are the bands wanted, To not among them; 0, 0 is all.
	From, To int
	// Limit is a transmission that is there whatever the build-up, see LaboratoryLimit.
	Limit float64
	// Constants takes the place of the defaults, for fits and for the spread
	// that an uncertain one brings. Tables are left aside then.
	Constants *Constants
}

// Bass asks for the bands from 50 to 125 Hz alone.
func (o Options) Bass() Options {
	o.From, o.To = band.First50, band.First125+1
	return o
}

// Loss returns the transmission loss of a build-up in every band as a
// laboratory would find it, its own limit of 75 dB included:
//
//	R = −10 lg(τ + 10^(−7.5))
//
// See LossOf for the rest, and for the errors.
func Loss(b assembly.BuildUp, a Accuracy, t *Tables) (band.Spectrum, error) {
	return LossOf(b, Options{Accuracy: a, Limit: LaboratoryLimit}, t)
}

// LossOf returns the transmission loss (sound reduction index) of a build-up
// per band, dB,
//
//	R = −10 lg(τ + limit),  τ the mean over the band's frequencies
//
// by the method of the package comment: one to four leaves, any boards, gaps,
// frames and fixings, from 50 to 5000 Hz; 31.5 and 40 Hz are extrapolation.
// Bands not asked for are 0. A build-up that cannot be is an error that names
// the place. Reversing a build-up changes nothing but the last digits.
func LossOf(b assembly.BuildUp, o Options, t *Tables) (band.Spectrum, error) {
	var r band.Spectrum
	if err := check(&b); err != nil {
		return r, err
	}
	if o.From == 0 && o.To == 0 {
		o.To = band.Count
	}
	if o.From < 0 || o.To > band.Count || o.From > o.To {
		return r, fmt.Errorf("bands %d to %d: there are %d", o.From, o.To, band.Count)
	}
	if o.Accuracy != Ranking && o.Accuracy != Converged {
		return r, fmt.Errorf("accuracy %d is neither ranking nor converged", o.Accuracy)
	}
	switch {
	case o.Constants != nil:
		t = newTables(*o.Constants)
	case t == nil:
		t = NewTables()
	}
	t.room()
	var w wall
	w.prepare(&b, o, t)
	extra := o.Limit + w.leaks(&b)
	var f field
	for i := o.From; i < o.To; i++ {
		sum := 0.0
		for j := i * w.s.sub; j < (i+1)*w.s.sub; j++ {
			uniform, bridged := w.transmission(j, &f)
			sum += uniform + bridged + w.plateau(&b, w.s.hz[j])
		}
		r[i] = decibel(max(min(sum/float64(w.s.sub)+extra, 1), 1e-30))
	}
	return r, nil
}

// check returns what makes a build-up impossible.
func check(b *assembly.BuildUp) error {
	if all := b.Check(); len(all) > 0 {
		return all[0]
	}
	for i, l := range b.Leaves {
		for j, y := range l.Layers {
			s := y.Board.Sound
			for _, p := range [...]struct {
				field          string
				v, low, higher float64
			}{
				{"young", float64(s.Young), 0, 5e11},
				{"nu", s.Nu, 0, 0.49},
				{"loss", s.Loss, 0, 2},
				{"ratio", s.Ratio, 0, 1e6},
				{"shear", s.Shear, 0, 1},
				{"flow", s.Flow, 0, 1e8},
			} {
				if !(p.v >= p.low && p.v <= p.higher) {
					return &assembly.Problem{Code: codeOf(p.v, p.low), Leaf: i, Layer: j, Gap: -1, Field: p.field, Value: p.v, Low: p.low, High: p.higher}
				}
			}
		}
	}
	for i, g := range b.Gaps {
		for _, p := range [...]struct {
			field     string
			v, higher float64
		}{
			{"flow", g.Fill.Flow, 1e7},
			{"frame width", float64(g.Frame.Width), 1},
			{"frame sheet", float64(g.Frame.Sheet), 0.02},
			{"frame mass", float64(g.Frame.Mass), 1000},
			{"stiffness", g.Near.Fixing.Stiffness, 1e12},
			{"stiffness", g.Far.Fixing.Stiffness, 1e12},
		} {
			if !(p.v >= 0 && p.v <= p.higher) {
				return &assembly.Problem{Code: codeOf(p.v, 0), Leaf: -1, Layer: -1, Gap: i, Field: p.field, Value: p.v, High: p.higher}
			}
		}
	}
	return nil
}

func codeOf(v, low float64) assembly.Code {
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return assembly.NotNumber
	case v < low:
		return assembly.Negative
	}
	return assembly.Large
}

// prepare gathers the tables of a build-up for the bands wanted.
func (w *wall) prepare(b *assembly.BuildUp, o Options, t *Tables) {
	c := &t.constants
	w.n, w.constants = len(b.Leaves), c
	key := gridKey{accuracy: o.Accuracy}
	panes := true
	for i, l := range b.Leaves {
		w.leaves[i] = newLeaf(l, c)
		key.declare(&w.leaves[i])
		panes = panes && w.leaves[i].glass
	}
	s := t.grid(key, o.From, o.To)
	w.s = s
	area := float64(b.Width) * float64(b.Height)
	if area <= 0 {
		area = faceWidth * faceHeight
		if panes {
			area = paneArea
		}
	}
	w.size = t.size(s, area, o.From, o.To)
	for i := range w.n {
		w.told[i] = t.leaf(s, &w.leaves[i], o.From, o.To)
	}
	for i := range b.Gaps {
		g := &b.Gaps[i]
		air := newCavity(g, &w.leaves[i], &w.leaves[i+1], c)
		w.gap[i] = t.gap(s, &air, o.From, o.To).z
		found, n := bridges(b, i, w.leaves[:w.n], c)
		for _, r := range found[:n] {
			w.bridges[w.nb] = r
			w.near[w.nb] = t.hold(s, w.told[i], &w.leaves[i], &r.hold, o.From, o.To)
			w.far[w.nb] = t.hold(s, w.told[i+1], &w.leaves[i+1], &r.hold, o.From, o.To)
			w.nb++
		}
	}
	w.perimeter = newPerimeter(b, w.leaves[:w.n], c)
}

// leaks returns the transmission beside the build-up itself: a window's frame and seals.
func (w *wall) leaks(b *assembly.BuildUp) float64 {
	for i := range w.n {
		if !w.leaves[i].glass {
			return 0
		}
	}
	if w.n < 2 {
		return 0
	}
	for i := range b.Gaps {
		if framedWall(b.Gaps[i].Frame.Kind) {
			return 0
		}
	}
	return w.constants.FrameLeak
}

// plateau returns that of a single masonry wall, 0 of anything else.
func (w *wall) plateau(b *assembly.BuildUp, hz float64) float64 {
	if w.n > 1 || !w.leaves[0].masonry {
		return 0
	}
	// Of the heaviest wythe.
	mass, young := 0.0, 0.0
	for _, y := range b.Leaves[0].Layers {
		if m, e := float64(y.Board.Mass), float64(y.Board.Sound.Young); y.Board.Kind.Masonry() && (m > mass || m == mass && e > young) {
			mass, young = m, e
		}
	}
	return w.leaves[0].plateau(hz, max(young, 1), thickness(b.Leaves[0]), w.constants)
}

func thickness(l assembly.Leaf) float64 {
	var parts [assembly.MaxLayers]float64
	for i, y := range l.Layers {
		parts[i] = float64(y.Board.Thickness)
	}
	return sum(parts[:len(l.Layers)])
}
