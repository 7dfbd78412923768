package deflate

// Unpack returns the text of what was packed, given the one that was known; ok
// is false for what is damaged and for a text of more than so many bytes. What
// stands behind the end is not looked at.
func Unpack(packed []byte, known string, most int) (text string, ok bool) {
	r := reader{packed: packed, out: []byte(known), most: len(known) + most}
	for last := false; !last && !r.bad; {
		last = r.take(1) == 1
		switch r.take(2) {
		case 0:
			r.stored()
		case 1:
			literal, distance := fixed()
			r.parts(literal, distance)
		case 2:
			r.parts(r.codes())
		default:
			r.bad = true
		}
	}
	if r.bad {
		return "", false
	}
	return string(r.out[len(known):]), true
}

// reader takes bits out of bytes; when they end or make no sense it goes bad
// and gives zeros.
type reader struct {
	packed []byte
	at     int // bits taken
	out    []byte
	most   int
	bad    bool
}

func (r *reader) take(n int) (v int) {
	for i := range n {
		if r.at>>3 >= len(r.packed) {
			r.bad = true
			return 0
		}
		v |= int(r.packed[r.at>>3]>>(r.at&7)&1) << i
		r.at++
	}
	return v
}

func (r *reader) put(b byte) {
	if len(r.out) >= r.most {
		r.bad = true
		return
	}
	r.out = append(r.out, b)
}

// stored reads a block that is not packed.
func (r *reader) stored() {
	r.at = (r.at + 7) &^ 7
	n := r.take(16)
	if r.take(16) != n^0xffff {
		r.bad = true
	}
	for ; n > 0 && !r.bad; n-- {
		r.put(byte(r.take(8)))
	}
}

// table is a code: how many symbols have each depth, and the symbols by depth.
type table struct {
	count   [deepest + 1]int
	symbols []int
}

// table returns the code of symbols by their depths. It must be whole; only a
// single symbol may leave half of it unused, and no symbol all.
func (r *reader) table(depths []uint8) (t table) {
	for n := 1; n <= deepest; n++ {
		for s, depth := range depths {
			if int(depth) == n {
				t.count[n]++
				t.symbols = append(t.symbols, s)
			}
		}
	}
	left := 1
	for _, n := range t.count[1:] {
		if left = left<<1 - n; left < 0 {
			break
		}
	}
	if left != 0 && len(t.symbols) > 0 && !(len(t.symbols) == 1 && t.count[1] == 1) {
		r.bad = true
	}
	return t
}

// symbol reads one symbol of a code.
func (r *reader) symbol(t *table) int {
	code, first, before := 0, 0, 0
	for _, n := range t.count[1:] {
		code |= r.take(1)
		if r.bad {
			return 0
		}
		if code < first+n {
			return t.symbols[before+code-first]
		}
		before += n
		first, code = (first+n)<<1, code<<1
	}
	r.bad = true
	return 0
}

// codes reads the codes of a block.
func (r *reader) codes() (literal, distance []uint8) {
	l, d, n := r.take(5)+endOfText+1, r.take(5)+1, r.take(4)+4
	if l > literals || d > distances {
		r.bad = true
		return nil, nil
	}
	depth := make([]uint8, len(order))
	for _, s := range order[:n] {
		depth[s] = uint8(r.take(3))
	}
	code := r.table(depth)
	all := make([]uint8, 0, l+d)
	for len(all) < l+d && !r.bad {
		s := r.symbol(&code)
		value, times := uint8(s), 1
		if s >= again {
			value = 0
			if s == again {
				if len(all) == 0 {
					r.bad = true
					break
				}
				value = all[len(all)-1]
			}
			times = runs[s-again].least + r.take(runs[s-again].bits)
		}
		for range times {
			all = append(all, value)
		}
	}
	if r.bad || len(all) != l+d {
		r.bad = true
		return nil, nil
	}
	return all[:l], all[l:]
}

// parts reads a text up to its end.
func (r *reader) parts(literal, distance []uint8) {
	l, d := r.table(literal), r.table(distance)
	for !r.bad {
		s := r.symbol(&l)
		switch {
		case r.bad, s == endOfText:
			return
		case s < endOfText:
			r.put(byte(s))
			continue
		case s >= literals:
			r.bad = true
			return
		}
		n := r.span(lengthSpans, s-endOfText-1)
		k := r.symbol(&d)
		if k >= distances {
			r.bad = true
			return
		}
		from := len(r.out) - r.span(distanceSpans, k)
		if from < 0 {
			r.bad = true
		}
		for i := 0; i < n && !r.bad; i++ {
			r.put(r.out[from+i])
		}
	}
}

func (r *reader) span(list []span, symbol int) int {
	return list[symbol].least + r.take(list[symbol].bits)
}
