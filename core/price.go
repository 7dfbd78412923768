package core

import (
	"twoleaf/core/material"
	"twoleaf/core/plan"
	"twoleaf/core/takeoff"
	"twoleaf/core/unit"
)

// prices says what one bought unit of an item costs, to the list and to the
// changes alike.
type prices struct {
	region  string
	example bool                  // what nobody typed is invented
	typed   map[string]unit.Money // by plan.Cost.Item
}

func pricesOf(p plan.Plan, in plan.Inside) prices {
	return prices{string(p.Region), p.Prices == plan.DemoPrices, in.Buying.Costs}
}

// one returns the price of one bought unit of an item that is on no shelf: typed
// under the list's key, else under the row of the invented list, as changes once
// asked for it, else invented. pack is how much of what the row prices one unit holds.
func (p prices) one(key, row string, pack float64) (price unit.Money, from Origin, ok bool) {
	if v, has := p.typed[key]; has {
		return v, Typed, true
	}
	if v, has := p.typed[row]; has {
		return v * unit.Money(pack), Typed, true
	}
	if d, has := material.Demo(row, p.region); has && p.example {
		return d.Amount * unit.Money(pack), Demo, true
	}
	return 0, "", false
}

// sheet returns the price of one sheet of a board: typed under the list's key, else as the shelf has it.
func (p prices) sheet(h plan.Here) (price unit.Money, from Origin, ok bool) {
	if v, has := p.typed[takeoff.Item{Code: takeoff.ItemSheets, Of: h.Board.ID}.Key()]; has {
		return v, Typed, true
	}
	price, ok = h.SheetPrice()
	return price, origin(h.Price), ok
}

// board returns the price of a board per m²; what comes in no sheets has it from the shelf alone.
func (p prices) board(h plan.Here) (rate float64, ok bool) {
	if price, _, has := p.sheet(h); has && h.Area() > 0 {
		return float64(price) / float64(h.Area()), true
	}
	return float64(h.Rate), h.Priced
}

// fill returns the price of a fill per m² of cavity: the list buys it by the pack.
func (p prices) fill(id string) (rate float64, ok bool) {
	price, _, ok := p.one(string(takeoff.ItemBatts), id, battCover)
	return float64(price) / battCover, ok
}

// battCover is the cavity that a pack of batts fills, m² (as takeoff has it, 60 ft²).
const battCover = 60 * float64(unit.SquareFoot)

// invented is what the invented list calls the items that are neither board nor fill.
var invented = []struct {
	code takeoff.Code
	row  string
}{
	{takeoff.ItemSealant, "sealant"}, {takeoff.ItemDamping, "damping"}, {takeoff.ItemClips, "clip"}, {takeoff.ItemChannel, material.HatChannel},
	{takeoff.ItemPads, "putty_pad"}, {takeoff.ItemTape, "tape"}, {takeoff.ItemCompound, "compound"}, {takeoff.ItemBacking, "backing"},
	{takeoff.ItemBlocking, "blocking"}, {takeoff.ItemScrews, "screws"},
}

func rowOf(code takeoff.Code) string {
	for _, r := range invented {
		if r.code == code {
			return r.row
		}
	}
	return ""
}

// need returns the price of one of what a change needs, by its row of the
// invented list; of a door, or what else the list does not count, the row is the key.
func (p prices) need(row string) (float64, bool) {
	item := takeoff.Item{Code: takeoff.Code(row)}
	for _, r := range invented {
		if r.row == row {
			item.Code = r.code
		}
	}
	switch item.Code {
	case takeoff.ItemSealant:
		item.Size = takeoff.UsualBead
	case takeoff.ItemChannel:
		item.Size = material.ChannelPiece(p.region)
	}
	price, _, ok := p.one(item.Key(), row, 1)
	return float64(price), ok
}
