package test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// figures are the strip's cells as they are read out, with their units and differences.
func (p *page) figures() []string {
	p.t.Helper()
	return eval[[]string](p, `[...document.querySelectorAll($0 + ' .cell')].map((cell) => {
		const copy = cell.cloneNode(true);
		for (const e of copy.querySelectorAll('[role=img][aria-label]')) e.replaceWith(e.getAttribute('aria-label'));
		return (cell.getAttribute('aria-label') ?? copy.textContent).replace(/\s+/g, ' ').trim();
	})`, strip)
}

// The yard: somebody before a pallet, with one thumb.
func TestYardStory(t *testing.T) {
	for _, v := range []view{phone, desk} {
		t.Run(v.name, func(t *testing.T) {
			server := deploy(t, "/")
			p := open(t, server.address(), v)
			p.settled()
			require.Len(t, p.figures(), 6)
			first := p.figures()
			p.shot("story-" + v.name + "-1-open")

			// What the tag says: one number, and the verdict answers.
			typeWeight(p, "58")
			p.until("document.querySelector('.verdict b')?.innerText.length > 0")
			p.settled()
			assert.LessOrEqual(t, p.taps, 8, "taps from open to verdict")
			measured(t, "%s: %d taps and one number from open to verdict: %s", v.name, p.taps, p.words(".verdict"))
			answer := p.words(".verdict b")
			assert.True(t, strings.HasPrefix(answer, "Yes") || strings.HasPrefix(answer, "No"), "the verdict begins with an answer: %q", answer)
			assert.NotEqual(t, first, p.figures(), "the strip moves with the tag")
			p.shot("story-" + v.name + "-2-verdict")

			// Another board, found by a part of its name; the difference is in the strip.
			p.press("Check one wall")
			p.settled()
			before := p.figures()
			p.press("+ board")
			p.write("input.search", "ply")
			p.until("document.querySelectorAll('.found .board').length > 0 && [...document.querySelectorAll('.found .board')].every((b) => /ply/i.test(b.innerText))")
			p.tap(".found .board")
			p.settled()
			added := p.figures()
			require.Len(t, added, 6)
			assert.NotEqual(t, before, added)
			assert.Regexp(t, `\+[\d\s\x{202f}.]`, added[0], "the leaf is heavier than the reference, with a sign")
			p.shot("story-" + v.name + "-3-added")

			// Sent as a link, opened in a profile that has never seen the page: the same, to the digit.
			p.press("Send")
			p.until("document.querySelector('input.link')?.value.includes('#')")
			link := eval[string](p, "document.querySelector('input.link').value")
			measured(t, "%s: the link has %d characters", v.name, len(link)-strings.Index(link, "#")-1)
			p.shot("story-" + v.name + "-4-send")
			p.press("close")
			p.settled()
			verdict := p.words(".verdict")

			other := open(t, link, v)
			other.until("document.querySelectorAll($0 + ' .cell').length === 6", strip)
			other.settled()
			assert.Equal(t, added, other.figures(), "the link gives the same figures")
			assert.Equal(t, verdict, other.words(".verdict"))
			other.noErrors()

			// No signal: the server is gone; a reload brings the plan back, it can be changed, and the change undone.
			p.kept()
			server.stop()
			p.reload()
			p.settled()
			assert.Equal(t, added, p.figures(), "a reload with no signal")
			typeWeight(p, "70")
			p.settled()
			changed := p.figures()
			assert.NotEqual(t, added, changed, "an edit with no signal")
			p.shot("story-" + v.name + "-5-offline")
			undo(p)
			p.settled()
			assert.Equal(t, added, p.figures(), "undone")
			p.noErrors()
		})
	}
}

// A plan keeps what was typed as it was typed, over a reload.
func TestTypedStaysAsTyped(t *testing.T) {
	p := open(t, deploy(t, "/").address(), phone)
	p.settled()
	typeWeight(p, "58 1/2")
	p.settled()
	p.reload()
	p.settled()
	assert.Contains(t, eval[string](p, "[...document.querySelectorAll('input')].map((i) => i.value).join('|') + document.body.innerText"), "58")
}

// linkOf returns the link of an example, "first" or "demo", with something changed.
func linkOf(t *testing.T, which string, change func(plan map[string]any)) string {
	t.Helper()
	var made struct{ Plan map[string]any }
	require.NoError(t, json.Unmarshal([]byte(native(t, []question{{"new", `{"region":"US","which":"` + which + `"}`}})[0]), &made))
	change(made.Plan)
	args, err := json.Marshal(map[string]any{"plan": made.Plan})
	require.NoError(t, err)
	var sent struct {
		OK   bool
		Link string
	}
	reply := native(t, []question{{"encode", string(args)}})[0]
	require.NoError(t, json.Unmarshal([]byte(reply), &sent))
	require.True(t, sent.OK, "%s", reply)
	return sent.Link
}

// Markup in a name is a name.
func TestMarkupInANameIsAName(t *testing.T) {
	const name = `<img src=x onerror="window.broken=1"><script>window.broken=1</script>`
	link := linkOf(t, "first", func(plan map[string]any) { plan["name"] = name })
	p := open(t, deploy(t, "/").address()+"#"+link, phone)
	p.settled()
	assert.Equal(t, name, strings.TrimSpace(eval[string](p, "document.querySelector('.title .name').textContent")))
	for _, section := range []string{"Layers", "Load", "Sound", "Swap", "Buy"} {
		p.press(section)
		p.settled()
	}
	p.press("Send")
	p.settled()
	assert.False(t, eval[bool](p, "'broken' in globalThis"), "the name was executed")
	assert.Zero(t, eval[int](p, "document.querySelectorAll('img, #app script').length"))
	p.noErrors()
}

// A link that cannot be read says which part, and the plan that was open stays.
func TestBadLinks(t *testing.T) {
	good := linkOf(t, "first", func(map[string]any) {})
	// One figure of it is another one.
	at := strings.LastIndexAny(good[:len(good)/2], "12345678")
	altered := good[:at] + string(good[at]+1) + good[at+1:]
	for _, c := range []struct{ name, link, said string }{
		{"cut short", good[:len(good)*2/3], "cut short"},
		{"altered", altered, "altered"},
		{"nonsense", "hello", "cannot be read"},
		{"markup", "<script>window.broken=1</script>", "cannot be read"},
		{"a megabyte", strings.Repeat("a1.", 350_000), "cannot be read"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := open(t, deploy(t, "/").address(), phone)
			p.settled()
			typeWeight(p, "61")
			p.settled()
			before := p.figures()
			eval[bool](p, "(location.hash = $0, true)", c.link)
			p.until("document.querySelector('.note')?.innerText.length > 20")
			p.settled()
			said := p.words(".note")
			t.Log(said)
			assert.Contains(t, said, c.said)
			assert.NotContains(t, said, "undefined")
			assert.Equal(t, before, p.figures(), "the plan that was open stays")
			p.noErrors()
		})
	}
}

// A number typed in a hurry, with the field left at once, is not lost.
func TestFastTypingIsKept(t *testing.T) {
	p := open(t, deploy(t, "/").address(), phone)
	p.settled()
	for _, text := range []string{"58", "61.5", "70"} {
		p.write(tagField, text+"\r")
		p.settled()
		assert.Equal(t, text, eval[string](p, "document.querySelector($0).value", tagField))
		assert.NotContains(t, p.words(".lit-field"), "typical", "%s was not taken", text)
	}
}

// What cannot be a weight is told at the field, with what would be allowed; the
// last good figures stay, and so does what was typed.
func TestBadInput(t *testing.T) {
	p := open(t, deploy(t, "/").address(), phone)
	p.settled()
	typeWeight(p, "61\r")
	p.settled()
	good := p.figures()
	for _, text := range []string{"0", "-5", "abc", "1,200", "99999999", "1e400", "NaN", "<b>7</b>", "5 m", "61 lb 61 lb", strings.Repeat("9", 80)} {
		p.paste(tagField, text)
		p.until("document.querySelector('.fault')?.innerText.length > 10")
		p.settled()
		t.Logf("%.20s → %s", text, p.words(".fault"))
		assert.NotContains(t, p.words(".fault"), "undefined", "%s", text)
		assert.Equal(t, text, eval[string](p, "document.querySelector($0).value", tagField), "what was typed stays")
		assert.Equal(t, good, p.figures(), "the last good figures stay for %s", text)
	}
	p.write(tagField, "61")
	p.settled()
	assert.Equal(t, good, p.figures())
	assert.Empty(t, p.words(".fault"))
	p.noErrors()
}
