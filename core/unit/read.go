package unit

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"twoleaf/core/internal/text"
)

// Code names what is wrong with a text or with the size of a quantity.
type Code string

// The codes.
const (
	Empty     Code = "empty"     // nothing was typed
	NotNumber Code = "notNumber" // no number, or more than a number
	Ambiguous Code = "ambiguous" // "1,200": thousands or decimals; both readings in Mend
	BadUnit   Code = "unit"      // an unknown unit, or one of another kind
	Zero      Code = "zero"
	Negative  Code = "negative"
	Small     Code = "small" // under the allowed range
	Large     Code = "large" // over it
)

// ReadError says why a text is no quantity of the kind, or why a quantity is
// out of range. Low and High are the range, where one was given; Mend holds
// what to offer instead: the readings of an ambiguous number, or the quantities
// that a slip of ten or of the unit would have meant.
type ReadError struct {
	Code      Code
	Typed     string
	Want      Kind
	Low, High Quantity
	Mend      []Quantity
}

// Error returns the fault in words, without the field's name.
func (e *ReadError) Error() string {
	switch e.Code {
	case Empty:
		return "empty"
	case Ambiguous:
		return "“" + e.Typed + "” has two readings: " + e.either()
	case BadUnit:
		return "“" + e.Typed + "” has no unit of " + string(e.Want)
	case Zero:
		return string(e.Want) + " is 0"
	case Negative:
		return string(e.Want) + " is negative"
	case Small:
		return "“" + e.Typed + "” is under " + string(e.Low) + e.perhaps()
	case Large:
		return "“" + e.Typed + "” is over " + string(e.High) + e.perhaps()
	}
	return "“" + e.Typed + "” is not a number"
}

func (e *ReadError) either() string {
	words := make([]string, len(e.Mend))
	for i, q := range e.Mend {
		words[i] = string(q)
	}
	return strings.Join(words, " or ")
}

func (e *ReadError) perhaps() string {
	if len(e.Mend) == 0 {
		return ""
	}
	return "; " + e.either() + "?"
}

// longest is the number of runes a field may hold; anything longer is no number.
const longest = 64

// Read reads a quantity of a kind as people write it and returns it in
// canonical form; assumed is the unit of a bare number. The error is a *ReadError.
//
//	72 lb · 72lbs · 32.5kg · 12,5 · 5/8" · 1 1/4 in · 1-1/4" · ⅝ · 8' 6 1/2" · $14.98 · 1 200 mm
//
// A comma before exactly three digits has two readings and is asked back
// ("1,200"); a comma before any other number of digits, or beside a point, has
// one. A fraction must be an exact decimal: its denominator a product of twos
// and fives; without a unit it is inches unless feet are assumed. Feet and inches become inches, pounds and ounces pounds, exactly.
// Zero is allowed of money, counts, flows of air and per cent only.
func Read(k Kind, text string, assumed Unit) (Quantity, error) {
	return read(k, text, func(s scan) (Quantity, Code) { return s.quantity(k, assumed) })
}

// ReadLength reads a length.
func ReadLength(text string, assumed Unit) (Quantity, error) { return Read(OfLength, text, assumed) }

// ReadMass reads a mass.
func ReadMass(text string, assumed Unit) (Quantity, error) { return Read(OfMass, text, assumed) }

// ReadArea reads an area.
func ReadArea(text string, assumed Unit) (Quantity, error) { return Read(OfArea, text, assumed) }

// ReadSurfaceMass reads a mass per area.
func ReadSurfaceMass(text string, assumed Unit) (Quantity, error) {
	return Read(OfSurfaceMass, text, assumed)
}

// ReadMoney reads an amount in a currency; another currency's sign is a wrong unit.
func ReadMoney(text string, currency Unit) (Quantity, error) {
	q, err := Read(OfMoney, text, currency)
	if err == nil && q.Unit() != currency {
		return "", &ReadError{Code: BadUnit, Typed: strings.TrimSpace(text), Want: OfMoney}
	}
	return q, err
}

// ReadCount reads a whole number of pieces; 0 is one.
func ReadCount(text string) (Quantity, error) {
	return Read(OfCount, text, One)
}

// ReadPercent reads a percentage.
func ReadPercent(text string) (Quantity, error) { return Read(OfPercent, text, Pct) }

// ReadSheet reads the two sides of a sheet:
//
//	4x8 · 4' x 8' · 4 × 8 ft · 1200x2400 · 1.2x2.4m · 48 in by 96 in
//
// Bare numbers take the unit in which they are a sheet as sold, 0.4–1.6 m by
// 0.9–6.2 m: "4x8" is feet and "1200x2400" millimetres whatever is assumed. Where
// more than one unit fits, inches go before centimetres if assumed is inches or
// feet, else the readings are asked back; where none fits it is the assumed one.
func ReadSheet(text string, assumed Unit) (Quantity, error) {
	var asked []Quantity
	q, err := read(OfLength, text, func(s scan) (Quantity, Code) {
		q, several, code := s.sheet(assumed)
		for _, m := range several {
			if !slices.Contains(asked, m) {
				asked = append(asked, m)
			}
		}
		return q, code
	})
	if e, ok := err.(*ReadError); ok && e.Code == Ambiguous && len(e.Mend) == 0 {
		e.Mend = asked
	}
	return q, err
}

// read runs a reading once with commas as thousands and once as decimals; where
// both succeed and differ, the text is ambiguous.
func read(k Kind, text string, as func(scan) (Quantity, Code)) (Quantity, error) {
	typed := strings.TrimSpace(text)
	fail := func(c Code, mend ...Quantity) (Quantity, error) {
		return "", &ReadError{Code: c, Typed: typed, Want: k, Mend: mend}
	}
	if len([]rune(typed)) > longest {
		return fail(NotNumber)
	}
	clean := tidy(typed)
	if clean == "" {
		return fail(Empty)
	}
	if strings.HasPrefix(clean, "-") {
		if _, code := as(scan{text: clean[1:]}); code == "" {
			return fail(Negative)
		}
		return fail(NotNumber)
	}
	clean = strings.TrimPrefix(clean, "+")
	decimals, code := as(scan{text: clean})
	thousands, code2 := as(scan{text: clean, thousands: true})
	switch {
	case code != "" && code2 != "":
		return fail(code)
	case code != "": // pieces come whole: "1,200" of them has one reading
		return thousands, nil
	case code2 == "" && !sameSize(thousands, decimals):
		return fail(Ambiguous, thousands, decimals.short())
	}
	return decimals, nil
}

// sameSize reports whether two readings come to the same, as 1200 mm and 1.200 m do.
func sameSize(a, b Quantity) bool {
	a1, a2, _ := a.extent()
	b1, b2, _ := b.extent()
	return a == b || (Same(a1, b1) && Same(a2, b2))
}

// short drops the zeros that end a decimal.
func (q Quantity) short() Quantity {
	n, u := q.Parts()
	sides := strings.Split(n, "x")
	for i, s := range sides {
		if strings.Contains(s, ".") {
			sides[i] = strings.TrimRight(strings.TrimRight(s, "0"), ".")
		}
	}
	return join(strings.Join(sides, "x"), u)
}

var tidier = []string{
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"⅕", " 1/5", "⅖", " 2/5", "⅗", " 3/5", "⅘", " 4/5",
	"\u2044", "/", // fraction slash
	"\u2032", "'", "’", "'", "‘", "'", "´", "'", "`", "'", "\u2033", `"`, "”", `"`, "“", `"`, "''", `"`,
	"×", "x", "✕", "x", "*", "x",
	"\u2212", "-", "–", "-", "‐", "-", "‑", "-",
	"²", "2", "^2", "2",
	"\u00a0", " ", "\u202f", " ", "\u2009", " ", "\u2007", " ", "\t", " ",
}

// tidy brings the many signs for one thing to one, in lower case.
func tidy(s string) string {
	s = strings.ReplaceAll(strings.ToLower(s), "′′", `"`)
	return strings.TrimSpace(text.Replace(s, tidier))
}

// unitWords are the ways units are written, by their tidied text without dots and spaces.
var unitWords = map[string]Unit{
	"mm": MM, "millimetre": MM, "millimetres": MM, "millimeter": MM, "millimeters": MM,
	"cm": CM, "centimetre": CM, "centimetres": CM, "centimeter": CM, "centimeters": CM,
	"m": M, "metre": M, "metres": M, "meter": M, "meters": M,
	"in": IN, "inch": IN, "inches": IN, `"`: IN, "ft": FT, "foot": FT, "feet": FT, "'": FT,
	"kg": KG, "kgs": KG, "kilo": KG, "kilos": KG, "kilogram": KG, "kilograms": KG, "g": G, "gram": G, "grams": G,
	"lb": LB, "lbs": LB, "#": LB, "pound": LB, "pounds": LB, "oz": OZ, "ounce": OZ, "ounces": OZ,
	"m2": M2, "sqm": M2, "squaremetres": M2, "squaremeters": M2, "ft2": FT2, "sqft": FT2, "sf": FT2, "squarefeet": FT2,
	"psf": PSF, "lb/ft2": PSF, "lbs/ft2": PSF, "lb/sqft": PSF, "lbs/sqft": PSF, "kg/m2": KGM2, "kg/sqm": KGM2,
	"cfm": CFM, "ft3/min": CFM, "l/s": LPS, "lps": LPS,
	"%": Pct, "percent": Pct, "pct": Pct,
	"$": USD, "usd": USD, "us$": USD, "cad": USD, "ca$": USD, "c$": USD, "aud": USD, "a$": USD, "au$": USD,
	"£": GBP, "gbp": GBP, "€": EUR, "eur": EUR, "euro": EUR, "euros": EUR,
	"pc": One, "pcs": One, "piece": One, "pieces": One, "sheet": One, "sheets": One, "ea": One,
}

func unitOf(word string) (Unit, bool) {
	word = strings.ReplaceAll(word, " per ", "/")
	u, ok := unitWords[strings.ReplaceAll(strings.ReplaceAll(word, " ", ""), ".", "")]
	return u, ok
}

// number is an exact decimal, digits·10^−scale, and its text; broken says that
// it was written with a fraction.
type number struct {
	digits int64
	scale  int
	text   string
	broken bool
}

// maxDigits keeps digits within what a float64 holds exactly.
const maxDigits = 15

func exact(digits int64, scale int) number {
	for scale > 0 && digits%10 == 0 {
		digits, scale = digits/10, scale-1
	}
	s := strconv.FormatInt(digits, 10)
	if scale > 0 {
		if len(s) <= scale {
			s = strings.Repeat("0", scale-len(s)+1) + s
		}
		s = s[:len(s)-scale] + "." + s[len(s)-scale:]
	}
	return number{digits: digits, scale: scale, text: s}
}

// plus returns n·times + m exactly; false if it has too many digits.
func (n number) plus(times int64, m number) (number, bool) {
	const most = 1_000_000_000_000_000 // 10^maxDigits
	if n.digits >= most/times {
		return number{}, false
	}
	a, b := n.digits*times, m.digits
	scale := max(n.scale, m.scale)
	for i := n.scale; i < scale; i++ {
		if a *= 10; a >= most {
			return number{}, false
		}
	}
	for i := m.scale; i < scale; i++ {
		if b *= 10; b >= most {
			return number{}, false
		}
	}
	sum := exact(a+b, scale)
	sum.broken = n.broken || m.broken
	return sum, true
}

// scan walks over a tidied text.
type scan struct {
	text      string
	thousands bool // a lone comma before three digits parts thousands
}

func (s *scan) spaces() { s.text = strings.TrimLeft(s.text, " ") }

// run takes the longest prefix of runes that fit.
func (s *scan) run(fits func(rune) bool) string {
	end := strings.IndexFunc(s.text, func(r rune) bool { return !fits(r) })
	if end < 0 {
		end = len(s.text)
	}
	out := s.text[:end]
	s.text = s.text[end:]
	return out
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

// plain takes a number of digits and marks: "1200", "12,5", "1,200.5", "1 200".
func (s *scan) plain() (number, bool) {
	raw := s.run(func(r rune) bool { return isDigit(r) || r == '.' || r == ',' })
	// A dot that ends "in." or "1." is no decimal mark.
	for strings.HasSuffix(raw, ".") {
		raw = raw[:len(raw)-1]
	}
	grouped := false
	for {
		// "1 200": a group of three digits after a single space, not the start of a fraction.
		rest := s.text
		if raw == "" || len(rest) < 4 || rest[0] != ' ' || strings.ContainsAny(raw, ".,") || (!grouped && (len(raw) > 3 || raw[0] == '0')) {
			break
		}
		g := rest[1:4]
		if strings.Trim(g, "0123456789") != "" || (len(rest) > 4 && (isDigit(rune(rest[4])) || rest[4] == '/')) {
			break
		}
		raw, grouped = raw+g, true
		s.text = rest[4:]
		if s.text != "" && (s.text[0] == '.' || s.text[0] == ',') {
			raw += s.run(func(r rune) bool { return isDigit(r) || r == '.' || r == ',' })
			break
		}
	}
	return s.decimal(raw, grouped)
}

// decimal settles points and commas.
func (s *scan) decimal(raw string, grouped bool) (number, bool) {
	points, commas := strings.Count(raw, "."), strings.Count(raw, ",")
	mark := ""
	switch {
	case points > 0 && commas > 0:
		// The later one is the decimal mark, and stands once.
		mark = "."
		if strings.LastIndex(raw, ",") > strings.LastIndex(raw, ".") {
			mark = ","
		}
		if strings.Count(raw, mark) != 1 {
			return number{}, false
		}
	case points == 1:
		mark = "."
	case commas == 1:
		mark = ","
		whole, frac, _ := strings.Cut(raw, ",")
		if s.thousands && !grouped && len(frac) == 3 && len(whole) >= 1 && len(whole) <= 3 && whole[0] != '0' {
			mark = ""
		}
	}
	whole, frac := raw, ""
	if mark != "" {
		whole, frac, _ = strings.Cut(raw, mark)
	}
	// What marks are left part thousands: groups of three after one to three digits.
	groups := strings.FieldsFunc(whole, func(r rune) bool { return !isDigit(r) })
	if marks := len(whole) - len(strings.Join(groups, "")); marks > 0 {
		if grouped || marks != len(groups)-1 || len(groups[0]) > 3 || groups[0][0] == '0' {
			return number{}, false
		}
		for _, g := range groups[1:] {
			if len(g) != 3 {
				return number{}, false
			}
		}
	}
	whole = strings.TrimLeft(strings.Join(groups, ""), "0")
	if raw == "" || strings.Trim(raw, ".,") == "" || len(whole)+len(frac) > maxDigits {
		return number{}, false
	}
	if whole == "" {
		whole = "0"
	}
	text := whole
	if frac != "" {
		text += "." + frac
	}
	digits, err := strconv.ParseInt(whole+frac, 10, 64)
	return number{digits: digits, scale: len(frac), text: text}, err == nil
}

// fraction takes "/8" after its numerator; false if there is none or it is no exact decimal.
func (s *scan) fraction(n number) (number, bool) {
	s.spaces()
	if n.scale != 0 || !strings.HasPrefix(s.text, "/") {
		return number{}, false
	}
	s.text = s.text[1:]
	s.spaces()
	d, err := strconv.ParseInt(s.run(isDigit), 10, 64)
	if err != nil || d < 1 || d > 1000 || n.digits > 10000 {
		return number{}, false
	}
	pow, scale := int64(1), 0
	for ; scale < 10 && pow%d != 0; scale++ {
		pow *= 10
	}
	if pow%d != 0 {
		return number{}, false
	}
	f := exact(n.digits*(pow/d), scale)
	f.broken = true
	return f, true
}

// number takes a number, a fraction, or a whole number and a fraction.
func (s *scan) number() (number, bool) {
	s.spaces()
	n, ok := s.plain()
	if !ok {
		return n, false
	}
	after := *s
	after.spaces()
	if strings.HasPrefix(after.text, "/") {
		return s.fraction(n)
	}
	// "1 1/4", "1-1/4": a proper fraction after a whole number.
	if n.scale != 0 {
		return n, true
	}
	if after.text != "" && after.text[0] == '-' {
		after.text = after.text[1:]
	}
	after.spaces()
	top, err := strconv.ParseInt(after.run(isDigit), 10, 64)
	if err != nil {
		return n, true
	}
	probe := after
	probe.spaces()
	if !strings.HasPrefix(probe.text, "/") {
		return n, true
	}
	f, ok := after.fraction(exact(top, 0))
	if !ok {
		return n, false
	}
	if f.value() >= 1 {
		return n, false
	}
	*s = after
	return n.plus(1, f)
}

func (n number) value() float64 {
	v, _ := strconv.ParseFloat(n.text, 64)
	return v
}

// word takes a unit written in letters or signs; "" if there is none.
func (s *scan) word() string {
	s.spaces()
	if strings.HasPrefix(s.text, `"`) || strings.HasPrefix(s.text, "'") || strings.HasPrefix(s.text, "#") {
		w := s.text[:1]
		s.text = s.text[1:]
		return w
	}
	return s.run(func(r rune) bool { return unicode.IsLetter(r) || r == '.' })
}

// term is a number with its unit; have says that one was typed.
type term struct {
	n    number
	u    Unit
	have bool
}

// amount takes one length or mass: "8' 6 1/2\"", "4 lb 8 oz", "72", "16 mm".
func (s *scan) amount(k Kind) (term, Code) {
	n, ok := s.number()
	if !ok {
		return term{}, NotNumber
	}
	t := term{n: n}
	if w := s.word(); w != "" {
		u, known := unitOf(w)
		if kind, _ := u.SI(); !known || kind != k {
			return term{}, BadUnit
		}
		t.u, t.have = u, true
	}
	// The smaller unit of a pair follows: feet and inches, pounds and ounces.
	small, per := One, int64(0)
	switch t.u {
	case FT:
		small, per = IN, 12
	case LB:
		small, per = OZ, 16
	}
	s.spaces()
	if per == 0 || s.text == "" || t.n.scale != 0 {
		return t, ""
	}
	next := *s
	if next.text[0] == '-' { // 8'-6"
		next.text = next.text[1:]
	}
	m, ok := next.number()
	if !ok {
		return t, ""
	}
	if w := next.word(); w != "" {
		if u, known := unitOf(w); !known || u != small {
			return term{}, BadUnit
		}
	}
	if m.value() >= float64(per) {
		return term{}, NotNumber
	}
	*s = next
	sum, ok := t.n.plus(per, m)
	if !ok {
		return term{}, NotNumber
	}
	if small == OZ {
		// Sixteenths of a pound are exact decimals.
		const sixteenth = 625 // ten-thousandths
		if sum.digits > 1_000_000_000_000 {
			return term{}, NotNumber
		}
		return term{exact(sum.digits*sixteenth, sum.scale+4), LB, true}, ""
	}
	return term{sum, small, true}, ""
}

// quantity takes the whole text as one quantity of a kind.
func (s scan) quantity(k Kind, assumed Unit) (Quantity, Code) {
	var t term
	if k == OfLength || k == OfMass {
		var code Code
		if t, code = s.amount(k); code != "" {
			return "", code
		}
		s.spaces()
		if s.text != "" {
			return "", NotNumber
		}
	} else {
		// A sign of money may stand before its number; the rest of the text is the unit.
		before := s.run(func(r rune) bool { return !isDigit(r) && r != '.' && r != ',' })
		if s.text == "" {
			return "", NotNumber
		}
		n, ok := s.number()
		if !ok {
			return "", NotNumber
		}
		t.n = n
		for _, w := range []string{strings.TrimSpace(before), strings.TrimSpace(s.text)} {
			if w == "" {
				continue
			}
			u, known := unitOf(w)
			if kind, _ := u.SI(); t.have || !known || kind != k || (w == strings.TrimSpace(before) && k != OfMoney) {
				return "", BadUnit
			}
			t.u, t.have = u, true
		}
	}
	if !t.have {
		if kind, _ := assumed.SI(); kind != k {
			return "", BadUnit
		}
		t.u = assumed
		if t.n.broken && k == OfLength && assumed != FT {
			t.u = IN // nobody writes 5/8 of a millimetre
		}
	}
	if k == OfCount && t.n.scale != 0 {
		return "", NotNumber
	}
	if t.n.digits == 0 && k != OfMoney && k != OfCount && k != OfPercent && k != OfFlow {
		return "", Zero
	}
	return join(t.n.text, t.u), ""
}

// A sheet as sold, for guessing the unit of bare numbers: lath of 16 × 48 in to
// boards of 1.35 × 6 m and panels of 5 × 5 ft.
const (
	leastWidth, mostWidth   = 0.4 * Metre, 1.6 * Metre
	leastLength, mostLength = 0.9 * Metre, 6.2 * Metre
)

// sheet takes two sides; several are the readings where more than one unit fits.
func (s scan) sheet(assumed Unit) (q Quantity, several []Quantity, code Code) {
	s.text = strings.ReplaceAll(s.text, " by ", " x ")
	a, b, two := strings.Cut(s.text, "x")
	if !two || strings.Contains(b, "x") {
		return "", nil, NotNumber
	}
	var side [2]term
	for i, text := range []string{a, b} {
		part := scan{text: text, thousands: s.thousands}
		t, code := part.amount(OfLength)
		if code != "" {
			return "", nil, code
		}
		if part.spaces(); part.text != "" {
			return "", nil, NotNumber
		}
		if t.n.digits == 0 {
			return "", nil, Zero
		}
		side[i] = t
	}
	write := func(u Unit) Quantity { return join(side[0].n.text+"x"+side[1].n.text, u) }
	switch {
	case side[0].have && side[1].have:
		if u, ok := together(&side[0], &side[1]); ok {
			return write(u), nil, ""
		}
		return "", nil, BadUnit
	case side[0].have:
		return write(side[0].u), nil, ""
	case side[1].have:
		return write(side[1].u), nil, ""
	}
	for _, u := range []Unit{FT, IN, MM, M, CM} {
		w, l, ok := write(u).Sheet()
		if u == CM && (assumed == IN || assumed == FT) && len(several) > 0 {
			continue
		}
		if ok && !Over(leastWidth, w) && !Over(w, mostWidth) && !Over(leastLength, l) && !Over(l, mostLength) {
			several = append(several, write(u))
		}
	}
	switch len(several) {
	case 0:
		if kind, _ := assumed.SI(); kind != OfLength {
			return "", nil, BadUnit
		}
		return write(assumed), nil, ""
	case 1:
		return several[0], nil, ""
	}
	return "", several, Ambiguous
}

// together brings two sides to the finer of their units where that is exact.
func together(a, b *term) (Unit, bool) {
	for a.u != b.u {
		coarse, other := a, b
		_, fa := a.u.SI()
		if _, fb := b.u.SI(); fb > fa {
			coarse, other = b, a
		}
		var times int64
		switch {
		case coarse.u == FT && other.u == IN:
			times = 12
		case coarse.u == M && (other.u == CM || other.u == MM):
			times = 100
			if other.u == MM {
				times = 1000
			}
		case coarse.u == CM && other.u == MM:
			times = 10
		default:
			return One, false // inches beside millimetres
		}
		n, ok := coarse.n.plus(times, number{})
		if !ok {
			return One, false
		}
		coarse.n, coarse.u = n, other.u
	}
	return a.u, true
}

// Check reports a quantity outside lo … hi, both allowed and of the same kind;
// an empty limit is none. The sides of a sheet are held to them both. The error
// is a *ReadError whose Mend holds what a decimal point slipped by one place, or
// the same number in another unit, would have meant and what is in range.
func Check(q, lo, hi Quantity) error {
	code := outside(q, lo, hi)
	if code == "" {
		return nil
	}
	kind, _ := q.Unit().SI()
	e := &ReadError{Code: code, Typed: string(q), Want: kind, Low: lo, High: hi}
	offer := func(m Quantity, ok bool) {
		if ok && outside(m, lo, hi) == "" && !slices.Contains(e.Mend, m) {
			e.Mend = append(e.Mend, m)
		}
	}
	n, u := q.Parts()
	for _, places := range []int{-1, 1} {
		m, ok := shift(n, places)
		offer(join(m, u), ok)
	}
	for _, other := range []Unit{MM, CM, IN, FT, M, KG, LB} {
		k, _ := other.SI()
		offer(join(n, other), k == kind && other != u)
	}
	return e
}

func outside(q, lo, hi Quantity) Code {
	small, large, ok := q.extent()
	if !ok {
		return NotNumber
	}
	if _, low, ok := lo.extent(); ok && Over(low, small) {
		return Small
	}
	if high, _, ok := hi.extent(); ok && Over(large, high) {
		return Large
	}
	return ""
}

// extent returns the SI value as its least and most: the two sides of a sheet, else the same twice.
func (q Quantity) extent() (least, most float64, ok bool) {
	if strings.Contains(string(q), "x") {
		w, l, ok := q.Sheet()
		return float64(w), float64(l), ok
	}
	kind, _ := q.Unit().SI()
	v, ok := q.si(kind)
	return v, v, ok && kind != ""
}

// shift moves the decimal point of canonical decimal text, or of both sides of a sheet.
func shift(n string, places int) (string, bool) {
	if a, b, two := strings.Cut(n, "x"); two {
		a, ok1 := shift(a, places)
		b, ok2 := shift(b, places)
		return a + "x" + b, ok1 && ok2
	}
	whole, frac, _ := strings.Cut(n, ".")
	digits, err := strconv.ParseInt(whole+frac, 10, 64)
	if err != nil || len(whole)+len(frac) > maxDigits-1 {
		return "", false
	}
	if places > 0 {
		return exact(digits*10, len(frac)).text, true
	}
	return exact(digits, len(frac)+1).text, true
}
