package transmission

import (
	"testing"

	"github.com/stretchr/testify/require"

	"twoleaf/core/assembly"
	"twoleaf/core/band"
	"twoleaf/core/material"
	"twoleaf/core/rating"
	"twoleaf/core/unit"
)

// The kit: build-ups from table rows, put together as a builder would say them.

func board(t testing.TB, id string) material.Board {
	b, ok := material.ByID(id)
	require.True(t, ok, id)
	return b
}

func leafOf(t testing.TB, ids ...string) assembly.Leaf {
	var l assembly.Leaf
	for _, id := range ids {
		l.Layers = append(l.Layers, assembly.Layer{Board: board(t, id)})
	}
	return l
}

func joined(l assembly.Leaf, j assembly.Join) assembly.Leaf {
	for i := range l.Layers[:len(l.Layers)-1] {
		l.Layers[i].Join = j
	}
	return l
}

// gapOf is a frame with both leaves screwed on, empty.
func gapOf(t testing.TB, frame string, spacing float64) assembly.Gap {
	f, ok := material.FrameByID(frame)
	require.True(t, ok, frame)
	g := assembly.Gap{Frame: f, Spacing: unit.Length(spacing)}
	g = fixed(t, g, "screwed", "screwed")
	return g
}

func fixed(t testing.TB, g assembly.Gap, near, far string) assembly.Gap {
	for i, id := range []string{near, far} {
		f, ok := material.FixingByID(id)
		require.True(t, ok, id)
		h := &g.Near
		if i == 1 {
			h = &g.Far
		}
		h.Fixing = f
		h.Grid.Rows, h.Grid.Along = f.UsualGrid("US")
		if h.Grid.Along == 0 {
			h.Grid.Along = g.Spacing
		}
	}
	g.Depth = g.DefaultDepth()
	return g
}

func filled(t testing.TB, g assembly.Gap, depth float64) assembly.Gap {
	f, ok := material.FillByID("fibre")
	require.True(t, ok)
	g.Fill, g.FillDepth = f, unit.Length(depth)
	return g
}

func two(near assembly.Leaf, g assembly.Gap, far assembly.Leaf) assembly.BuildUp {
	return assembly.BuildUp{Leaves: []assembly.Leaf{near, far}, Gaps: []assembly.Gap{g}}
}

func one(l assembly.Leaf) assembly.BuildUp { return assembly.BuildUp{Leaves: []assembly.Leaf{l}} }

func loss(t testing.TB, b assembly.BuildUp, o Options, tables *Tables) band.Spectrum {
	r, err := LossOf(b, o, tables)
	require.NoError(t, err)
	return r
}

func stc(r band.Spectrum) int { return rating.STC(r).Value }
