package material

import (
	_ "embed"
	"strconv"
	"sync"

	"twoleaf/core/unit"
)

//go:embed demo_prices.csv
var pricesCSV string

// Per says what a demo price buys.
type Per string

// What a price buys.
const (
	PerSheet Per = "sheet" // one sheet of the first size as sold
	PerM2    Per = "m2"    // one square metre
	Each     Per = "each"  // one piece, a clip
	PerPiece Per = "piece" // one length of channel, see ChannelPiece
)

// The rows of the demo list that are no board, fill or fixing.
const (
	HatChannel  = "hat_channel" // the channel that goes with a clip
	DampingFilm = "film"
	BoardGlue   = "glue"
)

// DemoPrice is a price invented for the demonstration, in the region's currency.
type DemoPrice struct {
	Amount unit.Money
	Per    Per
}

// Rate returns the price per area, 0 for pieces; sheet is the area of one sheet.
func (p DemoPrice) Rate(sheet unit.Area) unit.MoneyRate {
	switch {
	case p.Per == PerM2:
		return unit.MoneyRate(p.Amount)
	case p.Per == PerSheet && sheet > 0:
		return unit.MoneyRate(float64(p.Amount) / float64(sheet))
	}
	return 0
}

// ChannelPiece returns the length in which channel is sold: 12 ft in the US and
// Canada, 3.6 m elsewhere (common practice).
func ChannelPiece(region string) unit.Length {
	if TableRegion(region) == NorthAmerica {
		return 12 * unit.Foot
	}
	return 3.6 * unit.Metre
}

// Currency returns the unit in which money is typed and shown in a plan's region.
func Currency(region string) unit.Unit {
	switch region {
	case "UK":
		return unit.GBP
	case "EU":
		return unit.EUR
	}
	return unit.USD // the dollar sign of the US, Canada and Australia
}

var prices = sync.OnceValue(func() map[string]DemoPrice {
	out := map[string]DemoPrice{}
	for _, r := range records(pricesCSV) {
		for _, region := range []string{"US", "CA", "UK", "EU", "AU"} {
			if r[region] == "" {
				continue
			}
			v, err := strconv.ParseFloat(r[region], 64)
			if err != nil {
				panic("material: price of " + r["id"])
			}
			out[region+" "+r["id"]] = DemoPrice{Amount: unit.Money(v), Per: Per(r["per"])}
		}
	}
	return out
})

// Demo returns the invented price of a board, fill, fixing or one of HatChannel,
// DampingFilm, BoardGlue in a plan's region; false where the list has none.
func Demo(id, region string) (DemoPrice, bool) {
	p, ok := prices()[region+" "+id]
	return p, ok
}
