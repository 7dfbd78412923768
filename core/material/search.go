package material

import (
	"math"
	"sort"
	"strconv"
	"strings"
	"unicode"

	"twoleaf/core/internal/text"
	"twoleaf/core/unit"
)

// kindWords are further words by which the trade calls a kind.
var kindWords = []struct {
	kind  Kind
	words string
}{
	{Gypsum, "drywall plasterboard wallboard board gyp"},
	{Plywood, "ply plywood wood"},
	{OSB, "osb oriented strand wood"},
	{MDF, "mdf fibreboard fiberboard wood"},
	{Particle, "particleboard chipboard chip wood"},
	{Hardboard, "hardboard fibreboard wood"},
	{Softboard, "softboard insulation sound board fibreboard fiberboard"},
	{Cement, "cement backer fibercement fibre fiber"},
	{Magnesium, "mgo magnesium oxide"},
	{Limp, "mlv loaded vinyl limp mass barrier rubber"},
	{Lead, "lead metal"},
	{Steel, "steel metal"},
	{Glass, "glass pane window"},
	{Laminated, "glass pane window laminated"},
	{Plaster, "plaster lath"},
	{Block, "cmu block masonry concrete"},
	{Brick, "brick masonry"},
	{Concrete, "concrete slab masonry"},
	{Aerated, "aerated aircrete block masonry"},
	{Topping, "topping screed poured"},
}

// Search returns the boards of a plan's region that answer a query by part of a
// name, by a thickness in mm or inches, or both: "5/8", "15.9", "16 mm", "ply",
// "1/2 light", "12,5". Every word must be found, at the start of a word of the
// name or of a word the trade uses for its kind; every thickness must fit the
// nominal one or the real one to the step it was typed in. Best first: whole
// words and nominal thicknesses before others, the region's usual board before
// its like, then the order of the table. An
// empty query returns the region's boards; an empty region searches them all.
func Search(query, region string) []Board {
	words, sizes := queryParts(query)
	type hit struct {
		board Board
		score int
	}
	var hits []hit
	for _, b := range InRegion(region) {
		score, all := 0, true
		for _, w := range words {
			s := wordScore(b, w)
			score += s
			all = all && s > 0
		}
		for _, z := range sizes {
			s := sizeScore(b, z)
			score += s
			all = all && s > 0
		}
		if b.Usual {
			score++
		}
		if all {
			hits = append(hits, hit{b, score})
		}
	}
	sort.SliceStable(hits, func(i, j int) bool { return hits[i].score > hits[j].score })
	out := make([]Board, len(hits))
	for i, h := range hits {
		out[i] = h.board
	}
	return out
}

// size is a thickness asked for: the number as typed and, with a unit, that unit only.
type size struct {
	value float64
	step  float64 // half the last digit typed
	whole string  // "5/8", "1 1/8", "12.5", as nominal texts have it
	u     string  // "in", "mm", or "" for either
}

var vulgar = []string{
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"\u2044", "/", "″", `"`, "”", `"`, "\u00a0", " ", "\u202f", " ",
}

// queryParts splits a query into words and thicknesses.
func queryParts(query string) (words []string, sizes []size) {
	const longest = 64 // runes; a search box, not a text
	if r := []rune(query); len(r) > longest {
		query = string(r[:longest])
	}
	fields := strings.FieldsFunc(strings.ToLower(text.Replace(query, vulgar)), func(r rune) bool {
		return unicode.IsSpace(r) || r == ';' || r == '(' || r == ')'
	})
	for i := 0; i < len(fields); i++ {
		f := fields[i]
		z, ok := sizeOf(f)
		if !ok {
			if w := strings.Trim(f, ".,-"); w != "" {
				words = append(words, w)
			}
			continue
		}
		// "1 1/8", "1-1/8": a whole number before a fraction.
		if i+1 < len(fields) && z.u == "" && z.value == math.Trunc(z.value) && strings.Contains(fields[i+1], "/") {
			if frac, ok := sizeOf(fields[i+1]); ok && frac.value < 1 {
				z = size{value: z.value + frac.value, whole: z.whole + " " + frac.whole, u: frac.u}
				i++
			}
		}
		if z.u == "" && i+1 < len(fields) {
			if u := sizeUnit(fields[i+1]); u != "" {
				z.u = u
				i++
			}
		}
		sizes = append(sizes, z)
	}
	return words, sizes
}

func sizeUnit(s string) string {
	switch s {
	case `"`, "in", "inch", "inches", "''":
		return "in"
	case "mm":
		return "mm"
	case "lb", "kg", "ga":
		return s
	}
	return ""
}

// sizeOf reads "5/8", `5/8"`, "1-1/8", "15.9", "12,5", "16mm".
func sizeOf(s string) (size, bool) {
	end := strings.IndexFunc(s, func(r rune) bool { return !strings.ContainsRune("0123456789./,-", r) })
	u := ""
	if end >= 0 {
		if u = sizeUnit(s[end:]); u == "" {
			return size{}, false
		}
		s = s[:end]
	}
	whole, frac, mixed := strings.Cut(s, "-")
	if !mixed {
		whole, frac = "", s
	}
	if n, d, ok := strings.Cut(frac, "/"); ok {
		a, err1 := strconv.Atoi(n)
		b, err2 := strconv.Atoi(d)
		w := 0
		if mixed {
			var err error
			if w, err = strconv.Atoi(whole); err != nil {
				return size{}, false
			}
		}
		if err1 != nil || err2 != nil || b < 2 || a < 1 || a > 1000 || b > 128 {
			return size{}, false
		}
		z := size{value: float64(w) + float64(a)/float64(b), whole: frac, u: u}
		if w > 0 {
			z.whole = whole + " " + frac
		}
		return z, true
	}
	n := strings.Replace(s, ",", ".", 1)
	v, err := strconv.ParseFloat(n, 64)
	if err != nil || mixed || v <= 0 || v > 1e4 {
		return size{}, false
	}
	step := 0.5
	if _, dec, ok := strings.Cut(n, "."); ok {
		step = 0.5 * math.Pow(10, -float64(len(dec)))
	}
	return size{value: v, step: step, whole: n, u: u}, true
}

// sizeScore returns 3 for a thickness the trade calls so, 2 for the real one, 0 for none.
func sizeScore(b Board, z size) int {
	number, u, _ := cutLast(b.Nominal)
	if number == z.whole && (z.u == "" || z.u == u) {
		return 3
	}
	mm := float64(b.Thickness / unit.Millimetre)
	fraction := strings.Contains(z.whole, "/")
	const slip = 0.06 // mm: 15.9 for 15.875, 12.7 for 12.70
	if !fraction && (z.u == "" || z.u == "mm") && math.Abs(mm-z.value) <= z.step+slip {
		return 2
	}
	inches := mm / 25.4
	if (fraction || z.u == "in") && (z.u == "" || z.u == "in") && math.Abs(inches-z.value) <= z.step+0.005 {
		return 2
	}
	return 0
}

// cutLast splits "1 1/8 in" at its last space.
func cutLast(s string) (before, after string, ok bool) {
	i := strings.LastIndexByte(s, ' ')
	if i < 0 {
		return s, "", false
	}
	return s[:i], s[i+1:], true
}

// wordScore returns 6 for a whole word of the short name, 5 for the start of
// one, 3 and 2 for the full name, 1 for a word of the kind, 0 for none.
func wordScore(b Board, w string) int {
	if s := inWords(b.Short, w); s > 0 {
		return 4 + s
	}
	if s := inWords(b.Name, w); s > 0 {
		return 1 + s
	}
	for _, k := range kindWords {
		if k.kind == b.Kind && inWords(k.words, w) > 0 {
			return 1
		}
	}
	return 0
}

func inWords(text, w string) int {
	best := 0
	for _, t := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '/' && r != '.'
	}) {
		if t == w {
			return 2
		}
		if strings.HasPrefix(t, w) {
			best = 1
		}
	}
	return best
}
