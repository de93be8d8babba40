package site

import (
	"errors"
	"fmt"
	"hussif/build/address"
	"slices"
	"strings"

	"hussif/build/panel"
	"hussif/build/room"
	"hussif/content/journal"
	"hussif/content/quantity"
	"hussif/theme"
	"hussif/theme/draw"
)

// panelAllowance is left on every edge of a panel for sewing it in (common
// practice).
const panelAllowance = quantity.Inch / 2

// A cutPanel is a panel of a plan with its shape, where its heights are known.
type cutPanel struct {
	room.Panel
	grain panel.Grain
	shape panel.Shape
	names []string // of the measures at its levels
	fault error    // why there is no shape
}

// cutPanels works out the panels of an option.
func cutPanels(b *journal.Build, o room.Option) []cutPanel {
	var out []cutPanel
	for _, p := range o.Panels {
		c := cutPanel{Panel: p, grain: grainOf(b, p.Seam)}
		c.cut(seamNamed(b, p.Seam))
		out = append(out, c)
	}
	return out
}

func seamNamed(b *journal.Build, name string) *journal.Seam {
	i := slices.IndexFunc(b.Seams, func(s journal.Seam) bool { return s.Name.Text == name })
	if i < 0 {
		return &journal.Seam{}
	}
	return &b.Seams[i]
}

// cut works out the shape from the heights at which the seam crosses measures.
func (c *cutPanel) cut(s *journal.Seam) {
	var levels []panel.Level
	for _, w := range c.Outline(s.Length) {
		levels = append(levels, panel.Level{At: w.At, Width: w.Width})
		switch {
		case !w.IsEnd():
			c.names = append(c.names, w.Point.String())
		case w.At == 0:
			c.names = append(c.names, "top of the seam")
		default:
			c.names = append(c.names, "foot of the seam")
		}
	}
	if len(levels) < 2 {
		c.fault = fmt.Errorf("give the seam its length, and with `at` the height at which it crosses each measure, and the panel is drawn")
		return
	}
	allow := panel.Allowance{Sides: panelAllowance, Top: panelAllowance, Foot: panelAllowance}
	c.shape, c.fault = panel.Cut(levels, allow)
}

// grainOf returns the grain on which the pieces of a seam are cut, where they
// agree.
func grainOf(b *journal.Build, seam string) panel.Grain {
	grain := panel.UnknownGrain
	for _, s := range b.Seams {
		if s.Name.Text != seam {
			continue
		}
		for _, joined := range s.Joins {
			for _, p := range b.Pieces {
				if g := grainNamed(p.Grain); p.Name.Text == joined.Text && g != panel.UnknownGrain {
					if grain != panel.UnknownGrain && grain != g {
						return panel.UnknownGrain
					}
					grain = g
				}
			}
		}
	}
	return grain
}

// grainNamed finds the grain in a maker's words: "straight at centre back".
func grainNamed(words string) panel.Grain {
	words = strings.ToLower(words)
	switch {
	case strings.Contains(words, "bias"):
		return panel.Bias
	case strings.Contains(words, "cross"), strings.Contains(words, "weft"):
		return panel.Cross
	case strings.Contains(words, "straight"), strings.Contains(words, "warp"), strings.Contains(words, "length"):
		return panel.Straight
	}
	return panel.UnknownGrain
}

func grainWords(g panel.Grain) string {
	return [...]string{"the grain is not noted", "on the straight grain", "on the cross grain", "on the bias"}[g]
}

// panel shows one panel of an option, with its shape and layouts where drawn.
func (d desk) panel(b *journal.Build, o room.Option, k int, drawn bool) theme.Panel {
	f := d.Journal.Settings.Format
	c := cutPanels(b, o)[k]
	out := theme.Panel{Name: "Panel for the " + c.Seam + " seam", Count: c.Count}
	var rows [][]theme.Link
	for _, w := range c.Widths {
		at := ""
		if w.Placed {
			at = f.Length(w.At)
		}
		width := f.Length(w.Width)
		if w.Width == 0 {
			width = "runs to a point"
		}
		rows = append(rows, []theme.Link{cell(w.Point.String()), cell(at), cell(width)})
	}
	if t := columns([]string{"At", "Height along the seam", "Finished width"}, []bool{false, true, true}, rows); t != nil {
		out.Widths = *t
	}
	if c.fault != nil {
		out.Facts = append(out.Facts, theme.Fact{Name: "Not drawn", Value: faultWords(c.fault)})
		return out
	}
	out.Facts = append(out.Facts,
		theme.Fact{Name: "Cut size", Value: f.Size(c.shape.CutSize)},
		theme.Fact{Name: "Allowance", Value: f.Length(panelAllowance) + " on every edge"},
		theme.Fact{Name: "Area of each", Value: d.areaWords(c.shape.CutArea)},
		theme.Fact{Name: "Grain", Value: grainWords(c.grain)},
	)
	if !drawn {
		return out
	}
	id := "panel-" + address.Slug(c.Seam)
	out.Drawing = draw.DrawPanel(d.drawnPanel(c, id))
	out.Layouts = d.layouts(b, c, id)
	for _, paper := range papers() {
		out.Prints = append(out.Prints, theme.Link{Href: d.root + tilesPath(b, c.Seam, paper), Text: paper.Name})
	}
	return out
}

func faultWords(err error) string {
	var fault *panel.Error
	if errors.As(err, &fault) {
		return fault.Reason
	}
	return err.Error()
}

// areaWords shows an area in square inches or centimetres.
func (d desk) areaWords(squareMM float64) string {
	if d.metric() {
		return fmt.Sprintf("%.0f square cm", squareMM/100)
	}
	return fmt.Sprintf("%.1f square in", squareMM/(25.4*25.4))
}

func (b *book) metric() bool { return b.Journal.Settings.Unit != quantity.Inches }

func millimetres(l quantity.Length) float64 { return float64(l) / float64(quantity.Millimetre) }

func drawnPoints(points []panel.Point) []draw.Point {
	out := make([]draw.Point, len(points))
	for i, p := range points {
		out[i] = draw.Point{X: millimetres(p.X), Y: millimetres(p.Y)}
	}
	return out
}

func (d desk) drawnLevels(c cutPanel) []draw.Level {
	var out []draw.Level
	for i, l := range c.shape.Levels {
		out = append(out, draw.Level{
			At: millimetres(l.At), Width: millimetres(l.Width), Name: c.names[i], Size: d.Journal.Settings.Format.Length(l.Width),
		})
	}
	return out
}

func (d desk) drawnPanel(c cutPanel, id string) draw.Panel {
	f := d.Journal.Settings.Format
	return draw.Panel{
		Words:    draw.Words{ID: id, Title: "Panel for the " + c.Seam + " seam, to scale", Desc: d.panelWords(c)},
		Finished: drawnPoints(c.shape.Finished), Cut: drawnPoints(c.shape.Cut), Levels: d.drawnLevels(c),
		Wide: f.Length(c.shape.CutSize.Width), Long: f.Length(c.shape.CutSize.Length), Metric: d.metric(),
	}
}

// panelWords says what a panel's drawing shows.
func (d desk) panelWords(c cutPanel) string {
	f := d.Journal.Settings.Format
	var at []string
	for i, l := range c.shape.Levels {
		at = append(at, f.Length(l.Width)+" wide at "+c.names[i])
	}
	return fmt.Sprintf("Finished %s. Cut with %s on every edge it is %s.",
		strings.Join(at, ", "), f.Length(panelAllowance), f.Size(c.shape.CutSize))
}

// layouts tries the panels on every left-over piece of the build's materials.
func (d desk) layouts(b *journal.Build, c cutPanel, id string) []theme.Layout {
	var out []theme.Layout
	for i, m := range d.leftOvers(b) {
		piece := panel.Piece{Size: m.Size, Grain: grainNamed(m.Grain)}
		l, err := panel.LayOut(c.shape, c.Count, piece, c.grain, false)
		if err != nil {
			continue // a size that no piece of cloth has; check tells of it
		}
		name := d.ref(m.Material, journal.KindMaterial)
		name.Note = d.Journal.Settings.Format.Size(m.Size) + ", left over " + day(m.note.Date)
		shown := theme.Layout{Piece: name, Words: d.layoutWords(c, l)}
		if len(l.Placements) > 0 {
			shown.Drawing = draw.DrawLayout(d.drawnLayout(c, l, m, fmt.Sprintf("%s-on-%d", id, i+1), shown.Words))
		}
		out = append(out, shown)
	}
	return out
}

// leftOvers returns the pieces with a size that were left over of the materials
// which a build needs or has used.
func (d desk) leftOvers(b *journal.Build) []movement {
	materials := make(map[*journal.Material]bool)
	add := func(ref journal.Ref) {
		if m := d.Journal.Material(ref); m != nil {
			materials[m] = true
		}
	}
	for _, n := range b.Needs {
		add(n.Material)
	}
	for _, p := range b.Pieces {
		add(p.Of)
	}
	for _, n := range b.Notes {
		for _, m := range movements(n) {
			add(m.Material)
		}
	}
	var out []movement
	for _, material := range d.Journal.Materials {
		if !materials[material] {
			continue
		}
		for _, m := range d.moved[material] {
			if m.what == "left over" && m.Has("size") {
				out = append(out, m)
			}
		}
	}
	return out
}

func (d desk) layoutWords(c cutPanel, l panel.Layout) string {
	f := d.Journal.Settings.Format
	panels := "the panel comes"
	if c.Count > 1 {
		panels = fmt.Sprintf("all %d panels come", c.Count)
	}
	switch {
	case l.Found:
		return panels + " out of it, taking " + f.Size(l.Used)
	case l.GrainUnknown && len(l.Placements) > 0:
		return panels + " out of it if its length is on the straight grain, which is not noted"
	}
	return "not found: " + l.Lacks.Words(f)
}

func (d desk) drawnLayout(c cutPanel, l panel.Layout, m movement, id, words string) draw.Layout {
	f := d.Journal.Settings.Format
	out := draw.Layout{
		Words: draw.Words{ID: id, Title: "Panels laid on a left-over piece", Desc: sentence(words) + "."},
		Width: millimetres(m.Size.Width), Length: millimetres(m.Size.Length),
		Wide: f.Length(m.Size.Width), Long: f.Length(m.Size.Length), Metric: d.metric(),
	}
	switch grainNamed(m.Grain) {
	case panel.Cross:
		out.Warp, out.WarpKnown = 90, true
	case panel.Bias:
		out.Warp, out.WarpKnown = 45, true
	case panel.Straight:
		out.WarpKnown = true
	}
	top, foot := c.shape.Levels[0].At, c.shape.Levels[len(c.shape.Levels)-1].At
	for i, p := range l.Placements {
		grain := p.Put([]panel.Point{{Y: top}, {Y: foot}})
		ends := drawnPoints(grain)
		out.Panels = append(out.Panels, draw.Placed{
			Finished: drawnPoints(p.Put(c.shape.Finished)), Cut: drawnPoints(p.Put(c.shape.Cut)),
			Grain: [2]draw.Point{ends[0], ends[1]}, Label: fmt.Sprint(i + 1),
		})
	}
	return out
}

// papers are the sizes of paper that full-size prints are made for.
func papers() []draw.Paper { return []draw.Paper{draw.A4(), draw.Letter()} }

func tilesPath(b *journal.Build, seam string, paper draw.Paper) string {
	return strings.TrimSuffix(address.Of(b.ID), ".html") + "/panel-" + strings.ReplaceAll(address.Slug(seam), "/", "-") + "-" + strings.ToLower(paper.Name) + ".html"
}

// tiles is the page of a panel at full size, cut into sheets of one paper.
func (b *book) tiles(build *journal.Build, c cutPanel, paper draw.Paper) any {
	d := b.at(tilesPath(build, c.Seam, paper))
	title := fmt.Sprintf("Panel for the %s seam, full size on %s", c.Seam, paper.Name)
	view := theme.Tiles{
		Frame: b.frame(d.path, title, "To print", "builds", d.shelfLink(journal.KindBuild), d.to(build)),
		Of:    d.to(build), Paper: paper.Name,
		Words: []string{
			"Print at 100 %, with no fitting to the page.",
			"Measure the test squares before cutting: 5 cm and 2 in.",
			"Trim one edge of each sheet and lay it over its neighbour to the marks.",
			fmt.Sprintf("Cut %d, mirrored in pairs, %s. The solid line is the cutting line, the dashed one the seam.", c.Count, grainWords(c.grain)),
		},
	}
	sheets, err := draw.Tiles(draw.FullSize{
		Words:    draw.Words{ID: "sheet", Title: title, Desc: d.panelWords(c)},
		Label:    build.Title + ", " + c.Seam,
		Finished: drawnPoints(c.shape.Finished), Cut: drawnPoints(c.shape.Cut), Levels: d.drawnLevels(c),
	}, paper)
	if err != nil {
		view.Words = []string{sentence(err.Error()) + "."}
		return view
	}
	view.Pages = sheets.Pages
	return view
}
