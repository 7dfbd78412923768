package room

import (
	"math"
	"sort"

	"twoleaf/core/band"
)

// halfBand is the ratio of frequencies within which two dips fall together.
var halfBand = math.Pow(2, 1.0/6)

// together returns the faces whose dips fall within half a band of each other,
// for each dip that at least two faces share, lowest first.
func (a *assessment) together() (out []Together) {
	type dip struct {
		hz    float64
		face  int
		board string
	}
	var all []dip
	for i := range a.room.Surfaces {
		if a.out[i] {
			continue
		}
		for _, d := range a.room.Surfaces[i].Dips {
			if positive(d.Hz) {
				all = append(all, dip{d.Hz, i, d.Board})
			}
		}
	}
	sort.SliceStable(all, func(x, y int) bool { return all[x].hz < all[y].hz })
	for i := 0; i < len(all); {
		t := Together{}
		sum, n, j := 0.0, 0, i
		for ; j < len(all) && all[j].hz < all[i].hz*halfBand; j++ {
			sum, n = sum+all[j].hz, n+1
			new := true
			for _, f := range t.Faces {
				new = new && f != all[j].face
			}
			if new {
				t.Faces = append(t.Faces, all[j].face)
				t.Boards = append(t.Boards, all[j].board)
			}
		}
		i = j
		if len(t.Faces) < 2 {
			continue
		}
		t.Hz = sum / float64(n)
		if b, ok := band.Holding(t.Hz); ok {
			o := octaveAt(b)
			those, every := 0.0, 0.0
			for k := range a.report.Paths {
				p := &a.report.Paths[k]
				every += p.Open[o]
				for _, f := range t.Faces {
					if p.Way == ByBoards && p.Surface == f {
						those += p.Open[o]
					}
				}
			}
			if every > 0 {
				t.Share = those / every
			}
		}
		out = append(out, t)
	}
	return out
}
