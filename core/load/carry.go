package load

import (
	"math"

	"twoleaf/core/assembly"
	"twoleaf/core/caution"
	"twoleaf/core/unit"
)

// spots writes rows and clips into the layout.
func (y *layer) spots() {
	n := 0
	for _, r := range y.runs {
		n += len(r.at)
	}
	o := &y.out
	o.Spots = make([]Spot, 0, n)
	o.Rows = make([]Row, 0, len(y.runs))
	blocking, single := 0, 0
	for i, r := range y.runs {
		r.first = len(o.Spots)
		row := Row{At: unit.Length(r.v), From: unit.Length(r.from), To: unit.Length(r.to), Added: r.added}
		for k, u := range r.at {
			row.Clips = append(row.Clips, len(o.Spots))
			row.Marks = append(row.Marks, unit.Length(u))
			at := y.rect(u, r.v, u, r.v)
			o.Spots = append(o.Spots, Spot{X: at.X, Y: at.Y, Row: i, Seat: r.seats[k]})
			if r.seats[k] == OnBlocking {
				blocking++
			}
		}
		if len(r.at) == 1 {
			single++
		}
		o.Channel += row.To - row.From
		o.Rows = append(o.Rows, row)
		r.beam.at = r.at
		r.beam.spreads = append(r.beam.spreads, spread{r.from, r.to, float64(y.load.Channel)})
	}
	if blocking > 0 {
		y.note(NeedsBlocking, nums{"clips": float64(blocking)})
	}
	if single > 0 {
		y.note(OneClip, nums{"pieces": float64(single)})
	}
	o.Weight = unit.Mass(float64(y.load.Area)*float64(o.Boarded) + float64(y.load.Channel)*float64(o.Channel))
}

// bounds returns the stretch along the row that belongs to clip k of a run.
func (r *run) bounds(k int) (from, to float64) {
	from, to = math.Inf(-1), math.Inf(1)
	if k > 0 {
		from = (r.at[k-1] + r.at[k]) / 2
	}
	if k < len(r.at)-1 {
		to = (r.at[k] + r.at[k+1]) / 2
	}
	return from, to
}

// share gives every part of the boards to a row and to a clip on it.
func (y *layer) share() {
	line := float64(y.load.Channel)
	for _, r := range y.runs {
		for k := range r.at {
			from, to := r.bounds(k)
			y.out.Spots[r.first+k].Share += unit.Mass(line * (min(to, r.to) - max(from, r.from)))
		}
	}
	var here []*run
	for _, c := range y.columns(y.runs) {
		mid := (c.from + c.to) / 2
		for _, s := range y.free(mid, true) {
			here = here[:0]
			for _, r := range y.runs { // in the order of v
				if r.board0 < mid && mid < r.board1 && s.from <= r.v && r.v <= s.to {
					here = append(here, r)
				}
			}
			if len(here) == 0 {
				y.loose(c, s)
			}
			low := s.from
			for i, r := range here {
				high := s.to
				if i < len(here)-1 {
					high = (r.v + here[i+1].v) / 2
				}
				y.lies(r, c, stretch{low, high})
				low = high
			}
		}
	}
}

// lies puts a rectangle of board on a run.
func (y *layer) lies(r *run, c, s stretch) {
	if s.to-s.from <= 0 {
		return
	}
	mass := float64(y.load.Area)
	w := mass * (s.to - s.from)
	if last := len(r.beam.spreads) - 1; last > 0 && r.beam.spreads[last].to == c.from && r.beam.spreads[last].w == w {
		r.beam.spreads[last].to = c.to
	} else {
		r.beam.spreads = append(r.beam.spreads, spread{c.from, c.to, w})
	}
	for k := range r.at {
		from, to := r.bounds(k)
		from, to = max(from, c.from), min(to, c.to)
		if to > from {
			y.piece(r.first+k, from, s.from, to, s.to)
		}
	}
}

// piece adds a rectangle to the area of a clip.
func (y *layer) piece(spot int, u0, v0, u1, v1 float64) {
	s := &y.out.Spots[spot]
	area := (u1 - u0) * (v1 - v0)
	s.Area += unit.Area(area)
	s.Share += unit.Mass(area * float64(y.load.Area))
	p := y.rect(u0, v0, u1, v1)
	if n := len(s.Pieces); n > 0 { // next to the one before, and as high: one rectangle
		q := &s.Pieces[n-1]
		if y.out.AlongX && q.Y == p.Y && q.Height == p.Height && q.X+q.Width >= p.X-hair {
			q.Width = p.X + p.Width - q.X
			return
		}
		if !y.out.AlongX && q.X == p.X && q.Width == p.Width && q.Y+q.Height >= p.Y-hair {
			q.Height = p.Y + p.Height - q.Y
			return
		}
	}
	s.Pieces = append(s.Pieces, p)
}

// loose gives a strip that no row crosses to the nearest clip.
func (y *layer) loose(c, s stretch) {
	spot, r, k := y.closest((c.from+c.to)/2, (s.from+s.to)/2)
	mass := float64(y.load.Area) * (c.to - c.from) * (s.to - s.from)
	y.piece(spot, c.from, s.from, c.to, s.to)
	r.beam.lumps = append(r.beam.lumps, lump{r.at[k], mass})
	if min(c.to-c.from, s.to-s.from) > float64(leastFace) {
		y.note(LooseStrip, nums{"width": c.to - c.from, "height": s.to - s.from})
	}
}

// closest returns the clip nearest to a place.
func (y *layer) closest(u, v float64) (spot int, run *run, k int) {
	least := math.Inf(1)
	for _, r := range y.runs {
		for i, at := range r.at {
			if d := math.Hypot(u-at, v-r.v); d < least {
				least, spot, run, k = d, r.first+i, r, i
			}
		}
	}
	return spot, run, k
}

// hang gives what hangs at one place to the rows and clips around it.
func (y *layer) hang() *Fault {
	for i, g := range y.load.Hung {
		if !(g.Mass >= 0 && g.Mass < mostMass) {
			return &Fault{FaultMass, nums{"number": float64(i)}}
		}
		u, v, w, h := y.turn(g.X, g.Y, g.Width, g.Height)
		if !y.on(u, v) {
			nu, nv := y.nearestOn(u, v)
			at := y.rect(nu, nv, nu, nv)
			return &Fault{FaultHung, nums{"number": float64(i), "x": float64(at.X), "y": float64(at.Y)}}
		}
		y.out.Weight += g.Mass
		// Nine parts over its size; one that is off the boards hangs at the middle.
		for a := -1.0; a <= 1; a++ {
			for b := -1.0; b <= 1; b++ {
				pu, pv := u+a*w/3, v+b*h/3
				if !y.on(pu, pv) {
					pu, pv = u, v
				}
				y.hangAt(pu, pv, float64(g.Mass)/9)
			}
		}
	}
	return nil
}

// on reports whether a place is on boards.
func (y *layer) on(u, v float64) bool {
	if !(u >= 0 && u <= y.w && v >= 0 && v <= y.h) {
		return false
	}
	for _, h := range y.holes {
		if h.u0 < u && u < h.u1 && h.v0 < v && v < h.v1 {
			return false
		}
	}
	return true
}

// nearestOn returns the place on boards that is nearest to one that is not:
// on the edge of the face, or on a side of an opening.
func (y *layer) nearestOn(u, v float64) (float64, float64) {
	bu, bv := min(max(u, 0), y.w), min(max(v, 0), y.h)
	if !(u == u && v == v) { // not numbers
		bu, bv = 0, 0
	}
	if y.on(bu, bv) {
		return bu, bv
	}
	best, least := [2]float64{}, math.Inf(1)
	try := func(nu, nv float64) {
		if d := math.Hypot(nu-bu, nv-bv); d < least && y.on(nu, nv) {
			best, least = [2]float64{nu, nv}, d
		}
	}
	for _, h := range y.holes {
		for _, z := range [...][2]float64{{h.u0, bv}, {h.u1, bv}, {bu, h.v0}, {bu, h.v1}, {h.u0, h.v0}, {h.u1, h.v1}, {h.u0, h.v1}, {h.u1, h.v0}} {
			try(z[0], z[1])
		}
	}
	return best[0], best[1]
}

func (y *layer) hangAt(u, v, mass float64) {
	var below, above *run
	for _, s := range y.free(u, true) {
		if v < s.from-hair || v > s.to+hair {
			continue
		}
		for _, r := range y.runs {
			if r.board0 > u || u > r.board1 || r.v < s.from || r.v > s.to {
				continue
			}
			if r.v <= v {
				below = r
			} else if above == nil {
				above = r
			}
		}
	}
	switch {
	case below == nil && above == nil:
		_, r, k := y.closest(u, v)
		y.lump(r, r.at[k], mass)
	case below == nil:
		y.lump(above, u, mass)
	case above == nil:
		y.lump(below, u, mass)
	default:
		up := (v - below.v) / (above.v - below.v)
		y.lump(below, u, mass*(1-up))
		y.lump(above, u, mass*up)
	}
}

// lump hangs a mass on a run: on the beam where it is, and by the lever on the
// two clips beside it, beyond the last clip on that one.
func (y *layer) lump(r *run, u, mass float64) {
	if mass == 0 {
		return
	}
	r.beam.lumps = append(r.beam.lumps, lump{u, mass})
	spots := y.out.Spots[r.first : r.first+len(r.at)]
	last := len(r.at) - 1
	switch {
	case u <= r.at[0]:
		spots[0].Share += unit.Mass(mass)
	case u >= r.at[last]:
		spots[last].Share += unit.Mass(mass)
	default:
		k := r.beam.span(u)
		part := (u - r.at[k]) / (r.at[k+1] - r.at[k])
		spots[k].Share += unit.Mass(mass * (1 - part))
		spots[k+1].Share += unit.Mass(mass * part)
	}
}

// solve finds the beams, what each clip carries, and how that stands to its rating.
func (y *layer) solve(ratings Ratings) {
	o := &y.out
	o.Rating = ratings.Shear
	other := ratings.Pull
	if y.face.Ceiling {
		o.Rating, other = ratings.Pull, ratings.Shear
	}
	lifted := 0.0
	for i, r := range y.runs {
		r.beam.solve()
		for k, m := range r.beam.react {
			s := &o.Spots[r.first+k]
			s.Beam = unit.Mass(m)
			s.Load = max(s.Beam, s.Share)
			lifted = min(lifted, m)
		}
		if y.face.Ceiling {
			y.bend(r, &o.Rows[i])
		}
	}
	for i := range o.Spots {
		s := &o.Spots[i]
		s.State = Unrated
		if o.Rating > 0 && !y.load.Unrated {
			s.Of = float64(s.Load / o.Rating)
			s.State = StateOf(s.Of)
		}
		switch s.State {
		case Over:
			o.Count.Over++
		case Close:
			o.Count.Close++
		case Holds:
			o.Count.Holds++
		case Under:
			o.Count.Under++
		default:
			o.Count.Unrated++
		}
		if s.Load > o.Spots[o.Worst].Load {
			o.Worst = i
		}
		if s.Load < o.Spots[o.Least].Load {
			o.Least = i
		}
	}
	n := float64(len(o.Spots))
	o.Mean = unit.Mass(float64(o.Weight) / n)
	o.Per = n / float64(o.Boarded)
	o.Grid = assembly.Grid{Rows: y.rules.Rows, Along: unit.Length(1 / (o.Per * float64(y.rules.Rows)))}
	if lifted < -0.01 {
		y.note(LiftedClip, nums{"load": lifted})
	}
	y.judge(float64(other))
}

func (y *layer) judge(other float64) {
	o := &y.out
	worst, least := o.Spots[o.Worst], o.Spots[o.Least]
	say := func(c caution.Code, s Spot) {
		y.note(c, nums{"load": float64(s.Load), "rating": float64(o.Rating), "share": s.Of})
	}
	switch {
	case y.load.Unrated:
	case o.Rating <= 0 && other > 0:
		y.note(RatedOtherWay, nums{"load": float64(worst.Load), "rating": other})
	case o.Rating <= 0:
		y.note(caution.NoRating, nums{"load": float64(worst.Load)})
	case worst.State == Over:
		say(caution.OverRating, worst)
	case worst.State == Close:
		say(caution.CloseToRating, worst)
	}
	if least.State == Under {
		say(caution.UnderLoad, least)
	}
	sags, bends := -1, -1
	for i, r := range o.Rows {
		if unit.Over(r.SagOf, 1) && (sags < 0 || r.SagOf > o.Rows[sags].SagOf) {
			sags = i
		}
		if unit.Over(r.MomentOf, 1) && (bends < 0 || r.MomentOf > o.Rows[bends].MomentOf) {
			bends = i
		}
	}
	if sags >= 0 {
		r := o.Rows[sags]
		y.note(ChannelSags, nums{"sag": float64(r.Sag), "limit": float64(r.Sag) / r.SagOf, "share": r.SagOf})
	}
	if bends >= 0 {
		y.note(ChannelBends, nums{"share": o.Rows[bends].MomentOf})
	}
}

// bend finds how far the channel of a ceiling sags and what moment it takes.
func (y *layer) bend(r *run, row *Row) {
	s := y.load.Section
	ei := float64(s.Young) * s.Inertia
	if ei <= 0 {
		return
	}
	for k := range len(r.at) - 1 {
		moment, sag := r.beam.bend(k)
		sag *= unit.StandardGravity / ei
		if of := sag * SagLimit / (r.at[k+1] - r.at[k]); of > row.SagOf {
			row.Sag, row.SagOf = unit.Length(sag), of
		}
		if s.Between > 0 {
			row.MomentOf = max(row.MomentOf, moment*unit.StandardGravity/s.Between)
		}
	}
	for _, m := range r.beam.moment {
		if s.Over > 0 {
			row.MomentOf = max(row.MomentOf, -m*unit.StandardGravity/s.Over)
		}
	}
}

// nums are the numbers of a caution or fault, by name.
type nums = map[string]float64

func (y *layer) note(c caution.Code, args nums) {
	y.out.Notes = append(y.out.Notes, caution.Caution{Code: c, Args: args})
}
