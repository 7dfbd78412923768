package trial

import (
	"regexp"
	"slices"
	"strings"

	"twoleaf/core/evidence"
)

// Step is the mean difference in STC between rows that differ in one thing only.
type Step struct {
	Name     string  `json:"name"`
	N        int     `json:"n"` // pairs
	Measured float64 `json:"measured"`
	Computed float64 `json:"computed"`
	// Convention is true where the code gives one value to both as a matter of
	// its own convention: shown, not judged.
	Convention bool `json:"convention,omitempty"`
}

func (s Step) remark() string {
	if s.Convention {
		return "  the code's convention"
	}
	return ""
}

// traits is what of a row's text can differ from another's, each by itself.
type traits struct {
	table, kind          string
	leaf1, leaf2         string // with every gypsum board as G
	n1, n2               int    // layers of G
	board                string // the gypsum board, "" where there are several
	frame                string // without spacings
	spacing, rows, strip string
	fill                 string // none, part, half, full
	channel              bool
	below                bool // channel below a boarded ceiling
}

var (
	gypsumPiece = regexp.MustCompile(`gypsum (\d+(?:\.\d+)?(?: \w+)?(?: or \d+(?:\.\d+)? \w+)?) x(\d)`)
	atSpacing   = regexp.MustCompile(`@(<=)?[\d.]+( or [\d.]+)?`)
	inBrackets  = regexp.MustCompile(`\s*\([^)]*\)`)
)

func traitsOf(t evidence.Test) traits {
	x := traits{table: t.Source, kind: t.Kind}
	board := func(s string) (string, int) {
		n := 0
		out := gypsumPiece.ReplaceAllStringFunc(s, func(m string) string {
			p := gypsumPiece.FindStringSubmatch(m)
			if x.board == "" {
				x.board = p[1]
			} else if x.board != p[1] {
				x.board = "several"
			}
			n += int(p[2][0] - '0')
			return "G"
		})
		return out, n
	}
	x.leaf1, x.n1 = board(t.Text.Leaf1)
	x.leaf2, x.n2 = board(t.Text.Leaf2)
	frame := t.Text.Framing
	main, hung, _ := strings.Cut(frame, "+")
	x.spacing = atSpacing.FindString(main)
	if x.spacing == "" {
		x.spacing = t.Text.Spacing
	}
	switch low := strings.ToLower(hung); {
	case strings.HasPrefix(low, "rc"):
		x.rows, x.channel = atSpacing.FindString(hung), true
	case strings.HasPrefix(low, "furring"):
		x.strip = atSpacing.FindString(hung)
	}
	x.below = strings.Contains(frame, "direct inner layer")
	x.frame = strings.TrimSpace(atSpacing.ReplaceAllString(main, "@"))
	switch low := strings.ToLower(t.Text.Fill); {
	case low == "" || strings.HasPrefix(low, "none"):
		x.fill = "none"
	case strings.Contains(low, "one side only"):
		x.fill = "half"
	case strings.HasPrefix(low, "with or without"), strings.Contains(low, "not stated") && !strings.Contains(low, "absorb"):
		x.fill = "unknown"
	default:
		x.fill = "full"
		if strings.Contains(low, "whole") {
			x.fill = "whole"
		}
	}
	return x
}

// step is one thing that may differ, and between what.
type step struct {
	name       string
	in         func(traits) bool          // rows looked at
	alike      func(*traits)              // wipes what may differ
	differ     func(from, to traits) bool // the difference in question
	convention bool
}

func kinds(names ...string) func(traits) bool {
	return func(t traits) bool { return slices.Contains(names, t.kind) }
}

func prefix(p ...string) func(traits) bool {
	return func(t traits) bool {
		return slices.ContainsFunc(p, func(s string) bool { return strings.HasPrefix(t.kind, s) })
	}
}

func and(a ...func(traits) bool) func(traits) bool {
	return func(t traits) bool {
		for _, f := range a {
			if !f(t) {
				return false
			}
		}
		return true
	}
}

func frameHas(s string) func(traits) bool {
	return func(t traits) bool { return strings.Contains(t.frame, s) }
}

func not(f func(traits) bool) func(traits) bool { return func(t traits) bool { return !f(t) } }

var steps = func() []step {
	var out []step
	fill := func(name string, in func(traits) bool, from, to string) {
		out = append(out, step{name: name, in: in, alike: func(t *traits) { t.fill = "" },
			differ: func(a, b traits) bool { return a.fill == from && b.fill == to }})
	}
	fill("fill, wood studs", kinds("wall wood single"), "none", "full")
	fill("fill, wood studs with channel", kinds("wall wood single RC"), "none", "full")
	fill("fill, staggered studs", kinds("wall wood staggered"), "none", "full")
	fill("fill, staggered studs with channel", kinds("wall wood staggered RC"), "none", "full")
	fill("fill, two rows of studs", kinds("wall wood double", "wall wood double RC"), "none", "full")
	fill("fill, second row as well as the first", kinds("wall wood double", "wall wood double RC"), "half", "full")
	fill("fill, light steel studs", kinds("wall steel single"), "none", "full")
	fill("fill, load-bearing steel studs", kinds("wall steel loadbearing"), "none", "full")
	fill("fill, load-bearing steel studs with channel", kinds("wall steel loadbearing RC"), "none", "full")
	fill("fill, two rows of steel studs", kinds("wall steel double"), "none", "full")
	fill("fill, lined block", kinds("wall block lined"), "none", "full")
	fill("fill, ceiling screwed to joists", kinds("floor wood joist direct", "floor steel joist direct"), "none", "full")
	fill("fill, ceiling on strips", kinds("floor wood joist furring"), "none", "full")
	fill("fill, ceiling on channel", kinds("floor wood joist RC", "floor steel joist RC"), "none", "full")
	fill("fill, three leaves", kinds("floor wood joist triple-leaf", "floor steel joist triple-leaf"), "none", "full")

	spacing := func(name string, in func(traits) bool) {
		out = append(out, step{name: name, in: in, alike: func(t *traits) { t.spacing = "" },
			differ: func(a, b traits) bool { return a.spacing == "@400" && b.spacing == "@600" }})
	}
	spacing("studs 400 to 600, wood", prefix("wall wood"))
	spacing("studs 400 to 600, steel 64 mm", and(prefix("wall steel"), frameHas("steel 64")))
	spacing("studs 400 to 600, steel 92 mm", and(prefix("wall steel"), frameHas("steel 92")))
	spacing("joists 400 to 600", prefix("floor"))
	rows := func(name string, in func(traits) bool) {
		out = append(out, step{name: name, in: in, alike: func(t *traits) { t.rows = "" },
			differ: func(a, b traits) bool { return a.rows == "@400" && b.rows == "@600" }})
	}
	rows("channel 400 to 600, wall", prefix("wall"))
	rows("channel 400 to 600, ceiling", prefix("floor"))
	out = append(out, step{name: "strips 400 to 600, ceiling", in: prefix("floor"), alike: func(t *traits) { t.strip = "" },
		differ: func(a, b traits) bool { return a.strip == "@400" && b.strip == "@600" }})

	// A wall seen from its other side is the same wall unless a channel tells the sides apart.
	layer := func(name string, in func(traits) bool, from, to int) {
		out = append(out, step{name: name, in: in, alike: func(t *traits) { t.n1, t.n2 = 0, 0 },
			differ: func(a, b traits) bool {
				if a.n1+a.n2 != from || b.n1+b.n2 != to {
					return false
				}
				return b.n1 >= a.n1 && b.n2 >= a.n2
			}})
	}
	for _, f := range []struct {
		name string
		in   func(traits) bool
	}{
		{"wood studs", kinds("wall wood single")},
		{"wood studs with channel", kinds("wall wood single RC")},
		{"staggered studs", kinds("wall wood staggered", "wall wood staggered RC")},
		{"two rows of studs", kinds("wall wood double", "wall wood double RC")},
		{"light steel studs", kinds("wall steel single")},
		{"load-bearing steel studs with channel", kinds("wall steel loadbearing RC")},
	} {
		layer("second layer, 1+1 to 2+1, "+f.name, f.in, 2, 3)
		layer("second layer, 2+1 to 2+2, "+f.name, f.in, 3, 4)
		layer("second layer, 1+1 to 2+2, "+f.name, f.in, 2, 4)
	}
	layer("second layer of ceiling, screwed to joists", kinds("floor wood joist direct", "floor steel joist direct"), 1, 2)
	layer("second layer of ceiling, on channel", kinds("floor wood joist RC", "floor steel joist RC"), 1, 2)

	board := func(name string, in func(traits) bool, from, to string) {
		out = append(out, step{name: name, in: in, alike: func(t *traits) { t.board = "" },
			differ: func(a, b traits) bool { return a.board == from && b.board == to }})
	}
	for _, f := range []struct {
		name string
		in   func(traits) bool
	}{
		{"wood studs", kinds("wall wood single")},
		{"wood studs with channel", kinds("wall wood single RC")},
		{"staggered studs", kinds("wall wood staggered", "wall wood staggered RC")},
		{"two rows of studs", kinds("wall wood double", "wall wood double RC")},
		{"light steel studs", kinds("wall steel single")},
		{"load-bearing steel studs", kinds("wall steel loadbearing")},
		{"load-bearing steel studs with channel", kinds("wall steel loadbearing RC")},
		{"lined block", kinds("wall block lined")},
		{"ceiling screwed to joists", kinds("floor wood joist direct", "floor steel joist direct", "floor wood joist furring")},
		{"ceiling on channel", kinds("floor wood joist RC", "floor steel joist RC")},
	} {
		board("12.7 to 15.9 type X, "+f.name, f.in, "12.7 typeX", "15.9 typeX")
		board("12.7 regular to 12.7 type X, "+f.name, f.in, "12.7 regular", "12.7 typeX")
	}

	channel := func(name string, in func(traits) bool, convention bool) {
		out = append(out, step{name: name, in: in, convention: convention,
			alike: func(t *traits) {
				t.kind = strings.TrimSuffix(t.kind, " RC")
				t.channel, t.rows, t.spacing = false, "", ""
				t.frame = strings.TrimSpace(strings.TrimSuffix(t.frame, "direct"))
				t.kind = strings.TrimSuffix(t.kind, " direct")
			},
			differ: func(a, b traits) bool { return !a.channel && b.channel && !a.below && !b.below }})
	}
	channel("channel, wood studs", kinds("wall wood single", "wall wood single RC"), false)
	channel("channel, staggered studs", kinds("wall wood staggered", "wall wood staggered RC"), false)
	channel("channel, two rows of studs", kinds("wall wood double", "wall wood double RC"), true)
	channel("channel, load-bearing steel studs", kinds("wall steel loadbearing", "wall steel loadbearing RC"), false)
	channel("channel, joists", kinds("floor wood joist direct", "floor wood joist RC", "floor steel joist direct", "floor steel joist RC"), false)
	// The old ceiling left in place: the same new board, with and without it.
	out = append(out, step{name: "third leaf, old ceiling left above the channel", in: prefix("floor"),
		alike: func(t *traits) {
			t.kind = strings.NewReplacer(" triple-leaf", "", " RC", "").Replace(t.kind)
			t.leaf2, t.frame, t.rows, t.channel, t.below, t.spacing = "", "", "", false, false, ""
			t.n2 = 0
		},
		differ: func(a, b traits) bool {
			return !a.below && a.channel && b.below && a.n2 == 1 && b.n2 == 2 && a.rows == "@400"
		}})
	return out
}()

// Steps returns the steps for which the results hold at least one pair. Rows
// for orientation (tier C) are left aside.
func Steps(results []Result) []Step {
	type row struct {
		traits
		Result
	}
	var rows []row
	for _, r := range results {
		if _, ok := r.Deviation(); ok && tierOf(r.Test) != "C" {
			rows = append(rows, row{traitsOf(r.Test), r})
		}
	}
	var out []Step
	for _, s := range steps {
		groups := map[traits][]row{}
		var order []traits
		for _, r := range rows {
			if !s.in(r.traits) {
				continue
			}
			k := r.traits
			s.alike(&k)
			if groups[k] == nil {
				order = append(order, k)
			}
			groups[k] = append(groups[k], r)
		}
		found := Step{Name: s.name, Convention: s.convention}
		for _, k := range order {
			for _, a := range groups[k] {
				for _, b := range groups[k] {
					if s.differ(a.traits, b.traits) {
						found.N++
						found.Measured += float64(b.Test.STC - a.Test.STC)
						found.Computed += float64(b.STC - a.STC)
					}
				}
			}
		}
		if found.N > 0 {
			found.Measured /= float64(found.N)
			found.Computed /= float64(found.N)
			out = append(out, found)
		}
	}
	return out
}
