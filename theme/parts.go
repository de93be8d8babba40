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
	if plain(href) {
		return href
	}
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

// plain reports whether an address is a path and an anchor of nothing but letters
// of English, digits and the marks that need no thought; most are.
func plain(href string) bool {
	for i := range len(href) {
		c := href[i]
		if !isDigit(c) && !('a' <= c && c <= 'z') && !('A' <= c && c <= 'Z') && strings.IndexByte("-_./#", c) < 0 {
			return false
		}
	}
	return true
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

// contentsPart prints links to the sections of a page; nothing where there are few.
func contentsPart(sections []Link) template.HTML {
	if len(sections) == 0 {
		return ""
	}
	var p printer
	p.WriteString("<nav class=\"contents\" aria-label=\"On this page\">\n<p>On this page</p>\n<ul>")
	for _, l := range sections {
		p.WriteString("\n<li>")
		p.link(l)
		p.WriteString("</li>")
	}
	p.WriteString("\n</ul>\n</nav>\n")
	return p.html()
}

// backlinksPart prints the section of what links to a page; nothing where nothing
// does.
func backlinksPart(groups Backlinks) template.HTML {
	if len(groups) == 0 {
		return ""
	}
	var p printer
	p.WriteString("<section id=\"section-linked-from\" class=\"section\">\n<h2>Linked from</h2>\n<div class=\"matter\">\n<dl class=\"facts\">")
	for _, g := range groups {
		p.WriteString("\n<div><dt>")
		template.HTMLEscape(&p.Builder, []byte(g.How))
		p.WriteString("</dt><dd>")
		p.links(g.Links)
		p.WriteString("</dd></div>")
	}
	p.WriteString("\n</dl>\n</div>\n</section>\n")
	return p.html()
}

// nextPart prints a list of next-time notes.
func nextPart(list []Next) template.HTML {
	var p printer
	p.WriteString(`<ul class="next">`)
	for _, n := range list {
		p.WriteString("\n<li")
		if n.Anchor != "" {
			p.WriteString(` id="`)
			template.HTMLEscape(&p.Builder, []byte(n.Anchor))
			p.WriteString(`"`)
		}
		p.WriteString(">\n<p class=\"say\">")
		p.figures(n.Text)
		p.WriteString("</p>\n<p class=\"whence\">")
		if n.From.Text != "" {
			p.WriteString("<span>")
			p.link(n.From)
			p.WriteString("</span>")
		}
		if n.Day != "" {
			p.WriteString("<span>")
			template.HTMLEscape(&p.Builder, []byte(n.Day))
			p.WriteString("</span>")
		}
		if len(n.About) > 0 {
			p.WriteString("<span>about ")
			p.links(n.About)
			p.WriteString("</span>")
		}
		p.WriteString("</p>\n</li>")
	}
	p.WriteString("\n</ul>\n")
	return p.html()
}
