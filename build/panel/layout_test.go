package panel_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"hussif/build/panel"
	"hussif/content/quantity"
)

func piece(width, length float64, grain panel.Grain) panel.Piece {
	return panel.Piece{
		Size:  quantity.Size{Width: quantity.Length(width * float64(cm)), Length: quantity.Length(length * float64(cm))},
		Grain: grain,
	}
}

func layOut(t testing.TB, s panel.Shape, n int, p panel.Piece, grain panel.Grain, oneWay bool) panel.Layout {
	t.Helper()
	l, err := panel.LayOut(s, n, p, grain, oneWay)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// Trapezia of 2 and 8 cm, 4 cm high, without allowance. Head to tail each takes
// 5 cm, the mean of both, so three take 8 + 5 + 5; all one way they take 24.
func TestLayOutNestsTrapeziaHeadToTail(t *testing.T) {
	s := cut(t, []panel.Level{{0, 2 * cm}, {4 * cm, 8 * cm}}, panel.Allowance{})
	got := layOut(t, s, 3, piece(18, 4, panel.Straight), panel.Straight, false)
	want := []panel.Placement{
		{At: panel.Point{X: 4 * cm}},
		{At: panel.Point{X: 9 * cm, Y: 4 * cm}, Turn: 180, Flipped: true},
		{At: panel.Point{X: 14 * cm}},
	}
	if !got.Found {
		t.Fatalf("not found, lacks %v", got.Lacks)
	}
	if diff := cmp.Diff(want, got.Placements); diff != "" {
		t.Error(diff)
	}
	if got.Used != (quantity.Size{Width: 18 * cm, Length: 4 * cm}) {
		t.Errorf("takes %v, want all of it", got.Used)
	}

	nap := layOut(t, s, 3, piece(18, 4, panel.Straight), panel.Straight, true)
	if nap.Found || nap.Lacks != (panel.Lack{Wider: 6 * cm, Longer: 4 * cm}) {
		t.Errorf("with a nap: found %v, lacks %v, want 6 cm in width or a second row of 4 cm", nap.Found, nap.Lacks)
	}
	narrow := layOut(t, s, 3, piece(17.9, 4, panel.Straight), panel.Straight, false)
	if narrow.Found || narrow.Lacks.Wider != cm/10 {
		t.Errorf("a millimetre too narrow: found %v, lacks %v", narrow.Found, narrow.Lacks)
	}
}

// A strip of 3 x 10 cm on pieces of every grain, asked for on every grain.
func TestLayOutTurnsToTheGrain(t *testing.T) {
	s := cut(t, []panel.Level{{0, 3 * cm}, {10 * cm, 3 * cm}}, panel.Allowance{})
	diagonal := 13 / math.Sqrt2 // what it takes each way at 45 degrees, 9.19 cm
	for _, c := range []struct {
		name          string
		width, length float64
		has, asked    panel.Grain
		found         bool
		turn          int
	}{
		{"along the warp", 3, 10, panel.Straight, panel.Straight, true, 0},
		{"not across it", 10, 3, panel.Straight, panel.Straight, false, 0},
		{"a piece cut across", 10, 3, panel.Cross, panel.Straight, true, 90},
		{"crosswise", 10, 3, panel.Straight, panel.Cross, true, 90},
		{"crosswise of a piece cut across", 3, 10, panel.Cross, panel.Cross, true, 0},
		{"bias", diagonal + 1e-6, diagonal + 1e-6, panel.Straight, panel.Bias, true, 45},
		{"bias, a hair too small", diagonal - 1e-6, diagonal, panel.Straight, panel.Bias, false, 45},
		{"bias of a bias piece", 10, 3, panel.Bias, panel.Bias, true, 90},
		{"straight of a bias piece", 9.2, 9.2, panel.Bias, panel.Straight, true, 45},
		{"any way", 10, 3, panel.UnknownGrain, panel.UnknownGrain, true, 90},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := layOut(t, s, 1, piece(c.width, c.length, c.has), c.asked, false)
			if got.Found != c.found {
				t.Fatalf("found is %v, want %v; lacks %v", got.Found, c.found, got.Lacks)
			}
			if c.found && got.Placements[0].Turn != c.turn {
				t.Errorf("turned by %d degrees, want %d", got.Placements[0].Turn, c.turn)
			}
		})
	}
}

func TestLayOutNeverSaysYesWhereTheGrainIsUnknown(t *testing.T) {
	s := cut(t, []panel.Level{{0, 3 * cm}, {10 * cm, 3 * cm}}, panel.Allowance{})
	got := layOut(t, s, 2, piece(50, 50, panel.UnknownGrain), panel.Straight, false)
	if got.Found || !got.GrainUnknown || len(got.Placements) != 2 {
		t.Errorf("got %+v, want placements that only suppose the grain", got)
	}
}

func TestLayOutOnTheBiasGoesDownInStairs(t *testing.T) {
	// Four strips of 2 x 10 cm side by side make a square of 8 x 10 turned by 45
	// degrees, which takes 18/sqrt 2 = 12.73 cm each way.
	s := cut(t, []panel.Level{{0, 2 * cm}, {10 * cm, 2 * cm}}, panel.Allowance{})
	got := layOut(t, s, 4, piece(12.74, 12.74, panel.Straight), panel.Bias, true)
	if !got.Found {
		t.Errorf("not found, lacks %v", got.Lacks)
	}
}

func TestLayOutRefuses(t *testing.T) {
	s := cut(t, []panel.Level{{0, cm}, {cm, cm}}, panel.Allowance{})
	for _, c := range []struct {
		n             int
		width, length float64
		field         string
	}{
		{0, 1, 1, "pieces"}, {-1, 1, 1, "pieces"}, {1e6, 1, 1, "pieces"},
		{1, 0, 1, "piece width"}, {1, -1, 1, "piece width"}, {1, 1e7, 1, "piece width"},
		{1, 1, 0, "piece length"}, {1, 1, 1e7, "piece length"},
	} {
		_, err := panel.LayOut(s, c.n, piece(c.width, c.length, panel.Straight), panel.Straight, false)
		var e *panel.Error
		if !errors.As(err, &e) || e.Field != c.field {
			t.Errorf("%+v: got %v", c, err)
		}
	}
	if l, err := panel.LayOut(panel.Shape{}, 1, piece(1, 1, panel.Straight), panel.Straight, false); err != nil || l.Found {
		t.Errorf("a shape without an outline: %v, %v", l, err)
	}
}

// Random shapes: each yes is checked in another way than the code's own, each no
// by adding what is said to be missing, and no larger piece says no.
func TestLayOutRandom(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	yes := 0
	for range 1500 {
		levels, allow := randomPanel(r)
		s := cut(t, levels, allow)
		n := 1 + r.IntN(7)
		p := piece(1+r.Float64()*90, 1+r.Float64()*90, panel.Grain(1+r.IntN(3)))
		grain, oneWay := panel.Grain(r.IntN(4)), r.IntN(2) == 0
		got := layOut(t, s, n, p, grain, oneWay)
		if diff := cmp.Diff(got, layOut(t, s, n, p, grain, oneWay)); diff != "" {
			t.Fatal("the same question has another answer:", diff)
		}
		if !got.Found {
			checkLack(t, s, n, p, grain, oneWay, got.Lacks)
			continue
		}
		yes++
		checkPlacements(t, r, s, n, p, got, oneWay)
		wider, longer := p, p
		wider.Size.Width += quantity.Length(r.Int64N(int64(40 * cm)))
		longer.Size.Length += quantity.Length(r.Int64N(int64(40 * cm)))
		for _, larger := range []panel.Piece{wider, longer} {
			if !layOut(t, s, n, larger, grain, oneWay).Found {
				t.Fatalf("%v holds %d of %v on %v, but %v does not", p, n, levels, grain, larger)
			}
		}
	}
	if yes < 300 || yes > 1300 {
		t.Errorf("%d of 1500 found: the test no longer asks both kinds", yes)
	}
}

func checkLack(t *testing.T, s panel.Shape, n int, p panel.Piece, grain panel.Grain, oneWay bool, l panel.Lack) {
	t.Helper()
	tried := 0
	for _, more := range []quantity.Size{{Width: l.Wider}, {Length: l.Longer}, l.Both} {
		if more == (quantity.Size{}) {
			continue
		}
		tried++
		larger := p
		larger.Size.Width += more.Width
		larger.Size.Length += more.Length
		if !layOut(t, s, n, larger, grain, oneWay).Found {
			t.Fatalf("%d of %v on %v, grain %v: %v more does not help", n, s.Levels, p, grain, more)
		}
		smaller := larger // by one nanometre in what was missing
		if more.Width > 0 {
			smaller.Size.Width--
		} else {
			smaller.Size.Length--
		}
		if more != l.Both && layOut(t, s, n, smaller, grain, oneWay).Found {
			t.Fatalf("%d of %v on %v: less than %v more would do", n, s.Levels, p, more)
		}
	}
	if tried == 0 {
		t.Fatalf("%d of %v on %v: not found, and nothing is missing", n, s.Levels, p)
	}
}

// checkPlacements looks for overlaps with points strewn over each panel and with
// edges that cross.
func checkPlacements(t *testing.T, r *rand.Rand, s panel.Shape, n int, p panel.Piece, l panel.Layout, oneWay bool) {
	t.Helper()
	const tolerance = 20 // nanometres
	if len(l.Placements) != n {
		t.Fatalf("%d placements, want %d", len(l.Placements), n)
	}
	var all [][]panel.Point
	for i, place := range l.Placements {
		if oneWay && place.Turn != l.Placements[0].Turn {
			t.Fatalf("panels point both ways on a cloth with a nap: %v", l.Placements)
		}
		if place.Flipped != (i%2 == 1) {
			t.Fatalf("placement %d of a pair: flipped is %v", i, place.Flipped)
		}
		outline := place.Put(s.Cut)
		for _, q := range outline {
			if q.X < -tolerance || q.Y < -tolerance || q.X > p.Size.Width+tolerance || q.Y > p.Size.Length+tolerance {
				t.Fatalf("%v is not on the piece %v", q, p)
			}
		}
		all = append(all, outline)
	}
	for i, a := range all {
		for range 40 {
			k, f := r.IntN(len(a)), r.Float64()
			b := a[r.IntN(len(a))]
			x, y := mix(a[k].X, b.X, f), mix(a[k].Y, b.Y, f)
			if !inside(a, x, y) || distance(a, x, y) < tolerance {
				continue
			}
			for j, other := range all {
				if j != i && inside(other, x, y) && distance(other, x, y) > tolerance {
					t.Fatalf("panels %d and %d of %v share (%g, %g): %v", i, j, s.Levels, x, y, l.Placements)
				}
			}
		}
		for _, other := range all[:i] {
			if crossing(a, other, tolerance) {
				t.Fatalf("outlines cross: %v of %v", l.Placements, s.Levels)
			}
		}
	}
}

// crossing tells whether an edge of one outline passes through an edge of the
// other, and not just by so little.
func crossing(a, b []panel.Point, tolerance float64) bool {
	side := func(p, q, x panel.Point) float64 {
		dx, dy := float64(q.X-p.X), float64(q.Y-p.Y)
		return (dx*float64(x.Y-p.Y) - dy*float64(x.X-p.X)) / math.Hypot(dx, dy)
	}
	apart := func(f, g float64) bool { return f > tolerance && g < -tolerance || f < -tolerance && g > tolerance }
	for i, p := range a {
		q := a[(i+1)%len(a)]
		for j, x := range b {
			y := b[(j+1)%len(b)]
			if apart(side(p, q, x), side(p, q, y)) && apart(side(x, y, p), side(x, y, q)) {
				return true
			}
		}
	}
	return false
}

func FuzzLayOut(f *testing.F) {
	inch := int64(quantity.Inch)
	f.Add(inch, 4*inch, 9*inch, inch/2, 3, 9*inch, 31*inch, 1, 1, false)
	f.Add(int64(0), 4*inch, 9*inch, inch/2, 4, 20*inch, 31*inch, 1, 3, true)
	f.Add(3*inch+1, inch+1, 5*inch+1, inch/4, 12, 20*inch, 20*inch, 0, 0, false)
	f.Fuzz(func(t *testing.T, top, foot, height, allow int64, n int, width, length int64, has, asked int, oneWay bool) {
		a := quantity.Length(allow)
		s, err := panel.Cut(
			[]panel.Level{{0, quantity.Length(top)}, {quantity.Length(height), quantity.Length(foot)}},
			panel.Allowance{Sides: a, Top: a, Foot: a})
		if err != nil {
			return
		}
		p := panel.Piece{Size: quantity.Size{Width: quantity.Length(width), Length: quantity.Length(length)}, Grain: panel.Grain(has)}
		l, err := panel.LayOut(s, n, p, panel.Grain(asked), oneWay)
		if err != nil {
			return
		}
		if l.Found {
			checkPlacements(t, rand.New(rand.NewPCG(7, 8)), s, n, p, l, oneWay)
		} else if l.Placements == nil && l.Lacks == (panel.Lack{}) {
			t.Errorf("not found, and nothing is missing: %v", s.Levels)
		}
	})
}
