package test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// rated is the rating of the strip.
func (p *page) rated() float64 {
	p.t.Helper()
	for _, f := range p.figures() {
		if _, rating, ok := strings.Cut(f, "rating: STC"); ok {
			return number(p.t, rating)
		}
	}
	p.t.Fatal("no rating in the strip: ", p.figures())
	return 0
}

// Screws at 6 in cost the wall 2 (NBC2020, notes to Table 9.10.3.1.-A), are said
// with what would bring it back, and cost nothing once the field is empty again.
func TestCloseScrews(t *testing.T) {
	const screws = ".gap.open .held input[aria-label='distance between screws']"
	for _, v := range []view{phone, narrow} {
		t.Run(v.name, func(t *testing.T) {
			p := open(t, deploy(t, "/").address(), v)
			p.settled()
			p.press("Check one wall")
			p.settled()
			usual, figures := p.rated(), p.figures()
			p.tap(".gap .pair")
			p.until("document.querySelector($0)", screws)
			p.settled()
			assert.Equal(t, "12 in", eval[string](p, "(f => f.placeholder + ' ' + f.nextElementSibling.innerText)(document.querySelector($0))", screws))

			p.write(screws, "6 in\r")
			p.settled()
			assert.Equal(t, usual-2, p.rated())
			p.stands(v, "screws-close")

			p.tap(strip + " .cell.rating")
			p.settled()
			worked := p.words(".sheet")
			assert.Regexp(t, `close screws\s+−2.dB`, worked)
			assert.Contains(t, worked, "National Building Code of Canada 2020, notes to Table 9.10.3.1.-A")
			p.stands(v, "screws-worked")
			p.press("close")
			p.settled()

			p.press("Sound")
			p.settled()
			said := p.words("main")
			assert.Regexp(t, `Screws 6.in apart tie the boards to the studs\. At the usual spacing: (1 dB in the bass and )?2 in STC more\.`, said)
			p.stands(v, "screws-sound")
			p.press("Layers")
			p.until("document.querySelector($0)", screws)
			p.write(screws, "12\r")
			p.settled()
			assert.Equal(t, figures, p.figures(), "12 in is as usual")
			p.write(screws, "1\r")
			p.until("document.querySelector('.fault')?.innerText.length > 10")
			assert.Contains(t, p.words(".fault"), "2 to 39")
			assert.Equal(t, figures, p.figures(), "the last good figures stay")
			p.write(screws, "")
			p.settled()
			assert.Equal(t, figures, p.figures(), "cleared")

			// Closer than 12 in but not than 8 in: 1; one tap mends it.
			p.write(screws, "8 in\r")
			p.settled()
			require.Equal(t, usual-1, p.rated())
			p.press("Sound")
			p.settled()
			p.press("Space them as usual")
			p.settled()
			assert.Equal(t, figures, p.figures(), "mended")
			p.noErrors()
		})
	}
}
