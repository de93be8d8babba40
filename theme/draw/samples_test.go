package draw_test

import (
	"html/template"
	"maps"
	"math"
	"testing"
	"time"

	"hussif/build/panel"
	"hussif/content/quantity"
	"hussif/theme/draw"
)

const inch = 25.4

func points(from []panel.Point) []draw.Point {
	var all []draw.Point
	for _, p := range from {
		all = append(all, point(p))
	}
	return all
}

func point(p panel.Point) draw.Point { return draw.Point{X: mm(p.X), Y: mm(p.Y)} }

func mm(l quantity.Length) float64 { return float64(l) / float64(quantity.Millimetre) }

func words(id, title, desc string) draw.Words { return draw.Words{ID: id, Title: title, Desc: desc} }

func cut(t testing.TB, levels ...panel.Level) panel.Shape {
	t.Helper()
	half := quantity.Inch / 2
	s, err := panel.Cut(levels, panel.Allowance{Sides: half, Top: half, Foot: quantity.Inch})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// gore and gusset are the panels the samples draw.
func gore(t testing.TB) panel.Shape {
	in := quantity.Inch
	return cut(t, panel.Level{At: 0, Width: in * 3 / 4}, panel.Level{At: 3 * in, Width: in}, panel.Level{At: 15 * in / 2, Width: 2 * in}, panel.Level{At: 12 * in, Width: 9 * in / 2})
}

func gusset(t testing.TB) panel.Shape {
	in := quantity.Inch
	return cut(t, panel.Level{At: 0}, panel.Level{At: 10 * in, Width: 7 * in})
}

func panelView(t testing.TB, id string, s panel.Shape, names ...string) draw.Panel {
	t.Helper()
	f := quantity.Format{}
	v := draw.Panel{
		Words:    words(id, "Panel to let in", "A panel with its seam line and cutting line."),
		Finished: points(s.Finished), Cut: points(s.Cut),
		Wide: f.Length(s.CutSize.Width), Long: f.Length(s.CutSize.Length),
	}
	for i, l := range s.Levels {
		v.Levels = append(v.Levels, draw.Level{At: mm(l.At), Width: mm(l.Width), Name: names[i], Size: f.Length(l.Width)})
	}
	return v
}

func layoutView(t testing.TB, id string, s panel.Shape, n int, piece panel.Piece, grain panel.Grain) draw.Layout {
	t.Helper()
	l, err := panel.LayOut(s, n, piece, grain, false)
	if err != nil || !l.Found {
		t.Fatalf("the sample does not fit: %v, lacks %v", err, l.Lacks)
	}
	f := quantity.Format{}
	v := draw.Layout{
		Words: words(id, "Layout on a left-over piece", "All panels lie on the piece."),
		Width: mm(piece.Size.Width), Length: mm(piece.Size.Length),
		Wide: f.Length(piece.Size.Width), Long: f.Length(piece.Size.Length),
		WarpKnown: true,
	}
	first, last := s.Levels[0].At, s.Levels[len(s.Levels)-1].At
	ends := []panel.Point{{Y: first + (last-first)/6}, {Y: last - (last-first)/6}}
	for i, p := range l.Placements {
		grain := points(p.Put(ends))
		v.Panels = append(v.Panels, draw.Placed{
			Finished: points(p.Put(s.Finished)), Cut: points(p.Put(s.Cut)),
			Grain: [2]draw.Point{grain[0], grain[1]}, Label: string(rune('1' + i)),
		})
	}
	return v
}

func day(year int, month time.Month, day int) time.Time {
	return time.Date(year, month, day, 0, 0, 0, 0, time.UTC)
}

// sizes makes known values of inches, and gaps of what is not a number.
func sizes(days []time.Time, inches ...float64) []draw.Value {
	var all []draw.Value
	for i, size := range inches {
		all = append(all, draw.Value{Day: days[i], Size: size * inch, Known: !math.IsNaN(size)})
	}
	return all
}

// samples are drawings of each kind, plain and awkward.
func samples(t testing.TB) map[string]template.HTML {
	in := quantity.Inch
	piece := func(width, length quantity.Length) panel.Piece {
		return panel.Piece{Size: quantity.Size{Width: width, Length: length}, Grain: panel.Straight}
	}
	days := []time.Time{day(2023, 3, 4), day(2024, 1, 20), day(2025, 5, 2), day(2025, 6, 1), day(2026, 1, 10)}
	nan := math.NaN()
	all := map[string]template.HTML{
		"panel-gore":    draw.DrawPanel(panelView(t, "gore", gore(t), "underarm", "bust girth", "natural waist girth", "top of the hip & skirt seam")),
		"panel-gusset":  draw.DrawPanel(panelView(t, "gusset", gusset(t), "", "hem")),
		"panel-crowded": draw.DrawPanel(panelView(t, "crowded", cut(t, panel.Level{Width: in}, panel.Level{At: in / 4, Width: 2 * in}, panel.Level{At: in / 2, Width: 9 * in}), "one", "a level of a long name", "three")),
		"layout-rows":   draw.DrawLayout(layoutView(t, "rows", gusset(t), 4, piece(16*in, 31*in), panel.Straight)),
		"layout-bias":   draw.DrawLayout(layoutView(t, "bias", gore(t), 3, piece(24*in, 22*in), panel.Bias)),
		"layout-strip":  draw.DrawLayout(layoutView(t, "strip", cut(t, panel.Level{Width: in / 2}, panel.Level{At: 9 * in, Width: in}), 5, piece(12*in, 36*in), panel.Straight)),
		"tape-short": draw.DrawTape(draw.Tape{
			Words: words("t1", "Waist", "Body 29, garment 27 1/2 in."),
			Body:  draw.Mark{Least: 29 * inch, Most: 29 * inch, Error: 9, Label: "body over shift, stays: 29 in"}, Garment: draw.Mark{Least: 27.5 * inch, Most: 27.5 * inch, Error: 6, Label: "garment 27 1/2 in"},
			Wanted: draw.Mark{Least: 29 * inch, Most: 30 * inch, Label: "wanted 29 to 30 in"},
		}),
		"tape-laces": draw.DrawTape(draw.Tape{
			Words: words("t2", "Waist", "The garment laces from 26 to 31 in."),
			Body:  draw.Mark{Least: 29 * inch, Most: 29 * inch, Error: 9, Label: "body 29 in"}, Garment: draw.Mark{Least: 26 * inch, Most: 31 * inch, Error: 6, Label: "garment laced 26 to 31 in"},
			Wanted: draw.Mark{Least: 29 * inch, Most: 29 * inch, Label: "wanted 29 in"},
		}),
		"tape-far": draw.DrawTape(draw.Tape{
			Words: words("t3", "Hip", "Far apart."), Metric: true,
			Body: draw.Mark{Least: 900, Most: 900, Error: 9, Label: "body 90 cm"}, Garment: draw.Mark{Least: 1420, Most: 1420, Error: 6, Label: "garment 142 cm, as first finished and never measured since"},
			Wanted: draw.Mark{Least: 950, Most: 1000, Label: "wanted 95 to 100 cm"},
		}),
		"tape-same": draw.DrawTape(draw.Tape{
			Words: words("t4", "Arm", "All the same."), Metric: true,
			Body: draw.Mark{Least: 305, Most: 305, Label: "body 30.5 cm"}, Garment: draw.Mark{Least: 305, Most: 305, Label: "garment 30.5 cm"},
			Wanted: draw.Mark{Least: 305, Most: 305, Label: "wanted 30.5 cm"},
		}),
		"tape-body-only": draw.DrawTape(draw.Tape{
			Words: words("t5", "Arm", "Not measured on the garment."),
			Body:  draw.Mark{Least: 12 * inch, Most: 12 * inch, Error: 4, Label: "body 12 in"},
		}),
		"series-two": draw.DrawSeries(draw.Series{
			Words: words("s1", "Waist over time", "The body grew; the garment was let out once."),
			Runs: []draw.Run{
				{Label: "body over shift and stays", Values: sizes(days, 27.5, 28, nan, 28.5, 29)},
				{Label: "striped jacket", Stepped: true, Values: sizes(days[1:], 28, 28, 29.25, 29.25)},
			},
		}),
		"series-four": draw.DrawSeries(draw.Series{
			Words: words("s2", "Bust over time", "Four runs that end close together."), Metric: true,
			Runs: []draw.Run{
				{Label: "body unclothed", Values: sizes(days, 36, 36.5, 36.25, 37, 37.25)},
				{Label: "body over stays", Values: sizes(days, 35, 35.5, nan, 36, 36.5)},
				{Label: "first jacket", Stepped: true, Values: sizes(days, 36, 36, 36.5, 36.5, 36.75)},
				{Label: "promenade bodice", Stepped: true, Values: sizes(days[3:], 37.5, 37)},
			},
		}),
		"series-one-day": draw.DrawSeries(draw.Series{
			Words: words("s3", "Wrist", "One value."),
			Runs:  []draw.Run{{Label: "body", Values: sizes(days, 6.5)}},
		}),
		"series-empty": draw.DrawSeries(draw.Series{Words: words("s4", "Wrist", "Nothing is known."), Runs: []draw.Run{{Label: "body", Values: sizes(days, nan)}}}),
	}
	maps.Copy(all, scaleSamples())
	maps.Copy(all, figureSamples(t))
	return all
}
