package room

import (
	"math"

	"twoleaf/core/band"
)

// Assess returns all that follows from a room. What is at fault is named and left
// out; the rest is computed. Pure: the same room gives the same report.
func Assess(r Room) Report { return AssessWith(r, nil) }

// AssessWith is Assess with what earlier rooms left in a memo; nil is none.
func AssessWith(r Room, memo *Memo) Report {
	a := assessment{room: &r, memo: memo}
	if memo == nil {
		a.memo = &Memo{}
	}
	a.check()
	a.report.Volume = r.volume()
	a.play()
	a.ways()
	a.shares()
	a.hearAll()
	a.report.Air = a.air()
	a.report.Together = a.together()
	a.report.Shape = a.shape()
	a.strategy()
	for _, m := range r.Measured {
		if f, ok := a.fit(m); ok {
			a.report.Measured = append(a.report.Measured, f)
		}
	}
	return a.report
}

// again takes up a room that was assessed, what was wrong with it left out as then.
func again(r *Room, rep Report) *assessment {
	a := &assessment{room: r, report: rep, memo: &Memo{}}
	a.report.Faults = nil
	a.check()
	return a
}

// assessment is a room on its way to a report.
type assessment struct {
	room    *Room
	report  Report
	out     []bool // surfaces left out
	drop    [][]bool
	kinds   [][]*Kind
	levels  []Levels // of each of Playing
	memo    *Memo
	scratch []element
}

// volume returns the room's volume, m³; 0 unknown.
func (r *Room) volume() float64 {
	if positive(r.Volume) {
		return r.Volume
	}
	if v := r.Length * r.Width * r.Height; positive(r.Length) && positive(r.Width) && positive(v) {
		return v
	}
	return 0
}

// face returns the size of a surface, m and m²; a width or height of 0 is unknown.
func (r *Room) face(i int) (w, h, area float64) {
	s := &r.Surfaces[i]
	w, h = s.Width, s.Height
	switch s.Face {
	case Wall:
		if side := r.side(i); w == 0 && side > 0 {
			w = r.Length
			if side%2 == 0 {
				w = r.Width
			}
		}
		if h == 0 {
			h = r.Height
		}
	default:
		if w == 0 {
			w = r.Length
		}
		if h == 0 {
			h = r.Width
		}
	}
	if area = s.Area; area == 0 {
		area = w * h
	}
	return w, h, area
}

// side returns where a wall stands, 1 to 4; walls that do not say it stand in
// the order of the list, the fifth and later ones nowhere (0), as what is no wall.
func (r *Room) side(i int) int {
	s := &r.Surfaces[i]
	if s.Face != Wall || s.Side != 0 {
		return s.Side
	}
	n := 1
	for j := range i {
		if r.Surfaces[j].Face == Wall {
			n++
		}
	}
	if n > 4 {
		return 0
	}
	return n
}

// levelsOf returns the octaves of one thing that plays.
func levelsOf(p Playing) (Levels, Source, bool) {
	s, ok := SourceByID(p.Source)
	if p.Octave != nil {
		s.Levels, ok = *p.Octave, true
		for o, l := range s.Levels {
			ok = ok && finite(l) // an octave that is missing is no silence
			s.Levels[o] = bounded(l)
		}
	}
	if !ok {
		return Levels{}, s, false
	}
	if positive(p.Level) {
		return s.At(bounded(p.Level)), s, true
	}
	return s.Levels, s, true
}

// play sums up what plays.
func (a *assessment) play() {
	var sum Levels
	for _, p := range a.room.Playing {
		l, _, ok := levelsOf(p)
		if !ok {
			for i := range l {
				l[i] = silent
			}
		}
		a.levels = append(a.levels, l)
		for i, x := range l {
			if ok && x > silent {
				sum[i] += ten(x)
			}
		}
	}
	for i, e := range sum {
		a.report.Level[i] = silent
		if e > 0 {
			a.report.Level[i] = level(e)
		}
	}
	if len(a.levels) > 0 {
		a.report.LevelA = DBA(a.report.Level)
	}
}

// octavesOf returns equivalent open areas per octave from those per third: their
// mean, for equal sound in each; 8000 Hz as 4000 Hz, over which nothing is computed.
func octavesOf(open *band.Spectrum) (out Levels) {
	for k := range band.Octaves {
		lo, hi := thirds(k)
		for i := lo; i <= hi; i++ {
			out[k] += open[i]
		}
		out[k] /= float64(hi - lo + 1)
	}
	out[8] = out[7]
	return out
}

// meansOf returns the mean of a spread per octave.
func meansOf(s *band.Spectrum) (out Levels) { return octavesOf(s) }

func (a *assessment) spaceAt(id string) int {
	for i := range a.room.Spaces {
		if id != "" && a.room.Spaces[i].ID == id {
			return i
		}
	}
	return -1
}

// ways draws up every way out of the room and what each surface stops.
func (a *assessment) ways() {
	r := a.room
	n := 0
	for i := range r.Surfaces {
		n += 2 + 2*len(r.Surfaces[i].Openings)
	}
	a.report.Paths = make([]Path, 0, n)
	a.report.Surfaces = make([]SurfaceReport, 0, len(r.Surfaces))
	for i := range r.Surfaces {
		s := &r.Surfaces[i]
		_, _, area := r.face(i)
		rep := SurfaceReport{ID: s.ID, Area: area, Boards: area, Lab: s.TL, Holed: s.TL, Built: s.TL, Spread: s.Spread}
		if a.out[i] {
			a.report.Surfaces = append(a.report.Surfaces, SurfaceReport{ID: s.ID})
			continue
		}
		space := a.spaceAt(s.Beyond)
		// sum is the open area of all of it, doubt what its ways' spreads weigh together.
		var sum, doubt band.Spectrum
		count := func(open *band.Spectrum, spread func(i int) float64) {
			for k, o := range open {
				sum[k] += o
				doubt[k] += o * spread(k)
			}
		}
		first := len(a.report.Paths)
		a.report.Paths = append(a.report.Paths, Path{Surface: i, Opening: -1, Way: ByBoards, Space: space, Spread: meansOf(&s.Spread)})
		for j := range s.Openings {
			if a.drop[i][j] {
				continue
			}
			k := a.kinds[i][j]
			m := s.Openings[j].measure(k, s)
			a.scratch = m.elements(k, a.memo, a.scratch[:0])
			for e := range a.scratch {
				el := &a.scratch[e]
				if k.fills() {
					rep.Boards -= el.area
				}
				p := Path{Surface: i, Opening: j, Way: el.way, Space: space, Area: el.area, Open: octavesOf(&el.open)}
				for o := range p.Spread {
					p.Spread[o] = el.spread
				}
				a.report.Paths = append(a.report.Paths, p)
				count(&el.open, func(int) float64 { return el.spread })
			}
		}
		rep.Boards = math.Max(0, rep.Boards)
		boards := transmitted(s.TL)
		for k := range boards {
			boards[k] *= rep.Boards
		}
		a.report.Paths[first].Area = rep.Boards
		a.report.Paths[first].Open = octavesOf(&boards)
		count(&boards, func(k int) float64 { return s.Spread[k] })
		rep.Holed = lossOf(&sum, area)
		if by, ok := flankLoss(s); ok {
			open := transmitted(by)
			for k := range open {
				open[k] *= area
			}
			a.report.Paths = append(a.report.Paths, Path{Surface: i, Opening: -1, Way: ByFlank, Space: space, Area: area, Open: octavesOf(&open), Spread: flankSpread})
			count(&open, func(k int) float64 { return flankSpread[octaveAt(k)] })
		}
		rep.Built = lossOf(&sum, area)
		for k, o := range sum {
			if o > 0 {
				rep.Spread[k] = doubt[k] / o
			}
		}
		a.report.Surfaces = append(a.report.Surfaces, rep)
	}
}

// lossOf returns the loss of an area of which so much is open:
//
//	R = −10 lg( Σ Si τi / S )
//
// Source: HOPKINS2007 eq. 4.92.
func lossOf(open *band.Spectrum, area float64) (out band.Spectrum) {
	for i, o := range open {
		out[i] = -level(o / area)
	}
	return out
}

// Composite returns the loss of several areas beside each other, dB:
//
//	R = −10 lg( Σ Si 10^(−Ri/10) / Σ Si )
//
// Source: HOPKINS2007 eq. 4.92.
func Composite(areas, losses []float64) float64 {
	open, all := 0.0, 0.0
	for i, s := range areas {
		open += s * ten(-losses[i])
		all += s
	}
	return -level(open / all)
}
