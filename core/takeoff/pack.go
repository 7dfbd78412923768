package takeoff

// item is a piece to be cut from a sheet: l along the sheet, t across it.
type item struct {
	l, t   int
	turned bool // l is the piece's height on the face
	holes  []box
	on     box
}

// spot is where an item is cut.
type spot struct {
	sheet  int
	at     box
	turned bool
}

// packed is a way of cutting items from sheets.
type packed struct {
	sheets, cuts int
	at           []spot
	free         []free
}

// free is what a sheet has left.
type free struct {
	sheet int
	box
}

// packer cuts the items of one board.
type packer struct {
	long, wide, kerf, keep int
	grain                  bool
	items                  []item
	orders                 [4][]int
}

func (p *Prepared) packer(board int) *packer {
	s := p.job.Boards[board]
	return &packer{long: µm(max(s.Length, s.Width)), wide: µm(min(s.Length, s.Width)), kerf: µm(s.Kerf), keep: µm(p.rules.Keep), grain: s.Grain}
}

// add adds the pieces of a layer whose sheets stand upright or lie.
func (k *packer) add(bits []bit, upright bool) {
	for _, b := range bits {
		it := item{l: b.on.w, t: b.on.h, turned: upright, holes: b.holes, on: b.on}
		if upright {
			it.l, it.t = b.on.h, b.on.w
		}
		k.items = append(k.items, it)
	}
}

// ways is how many ways of packing there are: four orders, two measures of fit,
// two of parting what is left.
const ways = 16

// pack cuts every item by edge-to-edge cuts: the items in one order, each into
// the leftover that it fits best on any sheet begun, a new sheet where none will
// do. nil in at where more than limit sheets would be needed.
//
// The heuristic is the guillotine one with best fit, from common practice.
func (k *packer) pack(way, limit int) packed { return k.packIn(k.order(way&3), way, limit) }

func (k *packer) packIn(order []int, way, limit int) (out packed) {
	byArea, byLong := way&4 != 0, way&8 != 0
	out.at = make([]spot, len(k.items))
	left := make([]free, 0, 64)
	for _, i := range order {
		it := k.items[i]
		best, score, tie, turn := -1, 0, 0, false
		try := func(f int, a, b int, turned bool) {
			w, h := left[f].w-a, left[f].h-b
			if w < 0 || h < 0 {
				return
			}
			s, t := min(w, h), max(w, h)
			if byArea {
				s, t = left[f].w*left[f].h-a*b, s
			}
			if best < 0 || s < score || s == score && t < tie {
				best, score, tie, turn = f, s, t, turned
			}
		}
		for f := range left {
			try(f, it.l, it.t, false)
			if !k.grain {
				try(f, it.t, it.l, true)
			}
		}
		if best < 0 {
			if out.sheets == limit {
				out.at = nil
				return out
			}
			left = append(left, free{out.sheets, box{0, 0, k.long, k.wide}})
			out.sheets++
			best = len(left) - 1
			turn = it.l > k.long || it.t > k.wide
		}
		a, b := it.l, it.t
		if turn {
			a, b = b, a
		}
		f := left[best]
		out.at[i] = spot{f.sheet, box{f.x, f.y, a, b}, it.turned != turn}
		left[best] = left[len(left)-1]
		left = left[:len(left)-1]
		w, h := f.w-a-k.kerf, f.h-b-k.kerf // beyond the cuts
		if f.w > a {
			out.cuts++
		}
		if f.h > b {
			out.cuts++
		}
		// Either the strip beside the piece or the one above it keeps the corner.
		upFirst := w*f.h > h*f.w
		if byLong {
			upFirst = w < h
		}
		beside, above := box{f.x + a + k.kerf, f.y, w, f.h}, box{f.x, f.y + b + k.kerf, a, h}
		if !upFirst {
			beside.h, above.w = b, f.w
		}
		if w >= least && beside.h >= least {
			left = append(left, free{f.sheet, beside})
		}
		if h >= least && above.w >= least {
			left = append(left, free{f.sheet, above})
		}
		for _, o := range it.holes {
			o = out.at[i].onSheet(it.on, o)
			// What is sawn out of an opening serves too, where it is worth it.
			o = box{o.x + k.kerf, o.y + k.kerf, o.w - 2*k.kerf, o.h - 2*k.kerf}
			if o.w >= k.keep && o.h >= k.keep && !k.crossed(it, o, out.at[i]) {
				left = append(left, free{f.sheet, o})
			}
		}
	}
	out.free = left
	return out
}

// crossed reports whether another hole of the piece overlaps this one.
func (k *packer) crossed(it item, o box, s spot) bool {
	n := 0
	for _, other := range it.holes {
		if !o.meet(s.onSheet(it.on, other)).empty() {
			n++
		}
	}
	return n > 1
}

// onSheet returns where a part of a piece, given on the face, lies on the sheet:
// shifted, or turned by a right angle (never seen from behind).
func (s spot) onSheet(piece, part box) box {
	dx, dy := part.x-piece.x, part.y-piece.y
	if !s.turned {
		return box{s.at.x + dx, s.at.y + dy, part.w, part.h}
	}
	return box{s.at.x + dy, s.at.y + s.at.h - dx - part.w, part.h, part.w}
}

// order returns the items, largest first, by one of four measures.
func (k *packer) order(by int) []int {
	if k.orders[by] != nil {
		return k.orders[by]
	}
	size := func(i int) (int, int) {
		it := k.items[i]
		short, long := min(it.l, it.t), max(it.l, it.t)
		switch by {
		case 0:
			return short * long, long
		case 1:
			return long, short
		case 2:
			return short, long
		}
		return it.t, it.l
	}
	k.orders[by] = ranked(len(k.items), func(a, b int) int {
		a1, a2 := size(a)
		b1, b2 := size(b)
		if a1 != b1 {
			return b1 - a1
		}
		return b2 - a2
	})
	return k.orders[by]
}

// shuffles is how many orders near the usual ones each try packs in.
const shuffles = 12

// fewest packs every way, then in orders a little off the largest first that a
// number decides, and returns what has the fewest sheets, then cuts.
func (k *packer) fewest(number int) packed {
	best := k.pack(0, apart0)
	better := func(p packed) {
		if p.at != nil && (p.sheets < best.sheets || p.sheets == best.sheets && p.cuts < best.cuts) {
			best = p
		}
	}
	for way := 1; way < ways; way++ {
		better(k.pack(way, best.sheets))
	}
	d := dice(number)
	size := make([]int, len(k.items))
	for range shuffles {
		way := d.below(ways)
		for i, it := range k.items {
			// Up to half as large again as it is.
			size[i] = it.l / 1000 * (it.t / 1000) / 64 * (64 + d.below(32))
		}
		order := ranked(len(size), func(a, b int) int { return size[b] - size[a] })
		better(k.packIn(order, way, best.sheets))
	}
	return best
}
