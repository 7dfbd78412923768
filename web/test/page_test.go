package test

// The places of the page that the tests know.
const (
	strip    = ".strip:not(.one)"       // the six figures
	tagField = ".lit-field input"       // what the tag says of the first board, on the first screen
	rowField = ".row.open .field input" // the same in the list
)

// typeWeight types the weight of a sheet of the first board.
func typeWeight(p *page, text string) {
	p.t.Helper()
	if eval[bool](p, "!!document.querySelector($0)", tagField) {
		p.write(tagField, text)
		return
	}
	if !eval[bool](p, "!!document.querySelector($0)", rowField) {
		p.tap(".row[data-id] .main")
		p.until("document.querySelector($0)", rowField)
	}
	p.write(rowField, text)
}

// takeUpdate takes the version that waits.
func takeUpdate(p *page) {
	p.t.Helper()
	p.until("document.body.innerText.includes('A newer version is here.')")
	p.press("Use it")
}

// undo takes the last step back: a word at the top of a desk, in the menu of a phone.
func undo(p *page) {
	p.t.Helper()
	if !p.view.touch {
		p.press("Undo")
		return
	}
	p.press("Menu")
	p.press("Undo")
	if eval[bool](p, "!!document.querySelector('.sheet')") {
		p.press("close")
	}
}
