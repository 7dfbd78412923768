package transmission

import (
	"twoleaf/core/assembly"
	"twoleaf/core/material"
)

// law is how the stiffness of a spring grows with frequency.
type law int

const (
	steady  law = iota
	stud        // max(1, f/400)^p
	channel     // max(1, f/63)
	clip        // the square root of it
	laws
)

// laws fills in the growth of springs and the fade of frame mass at every frequency.
func (g *grid) laws(c *Constants) {
	for l := range laws {
		g.growth[l] = make([]float64, len(g.hz))
	}
	g.fade = make([]float64, len(g.hz))
	for j, hz := range g.hz {
		x := max(1, hz/c.ChannelCorner)
		g.growth[steady][j] = 1
		g.growth[stud][j] = pow(max(1, hz/c.StudCorner), c.StudGrowth)
		g.growth[channel][j] = x
		g.growth[clip][j] = pow(x, c.ClipGrowth)
		y := hz / c.FrameFade
		g.fade[j] = 1 / (1 + y*y)
	}
}

// spring is one of several in series between two leaves.
type spring struct {
	stiffness float64 // N/m² of a line, N/m of a point
	law       law
}

// bridge is one kind of connection across a gap: lines or points, springs in
// series, and the frame's mass on each side of them.
type bridge struct {
	gap       int
	hold      hold // what it is to a leaf
	density   float64
	springs   [3]spring
	n         int
	loss      float64
	near, far float64 // mass of the frame that goes with each leaf, kg/m or kg
}

func (b *bridge) add(stiffness float64, l law) {
	b.springs[b.n] = spring{stiffness, l}
	b.n++
}

// stiffness returns that of the springs in series at frequency j of a grid.
func (b *bridge) stiffness(g *grid, j int) float64 {
	soft := 0.0
	for _, s := range b.springs[:b.n] {
		soft += 1 / (s.stiffness * g.growth[s.law][j])
	}
	return 1 / soft
}

// line and point start a bridge.
func lines(spacing, lattice, pitch float64, c *Constants) bridge {
	return bridge{density: 1 / spacing, hold: hold{spacing: spacing, lattice: lattice, bay: c.BayFactor, pitch: pitch}}
}

func points(density, bay float64) bridge {
	return bridge{density: density, hold: hold{point: true, spacing: bay, density: density}}
}

// usualRows is the distance of channel rows taken where a grid is not given, m (common practice).
const usualRows = 0.6

// side is a leaf beside a gap and how it is held.
type side struct {
	held *assembly.Held
	leaf *leaf
	// elsewhere: the leaf is screwed or hung on the frame of its other gap.
	elsewhere bool
}

func (s side) kind() material.FixingKind { return s.held.Fixing.Kind }

func (s side) resilient() bool {
	return s.kind() == material.Channel || s.kind() == material.Clip
}

// bridges returns what connects the leaves across gap i of a build-up: none,
// one, or one and the screws that short it.
func bridges(b *assembly.BuildUp, i int, leaves []leaf, c *Constants) (out [2]bridge, n int) {
	g := &b.Gaps[i]
	air := newCavity(g, &leaves[i], &leaves[i+1], c)
	near := side{&g.Near, &leaves[i], i > 0 && carried(&b.Gaps[i-1].Far, &b.Gaps[i-1])}
	far := side{&g.Far, &leaves[i+1], i+1 < len(b.Gaps) && carried(&b.Gaps[i+1].Near, &b.Gaps[i+1])}
	if r, ok := between(b, g, near, far, c); ok {
		r.gap = i
		if !r.hold.point {
			r.hold.air = air
		}
		out[n] = r
		n++
	}
	if shorts := g.Near.Shorts + g.Far.Shorts; shorts > 0 {
		r := points(shorts, bayOf(g))
		r.gap = i
		r.add(c.ShortPoint, steady)
		r.loss = c.LiningLoss
		out[n] = r
		n++
	}
	return out, n
}

// carried reports whether a leaf is tied to the studs of a gap.
func carried(h *assembly.Held, g *assembly.Gap) bool {
	return h.Fixing.Kind != material.Untied && h.Fixing.Kind != "" && framedWall(g.Frame.Kind)
}

// bayOf returns the distance between the members that divide a leaf, m.
func bayOf(g *assembly.Gap) float64 {
	if g.Spacing > 0 {
		return float64(g.Spacing)
	}
	if rows := max(g.Near.Grid.Rows, g.Far.Grid.Rows); rows > 0 {
		return float64(rows)
	}
	return usualRows
}

// rowsOf returns the distance of the rows of channel on a side, m.
func rowsOf(s side) float64 {
	if s.held.Grid.Rows > 0 {
		return float64(s.held.Grid.Rows)
	}
	return usualRows
}

// perArea returns the points per m² that hold a leaf resiliently.
func perArea(s side, g *assembly.Gap) float64 {
	if n := s.held.Grid.PerArea(); n > 0 {
		return n
	}
	return 1 / (usualRows * bayOf(g))
}

// hanger adds the springs of a resilient fixing; a channel is the same on a
// stud, on a joist and on masonry.
func (b *bridge) hanger(s side, c *Constants) {
	typed := s.held.Fixing.Stiffness
	if s.kind() == material.Channel {
		if typed <= 0 {
			typed = c.Channel
		}
		b.add(typed, channel)
		return
	}
	// Rubber and the channel it holds on both sides, twice as stiff as one held by a single leg.
	if typed <= 0 {
		typed = c.Clip
	}
	b.add(1/(1/typed+1/(2*c.Channel)), clip)
}

// between returns the connection of two leaves across a gap by its frame and
// fixings; ok is false where nothing ties them.
func between(bu *assembly.BuildUp, g *assembly.Gap, near, far side, c *Constants) (r bridge, ok bool) {
	frame := g.Frame.Kind
	masonry := near.leaf.masonry || far.leaf.masonry
	reduced := near.leaf.mass * far.leaf.mass / (near.leaf.mass + far.leaf.mass) / c.MassReference
	floor := frame == material.Joist || frame == material.SteelJoist || bu.Horizontal && !framedWall(frame)
	none := frame == material.NoFrame || frame == material.Bare || frame == ""

	if near.resilient() || far.resilient() {
		if near.kind() == material.Untied || far.kind() == material.Untied {
			if !none && frame != material.Standing {
				return edge(g, near, far, reduced, c)
			}
		}
		return hung(g, near, far, frame, masonry, reduced, c)
	}
	if none {
		return edge(g, near, far, reduced, c)
	}
	if frame == material.Standing {
		// Held by its tracks alone; the masonry's side is free whatever it is called.
		if masonry && near.kind() == material.Untied && far.kind() == material.Untied {
			return r, false
		}
		r = lines(c.EdgeSpacing, c.LatticeLoss, c.ScrewPitch, c)
		if masonry {
			r.hold.lattice = c.LiningLattice
			r.add(c.Standing, steady)
			r.loss = c.LiningLoss
		} else {
			r.add(c.Edge*pow(reduced, c.StudMass), steady)
			r.loss = c.BridgeLoss
		}
		return r, true
	}
	if near.kind() == material.Untied || far.kind() == material.Untied {
		return edge(g, near, far, reduced, c)
	}
	b := bayOf(g)
	switch {
	case masonry && frame == material.ZBar:
		r = points(1/(b*c.ZBarSpacing), b)
		r.add(c.ZBar, steady)
		r.loss = c.LiningLoss
	case masonry && frame != material.CStud:
		r = lines(b, c.LiningLattice, c.ScrewPitch, c)
		r.add(c.Strapping, steady)
		r.loss = c.LiningLoss
	case floor && (frame == material.Strapping || frame == material.ZBar):
		r = lines(b, c.JoistLattice, 0, c)
		r.add(c.Furring, steady)
		r.loss = c.LiningLoss
	case floor:
		r = lines(b, c.JoistLattice, 0, c)
		r.add(c.JoistLine, steady)
		r.loss = c.LiningLoss
		r.near, r.far = float64(g.Frame.Mass)/2, float64(g.Frame.Mass)/2
	case frame == material.Staggered || frame == material.Double:
		r = lines(c.EdgeSpacing, c.LatticeLoss, c.ScrewPitch, c)
		k := c.Edge
		if frame == material.Staggered {
			k = c.Staggered
		}
		r.add(k*pow(reduced, c.StudMass), steady)
		r.loss = c.BridgeLoss
	case frame == material.CStud:
		r = lines(b, c.LatticeLoss, c.ScrewPitch, c)
		r.add(studStiffness(&g.Frame, reduced, c), stud)
		r.loss = c.BridgeLoss
		r.near, r.far = flange(&g.Frame), flange(&g.Frame)
	default: // wood studs and wood strips between boards
		r = lines(b, c.LatticeLoss, c.ScrewPitch, c)
		r.add(c.WoodStud, steady)
		r.near, r.far = float64(g.Frame.Mass)/2, float64(g.Frame.Mass)/2
	}
	return r, true
}

// framedWall reports whether a frame is a wall's.
func framedWall(k material.FrameKind) bool {
	switch k {
	case material.Wood, material.Staggered, material.Double, material.CStud, material.Standing:
		return true
	}
	return false
}

// studStiffness returns that of a C-stud per metre, N/m²:
//
//	K = Kst·(t/0.5 mm)³·(0.09/D)^δ·(mr/5.7)^q
//
// t³ for the bending of the section. Load-bearing studs are sold by ranges of
// thickness and act as the stiffest of them.
func studStiffness(f *material.Frame, reduced float64, c *Constants) float64 {
	t, d := float64(f.Sheet), float64(f.Depth)
	if t <= 0 {
		t = 0.5e-3
	}
	if d <= 0 {
		d = 0.09
	}
	if t >= heavySheet {
		t = max(t, 1.5e-3)
	}
	return c.Stud * pow(t/0.5e-3, c.StudThick) * pow(0.09/d, c.StudDepth) * pow(reduced, c.StudMass)
}

// heavySheet is from which thickness a steel stud is load-bearing, m (common practice).
const heavySheet = 1.0e-3

// flange returns the mass of flange and lip that goes with one leaf, kg/m; the
// web bends (width of steel 38 mm light, 54 mm load-bearing, from memory).
func flange(f *material.Frame) float64 {
	const steel = 7850
	if float64(f.Sheet) >= heavySheet {
		return steel * float64(f.Sheet) * 0.054
	}
	return steel * float64(f.Sheet) * 0.038
}

// hung returns the connection of two leaves of which at least one hangs on
// resilient channel or clips.
func hung(g *assembly.Gap, near, far side, frame material.FrameKind, masonry bool, reduced float64, c *Constants) (r bridge, ok bool) {
	// Points per m², and their distance along a stud: of the closer grid where both sides hang.
	n, rows := 0.0, 0.0
	for _, s := range [...]side{near, far} {
		if !s.resilient() {
			continue
		}
		switch m, r := perArea(s, g), rowsOf(s); {
		case m > n:
			n, rows = m, r
		case m == n:
			rows = max(rows, r)
		}
	}
	if !masonry && (frame == material.Staggered || frame == material.Double) || frame == material.Standing {
		// The studs of the two leaves meet at plates or floor only: along those lines the hangers are in series.
		r = lines(c.EdgeSpacing, c.LatticeLoss, c.ScrewPitch, c)
		r.loss = c.BridgeLoss
		switch {
		case frame == material.Staggered:
			r.add(c.Staggered*pow(reduced, c.StudMass), steady)
		case frame == material.Standing && masonry:
			r.add(c.Standing, steady)
			r.loss = c.LiningLoss
		default:
			r.add(c.Edge*pow(reduced, c.StudMass), steady)
		}
		for _, s := range [...]side{near, far} {
			if s.resilient() {
				r.hanger(s, c)
				r.springs[r.n-1].stiffness /= rowsOf(s)
			}
		}
		return r, true
	}
	r = points(n, bayOf(g))
	r.loss = c.BridgeLoss
	for _, s := range [...]side{near, far} {
		if s.resilient() {
			r.hanger(s, c)
			// Fewer hangers on one side than on the other: the same per area.
			r.springs[r.n-1].stiffness *= perArea(s, g) / n
		}
	}
	if frame == material.CStud && !masonry {
		r.add(studStiffness(&g.Frame, reduced, c)*rows, stud)
	}
	if !masonry {
		// Half of the frame's mass goes with the leaf that is screwed to it, as
		// where both are; the other half, and all of it between two springs, is left out.
		mass := float64(g.Frame.Mass) / 2 * rows
		switch {
		case near.kind() == material.Screwed:
			r.near = mass
		case far.kind() == material.Screwed:
			r.far = mass
		}
	}
	return r, true
}

// edge returns how two leaves that no member ties are tied yet: where each
// stands on studs of its own they share floor, ceiling and side walls, as two
// rows do. A leaf that nothing carries, a pane, masonry and a floor have none.
func edge(g *assembly.Gap, near, far side, reduced float64, c *Constants) (r bridge, ok bool) {
	here := func(s side) bool {
		return s.elsewhere || framedWall(g.Frame.Kind) && (s.kind() == material.Screwed || s.resilient())
	}
	if near.leaf.masonry || far.leaf.masonry || !here(near) || !here(far) {
		return r, false
	}
	r = lines(c.EdgeSpacing, c.LatticeLoss, c.ScrewPitch, c)
	r.add(c.Edge*pow(reduced, c.StudMass), steady)
	r.loss = c.BridgeLoss
	return r, true
}

// force returns the two-port of a bridge at one frequency, forces on the two
// leaves over their velocities, N·s/m² of a line or N·s/m of a point:
//
//	κ = K/jω,  d1 = 1/Ya + jωma,  d2 = 1/Yb + jωmb,  D = d1·d2 + κ(d1+d2)
//	saa = 1/Ya − (d2+κ)/(Ya²D),  sab = κ/(YaYbD),  sbb = 1/Yb − (d1+κ)/(Yb²D)
//
// Y is each leaf's mobility without its uniform part, ia and ib are 1/Y.
// Written without the differences, which cancel on heavy leaves.
func force(w float64, ia, ib complex128, stiff, loss, ma, mb float64) (saa, sab, sbb complex128) {
	kappa := complex(stiff*loss/w, -stiff/w)
	ja, jb := complex(0, w*ma), complex(0, w*mb)
	d1, d2 := ia+ja, ib+jb
	d := inverse(d1*d2 + kappa*(d1+d2))
	saa = ia * d * (ja*(d2+kappa) + kappa*d2)
	sbb = ib * d * (jb*(d1+kappa) + kappa*d1)
	return saa, ia * ib * d * kappa, sbb
}
