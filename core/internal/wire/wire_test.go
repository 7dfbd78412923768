package wire_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core"
	"twoleaf/core/internal/wire"
	"twoleaf/core/plan"
)

// all has every shape that is written or read.
type all struct {
	Text  string             `json:"text"`
	Maybe string             `json:"maybe,omitempty"`
	Named named              `json:"-"`
	On    bool               `json:"on,omitempty"`
	Count int                `json:"count"`
	Few   int8               `json:"few,omitempty"`
	Size  float64            `json:"size"`
	Some  float64            `json:"some,omitempty"`
	Far   *float64           `json:"far,omitempty"`
	Other *all               `json:"other"`
	List  []named            `json:"list"`
	Tree  []all              `json:"tree,omitempty"`
	Any   any                `json:"any,omitempty"`
	Deep  [][]int            `json:"deep,omitempty"`
	Args  map[string]float64 `json:"args,omitempty"`
	Words map[named]string   `json:"words"`
	Inner struct {
		A string `json:"a"`
		B string `json:"b"`
	} `json:"inner"`
	Bands [3]float64 `json:"bands"`
	quiet int
}

type named string

// read is all without what is only ever written.
type read struct {
	Text  string    `json:"text"`
	Maybe named     `json:"maybe,omitempty"`
	Named named     `json:"-"`
	On    bool      `json:"on,omitempty"`
	Count int       `json:"count"`
	Few   int8      `json:"few,omitempty"`
	Size  float64   `json:"size"`
	Far   *float64  `json:"far,omitempty"`
	Other *read     `json:"other"`
	List  []named   `json:"list"`
	Tree  []read    `json:"tree,omitempty"`
	Any   any       `json:"any,omitempty"`
	Deep  [][]int   `json:"deep,omitempty"`
	Long  []float64 `json:"long"`
	Inner struct {
		A string `json:"a"`
		B string `json:"b"`
	} `json:"inner"`
	quiet int
}

// sameBytes holds what is written to what the standard library writes.
func sameBytes(t *testing.T, v any) []byte {
	t.Helper()
	want, err := json.Marshal(v)
	require.NoError(t, err)
	got, err := wire.Marshal(v)
	require.NoError(t, err)
	require.Equal(t, string(want), string(got))
	return got
}

// sameValues holds what is read, or why it is refused, to what the standard library says.
func sameValues[T any](t *testing.T, text []byte) {
	t.Helper()
	var want, got T
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	wantErr := json.Unmarshal(text, new(T)) // the text as a whole
	if json.Valid(text) {
		wantErr = d.Decode(&want)
	}
	_, gotErr := wire.Unmarshal(text, &got)
	var wantBad *json.SyntaxError
	var gotBad *wire.SyntaxError
	var wantType *json.UnmarshalTypeError
	var gotType *wire.TypeError
	switch {
	case errors.As(wantErr, &wantBad):
		require.ErrorAs(t, gotErr, &gotBad, "%q: %v", text, wantErr)
		assert.Equal(t, wantBad.Offset, int64(gotBad.Offset), "%q: %v", text, wantErr)
		if strings.Contains(wantErr.Error(), "unexpected end") {
			assert.True(t, gotBad.Cut, "%q: %v", text, wantErr)
		}
		assert.Equal(t, strings.Contains(wantErr.Error(), "after top-level value"), gotBad.More, "%q: %v", text, wantErr)
	case errors.As(wantErr, &wantType):
		require.ErrorAs(t, gotErr, &gotType, "%q: %v", text, wantErr)
		assert.Equal(t, wantType.Field, gotType.Field, "%q", text)
		assert.Equal(t, wantType.Value, gotType.Value, "%q", text)
	default:
		require.NoError(t, wantErr)
		require.NoError(t, gotErr, "%q", text)
		require.Equal(t, string(sameNumbers(t, want)), string(sameNumbers(t, got)), "%q", text)
	}
}

// sameNumbers writes a value so that two kinds of numbers as text look alike.
func sameNumbers(t *testing.T, v any) []byte {
	text, err := json.Marshal(v)
	require.NoError(t, err)
	// wire.Number is a string to the standard library.
	var tree any
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	require.NoError(t, d.Decode(&tree))
	text, err = json.Marshal(plain(tree))
	require.NoError(t, err)
	return text
}

func plain(v any) any {
	switch v := v.(type) {
	case json.Number:
		return v.String()
	case []any:
		for i := range v {
			v[i] = plain(v[i])
		}
	case map[string]any:
		for key := range v {
			v[key] = plain(v[key])
		}
	}
	return v
}

var texts = []string{
	"", "a", "gypsum 5/8\"", `\ back`, "\x00\x01\b\f\n\r\t\x1f\x7f", "</script><b>&", "é 漢 😀", "\u2028\u2029", "\xff", "a\xc3", "\xe2\x82", "\xed\xa0\x80", "\ufffd", "ſK",
}

var numbers = []float64{
	0, math.Copysign(0, -1), 1, -1, 0.1, 1. / 3, 1e-6, 9.99e-7, 1e-7, 1.5e-9, 1e-10, 1e20, 1e21, 1.5e21, 1e100, 5e-324, math.MaxFloat64, 123456789.125, -2.5e-8, 1e-100,
}

func TestWritesTheSameBytes(t *testing.T) {
	for _, s := range texts {
		sameBytes(t, s)
		sameBytes(t, map[string]string{s: s, "b": ""})
	}
	for _, f := range numbers {
		sameBytes(t, f)
		sameBytes(t, all{Size: f, Some: f, Far: &f})
	}
	for _, v := range []any{nil, true, 7, []int(nil), []int{}, map[string]int(nil), map[string]int{}, (*int)(nil), [2]bool{}, struct{}{}, []any{nil, 1, "a"}} {
		sameBytes(t, v)
	}
	random := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		sameBytes(t, anything(random, 3))
	}
}

func anything(r *rand.Rand, deep int) all {
	text := func() string { return texts[r.IntN(len(texts))] }
	number := func() float64 { return numbers[r.IntN(len(numbers))] }
	half := func() bool { return r.IntN(2) == 0 }
	v := all{Text: text(), Maybe: text(), Named: "never", On: half(), Count: r.IntN(2000) - 1000, Few: int8(r.IntN(3)), Size: number(), Some: number(), quiet: 1}
	v.Inner.A = text()
	v.Bands[1] = number()
	if f := number(); half() {
		v.Far = &f
	}
	if half() {
		v.List = []named{}
		for range r.IntN(3) {
			v.List = append(v.List, named(text()))
		}
	}
	if half() {
		v.Args = map[string]float64{text(): number(), text(): number()}
		v.Words = map[named]string{named(text()): text(), "z": ""}
	}
	switch r.IntN(4) {
	case 0:
		v.Any = text()
	case 1:
		v.Any = map[string]any{text(): number(), "n": nil, "l": []any{half(), text()}}
	case 2:
		v.Any = &v.Bands
	}
	if half() {
		v.Deep = [][]int{nil, {}, {r.IntN(9)}}
	}
	if deep > 0 {
		for range r.IntN(3) {
			v.Tree = append(v.Tree, anything(r, deep-1))
		}
		if half() {
			other := anything(r, deep-1)
			v.Other = &other
		}
	}
	return v
}

func TestWhatCannotBeWrittenIsNamed(t *testing.T) {
	nan := math.NaN()
	endless := &all{}
	endless.Other = endless
	for want, v := range map[string]any{
		"tree.1.far: NaN":   all{Tree: []all{{}, {Far: &nan}}},
		"args.x: +Inf":      all{Args: map[string]float64{"x": math.Inf(1), "a": 1}},
		": NaN is no":       nan,
		"any: a chan":       all{Any: make(chan int)},
		"any: a map":        all{Any: map[int]int{1: 1}},
		"any: a uint":       all{Any: uint(1)},
		"nested too deep":   endless,
		"other: a func() h": struct{ Other any }{func() {}},
	} {
		text, err := wire.Marshal(v)
		assert.Nil(t, text)
		require.Error(t, err, want)
		assert.Contains(t, strings.ToLower(err.Error()), strings.ToLower(want))
	}
}

// What the page asks and is answered, whole.
func TestPlansAndRepliesAreTheSame(t *testing.T) {
	tables := core.NewTables()
	for _, region := range []plan.Region{plan.US, plan.EU} {
		for _, p := range []plan.Plan{plan.First(region), plan.Demo(region)} {
			text := sameBytes(t, p)
			sameValues[plan.Plan](t, text)
			sameBytes(t, core.Reply{Plan: &p})
			report, faults := core.Assess(p, core.Want{Sound: true, Rows: true, Work: "clip"}, tables)
			sameBytes(t, core.Reply{OK: true, Report: report, Faults: faults})
			p.Shelf = []plan.Shelf{{Board: "na_gyp_typeX_16", Weight: "<b>"}}
			_, faults = core.Assess(p, core.Want{}, tables)
			sameBytes(t, core.Reply{Faults: faults})
		}
	}
}

var documents = []string{
	`{"text":"a","on":true,"count":3,"few":-4,"size":1.5e3,"far":2,"list":["a","b"],"any":{"a":[1,2.50,null,true,"x"],"b":{}},"deep":[[1],[],[2,3]]}`,
	`{"TEXT":"a","Maybe":"b","INNER":{"a":"1","B":"2"},"Named":"x","named":"y","quiet":3}`,
	`{"other":{"other":{"size":-0.0,"tree":[{"text":"in"},{}]}},"tree":[],"long":[1,2,3,4,5,6,7,8,9],"list":null}`,
	`{"text":null,"on":null,"count":null,"far":null,"any":null,"list":null,"other":null,"inner":null}`,
	`{"text":"é😀\u00e9\ud83d\ude00\ud83d\ud83dx\ude00\u0000\/\b\f\n\r\t\"\\ 漢\u2028","ſize":1,"Size":2,"list":["\udc00","\ud800"]}`,
	`{"size":1,"size":2,"list":["a","b"],"list":["c"],"other":{"text":"a"},"other":{"count":1},"any":{"a":1},"any":{"b":1},"tree":[{"text":"a"}],"tree":[{"count":1}]}`,
	" \t\r\n{ \"text\" : \"a\" , \"long\" : [ 1 , 2 ] } \n",
	`null`, `{}`, `[]`, `"a"`, `1`, `true`, ``, ` `, `{`, `{"a"`, `{"a":`, `{"a":1`, `{"a":1,`, `{"a":1,}`, `{,}`, `{1:2}`, `[1,]`, `[,1]`, `[1 2]`, `{"a" 1}`,
	`{}{}`, `{} x`, `{}}`, `nul`, `nulL`, `tru`, `falsey`, `+1`, `.5`, `{"size":1.}`, `{"size":01}`, `{"size":-}`, `{"size":1e}`, `{"size":1e+}`, `{"size":0x1}`, `{"size":1_0}`,
	`{"text":"\x"}`, `{"text":"\u12g4"}`, `{"text":"\u12`, `{"text":"a`, "{\"text\":\"a\nb\"}", `{"text":'a'}`, "{\"text\":\"\x00\"}", "\x00", "{\"text\":\"\xff\xc3\"}", "\ufeff{}",
	`{"text":1}`, `{"text":{}}`, `{"text":[1,{"a":2}]}`, `{"text":true}`, `{"on":1}`, `{"on":"true"}`, `{"count":1.5}`, `{"count":1e2}`, `{"count":99999999999999999999}`, `{"few":128}`,
	`{"few":"1"}`, `{"size":1e999}`, `{"size":"1"}`, `{"list":{}}`, `{"list":"a"}`, `{"list":[1,"a",{}]}`, `{"tree":[{},{"other":{"count":"x"}}],"size":false}`, `{"inner":[]}`,
	`{"inner":{"A":1}}`, `{"deep":[[1,"a"]]}`, `{"other":1,"text":"still read"}`, `{"count":"x"`, `{"count":"x","text":}`, `{"far":"x"}`, `{"quiet":"x"}`, `{"named":1}`,
	strings.Repeat("[", 10001) + strings.Repeat("]", 10001), strings.Repeat("[", 10000) + strings.Repeat("]", 10000), `{"any":` + strings.Repeat(`{"a":`, 10001),
}

func TestReadsTheSameAndRefusesTheSame(t *testing.T) {
	for _, text := range documents {
		sameValues[read](t, []byte(text))
		sameValues[any](t, []byte(text))
		sameValues[map[string]any](t, []byte(text))
	}
	// Cut anywhere, and any byte another one.
	for k, text := range documents[:7] {
		for i := k % 3; i < len(text); i += 3 {
			sameValues[read](t, []byte(text[:i]))
			for _, c := range "\"\\{}[]:,0a.-\x00\xff" {
				damaged := []byte(text)
				damaged[i] = byte(c)
				sameValues[read](t, damaged)
			}
		}
	}
}

func TestUnreadNamesWhatNoFieldIsFor(t *testing.T) {
	var v read
	unread, err := wire.Unmarshal([]byte(`{"a":{"b":1},"tree":[{"x":1,"other":{"y":{}}},{"any":{"z":1}},{"x":2}],"Named":1,"text":{"no":1}}`), &v)
	require.Error(t, err)
	assert.Equal(t, []string{"a", "tree.x", "tree.other.y", "Named"}, unread)
}

func FuzzRead(f *testing.F) {
	for _, text := range documents {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		sameValues[read](t, text)
		sameValues[any](t, text)
	})
}

func FuzzWrite(f *testing.F) {
	f.Add("a", 1.5)
	f.Fuzz(func(t *testing.T, s string, x float64) {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return
		}
		sameBytes(t, all{Text: s, Any: s, Words: map[named]string{named(s): s}, Size: x, Some: x})
	})
}

func BenchmarkReply(b *testing.B) {
	report, _ := core.Assess(plan.First(plan.US), core.Want{Sound: true, Rows: true}, nil)
	reply := core.Reply{OK: true, Report: report}
	b.Run("wire", func(b *testing.B) {
		for b.Loop() {
			_, _ = wire.Marshal(reply)
		}
	})
	b.Run("library", func(b *testing.B) {
		for b.Loop() {
			_, _ = json.Marshal(reply)
		}
	})
}

func BenchmarkPlan(b *testing.B) {
	text, _ := wire.Marshal(plan.Demo(plan.US))
	b.Run("wire", func(b *testing.B) {
		for b.Loop() {
			var p plan.Plan
			_, _ = wire.Unmarshal(text, &p)
		}
	})
	b.Run("library", func(b *testing.B) {
		for b.Loop() {
			var p plan.Plan
			_ = json.Unmarshal(text, &p)
		}
	})
}

// Fields without a tag begin small, and are read back.
func TestUntaggedFieldsBeginSmall(t *testing.T) {
	type untagged struct{ X, TL, Hz, NCBy, InA, RMSAfter float64 }
	text, err := wire.Marshal(untagged{1, 2, 3, 4, 5, 6})
	require.NoError(t, err)
	assert.Equal(t, `{"x":1,"tl":2,"hz":3,"ncBy":4,"inA":5,"rmsAfter":6}`, string(text))
	var back untagged
	_, err = wire.Unmarshal(text, &back)
	require.NoError(t, err)
	assert.Equal(t, untagged{1, 2, 3, 4, 5, 6}, back)
}
