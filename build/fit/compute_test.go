package fit

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"testing"

	"hussif/content/measure"
	"hussif/content/quantity"
)

// one is a garment measured on one day against a body measured over the same
// stays, with the ease wanted.
func one(garment, body quantity.Length, wanted quantity.Range) Input {
	return Input{
		Build: "builds/jacket", Wearer: "people/wren", Day: day("2026-03-01"),
		Foundation: measure.Foundation{"shift", "stays"},
		Garment:    []Event{{Day: day("2026-02-14"), Measured: []Reading{{bust, exactly(garment)}}}},
		Body:       []Session{{Day: day("2026-01-10"), Over: measure.Foundation{"stays", "shift"}, Readings: []Reading{{bust, exactly(body)}}}},
		Wanted:     []Wanted{{Point: bust, Named: true, Ease: wanted}},
		Catalogue:  measure.Standard(),
	}
}

func TestVerdict(t *testing.T) {
	body := 36 * inch
	wanted := quantity.Range{Least: 0, Most: inch}
	ampleWillDo := func(in *Input) { in.Wanted[0].AcceptAmple = true }
	for _, test := range []struct {
		name    string
		garment quantity.Length
		change  func(*Input)
		verdict Verdict
		delta   quantity.Length
		words   string
	}{
		{"inside the wanted ease", 36*inch + inch/2, nil, Fits, 0, "fits"},
		{"at its lower end", 36 * inch, nil, Fits, 0, "fits"},
		{"at its upper end", 37 * inch, nil, Fits, 0, "fits"},
		{"short", 34*inch + 3*inch/4, nil, Short, -5 * inch / 4, "short by 1 1/4 in"},
		{"ample", 39 * inch, nil, Ample, 2 * inch, "ample by 2 in"},
		{"ample, as the maker likes it", 37*inch + inch/2, ampleWillDo, Ample, inch / 2, "ample by 1/2 in, and that is accepted"},
		{"short, where ample would be liked", 34 * inch, ampleWillDo, Short, -2 * inch, "short by 2 in"},
		{"within the error", 36*inch - inch/8, nil, TooClose, -inch / 8, "too close to call (short by 1/8 in, error 7/16 in)"},
		{"by less than can be shown", 36*inch - quantity.Nanometre, nil, TooClose, -1, "too close to call (short by a hair, error 7/16 in)"},
	} {
		t.Run(test.name, func(t *testing.T) {
			in := one(test.garment, body, wanted)
			if test.change != nil {
				test.change(&in)
			}
			r := row(t, Compute(in), bust)
			if r.Verdict != test.verdict || r.Delta != test.delta || r.Words(inches) != test.words {
				t.Errorf("got %v, delta %s, %q; want %v, %s, %q", r.Verdict, inches.Signed(r.Delta), r.Words(inches),
					test.verdict, inches.Signed(test.delta), test.words)
			}
		})
	}
}

// The guard band of JCGM 106:2012, with a width of one u: on its edge
// nothing is claimed, beyond it something is. u is that of a body girth of 9 mm
// and a garment girth of 6 mm, 10.8 mm by JCGM 100:2008, 5.1.2.
func TestGuardBand(t *testing.T) {
	u := measure.RootSumSquares(9*mm, 6*mm)
	if rounded := (u + mm/20) / (mm / 10); rounded != 108 {
		t.Fatalf("u is %d tenths of a millimetre, not 108", rounded)
	}
	for _, test := range []struct {
		name    string
		off     quantity.Length
		verdict Verdict
	}{
		{"no difference", 0, Fits},
		{"short on the edge", -u, TooClose},
		{"short beyond it", -u - 1, Short},
		{"ample on the edge", u, TooClose},
		{"ample beyond it", u + 1, Ample},
	} {
		t.Run(test.name, func(t *testing.T) {
			r := row(t, Compute(one(36*inch+test.off, 36*inch, quantity.Range{})), bust)
			if r.Error != u || r.Verdict != test.verdict || r.Delta != test.off {
				t.Errorf("got %v, delta %d, error %d; want %v, %d, %d", r.Verdict, r.Delta, r.Error, test.verdict, test.off, u)
			}
		})
	}
}

func TestAboutDoublesTheError(t *testing.T) {
	in := one(36*inch, 36*inch, quantity.Range{})
	in.Body[0].Readings[0].Value.State = quantity.About
	if r := row(t, Compute(in), bust); r.Error != measure.RootSumSquares(18*mm, 6*mm) {
		t.Errorf("error is %d", r.Error)
	}
	in.Garment[0].Measured[0].Value.State = quantity.About
	if r := row(t, Compute(in), bust); r.Error != measure.RootSumSquares(18*mm, 12*mm) {
		t.Errorf("error is %d", r.Error)
	}
}

func TestMissingDatum(t *testing.T) {
	later := day("2026-05-01")
	for _, test := range []struct {
		name    string
		change  func(*Input)
		verdict Verdict
		words   string
		todo    string
	}{
		{"no wearer", func(in *Input) { in.Wearer = "" }, NoWearer, "nobody is named as its wearer", "name the wearer"},
		{"garment never measured", func(in *Input) { in.Garment = nil }, NoGarment, "garment not measured", "measure the garment: bust girth"},
		{"garment noted as not measured", func(in *Input) { in.Garment[0].Measured[0].Value = quantity.Estimate{State: quantity.NotMeasured} },
			NoGarment, "garment not measured", "measure the garment: bust girth"},
		{"garment measured later, and again", func(in *Input) {
			in.Garment[0].Day = later
			in.Garment = append(in.Garment, Event{Day: later + 30, Measured: in.Garment[0].Measured})
		}, GarmentLater,
			"garment not measured before 2026-05-01", "measure the garment: bust girth"},
		{"garment unknown", func(in *Input) { in.Garment[0].Measured[0].Value = quantity.Estimate{State: quantity.Unknown} },
			UnknownGarment, "measure of the garment unknown", "measure the garment: bust girth"},
		{"garment unknown since", func(in *Input) {
			in.Garment = append(in.Garment, Event{Day: in.Day, Measured: []Reading{{bust, quantity.Estimate{State: quantity.Unknown}}}})
		}, UnknownGarment, "measure of the garment unknown", "measure the garment: bust girth"},
		{"altered by nobody knows how much", func(in *Input) {
			in.Garment = append(in.Garment, Event{Day: in.Day, Unsure: []measure.Point{bust}})
		}, UnsureGarment, "garment altered since it was measured, by how much is not known", "measure the garment again: bust girth"},
		{"body never measured", func(in *Input) { in.Body = nil }, NoBody, "no body measure", "measure bust girth over shift and stays"},
		{"body measured over other layers", func(in *Input) { in.Body[0].Over = measure.Foundation{"shift"} }, NoBodyOver,
			"no body measure over shift and stays", "measure bust girth over shift and stays"},
		{"body measured unclothed", func(in *Input) { in.Body[0].Over, in.Foundation = in.Foundation, nil }, NoBodyOver,
			"no body measure unclothed", "measure bust girth unclothed"},
		{"one petticoat for two", func(in *Input) {
			in.Foundation = measure.Foundation{"petticoat", "petticoat"}
			in.Body[0].Over = measure.Foundation{"petticoat"}
		}, NoBodyOver, "no body measure over two petticoats", "measure bust girth over two petticoats"},
		{"body measured later, and again", func(in *Input) {
			again := in.Body[0]
			in.Body[0].Day, again.Day = later, later+30
			in.Body = append(in.Body, again)
		}, BodyLater,
			"no body measure over shift and stays before 2026-05-01", "measure bust girth over shift and stays"},
		{"body unknown", func(in *Input) { in.Body[0].Readings[0].Value = quantity.Estimate{State: quantity.Unknown} },
			UnknownBody, "body measure unknown", "measure bust girth over shift and stays"},
		{"no ease named", func(in *Input) { in.Wanted[0].Named = false }, NoEase,
			"1/2 in of ease, and no ease is named as wanted", "name the ease wanted: bust girth"},
		{"no ease named, and less than none", func(in *Input) {
			in.Wanted = nil
			in.Garment[0].Measured[0].Value.Length = 34 * inch
		}, NoEase, "2 in less than the body, and no ease is named as wanted", "name the ease wanted: bust girth"},
	} {
		t.Run(test.name, func(t *testing.T) {
			in := one(36*inch+inch/2, 36*inch, quantity.Range{Least: 0, Most: inch})
			test.change(&in)
			table := Compute(in)
			r := row(t, table, bust)
			if r.Verdict != test.verdict || r.Words(inches) != test.words {
				t.Errorf("got %v, %q; want %v, %q", r.Verdict, r.Words(inches), test.verdict, test.words)
			}
			if r.Verdict.Judged() || r.Delta != 0 || r.Adjusted != nil {
				t.Errorf("a figure was made of nothing: %+v", r)
			}
			if len(table.Missed) != 1 || table.Missed[0].Words() != test.todo {
				t.Errorf("missed %+v, want %q", table.Missed, test.todo)
			}
		})
	}
}

func TestNotMeasuredLeavesTheEarlierValue(t *testing.T) {
	in := one(36*inch, 36*inch, quantity.Range{})
	notToday := []Reading{{bust, quantity.Estimate{State: quantity.NotMeasured}}}
	in.Garment = append(in.Garment, Event{Day: in.Day, Measured: notToday})
	in.Body = append(in.Body, Session{Day: in.Day, Over: in.Foundation, Readings: notToday})
	if r := row(t, Compute(in), bust); r.Verdict != Fits {
		t.Errorf("got %q", r.Words(inches))
	}
}

func TestSidesApart(t *testing.T) {
	in := one(0, 0, quantity.Range{})
	in.Garment[0].Measured = []Reading{{arm, exactly(12 * inch)}}
	in.Body[0].Readings = []Reading{{left, exactly(11 * inch)}, {right, exactly(13 * inch)}}
	in.Wanted = []Wanted{{Point: arm, Named: true, Ease: quantity.Range{Least: inch, Most: inch}}}
	table := Compute(in)
	if got := row(t, table, left); got.Verdict != Fits {
		t.Errorf("left %q", got.Words(inches))
	}
	if got := row(t, table, right); got.Words(inches) != "short by 2 in" {
		t.Errorf("right %q", got.Words(inches))
	}
	if len(table.Rows) != 2 {
		t.Errorf("%d rows, want one for each side", len(table.Rows))
	}
	in.Body[0].Readings = []Reading{{arm, exactly(11 * inch)}}
	in.Garment[0].Measured = append(in.Garment[0].Measured, Reading{right, exactly(14 * inch)})
	if got := row(t, Compute(in), right); got.Delta != 2*inch {
		t.Errorf("a body measured once serves both sides; got %q", got.Words(inches))
	}
}

// The same amount on garment and body changes no delta; the order in which the
// foundation is written, and in which events of different days are given,
// changes nothing at all.
func TestProperties(t *testing.T) {
	random := rand.New(rand.NewPCG(1784, 1912))
	some := func() quantity.Length { return quantity.Length(random.Int64N(int64(50 * inch))) }
	for range 500 {
		least := some() - 25*inch
		in := one(some(), some(), quantity.Range{Least: least, Most: least + some()})
		in.Foundation = measure.Foundation{"shift", "stays", "petticoat", "petticoat"}
		in.Body[0].Over = append(measure.Foundation(nil), in.Foundation...)
		before := row(t, Compute(in), bust)

		random.Shuffle(4, func(i, k int) {
			over := in.Body[0].Over
			over[i], over[k] = over[k], over[i]
		})
		shuffled := row(t, Compute(in), bust)
		shuffled.Body.Over = before.Body.Over
		if !reflect.DeepEqual(before, shuffled) {
			t.Fatalf("the order of layers matters:\n%+v\n%+v", before, shuffled)
		}

		more := some()
		in.Garment[0].Measured[0].Value.Length += more
		in.Body[0].Readings[0].Value.Length += more
		if after := row(t, Compute(in), bust); after.Delta != before.Delta || after.Verdict != before.Verdict {
			t.Fatalf("the same on both sides gives %d for %d", after.Delta, before.Delta)
		}
	}
}

func TestVerdictsHaveWords(t *testing.T) {
	said := make(map[string]Verdict)
	for v := Fits; v <= NoEase; v++ {
		r := Row{Verdict: v, Delta: inch}
		if v == Short {
			r.Delta = -inch
		}
		words := r.Words(inches)
		if before, twice := said[words]; twice || words == "" {
			t.Errorf("verdict %d says %q, as verdict %d does", v, words, before)
		}
		said[words] = v
	}
}

func ExampleRow_Words() {
	in := one(36*inch-inch/8, 36*inch, quantity.Range{Least: 0, Most: inch})
	fmt.Println(Compute(in).Rows[0].Words(quantity.Format{}))
	// Output: too close to call (short by 1/8 in, error 3/8 in)
}
