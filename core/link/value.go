package link

import (
	"fmt"
	"strings"

	"twoleaf/core/plan"
)

// escape writes a text in letters, digits, points for blanks, and = with two
// hexadecimal digits for every other byte.
func escape(s string) string {
	var b strings.Builder
	for i := range len(s) {
		switch c := s[i]; {
		case plainByte(c):
			b.WriteByte(c)
		case c == ' ':
			b.WriteByte('.')
		default:
			fmt.Fprintf(&b, "=%02x", c)
		}
	}
	return b.String()
}

func plainByte(c byte) bool {
	return c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z'
}

// unescape is the inverse of escape; false if the text is not one that escape gives.
func unescape(s string) (string, bool) {
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case plainByte(c):
			b.WriteByte(c)
		case c == '.':
			b.WriteByte(' ')
		case c == '=' && i+2 < len(s):
			hi, lo := hex(s[i+1]), hex(s[i+2])
			if hi < 0 || lo < 0 {
				return "", false
			}
			b.WriteByte(byte(hi<<4 | lo))
			i += 2
		default:
			return "", false
		}
	}
	return b.String(), true
}

func hex(c byte) int { return strings.IndexByte("0123456789abcdef", c) }

// units are the units of a quantity and how they stand in a link; none is the
// bare count, written only where a unit is usual.
var units = []struct{ unit, code string }{
	{"mm", "mm"}, {"cm", "cm"}, {"m", "m"}, {"in", "in"}, {"ft", "ft"}, {"kg", "kg"}, {"g", "g"}, {"lb", "lb"}, {"oz", "oz"},
	{"m2", "m2"}, {"ft2", "ft2"}, {"kg/m2", "kgm2"}, {"psf", "psf"}, {"%", "pc"}, {"cfm", "cfm"}, {"L/s", "lps"}, {"$", "usd"}, {"£", "gbp"}, {"€", "eur"}, {"", "n"},
}

// asIs stands before a quantity that is not in the one usual form; it is then
// an escaped text. No number begins with a letter.
const asIs = 'q'

// quantity writes a quantity; usual is the unit that may be left out.
func quantity[Q ~string](q Q, usual string) string {
	number, u, spaced := strings.Cut(string(q), " ")
	if numeral(number) && spaced == (u != "") {
		if u == usual {
			return number
		}
		for _, known := range units {
			if known.unit == u {
				return number + known.code
			}
		}
	}
	return string(asIs) + escape(string(q))
}

// readQuantity is the inverse of quantity.
func readQuantity(s, usual string) (string, bool) {
	if s == "" {
		return "", false
	}
	if s[0] == asIs {
		return unescape(s[1:])
	}
	number, code := s, ""
	if i := strings.IndexFunc(s, func(r rune) bool { return r >= 'a' && r <= 'z' && r != 'x' }); i >= 0 {
		number, code = s[:i], s[i:]
	}
	if !numeral(number) {
		return "", false
	}
	u := usual
	if code != "" {
		found := false
		for _, known := range units {
			if known.code == code {
				u, found = known.unit, true
			}
		}
		if !found {
			return "", false
		}
	}
	if u == "" {
		return number, true
	}
	return number + " " + u, true
}

// numeral reports whether a text is a decimal number, or two with an x between them.
func numeral(s string) bool {
	a, b, two := strings.Cut(s, "x")
	return decimal(a) && (!two || decimal(b))
}

func decimal(s string) bool {
	whole, part, point := strings.Cut(s, ".")
	return digits(whole) && (!point || digits(part))
}

func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// usual are the units that are left out in a plan of a region and a system.
type usual struct{ length, sheet, mass, area, surfaceMass, flow, money string }

func usualOf(region plan.Region, system plan.Units) usual {
	u := usual{length: "mm", sheet: "mm", mass: "kg", area: "m2", surfaceMass: "kg/m2", flow: "L/s", money: string(region.Currency())}
	if system == plan.Customary {
		u.length, u.sheet, u.mass, u.area, u.surfaceMass, u.flow = "in", "ft", "lb", "ft2", "psf", "cfm"
	}
	return u
}

// identity writes an id by its code, or as text after a point if no table has it.
func identity(t plan.Table, id string) string {
	if code, ok := t.Code(id); ok {
		return code
	}
	return "." + escape(id)
}

// readIdentity is the inverse of identity; known is false for a code that no
// table here has: a link of a newer table.
func readIdentity(t plan.Table, s string) (id string, known, ok bool) {
	if text, free := strings.CutPrefix(s, "."); free {
		id, ok = unescape(text)
		return id, true, ok
	}
	if s == "" || strings.Trim(s, "abcdefghijklmnopqrstuvwxyz0123456789") != "" {
		return "", true, false
	}
	id, known = t.ID(s)
	return id, known, true
}
