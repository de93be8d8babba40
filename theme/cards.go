package theme

// cards prints pages that stand in a list.
func (p *printer) cards(list []Card) {
	p.WriteString("<ul class=\"cards\">\n")
	for _, c := range list {
		p.card(c)
	}
	p.WriteString("</ul>\n")
}

func (p *printer) card(c Card) {
	p.WriteString("<li class=\"card\">\n")
	if c.Photo != nil {
		p.WriteString(`<div class="card-photo">`)
		p.template("image.html", c.Photo)
		p.WriteString("</div>\n")
	}
	p.WriteString("<div class=\"card-words\">\n")
	if c.Kind != "" || c.State != "" {
		p.WriteString(`<p class="card-kind">`)
		p.text(c.Kind)
		p.within(` <span class="state">`, c.State, "</span>")
		p.WriteString("</p>\n")
	}
	p.WriteString(`<p class="card-title">`)
	p.link(c.Link)
	p.WriteString("</p>\n")
	for _, line := range c.Lines {
		p.WriteString("<p>")
		p.figures(line)
		p.WriteString("</p>\n")
	}
	if c.Fit != nil {
		p.WriteString("<p>")
		p.verdict(*c.Fit)
		p.WriteString("</p>\n")
	}
	if c.NextUp != 0 {
		p.WriteString(`<p class="next-up">`)
		p.number(c.NextUp)
		if c.NextUp == 1 {
			p.WriteString(" next-time note open</p>\n")
		} else {
			p.WriteString(" next-time notes open</p>\n")
		}
	}
	p.WriteString("</div>\n</li>\n")
}

// entries prints dated notes that stand in a list.
func (p *printer) entries(list []Entry) {
	p.WriteString(`<ol class="entries">`)
	for _, e := range list {
		p.WriteString("\n<li class=\"entry\">\n<p class=\"entry-day\">")
		p.text(e.Day)
		p.within(` <span class="stage">`, e.Stage, "</span>")
		p.within(` <span class="aside">`, e.Hours, "</span>")
		p.WriteString("</p>\n<div class=\"entry-words\">\n<p class=\"entry-title\">")
		p.link(e.Link)
		if e.Of.Text != "" {
			p.WriteString(` <span class="aside">`)
			p.link(e.Of)
			p.WriteString("</span>")
		}
		p.WriteString("</p>\n")
		p.figured("<p>", e.Text, "</p>\n")
		p.WriteString("</div>\n")
		if e.Photo != nil {
			p.WriteString(`<div class="entry-photo">`)
			p.template("image.html", e.Photo)
			p.WriteString("</div>\n")
		}
		p.WriteString("</li>")
	}
	p.WriteString("\n</ol>\n")
}
