package theme

import "html/template"

// facts prints the facts of a page; nothing where there are none.
func (p *printer) facts(facts []Fact) {
	if len(facts) == 0 {
		return
	}
	p.WriteString("<dl class=\"facts\">")
	for _, f := range facts {
		p.WriteString("\n<div><dt>")
		p.text(f.Name)
		p.WriteString("</dt><dd>")
		if len(f.Links) > 0 {
			p.links(f.Links)
		} else {
			p.figures(f.Value)
		}
		p.WriteString("</dd></div>")
	}
	p.WriteString("\n</dl>\n")
}

// labelled is the template function of [printer.ruled].
func (p *printer) labelled(label string, table Table) (template.HTML, error) {
	p.ruled(label, table)
	return "", p.err
}

// ruled prints a table that scrolls by itself where it is wider than the page. The
// label is its caption, unseen, where it has no title.
func (p *printer) ruled(label string, t Table) {
	p.WriteString(`<div class="sheet" role="group" aria-label="`)
	p.text(label)
	p.WriteString("\" tabindex=\"0\">\n<table class=\"ruled\">\n")
	if t.Title != "" {
		p.WriteString("<caption>")
		p.text(t.Title)
	} else {
		p.WriteString(`<caption class="unseen">`)
		p.text(label)
	}
	p.WriteString("</caption>\n")
	p.rows(t)
	p.WriteString("</table>\n</div>")
}

// rows prints the head and the rows of a table. The first cell of a row is its
// heading, and that of the rows below it in which this cell is empty.
func (p *printer) rows(t Table) {
	class := func(column int) string {
		if column < len(t.Numeric) && t.Numeric[column] {
			return ` class="figure"`
		}
		return ""
	}
	p.WriteString("<thead>\n<tr>")
	for i, head := range t.Heads {
		p.WriteString(`<th scope="col"` + class(i) + ">")
		p.text(head)
		p.WriteString("</th>")
	}
	p.WriteString("</tr>\n</thead>\n<tbody>")
	for at, row := range t.Rows {
		p.WriteString("\n<tr>")
		for i, cell := range row {
			if i == 0 {
				p.rowHead(cell, t.Rows[:at], t.Rows[at+1:])
				continue
			}
			p.WriteString("<td" + class(i) + ">")
			p.link(cell)
			p.WriteString("</td>")
		}
		p.WriteString("</tr>")
	}
	p.WriteString("\n</tbody>\n")
}

// rowHead prints the first cell of a row, which may stand for the rows below it too.
func (p *printer) rowHead(cell Link, above, below [][]Link) {
	if cell.Text == "" && len(above) > 0 {
		return
	}
	p.WriteString(`<th scope="row"`)
	span := 1
	for span <= len(below) && below[span-1][0].Text == "" {
		span++
	}
	if span > 1 {
		p.WriteString(` rowspan="`)
		p.number(span)
		p.WriteString(`"`)
	}
	p.WriteString(">")
	p.link(cell)
	p.WriteString("</th>")
}

// contents prints links to the sections of a page; nothing where there are few.
func (p *printer) contents(sections []Link) {
	if len(sections) == 0 {
		return
	}
	p.WriteString("<nav class=\"contents\" aria-label=\"On this page\">\n<p>On this page</p>\n<ul>")
	for _, l := range sections {
		p.WriteString("\n<li>")
		p.link(l)
		p.WriteString("</li>")
	}
	p.WriteString("\n</ul>\n</nav>\n")
}

// backlinks prints the section of what links to a page; nothing where nothing
// does.
func (p *printer) backlinks(groups Backlinks) {
	if len(groups) == 0 {
		return
	}
	p.WriteString("<section id=\"section-linked-from\" class=\"section\">\n<h2>Linked from</h2>\n<div class=\"matter\">\n<dl class=\"facts\">")
	for _, g := range groups {
		p.WriteString("\n<div><dt>")
		p.text(g.How)
		p.WriteString("</dt><dd>")
		p.links(g.Links)
		p.WriteString("</dd></div>")
	}
	p.WriteString("\n</dl>\n</div>\n</section>\n")
}

// nexts prints a list of next-time notes.
func (p *printer) nexts(list []Next) {
	p.WriteString(`<ul class="next">`)
	for _, n := range list {
		p.WriteString("\n<li")
		if n.State != "" {
			p.WriteString(` class="answered"`)
		}
		p.attr("id", n.Anchor)
		p.WriteString(">\n<p class=\"say\">")
		p.figures(n.Text)
		p.WriteString("</p>\n<p class=\"whence\">")
		if n.State != "" {
			p.WriteString(`<span class="fate">`)
			p.figures(n.State + " ")
			p.link(n.Answer)
			p.WriteString("</span>")
		}
		if n.From.Text != "" {
			p.WriteString("<span>")
			p.link(n.From)
			p.WriteString("</span>")
		}
		p.within("<span>", n.Day, "</span>")
		if len(n.About) > 0 {
			p.WriteString("<span>about ")
			p.links(n.About)
			p.WriteString("</span>")
		}
		p.WriteString("</p>\n</li>")
	}
	p.WriteString("\n</ul>\n")
}

// decisions prints a list of settled questions.
func (p *printer) decisions(list []Decision) {
	p.WriteString(`<ul class="decisions">`)
	for _, d := range list {
		p.WriteString("\n<li")
		p.attr("id", d.Anchor)
		p.WriteString(">\n<p class=\"question\">")
		p.text(d.Question)
		p.WriteString("</p>\n<dl>\n")
		p.figured(`<div><dt>Chose</dt><dd class="chose">`, d.Chose, "</dd></div>\n")
		if len(d.InsteadOf) > 0 {
			p.WriteString("<div><dt>Instead of</dt><dd>")
			for i, other := range d.InsteadOf {
				if i > 0 {
					p.WriteString("; ")
				}
				p.figures(other)
			}
			p.WriteString("</dd></div>\n")
		}
		p.figured("<div><dt>Because</dt><dd>", d.Because, "</dd></div>\n")
		if len(d.RestsOn) > 0 {
			p.WriteString("<div><dt>Rests on</dt><dd>")
			p.links(d.RestsOn)
			p.WriteString("</dd></div>\n")
		}
		if d.Outcome != nil {
			p.WriteString("<div><dt>Turned out</dt><dd>")
			p.outcome(d.Outcome)
			p.WriteString("</dd></div>\n")
		}
		if d.From.Text != "" {
			p.WriteString("<div><dt>Written</dt><dd>")
			p.link(d.From)
			p.WriteString("</dd></div>\n")
		}
		p.WriteString("</dl>\n</li>")
	}
	p.WriteString("\n</ul>\n")
}

// outcome prints how a decision turned out.
func (p *printer) outcome(o *Outcome) {
	p.template("mark.html", o)
	p.figured(": ", o.Because, "")
	if o.From.Text != "" {
		p.WriteString(` <span class="aside">`)
		p.link(o.From)
		p.WriteString("</span>")
	}
}
