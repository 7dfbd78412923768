package core

import (
	"slices"

	"twoleaf/core/load"
	"twoleaf/core/plan"
	"twoleaf/core/room"
)

// MoneyReport is what the next money does: single changes, best first by what
// they bring the worst space, and the best of them together within the budget.
type MoneyReport struct {
	Budget *Value         `json:"budget"` // nil: none typed
	Worst  string         `json:"worst"`  // the space that is worst off
	Rows   []ChangeReport `json:"rows"`
	Best   *Together      `json:"best,omitempty"` // nil without a budget, or where nothing within it helps
	Tried  int            `json:"tried"`          // combinations looked at
	Exact  bool           `json:"exact"`          // none was passed over that could be better
}

// ChangeReport is one change.
type ChangeReport struct {
	ID      string            `json:"id"`
	Code    string            `json:"code"`              // seal, secondDoor, solidDoor, pad, caulk, box, boxed, pane, fill, board, clips, frame, takeOff, cut, apart
	Surface string            `json:"surface"`           // first that it changes
	Faces   []string          `json:"faces"`             // letters of all that it changes
	Opening string            `json:"opening,omitempty"` // id
	Kind    string            `json:"kind,omitempty"`    // of the opening
	Text    map[string]string `json:"text,omitempty"`    // board: its name, of a board to add
	Cost    *Value            `json:"cost"`              // nil while a price is missing
	Gain    float64           `json:"gain"`              // dB, A-weighted, in the worst space
	Bass    float64           `json:"bass"`              // dB, octaves 63 and 125, in the worst space
	All     float64           `json:"all"`               // dB, A-weighted, of all that gets out
	PerCost float64           `json:"perCost"`           // dB a hundred of the currency; 0 without a cost
	Mass    *Value            `json:"mass,omitempty"`    // added to a leaf
	Thick   *Value            `json:"thick,omitempty"`   // lost to the room
	Clip    *Value            `json:"clip,omitempty"`    // load of a clip over its rating, with it
	// Why says why it brings nothing, room.Reason: small (its way is no more than
	// Args.share of all there), masked (the way By lets through Args.times more),
	// elsewhere, worse, same; over: the clips would carry too much.
	Why  string             `json:"why,omitempty"`
	By   *room.Path         `json:"by,omitempty"`
	Args map[string]float64 `json:"args,omitempty"`
}

// Together are changes made at once.
type Together struct {
	IDs  []string `json:"ids"`
	Cost *Value   `json:"cost"`
	Gain float64  `json:"gain"`
	Bass float64  `json:"bass"`
}

// changed makes changes to a plan by their ids, in their order.
func changed(p plan.Plan, ids []string, t *Tables) (plan.Plan, []*plan.Fault) {
	if faults := plan.Check(p); len(faults) > 0 {
		return p, faults
	}
	if t == nil {
		t = NewTables()
	}
	out := clone(p)
	for _, id := range ids {
		h := newHouse(out, rated(p.Region), t)
		list := h.changes(room.AssessWith(h.room, &t.memo))
		at := slices.IndexFunc(list, func(c change) bool { return c.ID == id })
		if at < 0 {
			return p, []*plan.Fault{{Code: "unknown", Leaf: -1, Field: "change", Typed: id, Words: "that change is not to be had any more"}}
		}
		list[at].make(&out)
	}
	return out, nil
}

// money tells what each change brings, and the best of them for the budget.
func (h *house) money(told room.Report) *MoneyReport {
	list := h.changes(told)
	offered := make([]room.Change, len(list))
	rows := make([]ChangeReport, len(list))
	for i := range list {
		c := &list[i]
		offered[i], rows[i] = h.offer(c, told)
	}
	budget := float64(h.inside.Buying.Budget)
	spend := room.Money(h.room, told, offered, budget, room.ByLevel)
	out := &MoneyReport{Rows: []ChangeReport{}, Tried: spend.Best.Tried, Exact: spend.Best.Exact}
	if spend.Worst >= 0 {
		out.Worst = h.spaces[spend.Worst]
	}
	if budget > 0 {
		out.Budget = value(budget, kindMoney, "")
		out.Budget.Origin = Typed
		if b := spend.Best; len(b.Changes) > 0 {
			best := Together{Cost: value(b.Cost, kindMoney, ""), Gain: b.Gain, Bass: b.Bass}
			for _, c := range b.Changes {
				best.IDs = append(best.IDs, offered[c].ID)
			}
			out.Best = &best
		}
	}
	// Best for the money first, then by dB those without a price, then what brings nothing.
	seen := map[int]bool{}
	put := func(i int) {
		if seen[i] {
			return
		}
		seen[i] = true
		g, r := spend.Gains[i], rows[i]
		r.Gain, r.Bass, r.All, r.PerCost = g.Gain, g.Bass, g.All, g.PerCost*100
		if g.Why != "" {
			r.Why, r.Args = string(g.Why), nums("share", g.Share).and("times", g.Times)
			if g.By >= 0 {
				by := told.Paths[g.By]
				r.By = &by
			}
		}
		out.Rows = append(out.Rows, r)
	}
	for _, i := range spend.ByCost {
		put(i)
	}
	for _, i := range spend.ByGain {
		put(i)
	}
	for i := range rows {
		put(i)
	}
	return out
}

// offer works out what a change does to the ways out of the room.
func (h *house) offer(c *change, told room.Report) (room.Change, ChangeReport) {
	r := c.ChangeReport
	then := &house{plan: clone(h.plan), rw: h.rw, t: h.t, heard: slices.Clone(h.heard)}
	c.make(&then.plan)
	then.inside, _ = plan.ResolveRoom(then.plan)
	over := ""
	if c.builds {
		for _, i := range c.surfaces {
			doubt := then.heard[i].res.Spread
			then.heard[i] = then.hear(i, false)
			then.heard[i].res.Spread = doubt // it weighs next to nothing in what a change brings
			if y := then.heard[i]; y.ok && y.res.Clip.Rating > 0 {
				r.Clip = value(y.res.Clip.Share, kindShare, "")
				if y.res.Clip.State == load.Over {
					over = "clips"
				}
			}
		}
	}
	then.build()
	ways := room.Changed(told, room.AssessWith(then.room, &h.t.memo))
	cost, priced := c.cost()
	if priced {
		r.Cost = value(cost, kindMoney, "")
	}
	for _, i := range c.surfaces {
		r.Faces = append(r.Faces, letter(i))
	}
	out := room.Change{ID: r.ID, Group: c.group, Cost: cost, Unpriced: !priced, Ways: ways, Over: over}
	if r.Mass != nil {
		out.Mass = r.Mass.V
	}
	if r.Thick != nil {
		out.Thickness = r.Thick.V
	}
	return out, r
}
