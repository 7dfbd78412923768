// Package deflate packs short texts and unpacks them, in the form of RFC 1951
// with a text known to both sides beforehand.
//
// It stands here in place of the standard library's package for the size of the
// core, which is held to a limit when the page is built: it takes 28 kB less,
// compressed, of 900 kB for everything. What the one packs the other unpacks,
// and what the one refuses the other does: the tests hold both side by side.
// Texts are packed as one block and looked at whole, so none may be long.
package deflate

// Of RFC 1951: what a match may be, and how many symbols there are.
const (
	shortest = 3
	longest  = 258
	farthest = 32768

	literals  = 286 // bytes, the end, lengths
	distances = 30
	endOfText = 256
	deepest   = 15 // bits of a symbol
	deepLevel = 7  // bits of a symbol of the lengths' own code
)

// span is what a symbol of a length or distance stands for: the least, and how
// many bits more say how much above it.
type span struct{ least, bits int }

// spans returns those of n symbols; the bits grow by one every so many symbols.
func spans(n, least, every int) []span {
	out := make([]span, n)
	for i := range out {
		bits := max(0, i/every-1)
		out[i] = span{least, bits}
		least += 1 << bits
	}
	return out
}

var (
	lengthSpans   = append(spans(28, shortest, 4), span{longest, 0})
	distanceSpans = spans(distances, 1, 2)
)

// symbolOf returns the symbol for a length or distance.
func symbolOf(list []span, v int) int {
	i := len(list) - 1
	for list[i].least > v {
		i--
	}
	return i
}

// order is that in which the lengths of the lengths' own code are sent.
var order = [19]int{16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15}

// The symbols of the lengths' own code that stand for several, and for how many.
const (
	again   = 16 // the one before, 3 to 6 times
	zeros   = 17 // 3 to 10 zeros
	nothing = 18 // 11 to 138 zeros
)

var runs = [3]span{{3, 2}, {3, 3}, {11, 7}}

// fixed are the lengths of the symbols that need not be sent.
func fixed() (literal, distance []uint8) {
	literal, distance = make([]uint8, 288), make([]uint8, 32)
	for i := range literal {
		switch {
		case i < 144, i >= 280:
			literal[i] = 8
		case i < 256:
			literal[i] = 9
		default:
			literal[i] = 7
		}
	}
	for i := range distance {
		distance[i] = 5
	}
	return literal, distance
}
