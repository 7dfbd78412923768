package test

// The places of the page that the tests know.
const (
	strip    = "#strip" // the six figures
	tagField = "#tag"   // what the tag says of the first board
)

// typeWeight types the weight of a sheet where the page asks for it.
func typeWeight(p *page, text string) {
	p.t.Helper()
	p.write(tagField, text)
}

// takeUpdate takes the version that waits.
func takeUpdate(p *page) {
	p.t.Helper()
	p.until("[...document.querySelectorAll('button')].some((b) => b.checkVisibility() && b.innerText.includes('new version'))")
	p.press("new version")
}
