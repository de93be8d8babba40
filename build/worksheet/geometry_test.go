package worksheet_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// Strips are laid on the piece by brute force: for each pair of cuts, every place of
// a parallelogram with ends along either grain is tried on a fine grid.
func TestBiasStripsAgainstBruteForce(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 25 {
		a, b := 40+r.IntN(200), 40+r.IntN(300)
		if a > b {
			a, b = b, a
		}
		w := 8 + r.IntN(20)
		p := work(t, "bias strips", fmt.Sprintf("strip: %d mm; piece: %d mm x %d mm; seam: 0", w, a, b), centimetres)
		apart := float64(w) * math.Sqrt2
		total, n := 0.0, 0
		for k := -1000; k < 1000; k++ {
			at := float64(a) + float64(k)*apart
			if best := longest(float64(a), float64(b), at, at+apart); best > 0.2 {
				total += best * math.Sqrt2
				n++
			}
		}
		got := figure(t, p, "length of strips joined one by one", centimetres) * 10
		if math.Abs(got-total) > float64(n)*0.2+0.5 {
			t.Errorf("%d × %d mm in strips of %d mm: %g mm, by brute force %g", a, b, w, got, total)
		}
		if area := got * float64(w); area > float64(a*b)+1 {
			t.Errorf("%d × %d mm in strips of %d mm: they are larger than the piece", a, b, w)
		}
		round := figure(t, p, "length round a tube", centimetres) * 10
		if round*float64(w) > float64(a*b)+1 {
			t.Errorf("%d × %d mm in strips of %d mm: the tube is larger than the piece", a, b, w)
		}
	}
}

// longest returns the extent along a side of the longest parallelogram between the
// lines x + y = from and x + y = to that lies on the piece, found on a grid of 0.1.
func longest(a, b, from, to float64) float64 {
	const grid = 0.1
	inside := func(x, y float64) bool { return x >= -1e-9 && y >= -1e-9 && x <= a+1e-9 && y <= b+1e-9 }
	best := 0.0
	run := func(on func(u float64) bool, most float64) {
		start := math.NaN()
		for u := 0.0; u <= most; u += grid {
			switch {
			case on(u) && math.IsNaN(start):
				start = u
			case !on(u):
				start = math.NaN()
			}
			if !math.IsNaN(start) {
				best = max(best, u-start)
			}
		}
	}
	run(func(x float64) bool { return inside(x, from-x) && inside(x, to-x) }, a)
	run(func(y float64) bool { return inside(from-y, y) && inside(to-y, y) }, b)
	return best
}

// A skirt's piece is strewn with points and turned so that one straight edge lies
// along the selvedge; what it takes is what the points reach.
func TestCircleSkirtAgainstBruteForce(t *testing.T) {
	for name, part := range map[string]float64{"full": 1, "three quarter": 0.75, "half": 0.5, "third": 1.0 / 3, "quarter": 0.25} {
		const waist, length = 70.0, 60.0
		p := work(t, "circle skirt", fmt.Sprintf("part: %s; waist: %g; length: %g; hem: 0; allowance: 0; cloth width: 400", name, waist, length), centimetres)
		inner := waist / (2 * math.Pi * part)
		outer := inner + length
		left, right, top, foot := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
		area := 0.0
		const grid = 0.25
		for x := -outer; x <= outer; x += grid {
			for y := -outer; y <= outer; y += grid {
				r := math.Hypot(x, y)
				angle := math.Atan2(x, y) // from the selvedge, which runs along Y
				if angle < 0 {
					angle += 2 * math.Pi
				}
				if r < inner || r > outer || angle > 2*math.Pi*part {
					continue
				}
				left, right, top, foot = min(left, x), max(right, x), min(top, y), max(foot, y)
				area += grid * grid
			}
		}
		wide, long := figure(t, p, "width that each piece takes", centimetres), figure(t, p, "length that each piece takes", centimetres)
		if !near(wide, right-left, 2*grid) || !near(long, foot-top, 2*grid) {
			t.Errorf("%s: takes %g × %g cm, by brute force %g × %g", name, wide, long, right-left, foot-top)
		}
		// A ring's area is its width times its middle line (Pappus).
		hem := figure(t, p, "hem round", centimetres)
		if byHem := (waist + hem) / 2 * length; math.Abs(byHem-area)/area > 0.01 {
			t.Errorf("%s: waist and hem make %g square cm, by brute force %g", name, byHem, area)
		}
	}
}

// Sixty-four equal rectangles and random ones: no row is wider than the cloth, no
// layout shorter than the area allows.
func TestYardageAgainstArea(t *testing.T) {
	p := work(t, "yardage", "pieces: 4 of 27 x 45; cloth width: 54", inches)
	if got := figure(t, p, "needed", inches); got != 90 {
		t.Errorf("four of 27 × 45 in on 54 in take %g in, want two rows of 45", got)
	}
	turned := work(t, "yardage", "pieces: 20 x 50; cloth width: 54; nap: no", inches)
	if got := figure(t, turned, "needed", inches); got != 20 {
		t.Errorf("20 × 50 in turned across takes %g in, want 20", got)
	}
	r := rand.New(rand.NewPCG(11, 12))
	for range 200 {
		given, area, tallest := "", 0.0, 0
		for i := range 1 + r.IntN(10) {
			n, w, l := 1+r.IntN(5), 1+r.IntN(50), 1+r.IntN(60)
			if i > 0 {
				given += ", "
			}
			given += fmt.Sprintf("%d of %d x %d", n, w, l)
			area += float64(n * w * l)
			tallest = max(tallest, l)
		}
		p := work(t, "yardage", "pieces: "+given+"; cloth width: 54", inches)
		needed := figure(t, p, "needed", inches)
		if needed*54 < area-1e-6 {
			t.Fatalf("%s: %g in hold less than the pieces", given, needed)
		}
		// The rule's bound: 1.7 × the best + the tallest (Coffman, Garey, Johnson and
		// Tarjan, SIAM Journal on Computing 9, 1980, theorem 3). The best is no less
		// than the area takes and no less than the tallest.
		if best := max(area/54, float64(tallest)); needed > 2*area/54+float64(tallest)+1e-6 && needed > 1.7*best+float64(tallest) {
			t.Fatalf("%s: %g in is more than first fit, decreasing height, can take", given, needed)
		}
	}
	shrunk := work(t, "yardage", "pieces: 50 x 95; cloth width: 54; shrinkage: 5 %", inches)
	if got := figure(t, shrunk, "bought", inches); !near(got, 100, 1e-6) {
		t.Errorf("95 in that shrink by 5 %% are bought as %g in, want 100", got)
	}
}

// A panel's cutting outline is that of build/panel, which is tested against a
// rasteriser; here only that the sheet hands its figures over.
func TestLetInPanel(t *testing.T) {
	p := work(t, "let-in panel", "widths: 2 at 0, 8 at 4; sides: 1; top: 1; foot: 2", centimetres)
	// Both sides have the slope of a 3-4-5 triangle: 13.5 × 7 cm, by hand.
	if w, l := figure(t, p, "cut width", centimetres), figure(t, p, "cut length", centimetres); !near(w, 13.5, 1e-6) || !near(l, 7, 1e-6) {
		t.Errorf("cut %g × %g cm, want 13.5 × 7", w, l)
	}
	if got := figure(t, p, "area of each, in square mm", centimetres); !near(got, 5775, 1e-6) {
		t.Errorf("area %g square mm, want 5775", got)
	}
}

func TestHemLevel(t *testing.T) {
	p := work(t, "hem level", "lengths: 38, 39, 40 1/2; hem: 1; least: 1/2", inches)
	for name, want := range map[string]float64{"cut length": 42, "turn-down at point 1": 3, "turn-down at point 2": 2, "turn-down at point 3": 0.5} {
		if got := figure(t, p, name, inches); !near(got, want, 1e-9) {
			t.Errorf("%s is %g, want %g: what is turned down, shows and is hemmed is the panel", name, got, want)
		}
	}
}
