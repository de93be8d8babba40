package theme

import (
	"html/template"
	"net/url"
	"strings"
)

// The parts below stand on a page by the hundred. They are printed here and not
// by a template, which takes some ten times as long over each.

// A printer builds HTML from text, which it escapes, and from marks of its own.
type printer struct{ strings.Builder }

func (p *printer) html() template.HTML { return template.HTML(p.String()) }

// figures prints text with its fractions marked.
func (p *printer) figures(text string) {
	if strings.Contains(text, "/") {
		p.WriteString(string(figures(text)))
		return
	}
	template.HTMLEscape(&p.Builder, []byte(text))
}

// aside prints a note in small type after something else; nothing for "".
func (p *printer) aside(note string) {
	if note == "" {
		return
	}
	p.WriteString(` <small class="aside">`)
	p.figures(note)
	p.WriteString(`</small>`)
}

func (p *printer) link(l Link) {
	if l.Href != "" {
		p.WriteString(`<a href="`)
		template.HTMLEscape(&p.Builder, []byte(address(l.Href)))
		p.WriteString(`">`)
	}
	p.figures(l.Text)
	if l.Href != "" {
		p.WriteString(`</a>`)
	}
	p.aside(l.Note)
}

func (p *printer) links(list []Link) {
	for i, l := range list {
		if i > 0 {
			p.WriteString(", ")
		}
		p.link(l)
	}
}

// address returns an address as it may stand in a page: one of another scheme than
// the web's leads nowhere, and what an address cannot hold is put in its place by
// percent signs.
func address(href string) string {
	u, err := url.Parse(href)
	if err != nil {
		return "#"
	}
	switch u.Scheme {
	case "", "http", "https", "mailto":
		return u.String()
	}
	return "#"
}

// linkPart prints a link, or its words where it leads nowhere.
func linkPart(l Link) template.HTML {
	var p printer
	p.link(l)
	return p.html()
}

// linksPart prints links with commas between them.
func linksPart(list []Link) template.HTML {
	var p printer
	p.links(list)
	return p.html()
}

// factsPart prints the facts of a page; nothing where there are none.
func factsPart(facts []Fact) template.HTML {
	if len(facts) == 0 {
		return ""
	}
	var p printer
	p.WriteString("<dl class=\"facts\">")
	for _, f := range facts {
		p.WriteString("\n<div><dt>")
		template.HTMLEscape(&p.Builder, []byte(f.Name))
		p.WriteString("</dt><dd>")
		if len(f.Links) > 0 {
			p.links(f.Links)
		} else {
			p.figures(f.Value)
		}
		p.WriteString("</dd></div>")
	}
	p.WriteString("\n</dl>\n")
	return p.html()
}

// rowsPart prints the head and the rows of a table. The first cell of a row is its
// heading.
func rowsPart(t Table) template.HTML {
	var p printer
	class := func(column int) string {
		if column < len(t.Numeric) && t.Numeric[column] {
			return ` class="figure"`
		}
		return ""
	}
	p.WriteString("<thead>\n<tr>")
	for i, head := range t.Heads {
		p.WriteString(`<th scope="col"` + class(i) + ">")
		template.HTMLEscape(&p.Builder, []byte(head))
		p.WriteString("</th>")
	}
	p.WriteString("</tr>\n</thead>\n<tbody>")
	for _, row := range t.Rows {
		p.WriteString("\n<tr>")
		for i, cell := range row {
			if i == 0 {
				p.WriteString(`<th scope="row">`)
				p.link(cell)
				p.WriteString("</th>")
				continue
			}
			p.WriteString("<td" + class(i) + ">")
			p.link(cell)
			p.WriteString("</td>")
		}
		p.WriteString("</tr>")
	}
	p.WriteString("\n</tbody>\n")
	return p.html()
}
