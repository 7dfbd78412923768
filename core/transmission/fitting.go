package transmission

// NewTablesWith returns empty tables for other constants than the defaults:
// for fits, and for the spread that an uncertain constant brings. With them
// Options.Constants is left nil.
func NewTablesWith(c Constants) *Tables { return newTables(c) }
