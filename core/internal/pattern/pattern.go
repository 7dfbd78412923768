// Package pattern finds patterns in short texts of our own: a small part of
// regular expressions, written, meant and named as in the standard library.
//
// It stands here in place of the standard library's package for the size of the
// core, which is held to a limit when the page is built: it takes 80 kB less,
// compressed, of 900 kB for everything. A pattern may have plain characters,
// \d \s \w \b, classes of ASCII, groups, ( and (?:, alternatives, ^, $, and ? * +
// {n} {n,m}, which take as much as they can; it may not match nothing. The tests
// hold it to the standard library on every pattern in use. It tries one way after
// the other, so patterns and texts from outside have no place here.
package pattern

import (
	"strconv"
	"unicode/utf8"
)

// Pattern is a pattern ready for use; it does not change.
type Pattern struct {
	steps  []step
	groups int
}

// step is one instruction of a pattern.
type step struct {
	op  op
	set set // of one byte
	to  int // how far to go on, or which end of a group it is
}

type op byte

const (
	one    op = iota // a byte of the set
	other            // a character that is none of the set
	either           // go on with the next step; if that leads nowhere, with the one that is to away
	jump             // go on with the step that is to away
	mark             // an end of a group is here
	begin            // only at the beginning of the text
	finish           // only at its end
	edge             // only where a word begins or ends
	found
)

// set is a set of bytes.
type set [8]uint32

func (s *set) add(from, to byte) {
	for c := int(from); c <= int(to); c++ {
		s[c>>5] |= 1 << (c & 31)
	}
}

func (s *set) has(c byte) bool { return s[c>>5]>>(c&31)&1 != 0 }

// MustCompile makes a pattern ready; it panics if the text is none that this package knows.
func MustCompile(text string) *Pattern {
	p := reading{text: text}
	steps, least := p.alternatives()
	if p.at < len(text) || least == 0 {
		p.refuse()
	}
	return &Pattern{append(steps, step{op: found}), p.groups}
}

// Find returns where the first match from a place on begins and ends, and the same for its
// groups, −1 for one that has no part in it; nil without a match.
func (p *Pattern) find(s string, from int) []int {
	ends := make([]int, 2+2*p.groups)
	for i := range ends {
		ends[i] = -1
	}
	for ; from < len(s); from += width(s, from) {
		if to := p.run(s, 0, from, ends); to >= 0 {
			ends[0], ends[1] = from, to
			return ends
		}
	}
	return nil
}

// width is how many bytes the character at a place has.
func width(s string, at int) int {
	_, n := utf8.DecodeRuneInString(s[at:])
	return n
}

// run follows the steps from one on and returns where the match ends, −1 if there is none.
func (p *Pattern) run(s string, pc, at int, ends []int) int {
	for ; ; pc++ {
		switch st := &p.steps[pc]; st.op {
		case one:
			if at == len(s) || !st.set.has(s[at]) {
				return -1
			}
			at++
		case other:
			if at == len(s) || st.set.has(s[at]) {
				return -1
			}
			at += width(s, at)
		case either:
			if to := p.run(s, pc+1, at, ends); to >= 0 {
				return to
			}
			pc += st.to - 1
		case jump:
			pc += st.to - 1
		case mark:
			before := ends[st.to]
			ends[st.to] = at
			to := p.run(s, pc+1, at, ends)
			if to < 0 {
				ends[st.to] = before
			}
			return to
		case begin:
			if at > 0 {
				return -1
			}
		case finish:
			if at < len(s) {
				return -1
			}
		case edge:
			if (at > 0 && word.has(s[at-1])) == (at < len(s) && word.has(s[at])) {
				return -1
			}
		case found:
			return at
		}
	}
}

// MatchString reports whether a text has a match.
func (p *Pattern) MatchString(s string) bool { return p.find(s, 0) != nil }

// FindString returns the first match, "" without one.
func (p *Pattern) FindString(s string) string {
	if m := p.find(s, 0); m != nil {
		return s[m[0]:m[1]]
	}
	return ""
}

// FindStringSubmatch returns the first match and its groups, "" for one that has no part in it; nil without a match.
func (p *Pattern) FindStringSubmatch(s string) []string {
	m := p.find(s, 0)
	if m == nil {
		return nil
	}
	out := make([]string, len(m)/2)
	for i := range out {
		if m[2*i] >= 0 {
			out[i] = s[m[2*i]:m[2*i+1]]
		}
	}
	return out
}

// FindStringSubmatchIndex returns where the first match and its groups begin and
// end, −1 for one that has no part in it; nil without a match.
func (p *Pattern) FindStringSubmatchIndex(s string) []int { return p.find(s, 0) }

// FindAllString returns the first n matches that do not overlap, all of them if n is less than 0.
func (p *Pattern) FindAllString(s string, n int) (out []string) {
	for m := p.find(s, 0); m != nil && len(out) != n; m = p.find(s, m[1]) {
		out = append(out, s[m[0]:m[1]])
	}
	return out
}

// ReplaceAllString puts a text in the place of every match; $ has no meaning in it.
func (p *Pattern) ReplaceAllString(s, by string) string {
	out, behind := "", 0
	for m := p.find(s, 0); m != nil; m = p.find(s, behind) {
		out += s[behind:m[0]] + by
		behind = m[1]
	}
	return out + s[behind:]
}

// reading reads a pattern. Every part gives its steps and the least bytes that it takes.
type reading struct {
	text   string
	at     int
	groups int
}

func (p *reading) refuse() {
	panic("pattern: " + strconv.Quote(p.text) + " is not understood at character " + strconv.Itoa(p.at+1))
}

func (p *reading) peek() byte {
	if p.at < len(p.text) {
		return p.text[p.at]
	}
	return 0
}

func (p *reading) take(c byte) bool {
	if p.peek() != c || p.at == len(p.text) {
		return false
	}
	p.at++
	return true
}

func (p *reading) alternatives() (steps []step, least int) {
	steps, least = p.sequence()
	if p.take('|') {
		other, l := p.alternatives()
		first := append([]step{{op: either, to: len(steps) + 2}}, steps...)
		first = append(first, step{op: jump, to: len(other) + 1})
		steps, least = append(first, other...), min(least, l)
	}
	return steps, least
}

func (p *reading) sequence() (steps []step, least int) {
	for p.at < len(p.text) && p.peek() != '|' && p.peek() != ')' {
		part, l := p.repeated()
		steps, least = append(steps, part...), least+l
	}
	return steps, least
}

// repeated reads a part and how often it stands there.
func (p *reading) repeated() (steps []step, least int) {
	part, l := p.part()
	low, high := 1, 1
	switch {
	case p.take('?'):
		low = 0
	case p.take('*'):
		low, high = 0, -1
	case p.take('+'):
		high = -1
	case p.take('{'):
		low = p.count()
		high = low
		if p.take(',') {
			high = p.count()
		}
		if !p.take('}') || high < low {
			p.refuse()
		}
	}
	if high < 0 && l == 0 || p.peek() == '?' {
		p.refuse() // without end; as little as it can
	}
	for range low {
		steps = append(steps, part...)
	}
	if high < 0 {
		steps = append(steps, step{op: either, to: len(part) + 2})
		steps = append(append(steps, part...), step{op: jump, to: -len(part) - 1})
	}
	for n := high - low; n > 0; n-- {
		steps = append(steps, step{op: either, to: n * (len(part) + 1)})
		steps = append(steps, part...)
	}
	return steps, low * l
}

func (p *reading) count() (n int) {
	from := p.at
	for c := p.peek(); c >= '0' && c <= '9' && n < 100; c = p.peek() {
		n = 10*n + int(c-'0')
		p.at++
	}
	if p.at == from {
		p.refuse()
	}
	return n
}

// part reads a group, a class or a character.
func (p *reading) part() (steps []step, least int) {
	c := p.peek()
	p.at++
	switch c {
	case '(':
		group := 0
		if p.take('?') {
			if !p.take(':') {
				p.refuse()
			}
		} else {
			p.groups++
			group = p.groups
		}
		steps, least = p.alternatives()
		if !p.take(')') {
			p.refuse()
		}
		if group > 0 {
			steps = append([]step{{op: mark, to: 2 * group}}, steps...)
			steps = append(steps, step{op: mark, to: 2*group + 1})
		}
		return steps, least
	case '^':
		return []step{{op: begin}}, 0
	case '$':
		return []step{{op: finish}}, 0
	case '[':
		kind := one
		if p.take('^') {
			kind = other
		}
		return []step{{op: kind, set: p.class()}}, 1
	case '\\':
		if p.take('b') {
			return []step{{op: edge}}, 0
		}
		return []step{{set: p.escaped()}}, 1
	case '.', '*', '+', '?', '{', '}', ']':
		p.at--
		p.refuse()
	}
	var s set
	s.add(c, c)
	return []step{{set: s}}, 1
}

var (
	digit = setOf('0', '9')
	blank = setOf('\t', '\n', '\f', '\r', ' ', ' ')
	word  = setOf('0', '9', 'A', 'Z', 'a', 'z', '_', '_')
)

// setOf returns the set of the bytes between those of each pair.
func setOf(pairs ...byte) (s set) {
	for i := 0; i < len(pairs); i += 2 {
		s.add(pairs[i], pairs[i+1])
	}
	return s
}

// escaped reads what a backslash begins: a class, or a sign that stands for itself.
func (p *reading) escaped() (s set) {
	c := p.peek()
	p.at++
	switch {
	case c == 'd':
		return digit
	case c == 's':
		return blank
	case c == 'w':
		return word
	case c >= 0x80 || c == 0 || word.has(c):
		p.refuse()
	}
	s.add(c, c)
	return s
}

// class reads the members of a class up to its closing bracket.
func (p *reading) class() (s set) {
	for first := true; first || p.peek() != ']'; first = false {
		c := p.peek()
		if c >= 0x80 || c == 0 {
			p.refuse() // a character of several bytes, or the end
		}
		p.at++
		if c == '\\' {
			for i, bits := range p.escaped() {
				s[i] |= bits
			}
			continue
		}
		to := c
		if p.peek() == '-' && p.at+1 < len(p.text) && p.text[p.at+1] != ']' {
			to = p.text[p.at+1]
			p.at += 2
			if to < c || to >= 0x80 || to == '\\' {
				p.refuse()
			}
		}
		s.add(c, to)
	}
	p.at++
	return s
}
