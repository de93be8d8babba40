package journal

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"hussif/content/edtf"
	"hussif/content/front"
	"hussif/content/measure"
	"hussif/content/quantity"
	"hussif/content/source"
)

const cm = 10 * quantity.Millimetre

var (
	bust  = measure.Point{Measure: "bust girth"}
	waist = measure.Point{Measure: "natural waist girth"}
	arm   = measure.Point{Measure: "upper arm girth"}
)

func word(s string) Word { return Word{Text: s} }

func words(all ...string) []Word {
	var out []Word
	for _, s := range all {
		out = append(out, word(s))
	}
	return out
}

func ref(to string) Ref    { return Ref{To: to} }
func refs(to string) []Ref { return []Ref{{To: to}} }

func part(to, anchor string) Ref { return Ref{To: to, Anchor: anchor} }

func date(t testing.TB, text string) edtf.Date {
	t.Helper()
	d, err := edtf.Read(text, edtf.Customs{Circa: 4})
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func euros(n int64) quantity.Money { return quantity.Money{Minor: 100 * n, Currency: "EUR"} }

func metres(n quantity.Length) quantity.Amount {
	return quantity.Amount{Kind: quantity.ByLength, Length: n}
}

// Everything that can be written is read, each value into its own field.
func TestEveryField(t *testing.T) {
	j := everyField(t)
	green := refs("green-jacket")
	for id, want := range map[ID]Record{
		"people/wren": &Person{
			Page: Page{
				KindName: word("person"), Title: "Wren Alder", Tags: words("circle", "1780s"), Share: Self,
				Fields: Shares{{Field: "measured", With: Self}, {Field: "tags", With: Circle}},
				Next: []Next{{
					Do: "measure the elbow bent", About: refs("striped-jacket"), Pattern: refs("jacket-draft"),
					Technique: refs("piping"), Material: refs("striped-linen"), Person: refs("wren"),
					Garment: words("jacket", "riding habit"), Anchor: "next-measure-elbow-bent",
				}},
			},
			Measured: []Session{{
				Date: edtf.DayOf(2026, 1, 10), Of: ref("wren"), Over: words("shift", "stays"), By: word("ottilie"),
				Remarks: "after dinner",
				Readings: Readings{
					{Point: bust, Value: quantity.Estimate{Length: 925 * quantity.Millimetre}},
					{Point: measure.Point{Measure: "upper arm girth", Side: measure.Left}, Value: quantity.Estimate{Length: 28 * cm, State: quantity.About}},
					{Point: measure.Point{Measure: "hip girth"}, Value: quantity.Estimate{State: quantity.Unknown}},
					{Point: measure.Point{Measure: "over stomacher"}, Value: quantity.Estimate{State: quantity.NotMeasured}},
				},
			}},
			ShowsFit: FitDeltas, Measures: Circle, Money: Self,
			Usual: []string{"longer in the back", "narrower shoulders"},
		},
		"builds/striped-jacket": &Build{
			Page: Page{Title: "Striped jacket"},
			For:  ref("wren"), Garment: "jacket", Era: date(t, "1780/1789"), Pattern: refs("jacket-draft"),
			Techniques: refs("piping"), Remakes: ref("first-jacket"), Reworks: ref("builds/blue-gown"),
			Occasion: refs("market-day"), Over: words("shift", "stays", "petticoat", "petticoat"),
			State: StateUnderWay, Finished: edtf.DayOf(2026, 5, 1),
			Planned: Plan{Hours: 45 * time.Hour, Cost: euros(80)},
			Fit:     Wants{{Point: bust, Ease: quantity.Range{Most: 2 * cm}, Accepts: AcceptsAmple}, {Point: waist}},
			Adjusts: []Adjust{{
				How: "lacing", At: "centre back", Gap: quantity.Range{Most: 5 * cm}, Lap: quantity.Range{Least: cm, Most: 2 * cm},
				MeasuredAt: 25 * quantity.Millimetre, Changes: []PointRef{{Point: bust}, {Point: waist}},
			}},
			Closures: []Closure{{
				Name: word("front"), How: "pins", At: "centre front", Overlap: 25 * quantity.Millimetre, Keep: cm,
				Crosses: []PointRef{{Point: waist}}, Alone: Yes,
			}},
			Seams: []Seam{{
				Name: word("side"), Count: 2, Joins: words("back", "front"),
				Crosses: Crossings{
					{Point: bust, Now: 25 * quantity.Millimetre, Keep: 5 * quantity.Millimetre, Times: 2},
					{Point: waist, Now: 2 * cm},
				},
				Now: 25 * quantity.Millimetre, Keep: 5 * quantity.Millimetre, TrimmedTo: 75 * cm / 100,
				Clipped: No, Piped: Yes, Length: 20 * cm, Sewn: "backstitch, linen thread",
				CaughtBy: []Caught{{Seam: word("armhole")}, {Seam: word("waist binding"), At: ExtentEnds}},
			}},
			Pieces: []Piece{
				{
					Name: word("sleeve"), Cut: 2, Of: ref("striped-linen"), Grain: "bias", Front: "the notched edge",
					RightSide: "brighter stripe", Marks: []string{"two notches", "thread cross"}, Lined: "no",
				},
				{Name: word("back")},
			},
			Features: []Feature{{What: word("piped armhole"), RestsOn: green, Departs: "the cord is cotton"}},
			Needs:    []Need{{Material: ref("striped-linen"), Amount: metres(2 * quantity.Metre)}},
			Carries:  []Ref{part("wren", "next-measure-elbow-bent")},
			SetAside: []SetAside{{Note: part("blue-gown", "next-line-sleeve"), Because: "it has no lining"}},
			Photos: []Photo{{
				File: word("photos/back.jpg"), Caption: "The back", Alt: "Seen from behind", Piece: word("back"), Face: No,
				Blur: []Region{{40, 5, 20, 25}, {1.5, 2, 3, 4}}, Share: Circle,
			}},
		},
		"builds/striped-jacket/2026-02-14-fitting": &Note{
			Page: Page{Title: "Fitting"}, Date: edtf.DayOf(2026, 2, 14), Build: ref("striped-jacket"),
			Stage: "fitting", Hours: 200 * time.Minute,
			Spent:      []Spending{{Amount: quantity.Money{Minor: 1250, Currency: "EUR"}}, {Amount: euros(3), What: "pins"}},
			Techniques: refs("piping"), Occasion: ref("market-day"),
			Measured: Readings{{Point: bust, Value: quantity.Estimate{Length: 93 * cm}}},
			Body:     []Session{{Over: words("shift"), Readings: Readings{{Point: waist, Value: quantity.Estimate{Length: 70 * cm}}}}},
			Opened:   words("side"), Sewed: words("side"),
			Altered: []Altered{{
				What: "side let out", Seam: word("side"), Panel: "gusset", Place: "left and right",
				At:  Levels{{Point: bust, Was: 25 * quantity.Millimetre, Now: cm}, {Point: waist}},
				Was: 2 * cm, Now: 15 * quantity.Millimetre,
				LetOut:  quantity.Edges{By: 5 * quantity.Millimetre, Of: quantity.EachEdge},
				TakenIn: quantity.Edges{By: cm, Of: quantity.AllRound},
				Count:   2, Times: 4, Widths: Changes{{Point: bust, By: 3 * cm}}, Changes: Changes{{Point: waist, By: -cm}},
				Because: "it gaped",
			}},
			PatternChanged: Changes{{Point: bust, By: 15 * quantity.Millimetre}}, OnPattern: No,
			Decided: []Decision{{
				Question: "Keep the cuffs?", Chose: "plain wrist", InsteadOf: []string{"cuffs"}, Because: "no cloth is left", RestsOn: green,
				Anchor: "decided-keep-cuffs",
			}},
			TurnedOut: []Outcome{{Decision: part("first-jacket/2024-05-01-cut", "decided-no-collar"), How: Regretted, Because: "the neck shows"}},
			Carries:   []Ref{part("first-jacket", "next-1"), part("blue-gown", "next-press-first")},
			SetAside:  []SetAside{{Note: part("wren", "next-measure-elbow-bent"), Because: "the sleeve is short"}},
			Used:      []Movement{{Material: ref("striped-linen"), Amount: metres(3 * quantity.Metre / 2), Lot: "first bale"}},
			Bought:    []Movement{{Material: ref("striped-linen"), Amount: metres(2 * quantity.Metre), Cost: euros(40), From: "the fair"}},
			LeftOver:  []Movement{{Material: ref("striped-linen"), Size: quantity.Size{Width: 20 * cm, Length: 80 * cm}, Grain: "straight", Pieces: 3}},
			Fitted:    []Fault{{At: "upper arm", Fault: "binds"}},
			Moves:     Moves{Reach: No, Sit: Yes, Walk: Yes, DressAlone: No},
			Photos:    []Photo{{File: word("photos/back.jpg")}},
		},
		"patterns/jacket-draft": &Pattern{
			Page: Page{Title: "Jacket draft"}, Garment: "jacket", Era: date(t, "178X"), From: "drafted at the kitchen table",
			Size: "14", After: green,
			Changed: []Amendment{{
				Date: edtf.DayOf(2026, 3, 1), What: "wider sleeve", Measures: Changes{{Point: arm, By: 2 * cm}}, OnPattern: Yes,
			}},
			Photos: []Photo{{File: word("draft.png")}},
		},
		"references/green-jacket": &Reference{
			Page: Page{Title: "Green jacket"}, Type: "surviving garment", Date: date(t, "ca. 1785"), Creator: "unknown hand",
			Publisher: "none", Holder: "a house by the river", Accession: "1.23", Address: "https://example.org/green-jacket",
			Shows: words("piped armhole", "long sleeve"), Lacks: words("collar"),
			Photos: []Photo{{File: word("green.png"), Alt: "The front"}},
		},
		"materials/striped-linen": &Material{
			Page: Page{Title: "Striped linen"}, What: "cloth", Fibre: "linen", Weave: "plain", Colour: "blue and white",
			Width: 140 * cm, Thickness: quantity.Millimetre / 2, Weight: "light", Shrinks: "5 %", Nap: Yes, Made: date(t, "2025"),
			From: "the fair", Price: euros(20), Photos: []Photo{{File: word("linen.png")}},
		},
		"techniques/piping": &Technique{
			Page: Page{Title: "Piping"}, Era: date(t, "1780s"), Tools: []string{"awl"}, Cautions: []string{"mind the iron"},
			After: []Ref{ref("green-jacket"), ref("2026-02-14-fitting")}, Photos: []Photo{{File: word("piping.png")}},
		},
		"occasions/market-day": &Occasion{
			Page: Page{Title: "Market day"}, Date: edtf.DayOf(2026, 6, 1), Until: edtf.DayOf(2026, 6, 2), Place: "the green",
			Portrays: date(t, "1784"), Weather: "rain", Worn: refs("striped-jacket"), Photos: []Photo{{File: word("day.png")}},
		},
	} {
		t.Run(string(id), func(t *testing.T) {
			if diff := cmp.Diff(want, record[Record](t, j, id), values); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// A field added to a kind must be added to the fixture too, or nothing here would
// look at it.
func TestEveryFieldIsInTheFixture(t *testing.T) {
	j := everyField(t)
	given := make(map[string]bool)
	visit := func(v reflect.Value, where front.Where) {
		eachField(v.Type(), func(of, name string) {
			given[of+": "+name] = given[of+": "+name] || where.Has(name)
		})
	}
	for _, r := range j.Records() {
		eachGroup(reflect.ValueOf(r).Elem(), visit)
	}
	eachGroup(reflect.ValueOf(j.Settings).Elem(), visit)
	if len(given) < 120 {
		t.Errorf("only %d fields were looked at", len(given))
	}
	for name, ok := range given {
		if !ok {
			t.Errorf("no page of the fixture gives the field %s", name)
		}
	}
}

// Every field, and every word, link and measure in them, knows the bytes it was
// written in.
func TestEveryFieldHasItsPlace(t *testing.T) {
	j := everyField(t)
	for _, r := range j.Records() {
		eachGroup(reflect.ValueOf(r).Elem(), func(v reflect.Value, where front.Where) {
			eachField(v.Type(), func(_, name string) {
				if !where.Has(name) {
					return
				}
				key, value := where.Key(name), where.Value(name)
				// A value that stands for a whole group is in the place of the key.
				if key.Text() != name && key != value {
					t.Errorf("%s: the key of %q has the bytes %q", key, name, key.Text())
				}
				if value.Text() == "" {
					t.Errorf("%s: the value of %q has no bytes", value, name)
				}
			})
		})
		eachValue(reflect.ValueOf(r).Elem(), func(v any) {
			switch v := v.(type) {
			case Word:
				written(t, v.Span, v.Text)
			case Ref:
				written(t, v.Span, v.To)
			case Reading:
				written(t, v.Key, short(v.Point))
				if v.Span.Text() == "" {
					t.Errorf("%s: a reading has no bytes", v.Key)
				}
			case Change:
				written(t, v.Key, short(v.Point))
			case PointRef:
				written(t, v.Span, short(v.Point))
			}
		})
	}
}

// short is the part of a measure's name by which the fixture calls it.
func short(p measure.Point) string {
	return strings.TrimPrefix(strings.TrimSuffix(p.Measure, " girth"), "natural ")
}

func written(t *testing.T, at source.Span, want string) {
	t.Helper()
	if want != "" && !strings.Contains(at.Text(), want) {
		t.Errorf("%s: %q claims the bytes %q", at, want, at.Text())
	}
}

// eachField visits the names of a struct's fields in the front matter, with that
// of the struct that declares them.
func eachField(t reflect.Type, visit func(of, name string)) {
	for i := range t.NumField() {
		f := t.Field(i)
		name, tagged := f.Tag.Lookup("field")
		name, _, _ = strings.Cut(name, ",")
		switch {
		case tagged && name != "*":
			visit(t.Name(), name)
		case f.Anonymous && !tagged && f.Type == reflect.TypeFor[Page]():
			eachField(f.Type, visit)
		}
	}
}

// eachGroup visits every struct in v that has a place.
func eachGroup(v reflect.Value, visit func(reflect.Value, front.Where)) {
	walk(v, func(v reflect.Value) {
		if v.Kind() == reflect.Struct && v.Type() != reflect.TypeFor[front.Where]() && v.Type() != reflect.TypeFor[Page]() {
			if where := v.FieldByName("Where"); where.IsValid() {
				visit(v, where.Interface().(front.Where))
			}
		}
	})
}

// eachValue visits every struct in v.
func eachValue(v reflect.Value, visit func(any)) {
	walk(v, func(v reflect.Value) {
		if v.Kind() == reflect.Struct {
			visit(v.Interface())
		}
	})
}

// walk visits v and all that it holds of this package, without following pointers.
func walk(v reflect.Value, visit func(reflect.Value)) {
	visit(v)
	switch v.Kind() {
	case reflect.Struct:
		if !strings.HasSuffix(v.Type().PkgPath(), "content/journal") {
			return
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				walk(v.Field(i), visit)
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			walk(v.Index(i), visit)
		}
	case reflect.Map:
		for _, key := range v.MapKeys() {
			walk(v.MapIndex(key), visit)
		}
	}
}
