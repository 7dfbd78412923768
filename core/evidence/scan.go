package evidence

import (
	"strconv"
	"strings"
)

// The forms in which texts state numbers are few and fixed, so they are read by
// hand: a library of regular expressions would be a tenth of what the page may weigh.

// reading is what a scanner has read: from where to where it stands in the text,
// and its numbers as they are written, "" for one that is left out.
type reading struct {
	from, to      int
	first, second string
	upTo          bool // "<=" stands before the first
}

// scanner reads one form where it begins exactly at a place inside a text.
type scanner func(s string, at int) (reading, bool)

// find returns the first reading that begins at a place or behind it.
func (scan scanner) find(s string, from int) (reading, bool) {
	for at := from; at < len(s); at++ {
		if r, ok := scan(s, at); ok {
			return r, true
		}
	}
	return reading{}, false
}

// in returns the first reading in a text.
func (scan scanner) in(s string) (reading, bool) { return scan.find(s, 0) }

// replace puts a text in the place of every reading.
func (scan scanner) replace(s, by string) string {
	out, behind := "", 0
	for r, ok := scan.in(s); ok; r, ok = scan.find(s, behind) {
		out += s[behind:r.from] + by
		behind = r.to
	}
	return out + s[behind:]
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }
func isUpper(c byte) bool { return 'A' <= c && c <= 'Z' }
func isLower(c byte) bool { return 'a' <= c && c <= 'z' }
func isSpace(c byte) bool { return c == ' ' || '\t' <= c && c <= '\r' && c != '\v' }
func isWord(c byte) bool  { return isDigit(c) || isUpper(c) || isLower(c) || c == '_' }

// pointed are the signs of which a number is made, in whatever order.
func pointed(c byte) bool { return isDigit(c) || c == '.' }

// run returns where a run of signs of a kind ends that begins at a place; the place itself if there is none.
func run(s string, at int, is func(byte) bool) int {
	for at < len(s) && is(s[at]) {
		at++
	}
	return at
}

func spaces(s string, at int) int { return run(s, at, isSpace) }
func digits(s string, at int) int { return run(s, at, isDigit) }

// number returns where "12" or "12.7" ends; a point without digits behind it is none of it.
func number(s string, at int) int {
	whole := digits(s, at)
	if whole > at && whole < len(s) && s[whole] == '.' {
		if end := digits(s, whole+1); end > whole+1 {
			return end
		}
	}
	return whole
}

// wordEnds reports whether no letter, digit or underscore stands at a place.
func wordEnds(s string, at int) bool { return at >= len(s) || !isWord(s[at]) }

// wordBegins reports whether none stands before it.
func wordBegins(s string, at int) bool { return at == 0 || !isWord(s[at-1]) }

// ends reports whether a space or the end of the text is at a place.
func ends(s string, at int) bool { return at >= len(s) || isSpace(s[at]) }

// value is a number as written, 0 for "".
func value(s string) float64 {
	v, _ := strconv.ParseFloat(s, 64)
	return v
}

// bracket reads "(…)", to the first closing one.
var bracket scanner = func(s string, at int) (reading, bool) {
	if s[at] != '(' {
		return reading{}, false
	}
	n := strings.IndexByte(s[at:], ')')
	return reading{from: at, to: at + n + 1}, n > 0
}

// decimal reads "12" or "12.7".
var decimal scanner = func(s string, at int) (reading, bool) {
	end := number(s, at)
	return reading{from: at, to: end, first: s[at:end]}, end > at
}

// before returns a scanner of numbers before a word: "11.2 kg/m2".
func before(word string) scanner {
	return func(s string, at int) (reading, bool) {
		end := run(s, at, pointed)
		if end == at {
			return reading{}, false
		}
		w := spaces(s, end)
		return reading{from: at, to: w + len(word), first: s[at:end]}, strings.HasPrefix(s[w:], word)
	}
}

// wholeAfter returns a scanner of whole numbers after a word: "ga25", "plate 140".
func wholeAfter(word string) scanner {
	return func(s string, at int) (reading, bool) {
		if !strings.HasPrefix(s[at:], word) {
			return reading{}, false
		}
		from := spaces(s, at+len(word))
		end := digits(s, from)
		return reading{from: at, to: end, first: s[from:end]}, end > from
	}
}

// times reads how often: "x2" as a word, or "2x " before what there are two of.
var times scanner = func(s string, at int) (reading, bool) {
	x := at
	if isSpace(s[at]) {
		x++
	}
	if (at == 0 || x > at) && x < len(s) && s[x] == 'x' {
		from := spaces(s, x+1)
		end := digits(s, from)
		return reading{from: at, to: end, first: s[from:end]}, end > from && wordEnds(s, end)
	}
	end := digits(s, at)
	if end == at || !wordBegins(s, at) {
		return reading{}, false
	}
	x = spaces(s, end)
	return reading{from: at, to: x + 2, first: s[at:end]}, x+1 < len(s) && s[x] == 'x' && isSpace(s[x+1])
}

// pair reads two numbers around a sign, spaces or none about it.
func pair(s string, at int, sign byte) (reading, bool) {
	end := number(s, at)
	if end == at {
		return reading{}, false
	}
	x := spaces(s, end)
	if x == len(s) || s[x] != sign {
		return reading{}, false
	}
	second := spaces(s, x+1)
	to := number(s, second)
	return reading{from: at, to: to, first: s[at:end], second: s[second:to]}, to > second
}

// section reads "38x89".
var section scanner = func(s string, at int) (reading, bool) { return pair(s, at, 'x') }

// between reads "12.7-15.9" where nothing but a space follows.
var between scanner = func(s string, at int) (reading, bool) {
	r, ok := pair(s, at, '-')
	return r, ok && ends(s, r.to)
}

// atSpacing reads "@400", "@<=600" and "@400 or 600".
var atSpacing scanner = func(s string, at int) (reading, bool) {
	if s[at] != '@' {
		return reading{}, false
	}
	r := reading{from: at}
	from := spaces(s, at+1)
	for _, sign := range []string{"<=", "≤"} {
		if strings.HasPrefix(s[from:], sign) {
			r.upTo = true
			from = spaces(s, from+len(sign))
			break
		}
	}
	r.to = number(s, from)
	if r.to == from {
		return reading{}, false
	}
	r.first = s[from:r.to]
	if or := spaces(s, r.to); strings.HasPrefix(s[or:], "or") {
		from = spaces(s, or+len("or"))
		if end := number(s, from); end > from {
			r.second, r.to = s[from:end], end
		}
	}
	return r, true
}

// sheetMM reads the thickness of sheet: "t0.84", "t0.84-1.52".
var sheetMM scanner = func(s string, at int) (reading, bool) {
	if s[at] != 't' || !wordBegins(s, at) {
		return reading{}, false
	}
	from := spaces(s, at+1)
	r := reading{from: at, to: number(s, from)}
	if r.to == from {
		return reading{}, false
	}
	r.first = s[from:r.to]
	if r.to < len(s) && s[r.to] == '-' {
		if end := number(s, r.to+1); end > r.to+1 {
			r.second, r.to = s[r.to+1:end], end
		}
	}
	return r, true
}

// blockMM reads "block 190" and "block wall 190".
var blockMM scanner = func(s string, at int) (reading, bool) {
	const block, wall = "block", "wall"
	if !strings.HasPrefix(s[at:], block) {
		return reading{}, false
	}
	from := spaces(s, at+len(block))
	if strings.HasPrefix(s[from:], wall) {
		from = spaces(s, from+len(wall))
	}
	end := number(s, from)
	return reading{from: at, to: end, first: s[from:end]}, end > from
}

// bareDepth reads a depth that stands alone, of two or three digits before its
// point: first in the text or behind a word ("steel 92").
var bareDepth scanner = func(s string, at int) (reading, bool) {
	from := at
	if at > 0 || !isDigit(s[at]) {
		if from = spaces(s, at+1); from == at+1 || !isLower(s[at]) && s[at] != '-' {
			return reading{}, false
		}
	}
	whole, end := digits(s, from)-from, number(s, from)
	r := reading{from: at, to: end, first: s[from:end]}
	if end < len(s) {
		r.to++ // the space behind it
	}
	return r, (whole == 2 || whole == 3) && ends(s, end)
}

// leadsGap reports whether a text begins as a space does: "12 argon", "16 mm air".
func leadsGap(s string) bool {
	at := run(s, 0, pointed)
	if at == 0 {
		return false
	}
	s = strings.TrimPrefix(strings.TrimPrefix(s[at:], " "), "mm ")
	for _, w := range []string{"air", "argon", "krypton", "cavity", "space", "gap"} {
		if strings.HasPrefix(s, w) && wordEnds(s, len(w)) {
			return true
		}
	}
	return false
}

// numbered returns the number of which a row is a letter: "NBC-W1" of "NBC-W1a".
func numbered(id string) (string, bool) {
	dash := run(id, 0, isUpper)
	if dash == 0 || dash == len(id) || id[dash] != '-' {
		return "", false
	}
	digit := run(id, dash+1, isUpper)
	letter := digits(id, digit)
	end := run(id, letter, isLower)
	return id[:letter], digit > dash+1 && letter > digit && end > letter && end == len(id)
}
