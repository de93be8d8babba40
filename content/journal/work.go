package journal

import (
	"hussif/content/front"
	"hussif/content/prose"
	"hussif/content/source"
)

// A Work is a worksheet in a record's text, with its figures as they were written.
// Which sheet it is, and what it makes of them, is not known here.
type Work struct {
	prose.Work
	Figures  []Figure
	Findings []source.Finding // about the writing of its lines, none of them an error
}

// A Figure is what is written for one input of a worksheet.
type Figure struct {
	Name  string
	Key   source.Span
	Items []FigureItem
}

// A FigureItem is a figure, or one of several, each of which may have a name.
type FigureItem struct {
	Name     string
	Text     string
	Borrowed *Borrowed // where it is a value of the record; nil where it is plain
	node     front.Node
}

// At returns the place of what stands so far into an item's text.
func (i FigureItem) At(offset int) source.Span {
	return i.node.At(offset, len(i.Text)-min(offset, len(i.Text)))
}

// MisreadWork is the rule for the lines of a worksheet that are no plain fields.
const MisreadWork = "worksheet"

// readWork reads the lines of a worksheet.
func (t terms) readWork(w prose.Work) Work {
	out := Work{Work: w}
	warn := func(at source.Span, text, help string) {
		f := source.Found(at, source.Warning, MisreadWork, "%s", text)
		f.Help = help
		out.Findings = append(out.Findings, f)
	}
	if w.Quoted {
		warn(w.Span, "a worksheet in a quote is not worked out", "take the block out of the quote")
		return out
	}
	node, found := front.Parse(w.Lines)
	for _, f := range found {
		f.Level, f.Rule = source.Warning, MisreadWork
		out.Findings = append(out.Findings, f)
	}
	switch node.Kind {
	case front.None:
		return out
	case front.Map:
	default:
		warn(node.Span, "a worksheet has lines of a name and a value", "write `name: value`")
		return out
	}
	for _, field := range node.Fields {
		figure := Figure{Name: field.Key, Key: field.KeySpan}
		add := func(name string, n front.Node) {
			if n.Kind != front.Text {
				if n.Kind != front.None {
					warn(n.Span, n.Kind.String()+" stands where a single value should", "")
				}
				return
			}
			item := FigureItem{Name: name, Text: n.Text, node: n}
			item.Borrowed = t.borrowed(field.Key, n, &out.Findings)
			figure.Items = append(figure.Items, item)
		}
		switch field.Value.Kind {
		case front.List:
			for _, n := range field.Value.Items {
				if n.Kind == front.Map && len(n.Fields) == 1 {
					add(n.Fields[0].Key, n.Fields[0].Value)
					continue
				}
				add("", n)
			}
		case front.Map:
			for _, f := range field.Value.Fields {
				add(f.Key, f.Value)
			}
		default:
			add("", field.Value)
		}
		out.Figures = append(out.Figures, figure)
	}
	return out
}

// Worked returns a worksheet of a record by its place among those of the text.
func (p *Page) Worked(w prose.Work) (Work, bool) {
	for _, known := range p.Works {
		if known.Span == w.Span {
			return known, true
		}
	}
	return Work{}, false
}
