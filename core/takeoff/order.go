package takeoff

import "slices"

// The steps of the work, in their usual order (common practice; face fasteners
// and floating corners GA-MULTI; ceiling before walls, a building design handbook).
const (
	StepServices    Code = "services-in"   // hold: wires, pipes and ducts are in and tested before anything closes
	StepBacking     Code = "backing-in"    // extra studs in corners, blocking: corners, mounts
	StepFramingSeen Code = "framing-seen"  // hold: inspection of framing and services where it is asked for
	StepBatts       Code = "batts-in"      // area
	StepPhotograph  Code = "photograph"    // hold: every face, with a tape in the picture
	StepClips       Code = "clips-on"      // clips and channel: clips, rows
	StepClipsSeen   Code = "clips-checked" // hold: no channel touches a stud, ends stand free
	StepPads        Code = "pads-on"       // boxes
	StepStart       Code = "layer-start"   // layer: mark lines of framing on what hangs, edge spacers out: gap
	StepExtend      Code = "boxes-out"     // extend boxes to the new face: boxes, thickness
	StepFilm        Code = "film-on"       // damping compound on the backs, hung before it skins
	StepHang        Code = "hang"          // a layer of a face: pieces, ends, and of its edges which run past
	StepSeal        Code = "seal"          // all edges and holes of the layer: run
	StepSealCheck   Code = "seal-checked"  // hold: by light and by hand, before the next layer hides it
	StepDoor        Code = "door-in"       // doors
	StepWindow      Code = "window-in"     // windows
	StepTape        Code = "tape"          // the face layer only: run
	StepPaint       Code = "paint"         // area
	StepLeakCheck   Code = "leak-checked"  // hold: dark room, bright light outside, then listen at each edge
	StepAlarms      Code = "alarms-in"     // hold: smoke alarm heard inside, way out opens without a key
	StepFinalSeen   Code = "final-seen"    // hold: final inspection
)

// Step is one line of the checklist. Nothing after a hold is begun before it is done.
type Step struct {
	Code  Code
	Face  string
	Layer int
	Hold  bool
	Args  map[string]float64
}

// Order returns the order of work for a job as it was cut: what must be done
// before boards close the walls, then every layer in its hanging order with its
// corners, sealed and checked before the next, then the finish.
func Order(job Job, cut Cut, g Goods) []Step {
	var out []Step
	l := list{job: job, cut: cut, g: g}
	l.corners()
	backing := map[string]float64{}
	for _, i := range l.out {
		for k, v := range i.Args {
			backing[k] = v
		}
	}
	n := tally{}
	for _, f := range job.Faces {
		if slices.ContainsFunc(cut.Hung, func(h Hung) bool { return h.Face == f.ID }) {
			n.count(f)
		}
	}
	add(&out, StepServices, "", -1, true, "")
	if len(backing) > 0 {
		out = append(out, Step{Code: StepBacking, Layer: -1, Args: backing})
	}
	add(&out, StepFramingSeen, "", -1, true, "")
	if g.Batts > 0 {
		add(&out, StepBatts, "", -1, false, "area", float64(g.Batts))
	}
	add(&out, StepPhotograph, "", -1, true, "")
	if g.Clips > 0 || len(g.Rows) > 0 {
		add(&out, StepClips, "", -1, false, "clips rows", float64(g.Clips), float64(len(g.Rows)))
		add(&out, StepClipsSeen, "", -1, true, "")
	}
	if n.boxes > 0 {
		add(&out, StepPads, "", -1, false, "boxes", float64(n.boxes))
	}
	edge := job.Rules.withDefaults().Edge
	run, area := 0.0, 0.0
	for i, h := range cut.Hung {
		first := i == 0 || cut.Hung[i-1].Layer != h.Layer
		final := i == len(cut.Hung)-1 || cut.Hung[i+1].Layer != h.Layer
		if first {
			run = 0
			add(&out, StepStart, "", h.Layer, false, "gap", float64(edge))
			if n.boxes > 0 && i > 0 {
				add(&out, StepExtend, "", h.Layer, false, "boxes", float64(n.boxes))
			}
		}
		if slices.ContainsFunc(g.Film, func(f Layer) bool { return f.Face == h.Face && f.Layer == h.Layer-1 }) {
			add(&out, StepFilm, h.Face, h.Layer, false, "pieces", float64(len(h.Pieces)))
		}
		add(&out, StepHang, h.Face, h.Layer, false, "pieces ends order left right foot head", float64(len(h.Pieces)), float64(h.Ends), float64(h.Order),
			one(h.PastLeft), one(h.PastRight), one(h.PastFoot), one(h.PastHead))
		e, o := l.around(h)
		run += float64(e + o)
		if l.last(h) && l.face(h.Face).Place != Floor {
			area += float64(h.Area.W * h.Area.H)
		}
		if final {
			add(&out, StepSeal, "", h.Layer, false, "run", run)
			add(&out, StepSealCheck, "", h.Layer, true, "")
		}
	}
	if n.doors > 0 {
		add(&out, StepDoor, "", -1, false, "doors", float64(n.doors))
	}
	if n.windows > 0 {
		add(&out, StepWindow, "", -1, false, "windows", float64(n.windows))
	}
	if len(cut.Hung) > 0 {
		add(&out, StepTape, "", -1, false, "")
		add(&out, StepPaint, "", -1, false, "area", area)
	}
	add(&out, StepLeakCheck, "", -1, true, "")
	add(&out, StepAlarms, "", -1, true, "")
	add(&out, StepFinalSeen, "", -1, true, "")
	return out
}

func one(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

// add adds a step, see say.
//
//go:noinline
func add(to *[]Step, code Code, face string, layer int, hold bool, names string, values ...float64) {
	*to = append(*to, Step{code, face, layer, hold, named(names, values...)})
}
