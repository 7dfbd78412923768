package takeoff

import (
	"cmp"
	"slices"
)

// lay is one way of covering one layer of one face.
type lay struct {
	upright bool
	bits    []bit
	joints  []seam
	ends    int // joints across the sheets
	off     int // joints that miss the framing
	close   int // neighbouring courses with joints nearer than wanted
	narrow  int // pieces narrower than wanted
	slim    int // the narrowest
	run     int // length of all joints
	alone   int // sheets, were it cut alone
	cuts    int
}

// bit is a piece before it has a sheet.
type bit struct {
	on    box
	holes []box
}

// seam is a joint: at pos across its direction, from one end to the other along it.
type seam struct {
	upright       bool // x = pos
	pos, from, to int
}

const (
	least  = 20_000  // no piece is thinner, nor is any joint shorter, 20 mm
	apart0 = 1 << 40 // no parallel joints meet
)

// lays fills in the ways of covering a layer: sheets across or along the lines,
// courses that start full, half, with the rest or evened out, end joints that
// alternate from course to course.
func (p *Prepared) lay(h *hung) {
	f, s := p.job.Faces[h.face], p.job.Boards[h.board]
	long, wide, gap := µm(max(s.Length, s.Width)), µm(min(s.Length, s.Width)), µm(s.Gap)
	stagger, narrow := µm(p.rules.Stagger), µm(p.rules.Narrow)
	lines, reach := linesOf(f)
	if f.Framing.Free || h.at.Base {
		lines = nil
	}
	one := p.packer(h.board)
	var all []lay
	for _, upright := range [2]bool{false, true} {
		across := f.Framing.Upright != upright // long sides cross the lines
		if h.at.Across && !across || h.at.Along && across {
			continue
		}
		// u runs along the sheets, v over the courses.
		u0, u1, v0, v1 := h.area.x, h.area.x+h.area.w, h.area.y, h.area.y+h.area.h
		if upright {
			u0, u1, v0, v1 = v0, v1, u0, u1
		}
		onU, onV := lines, lines
		if across {
			onV = nil
		} else {
			onU = nil
		}
		courses := partings(v0, v1, wide, gap, narrow, onV, reach)
		rows := partings(u0, u1, long, gap, narrow, onU, reach)
		for _, c := range courses[:min(len(courses), 5)] {
			var some []lay
			for _, pair := range pairs(rows, stagger, len(c.at) > 0) {
				some = append(some, p.build(h, upright, c, rows[pair[0]], rows[pair[1]], gap, stagger, narrow, one))
			}
			all = append(all, bestLays(some, 3)...)
		}
	}
	h.lays = bestLays(all, 24)
}

// bestLays returns the best of some, at most so many.
func bestLays(some []lay, most int) []lay {
	ranks := ranked(len(some), func(i, j int) int {
		a, b := &some[i], &some[j]
		return cmp.Or(a.off+a.close-b.off-b.close, a.alone-b.alone, a.narrow-b.narrow, a.cuts-b.cuts, a.ends-b.ends, a.run-b.run)
	})
	return inOrder(some, ranks[:min(len(ranks), most)])
}

// linesOf returns where the lines of framing lie on a face and how far from the
// middle of one a joint may be.
func linesOf(f Face) (lines []int, reach int) {
	g := f.Framing
	end := µm(f.Width)
	if !g.Upright {
		end = µm(f.Height)
	}
	switch {
	case len(g.At) > 0:
		for _, l := range g.At {
			if finite(l) {
				lines = append(lines, µm(l))
			}
		}
		slices.Sort(lines)
	case g.Spacing > 0 && finite(g.Spacing, g.First) && µm(g.Spacing) >= least:
		for at := µm(g.First); at <= end; at += µm(g.Spacing) {
			lines = append(lines, at)
		}
	}
	width := g.Width
	if !(width > 0) || !finite(width) {
		width = usualMember
	}
	return lines, max(0, µm(width/2-Bearing))
}

// parting is how a run is parted: where its joints are, how many miss the lines.
type parting struct {
	at          []int
	off, narrow int
}

// partings returns ways to part the run from a to b into pieces of at most most,
// a gap wide between two, fewest joints first. Each starts with a different first
// piece, from either end; joints fall on lines where there are any.
func partings(a, b, most, gap, narrow int, lines []int, reach int) []parting {
	var out []parting
	add := func(s parting) {
		if !slices.ContainsFunc(out, func(o parting) bool { return slices.Equal(o.at, s.at) }) {
			out = append(out, s)
		}
	}
	if b-a <= most {
		return []parting{{}}
	}
	back := make([]int, len(lines))
	for i, l := range lines {
		back[len(lines)-1-i] = -l
	}
	whole := b - a
	n := (whole + gap + most + gap - 1) / (most + gap) // fewest pieces
	rest := whole - (n-1)*(most+gap)
	for _, first := range [...]int{most, most / 2, rest, (rest + most) / 2, (whole - (n-1)*gap) / n, most * 3 / 4, most / 4, most * 2 / 3, most / 3} {
		if first < least || first > most {
			continue
		}
		add(part(a, b, first, most, gap, narrow, lines, reach))
		r := part(-b, -a, first, most, gap, narrow, back, reach)
		slices.Reverse(r.at)
		for i := range r.at {
			// The halves of an odd gap change sides with the mirror.
			r.at[i] = -r.at[i] - gap&1
		}
		add(r)
	}
	return inOrder(out, ranked(len(out), func(i, j int) int {
		x, y := out[i], out[j]
		return cmp.Or(x.off-y.off, len(x.at)-len(y.at), x.narrow-y.narrow)
	}))
}

func part(a, b, first, most, gap, narrow int, lines []int, reach int) (s parting) {
	from, size := a, first
	for b-from > most {
		// A joint at j ends one piece at j − gap/2, the next begins gap further on.
		want := from + size + gap/2
		if b-(want-gap/2+gap) < least { // no shaving at the end
			want = b - least - gap + gap/2
		}
		j, on := snap(want, from+least+gap/2, lines, reach)
		if !on && size < most {
			// No line for a short first piece: the next line will do.
			j, on = snap(from+most+gap/2, from+least+gap/2, lines, reach)
		}
		if !on {
			s.off++
			j = want
		}
		if j-gap/2-from < narrow {
			s.narrow++
		}
		s.at = append(s.at, j)
		from, size = j-gap/2+gap, most
	}
	if b-from < narrow {
		s.narrow++
	}
	return s
}

// snap returns the last place not after want, and after low, where a joint lies
// on a line: as wanted if that is within reach of one, else the middle of a line.
func snap(want, low int, lines []int, reach int) (int, bool) {
	if lines == nil {
		return want, want >= low
	}
	for i := len(lines) - 1; i >= 0; i-- {
		l := lines[i]
		if l-reach > want {
			continue
		}
		j := l
		if want <= l+reach {
			j = want
		}
		return j, j >= low
	}
	return want, false
}

// pairs returns which two partings take turns from course to course.
func pairs(rows []parting, stagger int, several bool) (out [][2]int) {
	for i := range rows[:min(len(rows), 8)] {
		if len(rows[i].at) == 0 || !several {
			out = append(out, [2]int{i, i})
			continue
		}
		best, far := i, 0
		for j := range rows {
			d := min(between(rows[i].at, rows[j].at), stagger)
			if d > far || d == far && best == i {
				best, far = j, d
			}
		}
		out = append(out, [2]int{i, best})
	}
	return out
}

// between returns the least distance of two sets of joints.
func between(a, b []int) int {
	d := apart0
	for _, x := range a {
		for _, y := range b {
			d = min(d, max(x-y, y-x))
		}
	}
	return d
}

// build lays the courses c with end joints as even and odd say, in turns.
func (p *Prepared) build(h *hung, upright bool, c, even, odd parting, gap, stagger, narrow int, one *packer) lay {
	l := lay{upright: upright, off: c.off, bits: make([]bit, 0, 16), joints: make([]seam, 0, 16)}
	u0, u1, v0, v1 := h.area.x, h.area.x+h.area.w, h.area.y, h.area.y+h.area.h
	if upright {
		u0, u1, v0, v1 = v0, v1, u0, u1
	}
	face := func(u, v, du, dv int) box {
		if upright {
			return box{v, u, dv, du}
		}
		return box{u, v, du, dv}
	}
	bottom := v0
	for i := 0; i <= len(c.at); i++ {
		top, next := v1, v1
		if i < len(c.at) {
			top, next = c.at[i]-gap/2, c.at[i]-gap/2+gap
			l.seam(h, seam{upright, c.at[i], u0, u1}, false)
		}
		row := even
		if i&1 == 1 {
			row = odd
		}
		l.off += row.off
		left := u0
		for j := 0; j <= len(row.at); j++ {
			right, after := u1, u1
			if j < len(row.at) {
				right, after = row.at[j]-gap/2, row.at[j]-gap/2+gap
				l.seam(h, seam{!upright, row.at[j], bottom, top}, true)
			}
			l.piece(face(left, bottom, right-left, top-bottom), h.holes)
			left = after
		}
		bottom = next
	}
	if len(c.at) > 0 && between(even.at, odd.at) < stagger {
		l.close += len(c.at)
	}
	l.slim = apart0
	for _, b := range l.bits {
		side := min(b.on.w, b.on.h)
		l.slim = min(l.slim, side)
		if side < narrow {
			l.narrow++
		}
	}
	one.items, one.orders[0] = one.items[:0], nil
	one.add(l.bits, upright)
	got := one.pack(0, apart0)
	l.alone, l.cuts = got.sheets, got.cuts
	return l
}

// seam adds a joint, less where an opening takes it away.
func (l *lay) seam(h *hung, s seam, end bool) {
	if len(h.holes) == 0 {
		l.joint(s, end)
		return
	}
	rest := []seam{s}
	for _, o := range h.holes {
		from, to, at, size := o.y, o.y+o.h, o.x, o.w
		if !s.upright {
			from, to, at, size = o.x, o.x+o.w, o.y, o.h
		}
		if s.pos < at || s.pos > at+size {
			continue
		}
		var left []seam
		for _, r := range rest {
			if to <= r.from || from >= r.to {
				left = append(left, r)
				continue
			}
			if from-r.from >= least {
				left = append(left, seam{s.upright, s.pos, r.from, from})
			}
			if r.to-to >= least {
				left = append(left, seam{s.upright, s.pos, to, r.to})
			}
		}
		rest = left
	}
	for _, r := range rest {
		l.joint(r, end)
	}
}

func (l *lay) joint(s seam, end bool) {
	l.joints = append(l.joints, s)
	l.run += s.to - s.from
	if end {
		l.ends++
	}
}

// piece adds what openings leave of a rectangle: less a strip where one takes a
// whole side away, two where one parts it, with holes where it only bites.
func (l *lay) piece(b box, openings []box) {
	if b.empty() {
		return
	}
	var holes []box
	for _, o := range openings {
		m := b.meet(o)
		if m.empty() {
			continue
		}
		if m.w == b.w {
			l.piece(box{b.x, b.y, b.w, m.y - b.y}, openings)
			l.piece(box{b.x, m.y + m.h, b.w, b.y + b.h - m.y - m.h}, openings)
			return
		}
		if m.h == b.h {
			l.piece(box{b.x, b.y, m.x - b.x, b.h}, openings)
			l.piece(box{m.x + m.w, b.y, b.x + b.w - m.x - m.w, b.h}, openings)
			return
		}
		holes = append(holes, m)
	}
	l.bits = append(l.bits, bit{b, holes})
}
