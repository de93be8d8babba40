package leaf

import (
	"slices"
	"strings"

	"hussif/build/fit"
	"hussif/build/lesson"
	"hussif/content/amend"
	"hussif/content/front"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/near"
	"hussif/content/quantity"
)

// few is how many names are offered for a thing. A leaf is to be filled, not read.
const few = 3

func first(names []string) []string { return names[:min(few, len(names))] }

// points returns the measures that the build is fitted at, as it names them: those
// with a wanted ease, then those that seams cross.
func (s *sheet) points() []journal.PointRef {
	var points []journal.PointRef
	add := func(p journal.PointRef) {
		if !slices.ContainsFunc(points, func(known journal.PointRef) bool { return known.Point == p.Point }) {
			points = append(points, p)
		}
	}
	for _, w := range s.Build.Fit {
		add(journal.PointRef{Point: w.Point, Span: w.Name})
	}
	for _, seam := range s.Build.Seams {
		for _, c := range seam.Crosses {
			add(journal.PointRef{Point: c.Point, Span: c.Name})
		}
	}
	return points
}

func pointName(p journal.PointRef) string {
	if name := strings.Trim(p.Span.Text(), `'"`); name != "" {
		return name
	}
	return p.Point.String()
}

// measured asks for the garment's measures, with what each was the last time.
func (s *sheet) measured() {
	var rows []row
	for _, p := range s.points() {
		rows = append(rows, row{pointName(p), s.lastMeasured(p.Point)})
	}
	if len(rows) == 0 {
		rows = []row{{name: "bust girth"}, {name: "natural waist girth"}}
	}
	s.rows("measured", rows)
}

// lastMeasured returns what the garment measured the last time, and when.
func (s *sheet) lastMeasured(p measure.Point) string {
	for _, n := range slices.Backward(s.Build.Notes) {
		if n.Date > s.Day {
			continue
		}
		for _, r := range n.Measured {
			if r.Point == p && r.Value.Known() {
				return s.Journal.Settings.Format.Estimate(r.Value) + " on " + n.Date.String()
			}
		}
	}
	return ""
}

func (s *sheet) patternChanged() {
	name := "bust girth"
	if points := s.points(); len(points) > 0 {
		name = pointName(points[0])
	}
	s.rows("pattern changed", []row{{name, "as in " + s.length("-1/2 in", "-1 cm")}})
	s.field("on the pattern", blank, "yes or no")
}

// fitted asks for what was seen and for what can be done in the garment.
func (s *sheet) fitted() {
	s.entries("fitted", "as in {where: underarm, fault: binds when the arm is raised}", group("where", blank, "fault", blank))
	s.field("moves", group("reach", blank, "sit", blank, "walk", blank, "dress alone", blank), "yes or no each")
}

// length returns an example in the journal's own unit.
func (s *sheet) length(inches, centimetres string) string {
	switch s.Journal.Settings.Unit {
	case quantity.Centimetres, quantity.Millimetres, quantity.Metres:
		return centimetres
	}
	return inches
}

// materials adds an entry for each material of the build; what more is asked of
// each comes beside the amount, or, for a size, in its place.
func (s *sheet) materials(name string, more ...string) {
	var items []front.Node
	for _, m := range first(s.materialNames()) {
		pairs := []any{"material", m}
		if !slices.Contains(more, "size") {
			pairs = append(pairs, "amount", blank)
		}
		for _, field := range more {
			pairs = append(pairs, field, blank)
		}
		items = append(items, group(pairs...))
	}
	example := "as in " + s.length("1 1/4 yd", "1.2 m")
	if slices.Contains(more, "size") {
		example = "as in " + s.length("9 in x 31 in", "24 cm x 80 cm") + ", bias"
	}
	if len(items) > 0 {
		s.entries(name, example, items...)
	}
}

// materialNames returns the materials of the build, as it links to them, or else
// those of the journal.
func (s *sheet) materialNames() []string {
	var names []string
	add := func(r journal.Ref) {
		if !r.IsZero() && !slices.Contains(names, r.To) && s.Journal.Material(r) != nil {
			names = append(names, r.To)
		}
	}
	for _, n := range s.Build.Needs {
		add(n.Material)
	}
	for _, p := range s.Build.Pieces {
		add(p.Of)
	}
	if len(names) == 0 {
		for _, m := range s.Journal.Materials() {
			names = append(names, s.Journal.Name(m))
		}
	}
	return names
}

func (s *sheet) seamNames() []string {
	var names []string
	for _, seam := range s.Build.Seams {
		names = append(names, seam.Name.Text)
	}
	return names
}

// unsewn returns the seams that no note says were sewn, or all where each was.
func (s *sheet) unsewn() []string {
	sewn := make(map[string]bool)
	for _, n := range s.Build.Notes {
		for _, w := range n.Sewed {
			sewn[near.Folded(w.Text)] = true
		}
	}
	left := slices.DeleteFunc(s.seamNames(), func(name string) bool { return sewn[near.Folded(name)] })
	if len(left) == 0 {
		return s.seamNames()
	}
	return left
}

func (s *sheet) seamList(name string, seams []string) {
	s.field(name, amend.List(first(seams)...), "")
}

// altered asks for a row of the ledger for the first seams, with what is left on
// their edges.
func (s *sheet) altered() {
	var items []front.Node
	for i := range s.Build.Seams {
		seam := &s.Build.Seams[i]
		for _, c := range seam.Crosses {
			was := blank
			if by, ok := fit.Allowance(s.Build, s.Journal.Settings.Catalogue, seam, c.Point, s.Day); ok {
				was = s.exactly(by)
			}
			items = append(items, group("seam", seam.Name.Text, "at", pointName(journal.PointRef{Point: c.Point, Span: c.Name}), "was", was, "now", blank))
			if len(items) == few {
				break
			}
		}
		if len(items) == few {
			break
		}
	}
	if len(items) == 0 {
		items = []front.Node{group("what", blank, "was", blank, "now", blank)}
	}
	s.entries("altered", "now: the allowance on each edge, as in "+s.length("3/8 in", "1 cm"), items...)
}

// exactly returns a length as text, or nothing where it would have to be rounded: a
// ledger adds up.
func (s *sheet) exactly(by quantity.Length) front.Node {
	text := s.Journal.Settings.Format.Finer().Length(by)
	if again, err := quantity.ParseLength(text, s.Journal.Settings.Unit); err != nil || again != by {
		return blank
	}
	return amend.Text(text)
}

// occasion returns the occasion on that day, or else the build's first.
func (s *sheet) occasion() front.Node {
	for _, o := range s.Journal.Occasions() {
		if o.Date == s.Day && o.Date != 0 {
			return amend.Text(s.Journal.Name(o))
		}
	}
	for _, ref := range s.Build.Occasion {
		if o := s.Journal.Occasion(ref); o != nil {
			return amend.Text(ref.To)
		}
	}
	return blank
}

// carried offers the next-time notes that the build has still to answer.
func (s *sheet) carried() {
	var links []front.Node
	for _, l := range lesson.Gather(s.Journal).OpenFor(s.Build) {
		if from, ok := s.Journal.Find(string(l.From)); ok && len(links) < few {
			links = append(links, amend.Text(s.Journal.Name(from)+"#"+l.Anchor))
		}
	}
	if len(links) > 0 {
		s.ask("Said for the next time, and not answered here yet:")
		s.entries("carries", "", links...)
	}
}
