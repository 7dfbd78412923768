package evidence

import (
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// written are the forms that the scanners read as regular expressions, which the
// reader was first written with, and where a match has the two numbers.
var written = []struct {
	name          string
	is            *regexp.Regexp
	scan          scanner
	first, second func(m []string) string
}{
	{"bracket", regexp.MustCompile(`\([^)]*\)`), bracket, no, no},
	{"printed mass", regexp.MustCompile(`([\d.]+)\s*kg/m2`), printedMass, group(1), no},
	{"times", regexp.MustCompile(`(?:^|\s)x\s*(\d+)\b|\b(\d+)\s*x\s`), times, func(m []string) string { return m[1] + m[2] }, no},
	{"decimal", regexp.MustCompile(`\d+(?:\.\d+)?`), decimal, group(0), no},
	{"between", regexp.MustCompile(`(\d+(?:\.\d+)?)\s*-\s*(\d+(?:\.\d+)?)(?:\s|$)`), anyEnd(between), group(1), group(2)},
	{"section", regexp.MustCompile(`(\d+(?:\.\d+)?)\s*x\s*(\d+(?:\.\d+)?)`), section, group(1), group(2)},
	{"spacing", regexp.MustCompile(`@\s*(<=|≤)?\s*(\d+(?:\.\d+)?)(?:\s*or\s*(\d+(?:\.\d+)?))?`), atSpacing, group(2), group(3)},
	{"gauge", regexp.MustCompile(`ga\s*(\d+)`), gauge, group(1), no},
	{"sheet", regexp.MustCompile(`\bt\s*(\d+(?:\.\d+)?)(?:-(\d+(?:\.\d+)?))?`), sheetMM, group(1), group(2)},
	{"plate", regexp.MustCompile(`plate\s*(\d+)`), plateMM, group(1), no},
	{"apart", regexp.MustCompile(`gap\s*(\d+)`), apartMM, group(1), no},
	{"block", regexp.MustCompile(`block\s*(?:wall\s*)?(\d+(?:\.\d+)?)`), blockMM, group(1), no},
	{"bare depth", regexp.MustCompile(`(?:^|[a-z-]\s+)(\d{2,3}(?:\.\d+)?)(?:\s|$)`), bareDepth, group(1), no},
}

func no([]string) string                  { return "" }
func group(n int) func(m []string) string { return func(m []string) string { return m[n] } }

// anyEnd counts the space behind a range, as the expression does and no reader needs.
func anyEnd(scan scanner) scanner {
	return func(s string, at int) (reading, bool) {
		r, ok := scan(s, at)
		if ok && r.to < len(s) {
			r.to++
		}
		return r, ok
	}
}

var (
	leadingGap = regexp.MustCompile(`^[\d.]+ ?(?:mm )?(?:air|argon|krypton|cavity|space|gap)\b`)
	rowLetter  = regexp.MustCompile(`^([A-Z]+-[A-Z]+\d+)[a-z]+$`)
)

// tableTexts are all texts that the embedded tables state constructions in, each once.
func tableTexts() (out []string) {
	seen := map[string]bool{}
	add := func(t Test) {
		for _, s := range []string{t.ID, t.Text.Leaf1, t.Text.Framing, t.Text.Spacing, t.Text.Cavity, t.Text.Fill, t.Text.Leaf2} {
			if !seen[s] {
				seen[s] = true
				out = append(out, s)
			}
		}
	}
	for _, t := range Ratings() {
		add(t)
	}
	for _, t := range ThirdSpectra() {
		add(t.Test)
	}
	for _, t := range OctaveSpectra() {
		add(t.Test)
	}
	return out
}

// scraps are what numbers are written with, and what is easily taken for it.
var scraps = []string{
	"x2", "12-15", "12.7 - 15.9 ", "38x89", "t0.84-1.5", "@400 or 600", "0", "7", "12", "89", "190", "2400", "12.7", "3.", ".5", "1.2.3", " ", "  ", "\t", "\n", "\v", "\u00a0", "x", " x", "x ", "X", "×", "-", " - ", "–", "@", "@ ", "<=", "≤", "or", " or ",
	"ga", "gap", "gap ", "t", " t", "_t", "plate ", "block", "block wall ", "wall", "mm ", "air", "argon", "airy", "kg/m2", " kg/m2", "(", ")", "((", ";", "+", " + ", "a", "z ", "é", "é ", "Z ", "_", "\xff", "AB-CD", "-W1a",
}

// mutated returns a text with a few of its parts taken away, doubled, exchanged, moved or put in.
func mutated(r *rand.Rand, s string) string {
	for range 1 + r.IntN(4) {
		i := r.IntN(len(s) + 1)
		j := min(len(s), i+r.IntN(6))
		scrap := scraps[r.IntN(len(scraps))]
		switch r.IntN(5) {
		case 0:
			s = s[:i] + s[j:]
		case 1:
			s = s[:j] + s[i:]
		case 2:
			s = s[:i] + scrap + s[j:]
		case 3:
			s = s[i:] + s[:i]
		default:
			s = s[:i] + scrap + s[i:]
		}
	}
	return s
}

// The scanners read what the regular expressions read: in every text of the
// tables, in those texts with something wrong in them, and in scraps.
func TestScannersReadAsExpressions(t *testing.T) {
	texts := tableTexts()
	require.Greater(t, len(texts), 200)
	r := rand.New(rand.NewPCG(1, 2))
	for _, s := range texts {
		for range 3 {
			texts = append(texts, mutated(r, s))
		}
	}
	for range 6000 {
		s := ""
		for range r.IntN(9) {
			s += scraps[r.IntN(len(scraps))]
		}
		texts = append(texts, s)
	}
	for _, w := range written {
		matches := 0
		for _, s := range texts {
			for _, s := range []string{s, strings.ToLower(s)} {
				for from := 0; ; {
					m, at := groups(w.is, s, from)
					got, ok := w.scan.find(s, from)
					require.Equal(t, m != nil, ok, "%s in %q from %d", w.name, s, from)
					if !ok {
						break
					}
					matches++
					want := reading{from: at[0], to: at[1], first: w.first(m), second: w.second(m), upTo: w.name == "spacing" && m[1] != ""}
					require.Equal(t, want, got, "%s in %q from %d", w.name, s, from)
					from = at[1]
				}
				require.Equal(t, w.is.ReplaceAllString(s, " "), w.scan.replace(s, " "), "%s in %q", w.name, s)
			}
		}
		assert.Greater(t, matches, 100, w.name)
	}
	gaps, letters := 0, 0
	for _, s := range texts {
		require.Equal(t, leadingGap.MatchString(s), leadsGap(s), "%q", s)
		n, ok := numbered(s)
		m := rowLetter.FindStringSubmatch(s)
		require.Equal(t, m != nil, ok, "%q", s)
		if ok {
			require.Equal(t, m[1], n)
			letters++
		}
		if leadsGap(s) {
			gaps++
		}
	}
	assert.Greater(t, gaps, 20)
	assert.Greater(t, letters, 100)
}

// groups returns the first match of an expression that begins at a place or
// behind it, its groups, and where it stands.
func groups(is *regexp.Regexp, s string, from int) (m []string, at []int) {
	for _, at := range is.FindAllStringSubmatchIndex(s, -1) {
		if at[0] < from {
			continue
		}
		for i := 0; i < len(at); i += 2 {
			if at[i] < 0 {
				m = append(m, "")
			} else {
				m = append(m, s[at[i]:at[i+1]])
			}
		}
		return m, at
	}
	return nil, nil
}
