package draw

import "testing"

func TestNumerals(t *testing.T) {
	inches, cm := newRuler(0, 254, 320, false, 4.5, 30), newRuler(0, 254, 320, true, 4.5, 30)
	for _, c := range []struct {
		r    ruler
		n    float64
		want string
	}{
		{inches, 29, "29"}, {inches, 0, "0"}, {inches, 0.25, "1/4"}, {inches, 27.5, "27 1/2"}, {inches, 3 + 5.0/16, "3 5/16"}, {inches, -0.5, "−1/2"},
		{cm, 95, "95"}, {cm, 95.5, "95.5"},
	} {
		if got := c.r.numeral(c.n); got != c.want {
			t.Errorf("%g %s is written %q, want %q", c.n, c.r.name, got, c.want)
		}
	}
}

func TestRulerKeepsMarksApart(t *testing.T) {
	for _, long := range []float64{40, 76.2, 300, 2000, 50000} {
		for _, metric := range []bool{false, true} {
			r := newRuler(100, 100+long, 320, metric, 4.5, 30)
			per := 320 / long * r.unit
			if r.tick*per < 4.5 || r.number*per < 30 {
				t.Errorf("%g mm: marks %g and numbers %g apart", long, r.tick*per, r.number*per)
			}
			marks := r.marks(r.tick)
			if first, last := marks[0]*r.unit, marks[len(marks)-1]*r.unit; first < 99.999 || last > 100.001+long {
				t.Errorf("%g mm: marks from %g to %g", long, first, last)
			}
		}
	}
}

func TestSpreadKeepsLabelsApart(t *testing.T) {
	at, high := []float64{50, 10, 52, 51}, []float64{20, 20, 30, 20}
	got := spread(at, high, 0, 100)
	order := []int{1, 0, 3, 2}
	foot := 0.0
	for _, i := range order {
		if top := got[i] - high[i]/2; top < foot-1e-9 {
			t.Errorf("label %d begins at %g, above %g: %v", i, top, foot, got)
		}
		foot = got[i] + high[i]/2
	}
	if foot > 100 {
		t.Errorf("labels reach to %g: %v", foot, got)
	}
}
