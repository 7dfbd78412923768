package transmission

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"twoleaf/core/assembly"
)

// rungs are walls of 12.7 mm regular board on 38 × 89 mm wood at 406 mm, worst
// first, with the STC that handbooks give for them (common practice).
func rungs(t testing.TB) (names []string, builds []assembly.BuildUp, stcs []int) {
	one13 := leafOf(t, "na_gyp_reg_13")
	two13 := leafOf(t, "na_gyp_reg_13", "na_gyp_reg_13")
	const spacing, batt = 0.4064, 0.0889
	wood := gapOf(t, "wood_38x89", spacing)
	rows := gapOf(t, "double_38x89", spacing)
	add := func(n string, s int, b assembly.BuildUp) {
		names, builds, stcs = append(names, n), append(builds, b), append(stcs, s)
	}
	add("empty", 33, two(one13, wood, one13))
	add("filled", 36, two(one13, filled(t, wood, batt), one13))
	// The same depth as two rows. Four leaves: both rows boarded on their inner
	// faces as well. Three: one of them; the other row's studs stand in the second gap.
	add("four leaves", 40, assembly.BuildUp{
		Leaves: []assembly.Leaf{one13, one13, one13, one13},
		Gaps:   []assembly.Gap{filled(t, wood, batt), {Depth: rows.Depth - 2*wood.Depth}, filled(t, wood, batt)}})
	second := filled(t, fixed(t, wood, "untied", "screwed"), batt)
	second.Depth = rows.Depth - wood.Depth
	add("three leaves", 50, assembly.BuildUp{
		Leaves: []assembly.Leaf{one13, one13, one13},
		Gaps:   []assembly.Gap{filled(t, wood, batt), second}})
	add("two rows", 57, two(one13, filled(t, rows, 2*batt), one13))
	add("two rows, two boards", 63, two(two13, filled(t, rows, 2*batt), two13))
	return names, builds, stcs
}

// TestHandbookLadder: each rung within 4 of the handbooks, all in their order.
func TestHandbookLadder(t *testing.T) {
	names, builds, want := rungs(t)
	for _, a := range []Accuracy{Ranking, Converged} {
		last := 0
		for i, b := range builds {
			got := stc(loss(t, b, Options{Accuracy: a}, nil))
			t.Logf("%s: STC %d", names[i], got)
			assert.InDelta(t, want[i], got, 4, names[i])
			assert.Greater(t, got, last, "%s is not above the rung before", names[i])
			last = got
		}
	}
}
