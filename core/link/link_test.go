package link

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/material"
	"twoleaf/core/plan"
	"twoleaf/core/unit"
)

var regions = []plan.Region{plan.US, plan.CA, plan.UK, plan.EU, plan.AU}

func ExampleEncode() {
	text, leftOut, _ := Encode(plan.First(plan.US))
	fmt.Println(text)
	fmt.Println(leftOut)
	// Output:
	// 1/pUS-d-nA.wall-sband-v100/b/lgx16-gx16/gw4-fsw-t/ncl-m42-e/lTgr13/sw-nwall-w160-h8ft-ybedroom-lsleeper/.7RW3
	// [history]
}

// asJSON compares what a page would see: nil and empty lists are one.
func asJSON(t *testing.T, p plan.Plan) string {
	t.Helper()
	text, err := json.Marshal(p)
	require.NoError(t, err)
	return string(text)
}

func kept(p plan.Plan) plan.Plan {
	p.Notes = ""
	return plan.Renumbered(p)
}

func encoded(t *testing.T, p plan.Plan) string {
	t.Helper()
	text, _, f := Encode(p)
	if f != nil {
		t.Fatal(f.Words)
	}
	return text
}

func decoded(t *testing.T, text string) plan.Plan {
	t.Helper()
	p, f := Decode(text)
	if f != nil {
		t.Fatalf("%s\n%s", f.Words, text)
	}
	return p
}

func TestLawRoundTripOfExamples(t *testing.T) {
	for _, region := range regions {
		for _, p := range []plan.Plan{plan.First(region), plan.Demo(region)} {
			text, leftOut, f := Encode(p)
			require.Nil(t, f)
			back := decoded(t, text)
			assert.Equal(t, asJSON(t, kept(p)), asJSON(t, back))
			assert.Empty(t, plan.Check(back))
			assert.Equal(t, p.Notes != "", len(leftOut) == 2, "notes are named if there were any")
			lettersOnly(t, text)
		}
	}
}

// Only what messengers leave alone, the version first, a letter or digit last.
func lettersOnly(t *testing.T, text string) {
	t.Helper()
	assert.Empty(t, strings.Trim(text, alphabet+"-.=/"), text)
	assert.Contains(t, alphabet, text[len(text)-1:])
	assert.True(t, strings.HasPrefix(text, "1/") || strings.HasPrefix(text, "1z/"))
}

// random makes plans of everything a plan can hold, with quantities typed in many ways.
type random struct{ *rand.Rand }

func (r random) pick(list ...string) string { return list[r.IntN(len(list))] }
func (r random) coin() bool                 { return r.IntN(2) == 0 }

func (r random) number() string {
	s := strconv.Itoa(1 + r.IntN(99))
	if r.coin() {
		s += "." + strconv.Itoa(r.IntN(1000))
	}
	return s
}

func (r random) quantity(units ...string) unit.Quantity {
	switch r.IntN(8) {
	case 0, 1, 2:
		return ""
	case 3:
		return unit.Quantity(r.pick("abc", "<b>", "1,5 kg", "12", "1e5 lb", "-3 lb", " ", "5  in", "0 lb", "4x8 ft", "½ in", "007 mm", "q", "1.", ".5 in", "5 in extra"))
	}
	return unit.Quantity(strings.TrimSpace(r.number() + " " + r.pick(units...)))
}

func (r random) word() string {
	return r.pick("", "wall B", "Garage", "Küche & Bad", `<img src=x onerror="alert(1)">`, "a/b-c.d=e", "日本", "100%", "\x00\xff", strings.Repeat("long ", 10), "emoji 🥁")
}

func (r random) layers() []plan.Layer {
	boards := material.All()
	out := make([]plan.Layer, 1+r.IntN(4))
	for i := range out {
		out[i] = plan.Layer{ID: "x", Board: boards[r.IntN(len(boards))].ID, There: r.IntN(4) == 0, Join: r.pick("", "", "glue", "film", "string=.")}
		if r.IntN(12) == 0 {
			out[i].Board = r.pick("", "no such board", "T")
		}
	}
	return out
}

func (r random) held() plan.Held {
	if r.coin() {
		return screwed
	}
	lengths := []string{"in", "mm", "ft", "m", "cm"}
	return plan.Held{
		Fixing: r.pick("", "clip", "channel", "untied", "tape"),
		Rows:   r.quantity(lengths...), Along: r.quantity(lengths...),
		Rating: r.quantity("lb", "kg"), Extra: r.quantity("psf", "kg/m2"), Shorts: r.coin(), Example: r.coin(),
		First: r.quantity(lengths...), Ends: r.quantity(lengths...), Stagger: r.coin(), Screws: r.quantity(lengths...),
	}
}

func (r random) plan() plan.Plan {
	lengths := []string{"in", "mm", "ft", "m", "cm"}
	p := plan.Plan{
		Format: plan.Format, Table: 1 + r.IntN(3), Name: r.word(),
		Region: plan.Region(r.pick("US", "CA", "UK", "EU", "AU", "MOON")), Units: plan.Units(r.pick("us", "si", "")),
		Prices: plan.Prices(r.pick("", "demo", "other")), Waste: r.quantity("%"),
	}
	for range 1 + r.IntN(4) {
		b := plan.BuildUp{ID: "b" + strconv.Itoa(10+len(p.BuildUps)), Name: r.word()}
		for range 1 + r.IntN(4) {
			b.Leaves = append(b.Leaves, plan.Leaf{Layers: r.layers()})
		}
		frames, fills := material.Frames(""), material.Fills("")
		for range r.IntN(4) {
			g := plan.Gap{
				ID: "g", Frame: frames[r.IntN(len(frames))].ID, Depth: r.quantity(lengths...), Spacing: r.quantity(lengths...),
				FillDepth: r.quantity(lengths...), Near: r.held(), Far: r.held(), There: r.coin(), FillThere: r.coin(),
			}
			if r.coin() {
				g.Fill = fills[r.IntN(len(fills))].ID
			}
			if n := len(p.BuildUps); r.IntN(3) == 0 && n > 0 && len(p.BuildUps[n-1].Gaps) > 0 {
				g = p.BuildUps[n-1].Gaps[0] // the same gap again
			}
			b.Gaps = append(b.Gaps, g)
		}
		b.Compare.Leaf = r.IntN(4) - 1
		if r.coin() {
			b.Compare.Reference = r.layers()
		}
		for range r.IntN(3) {
			b.Compare.Rows = append(b.Compare.Rows, plan.Candidate{ID: "c", Layers: r.layers()})
		}
		p.BuildUps = append(p.BuildUps, b)
	}
	for range 1 + r.IntN(5) {
		if r.coin() && len(p.Surfaces) > 0 {
			s := p.Surfaces[len(p.Surfaces)-1] // the same sides as the one before
			s.Name, s.BuildUp = r.pick("wall A", "ceiling", "floor ", "wall  B"), r.pick(p.BuildUps[r.IntN(len(p.BuildUps))].ID, "none")
			p.Surfaces = append(p.Surfaces, s)
			continue
		}
		p.Surfaces = append(p.Surfaces, plan.Surface{
			ID: "s", Name: r.word(), Kind: plan.SurfaceKind(r.pick("wall", "ceiling", "floor", "roof")),
			Width: r.quantity(lengths...), Height: r.quantity(lengths...), Area: r.quantity("ft2", "m2"),
			BuildUp: p.BuildUps[r.IntN(len(p.BuildUps))].ID, Beyond: r.word(), Garage: r.coin(),
		})
	}
	for range r.IntN(4) {
		boards := material.All()
		p.Shelf = append(p.Shelf, plan.Shelf{
			Board: r.pick(boards[r.IntN(len(boards))].ID, material.DampingFilm, "odd board"), Per: plan.Weight(r.pick("", "area", "pallet", "scale", "moon")),
			Weight: r.quantity("lb", "kg", "psf", "kg/m2", "oz", "g"), Less: r.quantity("lb", "kg"), Of: r.quantity(""),
			Price: r.quantity("$", "£", "€"), PriceArea: r.coin(), Sheet: unit.Quantity(r.pick("", "4x8 ft", "1200x2400 mm", "1.2x2.4 m", "48x96.5 in", "nonsense")),
			Thickness: r.quantity(lengths...), Stock: r.quantity(""), Plenty: r.coin(), Owned: r.quantity(""),
		})
	}
	if r.coin() {
		r.room(&p)
	}
	return p
}

// room adds what is around the build-ups.
func (r random) room(p *plan.Plan) {
	lengths := []string{"in", "mm", "ft", "m", "cm"}
	row := func() (out []unit.Quantity) {
		if r.coin() {
			for range 1 + r.IntN(7) {
				out = append(out, r.quantity(""))
			}
		}
		return out
	}
	playing := func() (out []plan.Playing) {
		for range r.IntN(3) {
			out = append(out, plan.Playing{Source: r.word(), Level: r.quantity("")})
		}
		return out
	}
	if r.coin() {
		p.Room = &plan.Room{
			Length: r.quantity(lengths...), Width: r.quantity(lengths...), Height: r.quantity(lengths...), Soft: plan.Soft(r.pick("", "bare", "soft", "odd")),
			People: r.quantity(""), Minutes: r.quantity(""), Watts: r.quantity(""), Air: r.quantity("cfm", "L/s"), Fuel: r.coin(),
		}
	}
	p.Also = playing()
	for range r.IntN(3) {
		p.Spaces = append(p.Spaces, plan.Space{
			Name: r.word(), Area: r.quantity("ft2", "m2"), Height: r.quantity(lengths...), Soft: plan.Soft(r.pick("", "bare")), Outdoors: r.coin(),
			Background: r.quantity(""), Noise: playing(),
		})
	}
	for range r.IntN(2) {
		p.Measured = append(p.Measured, plan.Measured{
			Beyond: r.word(), After: r.coin(), InA: r.quantity(""), InC: r.quantity(""), OutA: r.quantity(""), OutC: r.quantity(""), In: row(), Out: row(),
		})
	}
	if r.coin() {
		p.Buying = &plan.Buying{
			Tax: r.quantity("%"), Contingency: r.quantity("%"), Budget: r.quantity("$", "€"), Payload: r.quantity("lb", "kg"), Roof: r.quantity("lb"),
			People: r.quantity(""), DoorWidth: r.quantity(lengths...), DoorHeight: r.quantity(lengths...), Corridor: r.quantity(lengths...),
			Beyond: r.quantity(lengths...), Stair: r.coin(),
		}
		for range r.IntN(3) {
			p.Buying.Costs = append(p.Buying.Costs, plan.Cost{Item: r.word(), Price: r.quantity("$", "£")})
		}
	}
	for i := range p.Surfaces {
		s := &p.Surfaces[i]
		s.Side, s.Flank, s.FlankLoss = r.IntN(5), r.word(), r.quantity("")
		for range r.IntN(3) {
			s.Openings = append(s.Openings, plan.Opening{
				ID: "o", Kind: r.word(), Seal: r.word(), Width: r.quantity(lengths...), Height: r.quantity(lengths...), Count: r.quantity(""),
				X: r.quantity(lengths...), Y: r.quantity(lengths...), Crack: r.quantity(lengths...), Run: r.quantity(lengths...),
				Rating: r.quantity(""), Octaves: row(), There: r.coin(),
			})
		}
		for range r.IntN(2) {
			s.Hung = append(s.Hung, plan.Hung{ID: "h", Name: r.word(), X: r.quantity(lengths...), Y: r.quantity(lengths...), Mass: r.quantity("lb", "kg")})
		}
		for range r.IntN(2) {
			s.Clips = append(s.Clips, plan.Spot{X: r.quantity(lengths...), Y: r.quantity(lengths...)})
		}
		if r.coin() {
			s.Joists = &plan.Joists{Span: r.quantity(lengths...), Grade: r.word(), Above: r.word(), Dead: r.quantity("psf", "kg/m2")}
		}
	}
}

// Every plan comes back as it was, every quantity to the digit as typed.
func TestLawRoundTrip(t *testing.T) {
	r := random{rand.New(rand.NewPCG(9, 10))}
	fitted := 0
	for range 600 {
		p := r.plan()
		text, _, f := Encode(p)
		if f != nil {
			require.Equal(t, "tooLong", f.Code)
			continue
		}
		fitted++
		lettersOnly(t, text)
		want := kept(p)
		back := decoded(t, text)
		require.Equal(t, strings.ToValidUTF8(asJSON(t, want), "?"), strings.ToValidUTF8(asJSON(t, back), "?"))
		require.Equal(t, want.Name, back.Name, "bytes of any kind")
		require.Equal(t, text, encoded(t, back), "and gives the same text again")
	}
	assert.Greater(t, fitted, 300)
}

// The records of a text are the same plan whether deflated or not.
func TestLawDeflated(t *testing.T) {
	r := random{rand.New(rand.NewPCG(11, 12))}
	for range 100 {
		body := write(r.plan())
		back, ok := unpack(pack(body))
		require.True(t, ok)
		assert.Equal(t, body, back)
	}
	p := plan.Demo(plan.US)
	body := write(p)
	packed := seal("1z/" + pack(body))
	assert.Equal(t, asJSON(t, kept(p)), asJSON(t, decoded(t, packed)))
}

// What was typed is what comes back, whatever the units of the plan.
func TestQuantitiesAsTyped(t *testing.T) {
	for q, want := range map[string]string{
		"58 lb": "58", "58 kg": "58kg", "0.625 in": "0.625in", "4x8 ft": "4x8ft", "41.0 lb": "41.0", "3": "3n",
		"1,5 kg": "q1=2c5.kg", "": "q", "-5 lb": "q=2d5.lb", "5 stone": "q5.stone", "14.98 $": "14.98usd", "2.2 psf": "2.2psf",
		"10 %": "10pc", "3 kg/m2": "3kgm2", "12 m2": "12m2",
	} {
		got := quantity(unit.Quantity(q), "lb")
		assert.Equal(t, want, got, q)
		back, ok := readQuantity(got, "lb")
		assert.True(t, ok || q == "", q)
		assert.Equal(t, q, back)
	}
}

// room is a room of six surfaces, each its own build-up, with four openings, two
// spaces beyond, and six shelf rows as somebody at the yard would type them.
func room() plan.Plan {
	p := plan.Demo(plan.US)
	p.Room, p.Buying = nil, nil
	for i := range p.Surfaces {
		p.Surfaces[i].Hung = nil
	}
	p.Spaces = []plan.Space{p.Spaces[0], p.Spaces[3]}
	p.Shelf = []plan.Shelf{
		{Board: "na_gyp_typeX_16", Weight: "72 lb", Price: "17.98 $", Stock: "20"},
		{Board: "na_gyp_light_13", Weight: "39 lb", Price: "14.98 $", Plenty: true},
		{Board: "na_gyp_light_16", Weight: "56 lb", Price: "16.48 $", Stock: "0"},
		{Board: "na_ply_soft_15", Weight: "58 lb", Price: "41.50 $", Stock: "9", Owned: "2"},
		{Board: "na_osb_18_23-32", Weight: "78 lb", Price: "33.98 $"},
		{Board: "na_mdf_19", Weight: "98 lb", Price: "45.48 $", Sheet: "49x97 in"},
	}
	d := p.BuildUps[2]
	d.ID, d.Name = "b9", ""
	d.Leaves = append([]plan.Leaf{}, d.Leaves...)
	d.Leaves[0].Layers = []plan.Layer{{ID: "y1", Board: "na_gyp_typeX_16", Join: "film"}, {ID: "y2", Board: "na_gyp_typeX_16"}}
	p.BuildUps = append(p.BuildUps, d)
	p.Surfaces[3].BuildUp = "b9"
	return p
}

func TestRoomFits(t *testing.T) {
	p := room()
	require.Empty(t, plan.Check(p))
	text := encoded(t, p)
	t.Logf("%d characters: %s", len(text), text)
	assert.True(t, strings.HasPrefix(text, "1/"), "as readable text")
	assert.LessOrEqual(t, len(text), Plain)
	assert.Equal(t, asJSON(t, kept(p)), asJSON(t, decoded(t, text)))
}

func TestLongerIsDeflated(t *testing.T) {
	p := room()
	for range 12 {
		s := p.Surfaces[1]
		s.ID += strconv.Itoa(len(p.Surfaces))
		s.Name = fmt.Sprintf("wall %d of the other room", len(p.Surfaces))
		p.Surfaces = append(p.Surfaces, s)
	}
	plain := seal("1/" + write(p))
	require.Greater(t, len(plain), Plain)
	text := encoded(t, p)
	assert.True(t, strings.HasPrefix(text, "1z/"))
	assert.Less(t, len(text), len(plain))
	lettersOnly(t, text)
	assert.Equal(t, asJSON(t, kept(p)), asJSON(t, decoded(t, text)))

	r := random{rand.New(rand.NewPCG(1, 1))}
	for len(p.Shelf) < plan.MaxShelf {
		p.Shelf = append(p.Shelf, plan.Shelf{Board: fmt.Sprint(r.Uint64()), Weight: unit.Quantity(fmt.Sprint(r.Uint64(), " lb"))})
	}
	_, leftOut, f := Encode(p)
	require.NotNil(t, f)
	assert.Equal(t, "tooLong", f.Code)
	assert.Contains(t, leftOut, Notes)
	p.Surfaces = make([]plan.Surface, 5000)
	_, _, f = Encode(p)
	require.NotNil(t, f)
	assert.Equal(t, "tooMany", f.Code)
}

// A link that lost its end, at any place, is said to be cut and never opened as a smaller plan.
func TestCut(t *testing.T) {
	text := encoded(t, plan.Demo(plan.US))
	for n := range len(text) {
		_, f := Decode(text[:n])
		require.NotNil(t, f, "%d", n)
		if n > 4 {
			assert.Equal(t, "cut", f.Code, text[:n])
			assert.Contains(t, f.Words, f.Typed)
		}
	}
	cut := text[:strings.Index(text, "-m42")]
	_, f := Decode(cut)
	assert.Equal(t, "the link: it is cut short: it ends at “…w4-fsw-t/ncl” without its check letters", f.Words)
}

// Any changed, lost or exchanged character is noticed.
func TestAltered(t *testing.T) {
	text := encoded(t, plan.First(plan.US))
	other := map[byte]byte{'/': '-', '-': '/'}
	for i := 2; i < len(text); i++ {
		for _, c := range []byte{'x', '7', '-', other[text[i]]} {
			if c == 0 || c == text[i] {
				continue
			}
			_, f := Decode(text[:i] + string(c) + text[i+1:])
			require.NotNil(t, f, "%d %c", i, c)
			assert.Contains(t, []string{"altered", "cut"}, f.Code)
		}
		_, f := Decode(text[:i] + text[i+1:])
		require.NotNil(t, f, "without %d", i)
		if i+1 < len(text) && text[i] != text[i+1] {
			_, f := Decode(text[:i] + text[i+1:i+2] + text[i:i+1] + text[i+2:])
			require.NotNil(t, f, "exchanged %d", i)
		}
	}
	_, f := Decode(strings.ToLower(text))
	assert.NotNil(t, f, "somebody made it small letters")
	_, f = Decode(strings.Replace(text, "gw4", "g=4", 1))
	require.NotNil(t, f)
	assert.Equal(t, "altered", f.Code)
	assert.Equal(t, "g=4-fsw-t", f.Typed, "the piece that cannot be read")
}

func TestNewerAndUnreadable(t *testing.T) {
	for _, c := range []struct{ text, code, word string }{
		{seal("2/pUS/whatever.comes"), "newer", "newer version (2"},
		{seal("37z/AAAA"), "newer", "newer version (37"},
		{seal("1/pUS/b/lzz99/sw"), "newer", "“zz99” is in no table here"},
		{seal("1/pUS/b/lgx16/gzz9"), "newer", "zz9"},
		{seal("0/pUS"), "unreadable", "no link"},
		{seal("01/pUS"), "unreadable", "no link"},
		{"", "unreadable", "no link"},
		{"hello", "unreadable", "no link"},
		{"#####", "unreadable", "no link"},
		{seal("1/"), "unreadable", "cannot be read"},
		{seal("1/pUS"), "unreadable", "no wall"},
		{seal("1/b/lgx16/sw"), "unreadable", "“b”"},
		{seal("1/pUS/pUS"), "unreadable", "“pUS”"},
		{seal("1/pUS/lgx16"), "unreadable", "“lgx16”"},
		{seal("1/pUS/b/lgx16/sw-b2"), "unreadable", "sw-b2"},
		{seal("1/pUS/b/lgx16/sw-zz"), "unreadable", "sw-zz"},
		{seal("1/pUS/b/lgx16/sw-w"), "unreadable", "sw-w"},
		{seal("1/pUS/b/lgx16/sw-w1.2.3"), "unreadable", "sw-w1.2.3"},
		{seal("1/pUS/b/lgx16/sw-n=zz"), "unreadable", "=zz"},
		{seal("1/pUS/b/lgx16/sw-n<b>"), "unreadable", "<b>"},
		{seal("1/pUS/b/lgx16/ncl/sw"), "unreadable", "ncl"},
		{seal("1/pUS/b/l-/sw"), "unreadable", "l-"},
		{seal("1/pUS/b/lgx16/u/sw"), "unreadable", "“u”"},
		{seal("1/pUS/b/lgx16/sw/sw"), "unreadable", "“sw”"},
		{seal("1z/!!"), "unreadable", "unpacked"},
		{seal("1z/AAAA"), "unreadable", "unpacked"},
		{seal("1z/" + pack("pUS/b/lgx16/sw") + "A"), "unreadable", "unpacked"},
		{seal("1z/"), "unreadable", "unpacked"},
	} {
		_, f := Decode(c.text)
		if assert.NotNil(t, f, c.text) {
			assert.Equal(t, c.code, f.Code, c.text)
			assert.Contains(t, f.Words, c.word, c.text)
			assert.Equal(t, "link", f.Field)
			assert.Equal(t, -1, f.Leaf)
		}
	}
}

func TestTooMuchIsRefusedAtOnce(t *testing.T) {
	_, f := Decode("1/" + strings.Repeat("a", 1<<20))
	require.NotNil(t, f)
	assert.Equal(t, "tooLong", f.Code)
	assert.Empty(t, f.Typed)
	_, f = Decode(seal("1z/" + pack(strings.Repeat("0", 200<<10))))
	require.NotNil(t, f)
	assert.Equal(t, "unreadable", f.Code, "200 kB packed into a few hundred characters")
}

// Links come with an address before them, escapes in them, and a sentence around them.
func TestAsPasted(t *testing.T) {
	p := plan.Demo(plan.UK)
	text := encoded(t, p)
	want := asJSON(t, kept(p))
	for _, pasted := range []string{
		"#" + text, "https://example.org/twoleaf/#" + text, "  " + text + "\n", text + ".", "<" + text + ">", "(see https://example.org/#" + text + "), he said",
		"https://example.org/#" + strings.NewReplacer("/", "%2F", "=", "%3D").Replace(text),
		text[:50] + "\r\n" + text[50:],
		"https://example.org/#" + text + " and then some words",
	} {
		assert.Equal(t, want, asJSON(t, decoded(t, pasted)), pasted)
	}
}

func TestMarkupSurvivesAsText(t *testing.T) {
	p := plan.First(plan.US)
	p.Name = `"><script>alert('Ä')</script>`
	p.Surfaces[0].Beyond = "javascript:alert(1)//"
	text := encoded(t, p)
	lettersOnly(t, text)
	back := decoded(t, text)
	assert.Equal(t, p.Name, back.Name)
	assert.Equal(t, p.Surfaces[0].Beyond, back.Surfaces[0].Beyond)
}

// The kept links of every past version open for ever and say what they said.
// testdata/plan/links/v1.txt holds lines of a link, a tab, and the plan as JSON.
func TestKeptLinks(t *testing.T) {
	files, err := filepath.Glob("../../testdata/plan/links/v*.txt")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		n := 0
		for line := range strings.Lines(string(text)) {
			line = strings.TrimSuffix(line, "\n")
			if line == "" || strings.HasPrefix(line, "# ") {
				continue
			}
			n++
			link, want, ok := strings.Cut(line, "\t")
			require.True(t, ok)
			assert.Equal(t, want, asJSON(t, decoded(t, link)), link)
		}
		assert.GreaterOrEqual(t, n, 8, file)
	}
}

// Every code of the tables is short, of letters and digits, and leads back.
func TestCodes(t *testing.T) {
	for _, b := range material.All() {
		code, ok := plan.Boards.Code(b.ID)
		require.True(t, ok)
		assert.LessOrEqual(t, len(code), 5, b.ID)
		id, known, ok := readIdentity(plan.Boards, identity(plan.Boards, b.ID))
		assert.True(t, known && ok)
		assert.Equal(t, b.ID, id)
	}
	id, ok := plan.Boards.ID("f")
	assert.True(t, ok)
	assert.Equal(t, material.DampingFilm, id)
}

func FuzzDecode(f *testing.F) {
	for _, region := range regions {
		text, _, _ := Encode(plan.Demo(region))
		f.Add(text)
		f.Add(strings.TrimPrefix(text, "1/"))
	}
	f.Add("1/pUS-ux-t9-lq/hf-e.-q/b/l.=20/g.-dq-f./n./c=2d1/fJx=.T/k/s.-b.=20-nx")
	f.Add("1z/" + pack("pUS/b/lgx16/sw"))
	f.Fuzz(func(t *testing.T, text string) {
		// As it is, and with right check letters, so that what is behind them is reached.
		for _, text := range []string{text, seal(text), seal("1/" + text), seal("1z/" + pack(text))} {
			p, bad := Decode(text)
			if bad != nil {
				if bad.Code == "" || bad.Words == "" {
					t.Fatalf("a fault without words: %+v", bad)
				}
				continue
			}
			_ = plan.Check(p)
			again, _, bad := Encode(p)
			if bad != nil {
				continue
			}
			q, bad := Decode(again)
			if bad != nil {
				t.Fatalf("written and not read: %s\n%s", bad.Words, again)
			}
			a, _ := json.Marshal(p)
			b, _ := json.Marshal(q)
			if string(a) != string(b) {
				t.Fatalf("not the same plan:\n%s\n%s", a, b)
			}
		}
	})
}

func BenchmarkEncode(b *testing.B) {
	p := room()
	for b.Loop() {
		if _, _, f := Encode(p); f != nil {
			b.Fatal(f)
		}
	}
}
