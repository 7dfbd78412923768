package test

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ways are the ways out as they are ranked: letter, name, share.
func (p *page) ways() []string {
	p.t.Helper()
	return eval[[]string](p, `[...document.querySelectorAll('.ways tbody tr')].map((tr) => [...tr.cells].map((c) => c.innerText.trim()).filter(Boolean).join(' ').replace(/\s+/g, ' '))`)
}

// heardRoom shows a part of Heard of the example.
func (p *page) heardRoom(part string) {
	p.t.Helper()
	p.press("See a room")
	p.settled()
	p.press("Heard")
	p.until("document.querySelector('.stages') !== null")
	p.settled()
	p.press(part)
	p.settled()
}

// number returns the first number in a text, with a plain minus.
func number(t *testing.T, text string) float64 {
	t.Helper()
	found := regexp.MustCompile(`-?\d+(\.\d+)?`).FindString(strings.ReplaceAll(text, "−", "-"))
	v, err := strconv.ParseFloat(found, 64)
	require.NoError(t, err, "no number in %q", text)
	return v
}

// A room of one's own begins with the wall that is there: six faces, its sizes asked first, undone at once.
func TestRoomOfOnesOwn(t *testing.T) {
	p := open(t, deploy(t, "/").address(), phone)
	p.settled()
	typeWeight(p, "58")
	p.settled()
	p.press("Plan a room")
	p.until("document.querySelectorAll('.face-row').length === 6")
	p.settled()
	height := eval[float64](p, "document.querySelector('.unfolded').getBoundingClientRect().bottom")
	assert.Less(t, height, eval[float64](p, "document.querySelector('[aria-label=\"Room, length\"]').getBoundingClientRect().top"), "the sizes stand under the drawing")
	assert.Less(t, eval[float64](p, "document.querySelector('[aria-label=\"Room, length\"]').getBoundingClientRect().top"), eval[float64](p, "document.querySelector('.face-row').getBoundingClientRect().top"), "and over the list")
	assert.Equal(t, "8 ft", eval[string](p, "(f => f.placeholder + ' ' + f.nextElementSibling.innerText)(document.querySelector('[aria-label=\"Room, height\"]'))"))
	assert.NotContains(t, p.words(".heard"), "lone weak face", "walls that are alike are not told apart")
	p.write("[aria-label='Room, length']", "170")
	p.keys(kb.Enter)
	p.settled()
	assert.Contains(t, p.words(".heard"), "13 ft 8 in", "finished inside")
	p.press("who hears")
	p.settled()
	assert.Regexp(t, `^No\. The kick drum is felt in the bedroom`, p.words(".verdict[data-section=heard]"))
	undo(p)
	p.settled()
	undo(p)
	p.until("document.querySelectorAll('.stages button').length === 3")
	p.press("Make it a room of six faces")
	p.until("document.querySelectorAll('.face-row').length === 6")
	p.noErrors()
}

// The drummer: who hears the kick, by which way, what to do about it.
func TestDrummerStory(t *testing.T) {
	for _, v := range []view{phone, desk} {
		t.Run(v.name, func(t *testing.T) {
			p := open(t, deploy(t, "/").address(), v)
			p.settled()

			// The kick drum is felt in the bedroom upstairs.
			p.heardRoom("who hears")
			p.press("bedroom")
			p.settled()
			said := p.words(".verdict[data-section=heard]")
			assert.Regexp(t, `^No\. The kick drum is felt in the bedroom, \d+ dB over at 63 Hz\.`, said)
			assert.Contains(t, p.words(".heard"), "the pedal through the floor is not counted")
			assert.Regexp(t, `\d+ dBA ±\d+ \d+ dBC ±\d+`, p.words(".weighted"), "both levels with their spread")
			assert.Contains(t, eval[string](p, "document.querySelector('.levels').getAttribute('aria-label')"), "63\u00a0Hz")
			hall := number(t, p.words(".hears"))
			p.shot("drummer-" + v.name + "-1-heard")

			// The door is the weak path.
			p.press("room")
			p.settled()
			assert.Regexp(t, `(?i)door.* is the weak path\.`, p.words(".weak"))
			p.tap(".face-row") // the largest share stands first
			p.settled()
			assert.Contains(t, p.words(".face-row.here"), "Wall to hall")
			p.shot("drummer-" + v.name + "-2-room")

			p.press("ways out")
			p.until("document.querySelectorAll('.change[data-change]').length > 2")
			p.settled()
			before := p.ways()
			t.Log(before)
			require.Regexp(t, `^A Door leaf`, before[0])
			require.True(t, strings.Contains(strings.Join(before, "\n"), "Crack under door"))
			p.shot("drummer-" + v.name + "-3-ways")

			// It is sealed with one tap: the ranking changes, the hall is quieter.
			p.press("Seal it")
			p.until("![...document.querySelectorAll('.ways tbody tr')].some((tr) => tr.innerText.includes('Crack under door'))")
			p.settled()
			after := p.ways()
			t.Log(after)
			assert.NotEqual(t, before, after)
			assert.Greater(t, len(after), 2, "what the door masked comes forward")
			p.press("who hears")
			p.settled()
			assert.Less(t, number(t, eval[string](p, "[...document.querySelectorAll('.hears')].find((b) => b.innerText.includes('hall')).innerText")), hall)
			p.press("ways out")
			p.until("document.querySelectorAll('.change[data-change]').length > 2")

			// Undone, as if nothing had been.
			p.press("Undo")
			p.until("[...document.querySelectorAll('.ways tbody tr')].some((tr) => tr.innerText.includes('Crack under door'))")
			p.settled()
			assert.Equal(t, before, p.ways())

			// What the budget buys best: two taps, and undone again.
			p.until("document.querySelector('.change.best .name') !== null")
			p.settled()
			taps := p.taps
			p.tap(".change.best .name")
			p.settled()
			p.tap(".change.best .solid")
			assert.Equal(t, 2, p.taps-taps)
			p.until("JSON.stringify([...document.querySelectorAll('.ways tbody tr')].map((r) => r.innerText)) !== $0 && !document.querySelector('.change.best .solid')", "")
			p.until("![...document.querySelectorAll('.ways tbody tr')].some((tr) => tr.innerText.includes('Crack under door'))")
			p.settled()
			assert.NotEqual(t, before, p.ways())
			p.shot("drummer-" + v.name + "-4-budget")
			p.press("Undo")
			p.until("[...document.querySelectorAll('.ways tbody tr')].some((tr) => tr.innerText.includes('Crack under door'))")
			p.settled()
			assert.Equal(t, before, p.ways())
			p.noErrors()
		})
	}
}

// What was adopted cannot be adopted again: from the tap until the next rows are
// there the old ones stand as they are, marked and of no effect, by finger and by key.
func TestAdoptedRowsWait(t *testing.T) {
	for _, v := range []view{phone, desk} {
		t.Run(v.name, func(t *testing.T) {
			p := open(t, deploy(t, "/").address(), v)
			p.settled()
			p.heardRoom("ways out")
			p.until("document.querySelectorAll('.change[data-change]').length > 2")
			p.settled()
			before := p.ways()
			p.tap(".change[data-change^='board '] .name")
			p.until("document.querySelector('.change.open .solid') !== null")

			// What the page asks its core is held back, and counted, until it is let go.
			eval[bool](p, `(() => {
				const post = Worker.prototype.postMessage;
				const gate = globalThis.gate = {changes: 0, hold: true, held: [], open() { this.hold = false; this.held.splice(0).forEach((go) => go()); }};
				Worker.prototype.postMessage = function (message) {
					const change = message.method === 'change';
					if (change) gate.changes++;
					if (gate.hold && (change || message.args.includes('"money":true'))) gate.held.push(() => post.call(this, message));
					else post.call(this, message);
				};
				return true;
			})()`)
			const state = `JSON.stringify([...document.querySelectorAll('.changes, .change')].map((e) => [e.offsetHeight, e.innerText]))`
			rows := eval[string](p, state)
			const solid = ".change.open .solid"
			again := func(when string) {
				t.Helper()
				assert.Equal(t, "true", eval[string](p, "document.querySelector('.changes').ariaBusy"), when)
				assert.Zero(t, eval[int](p, "document.querySelectorAll(':is(.changes, .best) button:not([aria-disabled=true])').length"), when)
				assert.Equal(t, rows, eval[string](p, state), "%s: the rows stay, and their heights", when)
				assert.True(t, eval[bool](p, "document.activeElement.matches($0)", solid), "%s: the focus stays", when)
				p.tap(".change[data-change]:not(.open) .name")
				p.tap(".verdict[data-section=heard] .tap")
				p.tap(solid)
				p.keys(kb.Enter)
				eval[bool](p, "new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))")
				assert.Equal(t, 1, eval[int](p, "gate.changes"), when)
				assert.Equal(t, rows, eval[string](p, state), when)
			}
			p.tap(solid)
			p.until("document.querySelector('.changes').ariaBusy === 'true'")
			again("before the plan has changed")

			// The plan changes; what the next money does there is held back.
			eval[bool](p, "(gate.open(), gate.hold = true)")
			p.until("gate.held.length > 0 && [...document.querySelectorAll('button')].some((b) => b.innerText === 'Undo')")
			again("after it")
			p.shot("adopted-" + v.name)
			p.accessible("rows that wait")

			eval[bool](p, "(gate.open(), true)")
			p.until("document.querySelector('.changes').ariaBusy === 'false'")
			p.settled()
			assert.Equal(t, 1, eval[int](p, "gate.changes"), "nor was anything asked for later")
			assert.NotEqual(t, rows, eval[string](p, state))
			assert.Zero(t, eval[int](p, "document.querySelectorAll('main [aria-disabled=true], .change.open').length"))
			assert.True(t, eval[bool](p, "document.activeElement.matches('.change .name')"), "the keyboard stays among the rows")
			p.press("Undo")
			p.settled()
			assert.Equal(t, before, p.ways(), "it was one step")
			p.noErrors()
		})
	}
}

// doorOf shows the door of wall A in Layers.
func (p *page) doorOf() {
	p.t.Helper()
	p.heardRoom("room")
	p.tap(".face-row")
	p.settled()
	p.press("Openings")
	p.until("document.querySelector('.crack-words')?.innerText.includes('costs wall A')")
	p.settled()
}

// A wider crack under the door costs more, live, by the keyboard too; nothing below it moves.
func TestCrackSlider(t *testing.T) {
	for _, v := range []view{phone, desk} {
		t.Run(v.name, func(t *testing.T) {
			p := open(t, deploy(t, "/").address(), v)
			p.settled()
			p.doorOf()
			assert.Regexp(t, `STC \d+ wall, \d+ with its holes`, p.words(".openings .verdict"))
			const slider = ".crack input[type=range]"
			spot := eval[spot](p, look+"([...document.querySelectorAll($0)])", slider)
			assert.GreaterOrEqual(t, spot.Height, 44.0, "a thumb's reach")
			cost := func() float64 { return number(t, strings.TrimPrefix(p.words(".crack-words b"), "costs wall A")) }
			first, below := cost(), eval[float64](p, "document.querySelector('.crack + *').getBoundingClientRect().top")
			holed := p.words(".openings .verdict")
			eval[bool](p, "(document.querySelector($0).focus({preventScroll: true}), true)", slider)
			last := first
			for range 4 {
				p.keys(kb.ArrowRight)
				p.settled()
				assert.GreaterOrEqual(t, cost(), last)
				last = cost()
			}
			assert.Greater(t, last, first)
			assert.Equal(t, below, eval[float64](p, "document.querySelector('.crack + *').getBoundingClientRect().top"), "what is below stays where it is")
			assert.Contains(t, eval[string](p, "document.querySelector($0).getAttribute('aria-valuetext')", slider), "costs wall A")
			assert.NotEqual(t, holed, p.words(".openings .verdict"), "the wall with its holes follows")
			p.shot("crack-" + v.name)

			// Closed, it costs nothing.
			p.keys(kb.Home)
			p.settled()
			assert.Zero(t, cost())
			p.noErrors()
		})
	}
}

// A door larger than its wall is said at its field; the rest keeps computing.
func TestDoorLargerThanItsWall(t *testing.T) {
	p := open(t, deploy(t, "/").address(), phone)
	p.settled()
	p.doorOf()
	const width = "input[id^='f-opening.'][id$='.width']"
	good := p.words(".openings .verdict")
	for _, text := range []string{"abc", "-3"} {
		p.write(width, text+"\r")
		p.until("document.querySelector('.opening-form .fault')?.innerText.length > 10")
		p.settled()
		said := p.words(".opening-form .fault")
		t.Log(text, "→", said)
		assert.NotContains(t, said, "undefined")
		assert.Equal(t, text, eval[string](p, "document.querySelector($0).value", width), "what was typed stays")
		assert.Equal(t, good, p.words(".openings .verdict"), "and so do the figures")
	}
	p.write(width, "29 ft\r")
	p.until("document.querySelector('.opening-form .fault')?.innerText.includes('surface has')")
	t.Log(p.words(".opening-form .fault"))
	assert.Equal(t, "true", eval[string](p, "document.querySelector($0).getAttribute('aria-invalid')", width), "it is said at its field")
	p.press("Heard")
	p.settled()
	assert.Contains(t, p.words(".room-faults"), "solid door")
	assert.NotEmpty(t, p.words(".verdict[data-section=heard]"))
	p.press("who hears")
	p.settled()
	assert.Contains(t, p.words(".listeners"), "bedroom", "the rest keeps computing")
	p.press("room")
	p.settled()
	p.press("Show it")
	p.settled()
	assert.Contains(t, p.words(".opening-form .fault"), "surface has")
	p.noErrors()
}

// An opening of every group can be added, its cost told, and taken out again.
func TestAddOpenings(t *testing.T) {
	p := open(t, deploy(t, "/").address(), phone)
	p.settled()
	p.doorOf()
	for _, name := range []string{"sealed double pane", "duct", "boxes back to back", "recessed light", "pipe", "crack along the edge", "hole"} {
		p.press("+ opening")
		p.settled()
		p.press(name)
		p.settled()
		p.until("document.querySelectorAll('.opening-form .costs').length === 1 && /dB/.test(document.querySelector('.opening-form .costs').innerText)")
	}
	count := eval[int](p, "document.querySelectorAll('.opening-list > li').length")
	assert.Equal(t, 9, count)
	assert.LessOrEqual(t, eval[float64](p, "document.documentElement.scrollWidth"), 390.0)
	p.accessible("every opening")
	p.press("Remove this hole")
	p.settled()
	assert.Equal(t, count-1, eval[int](p, "document.querySelectorAll('.opening-list > li').length"))
	p.noErrors()
}

// Every view of the whole room, on all sizes of glass, in both themes.
func TestEveryViewOfTheRoom(t *testing.T) {
	part := func(name string) func(p *page) {
		return func(p *page) { p.heardRoom(name) }
	}
	unfold := func(name string, taps ...string) func(p *page) {
		return func(p *page) {
			p.heardRoom(name)
			for _, words := range taps {
				p.press(words)
				p.settled()
			}
		}
	}
	views := []struct {
		name string
		show func(p *page)
	}{
		{"room", part("room")},
		{"room-change", unfold("room", "Change")},
		{"who-hears", part("who hears")},
		{"who-sources", unfold("who hears", "What plays")},
		{"who-table", unfold("who hears", "The same as a table")},
		{"who-space", unfold("who hears", "bedroom", "About the bedroom")},
		{"who-measured", unfold("who hears", "bedroom", "What did you measure?", "octaves")},
		{"house-in", unfold("who hears", "house into the room", "What the house does")},
		{"ways", func(p *page) {
			p.heardRoom("ways out")
			p.until("document.querySelectorAll('.change[data-change]').length > 2")
			p.tap(".change[data-change] .name")
			p.settled()
		}},
		{"air", part("air")},
		{"openings", func(p *page) { p.doorOf() }},
		{"openings-add", func(p *page) { p.doorOf(); p.press("+ opening"); p.settled() }},
	}
	server := deploy(t, "/")
	crowded := []string{"room", "house-in", "ways"}
	for _, v := range []view{phone, narrow, desk} {
		for _, c := range views {
			if v.name != phone.name && !slices.Contains(crowded, c.name) {
				continue
			}
			t.Run(v.name+"/"+c.name, func(t *testing.T) {
				p := open(t, server.address(), v)
				p.settled()
				c.show(p)
				assert.NotRegexp(t, `undefined|NaN|\[object`, p.words("main"))
				p.stands(v, "heard-"+c.name)
			})
		}
	}
}

// A reading from both rooms is set against the prediction, and narrows or widens it.
func TestMeasured(t *testing.T) {
	p := open(t, deploy(t, "/").address(), phone)
	p.settled()
	p.heardRoom("who hears")
	p.press("bedroom")
	p.press("What did you measure?")
	p.press("after")
	p.settled()
	p.write("input[id^='f-measured.'][id$='.inA']", "100\r")
	p.settled()
	p.write("input[id^='f-measured.'][id$='.outA']", "70\r")
	p.until("document.querySelector('.fit b') !== null && !document.querySelector('.fit').innerText.includes('Type what')")
	p.settled()
	said := p.words(".fit")
	t.Log(said)
	assert.Regexp(t, `It stops [\d.]+ dB less than predicted\.`, said)
	assert.Regexp(t, `±\d+ dB from here on, ±\d+ before`, said)
	p.noErrors()
}

// A plan of one wall hears in the one space beyond it.
func TestOneWallHeard(t *testing.T) {
	p := open(t, deploy(t, "/").address(), phone)
	p.settled()
	p.press("Check one wall")
	p.settled()
	p.press("Heard")
	p.until("document.querySelector('.levels') !== null")
	p.settled()
	assert.Contains(t, p.words(".listeners"), "bedroom")
	assert.Zero(t, eval[int](p, "document.querySelectorAll('.unfolded').length"))
	p.noErrors()
}

// The room's own size, its walls split, named and taken out; every step undone.
func TestRoomIsEdited(t *testing.T) {
	p := open(t, deploy(t, "/").address(), phone)
	p.settled()
	p.heardRoom("room")
	faces := func() int { return eval[int](p, "document.querySelectorAll('.faces-list > li').length") }
	require.Equal(t, 6, faces())
	drawn := func() string {
		return strings.ReplaceAll(eval[string](p, "(([d]) => d.getAttribute('aria-label') + [...d.querySelectorAll('text')].map((e) => e.textContent).filter((e) => /′/.test(e)).join())(document.querySelectorAll('.unfolded'))"), "\u00a0", " ")
	}
	before := drawn()
	require.Contains(t, before, "13′ 4″")

	p.write("[id='f-room.length']", "200\r")
	p.until("document.querySelector('.unfolded').textContent.includes('16′')")
	assert.Contains(t, drawn(), "16′ 8″")

	p.tap(".face-row")
	p.settled()
	p.press("Change")
	p.settled()
	p.press("Split this wall")
	p.until("document.querySelectorAll('.faces-list > li').length === 7")
	p.settled()
	assert.Contains(t, p.words(".faces-list"), "G")
	p.shot("room-split")
	assert.NotRegexp(t, `undefined|NaN`, p.words("main"))

	p.press("Remove wall")
	p.until("document.querySelectorAll('.faces-list > li').length === 6")
	for range 3 {
		eval[bool](p, "(document.activeElement?.blur(), document.dispatchEvent(new KeyboardEvent('keydown', {key: 'z', ctrlKey: true})))")
		p.settled()
	}
	assert.Equal(t, before, drawn(), "as it was")

	// A room of no height, and one that is no number, are said at their field.
	for text, said := range map[string]string{"0": "0", "abc": "abc", "5000 ft": "Allowed"} {
		p.write("[id='f-room.height']", text+"\r")
		p.until("[...document.querySelectorAll('.heard .fault')].some((f) => f.innerText.includes($0))", said)
		assert.NotEmpty(t, p.words(".verdict[data-section=heard]"))
	}
	p.noErrors()
}
