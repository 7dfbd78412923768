package core

import (
	"encoding/json"
	"math/rand/v2"
	"runtime"
	"testing"

	"github.com/stretchr/testify/require"

	"twoleaf/core/plan"
	"twoleaf/core/room"
	"twoleaf/core/unit"
)

// Whatever is typed around the walls, every call is answered: with figures, or
// with a fault in words, never with a panic or a number that is none.
func TestOddRoomsAreAnswered(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	pick := func(list ...string) string { return list[r.IntN(len(list))] }
	length := func() unit.Quantity {
		return unit.Quantity(pick("", "", "", "0 in", "1 ft", "8 ft", "100 ft", "12 in", "1 mm", "-3 ft", "abc", "0.3 in", "96 in", "5000 ft"))
	}
	number := func() unit.Quantity {
		return unit.Quantity(pick("", "", "0", "1", "2", "7", "35", "60", "100", "1000000", "-4", "x"))
	}
	kinds := room.Kinds()
	tables := NewTables()
	rounds, told := 30, 0
	if runtime.GOARCH == "wasm" {
		rounds = 10
	}
	for range rounds {
		p := plan.Demo(plan.Region(pick("US", "CA", "UK", "EU", "AU")))
		p.Source, p.Level = pick("", "drums", "nobody", "speech"), unit.Quantity(pick("", "100", "35", "140"))
		p.Also = []plan.Playing{{Source: pick("band", "tv", "x"), Level: number()}}
		p.Room = &plan.Room{
			Length: length(), Width: length(), Height: length(), Soft: plan.Soft(pick("", "bare", "soft", "odd")), People: number(), Minutes: number(),
			Watts: number(), Air: unit.Quantity(pick("", "40 cfm", "0 L/s", "1e9 cfm")), Fuel: r.IntN(2) == 0,
		}
		p.Spaces = append(p.Spaces, plan.Space{Name: "attic", Area: unit.Quantity(pick("", "0 ft2", "1 m2", "x")), Height: length(), Background: number(),
			Noise: []plan.Playing{{Source: pick("tv", "kitchen", "x"), Level: number()}}})
		p.Measured = []plan.Measured{{Beyond: pick("hall", "nowhere", "bedroom"), After: r.IntN(2) == 0, InA: number(), OutA: number(), InC: number(), OutC: number(),
			In: []unit.Quantity{number(), number()}, Out: []unit.Quantity{number(), number(), number()}}}
		p.Buying = &plan.Buying{Budget: unit.Quantity(pick("", "0 $", "50 $", "1000 $")), Payload: unit.Quantity(pick("", "1000 lb", "60 lb", "0 kg")), Stair: r.IntN(2) == 0,
			DoorWidth: length(), DoorHeight: length(), Corridor: length(), Beyond: length(), People: number(), Costs: []plan.Cost{{Item: "clips", Price: "3 $"}}}
		for i := range p.Surfaces {
			s := &p.Surfaces[i]
			if r.IntN(3) == 0 {
				s.Side = r.IntN(7) - 1
			}
			if r.IntN(4) == 0 {
				s.Width = ""
			}
			s.Flank, s.FlankLoss = pick("", "joists", "odd"), number()
			for range r.IntN(4) {
				k := kinds[r.IntN(len(kinds))]
				s.Openings = append(s.Openings, plan.Opening{
					ID: "q" + string(rune('a'+len(s.Openings))), Kind: pick(k.ID, k.ID, k.ID, "none such"), Seal: pick("", string(k.Seals[len(k.Seals)-1]), "odd"),
					Width: length(), Height: length(), Count: number(), X: length(), Y: length(), Crack: length(), Run: length(), Rating: number(),
				})
			}
			s.Hung = append(s.Hung, plan.Hung{ID: "w", X: length(), Y: length(), Mass: unit.Quantity(pick("12 lb", "", "0 kg", "900 lb"))})
			s.Clips = []plan.Spot{{X: length(), Y: length()}}
			s.Joists = &plan.Joists{Span: length(), Grade: pick("", "spf-2", "odd"), Above: pick("", "attic", "truss", "odd")}
		}
		for i := range p.BuildUps {
			for j := range p.BuildUps[i].Gaps {
				n := &p.BuildUps[i].Gaps[j].Near
				n.First, n.Ends, n.Stagger = length(), length(), r.IntN(2) == 0
			}
		}
		want := Want{Surface: p.Surfaces[r.IntN(len(p.Surfaces))].ID, Room: true, Money: true, Layout: true, List: true, Opening: "o1", Try: r.IntN(3)}
		for method, args := range map[string]any{
			"assess": map[string]any{"plan": p, "want": want},
			"cut":    map[string]any{"plan": p, "from": 0, "to": 2, "best": r.IntN(3) - 1, "other": r.IntN(4) == 0},
		} {
			text, err := json.Marshal(args)
			require.NoError(t, err)
			var reply Reply
			require.NoError(t, json.Unmarshal(Call(method, text, tables), &reply))
			require.Empty(t, reply.Panic, "%s %s", method, text)
			require.True(t, reply.OK || len(reply.Faults) > 0)
			if reply.OK {
				told++
			}
		}
	}
	require.Greater(t, told, rounds, "most are told in spite of it")
}
