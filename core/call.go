package core

import (
	"fmt"
	"reflect"
	"runtime/debug"
	"strings"

	"twoleaf/core/caution"
	"twoleaf/core/internal/wire"
	"twoleaf/core/link"
	"twoleaf/core/material"
	"twoleaf/core/plan"
	"twoleaf/core/unit"
)

// The page makes one kind of call: a method name and its arguments as JSON,
// answered by JSON. web/js/engine.js is the other side of it.
//
//	assess  {plan, want}            → report
//	change  {plan, changes}         → plan        made as house.money proposes them
//	cut     {plan, from, to, best}  → cut         the better of a stretch of tries and an earlier one
//	read    {what, text, unit}      → quantity
//	boards  {query, region}         → boards
//	catalog {region}                → frames, fills, fixings
//	new     {region, which, plan}   → plan        which: first, demo, or room: the plan's wall as a room
//	encode  {plan}                  → link, leftOut
//	decode  {link}                  → plan, changed
//	open    {text}                  → plan, changed
//	qr      {text}                  → size, rows
//	version {}                      → core, format, table
//
// Every reply has ok; a refused call has faults, a broken one has panic.

// Version is the number of the core's calls; the page checks it at the start.
const Version = 1

// Reply is what every call answers with; only what the method gives is set.
type Reply struct {
	OK       bool              `json:"ok"`
	Faults   []*plan.Fault     `json:"faults,omitempty"`
	Panic    string            `json:"panic,omitempty"`
	Report   *Report           `json:"report,omitempty"`
	Quantity unit.Quantity     `json:"quantity,omitempty"`
	Boards   []BoardReport     `json:"boards,omitempty"`
	Catalog  *Catalog          `json:"catalog,omitempty"`
	Plan     *plan.Plan        `json:"plan,omitempty"`
	Changed  []caution.Caution `json:"changed,omitempty"`
	Link     string            `json:"link,omitempty"`
	LeftOut  []string          `json:"leftOut,omitempty"`
	QR       []string          `json:"qr,omitempty"`
	Cut      *CutReport        `json:"cut,omitempty"`
	Version  *VersionReport    `json:"version,omitempty"`
}

// VersionReport says which core answers.
type VersionReport struct {
	Core   int `json:"core"`
	Format int `json:"format"`
	Table  int `json:"table"`
}

// Call answers one call of the page. It never panics: what breaks inside is
// answered in words, and the next call works as if nothing had been.
func Call(method string, args []byte, t *Tables) (reply []byte) {
	defer func() {
		if r := recover(); r != nil {
			where := "the core"
			for line := range strings.Lines(string(debug.Stack())) {
				if strings.HasPrefix(line, "twoleaf/core") && !strings.Contains(line, "core.Call") {
					where = strings.TrimSpace(line[:strings.IndexByte(line, '(')])
					break
				}
			}
			reply = Broken(fmt.Sprintf("%v, in %s", r, where))
		}
	}()
	answer, faults := dispatch(method, args, t)
	answer.OK = len(faults) == 0
	answer.Faults = faults
	return marshal(answer)
}

func marshal(r Reply) []byte {
	if r.Report != nil {
		tidy(reflect.ValueOf(r.Report))
	}
	text, err := wire.Marshal(r)
	if err != nil {
		// A number that is not one reached the report: say so instead of breaking the page.
		return Broken("the answer could not be written down: " + err.Error())
	}
	return text
}

// Broken returns the reply of a call that broke, with what broke in words.
func Broken(words string) []byte { return marshal(Reply{Panic: words}) }

// question is what a call may bring; each takes what it needs.
type question struct {
	Plan plan.Plan `json:"plan"`
	Want Want      `json:"want"`

	Region, Which    string
	Query, Link      string
	What, Text, Unit string

	Changes        []string // ids
	From, To, Best int
	Other          bool
}

func dispatch(method string, args []byte, t *Tables) (Reply, []*plan.Fault) {
	var a question
	if method != "version" {
		if _, err := wire.Unmarshal(args, &a); err != nil {
			return Reply{}, []*plan.Fault{{Code: "unreadable", Leaf: -1, Field: "call", Words: "the page's question could not be read: " + err.Error()}}
		}
	}
	switch method {
	case "assess":
		report, faults := Assess(a.Plan, a.Want, t)
		return Reply{Report: report}, faults
	case "change":
		p, faults := changed(a.Plan, a.Changes, t)
		return Reply{Plan: &p}, faults
	case "cut":
		if faults := plan.Check(a.Plan); len(faults) > 0 {
			return Reply{}, faults
		}
		return Reply{Cut: newShopping(a.Plan).cut(a.From, a.To, a.Best, a.Other)}, nil
	case "read":
		q, f := plan.Read(a.What, a.Text, a.Unit)
		if f != nil {
			return Reply{}, []*plan.Fault{f}
		}
		return Reply{Quantity: q}, nil
	case "boards":
		return Reply{Boards: searchBoards(a.Query, plan.Region(a.Region))}, nil
	case "catalog":
		c := catalog(plan.Region(a.Region))
		return Reply{Catalog: &c}, nil
	case "new":
		p := plan.First(plan.Region(a.Region))
		switch a.Which {
		case "demo":
			p = plan.Demo(plan.Region(a.Region))
		case "room":
			p = plan.Roomed(a.Plan)
		}
		return Reply{Plan: &p}, nil
	case "encode":
		text, leftOut, f := link.Encode(a.Plan)
		if f != nil {
			return Reply{}, []*plan.Fault{f}
		}
		return Reply{Link: text, LeftOut: leftOut}, nil
	case "decode":
		p, f := link.Decode(a.Link)
		return opened(p, f)
	case "open":
		p, f := plan.Parse([]byte(a.Text))
		return opened(p, f)
	case "qr":
		rows, err := qrRows(a.Text)
		if err != nil {
			return Reply{}, []*plan.Fault{{Code: "tooLong", Leaf: -1, Field: "link", Words: "the link is too long for a square code"}}
		}
		return Reply{QR: rows}, nil
	case "version":
		return Reply{Version: &VersionReport{Core: Version, Format: plan.Format, Table: material.TableVersion}}, nil
	}
	return Reply{}, []*plan.Fault{{Code: "unknown", Leaf: -1, Field: "call", Typed: method, Words: "there is no call named " + method}}
}

func opened(p plan.Plan, f *plan.Fault) (Reply, []*plan.Fault) {
	if f != nil {
		return Reply{}, []*plan.Fault{f}
	}
	return Reply{Plan: &p, Changed: plan.Changed(p)}, nil
}
