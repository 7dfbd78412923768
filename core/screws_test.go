package core

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/caution"
	"twoleaf/core/plan"
	"twoleaf/core/unit"
)

// Screws closer than 12 in cost what the code table's notes say (NBC2020), are said
// where they count, and cost nothing where they do not.
func TestCloseScrewsAreSaid(t *testing.T) {
	want := Want{Sound: true, Nearest: true, Ladder: true, Work: "rating"}
	p := plan.First(plan.US)
	usual := report(t, p, want)
	side := usual.Gaps[0].Near.Screws
	require.NotNil(t, side)
	assert.InDelta(t, 12, side.V/float64(unit.Inch), 1e-9)
	assert.Equal(t, Typical, side.Origin)

	p.BuildUps[0].Gaps[0].Near.Screws = "6 in"
	close := report(t, p, want)
	assert.InDelta(t, -2, close.Yours.Rating.V-usual.Yours.Rating.V, 1e-9)
	assert.InDelta(t, -2, close.Reference.Rating.V-usual.Reference.Rating.V, 1e-9, "the same wall but for its boards")
	assert.Equal(t, usual.Nearest.STC, close.Nearest.STC, "what was measured stays")
	assert.Equal(t, usual.Nearest.Ours, close.Nearest.Ours)
	assert.Equal(t, "6 in", close.Gaps[0].Near.Screws.As)
	assert.Equal(t, Typed, close.Gaps[0].Near.Screws.Origin)

	i := slices.IndexFunc(close.Cautions, func(c caution.Caution) bool { return c.Code == caution.CloseScrews })
	require.GreaterOrEqual(t, i, 0)
	assert.InDelta(t, 2, close.Cautions[i].Args["gain"], 1e-9)
	assert.InDelta(t, 6, close.Cautions[i].Args["screws"]/float64(unit.Inch), 1e-9)
	said := slices.IndexFunc(close.Sound.Sentences, func(s Sentence) bool { return s.Code == "closeScrews" })
	require.GreaterOrEqual(t, said, 0)
	assert.InDelta(t, 2, close.Sound.Sentences[said].Args["rating"], 1e-9)
	row := slices.IndexFunc(close.Working.Rows, func(r WorkRow) bool { return r.Code == "screws" })
	require.GreaterOrEqual(t, row, 0)
	assert.InDelta(t, -2, close.Working.Rows[row].Result.V, 1e-9)
	assert.True(t, slices.ContainsFunc(close.Working.Sources, func(s WorkSource) bool { return s.Code == "screws" && s.Source == "NBC2020" }))
	for _, r := range usual.Working.Rows {
		assert.NotEqual(t, "screws", r.Code)
	}

	p.BuildUps[0].Gaps[0].Near.Screws = "12 in"
	same := report(t, p, want)
	assert.Equal(t, usual.Yours, same.Yours)
	assert.Equal(t, usual.Sound, same.Sound)

	p.BuildUps[0].Gaps[0].Near.Screws = "6 in"
	p.Surfaces[0].Kind = plan.Ceiling
	over := report(t, p, want)
	assert.Nil(t, over.Gaps[0].Near.Screws, "of ceilings nothing is printed")
	assert.False(t, slices.ContainsFunc(over.Cautions, func(c caution.Caution) bool { return c.Code == caution.CloseScrews }))
}

// The usual spacing is in the plan's units, and a leaf that is not tied has no screws.
func TestUsualScrews(t *testing.T) {
	for _, region := range []plan.Region{plan.UK, plan.AU, plan.EU} {
		p := plan.First(region)
		p.BuildUps[0].Gaps[0].Far.Fixing = "untied"
		g := report(t, p, Want{}).Gaps[0]
		require.NotNil(t, g.Near.Screws)
		assert.InDelta(t, 0.3, g.Near.Screws.V, 1e-12)
		assert.Nil(t, g.Far.Screws)
	}
}

// Closer screws are on the list: the layer hung last, by what was typed.
func TestCloseScrewsAreBought(t *testing.T) {
	count := func(apart unit.Quantity) (n float64, rules map[string]float64) {
		p := plan.First(plan.US)
		p.BuildUps[0].Gaps[0].Near.Screws = apart
		rules = map[string]float64{}
		for _, i := range report(t, p, Want{List: true}).List.Items {
			if i.Item.Code == "screws" {
				n += i.Item.Amount
				for rule, of := range i.Item.Args {
					rules[rule] += of
				}
			}
		}
		return n, rules
	}
	usual, rules := count("")
	require.Positive(t, usual)
	assert.Zero(t, rules["screws-typed"])
	same, _ := count("16 in")
	assert.Equal(t, usual, same, "no closer than the rule")
	close, rules := count("6 in")
	assert.Greater(t, close, usual*1.3)
	assert.Positive(t, rules["screws-typed"])
}
