package core

// MoneyReport is what the next money does: single changes, best first by what
// they bring the worst space, and the best of them together within the budget.
type MoneyReport struct {
	Budget *Value         `json:"budget"` // nil: none typed
	Worst  string         `json:"worst"`  // the space that is worst off
	Rows   []ChangeReport `json:"rows"`
	Best   *Together      `json:"best,omitempty"` // nil without a budget, or where nothing within it helps
	Tried  int            `json:"tried"`          // combinations looked at
	Exact  bool           `json:"exact"`          // none was passed over that could be better
}

// ChangeReport is one change.
type ChangeReport struct {
	ID      string            `json:"id"`
	Code    string            `json:"code"`              // seal, secondDoor, solidDoor, pad, caulk, box, boxed, pane, fill, board, clips, frame, takeOff, cut
	Surface string            `json:"surface"`           // first that it changes
	Faces   []string          `json:"faces"`             // letters of all that it changes
	Opening string            `json:"opening,omitempty"` // id
	Kind    string            `json:"kind,omitempty"`    // of the opening
	Text    map[string]string `json:"text,omitempty"`    // board: its name, of a board to add
	Cost    *Value            `json:"cost"`              // nil while a price is missing
	Gain    float64           `json:"gain"`              // dB, A-weighted, in the worst space
	Bass    float64           `json:"bass"`              // dB, octaves 63 and 125, in the worst space
	All     float64           `json:"all"`               // dB, A-weighted, of all that gets out
	PerCost float64           `json:"perCost"`           // dB a hundred of the currency; 0 without a cost
	Mass    *Value            `json:"mass,omitempty"`    // added to a leaf
	Thick   *Value            `json:"thick,omitempty"`   // lost to the room
	Clip    *Value            `json:"clip,omitempty"`    // load of a clip over its rating, with it
	// Why says why it brings nothing: small (its way is no more than Args.share of
	// all), masked (By lets through Args.times more), full, done; over: the clips
	// would carry too much.
	Why  string             `json:"why,omitempty"`
	By   string             `json:"by,omitempty"`
	Args map[string]float64 `json:"args,omitempty"`
}

// Together are changes made at once.
type Together struct {
	IDs  []string `json:"ids"`
	Cost *Value   `json:"cost"`
	Gain float64  `json:"gain"`
	Bass float64  `json:"bass"`
}
