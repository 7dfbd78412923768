package deflate

// Pack returns a text packed, given one that the other side knows.
func Pack(text, known string) []byte {
	parts := match(known+text, len(known))
	literal, distance := make([]int, literals), make([]int, distances)
	for _, p := range parts {
		if p.back == 0 {
			literal[p.n]++
		} else {
			literal[endOfText+1+symbolOf(lengthSpans, p.n)]++
			distance[symbolOf(distanceSpans, p.back)]++
		}
	}
	literal[endOfText]++

	var own, usual writer
	own.put(1|2<<1, 3) // the last block, with codes of its own
	l, d := depths(literal, deepest), depths(distance, deepest)
	own.codes(l, d)
	own.parts(parts, l, d)
	usual.put(1|1<<1, 3)
	l, d = fixed()
	usual.parts(parts, l, d)
	if len(usual.out) < len(own.out) {
		own = usual
	}
	return own.out
}

// part is n bytes as they stood so far back, or the byte n where that is 0.
type part struct{ n, back int }

// tries is how many places are looked at for a match.
const tries = 256

// match takes a text apart from a place on.
func match(text string, from int) (parts []part) {
	last := map[string]int{}         // where three bytes stood last, plus 1
	before := make([]int, len(text)) // where the three that begin at a place stood before, plus 1
	note := func(at int) {
		if at+shortest <= len(text) {
			key := text[at : at+shortest]
			before[at] = last[key]
			last[key] = at + 1
		}
	}
	best := func(at int) (p part) {
		if at+shortest > len(text) {
			return p
		}
		most := min(longest, len(text)-at)
		place := last[text[at:at+shortest]]
		for k := 0; k < tries && place > 0 && at-(place-1) <= farthest && p.n < most; k++ {
			n := shortest
			for n < most && text[place-1+n] == text[at+n] {
				n++
			}
			if n > p.n {
				p = part{n, at - (place - 1)}
			}
			place = before[place-1]
		}
		return p
	}
	for at := range from {
		note(at)
	}
	for at := from; at < len(text); {
		p := best(at)
		note(at)
		if p.n < longest && p.n > 0 && best(at+1).n > p.n {
			p.n = 0 // a longer one begins at the next byte
		}
		if p.n == 0 {
			p = part{n: int(text[at])}
			at++
		} else {
			for end := at + p.n; at+1 < end; {
				at++
				note(at)
			}
			at++
		}
		parts = append(parts, p)
	}
	return parts
}

// depths returns how many bits each symbol gets, by how often it is used: those
// of Huffman's tree, which is made flatter until none has more than most.
func depths(often []int, most int) []uint8 {
	often = append([]int(nil), often...)
	for {
		type node struct{ weight, above int }
		var nodes []node
		var roots, symbols []int
		for s, n := range often {
			if n > 0 {
				roots = append(roots, len(nodes))
				symbols = append(symbols, s)
				nodes = append(nodes, node{weight: n})
			}
		}
		// least takes the lightest root away.
		least := func() int {
			k := 0
			for i, r := range roots {
				if nodes[r].weight < nodes[roots[k]].weight {
					k = i
				}
			}
			r := roots[k]
			roots[k] = roots[len(roots)-1]
			roots = roots[:len(roots)-1]
			return r
		}
		for len(roots) > 1 {
			a, b := least(), least()
			nodes[a].above, nodes[b].above = len(nodes), len(nodes)
			roots = append(roots, len(nodes))
			nodes = append(nodes, node{weight: nodes[a].weight + nodes[b].weight})
		}
		depth := make([]int, len(nodes))
		out := make([]uint8, len(often))
		if len(nodes) == 1 {
			depth[0] = 1
		}
		deep := 0
		for i := len(nodes) - 2; i >= 0; i-- {
			depth[i] = depth[nodes[i].above] + 1
			deep = max(deep, depth[i])
		}
		for i, s := range symbols {
			out[s] = uint8(depth[i])
			often[s] = often[s]/2 + 1
		}
		if deep <= most {
			return out
		}
	}
}

// writer puts bits into bytes, the lowest first.
type writer struct {
	out  []byte
	bits int // of the last byte in use
}

func (w *writer) put(v, n int) {
	for i := range n {
		if w.bits == 0 {
			w.out = append(w.out, 0)
		}
		w.out[len(w.out)-1] |= byte(v>>i&1) << w.bits
		w.bits = (w.bits + 1) & 7
	}
}

// symbols puts symbols by the bits that each has: shorter ones first, the highest bit first.
type symbols struct {
	w      *writer
	depths []uint8
	code   []int
}

func (w *writer) symbols(depths []uint8) symbols {
	code := make([]int, len(depths))
	next := 0
	for n := uint8(1); n <= deepest; n++ {
		for s, depth := range depths {
			if depth == n {
				code[s] = next
				next++
			}
		}
		next <<= 1
	}
	return symbols{w, depths, code}
}

func (s symbols) put(symbol int) {
	for i := int(s.depths[symbol]) - 1; i >= 0; i-- {
		s.w.put(s.code[symbol]>>i, 1)
	}
}

// parts puts a text and its end.
func (w *writer) parts(parts []part, literal, distance []uint8) {
	l, d := w.symbols(literal), w.symbols(distance)
	for _, p := range parts {
		if p.back == 0 {
			l.put(p.n)
			continue
		}
		k := symbolOf(lengthSpans, p.n)
		l.put(endOfText + 1 + k)
		w.put(p.n-lengthSpans[k].least, lengthSpans[k].bits)
		k = symbolOf(distanceSpans, p.back)
		d.put(k)
		w.put(p.back-distanceSpans[k].least, distanceSpans[k].bits)
	}
	l.put(endOfText)
}

// codes puts the codes themselves, as the depths of their symbols.
func (w *writer) codes(literal, distance []uint8) {
	for len(literal) > endOfText+1 && literal[len(literal)-1] == 0 {
		literal = literal[:len(literal)-1]
	}
	for len(distance) > 1 && distance[len(distance)-1] == 0 {
		distance = distance[:len(distance)-1]
	}
	all := append(append([]uint8(nil), literal...), distance...)
	// Runs of the same are sent as one symbol and how many.
	type run struct{ symbol, more int }
	var sent []run
	often := make([]int, len(order))
	for i := 0; i < len(all); {
		n := 1
		for i+n < len(all) && all[i+n] == all[i] {
			n++
		}
		r := run{symbol: int(all[i])}
		switch {
		case all[i] == 0 && n >= 11:
			r.symbol = nothing
		case all[i] == 0 && n >= 3:
			r.symbol = zeros
		case i > 0 && all[i] == all[i-1] && n >= 3:
			r.symbol = again
		default:
			n = 1
		}
		if r.symbol >= again {
			s := runs[r.symbol-again]
			n = min(n, s.least+1<<s.bits-1)
			r.more = n - s.least
		}
		i += n
		sent = append(sent, r)
		often[r.symbol]++
	}
	depth := depths(often, deepLevel)
	n := len(order)
	for n > 4 && depth[order[n-1]] == 0 {
		n--
	}
	w.put(len(literal)-endOfText-1, 5)
	w.put(len(distance)-1, 5)
	w.put(n-4, 4)
	for _, s := range order[:n] {
		w.put(int(depth[s]), 3)
	}
	code := w.symbols(depth)
	for _, r := range sent {
		code.put(r.symbol)
		if r.symbol >= again {
			w.put(r.more, runs[r.symbol-again].bits)
		}
	}
}
