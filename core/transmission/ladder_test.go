package transmission

import (
	"testing"

	"twoleaf/core/assembly"
)

func ladder(t testing.TB) (names []string, builds []assembly.BuildUp) {
	one13 := leafOf(t, "na_gyp_reg_13")
	two13 := leafOf(t, "na_gyp_reg_13", "na_gyp_reg_13")
	wood := gapOf(t, "wood_38x89", 0.4064)
	rows := gapOf(t, "double_38x89", 0.4064)
	add := func(n string, b assembly.BuildUp) { names = append(names, n); builds = append(builds, b) }
	add("empty", two(one13, wood, one13))
	add("filled", two(one13, filled(t, wood, 0.0889), one13))
	// The same depth as two rows, 203 mm: a leaf on the inner face of one row,
	// the other row's studs and the space beside it in the second gap.
	second := filled(t, fixed(t, wood, "untied", "screwed"), 0.0889)
	second.Depth = rows.Depth - wood.Depth
	add("four leaves", assembly.BuildUp{
		Leaves: []assembly.Leaf{one13, one13, one13, one13},
		Gaps:   []assembly.Gap{filled(t, wood, 0.0889), {Depth: 0.025}, filled(t, wood, 0.0889)}})
	add("three leaves", assembly.BuildUp{
		Leaves: []assembly.Leaf{one13, one13, one13},
		Gaps:   []assembly.Gap{filled(t, wood, 0.0889), second}})
	add("two rows", two(one13, filled(t, rows, 2*0.0889), one13))
	add("two rows, two boards", two(two13, filled(t, rows, 2*0.0889), two13))
	return names, builds
}

func TestPrintedLadder(t *testing.T) {
	names, builds := ladder(t)
	for i, b := range builds {
		r := loss(t, b, Options{Accuracy: Converged}, nil)
		f := loss(t, b, Options{}, nil)
		t.Logf("%-22s STC %d fast %d %.0f\n%.0f", names[i], stc(r), stc(f), r, f)
	}
}
