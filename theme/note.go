package theme

import "html/template"

// note prints the page of a dated note. It is the one page without a template: a
// journal has twenty notes for each other page, and this takes a small part of the
// time.
func (p *printer) note(n *Note) {
	p.top(n.Frame)
	p.WriteString("<div class=\"opening\">\n<div class=\"opening-words\">\n")
	if n.Day != "" || n.Of.Text != "" {
		p.WriteString(`<p class="note-day">`)
		p.within("<span>", n.Day, "</span>")
		if n.Of.Text != "" {
			p.WriteString(`<span class="note-of">`)
			p.link(n.Of)
			p.WriteString("</span>")
		}
		p.WriteString("</p>\n")
	}
	p.facts(n.Facts)
	p.tagLinks(n.Tags)
	p.WriteString("</div>\n</div>\n")
	p.contents(n.Contents())
	p.noteRecord(n)
	p.noteTalk(n)
	if len(n.Photos) > 0 {
		p.openSection("photos", "Photos")
		p.template("photos.html", n.Photos)
		p.closeSection()
	}
	p.backlinks(n.Backlinks)
	if n.Earlier != nil || n.Later != nil {
		p.WriteString("<nav class=\"neighbours\" aria-label=\"Notes of the same build\">\n")
		p.neighbour(`<p class="earlier"><span class="label">Earlier</span> `, n.Earlier)
		p.neighbour(`<p class="later"><span class="label">Later</span> `, n.Later)
		p.WriteString("</nav>\n")
	}
	p.bottom(n.Frame)
}

// noteRecord prints what was done and measured.
func (p *printer) noteRecord(n *Note) {
	if n.Body != "" {
		p.openSection("what-was-done", "What was done")
		p.WriteString(`<div class="prose">`)
		p.html(n.Body)
		p.WriteString("</div>")
		p.closeSection()
	}
	if len(n.Altered) > 0 {
		p.openSection("ledger", "Ledger")
		p.ledger(n.Altered)
		p.closeSection()
	}
	if n.Measured != nil {
		p.openSection("measured", "Measured")
		p.ruled("Measured", *n.Measured)
		p.closeSection()
	}
	if len(n.Checks) > 0 {
		p.WriteString("<section id=\"section-checks\" class=\"section\">\n<h2>Expected against measured</h2>\n<div class=\"matter alone\">\n")
		p.ledgerChecks(n.Checks)
		p.closeSection()
	}
	if len(n.Bodies) > 0 {
		p.openSection("bodies", "Body measures")
		p.template("sessions.html", n.Bodies)
		p.closeSection()
	}
}

// noteTalk prints what was seen, settled and resolved on, and what it took.
func (p *printer) noteTalk(n *Note) {
	if len(n.Faults) > 0 {
		p.openSection("faults", "Faults seen")
		p.facts(n.Faults)
		p.closeSection()
	}
	if len(n.Moves) > 0 {
		p.openSection("moves", "Wearing it")
		p.points("moves", n.Moves)
		p.WriteString("</div>\n</section>\n")
	}
	for _, part := range []struct {
		anchor, title string
		list          []Decision
	}{{"decided", "Decided", n.Decisions}, {"turned-out", "How it turned out", n.TurnedOut}} {
		if len(part.list) > 0 {
			p.openSection(part.anchor, part.title)
			p.decisions(part.list)
			p.closeSection()
		}
	}
	for _, part := range []struct {
		anchor, title string
		list          []Next
	}{{"next-time", "Next time", n.Next}, {"carried", "Answered here", n.Carried}} {
		if len(part.list) > 0 {
			p.openSection(part.anchor, part.title)
			p.nexts(part.list)
			p.closeSection()
		}
	}
	if n.Material != nil {
		p.openSection("material", "Material")
		p.ruled("Material", *n.Material)
		p.closeSection()
	}
}

// openSection begins a section of a page, and closeSection ends it.
func (p *printer) openSection(anchor, title string) {
	p.WriteString(`<section id="section-`)
	p.WriteString(anchor)
	p.WriteString("\" class=\"section\">\n<h2>")
	p.WriteString(title)
	p.WriteString("</h2>\n<div class=\"matter\">\n")
}

func (p *printer) closeSection() { p.WriteString("\n</div>\n</section>\n") }

// html prints what is HTML already.
func (p *printer) html(h template.HTML) { p.WriteString(string(h)) }

// tagLinks prints the tags of a page; nothing where there are none.
func (p *printer) tagLinks(tags []Link) {
	if len(tags) == 0 {
		return
	}
	p.WriteString(`<p class="tags"><span class="label">Tags</span>`)
	for _, l := range tags {
		p.WriteByte(' ')
		p.link(l)
	}
	p.WriteString("</p>\n")
}

func (p *printer) neighbour(before string, l *Link) {
	if l == nil {
		return
	}
	p.WriteString(before)
	p.link(*l)
	p.WriteString("</p>\n")
}
