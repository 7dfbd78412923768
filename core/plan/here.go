package plan

import (
	"fmt"
	"slices"

	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// Origin says where a value comes from.
type Origin string

// The origins; Unknown is of a value that nobody told.
const (
	Unknown  Origin = ""
	Typed    Origin = "typed"
	Typical  Origin = "typical"
	Invented Origin = "demo" // from the invented list, or the example's
	Computed Origin = "computed"
)

// From is where one value comes from, and how it was typed.
type From struct {
	Origin Origin
	As     unit.Quantity
}

func typed(q unit.Quantity) From { return From{Typed, q} }

// Here is a board as it is here: the row of the table with the shelf applied.
type Here struct {
	Board material.Board // thickness, mass, modulus and sheets as they are here
	Shelf Shelf          // the row of the shelf, zero if there is none
	// Where the values of Board come from. Thickness typed makes the mass
	// Computed unless that was typed too.
	Mass, Thickness, Sheet, Price From
	Rate                          unit.MoneyRate // price per area, plan's currency per m²
	Priced                        bool
	Stock                         int // how many there are, with StockSaid
	StockSaid                     bool
	Plenty                        bool
	Owned                         int
}

// Area returns the area of one sheet as it is here, 0 if it does not come in sheets.
func (h Here) Area() unit.Area { return h.Board.Area() }

// Weight returns the mass of one sheet, kg; false if it does not come in sheets.
func (h Here) Weight() (unit.Mass, bool) {
	a := h.Area()
	return unit.Mass(float64(h.Board.Mass) * float64(a)), a > 0
}

// SheetPrice returns the price of one sheet; false without a price or a sheet.
func (h Here) SheetPrice() (unit.Money, bool) {
	a := h.Area()
	return unit.Money(float64(h.Rate) * float64(a)), a > 0 && h.Priced
}

// Currency returns the sign of the money in which a plan of the region counts.
func (r Region) Currency() unit.Unit { return material.Currency(string(r)) }

// shelfOf returns the row of the shelf for a board.
func (p *Plan) shelfOf(board string) (Shelf, bool) {
	for _, s := range p.Shelf {
		if s.Board == board {
			return s, true
		}
	}
	return Shelf{}, false
}

// BoardHere returns a board with what the shelf says of it:
//
//	typed thickness t′:  m′ = m·t′/t, E stays
//	typed weight W of a sheet of area S:  m′ = W/S, E′ = E·m′/m
//
// so that a heavier sheet keeps thickness × critical frequency of its kind. The
// weight of a pallet is shared by its sheets, of a scale the difference is taken.
// The price is the typed one, else the invented one if the plan uses that list,
// else unknown. Faults leave the table's value in place.
func BoardHere(p Plan, board string) (Here, []*Fault) {
	return p.here(board, place{f: Fault{Leaf: -1}, words: "shelf"})
}

// here does the same and says a fault at a place: of the layer that the board is in.
func (p *Plan) here(id string, at place) (Here, []*Fault) {
	at.f.Board = id
	b, ok := material.ByID(id)
	if !ok {
		return Here{}, []*Fault{at.unknown("board", id)}
	}
	at.words += ", " + b.Name
	h := Here{Board: b, Mass: From{Origin: Typical}, Thickness: From{Origin: Typical}, Sheet: From{Origin: Typical}}
	var faults []*Fault
	s, has := p.shelfOf(id)
	h.Shelf = s
	if has {
		faults = p.applyShelf(&h, s, at)
	}
	if !h.Priced && p.Prices == DemoPrices {
		if d, ok := material.Demo(id, string(p.Region)); ok {
			// The list's sheet is the first of the table, whatever size lies here.
			if rate := d.Rate(b.Area()); rate > 0 {
				h.Rate, h.Priced, h.Price = rate, true, From{Origin: Invented}
			}
		}
	}
	return h, faults
}

// applyShelf changes h by the row s of the shelf.
func (p *Plan) applyShelf(h *Here, s Shelf, at place) (faults []*Fault) {
	b := h.Board
	if t, ok := at.read(&faults, "thickness", s.Thickness, unit.OfLength, thicknessLimits(b.Kind), false); ok {
		h.Board = h.Board.WithThickness(unit.Length(t))
		h.Thickness, h.Mass = typed(s.Thickness), From{Origin: Computed}
	}
	if _, ok := at.read(&faults, "sheet", s.Sheet, unit.OfLength, sideRange, false); ok {
		w, l, _ := s.Sheet.Sheet()
		sheet := material.Sheet{Width: w, Length: l}
		// First, so that every count is in it; the sizes as sold stay to be chosen.
		sheets, sizes := []material.Sheet{sheet}, []unit.Quantity{s.Sheet}
		for i, have := range b.Sheets {
			if !unit.Same(have.Width, w) || !unit.Same(have.Length, l) {
				sheets, sizes = append(sheets, have), append(sizes, b.Sizes[i])
			}
		}
		h.Board.Sheets, h.Board.Sizes = sheets, sizes
		h.Sheet = typed(s.Sheet)
	}
	if mass, from, ok := p.weighed(h.Board, s, at, &faults); ok {
		h.Board = h.Board.WithMass(mass)
		h.Mass = from
	}
	if rate, ok := p.priced(h.Board, s, at, &faults); ok {
		h.Rate, h.Priced, h.Price = rate, true, typed(s.Price)
	}
	if n, ok := at.read(&faults, "stock", s.Stock, unit.OfCount, stockRange, true); ok {
		h.Stock, h.StockSaid = int(n), true
	}
	h.Plenty = s.Plenty
	if n, ok := at.read(&faults, "owned", s.Owned, unit.OfCount, stockRange, true); ok {
		h.Owned = int(n)
	}
	return faults
}

// weighed returns the mass per area that the tag tells; ok is false if it tells none or a wrong one.
func (p *Plan) weighed(b material.Board, s Shelf, at place, faults *[]*Fault) (m unit.SurfaceMass, from From, ok bool) {
	if s.Weight == "" {
		return 0, From{}, false
	}
	from = typed(s.Weight)
	sheet := float64(b.Area())
	perSheet := func(kg float64) (unit.SurfaceMass, From, bool) {
		if sheet <= 0 {
			*faults = append(*faults, at.fault("missing", "sheet", "", "a weight per sheet needs the size of the sheet"))
			return 0, From{}, false
		}
		m := unit.SurfaceMass(kg / sheet)
		// A sheet of an allowed weight may still be no such board: 250 lb of 1/8 in.
		r := areaLimits(b.Kind, b.Thickness)
		q := unit.Of(float64(m), unit.KGM2)
		if s.Weight.Unit() == unit.LB || s.Weight.Unit() == unit.OZ {
			q = unit.Of(float64(m/unit.PoundPerSquareFoot), unit.PSF)
		}
		low, high := r.of(q.Unit())
		if unit.Check(q, low, high) != nil {
			code, v, _ := "small", 0.0, false
			if v, _ = q.Value(); v > first(high.Value()) {
				code = "large"
			}
			f := at.fault(code, "weight", string(s.Weight), fmt.Sprintf("weight is %s, which makes %.3g %s; %s to %s is allowed at this thickness", say(s.Weight), v, q.Unit(), bare(say(low), say(high)), say(high)))
			f.Low, f.High = say(low), say(high)
			*faults = append(*faults, f)
			return 0, From{}, false
		}
		return m, from, true
	}
	switch s.Per {
	case PerSheet:
		if kg, read := at.read(faults, "weight", s.Weight, unit.OfMass, weightRange, false); read {
			return perSheet(kg)
		}
	case PerArea:
		if v, read := at.read(faults, "weight", s.Weight, unit.OfSurfaceMass, areaLimits(b.Kind, b.Thickness), false); read {
			return unit.SurfaceMass(v), from, true
		}
	case PerPallet:
		kg, read := at.read(faults, "weight", s.Weight, unit.OfMass, palletRange, false)
		if s.Of == "" {
			*faults = append(*faults, at.fault("missing", "of", "", "the weight of a pallet needs the number of its sheets"))
			return 0, From{}, false
		}
		n, counted := at.read(faults, "of", s.Of, unit.OfCount, piecesRange, false)
		if read && counted {
			return perSheet(kg / n)
		}
	case OnScale:
		with, read := at.read(faults, "weight", s.Weight, unit.OfMass, scaleRange, false)
		less, without := 0.0, true
		if s.Less != "" {
			less, without = at.read(faults, "less", s.Less, unit.OfMass, scaleRange, true)
		}
		if read && without {
			if with <= less {
				*faults = append(*faults, at.fault("small", "weight", string(s.Weight), fmt.Sprintf("weight with the sheet is %s, not more than %s without it", say(s.Weight), say(s.Less))))
				return 0, From{}, false
			}
			return perSheet(with - less)
		}
	default:
		*faults = append(*faults, at.unknown("per", string(s.Per)))
	}
	return 0, From{}, false
}

func first(v float64, _ bool) float64 { return v }

// priced returns the typed price per area.
func (p *Plan) priced(b material.Board, s Shelf, at place, faults *[]*Fault) (unit.MoneyRate, bool) {
	if s.Price == "" {
		return 0, false
	}
	money, ok := at.read(faults, "price", s.Price, unit.OfMoney, priceRange, true)
	if !ok {
		return 0, false
	}
	if have, want := s.Price.Unit(), p.Region.Currency(); have != want {
		f := at.fault("unit", "price", string(s.Price), fmt.Sprintf("price is %s, but this plan counts in %s", say(s.Price), want))
		number, _ := s.Price.Parts()
		f.Mend = []string{number + " " + string(want)}
		*faults = append(*faults, f)
		return 0, false
	}
	if s.PriceArea {
		per := unit.SquareMetre
		if p.Units == Customary {
			per = unit.SquareFoot
		}
		return unit.MoneyRate(money / float64(per)), true
	}
	if b.Area() <= 0 {
		*faults = append(*faults, at.fault("missing", "sheet", "", "a price per sheet needs the size of the sheet"))
		return 0, false
	}
	return unit.MoneyRate(money / float64(b.Area())), true
}

// filmHere returns the price per area of a damping film: a row of the shelf for
// it (its price is always per area), else the invented one.
func (p *Plan) filmHere() (rate unit.MoneyRate, ok bool) {
	if s, has := p.shelfOf(material.DampingFilm); has && s.Price != "" {
		s.PriceArea = true
		var faults []*Fault
		if rate, ok = p.priced(material.Board{}, s, place{f: Fault{Leaf: -1}}, &faults); ok {
			return rate, true
		}
	}
	if p.Prices == DemoPrices {
		if d, has := material.Demo(material.DampingFilm, string(p.Region)); has {
			return d.Rate(0), true
		}
	}
	return 0, false
}

// BoardsUsed returns the ids of the boards that stand anywhere in a plan's
// build-ups, each once, in their order.
func (p *Plan) BoardsUsed() []string {
	var ids []string
	for i := range p.BuildUps {
		b := &p.BuildUps[i]
		for _, l := range b.Leaves {
			ids = appendBoards(ids, l.Layers)
		}
		ids = appendBoards(ids, b.Compare.Reference)
		for _, c := range b.Compare.Rows {
			ids = appendBoards(ids, c.Layers)
		}
	}
	return ids
}

func appendBoards(ids []string, layers []Layer) []string {
	for _, y := range layers {
		if !slices.Contains(ids, y.Board) {
			ids = append(ids, y.Board)
		}
	}
	return ids
}
