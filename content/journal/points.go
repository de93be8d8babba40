package journal

import (
	"hussif/content/front"
	"hussif/content/measure"
	"hussif/content/near"
	"hussif/content/source"
)

// point finds the measure that a name stands for, or reports that none does.
func (t terms) point(d *front.Decoder, name string, at source.Span) (measure.Point, bool) {
	if p, ok := t.catalogue.Find(name); ok {
		return p, true
	}
	f := source.Found(at, source.Error, UnknownMeasure, "no measure is called %q", name)
	f.Instead = t.catalogue.Nearest(name)
	if len(f.Instead) == 0 {
		f.Instead = near.Of(name, sessionFields)
	}
	if len(f.Instead) == 0 {
		f.Help = "a measure of your own goes under `measures:` in " + SettingsFile
	}
	d.Report(f)
	return measure.Point{}, false
}

func (t terms) pointRef(d *front.Decoder, n front.Node) (PointRef, bool) {
	s, ok := text(d, n)
	if !ok {
		return PointRef{}, false
	}
	p, ok := t.point(d, s, n.Span)
	return PointRef{Point: p, Span: n.Span}, ok
}

// byPoint visits each measure of a group such as {bust girth: 36 in}, and each
// name of a list of measures where lists are welcome. A measure named twice, by
// its name and an alias say, is reported.
func (t terms) byPoint(d *front.Decoder, n front.Node, lists bool, visit func(measure.Point, front.Field)) bool {
	fields := n.Fields
	switch {
	case n.Kind == front.Map:
	case n.Kind == front.List && lists:
		fields = nil
		for _, item := range n.Items {
			switch item.Kind {
			case front.None:
			case front.Text:
				fields = append(fields, named(item))
			default:
				return d.Shape(item, "the name of a measure", "")
			}
		}
	case n.Kind == front.Text && lists:
		fields = []front.Field{named(n)}
	default:
		return d.Shape(n, "a group of measures", "write `bust girth: ...` and so on, a line each")
	}
	ok := true
	seen := make(map[measure.Point]source.Span, len(fields))
	for _, f := range fields {
		p, known := t.point(d, f.Key, f.KeySpan)
		if !known {
			ok = false
			continue
		}
		if first, twice := seen[p]; twice {
			finding := source.Found(f.KeySpan, source.Error, front.GivenTwice, "%s is given twice", p)
			finding.Help = "keep one of the two"
			finding.Related = []source.Place{{Span: first, Text: "first given here"}}
			d.Report(finding)
			ok = false
			continue
		}
		seen[p] = f.KeySpan
		visit(p, f)
	}
	return ok
}

// named makes a field without a value of a measure's name in a list.
func named(n front.Node) front.Field {
	return front.Field{Key: n.Text, KeySpan: n.Span, Value: front.Node{Span: n.Span}}
}

// sessionFields are the names in a measuring session that are no measures.
var sessionFields = []string{"date", "of", "over", "by", "remarks"}

func (t terms) readings(d *front.Decoder, n front.Node) (Readings, bool) {
	var out Readings
	ok := t.byPoint(d, n, false, func(p measure.Point, f front.Field) {
		if f.Value.Kind == front.None {
			return
		}
		if v, ok := t.estimate(d, f.Value); ok {
			out = append(out, Reading{Point: p, Value: v, Key: f.KeySpan, Span: f.Value.Span})
		}
	})
	return out, ok
}

func (t terms) changes(d *front.Decoder, n front.Node) (Changes, bool) {
	var out Changes
	ok := t.byPoint(d, n, false, func(p measure.Point, f front.Field) {
		if f.Value.Kind == front.None {
			return
		}
		if v, ok := t.length(d, f.Value); ok {
			out = append(out, Change{Point: p, By: v, Key: f.KeySpan, Span: f.Value.Span})
		}
	})
	return out, ok
}

func (t terms) wants(d *front.Decoder, n front.Node) (Wants, bool) {
	var out Wants
	ok := t.byPoint(d, n, true, func(p measure.Point, f front.Field) {
		var w Want
		d.Into(f.Value, &w)
		w.Point, w.Name = p, f.KeySpan
		out = append(out, w)
	})
	return out, ok
}

func (t terms) crossings(d *front.Decoder, n front.Node) (Crossings, bool) {
	var out Crossings
	ok := t.byPoint(d, n, true, func(p measure.Point, f front.Field) {
		var c Crossing
		d.Into(f.Value, &c)
		c.Point, c.Name = p, f.KeySpan
		out = append(out, c)
	})
	return out, ok
}

func (t terms) levels(d *front.Decoder, n front.Node) (Levels, bool) {
	var out Levels
	ok := t.byPoint(d, n, true, func(p measure.Point, f front.Field) {
		var l Level
		d.Into(f.Value, &l)
		l.Point, l.Name = p, f.KeySpan
		out = append(out, l)
	})
	return out, ok
}
