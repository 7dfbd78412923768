package plan

import (
	"slices"
	"strings"

	"twoleaf/core/caution"
	"twoleaf/core/material"
)

// The cautions about what was brought in, beside caution.ValueChanged.
const (
	// TableNewer: the plan was made with newer typical values than these.
	TableNewer caution.Code = "table-newer" // was, now
	// UnreadFields: the file held fields that are not known here.
	UnreadFields caution.Code = "unread-fields" // fields
)

// moved is a typical value that has changed.
type moved struct {
	version int // material.TableVersion from which the new value holds
	board   string
	field   string // mass [kg/m²], thickness [m]
	was     float64
}

// history lists what has changed since the first version of the table, oldest
// first. Whoever changes a value in the table adds the old one here.
var history = []moved{}

// Changed returns a caution for every typical value that a plan uses and that
// has changed since it was made, and for what of a file was not read. A value
// that was typed does not change.
func Changed(p Plan) []caution.Caution { return changed(p, history, material.TableVersion) }

func changed(p Plan, history []moved, table int) []caution.Caution {
	var out []caution.Caution
	if p.Table > table {
		out = append(out, caution.Caution{Code: TableNewer, Args: map[string]float64{"was": float64(p.Table), "now": float64(table)}})
	}
	used := p.BoardsUsed()
	for _, m := range history {
		if m.version <= p.Table || !slices.Contains(used, m.board) {
			continue
		}
		// What the plan was made with is the value before the first change it has not seen.
		if slices.ContainsFunc(history, func(o moved) bool {
			return o.board == m.board && o.field == m.field && o.version > p.Table && o.version < m.version
		}) {
			continue
		}
		b, ok := material.ByID(m.board)
		s, _ := p.shelfOf(m.board)
		if !ok || m.field == "mass" && s.Weight != "" || m.field == "thickness" && s.Thickness != "" {
			continue
		}
		now := float64(b.Mass)
		if m.field == "thickness" {
			now = float64(b.Thickness)
		}
		if now != m.was {
			out = append(out, caution.Caution{
				Code: caution.ValueChanged, Where: m.board,
				Args: map[string]float64{"was": m.was, "now": now},
				Text: map[string]string{"board": m.board, "field": m.field},
			})
		}
	}
	if len(p.Unread) > 0 {
		out = append(out, caution.Caution{Code: UnreadFields, Text: map[string]string{"fields": strings.Join(p.Unread, ", ")}})
	}
	return out
}
