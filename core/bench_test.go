package core

import (
	"testing"

	"twoleaf/core/plan"
)

// A keystroke: one wall, the strip and the Sound section, warm tables.
func BenchmarkAssessWall(b *testing.B) {
	p, t := plan.First(plan.US), NewTables()
	for b.Loop() {
		if _, faults := Assess(p, Want{Sound: true}, t); len(faults) > 0 {
			b.Fatal(faults[0])
		}
	}
}

// Side by side: the reference and eight candidates, warm tables.
func BenchmarkAssessRows(b *testing.B) {
	p, t := plan.First(plan.US), NewTables()
	for b.Loop() {
		if _, faults := Assess(p, Want{Rows: true}, t); len(faults) > 0 {
			b.Fatal(faults[0])
		}
	}
}
