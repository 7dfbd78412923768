package test

import (
	"encoding/xml"
	"io"
	"math"
	"os"
	"os/exec"
	"path"
	"regexp"
	"strconv"
	"strings"
	"testing"

	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// surfaceOf returns a surface of a plan by its kind.
func surfaceOf(t *testing.T, plan map[string]any, kind string) map[string]any {
	t.Helper()
	for _, s := range plan["surfaces"].([]any) {
		if s := s.(map[string]any); s["kind"] == kind {
			return s
		}
	}
	t.Fatal("the example has no " + kind)
	return nil
}

// bought opens the list of the example room, all its layouts tried.
func bought(t *testing.T, v view) (*page, *deployment) {
	t.Helper()
	server := deploy(t, "/")
	p := open(t, server.address(), v)
	p.settled()
	p.press("See a room")
	p.settled()
	p.press("Buy")
	p.cutThrough()
	return p, server
}

// cutThrough waits until every layout has been tried and the list goes by the best.
func (p *page) cutThrough() {
	p.t.Helper()
	p.until("/all \\d+ layouts tried/.test(document.querySelector('.progress')?.innerText ?? '')")
	p.settled()
}

// ticked are the names of what is got, in the order of the list.
func (p *page) ticked() []string {
	p.t.Helper()
	return eval[[]string](p, "[...document.querySelectorAll('.ticks input:checked')].map((i) => i.closest('label').querySelector('.name').textContent.replace(/\\s+/g, ' ').trim())")
}

// stored waits until the browser keeps so many ticks on the disk.
func (p *page) stored(n int) {
	p.t.Helper()
	p.until(`new Promise((done, fail) => {
		const opening = indexedDB.open('twoleaf');
		opening.onerror = fail;
		opening.onsuccess = () => {
			const all = opening.result.transaction('plans').objectStore('plans').getAll();
			all.onerror = fail;
			all.onsuccess = () => { opening.result.close(); done(all.result.some((r) => Object.keys(r.ticks ?? {}).length === $0)); };
		};
	})`, n)
}

// At the counter, with no signal: what is ticked stays ticked over a reload,
// and what is still to get goes down by it.
func TestListTickedOffline(t *testing.T) {
	p, server := bought(t, phone)
	assert.Empty(t, p.ticked())
	all := p.words(".still")
	p.press("Acoustic sealant")
	p.until("document.querySelector('.still').innerText !== $0", all)
	p.kept()
	server.stop()
	p.press("Joint tape")
	p.press("Services in and tested")
	p.until("document.querySelectorAll('.ticks input:checked').length === 3")
	p.stored(3)
	got, still := p.ticked(), p.words(".still")
	assert.NotEqual(t, all, still)
	p.shot("buy-phone-ticked")

	p.reload()
	p.cutThrough()
	assert.Equal(t, got, p.ticked(), "ticks after a reload with no signal")
	assert.Equal(t, still, p.words(".still"))

	// What is taken back is to get again, and stays so.
	p.press("Joint tape")
	p.until("document.querySelectorAll('.ticks input:checked').length === 2")
	p.stored(2)
	p.reload()
	p.cutThrough()
	assert.Len(t, p.ticked(), 2)
	p.noErrors()
}

// Ticks belong to the browser: a link has none, and says so.
func TestTicksStayOutOfTheLink(t *testing.T) {
	p, _ := bought(t, phone)
	p.press("Acoustic sealant")
	p.until("document.querySelectorAll('.ticks input:checked').length === 1")
	p.press("Send")
	p.until("/Left out: .*ticks/.test(document.querySelector('.sheet')?.innerText ?? '')")
	link := eval[string](p, "document.querySelector('input.link').value")
	other := open(t, link, phone)
	other.settled()
	other.press("Buy")
	other.cutThrough()
	assert.Empty(t, other.ticked())
}

// The list takes one sheet of paper, the faces with their clips the next.
func TestListOnPaper(t *testing.T) {
	p, _ := bought(t, desk)
	eval[bool](p, "(window.print = () => { window.asked = true }, true)")
	p.press("Print the list")
	p.until("window.asked")
	for name, inches := range map[string][2]float64{"a4": {8.27, 11.69}, "letter": {8.5, 11}} {
		ctx, margin, background := p.ctx, 0.4, true
		made, err := chromedp.Call(ctx, cdppage.PrintToPDF, cdppage.PrintToPDFParams{
			PaperWidth: inches[0], PaperHeight: inches[1], MarginTop: &margin, MarginBottom: &margin, MarginLeft: &margin, MarginRight: &margin, PrintBackground: &background,
		})
		require.NoError(t, err)
		require.NoError(t, os.MkdirAll(path.Join(dist, "shots"), 0o755))
		require.NoError(t, os.WriteFile(path.Join(dist, "shots", "list-"+name+".pdf"), made.Data, 0o644))
		pages := len(regexp.MustCompile(`/Type\s*/Page\b`).FindAll(made.Data, -1))
		measured(t, "the list on %s: %d pages, %d bytes", name, pages, len(made.Data))
		assert.Equal(t, 2, pages, "pages of %s", name)
	}
	said := eval[string](p, "document.getElementById('paper').textContent")
	for _, part := range []string{"Acoustic sealant", "Clips", "before tax", "Order of work", "Hold.", "wall A", "ceiling E"} {
		assert.Contains(t, said, part)
	}
}

// table is a sheet of an office's own file.
type table struct {
	Rows []struct {
		Repeated int `xml:"number-rows-repeated,attr"`
		Cells    []struct {
			Kind     string `xml:"value-type,attr"`
			Value    string `xml:"value,attr"`
			Repeated int    `xml:"number-columns-repeated,attr"`
			Text     string `xml:"p"`
		} `xml:"table-cell"`
	} `xml:"table-row"`
}

// The saved table opens in a real spreadsheet as numbers, and its sums are those of the page.
func TestListInASpreadsheet(t *testing.T) {
	found, err := exec.Command("sh", "office.sh").Output()
	if err != nil {
		lacking(t, "no LibreOffice was found")
	}
	p, _ := bought(t, desk)
	p.press("Acoustic sealant")
	p.until("document.querySelectorAll('.ticks input:checked').length === 1")
	eval[bool](p, "(URL.createObjectURL = (blob) => { window.saved = blob; return '#'; }, HTMLAnchorElement.prototype.click = () => {}, true)")
	p.press("Save as CSV")
	p.until("window.saved")
	text := eval[string](p, "window.saved.arrayBuffer().then((b) => new TextDecoder('utf-8', {ignoreBOM: true}).decode(b))")
	require.True(t, strings.HasPrefix(text, "\ufeff"), "a spreadsheet is told the letters' code")

	dir := t.TempDir()
	require.NoError(t, os.WriteFile(path.Join(dir, "list.csv"), []byte(text), 0o644))
	convert := exec.Command(strings.TrimSpace(string(found)), "-env:UserInstallation=file://"+dir+"/profile", "--headless",
		// As its dialogue reads a file that begins with the mark: UTF-8, commas, quotes.
		"--infilter=CSV:44,34,76,1", "--convert-to", "fods", "--outdir", dir, path.Join(dir, "list.csv"))
	convert.Env = append(os.Environ(), "HOME="+dir)
	said, err := convert.CombinedOutput()
	require.NoError(t, err, "%s", said)
	file, err := os.Open(path.Join(dir, "list.fods"))
	require.NoError(t, err)
	defer func() { _ = file.Close() }()

	cells := func(r []string, i int) string {
		if i < len(r) {
			return r[i]
		}
		return ""
	}
	rows := readTable(t, file)
	require.Equal(t, []string{"item", "how many", "to buy", "own", "price ($)", "cost ($)", "weight (lb)", "counted by", "got"}, rows[0])
	costs, items, sums := 0.0, 0, map[string]float64{}
	for _, r := range rows[1:] {
		cost, number := strings.CutPrefix(cells(r, 5), "number ")
		if !number {
			continue
		}
		v, err := strconv.ParseFloat(cost, 64)
		require.NoError(t, err)
		buy, counted := strings.CutPrefix(cells(r, 2), "number ")
		if !counted {
			sums[cells(r, 0)] = v
			continue
		}
		price, err := strconv.ParseFloat(strings.TrimPrefix(cells(r, 4), "number "), 64)
		require.NoError(t, err, "%q", r)
		n, err := strconv.ParseFloat(buy, 64)
		require.NoError(t, err)
		assert.InDelta(t, v, n*price, 0.005*n+0.006, "%s: what is bought times its price", cells(r, 0))
		costs += v
		items++
	}
	require.Greater(t, items, 8)
	money := func(find string) float64 {
		plain := regexp.MustCompile(`[^\d.]`).ReplaceAllString(eval[string](p, find), "")
		v, err := strconv.ParseFloat(plain, 64)
		require.NoError(t, err)
		return v
	}
	total := func(name string) string {
		return "[...document.querySelectorAll('.totals div')].find((d) => d.innerText.startsWith('" + name + "')).querySelector('dd').innerText"
	}
	before := money(total("Before tax"))
	measured(t, "%d items, their costs in the spreadsheet %.2f, on the page %.2f", items, costs, before)
	assert.InDelta(t, before, costs, 0.005*float64(items), "the column of costs adds up to what the page says")
	assert.InDelta(t, before, sums["before tax"], 0.001)
	assert.InDelta(t, money(total("In all")), sums["in all"], 0.001)
	assert.InDelta(t, money(total("Still to get")), sums["still to get, before tax"], 0.001)
	assert.Less(t, sums["still to get, before tax"], sums["before tax"])
	assert.InDelta(t, sums["in all"], math.Round(100*(sums["before tax"]+sums["tax"]))/100, 0.011)
}

// readTable returns the rows of the first sheet; a number is told as one.
func readTable(t *testing.T, file io.Reader) (rows [][]string) {
	t.Helper()
	decoder := xml.NewDecoder(file)
	for {
		token, err := decoder.Token()
		require.NoError(t, err, "the file has no table")
		start, ok := token.(xml.StartElement)
		if !ok || start.Name.Local != "table" {
			continue
		}
		var sheet table
		require.NoError(t, decoder.DecodeElement(&sheet, &start))
		for _, r := range sheet.Rows {
			var row []string
			for _, c := range r.Cells {
				text := c.Text
				if c.Kind == "float" {
					text = "number " + c.Value
				}
				for range min(20, max(1, c.Repeated)) {
					row = append(row, text)
				}
			}
			for len(row) > 0 && row[len(row)-1] == "" {
				row = row[:len(row)-1]
			}
			rows = append(rows, row)
		}
		return rows
	}
}

// Something heavy hangs on the ceiling: the clips beside it are over, by shape,
// word and figure; the verdict says so and mends it.
func TestClipOverAndMended(t *testing.T) {
	link := linkOf(t, "demo", func(plan map[string]any) {
		ceiling := surfaceOf(t, plan, "ceiling")
		plan["surfaces"] = []any{ceiling}
		ceiling["openings"] = []any{}
		ceiling["hung"] = []any{map[string]any{"id": "h1", "name": "air box", "x": "88 in", "y": "54 in", "mass": "30 lb"}}
	})
	for _, v := range []view{phone, desk} {
		t.Run(v.name, func(t *testing.T) {
			p := open(t, deploy(t, "/").address()+"#"+link, v)
			p.settled()
			p.press("Load")
			p.until("document.querySelectorAll('svg.clips .y-mark.over').length > 0") // a busy core draws later
			p.settled()
			over := eval[int](p, "document.querySelectorAll('svg.clips .y-mark.over').length")
			assert.Contains(t, eval[[]string](p, "[...document.querySelectorAll('.y-figure.over')].map((e) => e.textContent)"), "over", "the word stands beside the shape")
			assert.Equal(t, strconv.Itoa(over), p.words(".states .over b"), "the key counts what is drawn")
			verdict := p.words(".verdict[data-section=load]")
			assert.Regexp(t, `^Not yet\. With the 30 lb air box, \w+ of \d+ clips (is|are) over`, verdict)
			p.shot("load-" + v.name + "-over")

			p.tap(".verdict[data-section=load] .tap")
			// The clips hold; the joists above may still be too much for a yes.
			p.until("document.querySelectorAll('svg.clips .y-mark').length && !document.querySelectorAll('svg.clips .y-mark.over').length")
			p.settled()
			assert.NotContains(t, p.words(".verdict[data-section=load]"), "clips are over")
			t.Logf("%s → %s", verdict, p.words(".verdict[data-section=load]"))
			assert.Zero(t, eval[int](p, "document.querySelectorAll('svg.clips .y-mark.over').length"))
			p.shot("load-" + v.name + "-mended")
			undo(p)
			p.until("document.querySelectorAll('svg.clips .y-mark.over').length > 0")
			p.noErrors()
		})
	}
}

// Something is hung by a tap on the face, and by its fields.
func TestHungByTapping(t *testing.T) {
	link := linkOf(t, "demo", func(plan map[string]any) {
		wall := surfaceOf(t, plan, "wall")
		wall["openings"] = []any{}
		plan["surfaces"] = []any{wall}
	})
	p := open(t, deploy(t, "/").address()+"#"+link, phone)
	p.settled()
	p.press("Load")
	p.settled()
	// Between two studs, away from every clip.
	place := eval[[]float64](p, "(() => { document.querySelector('svg.clips').scrollIntoView({block: 'center'}); const r = document.querySelector('svg.clips .y-face').getBoundingClientRect(); return [r.x + r.width * 0.43, r.y + r.height * 0.36]; })()")
	p.do(chromedp.TapXY(place[0], place[1]))
	p.until("document.querySelectorAll('.y-hung').length === 1 && document.querySelector('.hung input')")
	weight := "[id^='f-hung.'][id$='.mass']"
	p.write(weight, "20")
	p.until("/20/.test(document.querySelector('.hung-row .figure')?.innerText ?? '')")
	p.settled()
	at := eval[float64](p, "parseFloat(document.querySelector(\"[id^='f-hung.'][id$='.x']\").value)")
	assert.InDelta(t, 0.43*160, at, 2.5, "where the finger was, in")
	moved := "[id^='f-hung.'][id$='.x']"
	p.write(moved, "100")
	p.settled()
	x := eval[float64](p, "(() => { const f = document.querySelector('.y-face'); const h = document.querySelector('.y-hung'); return (h.x.baseVal.value + h.width.baseVal.value / 2 - f.x.baseVal.value) / f.width.baseVal.value * 160; })()")
	assert.InDelta(t, 100, x, 0.5, "the drawing follows the field")
	p.press("take it down")
	p.until("document.querySelectorAll('.y-hung').length === 0")
	p.noErrors()
}

// cuts are all pieces of all layers as the page lists them.
func (p *page) cuts() string {
	p.t.Helper()
	return eval[string](p, `(async () => {
		const out = [];
		const faces = [...document.querySelectorAll('.cut-of option')].map((o) => o.value);
		const drawn = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 30)));
		for (const face of faces) {
			const select = document.querySelector('.cut-of select');
			select.value = face;
			select.dispatchEvent(new Event('change', {bubbles: true}));
			await drawn();
			for (let i = 0; i < document.querySelectorAll('.cut-of .chip').length; i++) {
				document.querySelectorAll('.cut-of .chip')[i].click();
				await drawn();
				out.push(face + ' ' + i + ': ' + [...document.querySelectorAll('.fold td, .fold th')].map((e) => e.textContent.trim()).join(' '));
			}
		}
		return out.join('\n').replace(/\s*\n\s*/g, '\n');
	})()`)
}

// The layouts are tried in stretches; who stops in between and goes on gets the
// very same cuts.
func TestCutsStoppedAndGoneOnWith(t *testing.T) {
	whole, _ := bought(t, phone)
	whole.press("cuts")
	whole.settled()
	wanted := whole.cuts()
	require.Greater(t, len(wanted), 500, wanted)
	whole.shot("cuts-phone")
	whole.accessible("cuts")
	assert.Empty(t, strings.Join(eval[[]string](whole, small), "\n"), "too small for a thumb")

	p := open(t, deploy(t, "/").address(), phone)
	p.settled()
	p.press("See a room")
	p.settled()
	// A finger that is quicker than any: it stops as soon as that can be done.
	eval[bool](p, `(new MutationObserver((_, watch) => {
		const stop = [...document.querySelectorAll('.progress button')].find((b) => b.innerText === 'stop');
		if (stop) { watch.disconnect(); stop.click(); }
	}).observe(document.body, {subtree: true, childList: true, characterData: true}), true)`)
	p.press("Buy")
	p.until("/go on/.test(document.querySelector('.progress')?.innerText ?? '')")
	p.settled()
	said := p.words(".progress")
	require.Regexp(t, `^\d+ of \d+ layouts tried go on$`, said)
	eval[bool](p, "new Promise((done) => setTimeout(done, 700, true))")
	assert.Equal(t, said, p.words(".progress"), "it has stopped")
	p.press("go on")
	p.cutThrough()
	p.press("cuts")
	p.settled()
	assert.Equal(t, wanted, p.cuts())
	p.noErrors()
}

// An open line of the list, the cuts and something hung: accessible, and no
// wider than the glass.
func TestBuyAndLoadOpened(t *testing.T) {
	for _, v := range []view{phone, narrow, desk} {
		t.Run(v.name, func(t *testing.T) {
			p, _ := bought(t, v)
			p.tap(".ticks .cost")
			p.settled()
			p.press("Add them")
			p.settled()
			p.shot("buy-" + v.name + "-open")
			wide := func(what string) {
				assert.LessOrEqual(t, eval[float64](p, "document.documentElement.scrollWidth"), float64(v.width), "%s is wider than the glass", what)
				if v.touch {
					assert.Empty(t, strings.Join(eval[[]string](p, small), "\n"), "%s: too small for a thumb", what)
				}
			}
			wide("the list")
			if v.name != narrow.name {
				p.accessible("an open line")
			}
			p.press("cuts")
			p.settled()
			p.press("Compare other lengths")
			p.until("document.querySelector('.others')")
			p.shot("cuts-" + v.name)
			wide("the cuts")
			if v.name == desk.name {
				p.accessible("cuts")
			}
			p.press("Load")
			p.settled()
			p.press("+ hang something")
			p.settled()
			p.press("How this was worked out")
			p.settled()
			p.shot("load-" + v.name + "-hung")
			wide("the load")
			if v.name != narrow.name {
				p.accessible("load opened")
			}
			p.noErrors()
		})
	}
}

// Ticks go with their plan: also those of a plan that is not stored yet, over
// every later save, and away with it.
func TestTicksAreKeptWithTheirPlan(t *testing.T) {
	p := open(t, bench(t), desk)
	said := inStore(p, `
		await store.tick('a', {x: 1});
		await store.save('a', doc('Room', 2));
		const first = (await fresh().open('a')).ticks;
		await store.tick('a', {x: 1, y: 3});
		await store.save('a', doc('Room', 3));
		const second = (await fresh().open('a')).ticks;
		await store.save('b', doc('Other', 1));
		const other = (await fresh().open('b')).ticks ?? null;
		await store.remove('a');
		await store.save('a', doc('Room', 1));
		return {first, second, other, gone: (await fresh().open('a')).ticks ?? null, states};`)
	assert.JSONEq(t, `{"first": {"x": 1}, "second": {"x": 1, "y": 3}, "other": null, "gone": null, "states": []}`, said)
	p.noErrors()
}
