package core

import (
	"math"
	"slices"

	"twoleaf/core/appraise"
	"twoleaf/core/assembly"
	"twoleaf/core/band"
	"twoleaf/core/plan"
	"twoleaf/core/rating"
	"twoleaf/core/room"
	"twoleaf/core/transmission"
)

// HouseReport is the whole room: every surface, what is heard beyond, by which way.
type HouseReport struct {
	Told   room.Report  `json:"told"`
	Spaces []string     `json:"spaces"` // names, by their index in Told
	Noises []string     `json:"noises"` // of Told.In: the space that each comes from
	Faces  []FaceReport `json:"faces"`  // in the order of the plan's surfaces
	// Faults are what is wrong around the build-ups, each left out above.
	Faults []*plan.Fault `json:"faults,omitempty"`
	Crack  *CrackReport  `json:"crack,omitempty"`
	Money  *MoneyReport  `json:"money,omitempty"`
}

// FaceReport is one surface with its openings.
type FaceReport struct {
	ID       string          `json:"id"`
	Letter   string          `json:"letter"`
	Name     string          `json:"name"`
	Kind     string          `json:"kind"`
	Beyond   string          `json:"beyond"`
	Width    *Value          `json:"width"`
	Height   *Value          `json:"height"`
	Area     *Value          `json:"area"`
	Mass     *Value          `json:"mass"`   // of the whole build-up
	Rating   *Value          `json:"rating"` // of the build-up in a laboratory
	Holed    *Value          `json:"holed"`  // with its openings
	Built    *Value          `json:"built"`  // with what it shares with the house, where that was said
	Openings []OpeningReport `json:"openings"`
}

// OpeningReport is one opening as it was computed.
type OpeningReport struct {
	ID     string     `json:"id"`
	Kind   string     `json:"kind"`
	Group  room.Group `json:"group"`
	Seal   string     `json:"seal"`
	X      float64    `json:"x"` // m, lower left corner
	Y      float64    `json:"y"`
	Width  *Value     `json:"width"`
	Height *Value     `json:"height"`
	Count  int        `json:"count"`
	Placed bool       `json:"placed"` // by hand
	Crack  *Value     `json:"crack"`  // under a door
	Run    *Value     `json:"run"`
	// Costs is how many dB its surface loses by it, A-weighted for what plays, all else left as it is.
	Costs float64 `json:"costs"`
}

// CrackReport is what the gap under one door costs, by how far it gapes.
type CrackReport struct {
	Opening string     `json:"opening"`
	Points  []room.Gap `json:"points"`
}

// house is a plan on its way to a whole room.
type house struct {
	plan   plan.Plan
	rw     bool
	t      *Tables
	inside plan.Inside
	faults []*plan.Fault
	room   room.Room
	spaces []string
	// heard are the appraised surfaces, by surface.
	heard []faceHeard
}

type faceHeard struct {
	here plan.Resolved
	res  appraise.Result
	ok   bool
}

// newHouse appraises every surface and puts the room together.
func newHouse(p plan.Plan, rw bool, t *Tables) *house {
	h := &house{plan: p, rw: rw, t: t}
	h.inside, h.faults = plan.ResolveRoom(p)
	for i := range h.inside.Faces {
		h.heard = append(h.heard, h.hear(i, true))
	}
	h.build()
	return h
}

// hear appraises one surface; doubt asks for its spread as well.
func (h *house) hear(i int, doubt bool) faceHeard {
	f := h.inside.Faces[i]
	here, faults := plan.Resolve(h.plan, f.Surface.ID)
	if len(faults) > 0 {
		return faceHeard{}
	}
	here.Assembly.Width, here.Assembly.Height = f.Width, f.Height
	res, err := h.t.appraise(here.Assembly, here.Leaf, h.rw, doubt)
	return faceHeard{here, res, err == nil}
}

// build puts what was read and appraised into the form that the room is told from.
func (h *house) build() {
	in := h.inside
	r := room.Room{
		Length: float64(in.Length), Width: float64(in.Width), Height: float64(in.Height), Soft: room.Soft(in.Soft), Listener: "studio",
		Use: room.Use{People: in.People, Playing: true, Minutes: in.Minutes, Watts: in.Watts, Air: in.Air, AirSet: in.AirSaid, Fuel: in.Fuel},
	}
	for _, s := range in.Playing {
		r.Playing = append(r.Playing, room.Playing{Source: s.Source, Level: s.Level})
	}
	h.spaces = nil
	listener := map[string]string{}
	for _, f := range in.Faces {
		name := f.Surface.Beyond
		if name == "" {
			continue
		}
		if _, known := listener[name]; !known {
			h.spaces = append(h.spaces, name)
		}
		if listener[name] == "" {
			listener[name] = f.Surface.Listener
		}
	}
	for _, name := range h.spaces {
		s := room.Space{ID: name, Listener: listener[name]}
		for _, b := range in.Spaces {
			if b.Space.Name != name {
				continue
			}
			height := usually(float64(b.Height), usualHeight)
			s.Volume, s.Soft, s.Outdoors, s.Background = float64(b.Area)*height, room.Soft(b.Space.Soft), b.Space.Outdoors, b.Background
			for _, n := range b.Noise {
				s.Noise = append(s.Noise, room.Playing{Source: n.Source, Level: n.Level})
			}
		}
		r.Spaces = append(r.Spaces, s)
	}
	for i, f := range in.Faces {
		s := room.Surface{
			ID: f.Surface.ID, Face: room.Face(f.Surface.Kind), Side: f.Side, Width: float64(f.Width), Height: float64(f.Height), Area: float64(f.Area),
			Beyond: f.Surface.Beyond, Flank: f.Surface.Flank, FlankLoss: float64(f.FlankLoss),
		}
		if y := h.heard[i]; y.ok {
			s.TL, s.Spread = y.res.TL, y.res.Spread.Band
			s.Thickness, s.Inside = float64(y.res.Thickness), standsInside(y.here.Assembly)
			for _, l := range y.here.Assembly.Leaves {
				s.Mass += float64(l.Mass())
			}
			s.Dips = coincidences(y.here.Assembly)
			if f.Surface.Kind == plan.Floor && f.Surface.Beyond == "" && len(y.here.Assembly.Leaves) == 1 {
				r.OnGround = true
			}
		}
		for _, o := range f.Openings {
			s.Openings = append(s.Openings, room.Opening{
				ID: o.Opening.ID, Kind: o.Opening.Kind, Seal: o.Opening.Seal, Width: float64(o.Width), Height: float64(o.Height), Count: o.Count,
				X: float64(o.X), Y: float64(o.Y), Placed: o.Placed, Crack: float64(o.Crack), CrackSet: o.CrackSaid, Run: float64(o.Run),
				Octaves: o.Octaves, Rating: float64(o.Rating), RatingRw: h.rw,
			})
		}
		r.Surfaces = append(r.Surfaces, s)
	}
	for _, m := range in.Measured {
		r.Measured = append(r.Measured, room.Measured{
			Beyond: m.Measured.Beyond, After: m.Measured.After, InA: m.InA, InC: m.InC, OutA: m.OutA, OutC: m.OutC, In: read(m.In), Out: read(m.Out),
		})
	}
	h.room = r
}

// usualHeight is of a room whose ceiling nobody measured, m (common practice).
const usualHeight = 2.4

// read gives an octave that was not read the 0 that the room takes for it.
func read(levels []float64) []float64 {
	out := append([]float64(nil), levels...)
	for i, l := range out {
		if l == plan.Unread {
			out[i] = 0
		}
	}
	return out
}

// standsInside is how far a build-up reaches into the room from the frame that
// was there, m: its new boards and what holds them off; all of a new frame.
func standsInside(b assembly.BuildUp) float64 {
	if len(b.Gaps) == 0 || b.Leaves[0].There() {
		return 0
	}
	t := float64(b.Leaves[0].Thickness())
	if g := b.Gaps[0]; g.There {
		return t + float64(g.Near.Fixing.StandOff)
	}
	return t + float64(b.Gaps[0].Depth)
}

func coincidences(b assembly.BuildUp) (dips []room.Dip) {
	for _, l := range b.Leaves {
		for _, y := range l.Layers {
			if hz := transmission.Critical(y.Board); hz > 0 {
				dips = append(dips, room.Dip{Hz: hz, Board: y.Board.Short})
			}
		}
	}
	return dips
}

// rated returns a spectrum's single number of the region.
func (h *house) rated(tl band.Spectrum) float64 {
	if h.rw {
		return float64(rating.Rw(tl).Rw)
	}
	return float64(rating.STC(tl).Value)
}

// asItWas is a plan with only what is in the house already: leaves without such
// a layer go, and the gap that held them.
func asItWas(p plan.Plan) plan.Plan {
	out := clone(p)
	for i := range out.BuildUps {
		b := &out.BuildUps[i]
		var leaves []plan.Leaf
		var gaps []plan.Gap
		for k, l := range b.Leaves {
			kept := slices.DeleteFunc(l.Layers, func(y plan.Layer) bool { return !y.There })
			if len(kept) == 0 {
				continue
			}
			if len(leaves) > 0 {
				g := b.Gaps[k-1]
				if !g.FillThere && !g.There {
					g.Fill, g.FillDepth = "", ""
				}
				gaps = append(gaps, g)
			}
			leaves = append(leaves, plan.Leaf{Layers: kept})
		}
		b.Leaves, b.Gaps, b.Compare = leaves, gaps, plan.Compare{}
	}
	return out
}

// told tells the room, what was read before anything new against the room as it was.
func (h *house) told() room.Report {
	told := room.AssessWith(h.room, &h.t.memo)
	var before []room.Measured
	for _, m := range h.room.Measured {
		if !m.After {
			before = append(before, m)
		}
	}
	if len(before) == 0 {
		return told
	}
	was := newHouse(asItWas(h.plan), h.rw, h.t)
	for i := range was.room.Surfaces {
		if !was.heard[i].ok { // nothing stood there
			was.room.Surfaces[i].TL = band.Spectrum{}
		}
	}
	was.room.Measured = before
	then := room.AssessWith(was.room, &h.t.memo)
	for i, m := range told.Measured {
		n := slices.IndexFunc(then.Measured, func(f room.Fit) bool { return f.Space == m.Space })
		if m.After || n < 0 {
			continue
		}
		told.Measured[i] = then.Measured[n]
		if at := then.Measured[n].Path; at >= 0 {
			// The same way in the list of the room as it is planned; −1 where it is gone.
			p := then.Paths[at]
			told.Measured[i].Path = slices.IndexFunc(told.Paths, func(q room.Path) bool {
				return q.Surface == p.Surface && q.Opening == p.Opening && q.Way == p.Way
			})
		}
	}
	return told
}

// report tells the room.
func (h *house) report(want Want) *HouseReport {
	told := h.told()
	out := &HouseReport{Told: told, Spaces: h.spaces, Faces: []FaceReport{}, Faults: h.faults}
	for _, n := range told.In {
		out.Noises = append(out.Noises, h.spaces[n.Space])
	}
	for _, f := range told.Faults {
		out.Faults = append(out.Faults, h.inWords(f))
	}
	for i, f := range h.inside.Faces {
		s := told.Surfaces[i]
		r := FaceReport{
			ID: f.Surface.ID, Letter: letter(i), Name: f.Surface.Name, Kind: string(f.Surface.Kind), Beyond: f.Surface.Beyond,
			Width: value(f.Width, kindLength, ""), Height: value(f.Height, kindLength, ""), Area: value(s.Area, kindArea, ""),
			Openings: []OpeningReport{},
		}
		if h.heard[i].ok {
			r.Mass = value(h.room.Surfaces[i].Mass, kindSurfaceMass, "")
			r.Rating = spread(h.rated(s.Lab), h.heard[i].res.Spread.Rating, "")
			r.Holed = value(h.rated(s.Holed), kindDecibel, "")
			r.Built = value(h.rated(s.Built), kindDecibel, "")
		}
		for _, g := range holes(f) {
			r.Openings = append(r.Openings, h.opening(i, g, told))
		}
		out.Faces = append(out.Faces, r)
	}
	if want.Opening != "" {
		out.Crack = h.crack(want.Opening, told)
	}
	if want.Money {
		out.Money = h.money(told)
	}
	return out
}

func (h *house) opening(surface int, g hole, told room.Report) OpeningReport {
	o := OpeningReport{
		ID: g.id, Kind: g.kind.ID, Group: g.kind.Group, Seal: g.seal, X: float64(g.X), Y: float64(g.Y),
		Width: value(g.Width, kindLength, ""), Height: value(g.Height, kindLength, ""), Count: g.count, Placed: g.placed,
	}
	if g.kind.Group == room.Door && g.kind.Gap > 0 {
		o.Crack = value(g.crack, kindLength, "")
	}
	if g.run > 0 {
		o.Run = value(g.run, kindLength, "")
	}
	for j, x := range h.room.Surfaces[surface].Openings {
		if x.ID == g.id {
			o.Costs = costs(told, surface, j)
		}
	}
	return o
}

// costs is how many dB a surface loses by one opening, A-weighted for what
// plays: 10 lg(1/(1 − its part of what gets through the surface)).
func costs(told room.Report, surface, opening int) float64 {
	part := 0.0
	for _, p := range told.Paths {
		if p.Surface == surface && p.Opening == opening {
			part += p.Share
		}
	}
	all := told.Surfaces[surface].Share
	if all <= 0 || part <= 0 {
		return 0
	}
	return -10 * math.Log10(math.Max(1e-6, 1-part/all))
}

// crackSteps are how far the gap under a door may gape, m: to half an inch, 12.7 mm.
const (
	crackSteps = 12
	crackMost  = 0.0127
)

// crack tells what the gap under one door costs.
func (h *house) crack(id string, told room.Report) *CrackReport {
	widths := make([]float64, crackSteps+1)
	for n := range widths {
		widths[n] = crackMost * float64(n) / crackSteps
	}
	for i := range h.room.Surfaces {
		for j := range h.room.Surfaces[i].Openings {
			if h.room.Surfaces[i].Openings[j].ID == id {
				return &CrackReport{Opening: id, Points: room.Gaps(h.room, told, i, j, widths)}
			}
		}
	}
	return nil
}

// inWords says what is wrong with the data of a room in the plan's words, at its field.
func (h *house) inWords(f room.Fault) *plan.Fault {
	return plan.RoomFault(h.plan, plan.RoomProblem{
		Code: string(f.Code), Surface: f.Surface, Opening: f.Opening, Space: f.Space, Field: f.Field, Typed: f.Typed,
		Value: f.Value, Limit: f.Limit,
	})
}

// letter is how a surface is called on the drawing, by its place in the plan.
func letter(i int) string { return string(rune('A' + i%26)) }
