package takeoff

import (
	"cmp"
	"slices"

	"twoleaf/core/unit"
)

// Tries is how many tries a whole search for the best cut is. Any stretch of
// them may be made anywhere; Better joins the stretches to the same answer in
// any order.
const Tries = 48

// moves is how many changes of one layer each try makes.
const moves = 24

// Prepared is a job with the ways each of its layers may be covered. It is not
// changed by its use.
type Prepared struct {
	job    Job
	rules  Rules // with the usual ones filled in
	hung   []hung
	notes  []Note
	of     [][]int // layers by board
	usable []int   // boards with layers
}

// Prepare returns a job ready for tries. What cannot be cut is left out and said
// in the notes of every Cut; the rest is cut.
func Prepare(job Job) *Prepared {

	p := &Prepared{job: job, rules: job.Rules.withDefaults(), of: make([][]int, len(job.Boards))}
	p.sequence()
	for i := range p.hung {
		h := &p.hung[i]
		s := job.Boards[h.board]
		if n := (h.area.w/µm(s.Width) + 2) * (h.area.h/µm(s.Width) + 2); n > mostPieces {
			say(&p.notes, ManyPieces, h.at.Face, h.k, h.at.Board, "count most", float64(n), mostPieces)
			continue
		}
		p.lay(h)
		if len(h.lays) > 0 && len(h.lays[0].bits) == 0 {
			h.lays = nil
			say(&p.notes, FaceCovered, h.at.Face, h.k, h.at.Board, "")
		}
	}
	// Layers that cannot be laid leave the list; those over them look further down.
	for i := range p.hung {
		for b := p.hung[i].before; b >= 0 && p.hung[b].lays == nil; {
			b = p.hung[b].before
			p.hung[i].before = b
		}
	}
	for i := range p.hung {
		h := &p.hung[i]
		if h.lays == nil {
			continue
		}
		p.of[h.board] = append(p.of[h.board], i)
		if h.before < 0 {
			continue
		}
		under := p.hung[h.before].lays
		h.apart = make([][]int, len(h.lays))
		for a := range h.lays {
			h.apart[a] = make([]int, len(under))
			for b := range under {
				h.apart[a][b] = nearest(h.lays[a].joints, under[b].joints)
			}
		}
	}
	// Which lays leave the layers over them most joints that keep clear.
	stagger := µm(p.rules.Stagger)
	for i := len(p.hung) - 1; i >= 0; i-- {
		h := &p.hung[i]
		if h.ahead == nil {
			h.ahead = make([]int, len(h.lays))
		}
		if h.apart == nil {
			continue
		}
		under := &p.hung[h.before]
		under.ahead = make([]int, len(under.lays))
		for b := range under.lays {
			for a := range h.lays {
				under.ahead[b] = max(under.ahead[b], h.ahead[a]+clear(h.apart[a][b], stagger))
			}
		}
	}
	for b := range p.of {
		if len(p.of[b]) > 0 {
			p.usable = append(p.usable, b)
		}
	}
	return p
}

// clear is 1 where joints keep the stagger.
func clear(distance, stagger int) int {
	if distance >= stagger {
		return 1
	}
	return 0
}

// nearest returns the least distance of two parallel joints that run beside each other.
func nearest(a, b []seam) int {
	d := apart0
	for _, x := range a {
		for _, y := range b {
			if x.upright == y.upright && min(x.to, y.to)-max(x.from, y.from) >= least {
				d = min(d, max(x.pos-y.pos, y.pos-x.pos))
			}
		}
	}
	return d
}

// dice is a fixed sequence of numbers from a start (splitmix64), the same everywhere.
type dice uint64

func (d *dice) below(n int) int {
	*d += 0x9e3779b97f4a7c15
	z := uint64(*d)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return int((z ^ z>>31) >> 33 % uint64(n))
}

// cost is what a choice of lays is judged by, gravest first: joints off the
// framing or too close, sheets to buy, narrow pieces, cuts, end joints, run of joints.
type cost [6]int

func (c cost) less(d cost) bool { return slices.Compare(c[:], d[:]) < 0 }

// choice is a lay for every layer.
type choice struct {
	lay    []int
	packed []packed // by board
}

// Cut makes the tries from up to but not including to and returns the best. The
// same stretch gives the same answer everywhere.
func (p *Prepared) Cut(from, to int) Cut {
	var best choice
	var least cost
	which := -1
	for try := max(from, 0); try < min(to, Tries); try++ {
		c := p.try(try)
		if k := p.cost(c); which < 0 || k.less(least) {
			best, least, which = c, k, try
		}
	}
	if which < 0 {
		return Cut{Try: -1, Notes: p.notes}
	}
	return p.result(best, least, which)
}

// Better returns the better of two cuts of one job; of equal ones the earlier try.
func Better(a, b Cut) Cut {
	switch {
	case a.Try < 0:
		return b
	case b.Try < 0:
		return a
	}
	if cmp.Or(slices.Compare(a.cost[:], b.cost[:]), cmp.Compare(a.Try, b.Try)) <= 0 {
		return a
	}
	return b
}

// CutAll prepares a job and makes every try.
func CutAll(job Job) Cut {
	p := Prepare(job)
	return p.Why(p.Cut(0, Tries))
}

// try chooses a lay for every layer by its number, then tries others one at a time.
func (p *Prepared) try(number int) choice {
	d := dice(number)
	c := choice{lay: make([]int, len(p.hung)), packed: make([]packed, len(p.of))}
	for i, h := range p.hung {
		if n := len(h.lays); n > 0 {
			good := p.allowed(c, i)
			at := 0
			if number > 0 {
				// The better ranked are the likelier.
				at = min(d.below(len(good)), d.below(len(good)))
			}
			c.lay[i] = good[at]
		}
	}
	for _, b := range p.usable {
		c.packed[b] = p.quick(c, b)
	}
	now := p.cost(c)
	if len(p.hung) > 0 {
		for range moves {
			i := d.below(len(p.hung))
			h := p.hung[i]
			if len(h.lays) < 2 {
				continue
			}
			was, packed := c.lay[i], c.packed[h.board]
			good := p.allowed(c, i)
			c.lay[i] = good[d.below(len(good))]
			if c.lay[i] == was {
				continue
			}
			c.packed[h.board] = p.quick(c, h.board)
			if k := p.cost(c); now.less(k) {
				c.lay[i], c.packed[h.board] = was, packed
			} else {
				now = k
			}
		}
	}
	for _, b := range p.usable {
		c.packed[b] = p.items(c, b).fewest(number)
	}
	return c
}

// allowed returns the lays of a layer whose joints keep clear of those of the
// layer before it as chosen, and let the layers after do so, or, where none
// does, those that come closest to it.
func (p *Prepared) allowed(c choice, i int) []int {
	h := p.hung[i]
	stagger := µm(p.rules.Stagger)
	var good []int
	most, far := -1, -1
	worst := h.lays[0].off + h.lays[0].close
	for a, l := range h.lays {
		if l.off+l.close > worst {
			break
		}
		d, kept := stagger, h.ahead[a]
		if h.apart != nil {
			d = min(stagger, h.apart[a][c.lay[h.before]])
			kept += clear(d, stagger)
		}
		if kept > most || kept == most && d > far {
			most, far, good = kept, d, good[:0]
		}
		if kept == most && d == far {
			good = append(good, a)
		}
	}
	return good
}

func (p *Prepared) items(c choice, board int) *packer {
	k := p.packer(board)
	for _, i := range p.of[board] {
		l := p.hung[i].lays[c.lay[i]]
		k.add(l.bits, l.upright)
	}
	return k
}

func (p *Prepared) quick(c choice, board int) packed { return p.items(c, board).pack(0, apart0) }

func (p *Prepared) cost(c choice) (k cost) {
	stagger := µm(p.rules.Stagger)
	for i, h := range p.hung {
		if h.lays == nil {
			continue
		}
		l := h.lays[c.lay[i]]
		k[0] += l.off + l.close
		if h.apart != nil && h.apart[c.lay[i]][c.lay[h.before]] < stagger {
			k[0]++
		}
		k[2] += l.narrow
		k[4] += l.ends
		k[5] += l.run
	}
	for _, b := range p.usable {
		k[1] += max(0, c.packed[b].sheets-max(0, p.job.Boards[b].Owned))
		k[3] += c.packed[b].cuts
	}
	return k
}

// result writes a choice out.
func (p *Prepared) result(c choice, k cost, try int) Cut {
	out := Cut{Try: try, cost: k, Notes: slices.Clone(p.notes)}
	r := p.rules
	stagger, narrow := µm(r.Stagger), µm(r.Narrow)
	spots := make([]spot, 0, 64)
	next := make([]int, len(p.of)) // items of a board written out by now
	sheetOf := make([]map[int]int, len(p.of))
	totals := make([]Total, len(p.of))
	for b, s := range p.job.Boards {
		sheetOf[b] = map[int]int{}
		totals[b].Board = s.ID
	}
	net := make([]int, len(p.of))
	for i, h := range p.hung {
		if h.lays == nil {
			continue
		}
		l := h.lays[c.lay[i]]
		s := p.job.Boards[h.board]
		row := Hung{Face: h.at.Face, Layer: h.k, Board: s.ID, Order: len(out.Hung), Area: h.area.rect(), Upright: l.upright,
			Joints: len(l.joints), Ends: l.ends, JointRun: metres(l.run),
			PastLeft: h.past[0], PastRight: h.past[1], PastFoot: h.past[2], PastHead: h.past[3]}
		if h.apart != nil {
			if d := h.apart[c.lay[i]][c.lay[h.before]]; d < apart0 {
				row.Stagger = metres(d)
				if d < stagger {
					say(&out.Notes, StaggerShort, row.Face, row.Layer, row.Board, "distance wanted", float64(metres(d)), float64(r.Stagger))
				}
			}
		}
		if l.off > 0 {
			say(&out.Notes, OffFraming, row.Face, row.Layer, row.Board, "count", float64(l.off))
		}
		if l.close > 0 {
			say(&out.Notes, CloseCourses, row.Face, row.Layer, row.Board, "count wanted", float64(l.close), float64(r.Stagger))
		}
		if l.narrow > 0 && l.slim < narrow {
			say(&out.Notes, NarrowPiece, row.Face, row.Layer, row.Board, "count width wanted", float64(l.narrow), float64(metres(l.slim)), float64(r.Narrow))
		}
		t := &totals[h.board]
		t.Joints += row.Joints
		t.Ends += row.Ends
		t.Area += Sheets(unit.Area(p.job.Faces[h.face].Width*p.job.Faces[h.face].Height), unit.Area(s.Width*s.Length), r.Waste)
		for _, b := range l.bits {
			at := c.packed[h.board].at[next[h.board]]
			next[h.board]++
			n, begun := sheetOf[h.board][at.sheet]
			if !begun {
				n = len(out.Sheets)
				sheetOf[h.board][at.sheet] = n
				t.Sheets++
				out.Sheets = append(out.Sheets, Used{Board: s.ID, No: t.Sheets, Owned: t.Sheets <= s.Owned, Width: min(s.Width, s.Length), Length: max(s.Width, s.Length)})
			}
			piece := Piece{Face: row.Face, Layer: row.Layer, Board: s.ID, On: b.on.rect(), Sheet: n, At: at.at.rect(), Turned: at.turned}
			net[h.board] += b.on.area()
			for j, o := range b.holes {
				piece.Holes = append(piece.Holes, o.rect())
				net[h.board] -= o.area()
				for _, other := range b.holes[:j] {
					if m := o.meet(other); !m.empty() {
						net[h.board] += m.area() // counted once
					}
				}
			}
			row.Pieces = append(row.Pieces, len(out.Pieces))
			out.Sheets[n].Pieces = append(out.Sheets[n].Pieces, len(out.Pieces))
			out.Pieces = append(out.Pieces, piece)
			spots = append(spots, at)
		}
		out.Hung = append(out.Hung, row)
	}
	for i := range out.Sheets {
		pieces := out.Sheets[i].Pieces
		pieces = inOrder(pieces, ranked(len(pieces), func(a, b int) int { return spots[pieces[b]].at.area() - spots[pieces[a]].at.area() }))
		out.Sheets[i].Pieces = pieces
		for part, n := range pieces {
			out.Pieces[n].Part = part
		}
	}
	keep := µm(r.Keep)
	for _, b := range p.usable {
		s, t, got := p.job.Boards[b], &totals[b], c.packed[b]
		for _, f := range got.free {
			if f.w >= keep && f.h >= keep {
				n := sheetOf[b][f.sheet]
				out.Sheets[n].Left = append(out.Sheets[n].Left, f.rect())
				t.Left += squares(f.area())
			}
		}
		t.Cuts = got.cuts
		t.Owned = min(max(s.Owned, 0), t.Sheets)
		t.Buy = t.Sheets - t.Owned
		t.Mass = unit.Mass(float64(t.Buy)) * s.Mass
		t.Boarded = squares(net[b])
		one := µm(s.Width) * µm(s.Length)
		t.Bound = (net[b] + one - 1) / one
		out.Totals = append(out.Totals, *t)
		if t.Sheets > t.Area {
			say(&out.Notes, OverAreaRule, "", -1, t.Board, "sheets rule waste", float64(t.Sheets), float64(t.Area), r.Waste)
		}
	}
	return out
}

// Why returns a cut with the reasons wherever a board needs more sheets than the
// area rule: about how many it would be with joints anywhere (free), without
// stagger (loose), without grain (plain), without all three (all). Where all
// is no fewer, it is the sizes of the faces. It takes about as long as a few
// tries for each such board, so that it is asked once, at the end.
func (p *Prepared) Why(c Cut) Cut {
	notes := slices.Clone(c.Notes)
	for i, n := range notes {
		board := slices.IndexFunc(p.job.Boards, func(s Sold) bool { return s.ID == n.Board })
		if n.Code != OverAreaRule || board < 0 {
			continue
		}
		without := func(change func(*Job)) float64 {
			job := p.job
			job.Faces, job.Boards = slices.Clone(job.Faces), slices.Clone(job.Boards)
			change(&job)
			q := Prepare(job)
			return float64(q.items(q.try(0), board).fewest(0).sheets)
		}
		free := func(j *Job) {
			for i := range j.Faces {
				j.Faces[i].Framing.Free = true
			}
		}
		loose := func(j *Job) { j.Rules.Stagger = -1 }
		plain := func(j *Job) { j.Boards[board].Grain = false }
		args := named("free loose plain all", without(free), without(loose), without(plain), without(func(j *Job) { free(j); loose(j); plain(j) }))
		for name, v := range n.Args {
			args[name] = v
		}
		notes[i].Args = args
	}
	c.Notes = notes
	return c
}

// Choice is what another length of sheet comes to.
type Choice struct {
	Length       unit.Length
	Sheets, Buy  int
	Joints, Ends int
	Cuts         int
	Each         unit.Mass // of one sheet
	Mass         unit.Mass // of those to buy
}

// Other returns what a board comes to as it is and in each other length sold,
// by so many tries of each, and the whole cut of each. The first is as it is.
func Other(job Job, board string, tries int) ([]Choice, []Cut) {
	var list []Choice
	var cuts []Cut
	at := slices.IndexFunc(job.Boards, func(s Sold) bool { return s.ID == board })
	if at < 0 {
		return nil, nil
	}
	as := job.Boards[at]
	for i, length := range append([]unit.Length{as.Length}, as.Lengths...) {
		if i > 0 && (length == as.Length || !(length > 0)) {
			continue
		}
		job.Boards = slices.Clone(job.Boards)
		s := as
		s.Length = length
		s.Mass = as.Mass * unit.Mass(length/as.Length)
		if i > 0 {
			s.Owned = 0
		}
		job.Boards[at] = s
		cut := Prepare(job).Cut(0, tries)
		for _, t := range cut.Totals {
			if t.Board == board {
				list = append(list, Choice{length, t.Sheets, t.Buy, t.Joints, t.Ends, t.Cuts, s.Mass, t.Mass})
				cuts = append(cuts, cut)
			}
		}
	}
	return list, cuts
}
