package core

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/material"
	"twoleaf/core/plan"
	"twoleaf/core/room"
	"twoleaf/core/transmission"
)

func houseOf(t testing.TB, p plan.Plan, w Want) *HouseReport {
	w.Room = true
	rep, faults := Assess(p, w, NewTables())
	require.Empty(t, faults)
	require.NotNil(t, rep.House)
	return rep.House
}

// The drummer's room: the door is the weak path of its wall, sealing it helps
// the hall, and the change that the core proposes is the one it makes.
func TestDrummersRoom(t *testing.T) {
	for _, region := range []plan.Region{plan.US, plan.CA, plan.UK, plan.EU, plan.AU} {
		p := plan.Demo(region)
		h := houseOf(t, p, Want{Money: true})
		assert.Empty(t, h.Faults, region)
		require.Len(t, h.Faces, 6)
		assert.Equal(t, []string{"hall", "living room", "yard", "street", "bedroom"}, h.Spaces)
		sum := 0.0
		for _, x := range h.Told.Paths {
			sum += x.Share
		}
		assert.InDelta(t, 1, sum, 1e-9)
		a := h.Faces[0]
		assert.Greater(t, a.Rating.V-a.Holed.V, 10.0, "%s: an unsealed door takes more than 10 off a wall on clips", region)
		var seal *ChangeReport
		for i := range h.Money.Rows {
			if h.Money.Rows[i].Code == "seal" {
				seal = &h.Money.Rows[i]
			}
		}
		require.NotNil(t, seal, region)
		require.NotNil(t, seal.Cost)
		assert.Equal(t, []string{"A"}, seal.Faces)
	}
}

// outA is the A-weighted level of all that gets out, with open areas for its absorption.
func outA(told room.Report) float64 {
	var out [9]float64
	for i, l := range told.Level {
		open := 0.0
		for _, p := range told.Paths {
			open += p.Open[i]
		}
		out[i] = l + 10*math.Log10(open)
	}
	return room.DBA(out)
}

func TestChangesAreMade(t *testing.T) {
	p := plan.Demo(plan.US)
	before := houseOf(t, p, Want{Money: true})
	for _, c := range before.Money.Rows {
		args, err := json.Marshal(map[string]any{"plan": p, "changes": []string{c.ID}})
		require.NoError(t, err)
		var reply Reply
		require.NoError(t, json.Unmarshal(Call("change", args, nil), &reply))
		require.True(t, reply.OK, "%s: %v", c.ID, reply.Faults)
		require.Empty(t, plan.Check(*reply.Plan), c.ID)
		after := houseOf(t, *reply.Plan, Want{})
		// What was promised of all that gets out is what comes, to a hundredth of a decibel.
		assert.InDelta(t, c.All, outA(before.Told)-outA(after.Told), 0.01, c.ID)
	}
}

// Where faces of one board let much of an octave through together, another board
// that dips a third of an octave away is offered, fire-rated where theirs is.
func TestFacesThatDipTogether(t *testing.T) {
	offered := func(board string) *ChangeReport {
		p := plan.Demo(plan.US)
		for i := range p.Surfaces {
			p.Surfaces[i].Openings, p.Surfaces[i].Flank = nil, ""
		}
		for i := range p.BuildUps { // every face two of one board
			for j := range p.BuildUps[i].Leaves[0].Layers {
				p.BuildUps[i].Leaves[0].Layers[j].Board = board
			}
		}
		p.Shelf = append(p.Shelf, plan.Shelf{Board: "na_gyp_reg_10", Price: "10 $"})
		h := houseOf(t, p, Want{Money: true})
		require.NotEmpty(t, h.Told.Together, board)
		for i := range h.Money.Rows {
			if h.Money.Rows[i].Code == "apart" {
				return &h.Money.Rows[i]
			}
		}
		return nil
	}
	regular := offered("na_gyp_reg_13")
	require.NotNil(t, regular)
	require.NotNil(t, regular.Cost)
	b, _ := material.ByID(regular.Text["board"])
	part := float64(transmission.Critical(b)) / transmission.Critical(mustBoard(t, "na_gyp_reg_13"))
	assert.Greater(t, math.Abs(math.Log2(part)), aThird)
	// No other fire-rated board of about that mass dips so far away.
	assert.Nil(t, offered("na_gyp_typeX_16"))
}

func mustBoard(t *testing.T, id string) material.Board {
	b, ok := material.ByID(id)
	require.True(t, ok, id)
	return b
}

// What was read before anything was hung is held against the room as it was.
func TestMeasuredBefore(t *testing.T) {
	p := plan.Demo(plan.US)
	now := houseOf(t, p, Want{})
	was := now.Told.Out[0]
	p.Measured = []plan.Measured{{Beyond: "living room", InA: "100", OutA: "70"}, {Beyond: "living room", After: true, InA: "100", OutA: "70"}}
	h := houseOf(t, p, Want{})
	require.Len(t, h.Told.Measured, 2)
	before, after := h.Told.Measured[0], h.Told.Measured[1]
	assert.Less(t, before.Got[0].Predicted, after.Got[0].Predicted-10, "two layers on clips stop more than the bare board that was there")
	assert.InDelta(t, 30, before.Got[0].Measured, 1e-9)
	assert.Equal(t, was.A, h.Told.Out[0].A)
}

// A wall's new frame stands on the floor; one that is there puts nothing new on it.
func TestNewFrameOnTheFloor(t *testing.T) {
	p := plan.First(plan.US)
	rep, faults := Assess(p, Want{Layout: true}, nil)
	require.Empty(t, faults)
	assert.Nil(t, rep.Layout.Line)
	p.BuildUps[0].Gaps[0].There = false
	rep, faults = Assess(p, Want{Layout: true}, nil)
	require.Empty(t, faults)
	// A foot of wall 8 ft high: two layers of 70 lb on 32 ft² are 35.0 lb; wool of 42 kg/m³ 3½ in deep 6.1;
	// studs of 1.52 kg/m every 16 in 6.1; three plates 3.1.
	perFoot := rep.Layout.Line.V * 0.3048 / 0.45359237
	assert.InDelta(t, 35.0+6.1+6.1+3.1, perFoot, 0.3)
}

func BenchmarkAssessRoom(b *testing.B) {
	p, t := plan.Demo(plan.US), NewTables()
	for b.Loop() {
		if _, faults := Assess(p, Want{Room: true}, t); len(faults) > 0 {
			b.Fatal(faults)
		}
	}
}

func BenchmarkNextMoney(b *testing.B) {
	p, t := plan.Demo(plan.US), NewTables()
	for b.Loop() {
		if _, faults := Assess(p, Want{Room: true, Money: true}, t); len(faults) > 0 {
			b.Fatal(faults)
		}
	}
}

func BenchmarkList(b *testing.B) {
	p, t := plan.Demo(plan.US), NewTables()
	for b.Loop() {
		if _, faults := Assess(p, Want{List: true}, t); len(faults) > 0 {
			b.Fatal(faults)
		}
	}
}
