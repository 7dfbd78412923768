package load

import (
	"math"
	"slices"
	"sort"
)

// row places the rows: those of the rhythm, cut at openings, and the short ones.
func (y *layer) row() {
	r := y.rules
	first, last := float64(r.First), float64(r.Last)
	var at []float64
	if y.h <= first+last+float64(near) {
		at = []float64{y.h / 2}
		y.note(OneRow, nums{"height": y.h, "need": first + last + float64(near)})
	} else {
		step := float64(r.Rows)
		n := max(1, math.Ceil((y.h-first-last)/step-hair))
		if r.Even {
			step = (y.h - first - last) / n
		}
		for i := range int(n) {
			at = append(at, first+step*float64(i))
		}
		at = append(at, y.h-last)
	}
	for i, v := range at {
		for _, s := range y.free(v, false) {
			y.channel(v, s.from, s.to, i, false)
		}
	}
	if r.AtOpenings > 0 {
		for _, h := range y.holes {
			mid := (h.u0 + h.u1) / 2
			for _, s := range y.free(mid, true) {
				if s.to <= h.v0+hair && h.v0-s.to < hair {
					y.atOpening(h, mid, s, h.v0, -1)
				}
				if s.from >= h.v1-hair && s.from-h.v1 < hair {
					y.atOpening(h, mid, s, h.v1, 1)
				}
			}
		}
	}
	sort.SliceStable(y.runs, func(i, j int) bool {
		a, b := y.runs[i], y.runs[j]
		return a.v < b.v || a.v == b.v && a.from < b.from
	})
}

// atOpening adds a short row beside an opening where none is near its edge.
func (y *layer) atOpening(h hole, mid float64, s stretch, edge, side float64) {
	deep := min(float64(y.rules.AtOpenings), s.to-s.from) / 2
	for _, r := range y.runs {
		if d := side * (r.v - edge); r.board0 <= mid && mid <= r.board1 && d > 0 && d <= float64(y.rules.AtOpenings)+hair {
			return
		}
	}
	v := edge + side*deep
	for _, f := range y.free(v, false) {
		if f.from <= mid && mid <= f.to && deep >= float64(clipHalf) {
			y.channel(v, max(f.from, h.u0-float64(beside)), min(f.to, h.u1+float64(beside)), 0, true)
		}
	}
}

// channel adds a length of channel for a stretch of board.
func (y *layer) channel(v, from, to float64, order int, added bool) {
	short := float64(y.rules.Short)
	r := &run{v: v, from: from + short, to: to - short, board0: from, board1: to, order: order, added: added}
	if added { // its ends are in the middle of boards
		r.from, r.to = max(from, short), min(to, y.w-short)
	} else {
		r.jamb0, r.jamb1 = from > hair, to < y.w-hair
	}
	if r.to-r.from >= float64(leastPiece) {
		y.runs = append(y.runs, r)
	}
}

// clip places the clips of one length of channel: next to its ends on the
// member that is furthest in but not beyond the rule, else on the stud at the
// edge or jamb, else on blocking; between them as few as the rule allows.
func (y *layer) clip(r *run) {
	put := func(u float64, s Seat) { r.at, r.seats = append(r.at, u), append(r.seats, s) }
	mid := (r.from + r.to) / 2
	if r.to-r.from < float64(twoClips) {
		put(y.seat(max(mid-float64(near), r.from+float64(clipHalf)), mid, min(mid+float64(near), r.to-float64(clipHalf)), r))
		return
	}
	inner := float64(near)
	reach := min(float64(y.rules.End), mid-inner-r.from)
	start, startSeat := y.seat(r.from+float64(clipHalf), r.from+reach, r.from+reach, r)
	end, endSeat := y.seat(r.to-reach, r.to-reach, r.to-float64(clipHalf), r)
	put(start, startSeat)
	stagger := y.rules.Staggered && r.order%2 == 1
	if y.face.Frame.Spacing == 0 {
		n := math.Ceil((end-start)/y.step - hair)
		step := (end - start) / n
		switch {
		case stagger && n > 1:
			for i := range int(n) {
				put(start+step*(float64(i)+0.5), OnMasonry)
			}
		default:
			for i := 1; i < int(n); i++ {
				put(start+step*float64(i), OnMasonry)
			}
		}
		put(end, OnMasonry)
		return
	}
	// next is the furthest member within step of a clip, else blocking.
	next := func(at, step float64) (float64, Seat) {
		u, s := at+step, OnBlocking
		for _, m := range y.members {
			if m > at+inner && m <= at+step+hair && m < end-inner {
				u, s = m, OnMember
			}
		}
		if u > end-inner {
			u = (at + end) / 2
		}
		return u, s
	}
	spans := func(at float64) (n int) {
		for n = 1; end-at > y.step+hair; n++ {
			at, _ = next(at, y.step)
		}
		return n
	}
	at := start
	if stagger && y.rules.Every > 1 && end-start > y.step+hair {
		u, s := next(at, y.step)
		want := at + float64(y.face.Frame.Spacing)*float64(y.rules.Every/2)
		for _, m := range y.members {
			if m > at+inner && m < u && math.Abs(m-want) < math.Abs(u-want) {
				u, s = m, OnMember
			}
		}
		put(u, s)
		at = u
	}
	for left := spans(at) - 1; left > 0; left-- {
		u, s := next(at, y.step)
		if y.rules.Even && !stagger { // as near to even spans as the members allow, with as few clips
			want := at + (end-at)/float64(left+1)
			for _, m := range y.members {
				if m > at+inner && m < u && math.Abs(m-want) < math.Abs(u-want)-hair && spans(m) <= left {
					u, s = m, OnMember
				}
			}
		}
		put(u, s)
		at = u
	}
	put(end, endSeat)
}

// seat returns what a clip between low and high is screwed to and where; want is
// where blocking would go.
func (y *layer) seat(low, want, high float64, r *run) (float64, Seat) {
	if y.face.Frame.Spacing == 0 {
		return want, OnMasonry
	}
	at, seat := want, OnBlocking
	try := func(u float64, s Seat) {
		if u >= low-hair && u <= high+hair && (seat == OnBlocking || math.Abs(u-want) < math.Abs(at-want)) {
			at, seat = u, s
		}
	}
	for _, m := range y.members {
		try(m, OnMember)
	}
	if seat == OnBlocking && y.face.Frame.Jambs {
		for _, h := range y.holes {
			if h.v0 <= r.v+float64(beside) && r.v-float64(beside) <= h.v1 {
				try(h.u0-float64(atJamb), OnJamb)
				try(h.u1+float64(atJamb), OnJamb)
			}
		}
	}
	if seat == OnBlocking && y.face.Frame.Ends && !r.added {
		if u := max(float64(atEnd), r.from+float64(clipHalf)); !r.jamb0 && u <= float64(atJamb) {
			try(u, OnEnd)
		}
		if u := min(y.w-float64(atEnd), r.to-float64(clipHalf)); !r.jamb1 && u >= y.w-float64(atJamb) {
			try(u, OnEnd)
		}
	}
	return at, seat
}

// plus puts in the clips that were added by hand.
func (y *layer) plus() {
	for _, p := range y.rules.Plus {
		u, v, _, _ := y.turn(p.X, p.Y, 0, 0)
		if !(u >= 0 && u <= y.w && v >= 0 && v <= y.h) {
			continue
		}
		r := y.nearest(u, v)
		u = min(max(u, r.from+float64(clipHalf)), r.to-float64(clipHalf))
		i := 0
		for i < len(r.at) && r.at[i] < u {
			i++
		}
		if i > 0 && u-r.at[i-1] < float64(near) || i < len(r.at) && r.at[i]-u < float64(near) {
			continue
		}
		seat := OnBlocking
		if y.face.Frame.Spacing == 0 {
			seat = OnMasonry
		}
		for _, m := range y.members {
			if math.Abs(m-u) < float64(clipHalf) {
				seat = OnMember
			}
		}
		r.at, r.seats = slices.Insert(r.at, i, u), slices.Insert(r.seats, i, seat)
	}
}

// nearest returns the run nearest to a place.
func (y *layer) nearest(u, v float64) *run {
	best, least := y.runs[0], math.Inf(1)
	for _, r := range y.runs {
		if d := math.Hypot(v-r.v, u-min(max(u, r.from), r.to)); d < least {
			best, least = r, d
		}
	}
	return best
}
