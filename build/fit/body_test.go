package fit

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat"

	"hussif/content/edtf"
	"hussif/content/measure"
	"hussif/content/quantity"
)

var (
	shift = measure.Foundation{"shift"}
	stays = measure.Foundation{"shift", "stays"}
)

func taken(on string, over measure.Foundation, l quantity.Length) Session {
	return Session{Day: day(on), Over: over, Readings: []Reading{{bust, exactly(l)}}}
}

func TestWhichSessionCounts(t *testing.T) {
	for _, test := range []struct {
		name      string
		sessions  []Session
		body      quantity.Length
		read      string // the day of the reading
		estimated bool
	}{
		{"the last over the foundation", []Session{
			taken("2024-01-10", stays, 35*inch), taken("2025-01-10", stays, 36*inch), taken("2027-01-10", stays, 40*inch),
		}, 36 * inch, "2025-01-10", false},
		{"in whatever order they are given", []Session{
			taken("2027-01-10", stays, 40*inch), taken("2025-01-10", stays, 36*inch), taken("2024-01-10", stays, 35*inch),
		}, 36 * inch, "2025-01-10", false},
		{"a newer one over a shift, where one day gives the difference", []Session{
			taken("2024-01-10", stays, 35*inch), taken("2024-01-10", shift, 36*inch), taken("2025-01-10", shift, 38*inch),
		}, 37 * inch, "2025-01-10", true},
		{"that difference learnt on a later day", []Session{
			taken("2025-01-10", shift, 38*inch), taken("2027-01-10", stays, 35*inch), taken("2027-01-10", shift, 36*inch),
		}, 37 * inch, "2025-01-10", true},
		{"the one over the foundation, of two on a day", []Session{
			taken("2025-01-10", stays, 35*inch), taken("2025-01-10", shift, 36*inch),
		}, 35 * inch, "2025-01-10", false},
		{"the same, given first", []Session{
			taken("2025-01-10", shift, 36*inch), taken("2025-01-10", stays, 35*inch),
		}, 35 * inch, "2025-01-10", false},
		{"an older one, where the newer cannot be compared", []Session{
			taken("2024-01-10", stays, 35*inch), taken("2025-01-10", shift, 38*inch),
		}, 35 * inch, "2024-01-10", false},
	} {
		t.Run(test.name, func(t *testing.T) {
			in := one(40*inch, 0, quantity.Range{})
			in.Body = test.sessions
			got := row(t, Compute(in), bust).Body
			if got.Length != test.body || got.Day != day(test.read) || got.Estimated() != test.estimated {
				t.Errorf("got %s read on %s, estimated %t", inches.Length(got.Length), got.Day, got.Estimated())
			}
		})
	}
}

func TestNewerSessionThatCannotBeCompared(t *testing.T) {
	in := one(36*inch, 0, quantity.Range{})
	in.Body = []Session{taken("2024-01-10", stays, 36*inch), taken("2023-01-10", nil, 35*inch), taken("2025-01-10", shift, 38*inch)}
	got := row(t, Compute(in), bust)
	if len(got.Body.Apart) != 1 || !got.Body.Apart[0].Same(shift) || got.Verdict != Fits {
		t.Errorf("got %q beside %v, want only the newer session over a shift", got.Words(inches), got.Body.Apart)
	}
}

func TestOffsetOfOneDay(t *testing.T) {
	in := one(37*inch, 0, quantity.Range{})
	in.Body = []Session{taken("2024-01-10", stays, 35*inch), taken("2024-01-10", shift, 36*inch), taken("2025-01-10", shift, 38*inch)}
	in.Body[1].Readings[0].Value.State = quantity.About
	got := row(t, Compute(in), bust)
	offset := measure.RootSumSquares(9*mm, 18*mm)
	if got.Body.Offset.By != -inch || got.Body.Offset.Error != offset {
		t.Errorf("offset %s, error %d", inches.Signed(got.Body.Offset.By), got.Body.Offset.Error)
	}
	if want := measure.RootSumSquares(9*mm, 6*mm, offset); got.Error != want {
		t.Errorf("error %d, want %d: it counts the offset's", got.Error, want)
	}
}

// Mean and spread against gonum's stat package.
func TestOffsetOfSeveralDays(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 12))
	for range 200 {
		in := one(37*inch, 0, quantity.Range{})
		in.Body = nil
		var differences []float64
		for n := range 2 + random.IntN(6) {
			on := day("2020-01-10") + edtf.Day(n)
			a := 36*inch + quantity.Length(random.Int64N(int64(2*inch)))
			b := 35*inch + quantity.Length(random.Int64N(int64(2*inch)))
			in.Body = append(in.Body, taken(on.String(), shift, a), taken(on.String(), stays, b))
			differences = append(differences, float64(b-a))
		}
		in.Body = append(in.Body, taken("2025-01-10", shift, 38*inch))
		mean, spread := stat.MeanStdDev(differences, nil)
		got := row(t, Compute(in), bust).Body.Offset
		if math.Abs(float64(got.By)-mean) > 1 || math.Abs(float64(got.Error)-spread) > 1 {
			t.Fatalf("got %d and %d, gonum %f and %f", got.By, got.Error, mean, spread)
		}
		if len(got.Days) != len(differences) {
			t.Fatalf("rests on %d days of %d", len(got.Days), len(differences))
		}
	}
}
