package site

import (
	"errors"
	"fmt"
	"strings"

	"hussif/build/address"
	"hussif/build/panel"
	"hussif/build/room"
	"hussif/build/show"
	"hussif/build/stock"
	"hussif/content/journal"
	"hussif/content/quantity"
	"hussif/theme"
	"hussif/theme/draw"
)

// panelAllowance is left on the edges of a panel for sewing it in where nothing says
// what the edges beside it have (common practice).
const panelAllowance = quantity.Inch / 2

// A cutPanel is a panel of a build's best plan with its shape, where its heights are
// known, and the left-over pieces that were tried for it.
type cutPanel struct {
	room.Panel
	number int // in the plan, from 1: tells apart what is drawn and printed
	grain  panel.Grain
	shape  panel.Shape
	names  []string // of the measures at its levels
	fault  error    // why there is no shape
	laid   []laid
}

// A laid is a left-over piece with the panels on it, or why they are not.
type laid struct {
	piece    stock.Piece
	material *journal.Material
	layout   panel.Layout
	takenBy  string // the seam of an earlier panel that took the piece
}

// cutPanels works out the panels of an option, and lays each in turn on what is left
// over of the build's materials.
func (b *book) cutPanels(build *journal.Build, o room.Option) []cutPanel {
	var out []cutPanel
	pieces := b.leftOvers(build)
	for i, p := range o.Panels {
		c := cutPanel{Panel: p, number: i + 1, grain: grainOf(build, p.Seam)}
		c.cut(seamNamed(build, p.Seam), allowanceBeside(o, p.Seam))
		if c.fault == nil {
			c.layOut(pieces)
		}
		out = append(out, c)
	}
	return out
}

func seamNamed(b *journal.Build, name string) *journal.Seam {
	for i := range b.Seams {
		if b.Seams[i].Name.Text == name {
			return &b.Seams[i]
		}
	}
	panic("site: a panel in a seam that the build does not list: " + name)
}

// allowanceBeside returns the allowance that stays on the edges a panel is sewn to:
// the widest where it differs along the seam, to be trimmed to the rest.
func allowanceBeside(o room.Option, seam string) quantity.Length {
	var widest quantity.Length
	for _, s := range o.Seams {
		if s.Seam != seam {
			continue
		}
		for _, l := range s.Levels {
			widest = max(widest, l.Now)
		}
	}
	if widest == 0 {
		return panelAllowance
	}
	return widest
}

// cut works out the shape from the heights at which the seam crosses measures.
func (c *cutPanel) cut(s *journal.Seam, sides quantity.Length) {
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
		c.fault = errors.New("give the seam its length, and with `at` the height at which it crosses each measure, and the panel is drawn")
		return
	}
	c.shape, c.fault = panel.Cut(levels, panel.Allowance{Sides: sides, Top: panelAllowance, Foot: panelAllowance})
}

// layOut tries all panels of one seam on each piece that no earlier panel took, and
// takes the first that yields them.
func (c *cutPanel) layOut(pieces []laid) {
	taken := false
	for i := range pieces {
		p := &pieces[i]
		tried := *p
		if p.takenBy == "" {
			size := panel.Piece{Size: p.piece.Size, Grain: grainNamed(p.piece.Grain)}
			layout, err := panel.LayOut(c.shape, c.Count, size, c.grain, p.material.Nap == journal.Yes)
			if err != nil {
				continue // a size that no piece of cloth has; check tells of it
			}
			tried.layout = layout
			if layout.Found && !taken {
				p.takenBy, taken = c.Seam, true
			}
		}
		c.laid = append(c.laid, tried)
	}
}

// leftOvers returns the pieces that are left of the materials which a build needs, is
// cut of or has used.
func (b *book) leftOvers(build *journal.Build) []laid {
	materials := make(map[*journal.Material]bool)
	add := func(ref journal.Ref) {
		if m := b.Journal.Material(ref); m != nil {
			materials[m] = true
		}
	}
	for _, n := range build.Needs {
		add(n.Material)
	}
	for _, p := range build.Pieces {
		add(p.Of)
	}
	for _, n := range build.Notes {
		for _, m := range movements(n) {
			add(m.Material)
		}
	}
	var out []laid
	for _, m := range b.Journal.Materials() {
		if !materials[m] {
			continue
		}
		for _, piece := range b.stockOf(m.ID).Left() {
			for range piece.Left() {
				out = append(out, laid{piece: piece, material: m})
			}
		}
	}
	return out
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
				if g := grainNamed(p.Grain); strings.EqualFold(p.Name.Text, joined.Text) && g != panel.UnknownGrain {
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

// panelViews shows the panels of a build's best plan.
func (d desk) panelViews(b *journal.Build) []theme.Panel {
	var out []theme.Panel
	for _, c := range d.panelsOf(b) {
		out = append(out, d.panel(b, c))
	}
	return out
}

func (d desk) panel(b *journal.Build, c cutPanel) theme.Panel {
	f := d.Journal.Settings.Format
	out := theme.Panel{Name: "Panel for the " + c.Seam + " seam", Count: c.Count}
	if c.Slight {
		out.Facts = append(out.Facts, theme.Fact{Name: "Mind", Value: "it adds no more than the error of measuring: try the garment on before cutting it"})
	}
	if c.fault != nil {
		out.Facts = append(out.Facts, theme.Fact{Name: "Finished", Value: c.Words(f)}, theme.Fact{Name: "Not drawn", Value: faultWords(c.fault)})
		return out
	}
	var rows [][]theme.Link
	for i, l := range c.shape.Levels {
		width := f.Length(l.Width)
		if l.Width == 0 {
			width = "a point"
		}
		rows = append(rows, []theme.Link{show.Cell(c.names[i]), show.Cell(f.Length(l.At)), show.Cell(width)})
	}
	out.Widths = *show.Table([]string{"At", "Height along the seam", "Finished width"}, []bool{false, true, true}, rows)
	out.Facts = append(out.Facts,
		theme.Fact{Name: "Cut size", Value: f.Size(c.shape.CutSize)},
		theme.Fact{Name: "Allowance", Value: f.Length(c.shape.Allowance.Sides) + " on the long edges, as beside them, and " + f.Length(panelAllowance) + " at top and foot"},
		theme.Fact{Name: "Area of each", Value: d.areaWords(c.shape.CutArea)},
		theme.Fact{Name: "Grain", Value: grainWords(c.grain)},
	)
	id := fmt.Sprintf("panel-%d", c.number)
	out.Drawing = draw.DrawPanel(d.drawnPanel(c, id))
	for i, l := range c.laid {
		out.Layouts = append(out.Layouts, d.layout(c, l, fmt.Sprintf("%s-on-%d", id, i+1)))
	}
	for _, paper := range papers() {
		out.Prints = append(out.Prints, theme.Link{Href: d.root + tilesPath(b, c, paper), Text: paper.Name})
	}
	return out
}

func (d desk) layout(c cutPanel, l laid, id string) theme.Layout {
	f := d.Journal.Settings.Format
	name := d.to(l.material)
	name.Note = f.Size(l.piece.Size) + ", left over"
	if l.piece.Day != 0 {
		name.Note += " " + show.Day(l.piece.Day)
	}
	if l.takenBy != "" {
		return theme.Layout{Piece: name, Words: "taken by the panel for the " + l.takenBy + " seam"}
	}
	shown := theme.Layout{Piece: name, Words: d.layoutWords(c, l)}
	if len(l.layout.Placements) > 0 {
		shown.Drawing = draw.DrawLayout(d.drawnLayout(c, l, id, shown.Words))
	}
	return shown
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
		at = append(at, fmt.Sprintf("%s wide at %s, %s down", f.Length(l.Width), c.names[i], f.Length(l.At)))
	}
	return fmt.Sprintf("Finished, from the top down: %s. Cut with its allowances it is %s.",
		strings.Join(at, ", "), f.Size(c.shape.CutSize))
}

func (d desk) layoutWords(c cutPanel, l laid) string {
	f := d.Journal.Settings.Format
	panels := "the panel comes"
	switch {
	case c.Count == 2:
		panels = "both panels come"
	case c.Count > 2:
		panels = fmt.Sprintf("all %d panels come", c.Count)
	}
	way := ""
	if c.Count > 1 {
		way = ", laid either way up: the cloth is taken to have no nap"
		if l.material.Nap == journal.Yes {
			way = ", all one way for the nap"
		}
	}
	lacks := l.layout.Lacks
	switch {
	case l.layout.Found:
		return panels + " out of it, taking " + f.Size(l.layout.Used) + way
	case l.layout.GrainUnknown && len(l.layout.Placements) > 0:
		return panels + " out of it if its length is on the straight grain, which is not noted"
	case lacks.Wider > 0 && lacks.Longer > 0:
		return fmt.Sprintf("not found: %s more width or %s more length would do", f.Length(lacks.Wider), f.Length(lacks.Longer))
	case lacks.Wider > 0:
		return "not found: " + f.Length(lacks.Wider) + " more width would do"
	case lacks.Longer > 0:
		return "not found: " + f.Length(lacks.Longer) + " more length would do"
	}
	return "not found: " + f.Size(lacks.Both) + " more, across and along, would do"
}

func (d desk) drawnLayout(c cutPanel, l laid, id, words string) draw.Layout {
	f := d.Journal.Settings.Format
	out := draw.Layout{
		Words: draw.Words{ID: id, Title: "Panels laid on a left-over piece", Desc: show.Sentence(words) + "."},
		Width: millimetres(l.piece.Size.Width), Length: millimetres(l.piece.Size.Length),
		Wide: f.Length(l.piece.Size.Width), Long: f.Length(l.piece.Size.Length), Metric: d.metric(),
	}
	switch grainNamed(l.piece.Grain) {
	case panel.Cross:
		out.Warp, out.WarpKnown = 90, true
	case panel.Bias:
		out.Warp, out.WarpKnown = 45, true
	case panel.Straight:
		out.WarpKnown = true
	}
	top, foot := c.shape.Levels[0].At, c.shape.Levels[len(c.shape.Levels)-1].At
	for i, p := range l.layout.Placements {
		grain := p.Put([]panel.Point{{Y: top}, {Y: foot}})
		ends := drawnPoints(grain)
		label := fmt.Sprint(i + 1)
		if p.Flipped {
			label += ", turned over"
		}
		out.Panels = append(out.Panels, draw.Placed{
			Finished: drawnPoints(p.Put(c.shape.Finished)), Cut: drawnPoints(p.Put(c.shape.Cut)),
			Grain: [2]draw.Point{ends[0], ends[1]}, Label: label,
		})
	}
	return out
}

// papers are the sizes of paper that full-size prints are made for.
func papers() []draw.Paper { return []draw.Paper{draw.A4(), draw.Letter()} }

func tilesPath(b *journal.Build, c cutPanel, paper draw.Paper) string {
	return address.Under(b.ID, fmt.Sprintf("panel-%d-%s", c.number, paper.Name))
}

// cutWords says how many to cut.
func cutWords(n int) string {
	if n == 1 {
		return "one"
	}
	return fmt.Sprintf("%d, mirrored in pairs", n)
}

// tiles is the page of a panel at full size, cut into sheets of one paper.
func (b *book) tiles(build *journal.Build, c cutPanel, paper draw.Paper) any {
	d := b.at(tilesPath(build, c, paper))
	title := fmt.Sprintf("Panel for the %s seam, full size on %s", c.Seam, paper.Name)
	view := theme.Tiles{
		Frame: b.frame(d.path, title, "To print", "builds", d.shelfLink(journal.KindBuild), d.to(build)),
		Of:    d.to(build), Paper: paper.Name,
		Words: []string{
			"Print at 100 %, with no fitting to the page.",
			"Measure the test squares before cutting: 5 cm and 2 in.",
			"Trim one edge of each sheet and lay it over its neighbour to the marks.",
			fmt.Sprintf("Cut %s, %s. The solid line is the cutting line, the dashed one the seam.", cutWords(c.Count), grainWords(c.grain)),
			"Cut away from your hand, along a ruler with a guard, and close a rotary cutter each time you lay it down.",
		},
	}
	sheets, err := draw.Tiles(draw.FullSize{
		Words:    draw.Words{ID: "sheet", Title: title, Desc: d.panelWords(c)},
		Label:    fmt.Sprintf("%s, %s, cut %d, %s", build.Title, c.Seam, c.Count, grainWords(c.grain)),
		Finished: drawnPoints(c.shape.Finished), Cut: drawnPoints(c.shape.Cut), Levels: d.drawnLevels(c),
	}, paper)
	if err != nil {
		view.Words = []string{show.Sentence(err.Error()) + "."}
		return view
	}
	view.Pages = sheets.Pages
	return view
}
