package core

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/material"
	"twoleaf/core/plan"
	"twoleaf/core/takeoff"
	"twoleaf/core/unit"
)

// called is what the page is told of a plan: its list and its changes.
func called(t *testing.T, p plan.Plan) (list map[string]ItemReport, changes map[string]ChangeReport) {
	t.Helper()
	args, err := json.Marshal(map[string]any{"plan": p, "want": Want{Room: true, Money: true, List: true}})
	require.NoError(t, err)
	var reply Reply
	require.NoError(t, json.Unmarshal(Call("assess", args, shared), &reply))
	require.True(t, reply.OK, "%v %s", reply.Faults, reply.Panic)
	list, changes = map[string]ItemReport{}, map[string]ChangeReport{}
	for _, i := range reply.Report.List.Items {
		list[i.Key] = i
	}
	for _, c := range reply.Report.House.Money.Rows {
		changes[c.ID] = c
	}
	return list, changes
}

// needy is the example room with a change for every item that changes need: a
// crack in its first wall, and its second build-up screwed, with nothing in its gap.
func needy(r plan.Region) plan.Plan {
	p := plan.Demo(r)
	p.Surfaces[0].Openings = append(p.Surfaces[0].Openings, plan.Opening{ID: "c", Kind: "crackEdge", Width: "3 m"})
	g := &p.BuildUps[1].Gaps[0]
	g.Near, g.Fill = plan.Held{Fixing: "screwed"}, ""
	return p
}

// with is a plan with one price typed in Buy.
func with(p plan.Plan, item string, price float64) plan.Plan {
	p.Buying = &plan.Buying{Costs: []plan.Cost{{Item: item, Price: unit.Of(price, p.Region.Currency())}}}
	return p
}

// A price typed under the list's own key is the list's, and changes the cost of
// the changes that need the item by what they need of it, and of no other.
func TestTypedPriceReachesTheChanges(t *testing.T) {
	for _, region := range []plan.Region{plan.US, plan.EU} { // feet and metres; the keys of all are below
		p := needy(region)
		room, faults := plan.ResolveRoom(p)
		require.Empty(t, faults)
		area := map[string]float64{}
		for _, f := range room.Faces {
			area[f.Surface.BuildUp] += float64(f.Area)
		}
		b2 := p.BuildUps[1].ID
		heavy := material.UsualHeavy(string(region))
		clip, _ := material.FixingByID("clip")
		rows, along := clip.UsualGrid(string(region))
		if along == 0 {
			r, _ := plan.Resolve(p, p.Surfaces[1].ID)
			along = r.Assembly.Gaps[0].Spacing
		}
		piece := map[bool]float64{true: 12 * 0.3048, false: 3.6}[region == plan.US]
		sheets := 1.10 / float64(heavy.Area()) // for 1 m², with what is lost in cutting
		// By the item's key: of the changes that need it, how much.
		needs := map[string]map[string]float64{
			"sealant":            {"caulk " + p.Surfaces[0].ID + " c": 1},
			"pads":               {"pad " + p.Surfaces[0].ID + " " + p.Surfaces[0].Openings[1].ID: 1, "pad " + p.Surfaces[1].ID + " " + p.Surfaces[1].Openings[0].ID: 2},
			"clips":              {"clips " + b2: area[b2] / float64(rows*along)},
			"channel":            {"clips " + b2: area[b2] / (float64(rows) * piece)},
			"batts":              {"fill " + b2: area[b2] / (60 * 0.3048 * 0.3048)},
			"sheets/" + heavy.ID: {},
		}
		for _, b := range p.BuildUps[:4] { // the slab takes none
			needs["sheets/"+heavy.ID]["board "+b.ID] = area[b.ID] * sheets
		}
		list, before := called(t, p)
		met := map[string]bool{}
		for key, item := range list {
			name := key
			if !strings.HasPrefix(key, "sheets/") {
				name, _, _ = strings.Cut(key, "/")
			}
			met[name] = true
			price := float64(item.Item.Price) + 3
			now, after := called(t, with(p, key, price))
			assert.InDelta(t, price, float64(now[key].Item.Price), 1e-9, "%s %s", region, key)
			assert.Equal(t, Typed, now[key].Origin)
			for id, c := range after {
				if before[id].Cost == nil {
					assert.Nil(t, c.Cost, id)
					continue
				}
				assert.InDelta(t, 3*needs[name][id], c.Cost.V-before[id].Cost.V, 1e-6, "%s: %s in %s", region, key, id)
			}
			for id := range needs[name] {
				assert.NotNil(t, after[id].Cost, "%s: %s", region, id)
			}
		}
		for name := range needs {
			assert.True(t, met[name], "%s: %s is on the list", region, name)
		}
	}
}

// Without invented prices a change says that a price is missing, until the one
// that it needs is typed under the list's key; the row that changes once asked
// for does as well, and then the list has it too.
func TestOldKeysOfPrices(t *testing.T) {
	p := needy(plan.US)
	p.Prices = ""
	list, none := called(t, p)
	fill := usualFill(plan.US)
	for _, c := range []struct{ key, row, change string }{
		{"sealant/95", "sealant", "caulk " + p.Surfaces[0].ID + " c"},
		{"pads", "putty_pad", "pad " + p.Surfaces[1].ID + " " + p.Surfaces[1].Openings[0].ID},
		{"batts", fill, "fill " + p.BuildUps[1].ID},
		{"seal_door", "seal_door", "seal " + p.Surfaces[0].ID + " " + p.Surfaces[0].Openings[0].ID},
	} {
		pack := 1.0
		if c.key == "batts" {
			pack = 60 * 0.3048 * 0.3048 // the row's price is of 1 m²
		}
		require.Contains(t, none, c.change)
		assert.Nil(t, none[c.change].Cost, c.change)
		listed, byKey := called(t, with(p, c.key, 10*pack))
		old, byRow := called(t, with(p, c.row, 10))
		require.NotNil(t, byKey[c.change].Cost, c.key)
		require.NotNil(t, byRow[c.change].Cost, c.row)
		assert.Positive(t, byRow[c.change].Cost.V)
		assert.InDelta(t, byRow[c.change].Cost.V, byKey[c.change].Cost.V, 1e-4, c.change)
		if _, has := list[c.key]; has {
			assert.InDelta(t, float64(listed[c.key].Item.Price), float64(old[c.key].Item.Price), 1e-4, c.key)
			assert.Positive(t, old[c.key].Item.Price)
			assert.Equal(t, Typed, old[c.key].Origin)
		}
	}
	// Where both are typed the list's own key is the later word.
	both := with(p, "sealant", 10)
	both.Buying.Costs = append(both.Buying.Costs, plan.Cost{Item: "sealant/95", Price: "12 $"})
	_, after := called(t, both)
	assert.InDelta(t, 12, after["caulk "+p.Surfaces[0].ID+" c"].Cost.V, 1e-9)
}

// Every item that is neither board nor fill has the key that the list writes,
// whatever the region: what changes ask for by its row is what is typed there.
func TestOnePriceOfEveryItem(t *testing.T) {
	for _, region := range []plan.Region{plan.US, plan.CA, plan.UK, plan.EU, plan.AU} {
		list, _ := called(t, needy(region))
		for key, item := range list {
			row := rowOf(item.Item.Code)
			asked := []takeoff.Code{takeoff.ItemSealant, takeoff.ItemClips, takeoff.ItemChannel, takeoff.ItemPads}
			if !slices.Contains(asked, item.Item.Code) {
				continue // no change asks for it by a row
			}
			got, ok := prices{region: string(region), typed: map[string]unit.Money{key: 7}}.need(row)
			assert.True(t, ok, "%s %s", region, key)
			assert.Equal(t, 7.0, got, key)
		}
	}
	got, ok := prices{region: "US", typed: map[string]unit.Money{"door_solid": 7}}.need("door_solid")
	assert.True(t, ok && got == 7, "what is not on the list has its row for a key")
	_, ok = prices{region: "US"}.need("door_solid")
	assert.False(t, ok)
}
