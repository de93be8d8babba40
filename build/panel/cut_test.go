package panel_test

import (
	"errors"
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/image/vector"

	"hussif/build/panel"
	"hussif/content/quantity"
)

const cm = quantity.Centimetre

func centimetres(points ...float64) []panel.Point {
	var all []panel.Point
	for i := 0; i < len(points); i += 2 {
		all = append(all, panel.Point{
			X: quantity.Length(math.Round(points[i] * float64(cm))),
			Y: quantity.Length(math.Round(points[i+1] * float64(cm))),
		})
	}
	return all
}

func cut(t testing.TB, levels []panel.Level, allow panel.Allowance) panel.Shape {
	t.Helper()
	s, err := panel.Cut(levels, allow)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Both sides have the slope of a 3-4-5 triangle, so that the moved side is
// 0.8 x - 0.6 y = 0.8 + 1 (in cm), by hand.
func TestCutTrapezium(t *testing.T) {
	got := cut(t, []panel.Level{{0, 2 * cm}, {4 * cm, 8 * cm}}, panel.Allowance{Sides: cm, Top: cm, Foot: 2 * cm})
	if diff := cmp.Diff(centimetres(1, 0, 4, 4, -4, 4, -1, 0), got.Finished); diff != "" {
		t.Error("finished outline:", diff)
	}
	if diff := cmp.Diff(centimetres(1.5, -1, 6.75, 6, -6.75, 6, -1.5, -1), got.Cut); diff != "" {
		t.Error("cutting outline:", diff)
	}
	if want := (quantity.Size{Width: 13*cm + cm/2, Length: 7 * cm}); got.CutSize != want {
		t.Errorf("cut size %v, want %v", got.CutSize, want)
	}
	if want := (quantity.Size{Width: 8 * cm, Length: 4 * cm}); got.FinishedSize != want {
		t.Errorf("finished size %v, want %v", got.FinishedSize, want)
	}
	if math.Abs(got.FinishedArea-2000) > 1e-9 || math.Abs(got.CutArea-5775) > 1e-9 {
		t.Errorf("areas %v and %v mm², want 2000 and 5775", got.FinishedArea, got.CutArea)
	}
}

// A gusset that begins in a point, of the same slope. The point is cut straight
// across; the corners at the foot have cos = -0.6 between the normals, so their
// mitres would reach sqrt 5 allowances and are cut square, which cuts each moved
// edge (sqrt 5 - 1)/2 beyond the foot of its allowance.
func TestCutGusset(t *testing.T) {
	got := cut(t, []panel.Level{{0, 0}, {4 * cm, 6 * cm}}, panel.Allowance{Sides: cm, Top: cm, Foot: cm})
	if diff := cmp.Diff(centimetres(0, 0, 3, 4, -3, 4), got.Finished); diff != "" {
		t.Error("finished outline:", diff)
	}
	g := (math.Sqrt(5) - 1) / 2
	want := centimetres(
		0.5, -1, 3.8+0.6*g, 3.4+0.8*g, 3+g, 5,
		-3-g, 5, -3.8-0.6*g, 3.4+0.8*g, -0.5, -1)
	if diff := cmp.Diff(want, got.Cut); diff != "" {
		t.Error("cutting outline:", diff)
	}
	if math.Abs(got.FinishedArea-1200) > 1e-9 {
		t.Errorf("area %v mm², want 1200", got.FinishedArea)
	}
}

// An edge that is shorter than the allowances on both sides of it vanishes.
func TestCutInwardCornersCloseOverAShortEdge(t *testing.T) {
	levels := []panel.Level{{0, 10 * cm}, {9 * cm, cm}, {9*cm + 2*quantity.Millimetre, cm}, {18 * cm, 10 * cm}}
	got := cut(t, levels, panel.Allowance{Sides: 2 * cm, Top: cm, Foot: cm})
	inner := 0
	for _, p := range got.Cut {
		if p.Y > cm && p.Y < 17*cm {
			inner++
		}
	}
	if inner != 2 {
		t.Errorf("the waist has %d points between the ends, want one on each side: %v", inner, got.Cut)
	}
}

func TestCutNoAllowanceIsTheFinishedOutline(t *testing.T) {
	levels := []panel.Level{{-3 * cm, 3 * cm}, {0, 7 * cm}, {5 * cm, 2 * cm}, {9 * cm, 0}}
	got := cut(t, levels, panel.Allowance{})
	if diff := cmp.Diff(got.Finished, got.Cut); diff != "" {
		t.Error(diff)
	}
}

func TestCutRefuses(t *testing.T) {
	ok := []panel.Level{{0, cm}, {9 * cm, 2 * cm}}
	many := make([]panel.Level, 41)
	for i := range many {
		many[i] = panel.Level{At: quantity.Length(i) * cm, Width: cm}
	}
	for _, c := range []struct {
		name   string
		levels []panel.Level
		allow  panel.Allowance
		field  string
		level  int
		reason string
	}{
		{"no level", nil, panel.Allowance{}, "levels", 0, "two levels"},
		{"one level", ok[:1], panel.Allowance{}, "levels", 0, "two levels"},
		{"too many", many, panel.Allowance{}, "levels", 0, "at most"},
		{"not increasing", []panel.Level{{cm, cm}, {cm, cm}}, panel.Allowance{}, "at", 2, "further along"},
		{"too close", []panel.Level{{0, cm}, {5, cm}}, panel.Allowance{}, "at", 2, "1 mm apart"},
		{"too long", []panel.Level{{0, cm}, {21 * quantity.Metre, cm}}, panel.Allowance{}, "at", 2, "20 m"},
		{"negative width", []panel.Level{{0, -1}, {cm, cm}}, panel.Allowance{}, "width", 1, "less than nothing"},
		{"too wide", []panel.Level{{0, cm}, {cm, math.MaxInt64}}, panel.Allowance{}, "width", 2, "20 m"},
		{"all nothing", []panel.Level{{0, 0}, {cm, 0}}, panel.Allowance{}, "levels", 0, "wider than nothing"},
		{"a point in the middle", []panel.Level{{0, cm}, {cm, 0}, {2 * cm, cm}}, panel.Allowance{}, "width", 2, "come to a point"},
		{"negative sides", ok, panel.Allowance{Sides: -1}, "sides", 0, "allowance"},
		{"negative top", ok, panel.Allowance{Top: -1}, "top", 0, "allowance"},
		{"foot too wide", ok, panel.Allowance{Foot: 2 * quantity.Metre}, "foot", 0, "allowance"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := panel.Cut(c.levels, c.allow)
			var e *panel.Error
			if !errors.As(err, &e) {
				t.Fatalf("got %v, want an Error", err)
			}
			if e.Field != c.field || e.Level != c.level || !strings.Contains(e.Reason, c.reason) {
				t.Errorf("got %q (field %q, level %d), want %q of %q, level %d", e.Error(), e.Field, e.Level, c.reason, c.field, c.level)
			}
		})
	}
	_, err := panel.Cut([]panel.Level{{0, -1}, {-1, cm}}, panel.Allowance{Top: -1})
	if lines := strings.Count(err.Error(), "\n") + 1; lines != 3 {
		t.Errorf("three faults make %d lines: %v", lines, err)
	}
}

// randomPanel draws a panel of up to six levels, rough or smooth, with or without points.
func randomPanel(r *rand.Rand) ([]panel.Level, panel.Allowance) {
	mm := func(most int) quantity.Length {
		return quantity.Length(r.IntN(most)+1) * quantity.Millimetre
	}
	levels := make([]panel.Level, 2+r.IntN(5))
	at := quantity.Length(r.IntN(200)-100) * quantity.Millimetre
	steep := []int{3, 40, 300}[r.IntN(3)]
	for i := range levels {
		levels[i] = panel.Level{At: at, Width: mm(200)}
		at += mm(steep)
	}
	if r.IntN(3) == 0 {
		levels[0].Width = 0
	}
	if len(levels) > 2 && r.IntN(4) == 0 {
		levels[len(levels)-1].Width = 0
	}
	allowance := func() quantity.Length {
		if r.IntN(5) == 0 {
			return 0
		}
		return mm(30)
	}
	return levels, panel.Allowance{Sides: allowance(), Top: allowance(), Foot: allowance()}
}

// Square to each edge there is its own allowance, in each direction the least of
// all, and on the sides of a trapezium no more than that.
func TestCutKeepsTheAllowance(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	const tolerance = 3 // nanometres
	for range 3000 {
		levels, allow := randomPanel(r)
		s := cut(t, levels, allow)
		least := float64(min(allow.Sides, allow.Top, allow.Foot))
		for i, p := range s.Finished {
			q := s.Finished[(i+1)%len(s.Finished)]
			edge := allow.Sides
			switch {
			case p.Y == q.Y && p.Y == levels[0].At:
				edge = allow.Top
			case p.Y == q.Y:
				edge = allow.Foot
			}
			length := math.Hypot(float64(q.X-p.X), float64(q.Y-p.Y))
			outX, outY := float64(q.Y-p.Y)/length, -float64(q.X-p.X)/length
			for _, f := range []float64{0, 0.003, 0.2, 0.5, 0.71, 0.997} {
				x, y := mix(p.X, q.X, f), mix(p.Y, q.Y, f)
				d := distance(s.Cut, x, y)
				if d < least-tolerance || !inside(s.Cut, x, y) && d > tolerance {
					t.Fatalf("levels %v, allowance %v: (%g, %g) is %g from the cutting outline %v, want %g", levels, allow, x, y, d, s.Cut, least)
				}
				x, y = x+outX*float64(edge), y+outY*float64(edge)
				d = distance(s.Cut, x, y)
				if d > tolerance && !inside(s.Cut, x, y) {
					t.Fatalf("levels %v, allowance %v: (%g, %g), square to its edge, is %g outside the cutting outline %v", levels, allow, x, y, d, s.Cut)
				}
				if len(levels) == 2 && allow.Sides <= min(allow.Top, allow.Foot) && f > 0 && edge == allow.Sides && p.Y != q.Y && d > tolerance {
					t.Fatalf("levels %v, allowance %v: (%g, %g), square to its edge, is %g off the cutting outline %v", levels, allow, x, y, d, s.Cut)
				}
			}
		}
		if s.FinishedArea > s.CutArea+1e-6 {
			t.Fatalf("levels %v, allowance %v: finished area %g is larger than the cut one, %g", levels, allow, s.FinishedArea, s.CutArea)
		}
		mirrored := map[panel.Point]bool{}
		for _, p := range s.Cut {
			mirrored[p] = true
		}
		for _, p := range s.Cut {
			if !mirrored[panel.Point{X: -p.X, Y: p.Y}] {
				t.Fatalf("not symmetric at %v: %v", p, s.Cut)
			}
		}
	}
}

func mix(a, b quantity.Length, f float64) float64 {
	return float64(a) + f*float64(b-a)
}

// distance returns how far a place is from an outline.
func distance(outline []panel.Point, x, y float64) float64 {
	least := math.Inf(1)
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		px, py, dx, dy := float64(p.X), float64(p.Y), float64(q.X-p.X), float64(q.Y-p.Y)
		f := 0.0
		if length := dx*dx + dy*dy; length > 0 {
			f = min(1, max(0, ((x-px)*dx+(y-py)*dy)/length))
		}
		least = min(least, math.Hypot(x-px-f*dx, y-py-f*dy))
	}
	return least
}

// inside tells whether a place is within an outline, by counting the edges to
// its right.
func inside(outline []panel.Point, x, y float64) bool {
	in := false
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		if (float64(p.Y) > y) != (float64(q.Y) > y) {
			if at := float64(p.X) + (y-float64(p.Y))/float64(q.Y-p.Y)*float64(q.X-p.X); x < at {
				in = !in
			}
		}
	}
	return in
}

// The area against the coverage that golang.org/x/image/vector, a general
// rasteriser, gives the same outline.
func TestAreaAgainstARasteriser(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 25 {
		levels, allow := randomPanel(r)
		s := cut(t, levels, allow)
		for _, c := range []struct {
			outline []panel.Point
			size    quantity.Size
			area    float64
		}{{s.Finished, s.FinishedSize, s.FinishedArea}, {s.Cut, s.CutSize, s.CutArea}} {
			const pixels = 800
			scale := pixels / float64(max(c.size.Width, c.size.Length))
			var left, top quantity.Length = math.MaxInt64, math.MaxInt64
			for _, p := range c.outline {
				left, top = min(left, p.X), min(top, p.Y)
			}
			z := vector.NewRasterizer(pixels, pixels)
			for i, p := range c.outline {
				x, y := float32(float64(p.X-left)*scale), float32(float64(p.Y-top)*scale)
				if i == 0 {
					z.MoveTo(x, y)
				} else {
					z.LineTo(x, y)
				}
			}
			z.ClosePath()
			picture := image.NewAlpha(image.Rect(0, 0, pixels, pixels))
			z.Draw(picture, picture.Bounds(), image.NewUniform(color.Opaque), image.Point{})
			sum := 0.0
			for _, a := range picture.Pix {
				sum += float64(a) / 255
			}
			mm := scale * float64(quantity.Millimetre)
			if got := sum / (mm * mm); math.Abs(got-c.area) > 0.002*c.area+0.2 {
				t.Errorf("levels %v: area %g mm², the rasteriser has %g", levels, c.area, got)
			}
		}
	}
}

func FuzzCut(f *testing.F) {
	inch := int64(quantity.Inch)
	f.Add(int64(0), int64(0), 6*inch, 2*inch, 12*inch, 9*inch, inch/2, inch/2, inch/2)
	f.Add(int64(0), 7*inch, inch, int64(1), 2*inch, 9*inch, 3*inch, inch/2, int64(0))
	f.Add(int64(0), 7*inch, inch/25, 30*inch, inch/10, int64(0), inch, inch/2, 2*inch)
	f.Fuzz(func(t *testing.T, at0, w0, at1, w1, at2, w2, sides, top, foot int64) {
		l := func(n int64) quantity.Length { return quantity.Length(n) }
		levels := []panel.Level{{l(at0), l(w0)}, {l(at1), l(w1)}, {l(at2), l(w2)}}
		s, err := panel.Cut(levels, panel.Allowance{Sides: l(sides), Top: l(top), Foot: l(foot)})
		if err != nil {
			return
		}
		if len(s.Cut) < 3 || s.CutArea <= 0 || s.CutArea < s.FinishedArea*(1-1e-9)-1e-6 {
			t.Errorf("area %g within %g: %v", s.FinishedArea, s.CutArea, s.Cut)
		}
		for _, p := range s.Finished {
			x, y := float64(p.X), float64(p.Y)
			if d := distance(s.Cut, x, y); !inside(s.Cut, x, y) && d > 3 || d < float64(min(sides, top, foot))-3 {
				t.Errorf("finished corner %v is %g from the cutting outline %v", p, d, s.Cut)
			}
		}
	})
}
