package plan

// Fault names what is wrong with a plan, where, and what would be allowed.
// Where is a path of ids: surface, buildUp, leaf, layer or gap, field.
type Fault struct {
	Code    string   `json:"code"` // empty, notNumber, ambiguous, unit, zero, negative, small, large, unknown, tooMany, missing …
	Surface string   `json:"surface,omitempty"`
	BuildUp string   `json:"buildUp,omitempty"`
	Leaf    int      `json:"leaf"` // −1 where it does not apply
	Layer   string   `json:"layer,omitempty"`
	Gap     string   `json:"gap,omitempty"`
	Board   string   `json:"board,omitempty"` // of a shelf row
	Item    string   `json:"item,omitempty"`  // an opening, a thing hung, or the name of a space
	Field   string   `json:"field"`
	Typed   string   `json:"typed,omitempty"`
	Low     string   `json:"low,omitempty"` // allowed, as a quantity text: "1/8 in"
	High    string   `json:"high,omitempty"`
	Mend    []string `json:"mend,omitempty"` // readings or repaired values to offer
	Words   string   `json:"words"`          // the same in words: "ceiling, leaf 2, layer 1: thickness is 0"
}

// Error returns the fault in words.
func (f *Fault) Error() string { return f.Words }
