package load

import (
	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// AddedLimit is the dead load that may be hung on joists that are there before
// an engineer is asked, kg/m²: 2 psf (our proposal, on the careful side: floor
// joists are commonly sized for 10 psf of dead load, IRC-JOISTS, and carry 7 to
// 11 already).
const AddedLimit = 2 * unit.PoundPerSquareFoot

// ChannelLimit is the mass of boards that resilient channel is meant to carry,
// kg/m²: 7.5 psf (installation sheet of a resilient channel filed with a county,
// 2023; an older one says two layers of 5/8 in at most).
const ChannelLimit = 7.5 * unit.PoundPerSquareFoot

func clips(h assembly.Held) bool { return h.Fixing.Kind == material.Clip }

// Added returns the dead load that a leaf newly puts on the frame it hangs
// from, kg/m²: new boards and films, the channel that holds them, fill that is
// new and lies on the leaf, typed extras. Of a ceiling it is compared with AddedLimit.
func Added(b assembly.BuildUp, leaf int) unit.SurfaceMass {
	if leaf < 0 || leaf >= len(b.Leaves) {
		return 0
	}
	added := b.Leaves[leaf].NewMass()
	gap, near, ok := b.Fixed(leaf)
	if !ok {
		return added
	}
	g := b.Gaps[gap]
	held := g.Held(near)
	if added > 0 && held.Grid.Rows > 0 {
		added += unit.SurfaceMass(float64(held.Fixing.LineMass) / float64(held.Grid.Rows))
	}
	if g.FillLies && near && !g.FillThere {
		added += g.FillMass()
	}
	return added + held.Extra
}

// OverChannel returns the mass of a leaf hung on resilient channel without
// clips, kg/m², and whether that is over ChannelLimit; false for any other leaf.
func OverChannel(b assembly.BuildUp, leaf int) (mass unit.SurfaceMass, over bool) {
	if leaf < 0 || leaf >= len(b.Leaves) {
		return 0, false
	}
	gap, near, ok := b.Holder(leaf)
	if !ok || b.Gaps[gap].Held(near).Fixing.Kind != material.Channel {
		return 0, false
	}
	mass = b.Leaves[leaf].Mass()
	return mass, unit.Over(mass, ChannelLimit)
}
