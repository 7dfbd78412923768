package unit_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"twoleaf/core/unit"
)

func TestReadAsPeopleWrite(t *testing.T) {
	for _, c := range []struct {
		kind    unit.Kind
		typed   string
		assumed unit.Unit
		want    unit.Quantity
	}{
		{unit.OfMass, "72 lb", unit.LB, "72 lb"},
		{unit.OfMass, "72lbs", unit.KG, "72 lb"},
		{unit.OfMass, "72", unit.LB, "72 lb"},
		{unit.OfMass, "72.", unit.LB, "72 lb"},
		{unit.OfMass, "32.5kg", unit.LB, "32.5 kg"},
		{unit.OfMass, "32,5 kg", unit.LB, "32.5 kg"},
		{unit.OfMass, " 32.50\u00a0KG ", unit.LB, "32.50 kg"},
		{unit.OfMass, "4 lb 8 oz", unit.KG, "4.5 lb"},
		{unit.OfMass, "58½", unit.LB, "58.5 lb"},
		{unit.OfMass, "58#", unit.KG, "58 lb"},
		{unit.OfMass, "1.234,5 kg", unit.KG, "1234.5 kg"},
		{unit.OfMass, "1,200.5 lb", unit.LB, "1200.5 lb"},
		{unit.OfMass, "1.200 kg", unit.KG, "1.200 kg"},
		{unit.OfMass, "1,200,000 lb", unit.LB, "1200000 lb"},
		{unit.OfMass, "0,125", unit.KG, "0.125 kg"},
		{unit.OfMass, "1,2345", unit.KG, "1.2345 kg"},
		{unit.OfMass, "1 200 kg", unit.KG, "1200 kg"},
		{unit.OfMass, "31\u202f000,5", unit.KG, "31000.5 kg"},
		{unit.OfMass, "+7", unit.KG, "7 kg"},
		{unit.OfMass, "007", unit.KG, "7 kg"},
		{unit.OfMass, ".5", unit.KG, "0.5 kg"},

		{unit.OfLength, `5/8"`, unit.MM, "0.625 in"},
		{unit.OfLength, "5/8", unit.MM, "0.625 in"}, // a fraction is of an inch
		{unit.OfLength, "5/8", unit.IN, "0.625 in"},
		{unit.OfLength, "12,5", unit.MM, "12.5 mm"},
		{unit.OfLength, "1 1/4 in", unit.MM, "1.25 in"},
		{unit.OfLength, `1-1/4"`, unit.MM, "1.25 in"},
		{unit.OfLength, "1¼ in.", unit.MM, "1.25 in"},
		{unit.OfLength, "⅝″", unit.MM, "0.625 in"},
		{unit.OfLength, "19⁄32 in", unit.MM, "0.59375 in"},
		{unit.OfLength, `8' 6 1/2"`, unit.MM, "102.5 in"},
		{unit.OfLength, `8'-6 1/2"`, unit.MM, "102.5 in"},
		{unit.OfLength, `13'4"`, unit.MM, "160 in"},
		{unit.OfLength, "13′ 4″", unit.MM, "160 in"},
		{unit.OfLength, "13 ft 4 in", unit.MM, "160 in"},
		{unit.OfLength, "8 ft", unit.MM, "8 ft"},
		{unit.OfLength, "15.9 mm", unit.IN, "15.9 mm"},
		{unit.OfLength, "2.4m", unit.IN, "2.4 m"},
		{unit.OfLength, "240 cm", unit.IN, "240 cm"},
		{unit.OfLength, "2 400 mm", unit.IN, "2400 mm"},
		{unit.OfLength, "1/2 ft", unit.IN, "0.5 ft"},

		{unit.OfArea, "90 sq ft", unit.M2, "90 ft2"},
		{unit.OfArea, "90", unit.FT2, "90 ft2"},
		{unit.OfArea, "9,6 m²", unit.FT2, "9.6 m2"},
		{unit.OfSurfaceMass, "2.2 psf", unit.KGM2, "2.2 psf"},
		{unit.OfSurfaceMass, "2.2 lb/ft²", unit.KGM2, "2.2 psf"},
		{unit.OfSurfaceMass, "2.2 lbs per sq. ft.", unit.KGM2, "2.2 psf"},
		{unit.OfSurfaceMass, "10.7 kg/m2", unit.PSF, "10.7 kg/m2"},
		{unit.OfSurfaceMass, "10.7 kg/m^2", unit.PSF, "10.7 kg/m2"},
		{unit.OfMoney, "$14.98", unit.USD, "14.98 $"},
		{unit.OfMoney, "14,98", unit.EUR, "14.98 €"},
		{unit.OfMoney, "41.50 $", unit.USD, "41.50 $"},
		{unit.OfMoney, "£8", unit.GBP, "8 £"},
		{unit.OfMoney, "0", unit.GBP, "0 £"},
		{unit.OfCount, "12", unit.One, "12"},
		{unit.OfCount, "0", unit.One, "0"},
		{unit.OfCount, "12 sheets", unit.One, "12"},
		{unit.OfCount, "1,200", unit.One, "1200"}, // pieces come whole
		{unit.OfPercent, "12,5%", unit.Pct, "12.5 %"},
		{unit.OfPercent, "0", unit.Pct, "0 %"},
	} {
		got, err := unit.Read(c.kind, c.typed, c.assumed)
		if err != nil || got != c.want {
			t.Errorf("%s %q assumed %q: %q, %v; want %q", c.kind, c.typed, c.assumed, got, err, c.want)
			continue
		}
		if again, err := unit.Read(c.kind, string(got), c.assumed); err != nil || again != got {
			t.Errorf("%q read again is %q, %v", got, again, err)
		}
	}
}

func TestReadSheet(t *testing.T) {
	for _, c := range []struct {
		typed   string
		assumed unit.Unit
		want    unit.Quantity
		w, l    unit.Length
	}{
		{"4x8", unit.IN, "4x8 ft", 48 * unit.Inch, 96 * unit.Inch},
		{"4x8", unit.MM, "4x8 ft", 48 * unit.Inch, 96 * unit.Inch},
		{"4X8", unit.IN, "4x8 ft", 48 * unit.Inch, 96 * unit.Inch},
		{"4' x 8'", unit.IN, "4x8 ft", 48 * unit.Inch, 96 * unit.Inch},
		{"4 × 8 ft", unit.IN, "4x8 ft", 48 * unit.Inch, 96 * unit.Inch},
		{"8 by 4 feet", unit.IN, "8x4 ft", 48 * unit.Inch, 96 * unit.Inch},
		{"48x96", unit.IN, "48x96 in", 48 * unit.Inch, 96 * unit.Inch},
		{`48" x 8'`, unit.IN, "48x96 in", 48 * unit.Inch, 96 * unit.Inch},
		{"1200x2400", unit.IN, "1200x2400 mm", 1.2, 2.4},
		{"1200 x 2400 mm", unit.IN, "1200x2400 mm", 1.2, 2.4},
		{"1 200 × 2 400", unit.MM, "1200x2400 mm", 1.2, 2.4},
		{"1,200x2,400", unit.MM, "1.200x2.400 m", 1.2, 2.4}, // both readings are the same sheet
		{"1.2x2.4m", unit.IN, "1.2x2.4 m", 1.2, 2.4},
		{"1,2x2,4", unit.MM, "1.2x2.4 m", 1.2, 2.4},
		{"1.2 m x 240 cm", unit.MM, "120x240 cm", 1.2, 2.4},
		{"120x240", unit.MM, "120x240 cm", 1.2, 2.4},
		{"4' x 8' 1\"", unit.IN, "48x97 in", 48 * unit.Inch, 97 * unit.Inch},
		{"5x5 ft", unit.IN, "5x5 ft", 5 * unit.Foot, 5 * unit.Foot},
		{"16x48", unit.IN, "16x48 in", 16 * unit.Inch, 48 * unit.Inch},
		{"3 1/2 x 8 ft", unit.IN, "3.5x8 ft", 3.5 * unit.Foot, 8 * unit.Foot},
		{"3x3 m", unit.IN, "3x3 m", 3, 3},
	} {
		got, err := unit.ReadSheet(c.typed, c.assumed)
		if err != nil || got != c.want {
			t.Errorf("%q assumed %q: %q, %v; want %q", c.typed, c.assumed, got, err, c.want)
			continue
		}
		w, l, ok := got.Sheet()
		if !ok || math.Abs(float64(w-c.w)) > 1e-12 || math.Abs(float64(l-c.l)) > 1e-12 {
			t.Errorf("%q is %v × %v m, want %v × %v", c.typed, w, l, c.w, c.l)
		}
		if again, err := unit.ReadSheet(string(got), c.assumed); err != nil || again != got {
			t.Errorf("%q read again is %q, %v", got, again, err)
		}
	}
	// A nominal 4x8 is 48 × 96 in to the last bit.
	q, _ := unit.ReadSheet("4x8", unit.MM)
	if w, l, _ := q.Sheet(); w != 48*unit.Inch || l != 96*unit.Inch {
		t.Errorf("4x8 is %v × %v", w, l)
	}
	// In a metric region 48x96 may be inches or centimetres.
	_, err := unit.ReadSheet("48x96", unit.MM)
	var e *unit.ReadError
	if !errors.As(err, &e) || e.Code != unit.Ambiguous || fmt.Sprint(e.Mend) != "[48x96 in 48x96 cm]" {
		t.Errorf("48x96 metric: %v", err)
	}
}

func TestReadRefuses(t *testing.T) {
	for _, c := range []struct {
		kind  unit.Kind
		typed string
		code  unit.Code
	}{
		{unit.OfMass, "", unit.Empty},
		{unit.OfMass, " \u00a0 ", unit.Empty},
		{unit.OfMass, "heavy", unit.NotNumber},
		{unit.OfMass, "lb", unit.NotNumber},
		{unit.OfMass, "72 mm", unit.BadUnit},
		{unit.OfMass, "72 stone", unit.BadUnit},
		{unit.OfMass, "0", unit.Zero},
		{unit.OfMass, "0.0 lb", unit.Zero},
		{unit.OfMass, "-5", unit.Negative},
		{unit.OfMass, "−5 lb", unit.Negative},
		{unit.OfMass, "-lb", unit.NotNumber},
		{unit.OfMass, "72-80 lb", unit.NotNumber},
		{unit.OfMass, "72 lb 20 oz", unit.NotNumber},
		{unit.OfMass, "1,,200", unit.NotNumber},
		{unit.OfMass, "1.2.3", unit.NotNumber},
		{unit.OfMass, "1,200.5.6", unit.NotNumber},
		{unit.OfMass, "1,2.5,6", unit.NotNumber},
		{unit.OfMass, "12,34,567", unit.NotNumber},
		{unit.OfMass, "72 lb or so", unit.NotNumber},
		{unit.OfMass, "<b>72</b>", unit.NotNumber},
		{unit.OfMass, "1e3", unit.BadUnit},
		{unit.OfMass, "NaN", unit.NotNumber},
		{unit.OfMass, "Inf", unit.NotNumber},
		{unit.OfMass, "0x10", unit.BadUnit},
		{unit.OfMass, strings.Repeat("9", 16), unit.NotNumber},
		{unit.OfMass, strings.Repeat("9", 1000), unit.NotNumber},
		{unit.OfLength, "5/0", unit.NotNumber},
		{unit.OfLength, "1/3 in", unit.NotNumber}, // no exact decimal
		{unit.OfLength, "1 5/4 in", unit.NotNumber},
		{unit.OfLength, "5/8/2", unit.NotNumber},
		{unit.OfLength, `8' 14"`, unit.NotNumber},
		{unit.OfLength, "8 ft 3 mm", unit.BadUnit},
		{unit.OfLength, "0 mm", unit.Zero},
		{unit.OfLength, "3 kg", unit.BadUnit},
		{unit.OfSurfaceMass, "2.2 lb", unit.BadUnit},
		{unit.OfArea, "12 ft", unit.BadUnit},
		{unit.OfCount, "2.5", unit.NotNumber},
		{unit.OfCount, "-1", unit.Negative},
		{unit.OfPercent, "10 kg", unit.BadUnit},
		{unit.OfMoney, "$ 5 $", unit.BadUnit},
		{unit.OfMoney, "about 5", unit.BadUnit},
	} {
		units := map[unit.Kind]unit.Unit{
			unit.OfMass: unit.LB, unit.OfLength: unit.IN, unit.OfSurfaceMass: unit.PSF, unit.OfArea: unit.FT2,
			unit.OfCount: unit.One, unit.OfPercent: unit.Pct, unit.OfMoney: unit.USD,
		}
		got, err := unit.Read(c.kind, c.typed, units[c.kind])
		var e *unit.ReadError
		if !errors.As(err, &e) || e.Code != c.code || got != "" {
			t.Errorf("%s %q: %q, %v; want %s", c.kind, c.typed, got, err, c.code)
		} else if e.Error() == "" {
			t.Errorf("%q: no words", c.typed)
		}
	}
	for typed, code := range map[string]unit.Code{
		"4x8x1": unit.NotNumber, "4": unit.NotNumber, "x": unit.NotNumber, "4x": unit.NotNumber, "0x8": unit.Zero,
		"4x8 lb": unit.BadUnit, "48 in x 2400 mm": unit.BadUnit, "": unit.Empty, "-4x8": unit.Negative,
	} {
		_, err := unit.ReadSheet(typed, unit.IN)
		var e *unit.ReadError
		if !errors.As(err, &e) || e.Code != code {
			t.Errorf("sheet %q: %v, want %s", typed, err, code)
		}
	}
	if _, err := unit.ReadMoney("£5", unit.USD); err == nil {
		t.Error("pounds pass for dollars")
	}
}

// "1,200" is asked back with both readings; what has one reading is not.
func TestReadAsksBack(t *testing.T) {
	for typed, want := range map[string]string{
		"1,200":    "[1200 lb 1.2 lb]",
		"1,200 kg": "[1200 kg 1.2 kg]",
		"12,500":   "[12500 lb 12.5 lb]",
		"2,000 lb": "[2000 lb 2 lb]",
	} {
		_, err := unit.ReadMass(typed, unit.LB)
		var e *unit.ReadError
		if !errors.As(err, &e) || e.Code != unit.Ambiguous || fmt.Sprint(e.Mend) != want {
			t.Errorf("%q: %v, want %s", typed, err, want)
		}
	}
	for typed, want := range map[string]float64{
		"12,5": 12.5, "1,200.5": 1200.5, "1.200,5": 1200.5, "1.200": 1.2, "1,20": 1.2, "0,200": 0.2, "1234,567": 1234.567,
	} {
		q, err := unit.ReadMass(typed, unit.KG)
		if m, _ := q.Mass(); err != nil || math.Abs(float64(m)-want) > 1e-12 {
			t.Errorf("%q is %v kg, %v; want %v", typed, m, err, want)
		}
	}
}

// Every inch fraction of the trade is exact to the last bit.
func TestFractionsAreExact(t *testing.T) {
	for den := 2; den <= 64; den *= 2 {
		for num := 1; num < den; num++ {
			q, err := unit.ReadLength(fmt.Sprintf("3 %d/%d in", num, den), unit.MM)
			v, _ := q.Value()
			if err != nil || v != 3+float64(num)/float64(den) {
				t.Fatalf("3 %d/%d is %s, %v", num, den, q, err)
			}
		}
	}
}

func TestCheck(t *testing.T) {
	for _, c := range []struct {
		q, lo, hi unit.Quantity
		code      unit.Code
		mend      string
	}{
		{"58 lb", "5 lb", "200 lb", "", ""},
		{"5 lb", "5 lb", "200 lb", "", ""},
		{"200 lb", "5 lb", "200 lb", "", ""},
		{"580 lb", "5 lb", "200 lb", unit.Large, "[58 lb]"},
		{"2 lb", "5 lb", "200 lb", unit.Small, "[20 lb]"},
		{"15.9 in", "2 mm", "100 mm", unit.Large, "[1.59 in 15.9 mm]"},
		{"5 m", "2 mm", "100 mm", unit.Large, "[5 mm 5 cm]"},
		{"900 kg", "5 lb", "200 lb", unit.Large, "[90 kg]"},
		{"12000x24000 mm", "300 mm", "6.5 m", unit.Large, "[1200x2400 mm]"},
		{"4x8 ft", "300 mm", "6.5 m", "", ""},
		{"1000000 lb", "5 lb", "200 lb", unit.Large, "[]"},
		{"7 lb", "5 lb", "", "", ""},
	} {
		err := unit.Check(c.q, c.lo, c.hi)
		if c.code == "" {
			if err != nil {
				t.Errorf("%s in %s–%s: %v", c.q, c.lo, c.hi, err)
			}
			continue
		}
		var e *unit.ReadError
		if !errors.As(err, &e) || e.Code != c.code || fmt.Sprint(e.Mend) != c.mend || e.Low != c.lo || e.High != c.hi {
			t.Errorf("%s in %s–%s: %v", c.q, c.lo, c.hi, err)
		}
	}
}

// The yard's own sum: two sheets of 72 lb and a sandwich of 39, 66 and 39 lb are
// 144 lb over 32 ft², 4.50 psf: equal, therefore not over, whichever way it is
// converted. Common practice; the tags are typed.
func TestLawEqualIsNotOver(t *testing.T) {
	sheet, _ := unit.ReadSheet("4x8", unit.IN)
	w, l, _ := sheet.Sheet()
	area := unit.Area(w * l)
	mass := func(typed string) unit.Mass {
		q, err := unit.ReadMass(typed, unit.LB)
		if err != nil {
			t.Fatal(err)
		}
		m, _ := q.Mass()
		return m
	}
	psf := func(m unit.Mass, a unit.Area) unit.SurfaceMass { return unit.SurfaceMass(float64(m) / float64(a)) }
	plan := map[string]unit.SurfaceMass{
		"sum then area": psf(mass("72")+mass("72 lb"), area),
		"area then sum": psf(mass("72"), area) + psf(mass("72"), area),
		"twice":         2 * psf(mass("72lbs"), area),
		"in psf":        unit.SurfaceMass(144.0/32) * unit.PoundPerSquareFoot,
		"in kg":         psf(unit.Mass(144*0.45359237), area),
		"rounded kg":    psf(mass("32.66 kg")+mass("32.66 kg"), area), // as a tag prints it
	}
	sandwich := map[string]unit.SurfaceMass{
		"sum then area": psf(mass("39")+mass("66")+mass("39"), area),
		"area then sum": psf(mass("39"), area) + psf(mass("66"), area) + psf(mass("39"), area),
		"backwards":     psf(mass("39"), area) + (psf(mass("39"), area) + psf(mass("66"), area)),
		"in kg":         psf(mass("17.69 kg")+mass("29.94 kg")+mass("17.69 kg"), area),
	}
	for pn, p := range plan {
		for sn, s := range sandwich {
			if unit.Over(s, p) || unit.Over(p, s) || !unit.Same(s, p) {
				t.Errorf("sandwich (%s) %v against plan (%s) %v kg/m²", sn, s, pn, p)
			}
		}
	}
	if heavier := psf(mass("39.5")+mass("66")+mass("39"), area); !unit.Over(heavier, plan["sum then area"]) {
		t.Error("half a pound more is not over")
	}
	if got := float64(plan["sum then area"] / unit.PoundPerSquareFoot); math.Abs(got-4.5) > 1e-12 {
		t.Errorf("144 lb over 32 ft² is %v psf", got)
	}
}

func TestLawSlack(t *testing.T) {
	if unit.Over(100.09, 100.0) || !unit.Over(100.11, 100.0) {
		t.Error("the slack is not a tenth of a per cent")
	}
}

func TestQuantityRefusesWhatIsNone(t *testing.T) {
	for _, q := range []unit.Quantity{"", "lb", "x lb", "NaN lb", "1e3 lb", "0x10 lb", "1 stone", "58", "58  lb"} {
		if m, ok := q.Mass(); ok {
			t.Errorf("%q is %v kg", q, m)
		}
	}
	if n, ok := unit.Quantity("12.5").Count(); ok {
		t.Errorf("12.5 is %d pieces", n)
	}
	if s, ok := unit.Quantity("10 %").Share(); !ok || math.Abs(s-0.1) > 1e-15 {
		t.Errorf("10 %% is %v", s)
	}
}

func fuzzRead(f *testing.F, k unit.Kind, assumed unit.Unit, seeds ...string) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, typed string) {
		q, err := unit.Read(k, typed, assumed)
		if err != nil {
			var e *unit.ReadError
			if q != "" || !errors.As(err, &e) || e.Code == "" || e.Error() == "" {
				t.Fatalf("%q: %q, %v", typed, q, err)
			}
			for _, m := range e.Mend {
				if again, err := unit.Read(k, string(m), assumed); err != nil || again != m {
					t.Fatalf("%q offers %q, which reads as %q, %v", typed, m, again, err)
				}
			}
			return
		}
		if v, ok := q.Value(); !ok || v < 0 || math.IsInf(v, 0) || math.IsNaN(v) {
			t.Fatalf("%q: %q has the value %v", typed, q, v)
		}
		if kind, _ := q.Unit().SI(); kind != k {
			t.Fatalf("%q: %q is a %s", typed, q, kind)
		}
		if again, err := unit.Read(k, string(q), assumed); err != nil || again != q {
			t.Fatalf("%q: %q reads again as %q, %v", typed, q, again, err)
		}
	})
}

func FuzzReadMass(f *testing.F) {
	fuzzRead(f, unit.OfMass, unit.LB, "72 lb", "72lbs", "32.5kg", "1,200", "4 lb 8 oz", "-5", "1 200,5", "½ lb", "", "9999999999999999 lb")
}

func FuzzReadLength(f *testing.F) {
	fuzzRead(f, unit.OfLength, unit.MM, `5/8"`, "12,5", "1 1/4 in", `8' 6 1/2"`, "13'4", "1.2.3", "5/0", "1/3", "0 mm", "1,200", "1 200 mm", "999999999999' 11\"")
}

func FuzzReadMoney(f *testing.F) {
	fuzzRead(f, unit.OfMoney, unit.USD, "$14.98", "14,98", "1,200", "0", "$ 5 $", "5 usd")
}

func FuzzReadSurfaceMass(f *testing.F) {
	fuzzRead(f, unit.OfSurfaceMass, unit.PSF, "2.2 psf", "10,7 kg/m²", "2 lb per sq ft", "2 1/2 psf")
}

func FuzzReadSheet(f *testing.F) {
	for _, s := range []string{"4x8", "4' x 8'", "4 × 8 ft", "1200x2400", "1.2x2.4m", "48x96", "1,200x2,400", "x", "4x8x1", "4' x 8' 6\"", "1.2 m x 240 cm"} {
		f.Add(s, true)
		f.Add(s, false)
	}
	f.Fuzz(func(t *testing.T, typed string, metric bool) {
		assumed := unit.IN
		if metric {
			assumed = unit.MM
		}
		q, err := unit.ReadSheet(typed, assumed)
		if err != nil {
			return
		}
		if w, l, ok := q.Sheet(); !ok || w <= 0 || l < w {
			t.Fatalf("%q: %q is %v × %v", typed, q, w, l)
		}
		if again, err := unit.ReadSheet(string(q), assumed); err != nil || again != q {
			t.Fatalf("%q: %q reads again as %q, %v", typed, q, again, err)
		}
	})
}

func ExampleRead() {
	for _, typed := range []string{`1-1/4"`, `8' 6 1/2"`, "15,9 mm", "1,200"} {
		q, err := unit.ReadLength(typed, unit.MM)
		fmt.Println(q, err)
	}
	// Output:
	// 1.25 in <nil>
	// 102.5 in <nil>
	// 15.9 mm <nil>
	//  “1,200” has two readings: 1200 mm or 1.2 mm
}
