package test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Every view, on a phone, a narrow phone and a desk: no violation of the
// accessibility rules in either theme, nothing wider than the glass, every
// control large enough for a thumb. Pictures of all go to .dist/shots.
func TestEveryView(t *testing.T) {
	demo := func(p *page) { p.press("See a room"); p.settled() }
	section := func(name string) func(p *page) {
		return func(p *page) { demo(p); p.press(name); p.settled() }
	}
	views := []struct {
		name string
		show func(p *page)
	}{
		{"first-minute", func(*page) {}},
		{"layers", demo},
		{"typing", func(p *page) {
			demo(p)
			p.tap(".row[data-id] .main")
			p.settled()
			p.tap(rowField)
			p.settled()
		}},
		{"more", func(p *page) { demo(p); p.tap(".row[data-id] .main"); p.settled(); p.press("More about"); p.settled() }},
		{"gap", func(p *page) { demo(p); p.tap(".gap .pair"); p.settled() }},
		{"pick", func(p *page) { demo(p); p.press("+ board"); p.settled() }},
		{"load", section("Load")},
		{"sound", section("Sound")},
		{"swap", section("Swap")},
		{"buy", section("Buy")},
		{"worked-out", func(p *page) { demo(p); p.tap(strip + " .cell.mass"); p.settled() }},
		{"send", func(p *page) { demo(p); p.press("Send"); p.settled() }},
		{"menu", func(p *page) { p.press("Menu"); p.settled() }},
		{"plans", func(p *page) { p.press("Menu"); p.settled(); p.press("Plans"); p.settled() }},
		{"about", func(p *page) { p.press("Menu"); p.settled(); p.press("About the numbers"); p.settled() }},
		{"size-and-name", func(p *page) { demo(p); p.tap(".title button"); p.settled() }},
		{"field-error", func(p *page) { p.write(tagField, "abc"); p.settled() }},
		{"bad-link", func(p *page) { eval[bool](p, "(location.hash = 'hello', true)"); p.settled() }},
	}
	server := deploy(t, "/")
	crowded := []string{"first-minute", "layers", "typing", "load", "sound", "swap", "buy", "worked-out"}
	for _, v := range []view{phone, narrow, desk} {
		for _, c := range views {
			if v.name == narrow.name && !slices.Contains(crowded, c.name) {
				continue
			}
			t.Run(v.name+"/"+c.name, func(t *testing.T) {
				p := open(t, server.address(), v)
				p.settled()
				c.show(p)
				p.stands(v, c.name)
			})
		}
	}
}

// small lists controls under 44 px of reach; words inside a sentence may be lower than they are wide apart.
const small = `[...document.querySelectorAll('button, select, input, summary, a[href]')]
	.filter((e) => e.checkVisibility({visibilityProperty: true}) && !e.closest('[inert]') && e.getClientRects().length && getComputedStyle(e).clipPath === 'none' && e.getBoundingClientRect().width > 1)
	.map((e) => [e, e.getBoundingClientRect(), parseFloat(getComputedStyle(e, '::after').height) || 0])
	.filter(([e, r, reach]) => Math.max(r.height, reach) < 43.5 && getComputedStyle(e).display !== 'inline')
	.map(([e, r]) => e.outerHTML.slice(0, 90) + ' ' + Math.round(r.width) + ' x ' + Math.round(r.height))`

// stands holds what every view must: pictures in both themes, nothing that axe
// objects to, nothing wider than the glass or too small for a thumb, no error.
func (p *page) stands(v view, name string) {
	p.t.Helper()
	p.theme("light")
	p.shot(v.name + "-" + name)
	if v.name != narrow.name {
		p.theme("dark")
		p.shot(v.name + "-" + name + "-dark")
		p.accessible(name)
	}
	assert.LessOrEqual(p.t, eval[float64](p, "document.documentElement.scrollWidth"), float64(v.width), "the page is wider than the glass")
	if v.touch {
		assert.Empty(p.t, strings.Join(eval[[]string](p, small), "\n"), "too small for a thumb")
	}
	p.noErrors()
}
