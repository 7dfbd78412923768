// Package link is the text form of a plan, to be put after the # of an address,
// into a message or a square code, and opened anywhere without asking a server.
//
// The text is made of letters, digits and - . = / only and ends in a letter or
// digit, so that messengers leave it alone:
//
//	1/pUS-d-nGarage.room/hgl13-w41/b/lgx16-gx16/gw4-fsw-t/ncl-m42-e/lTgr13/sw-aB-w160-h8ft/.k7Qa
//	│ │                  │         │ │          │         │         │      │              └ check letters
//	│ │                  │         │ │          │         │         │      └ surface, wall B
//	│ │                  │         │ leaf       gap       near      leaf, there already
//	│ plan               shelf     build-up
//	version
//
// A record is a letter and fields parted by -; a field is a letter and a value.
// What is as usual, or as in the record before, is left out. Quantities stand as typed, without their unit
// where it is the usual one. Text stands in letters and digits, a blank as a
// point, any other byte of its UTF-8 as = and two digits. Boards, fills, frames
// and fixings stand by their codes. Ids are not in it: a plan that comes out of
// a link is numbered anew (plan.Renumbered), nor are notes and history.
//
// Texts longer than Plain are deflated, see deflate.go.
package link

import (
	"fmt"
	"strconv"
	"strings"

	"twoleaf/core/plan"
)

// Version is the number that a link begins with.
const Version = 1

// Lengths of a link, characters.
const (
	Plain   = 600  // up to here it is readable text, and fits a square code
	Longest = 2000 // beyond it the plan goes as a file
	// incoming is what is looked at at all: the longest with every sign escaped.
	incoming = 8000
)

// alphabet of the check letters; 62⁴ = 14 776 336.
const alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"

// checkPrime is the largest prime below 62⁴: a single changed character and two
// exchanged neighbours always change the letters (derived: their difference is a
// product of numbers below the prime).
const checkPrime = 14776331

// check returns the four check letters of a text. The way they are made is the
// same for every version, so that a newer link is told from an altered one.
func check(text string) string {
	sum := uint64(0)
	for i := range len(text) {
		sum = (sum*257 + uint64(text[i]) + 1) % checkPrime
	}
	var letters [4]byte
	for i := range letters {
		letters[3-i] = alphabet[sum%62]
		sum /= 62
	}
	return string(letters[:])
}

// mark stands before the check letters; no record begins with a point.
const mark = "/."

// seal adds the check letters to a text.
func seal(text string) string { return text + mark + check(text) }

// The codes of what a link leaves out.
const (
	History = "history"
	Notes   = "notes"
)

// Encode returns a plan as text, and what of it is not in the text. A fault
// says that the plan is too long for a link or too large for anything.
func Encode(p plan.Plan) (text string, leftOut []string, f *plan.Fault) {
	for _, f := range plan.Check(p) {
		if f.Code == "tooMany" {
			return "", nil, f
		}
	}
	leftOut = []string{History}
	if p.Notes != "" {
		leftOut = append(leftOut, Notes)
	}
	body := write(p)
	text = seal(strconv.Itoa(Version) + "/" + body)
	if len(text) > Plain {
		if packed := seal(strconv.Itoa(Version) + packedMark + "/" + pack(body)); len(packed) < len(text) {
			text = packed
		}
	}
	if len(text) > Longest {
		return "", leftOut, &plan.Fault{
			Code: "tooLong", Leaf: -1, Field: "link", Typed: strconv.Itoa(len(text)), High: strconv.Itoa(Longest),
			Words: fmt.Sprintf("the link: %d characters are too long; at most %d. A file holds the plan", len(text), Longest),
		}
	}
	return text, leftOut, nil
}

// Decode returns the plan that a text stands for, numbered anew. The text may
// be a whole address, with signs after it that do not belong to it. The fault's
// code is cut, altered, newer, unreadable or tooLong; its Typed is the last
// piece that could be read, or the first that could not.
//
// A plan that comes out is not judged: see plan.Check.
func Decode(text string) (plan.Plan, *plan.Fault) {
	if len(text) > incoming {
		return plan.Plan{}, fault("tooLong", "", fmt.Sprintf("%d characters are no link; at most %d", len(text), Longest))
	}
	// A message may go on after the link, or have broken it over two lines.
	words := strings.Fields(afterHash(text))
	if len(words) == 0 {
		return plan.Plan{}, fault("unreadable", "", "this is no link to a plan")
	}
	p, f := decode(tidy(words[0]))
	if f != nil && len(words) > 1 {
		if whole, bad := decode(tidy(strings.Join(words, ""))); bad == nil {
			return whole, nil
		}
	}
	return p, f
}

func decode(text string) (plan.Plan, *plan.Fault) {
	version, packed, body, ok := begins(text)
	if !ok {
		return plan.Plan{}, fault("unreadable", tail(text), "this is no link to a plan")
	}
	at := len(body) - len(mark) - 4
	if at < 0 || body[at:at+len(mark)] != mark || strings.Trim(body[at+len(mark):], alphabet) != "" {
		return plan.Plan{}, fault("cut", tail(text), fmt.Sprintf("it is cut short: it ends at “%s” without its check letters", tail(text)))
	}
	letters := body[at+len(mark):]
	body = body[:at]
	if check(text[:len(text)-len(mark)-4]) != letters {
		return plan.Plan{}, altered(version, packed, body)
	}
	if version > Version {
		f := fault("newer", strconv.Itoa(version), fmt.Sprintf("it was made by a newer version (%d; this one reads up to %d)", version, Version))
		f.High = strconv.Itoa(Version)
		return plan.Plan{}, f
	}
	if packed {
		plain, ok := unpack(body)
		if !ok {
			return plan.Plan{}, fault("unreadable", "", "it cannot be unpacked")
		}
		body = plain
	}
	p, bad := read(body)
	if bad != nil {
		return plan.Plan{}, bad
	}
	return plan.Renumbered(p), nil
}

func fault(code, typed, words string) *plan.Fault {
	return &plan.Fault{Code: code, Leaf: -1, Field: "link", Typed: typed, Words: "the link: " + words}
}

// altered says which part of a changed text cannot be read, if one stands out.
func altered(version int, packed bool, body string) *plan.Fault {
	words := "a character of it was changed"
	if version == Version && !packed {
		if _, f := read(body); f != nil && f.Typed != "" {
			return fault("altered", f.Typed, fmt.Sprintf("it was changed at “%s”", f.Typed))
		}
	}
	return fault("altered", "", words)
}

// begins takes the version apart: digits, the mark of packed text, a stroke.
func begins(text string) (version int, packed bool, body string, ok bool) {
	head, body, ok := strings.Cut(text, "/")
	number, packed := strings.CutSuffix(head, packedMark)
	version, err := strconv.Atoi(number)
	return version, packed, body, ok && err == nil && version >= 1 && len(number) <= 4 && strconv.Itoa(version) == number
}

// afterHash returns the part of an address that is the link.
func afterHash(text string) string {
	if _, after, ok := strings.Cut(text, "#"); ok {
		return after
	}
	return text
}

// tidy takes what belongs to the link out of what was pasted: escapes of an
// address undone, no signs of the sentence around it.
func tidy(text string) string {
	if strings.Contains(text, "%") {
		text = percent(text)
	}
	return strings.TrimFunc(text, func(r rune) bool {
		return !(r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z')
	})
}

// percent undoes %2F and the like; what is no such escape stays.
func percent(text string) string {
	var b strings.Builder
	for i := 0; i < len(text); i++ {
		if text[i] == '%' && i+2 < len(text) {
			if v, err := strconv.ParseUint(text[i+1:i+3], 16, 8); err == nil {
				b.WriteByte(byte(v))
				i += 2
				continue
			}
		}
		b.WriteByte(text[i])
	}
	return b.String()
}

// tail is the end of a text, short enough for a message.
func tail(text string) string {
	const most = 12
	if len(text) <= most {
		return text
	}
	return "…" + strings.ToValidUTF8(text[len(text)-most:], "")
}
