package takeoff

import (
	"cmp"
	"math"
	"slices"

	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// What is on the list. The same code with another size or board is another row.
const (
	ItemSheets   Code = "sheets"
	ItemScrews   Code = "screws"
	ItemSealant  Code = "sealant"
	ItemDamping  Code = "damping"
	ItemClips    Code = "clips"
	ItemChannel  Code = "channel"
	ItemBatts    Code = "batts"
	ItemPads     Code = "pads"
	ItemTape     Code = "tape"
	ItemCompound Code = "compound"
	ItemBacking  Code = "backing"  // extra studs in the corners
	ItemBlocking Code = "blocking" // plywood between studs where something will hang
)

// The rules by which quantities are found.
const (
	RuleCut         Code = "by-cut"         // the cut layout: sheets, owned, bound
	RuleScrewUS     Code = "screws-us"      // 16 in on walls, 12 in on ceilings
	RuleScrewBaseUS Code = "screws-base-us" // 24 in where a later layer is screwed through
	RuleScrewUK     Code = "screws-uk"      // walls 300, ceilings 230, ends 150 mm
	RuleScrewBaseUK Code = "screws-base-uk" // an earlier layer: perimeter only, 300 mm
	RuleScrewAU     Code = "screws-au"      // 300 mm up each stud, both layers
	RuleScrewEU     Code = "screws-eu"      // walls 250, ceilings 170 mm
	RuleScrewBaseEU Code = "screws-base-eu" // three times that
	RuleScrewSteel  Code = "screws-channel" // on channel 12 in, each layer
	RuleScrewPanel  Code = "screws-panel"   // wood panel: 150 mm at edges, 300 in the field
	RuleScrewTyped  Code = "screws-typed"   // as typed, where that is closer than the rule of the last layer
	RuleBead        Code = "bead"           // round bead: metres = V/(πd²/4), every layer's perimeter and holes
	RuleFilm        Code = "film"           // litres per m² between two layers
	RuleLaid        Code = "as-laid-out"    // as the clips are laid out
	RuleRows        Code = "rows-with-laps" // rows cut from stock with laps
	RulePack        Code = "pack"           // area / cover of a pack
	RulePads        Code = "one-a-box"      // one for each box
	RuleJoints      Code = "face-joints"    // joints and corners of the face layer only
	RuleFaceArea    Code = "face-area"      // area of the face layer only
	RuleCorner      Code = "corner-backing" // shown ≥ layers + 20 mm in every corner
	RuleMounts      Code = "one-a-mount"    // one block for each thing that will hang
)

// Usual figures (sources beside each, keys of testdata/SOURCES.md).
const (
	// FilmRate is 55 to 60 fl oz a 4x8 sheet, in m³/m² (film-note).
	FilmRate = 0.58e-3
	// FilmTube is one 28–29 fl oz tube, two to a 4x8 sheet (film-note).
	FilmTube = 0.85e-3
	// Cartridge is the large one, 28 fl oz (common practice).
	Cartridge = 0.825e-3
	// UsualBead is 3/8 in (common practice).
	UsualBead = 0.375 * unit.Inch
	// CompoundRate is the middle of 0.4 lean and 0.8 generous, m³/m² (takeoff-book, derived).
	CompoundRate = 0.6e-3
	// UsualLap of two lengths of channel, 6 in (from memory).
	UsualLap = 6 * unit.Inch
	// CornerShows is what a stud must show beside the layers that cross it (derived).
	CornerShows = 20 * unit.Millimetre
	// MostScrews bounds a count.
	mostScrews = 1_000_000
	// Waste of goods by the metre or pack (common practice).
	wasteRun, wasteScrews, wasteBatts = 0.10, 0.10, 0.05
)

// Spacing is how far apart the screws of a layer are: in the field and along
// the edges of each piece; Field 0: along edges only.
type Spacing struct {
	Field, Edge unit.Length
	Rule        Code
}

// ScrewSpacing returns the spacing for a layer by place and by how many layers
// come after it. Sources: US IRC-R702 and GA-MULTI; UK spec-uk; Australia
// sheet-nz; the US base layer, Europe and wood panels from memory; on channel chan-guide.
func ScrewSpacing(region string, place Place, kind material.Kind, onChannel, last bool) Spacing {
	const mm, in = unit.Millimetre, unit.Inch
	ceiling := place == Ceiling
	pick := func(wall, over unit.Length) unit.Length {
		if ceiling {
			return over
		}
		return wall
	}
	switch {
	case kind.Wood() && material.TableRegion(region) == material.NorthAmerica:
		return Spacing{12 * in, 6 * in, RuleScrewPanel}
	case kind.Wood():
		return Spacing{300 * mm, 150 * mm, RuleScrewPanel}
	case onChannel:
		return Spacing{12 * in, 12 * in, RuleScrewSteel}
	}
	switch region {
	case "UK":
		if !last {
			return Spacing{0, 300 * mm, RuleScrewBaseUK}
		}
		return Spacing{pick(300, 230) * mm, pick(300, 150) * mm, RuleScrewUK}
	case material.Australia:
		return Spacing{300 * mm, 300 * mm, RuleScrewAU}
	case material.Europe:
		if !last {
			return Spacing{pick(750, 510) * mm, pick(750, 510) * mm, RuleScrewBaseEU}
		}
		return Spacing{pick(250, 170) * mm, pick(250, 170) * mm, RuleScrewEU}
	}
	if !last {
		return Spacing{24 * in, 24 * in, RuleScrewBaseUS}
	}
	return Spacing{pick(16, 12) * in, pick(16, 12) * in, RuleScrewUS}
}

// Closer returns the spacing with the typed one in its place where that is
// closer; 0 is none.
func (s Spacing) Closer(typed unit.Length) Spacing {
	if typed > 0 && (unit.Over(s.Field, typed) || unit.Over(s.Edge, typed)) {
		s.Field, s.Edge, s.Rule = min(s.Field, typed), min(s.Edge, typed), RuleScrewTyped
	}
	return s
}

// ScrewsIn returns the screws of one piece on lines of framing that run along
// its side t and cross its side l:
//
//	n = Σ over lines (⌊t/spacing⌋ + 1)
//
// lines are those that cross it, both ends counted; edge lines take the spacing
// of edges. Derived from the spacing rules.
func ScrewsIn(t unit.Length, lines, edgeLines int, s Spacing) int {
	return lines*onLine(t, s.Field) + edgeLines*onLine(t, s.Edge)
}

func onLine(t, spacing unit.Length) int {
	if !(spacing > 0) || !(t > 0) {
		return 0
	}
	return int(math.Floor(float64(min(t/spacing, mostScrews))+1e-6)) + 1
}

// Bead returns how many metres of a round bead of diameter d a volume gives:
//
//	l = V/(π·d²/4)
//
// V in m³. Derived.
func Bead(volume float64, d unit.Length) unit.Length {
	return unit.Length(volume / (math.Pi / 4 * float64(d*d)))
}

// Fillet returns the metres of a triangular fillet of legs a: l = V/(a²/2). Derived.
func Fillet(volume float64, a unit.Length) unit.Length {
	return unit.Length(volume / (float64(a*a) / 2))
}

// Fill returns the metres of a gap filled to a depth: l = V/(w·t). Derived.
func Fill(volume float64, w, t unit.Length) unit.Length {
	return unit.Length(volume / float64(w*t))
}

// Rows returns how many lengths of channel so many rows take, the pieces of a
// row lapped, what is cut off one row begun in the next where it is long enough:
//
//	row of n pieces: n·piece ≥ row + (n − 1)·lap
//
// First fit, longest rest first. 0 where a piece is no longer than its lap.
// Derived.
func Rows(rows []unit.Length, piece, lap unit.Length) int {
	if !(piece > lap) || !(lap >= 0) {
		return 0
	}
	count := 0
	var rests []float64
	for _, r := range rows {
		if !(r > 0) || !finite(r) {
			continue
		}
		for unit.Over(r, piece) {
			count++
			r -= piece - lap
		}
		rests = append(rests, float64(r))
	}
	slices.Sort(rests)
	var left []float64
	for i := len(rests) - 1; i >= 0; i-- {
		at := slices.IndexFunc(left, func(l float64) bool { return l >= rests[i] })
		if at < 0 {
			left, at = append(left, float64(piece)), len(left)
			count++
		}
		left[at] -= rests[i]
	}
	return count
}

// Fixed is how one layer of one face is screwed.
type Fixed struct {
	Face      string
	Layer     int
	Length    unit.Length // as Screws chose it; 0: not screwed
	Kind      material.Kind
	OnChannel bool
	Typed     unit.Length // between screws, of the layer hung last; 0: by the rule
}

// Price is what one bought unit costs and holds; Pack 0 takes the usual.
type Price struct {
	Each unit.Money
	Pack float64 // pieces, metres, m², m³ by the item's unit
	Has  bool    // a price was typed
}

// Goods is what else the plan holds.
type Goods struct {
	Region string
	Screws []Fixed
	Bead   unit.Length // of sealant; 0: UsualBead
	// Film is between a layer and the next, by face and the number of the layer below it.
	Film []Layer
	// From the layout of clips: how many, and the rows of channel.
	Clips       int
	Rows        []unit.Length
	Piece, Lap  unit.Length      // of channel; 0: as sold in the region, UsualLap
	Batts       unit.Area        // of cavity to be filled
	BattCover   unit.Area        // of a pack; 0: 5.5 m² (60 ft²)
	Mounts      int              // things that will hang on the walls
	MemberShows unit.Length      // of the corner stud, to one side; 0: 38 mm
	Prices      map[string]Price // by Item.Key
}

// Item is one row of the list.
type Item struct {
	Code   Code
	Of     string      // board, or ""
	Size   unit.Length // length of a screw or piece, diameter of a bead
	Amount float64     // by the rule: pieces, m, m², m³
	Unit   unit.Unit   // "" pieces, "m", "m2", "m3"
	Waste  float64     // share added before rounding up
	Pack   float64     // what one bought unit holds
	Buy    int         // bought units
	Owned  int
	Price  unit.Money // of one
	Priced bool
	Cost   unit.Money
	Mass   unit.Mass // of what is bought, where it is known
	Rule   Code
	Args   map[string]float64
	Origin string // "sourced", "derived", "from memory", "common practice"
}

// Key names an item for prices and ticks: its code, board and size in tenths of a mm.
func (i Item) Key() string {
	key := string(i.Code)
	if i.Of != "" {
		key += "/" + i.Of
	}
	if i.Size > 0 {
		key += "/" + digits(int(math.Round(float64(i.Size)*1e4)))
	}
	return key
}

func digits(n int) string {
	if n < 10 {
		return string(rune('0' + n))
	}
	return digits(n/10) + string(rune('0'+n%10))
}

// Items returns the list for a job as it was cut: sheets, screws by length,
// sealant, and the rest of the goods. Quantities are by the rule named in each;
// Buy is rounded up to packs after waste.
func Items(job Job, cut Cut, g Goods) []Item {
	l := list{job: job, cut: cut, g: g}
	l.sheets()
	l.screws()
	l.sealant()
	l.film()
	l.hangers()
	l.finish()
	l.corners()
	return l.out
}

type list struct {
	job Job
	cut Cut
	g   Goods
	out []Item
}

// add completes an item by its price and pack and puts it on the list.
func (l *list) add(i Item) {
	if !(i.Amount > 0) {
		return
	}
	p := l.g.Prices[i.Key()]
	if p.Pack > 0 {
		i.Pack = p.Pack
	}
	if !(i.Pack > 0) {
		i.Pack = 1
	}
	i.Buy = max(0, int(math.Ceil(min(i.Amount*(1+i.Waste)/i.Pack, mostScrews)-1e-9))-i.Owned)
	i.Price, i.Priced = p.Each, p.Has
	i.Cost = unit.Money(float64(i.Buy)) * i.Price
	l.out = append(l.out, i)
}

func (l *list) face(id string) Face {
	if i := slices.IndexFunc(l.job.Faces, func(f Face) bool { return f.ID == id }); i >= 0 {
		return l.job.Faces[i]
	}
	return Face{}
}

// last reports whether no further layer hangs on the face.
func (l *list) last(h Hung) bool {
	return !slices.ContainsFunc(l.cut.Hung, func(o Hung) bool { return o.Face == h.Face && o.Layer > h.Layer })
}

func (l *list) sheets() {
	for _, t := range l.cut.Totals {
		l.add(Item{Code: ItemSheets, Of: t.Board, Amount: float64(t.Sheets), Owned: t.Owned, Mass: t.Mass, Rule: RuleCut, Origin: "derived",
			Args: named("sheets owned bound rule", float64(t.Sheets), float64(t.Owned), float64(t.Bound), float64(t.Area))})
	}
}

func (l *list) screws() {
	type sum struct {
		length unit.Length
		count  int
		rules  map[Code]int
	}
	var sums []sum
	for _, f := range l.g.Screws {
		if !(f.Length > 0) {
			continue
		}
		at := slices.IndexFunc(l.cut.Hung, func(h Hung) bool { return h.Face == f.Face && h.Layer == f.Layer })
		if at < 0 {
			continue
		}
		h := l.cut.Hung[at]
		face := l.face(f.Face)
		s := ScrewSpacing(l.g.Region, face.Place, f.Kind, f.OnChannel, l.last(h))
		if l.last(h) {
			s = s.Closer(f.Typed)
		}
		n := 0
		for _, p := range h.Pieces {
			n += l.screwsOf(l.cut.Pieces[p], face, s)
		}
		i := slices.IndexFunc(sums, func(s sum) bool { return s.length == f.Length })
		if i < 0 {
			i = len(sums)
			sums = append(sums, sum{f.Length, 0, map[Code]int{}})
		}
		sums[i].count += n
		sums[i].rules[s.Rule] += n
	}
	for _, n := range ranked(len(sums), func(a, b int) int { return cmp.Compare(sums[a].length, sums[b].length) }) {
		s := sums[n]
		rule, most, args := Code(""), 0, map[string]float64{}
		for _, c := range [...]Code{RuleScrewUS, RuleScrewBaseUS, RuleScrewUK, RuleScrewBaseUK, RuleScrewAU, RuleScrewEU, RuleScrewBaseEU, RuleScrewSteel, RuleScrewPanel, RuleScrewTyped} {
			if s.rules[c] > 0 {
				args[string(c)] = float64(s.rules[c])
			}
			if s.rules[c] > most {
				rule, most = c, s.rules[c]
			}
		}
		l.add(Item{Code: ItemScrews, Size: s.length, Amount: float64(s.count), Waste: wasteScrews, Pack: 1000, Rule: rule, Args: args, Origin: "derived"})
	}
}

// screwsOf counts the screws of one piece on the lines that it crosses.
func (l *list) screwsOf(p Piece, f Face, s Spacing) int {
	lines, reach := linesOf(f)
	b := back(p.On)
	from, to, t := b.x, b.x+b.w, p.On.H
	if !f.Framing.Upright {
		from, to, t = b.y, b.y+b.h, p.On.W
	}
	field, edge := 0, 0
	for _, at := range lines {
		switch {
		case at < from-reach-1 || at > to+reach+1:
		case at <= from+reach+1 || at >= to-reach-1:
			edge++
		default:
			field++
		}
	}
	if s.Field == 0 {
		// The perimeter only: along the two outer lines and across the ends of the others.
		return ScrewsIn(t, 0, 2, s) + 2*max(0, field+edge-2)
	}
	return ScrewsIn(t, field, edge, s)
}

// around returns the length to be sealed around a layer: its edge, and the holes in it.
func (l *list) around(h Hung) (edge, holes unit.Length) {
	edge = 2 * (h.Area.W + h.Area.H)
	for _, o := range l.face(h.Face).Openings {
		if back(o.Rect).meet(back(h.Area)).empty() {
			continue
		}
		if o.Kind == "pipe" || o.Kind == "round" {
			holes += math.Pi * o.W
		} else {
			holes += 2 * (o.W + o.H)
		}
	}
	return
}

func (l *list) sealant() {
	bead := l.g.Bead
	if !(bead > 0) {
		bead = UsualBead
	}
	var edges, holes unit.Length
	for _, h := range l.cut.Hung {
		e, o := l.around(h)
		edges += e
		holes += o
	}
	l.add(Item{Code: ItemSealant, Size: bead, Amount: float64(edges + holes), Unit: unit.M, Waste: wasteRun, Pack: l.bead(bead), Rule: RuleBead, Origin: "derived",
		Args: named("edges holes layers cartridge each", float64(edges), float64(holes), float64(len(l.cut.Hung)), Cartridge, float64(Bead(Cartridge, bead)))})
}

func (l *list) bead(d unit.Length) float64 { return float64(Bead(Cartridge, d)) }

func (l *list) film() {
	area := unit.Area(0)
	for _, f := range l.g.Film {
		for _, h := range l.cut.Hung {
			if h.Face != f.Face || h.Layer != f.Layer {
				continue
			}
			for _, n := range h.Pieces {
				area += l.cut.Pieces[n].Net()
			}
		}
	}
	l.add(Item{Code: ItemDamping, Amount: float64(area) * FilmRate, Unit: "m3", Pack: FilmTube, Rule: RuleFilm, Origin: "sourced",
		Args: named("area rate tube", float64(area), FilmRate, FilmTube)})
}

// Net returns the area of a piece less its holes.
func (p Piece) Net() unit.Area {
	area := back(p.On).area()
	for i, o := range p.Holes {
		area -= back(o).area()
		for _, other := range p.Holes[:i] {
			if m := back(o).meet(back(other)); !m.empty() {
				area += m.area()
			}
		}
	}
	return squares(area)
}

func (l *list) hangers() {
	g := l.g
	l.add(Item{Code: ItemClips, Amount: float64(g.Clips), Rule: RuleLaid, Origin: "derived", Args: named("clips", float64(g.Clips))})
	piece, lap := g.Piece, g.Lap
	if !(piece > 0) {
		piece = material.ChannelPiece(g.Region)
	}
	if !(lap > 0) {
		lap = UsualLap
	}
	run := unit.Length(0)
	for _, r := range g.Rows {
		run += max(0, r)
	}
	l.add(Item{Code: ItemChannel, Size: piece, Amount: float64(Rows(g.Rows, piece, lap)), Rule: RuleRows, Origin: "derived",
		Args: named("rows run lap piece", float64(len(g.Rows)), float64(run), float64(lap), float64(piece))})
	cover := g.BattCover
	if !(cover > 0) {
		cover = 60 * unit.SquareFoot
	}
	l.add(Item{Code: ItemBatts, Amount: float64(g.Batts), Unit: unit.M2, Waste: wasteBatts, Pack: float64(cover), Rule: RulePack, Origin: "common practice",
		Args: named("area cover", float64(g.Batts), float64(cover))})
	boxes := 0
	for _, f := range l.job.Faces {
		for _, o := range f.Openings {
			if o.Kind == "box" {
				boxes++
			}
		}
	}
	l.add(Item{Code: ItemPads, Amount: float64(boxes), Rule: RulePads, Origin: "common practice", Args: named("boxes", float64(boxes))})
}

// finish counts tape and compound for the face layers only: inner layers are sealed, not taped.
func (l *list) finish() {
	var joints, corners unit.Length
	area := unit.Area(0)
	for _, h := range l.cut.Hung {
		f := l.face(h.Face)
		if !l.last(h) || f.Place == Floor {
			continue
		}
		joints += h.JointRun
		for _, n := range h.Pieces {
			area += l.cut.Pieces[n].Net()
		}
		// Each inside corner belongs to two faces: a wall counts its head and its right.
		if f.Place == Wall {
			if f.Head != "" {
				corners += h.Area.W
			}
			if f.Right != "" {
				corners += h.Area.H
			}
		}
	}
	l.add(Item{Code: ItemTape, Amount: float64(joints + corners), Unit: unit.M, Waste: wasteRun, Pack: 75, Rule: RuleJoints, Origin: "derived",
		Args: named("joints corners", float64(joints), float64(corners))})
	l.add(Item{Code: ItemCompound, Amount: float64(area) * CompoundRate, Unit: "m3", Waste: wasteRun, Pack: 17e-3, Rule: RuleFaceArea, Origin: "derived",
		Args: named("area rate low high", float64(area), CompoundRate, 0.4e-3, 0.8e-3)})
}

// corners counts the studs that give later layers something to bite: one in
// every inside corner whose stud does not show past the layers that cross it.
func (l *list) corners() {
	shows := l.g.MemberShows
	if !(shows > 0) {
		shows = usualMember
	}
	count, run, need := 0, unit.Length(0), unit.Length(0)
	for _, f := range l.job.Faces {
		if f.Place != Wall || !f.Framing.Upright || f.Right == "" {
			continue
		}
		thick := l.job.thickness(f.Right)
		if thick > 0 && unit.Over(thick+CornerShows, shows) {
			count++
			run += f.Height
			need = max(need, thick+CornerShows)
		}
	}
	l.add(Item{Code: ItemBacking, Size: run / unit.Length(max(1, count)), Amount: float64(count), Rule: RuleCorner, Origin: "derived",
		Args: named("corners run shows needs", float64(count), float64(run), float64(shows), float64(need))})
	l.add(Item{Code: ItemBlocking, Amount: float64(l.g.Mounts), Rule: RuleMounts, Origin: "common practice", Args: named("mounts", float64(l.g.Mounts))})
}

// Bill is what a list costs.
type Bill struct {
	Goods       unit.Money // priced items
	Contingency unit.Money
	BeforeTax   unit.Money
	Tax         unit.Money
	Total       unit.Money
	StillToGet  unit.Money // before tax and contingency, of items not ticked
	Unpriced    int        // items to buy without a price
}

// BillOf adds a list up. contingency and tax are shares of one; got holds the
// keys of items ticked. Tax is on goods and contingency both.
func BillOf(items []Item, contingency, tax float64, got map[string]bool) Bill {
	var b Bill
	for _, i := range items {
		if i.Buy > 0 && !i.Priced {
			b.Unpriced++
		}
		b.Goods += i.Cost
		if !got[i.Key()] {
			b.StillToGet += i.Cost
		}
	}
	b.Contingency = b.Goods * unit.Money(contingency)
	b.BeforeTax = b.Goods + b.Contingency
	b.Tax = b.BeforeTax * unit.Money(tax)
	b.Total = b.BeforeTax + b.Tax
	return b
}

// What people forget to buy (common practice; what builders wrote they had
// forgotten).
const (
	ForgotBackerRod   Code = "forgot-backer-rod"  // behind sealant in gaps over 6 mm
	ForgotPads        Code = "forgot-pads"        // putty pads: boxes
	ForgotExtenders   Code = "forgot-extenders"   // box extenders: thickness
	ForgotPilot       Code = "forgot-pilot-bit"   // wood panel over thin steel
	ForgotBits        Code = "forgot-driver-bits" // screws
	ForgotBlades      Code = "forgot-blades"      // knife and saw blades: cuts
	ForgotJamb        Code = "forgot-jamb"        // deeper door lining: thickness
	ForgotDoorSeal    Code = "forgot-door-seal"   // perimeter seal and drop seal
	ForgotReveal      Code = "forgot-window-reveal"
	ForgotCornerBead  Code = "forgot-corner-bead"
	ForgotPaint       Code = "forgot-paint"      // primer and paint: area
	ForgotPanelLift   Code = "forgot-panel-lift" // rent: ceiling
	ForgotMask        Code = "forgot-mask"       // masks, goggles, gloves, vacuum
	ForgotSkip        Code = "forgot-skip"       // for what is left and what came out
	ForgotSpacers     Code = "forgot-spacers"    // to hold the edge gap while screwing
	ForgotGrommet     Code = "forgot-cable-sleeves"
	ForgotElectrician Code = "forgot-electrician"
	ForgotDelivery    Code = "forgot-delivery"
)

// Forgotten returns what is easily left off the list of this job, with the
// number that calls for it.
func Forgotten(job Job, cut Cut, g Goods) []Note {
	var out []Note
	r := job.Rules.withDefaults()
	n, wood, thick, ceiling := tally{}, false, unit.Length(0), false
	for _, f := range job.Faces {
		sum := job.thickness(f.ID)
		if sum == 0 {
			continue
		}
		thick = max(thick, sum)
		ceiling = ceiling || f.Place == Ceiling
		n.count(f)
	}
	if len(cut.Hung) == 0 {
		return nil
	}
	for _, s := range g.Screws {
		wood = wood || s.OnChannel && s.Kind.Wood()
	}
	cuts, screws, area := 0, 0.0, 0.0
	for _, t := range cut.Totals {
		cuts += t.Cuts
	}
	l := list{job: job, cut: cut, g: g}
	l.screws()
	for _, i := range l.out {
		screws += i.Amount
	}
	for _, h := range cut.Hung {
		if l.last(h) {
			area += float64(h.Area.W * h.Area.H)
		}
	}
	if r.Edge > 0 {
		say(&out, ForgotBackerRod, "", -1, "", "gap", float64(r.Edge))
		say(&out, ForgotSpacers, "", -1, "", "gap", float64(r.Edge))
	}
	if n.boxes > 0 {
		say(&out, ForgotPads, "", -1, "", "boxes", float64(n.boxes))
		say(&out, ForgotExtenders, "", -1, "", "thickness", float64(thick))
		say(&out, ForgotElectrician, "", -1, "", "boxes", float64(n.boxes))
	}
	if n.holes > 0 {
		say(&out, ForgotGrommet, "", -1, "", "holes", float64(n.holes))
	}
	if wood {
		say(&out, ForgotPilot, "", -1, "", "screws", screws)
	}
	if n.doors > 0 {
		say(&out, ForgotJamb, "", -1, "", "thickness", float64(thick))
		say(&out, ForgotDoorSeal, "", -1, "", "doors", float64(n.doors))
	}
	if n.windows > 0 {
		say(&out, ForgotReveal, "", -1, "", "thickness", float64(thick))
		say(&out, ForgotCornerBead, "", -1, "", "windows", float64(n.windows))
	}
	if ceiling {
		say(&out, ForgotPanelLift, "", -1, "", "ceiling", 1)
	}
	say(&out, ForgotBits, "", -1, "", "screws", screws)
	say(&out, ForgotBlades, "", -1, "", "cuts", float64(cuts))
	say(&out, ForgotPaint, "", -1, "", "area", area)
	say(&out, ForgotMask, "", -1, "", "cuts", float64(cuts))
	say(&out, ForgotSkip, "", -1, "", "left", float64(len(cut.Sheets)))
	say(&out, ForgotDelivery, "", -1, "", "sheets", float64(len(cut.Sheets)))
	return out
}

// tally is how many openings of each kind faces have.
type tally struct{ boxes, doors, windows, holes int }

func (n *tally) count(f Face) {
	for _, o := range f.Openings {
		switch o.Kind {
		case "box":
			n.boxes++
		case "door":
			n.doors++
		case "window", "hatch":
			n.windows++
		default:
			n.holes++
		}
	}
}

// thickness returns that of all new layers of a face.
func (j Job) thickness(face string) (sum unit.Length) {
	for _, y := range j.Layers {
		if i := slices.IndexFunc(j.Boards, func(s Sold) bool { return s.ID == y.Board }); i >= 0 && y.Face == face {
			sum += j.Boards[i].Thickness
		}
	}
	return sum
}
