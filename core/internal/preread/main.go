// Command preread writes what core/evidence has read of its tables into one
// small table, so that the page needs neither the reader nor the time to read.
package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"log"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"twoleaf/core/assembly"
	"twoleaf/core/evidence"
	"twoleaf/core/internal/trial"
	"twoleaf/core/material"
)

// place is where the table lies below the root of the module.
const place = "core/evidence/preread.csv"

func main() {
	log.SetFlags(0)
	root, err := trial.Root()
	if err != nil {
		log.Fatal(err)
	}
	table, err := write()
	if err != nil {
		log.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(root, filepath.FromSlash(place)), table, 0o644); err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%s: %d bytes\n", place, len(table))
}

const head = `# What has been read of the tables of this folder: written by go run ./core/internal/preread, never by hand.
# The lines are told in preread.go.
`

// table is lines by their kind, each written once and numbered from 0.
type table struct {
	out    *csv.Writer
	number map[string]map[string]int // kind, line
}

// add writes a line if it is new, and returns its number.
func (t *table) add(kind string, fields ...string) int {
	line := strings.Join(fields, "\x00")
	known := t.number[kind]
	if known == nil {
		known = map[string]int{}
		t.number[kind] = known
	}
	at, ok := known[line]
	if !ok {
		at = len(known)
		known[line] = at
		t.write(kind, fields...)
	}
	return at
}

func (t *table) write(kind string, fields ...string) {
	_ = t.out.Write(append([]string{kind}, fields...)) // the buffer behind it takes all
}

// number writes a number with all its digits, 0 as nothing.
func number[T ~float64](v T) string {
	if v == 0 {
		return ""
	}
	return strconv.FormatFloat(float64(v), 'g', -1, 64)
}

func level(v float64) string {
	if math.IsNaN(v) {
		return ""
	}
	return strconv.FormatFloat(v, 'g', -1, 64)
}

func flag(b bool) string {
	if b {
		return "1"
	}
	return ""
}

func (t *table) leaf(l assembly.Leaf) string {
	var boards []string
	for _, y := range l.Layers {
		b := y.Board
		n := t.add("board", b.ID, b.Short, string(b.Kind), flag(b.FireRated), b.Sound.Source, b.Source, b.Origin, number(b.Thickness), number(b.Mass),
			number(b.Sound.Young), number(b.Sound.Nu), number(b.Sound.Loss), number(b.Sound.Ratio), number(b.Sound.Shear), number(b.Sound.Flow), number(b.Sound.Faces))
		boards = append(boards, strconv.Itoa(n)+map[assembly.Join]string{assembly.Loose: "", assembly.Glued: "g", assembly.Film: "f"}[y.Join])
	}
	return strconv.Itoa(t.add("leaf", strings.Join(boards, " ")))
}

func (t *table) held(h assembly.Held) string {
	return strconv.Itoa(t.add("held", h.Fixing.ID, number(h.Grid.Rows), number(h.Grid.Along), number(h.Shorts)))
}

func (t *table) gap(g assembly.Gap) string {
	f := g.Frame
	frame := []string{f.ID}
	if like, ok := material.FrameByID(f.ID); !ok || !sameFrame(like, f) {
		frame = []string{"", string(f.Kind), f.Source, f.Origin, number(f.Depth), number(f.Plate), number(f.Width), number(f.Sheet), number(f.Mass)}
	}
	n := t.add("frame", frame...)
	return strconv.Itoa(t.add("gap", g.Fill.ID, strconv.Itoa(n), t.held(g.Near), t.held(g.Far), number(g.Spacing), number(g.Depth), number(g.FillDepth)))
}

func sameFrame(a, b material.Frame) bool {
	return a.Kind == b.Kind && a.Depth == b.Depth && a.Plate == b.Plate && a.Width == b.Width && a.Sheet == b.Sheet && a.Mass == b.Mass
}

// write returns the whole table.
func write() ([]byte, error) {
	var b bytes.Buffer
	b.WriteString(head)
	t := &table{csv.NewWriter(&b), map[string]map[string]int{}}
	leftOut := map[string]int{}
	for _, x := range evidence.LeftOutRatings() {
		leftOut[x.ID] = x.STC
	}
	for _, x := range evidence.Ratings() {
		if !x.Read() {
			continue
		}
		out := ""
		if v, ok := leftOut[x.ID]; ok {
			out = strconv.Itoa(v)
		}
		var assumed, builds []string
		for _, s := range x.Assumed {
			assumed = append(assumed, strconv.Itoa(t.add("assumed", s)))
		}
		face := [3]string{}
		for i, m := range x.BuildUps {
			now := [3]string{flag(m.Horizontal), number(m.Width), number(m.Height)}
			if i > 0 && now != face {
				return nil, fmt.Errorf("%s: its constructions have different faces", x.ID)
			}
			face = now
			var parts []string
			for k, l := range m.Leaves {
				if k > 0 {
					parts = append(parts, t.gap(m.Gaps[k-1]))
				}
				parts = append(parts, t.leaf(l))
			}
			builds = append(builds, strings.Join(parts, " "))
		}
		row := []string{x.ID, x.Source, x.Table, x.Description, x.Kind, x.Tier, strings.Join(assumed, " "), face[0], number(float64(x.STC)), out, face[1], face[2]}
		t.write("row", append(row, builds...)...)
	}
	for _, x := range evidence.LeftOutSpectra() {
		fields := []string{x.ID}
		for _, v := range x.Loss {
			fields = append(fields, level(v))
		}
		t.write("computed", fields...)
	}
	for _, x := range evidence.ThirdSpectra() {
		fields := []string{x.ID, x.Kind, x.Tier}
		for _, v := range x.Loss {
			fields = append(fields, level(v))
		}
		t.write("thirds", fields...)
	}
	for _, x := range evidence.OctaveSpectra() {
		fields := []string{x.ID, x.Kind, x.Tier}
		for _, v := range x.Loss {
			fields = append(fields, level(v))
		}
		t.write("octaves", fields...)
	}
	t.out.Flush()
	return b.Bytes(), t.out.Error()
}
