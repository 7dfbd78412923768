package room

// Code names what is wrong with the data of a room.
type Code string

// The codes.
const (
	Zero            Code = "zero"            // a size or volume is 0
	Negative        Code = "negative"        // or under 0
	NotNumber       Code = "notNumber"       // or no number
	TooLarge        Code = "large"           // over Limit
	TooSmall        Code = "small"           // under Limit
	Unknown         Code = "unknown"         // no such kind, seal, flank, source, listener or space
	LargerThanWall  Code = "largerThanWall"  // an opening does not fit its face; Value and Limit in m² or m
	Overfull        Code = "overfull"        // the openings together are larger than their face, m²
	Overlap         Code = "overlap"         // two openings lie over each other; Other is the second
	Lacking         Code = "gaps"            // a spectrum lacks octaves; Value is the first that is missing, Hz
	BelowBackground Code = "belowBackground" // a target under the background, dB
)

// Fault says what is wrong, where and with which number. What it is about is
// left out; the rest is computed.
type Fault struct {
	Code                    Code
	Surface, Opening, Space string // ids
	Other                   string // id of a second opening
	Field                   string // of Room, Surface, Opening, Space or Use, as written there
	Typed                   string // an id that is unknown
	Value, Limit            float64
}

// Error returns the code and the field.
func (f Fault) Error() string { return string(f.Code) + " " + f.Field }
