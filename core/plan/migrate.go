package plan

// migration carries a document from one format to the next. It is pure: what it
// needs is in the document, and it never asks the clock or a table.
type migration struct {
	from  int    // the format it starts from; it gives from + 1
	title string // what changed
	says  string // what a user would notice, in a sentence
	carry func(doc map[string]any) map[string]any
}

// migrations are in order and without gaps, from the first format ever written
// to Format. The first is 1: there is nothing to carry yet.
var migrations = []migration{}

// migrate carries a document from a format to the newest by a list in order.
func migrate(doc map[string]any, from int, list []migration) map[string]any {
	for _, m := range list {
		if m.from == from {
			doc = m.carry(doc)
			from++
			doc["format"] = from
		}
	}
	return doc
}
