package core

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/caution"
	"twoleaf/core/plan"
	"twoleaf/core/unit"
)

// yard is the plan of somebody before a pallet: two layers of 15.9 mm type X
// were planned, the tags are common practice of one yard: 72 lb, 39 lb, 66 lb.
func yard(tags bool) plan.Plan {
	p := plan.First(plan.US)
	p.BuildUps[0].Gaps[0].Near.Rating = "44 lb"
	p.BuildUps[0].Gaps[0].Near.Example = false
	p.BuildUps[0].Leaves[0].Layers = []plan.Layer{
		{ID: "y1", Board: "na_gyp_light_13"}, {ID: "y2", Board: "na_ply_soft_18"}, {ID: "y3", Board: "na_gyp_light_13"},
	}
	if tags {
		p.Shelf = []plan.Shelf{
			{Board: "na_gyp_typeX_16", Weight: "72 lb"},
			{Board: "na_gyp_light_13", Weight: "39 lb"},
			{Board: "na_ply_soft_18", Weight: "66 lb"},
		}
	}
	return p
}

// shared is one worker's cache, kept over the tests as over a session.
var shared = NewTables()

func report(t *testing.T, p plan.Plan, want Want) *Report {
	t.Helper()
	r, faults := Assess(p, want, shared)
	for _, f := range faults {
		t.Error(f)
	}
	require.NotNil(t, r)
	return r
}

func has(list []caution.Caution, code caution.Code) bool {
	return slices.ContainsFunc(list, func(c caution.Caution) bool { return c.Code == code })
}

// The tags are common practice: 2 × 72 = 144 = 39 + 66 + 39 lb on 32 ft², 4.50 psf.
func TestYardTagsAreEqualAndNotOver(t *testing.T) {
	r := report(t, yard(true), Want{Rows: true})
	psf := float64(unit.PoundPerSquareFoot)
	assert.InDelta(t, 4.50, r.Yours.Mass.V/psf, 1e-9)
	assert.InDelta(t, 4.50, r.Reference.Mass.V/psf, 1e-9)
	assert.True(t, r.Yours.Mass.Same)
	assert.False(t, has(r.Cautions, caution.OverMass))
	assert.Equal(t, "mass.same", r.Verdicts["layers"].Parts[0].Code)
	assert.InDelta(t, 144*float64(unit.Pound), r.Yours.Stack.V, 1e-9)
	assert.Equal(t, "yours", r.Rows[1].Is)
	assert.False(t, r.Rows[1].OverMass)

	// An inner clip of a wall without a size: (4.50 + 0.239/2) psf × 8 ft² × 1.10 over 44 lb.
	p := yard(true)
	p.Surfaces[0].Width, p.Surfaces[0].Height = "", ""
	inner := report(t, p, Want{}).Yours.Clip.V
	want := (4.50*8 + 0.239*4) * 1.10 / 44
	assert.InDelta(t, want, inner, 0.005)
	assert.Equal(t, "close", r.Yours.Load)
	// The worst clip of the wall at hand carries no less, and never more than the middle of two spans.
	assert.GreaterOrEqual(t, r.Yours.Clip.V, inner)
	assert.LessOrEqual(t, r.Yours.Clip.V, inner*1.25/1.10)
}

// The same weights told in kilograms, per area or by the pallet are still equal.
func TestYardTagsInAnyUnit(t *testing.T) {
	for _, shelf := range [][]plan.Shelf{
		{{Board: "na_gyp_typeX_16", Weight: "2.25 psf", Per: plan.PerArea}, {Board: "na_gyp_light_13", Weight: "39 lb"}, {Board: "na_ply_soft_18", Weight: "66 lb"}},
		{{Board: "na_gyp_typeX_16", Weight: "3600 lb", Per: plan.PerPallet, Of: "50"}, {Board: "na_gyp_light_13", Weight: "17.69 kg"}, {Board: "na_ply_soft_18", Weight: "29.937 kg"}},
		{{Board: "na_gyp_typeX_16", Weight: "252 lb", Per: plan.OnScale, Less: "180 lb"}, {Board: "na_gyp_light_13", Weight: "39 lb"}, {Board: "na_ply_soft_18", Weight: "66 lb"}},
	} {
		p := yard(true)
		p.Shelf = shelf
		r := report(t, p, Want{})
		assert.False(t, has(r.Cautions, caution.OverMass), "%+v", shelf)
		assert.True(t, r.Yours.Mass.Same, "%+v: %v against %v", shelf, r.Yours.Mass.V, r.Reference.Mass.V)
	}
}

// With the typical masses of the table the same sandwich is over, and says so.
func TestYardTypicalMassesAreOver(t *testing.T) {
	r := report(t, yard(false), Want{Rows: true})
	assert.True(t, unit.Over(r.Yours.Mass.V, r.Reference.Mass.V))
	assert.True(t, has(r.Cautions, caution.OverMass))
	assert.Equal(t, "mass.more", r.Verdicts["layers"].Parts[0].Code)
	assert.True(t, r.Rows[1].OverMass)
}

// Twelve sheets by the area rule for 13 ft 4 in × 8 ft; the longest screw goes
// through 12.7 + 18.3 + 12.7 mm and 10 mm past the channel: 2 1/4 in.
func TestYardVerdictSaysSheetsAndScrew(t *testing.T) {
	r := report(t, yard(true), Want{})
	parts := map[string]map[string]float64{}
	for _, p := range r.Verdicts["layers"].Parts {
		parts[p.Code] = p.Args
	}
	assert.Equal(t, 12.0, parts["sheets"]["n"])
	assert.InDelta(t, 2.25*float64(unit.Inch), parts["screw"]["length"], 1e-9)
	assert.Equal(t, "yes", r.Verdicts["layers"].Answer)
}

func TestYardSaysWhatItDoesToFire(t *testing.T) {
	r := report(t, yard(true), Want{Rows: true})
	assert.True(t, has(r.Cautions, caution.FireBoardOut))
	assert.True(t, has(r.Cautions, caution.WoodBetween))
	assert.True(t, has(r.Rows[1].Cautions, caution.FireBoardOut))
	face := yard(true)
	l := face.BuildUps[0].Leaves[0].Layers
	l[0], l[1] = l[1], l[0]
	assert.True(t, has(report(t, face, Want{}).Cautions, caution.WoodAtFace))
}

func TestSideBySideStartsWithEight(t *testing.T) {
	r := report(t, plan.First(plan.US), Want{Rows: true})
	require.True(t, r.IsRef)
	assert.Len(t, r.Rows, 9) // the reference, which is yours, and eight
	for _, row := range r.Rows[1:] {
		assert.NotNil(t, row.Figures.Mass.Diff)
		assert.NotNil(t, row.Figures.Bass.Diff)
	}
	closest := r.Picks.Closest
	require.NotEmpty(t, closest)
	for _, row := range r.Rows[1:] {
		if row.ID == closest {
			assert.False(t, row.OverMass || row.OverClip)
			for _, other := range r.Rows[1:] {
				if !other.OverMass && !other.OverClip {
					assert.LessOrEqual(t, other.Figures.Mass.V, row.Figures.Mass.V)
				}
			}
		}
	}
}

func TestOverTheRatingIsNo(t *testing.T) {
	p := yard(true)
	p.BuildUps[0].Gaps[0].Near.Rating = "36 lb"
	r := report(t, p, Want{})
	v := r.Verdicts["layers"]
	assert.Equal(t, "no", v.Answer)
	require.NotNil(t, v.Mend)
	assert.Less(t, v.Mend.Args["rows"], 24*float64(unit.Inch))
	assert.LessOrEqual(t, v.Mend.Args["share"], 1.001)
	p.BuildUps[0].Gaps[0].Near.Rating = ""
	r = report(t, p, Want{})
	assert.Equal(t, "notYet", r.Verdicts["layers"].Answer)
	assert.Nil(t, r.Yours.Clip)
	assert.NotNil(t, r.Yours.ClipLoad)
}

func TestEveryRegionHasAWallAndARoom(t *testing.T) {
	for _, region := range []plan.Region{plan.US, plan.CA, plan.UK, plan.EU, plan.AU} {
		for _, p := range []plan.Plan{plan.First(region), plan.Demo(region)} {
			for _, s := range p.Surfaces {
				r := report(t, p, Want{Surface: s.ID, Sound: true, Rows: true})
				_, err := json.Marshal(r)
				require.NoError(t, err, "%s %s", region, s.Name)
				for i, v := range r.Sound.TL {
					assert.False(t, math.IsNaN(v) || v <= 0 || v > 120, "%s %s band %d: %v", region, s.Name, i, v)
				}
			}
		}
	}
}

func TestEveryFigureCanBeWorkedOut(t *testing.T) {
	p := yard(true)
	for _, trace := range []string{"mass", "cost", "clip", "bass", "rating", "built", "thickness"} {
		r := report(t, p, Want{Work: trace})
		require.NotNil(t, r.Working, trace)
		require.NotEmpty(t, r.Working.Rows, trace)
	}
	w := report(t, p, Want{Work: "clip"}).Working
	last := w.Rows[len(w.Rows)-1]
	assert.Equal(t, "share", last.Code)
	assert.InDelta(t, last.Terms[0].V/last.Terms[1].V, last.Result.V, 1e-12)
	m := report(t, p, Want{Work: "mass"}).Working
	assert.Equal(t, "(%0 + %1 + %2) ÷ %3", m.Rows[0].Form)
	assert.Equal(t, "39 lb", m.Rows[0].Terms[0].As)
	assert.Nil(t, report(t, p, Want{Work: "nonsense"}).Working)
}

// A panic inside is answered in words and the next call works.
func TestCallSurvivesAPanic(t *testing.T) {
	var reply Reply
	require.NoError(t, json.Unmarshal(Call("assess", []byte(`{"plan":{`), nil), &reply))
	assert.False(t, reply.OK)
	require.NotEmpty(t, reply.Faults)
	args, err := json.Marshal(map[string]any{"plan": plan.First(plan.US), "want": Want{}})
	require.NoError(t, err)
	reply = Reply{}
	require.NoError(t, json.Unmarshal(Call("assess", args, nil), &reply))
	assert.True(t, reply.OK)
	assert.NotNil(t, reply.Report)
}

func TestWholeNonsenseIsNamed(t *testing.T) {
	p := yard(true)
	p.Shelf[0].Weight = "0 lb"
	r, faults := Assess(p, Want{}, nil)
	assert.Nil(t, r)
	require.NotEmpty(t, faults)
	assert.Equal(t, "weight", faults[0].Field)
	assert.NotEmpty(t, faults[0].Low)
}
