package material

import (
	_ "embed"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"

	"twoleaf/core/internal/text"
	"twoleaf/core/unit"
)

//go:embed boards.csv
var boardsCSV string

//go:embed sound.csv
var soundCSV string

//go:embed fills.csv
var fillsCSV string

//go:embed frames.csv
var framesCSV string

//go:embed fixings.csv
var fixingsCSV string

// table is rows that are read once from embedded text and never change.
type table[T any] struct {
	index
	rows []T
}

// index says which row has an id or a code.
type index struct{ byID, byCode map[string]int }

func newTable[T any](text string, read func(row) T) table[T] {
	all, x := indexed(text)
	t := table[T]{x, make([]T, len(all))}
	for i, r := range all {
		t.rows[i] = read(r)
	}
	return t
}

func indexed(text string) ([]row, index) {
	all := records(text)
	x := index{map[string]int{}, map[string]int{}}
	for i, r := range all {
		id, code := r["id"], r["code"]
		if _, twice := x.byID[id]; twice {
			panic("material: id twice: " + id)
		}
		if _, twice := x.byCode[code]; twice && code != "" {
			panic("material: code twice: " + code)
		}
		x.byID[id], x.byCode[code] = i, i
	}
	return all, x
}

func (t table[T]) find(index map[string]int, key string) (v T, ok bool) {
	if i, found := index[key]; found && key != "" {
		return t.rows[i], true
	}
	return v, false
}

// row is one record of an embedded table by column name. A text that cannot be
// read is a mistake in the table, not in anything a user does: it panics, and a
// test reads every table.
type row map[string]string

func records(table string) []row {
	all, err := text.Records(table)
	if err != nil {
		panic("material: " + err.Error())
	}
	out := make([]row, 0, len(all))
	for _, rec := range all[1:] {
		if len(rec) != len(all[0]) {
			panic("material: fields are missing: " + strings.Join(rec, ","))
		}
		m := make(row, len(rec))
		for i, name := range all[0] {
			m[name] = rec[i]
		}
		out = append(out, m)
	}
	return out
}

// num returns the number in a column, 0 where it is empty.
func (r row) num(column string) float64 {
	s := r[column]
	if s == "" {
		return 0
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic(fmt.Sprintf("material: %s: %s %q", r["id"], column, s))
	}
	return v
}

// length returns the length in a column, 0 where it is empty.
func (r row) length(column string) unit.Length { return lengthOf(r[column]) }

func lengthOf(s string) unit.Length {
	if s == "" {
		return 0
	}
	v, ok := unit.Quantity(s).Length()
	if !ok {
		panic("material: length " + s)
	}
	return v
}

func (r row) lengths(column string) (out []unit.Length) {
	for _, s := range list(r[column]) {
		out = append(out, lengthOf(s))
	}
	return out
}

func list(s string) []string {
	if s == "" {
		return nil
	}
	return strings.Split(s, ";")
}

// tableC0 is the speed of sound in air, m/s, in which the tables' products of
// thickness and critical frequency hold (20 °C).
const tableC0 = 343.2

// likeness is a row of sound.csv: what boards of one kind share, whatever their mass.
type likeness struct {
	specific float64 // E/ρ, m²/s², of the core where there are faces
	sound    Sound   // without Young
}

var likenesses = sync.OnceValue(func() map[string]likeness {
	out := map[string]likeness{}
	for _, r := range records(soundCSV) {
		l := likeness{sound: Sound{
			Nu: r.num("nu"), Loss: r.num("loss"), Ratio: r.num("ratio"), Shear: r.num("shear"), Flow: r.num("flow"),
			Faces:  r.num("faces_MN_m") * 1e6,
			Source: r["source"], Assumed: r["assumed"],
		}}
		if fct := r.num("fc_t"); fct > 0 {
			// fc = (c0²/2π)·√(m/B), B = E·t³/12(1−ν²), solved for E/ρ (Cremer's critical frequency).
			k := tableC0 * tableC0 / (2 * math.Pi * fct)
			l.specific = 12 * (1 - l.sound.Nu*l.sound.Nu) * k * k
		} else {
			l.specific = r.num("young_GPa") * 1e9 / r.num("density_kg_m3")
		}
		out[r["key"]] = l
	}
	return out
})

var boards = sync.OnceValue(func() table[Board] {
	like := likenesses()
	return newTable(boardsCSV, func(r row) Board {
		l, ok := like[r["sound"]]
		if !ok {
			panic("material: " + r["id"] + ": no sound row " + r["sound"])
		}
		b := Board{
			ID: r["id"], Code: r["code"], Name: r["name"], Short: r["short"], Row: r["row"], Brief: r["brief"],
			Region: r["region"], Kind: Kind(r["kind"]),
			Thickness: unit.Length(r.num("thickness_mm")) * unit.Millimetre, Nominal: r["nominal"],
			Mass: unit.SurfaceMass(r.num("mass_kg_m2")), MassLow: unit.SurfaceMass(r.num("low_kg_m2")),
			MassHigh: unit.SurfaceMass(r.num("high_kg_m2")), CodeMass: unit.SurfaceMass(r.num("code_kg_m2")),
			FireRated: r["fire_rated"] == "yes", Usual: r["usual"] == "yes",
			Sound: l.sound, Source: r["source"], Origin: r["origin"],
		}
		for _, s := range list(r["sheets"]) {
			w, h, ok := unit.Quantity(s).Sheet()
			if !ok {
				panic("material: " + b.ID + ": sheet " + s)
			}
			b.Sheets = append(b.Sheets, Sheet{Width: w, Length: h})
			b.Sizes = append(b.Sizes, unit.Quantity(s))
		}
		// Loose fill weighs but does not stiffen.
		stiff := r.num("stiff_kg_m2")
		if stiff == 0 {
			stiff = float64(b.Mass)
		}
		t := float64(b.Thickness)
		b.Sound.Young = unit.Pressure(l.specific*stiff/t) + facing(l.sound.Faces, t)
		return b
	})
})

var fills = sync.OnceValue(func() table[Fill] {
	return newTable(fillsCSV, func(r row) Fill {
		f := Fill{
			ID: r["id"], Code: r["code"], Name: r["name"],
			Density: unit.Density(r.num("density_kg_m3")), Flow: r.num("flow"), FlowLow: r.num("flow_low"), FlowHigh: r.num("flow_high"),
			Depths: r.lengths("depths"), Region: r["region"], Source: r["source"], Origin: r["origin"],
		}
		return f
	})
})

var frames = sync.OnceValue(func() table[Frame] {
	return newTable(framesCSV, func(r row) Frame {
		f := Frame{
			ID: r["id"], Code: r["code"], Name: r["name"], Kind: FrameKind(r["kind"]),
			Depth: r.length("depth"), Plate: r.length("plate"), Width: r.length("width"), Sheet: r.length("sheet"),
			Spacings: r.lengths("spacings"), Mass: unit.LineMass(r.num("mass_kg_m")),
			Region: r["region"], Source: r["source"], Origin: r["origin"],
		}
		return f
	})
})

var fixings = sync.OnceValue(func() table[Fixing] {
	return newTable(fixingsCSV, func(r row) Fixing {
		f := Fixing{
			ID: r["id"], Code: r["code"], Name: r["name"], Kind: FixingKind(r["kind"]),
			StandOff: r.length("stand_off"), LineMass: unit.LineMass(r.num("channel_kg_m")), PointMass: unit.Mass(r.num("point_kg")),
			Stiffness: r.num("stiffness"), StiffnessLow: r.num("stiffness_low"), StiffnessHigh: r.num("stiffness_high"),
			Clear: r.length("clear"), Region: r["region"], Source: r["source"], Origin: r["origin"],
		}
		f.Rows, f.metricRows = pair(r["rows"])
		f.Along, f.metricAlong = pair(r["along"])
		return f
	})
})

// pair splits "24 in|600 mm" into the customary and the metric length.
func pair(s string) (customary, metric unit.Length) {
	a, b, _ := strings.Cut(s, "|")
	return lengthOf(a), lengthOf(b)
}
