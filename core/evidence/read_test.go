package evidence

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// say writes a build-up in short, mm and kg/m².
func say(b assembly.BuildUp) string {
	var s strings.Builder
	for i, l := range b.Leaves {
		if i > 0 {
			g := b.Gaps[i-1]
			fmt.Fprintf(&s, " | %s %.0f", g.Frame.Kind, float64(g.Depth/unit.Millimetre))
			if g.Spacing > 0 {
				fmt.Fprintf(&s, " @%.0f", float64(g.Spacing/unit.Millimetre))
			}
			if g.FillDepth > 0 {
				fmt.Fprintf(&s, " fill %.0f", float64(g.FillDepth/unit.Millimetre))
			}
			for _, near := range []bool{true, false} {
				if h := g.Held(near); h.Grid.Rows > 0 {
					side := map[bool]string{true: "near", false: "far"}[near]
					fmt.Fprintf(&s, " %s %s %.0fx%.0f", side, h.Fixing.Kind, float64(h.Grid.Rows/unit.Millimetre), float64(h.Grid.Along/unit.Millimetre))
				}
			}
			s.WriteString(" | ")
		}
		for j, y := range l.Layers {
			if j > 0 {
				s.WriteString(map[assembly.Join]string{assembly.Loose: "+", assembly.Film: "~", assembly.Glued: "="}[l.Layers[j-1].Join])
			}
			fmt.Fprintf(&s, "%s %.3g/%.3g", y.Board.Kind, float64(y.Board.Thickness/unit.Millimetre), float64(y.Board.Mass))
		}
	}
	return s.String()
}

// Two spacings give two build-ups.
func ExampleReadText() {
	built, err := ReadText(Text{
		Leaf1: "gypsum 15.9 typeX x2", Framing: "wood 38x89 @400 or 600 single +RC@600 on leaf1",
		Cavity: "102", Fill: "absorptive fibre 89", Leaf2: "gypsum 12.7 regular x1",
	})
	for _, b := range built.BuildUps {
		fmt.Println(say(b))
	}
	fmt.Println(err)
	// Output:
	// gypsum 15.9/11.2+gypsum 15.9/11.2 | wood 102 @400 fill 89 near channel 600x400 | gypsum 12.7/7.8
	// gypsum 15.9/11.2+gypsum 15.9/11.2 | wood 102 @600 fill 89 near channel 600x600 | gypsum 12.7/7.8
	// <nil>
}

// Constructions in the words of the tables, those that the evidence has and others.
func TestReadText(t *testing.T) {
	for _, c := range []struct {
		text Text
		want []string
	}{
		{
			Text{Leaf1: "gypsum 12.7 typeX x1", Framing: "wood 38x140 @600 single", Cavity: "140", Fill: "absorptive fibre 140", Leaf2: "osb 11.1 x1 + gypsum 15.9 typeX x3"},
			[]string{"gypsum 12.7/9.3 | wood 140 @600 fill 140 | osb 11.1/6.88+gypsum 15.9/11.2+gypsum 15.9/11.2+gypsum 15.9/11.2"},
		},
		{
			Text{Leaf1: "gypsum 15.9 typeX x2 with film", Framing: "wood 38x89 @400 staggered plate140", Cavity: "140", Fill: "absorptive fibre 89 one side or 65 each side", Leaf2: "plywood 15.5 x1 + mdf 18 x1"},
			[]string{
				"gypsum 15.9/11.2~gypsum 15.9/11.2 | staggered 140 @400 fill 89 | plywood 15.5/8.53+mdf 18/13.5",
				"gypsum 15.9/11.2~gypsum 15.9/11.2 | staggered 140 @400 fill 130 | plywood 15.5/8.53+mdf 18/13.5",
			},
		},
		{
			Text{Leaf1: "gypsum 15.9 typeX x1", Framing: "wood 38x89 @400 double gap25", Cavity: "203", Fill: "absorptive fibre 89 each side", Leaf2: "gypsum 15.9 typeX x1"},
			[]string{"gypsum 15.9/11.2 | double 203 @400 fill 178 | gypsum 15.9/11.2"},
		},
		{
			Text{Leaf1: "gypsum 15.9 typeX x2", Framing: "wood 38x89 @400 single +clips@600x1200 on leaf1", Fill: "mineral wool 89", Leaf2: "gypsum 15.9 typeX x1"},
			[]string{"gypsum 15.9/11.2+gypsum 15.9/11.2 | wood 130 @400 fill 89 near clip 600x1200 | gypsum 15.9/11.2"},
		},
		{
			Text{Leaf1: "gypsum 15.9 typeX x1", Framing: "steel 92 ga20 @600 single", Fill: "none", Leaf2: "gypsum 15.9 typeX x1"},
			[]string{"gypsum 15.9/11.2 | steel 92 @600 | gypsum 15.9/11.2"},
		},
		{
			Text{Leaf1: "gypsum 12.7 typeX x2", Framing: "steel 152 loadbearing t0.84-1.52 @400 or 600 single +RC@400 on leaf1", Cavity: "165", Fill: "absorptive fibre 150", Leaf2: "gypsum 12.7 typeX x2"},
			[]string{
				"gypsum 12.7/9.3+gypsum 12.7/9.3 | steel 165 @400 fill 150 near channel 400x400 | gypsum 12.7/9.3+gypsum 12.7/9.3",
				"gypsum 12.7/9.3+gypsum 12.7/9.3 | steel 165 @600 fill 150 near channel 400x600 | gypsum 12.7/9.3+gypsum 12.7/9.3",
			},
		},
		{
			Text{Leaf1: "plywood/OSB 15.5 (or tongue-and-groove lumber 17) x1", Framing: "wood joist 38x286 @400 +RC@600 on ceiling", Cavity: "299", Fill: "absorptive fibre 150 (90 if sprayed cellulose)", Leaf2: "gypsum 15.9 typeX x2", Kind: "floor wood joist RC"},
			[]string{"plywood 15.5/9.07 | joist 299 @400 fill 150 far channel 600x400 | gypsum 15.9/11.2+gypsum 15.9/11.2"},
		},
		{
			Text{Leaf1: "concrete topping 38 (>=70 kg/m2) + plywood/OSB 15.5 x1", Framing: "wood joist 38x235 or I-joist 241 @<=600 direct", Cavity: "235", Fill: "none", Leaf2: "gypsum 12.7 regular x1", Kind: "floor wood joist direct"},
			[]string{
				"topping 38/70+plywood 15.5/9.07 | joist 235 @400 | gypsum 12.7/7.8",
				"topping 38/70+plywood 15.5/9.07 | joist 235 @600 | gypsum 12.7/7.8",
			},
		},
		{
			Text{Leaf1: "plywood/OSB 15.5 x1", Framing: "wood joist 38x235 @400 direct inner layer, then +RC@400 through it", Cavity: "235 + 13", Fill: "absorptive fibre 150 (joist space only)", Leaf2: "gypsum 12.7 typeX x1 on joists // 13 RC gap // gypsum 15.9 typeX x1", Kind: "floor wood joist triple-leaf"},
			[]string{"plywood 15.5/9.07 | joist 235 @400 fill 150 | gypsum 12.7/9.3 | bare 13 far channel 400x400 | gypsum 15.9/11.2"},
		},
		{
			Text{Leaf1: "gypsum 12.7 regular x1", Framing: "block 140; wood strapping 38x38 @600 on leaf1, leaf2 direct", Cavity: "38", Fill: "with or without absorptive fibre", Leaf2: "gypsum 12.7 regular x1"},
			[]string{"gypsum 12.7/7.8 | strapping 38 @600 | block 140/189+gypsum 12.7/7.8"},
		},
		{
			Text{Leaf1: "gypsum 15.9 typeX x1", Framing: "block 190; steel stud 65 @600 both sides", Cavity: "65", Fill: "absorptive fibre filling both spaces", Leaf2: "gypsum 15.9 typeX x1"},
			[]string{"gypsum 15.9/11.2 | standing 65 @600 fill 65 | block 190/256 | standing 65 @600 fill 65 | gypsum 15.9/11.2"},
		},
		{
			Text{Leaf1: "glass 6 x1 + air 12 + glass 4 x1", Framing: "window", Cavity: "100", Fill: "none (air)", Leaf2: "laminated-glass 6.4 x1"},
			[]string{"glass 6/15 | none 12 | glass 4/10 | none 100 | laminated 6.4/15.7"},
		},
		{
			Text{Leaf1: "gypsum 12.7 x1", Framing: "none", Leaf2: "none", Mass: "9.1"},
			[]string{"gypsum 12.7/9.1"},
		},
		{
			Text{Leaf1: "steel 1.6 damped + glass fibre 100", Framing: "none", Leaf2: "none"},
			[]string{"steel 1.6/12.5"},
		},
		{
			Text{Leaf1: "gypsum 15.9 typeX x1", Framing: "block 190; wood strapping 38x38 @600 + RC both sides", Cavity: "51", Fill: "absorptive fibre filling both spaces", Leaf2: "gypsum 15.9 typeX x1"},
			[]string{"gypsum 15.9/11.2 | z-bar 51 @600 fill 51 | block 190/256 | z-bar 51 @600 fill 51 | gypsum 15.9/11.2"},
		},
		{
			Text{Leaf1: "gypsum 12.7 regular x1", Framing: "block 190; direct both sides", Leaf2: "gypsum 12.7 regular x1"},
			[]string{"gypsum 12.7/7.8+block 190/256+gypsum 12.7/7.8"},
		},
		{
			Text{Leaf1: "gypsum 15.9 typeX x2", Framing: "steel 64 ga25 @600 double gap25 +RC@600 on leaf2", Fill: "absorptive fibre 65 each side", Leaf2: "gypsum 15.9 typeX x2"},
			[]string{"gypsum 15.9/11.2+gypsum 15.9/11.2 | double 166 @600 fill 130 far channel 600x600 | gypsum 15.9/11.2+gypsum 15.9/11.2"},
		},
		{
			Text{Leaf1: "concrete 150 x1 + wood floor 20", Framing: "none", Leaf2: "none", Kind: "floor concrete"},
			[]string{"concrete 150/345+plywood 20/9.6"},
		},
		{
			Text{Leaf1: "plywood 18 x1 glued + gypsum 12.7 regular x1", Framing: "none", Leaf2: "none"},
			[]string{"plywood 18/9.9+gypsum 12.7/7.8"},
		},
	} {
		built, err := ReadText(c.text)
		require.NoError(t, err, c.text.Leaf1+" "+c.text.Framing)
		var got []string
		for _, b := range built.BuildUps {
			got = append(got, say(b))
		}
		assert.Equal(t, c.want, got)
	}
}

func TestUnreadSaysWhy(t *testing.T) {
	for text, want := range map[Text]string{
		{Leaf1: "unobtainium 12 x1", Framing: "none"}:                                                             "unobtainium",
		{Leaf1: "gypsum 12.7 x1", Framing: "bamboo @400", Leaf2: "gypsum 12.7 x1"}:                                "bamboo",
		{Leaf1: "gypsum 12.7 x1", Framing: "window", Leaf2: "gypsum 12.7 x1"}:                                     "depth",
		{Leaf1: "door", Framing: "door"}:                                                                          "door",
		{Framing: "none"}:                                                                                         "board",
		{Leaf1: "gypsum 9000 x1", Framing: "none"}:                                                                "thickness",
		{Leaf1: "gypsum 12.7 x1", Framing: "steel 92 ga99 @400 single", Cavity: "92", Leaf2: "gypsum 12.7 x1"}:    "gauge 99",
		{Leaf1: "gypsum 12.7 x1", Framing: "block 190; velcro both sides", Cavity: "20", Leaf2: "gypsum 12.7 x1"}: "velcro",
		{Leaf1: "gypsum 12.7 x13", Framing: "none"}:                                                               "layers",
	} {
		_, err := ReadText(text)
		if assert.Error(t, err, text) {
			assert.Contains(t, err.Error(), want)
		}
	}
}

// Of the walls, linings, floors and ceilings of tiers A and B at least 95 % are read.
func TestEvidenceIsRead(t *testing.T) {
	all, read := 0, 0
	for _, r := range Ratings() {
		assert.NotEmpty(t, r.Kind, r.ID)
		assert.Contains(t, []string{"A", "B", "C"}, r.Tier, r.ID)
		assert.Positive(t, r.STC, r.ID)
		assert.NotEmpty(t, r.Series, r.ID)
		if r.Tier == "C" {
			assert.True(t, r.Read() != (r.Unread != ""), r.ID)
			continue
		}
		all++
		if r.Read() {
			read++
			assert.Empty(t, r.Unread, r.ID)
		} else {
			assert.NotEmpty(t, r.Unread, r.ID)
		}
	}
	assert.Equal(t, 302, all)
	assert.GreaterOrEqual(t, float64(read), 0.95*float64(all))
	assert.Len(t, ThirdSpectra(), 12)
	assert.Len(t, OctaveSpectra(), 58)
}

// Texts that allow two spacings give build-ups at both.
func TestTwoSpacings(t *testing.T) {
	for _, r := range Ratings() {
		if !r.Read() || len(r.BuildUps[0].Gaps) == 0 || strings.Contains(r.Text.Framing, "furring") {
			continue
		}
		if strings.Contains(r.Text.Framing, "@400 or 600") || strings.Contains(r.Text.Framing, "@<=600") {
			assert.GreaterOrEqual(t, len(r.BuildUps), 2, r.ID)
			first, last := r.BuildUps[0].Gaps[0], r.BuildUps[len(r.BuildUps)-1].Gaps[0]
			if strings.Contains(strings.Split(r.Text.Framing, "+")[0], "600") && first.Spacing > 0 && !strings.HasPrefix(r.Text.Framing, "block") &&
				(strings.Contains(strings.Split(r.Text.Framing, "+")[0], "or 600") || strings.Contains(r.Text.Framing, "<=")) {
				assert.InDelta(t, 0.4, float64(first.Spacing), 1e-9, r.ID)
				assert.InDelta(t, 0.6, float64(last.Spacing), 1e-9, r.ID)
			}
		}
	}
}

func TestSeries(t *testing.T) {
	assert.Equal(t, "NBC-W1", series("NBC-W1a", "NBC2020", "Table 9.10.3.1.-A (walls)"))
	assert.Equal(t, "NBC-F43", series("NBC-F43f", "NBC2020", ""))
	assert.Equal(t, "HARRIS1995 Table 31.2", series("HAR-2a11y", "HARRIS1995", "Table 31.2, p. 31.17"))
}

func TestReadTablesNamesWhatIsWrong(t *testing.T) {
	_, err := ReadRatings("id,leaf1\nx,gypsum 12.7 x1\n")
	require.Error(t, err)
	assert.Contains(t, err.Error(), "framing")
	_, err = ReadRatings("id,leaf1,framing,spacing_mm,cavity_mm,fill,leaf2,STC,kind\nx1,gypsum 12.7 x1,none,,,none,none,many,panel\n")
	require.Error(t, err)
	assert.Contains(t, err.Error(), "x1")
	assert.Contains(t, err.Error(), "STC")
	rows, err := ReadRatings("id,leaf1,framing,spacing_mm,cavity_mm,fill,leaf2,STC,kind\nx1,gypsum 12.7 x1,none,,,none,none,28,panel\nx2,soup 3 x1,none,,,none,none,3,panel\n")
	require.NoError(t, err)
	assert.True(t, rows[0].Read())
	assert.Contains(t, rows[1].Unread, "soup")
}

// Every declared board has sound values and a source, and none is impossible.
func TestDeclaredBoards(t *testing.T) {
	for _, d := range declaredBoards() {
		if d.kind == skipped {
			continue
		}
		b := d.board(strings.Join(d.words, " "), d.only, 0)
		assert.Positive(t, float64(b.Sound.Young), d.words)
		assert.Positive(t, b.Sound.Loss, d.words)
		assert.NotEmpty(t, b.Source, d.words)
		assert.NotEmpty(t, b.Origin, d.words)
		assert.Empty(t, assembly.BuildUp{Leaves: []assembly.Leaf{{Layers: []assembly.Layer{{Board: b}}}}}.Check(), d.words)
	}
	// Modulus over density is kept whatever the row weighs, so that thickness × critical frequency stays.
	light, _ := findBoard("gypsum 12.7 regular", 12.7)
	like, ok := material.ByID("na_gyp_reg_13")
	require.True(t, ok)
	b := light.board("", 12.7, 0)
	assert.InDelta(t, float64(like.Sound.Young)/float64(like.Mass)*float64(like.Thickness), float64(b.Sound.Young)/float64(b.Mass)*float64(b.Thickness), 1e-3)
}
