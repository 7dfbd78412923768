package room

import (
	"math/rand"
	"testing"
)

// benchRoom is six surfaces with a door, a window, a duct, boxes, pipes and cracks.
func benchRoom() Room {
	r := anyRoom(rand.New(rand.NewSource(7)))
	kinds := [][]string{{"doorSolid", "box", "crackEdge"}, {"windowUnit", "box"}, {"box", "crackEdge"}, {"pipe", "box"}, {"light", "light", "duct"}, {}}
	for i := range r.Surfaces {
		r.Surfaces[i].Beyond = []string{"hall", "bedroom", "yard", "yard", "bedroom", ""}[i]
		r.Surfaces[i].Openings = nil
		for _, k := range kinds[i] {
			o := Opening{ID: k, Kind: k}
			if k == "crackEdge" {
				o.Width = 4
			}
			r.Surfaces[i].Openings = append(r.Surfaces[i].Openings, o)
		}
	}
	r.Playing = []Playing{{Source: "drums"}, {Source: "bass"}}
	return r
}

func BenchmarkRoom(b *testing.B) {
	r := benchRoom()
	b.ReportAllocs()
	for b.Loop() {
		Assess(r)
	}
}

// As while somebody edits: what earlier rooms asked is kept.
func BenchmarkRoomAgain(b *testing.B) {
	r := benchRoom()
	var memo Memo
	b.ReportAllocs()
	for b.Loop() {
		AssessWith(r, &memo)
	}
}

func BenchmarkSlit(b *testing.B) {
	for b.Loop() {
		Slit(0.003, 0.044, true)
	}
}

func BenchmarkMoney(b *testing.B) {
	r := benchRoom()
	rep := Assess(r)
	changes := invented(rand.New(rand.NewSource(1)), rep, 24)
	b.ReportAllocs()
	for b.Loop() {
		Money(r, rep, changes, 900, ByLevel)
	}
}
