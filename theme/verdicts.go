package theme

import "slices"

// verdict prints how something fits; nothing where there are no words for it.
func (p *printer) verdict(v Verdict) {
	if v.Words == "" {
		return
	}
	p.WriteString(`<span class="verdict `)
	p.text(v.Mark)
	p.WriteString(`">`)
	p.figures(v.Words)
	p.WriteString("</span>")
}

// value prints a quantity with what stands below it.
func (p *printer) value(v Value) {
	p.figured(`<span class="value">`, v.Text, "</span>")
	p.figured(` <small class="other">`, v.Other, "</small>")
	p.notes(v.Notes)
}

// notes prints notes in small type after something else.
func (p *printer) notes(notes []string) {
	for _, note := range notes {
		p.WriteString(` <small class="aside">`)
		p.figures(note)
		p.WriteString("</small>")
	}
}

// points prints a list of a class, a point a line; nothing where there are none.
func (p *printer) points(class string, points []string) {
	if len(points) == 0 {
		return
	}
	p.WriteString(`<ul class="` + class + `">`)
	for _, point := range points {
		p.WriteString("\n<li>")
		p.figures(point)
		p.WriteString("</li>")
	}
	p.WriteString("\n</ul>\n")
}

// rests prints what the verdicts of a table rest on; nothing where that is not
// told.
func (p *printer) rests(rests []string) { p.points("rests", rests) }

// openTable begins a table of a class in a part of its own that scrolls.
func (p *printer) openTable(class, title string) {
	p.WriteString(`<div class="sheet" role="group" aria-label="`)
	p.text(title)
	p.WriteString("\" tabindex=\"0\">\n<table class=\"ruled " + class + "\">\n<caption>")
	p.text(title)
	p.WriteString("</caption>\n<thead>\n<tr>")
}

// closeTable ends what openTable began.
func (p *printer) closeTable() { p.WriteString("\n</tbody>\n</table>\n</div>\n") }

// figureCells prints a cell for each value.
func (p *printer) figureCells(values ...Value) {
	for _, v := range values {
		p.WriteString(`<td class="figure">`)
		p.value(v)
		p.WriteString("</td>")
	}
}

// fitTable prints the fit of one garment on one day.
func (p *printer) fitTable(t FitTable) {
	p.rests(t.Rests)
	if len(t.Rows) > 0 {
		p.openTable("fit", t.Title)
		p.WriteString(`<th scope="col">Measure</th><th scope="col">Verdict</th>`)
		figures := t.figures()
		for _, f := range figures {
			p.WriteString(`<th scope="col" class="figure">` + f.head + "</th>")
		}
		p.WriteString("</tr>\n</thead>\n<tbody>")
		for _, row := range t.Rows {
			p.WriteString("\n<tr><th scope=\"row\">")
			p.link(row.Measure)
			p.WriteString(`</th><td class="words">`)
			p.verdict(row.Verdict)
			if len(row.Notes) > 0 {
				p.WriteString(`<ul class="notes">`)
				for _, note := range row.Notes {
					p.WriteString("<li>")
					p.figures(note)
					p.WriteString("</li>")
				}
				p.WriteString("</ul>")
			}
			p.WriteString("</td>")
			for _, f := range figures {
				p.figureCells(f.of(row))
			}
			p.WriteString("</tr>")
		}
		p.closeTable()
	}
	if len(t.Missed) > 0 {
		p.WriteString("<p class=\"lead-in\">To know more:</p>\n")
		p.points("missed", t.Missed)
	}
}

// A fitFigure is a column of a fit table.
type fitFigure struct {
	head string
	of   func(FitRow) Value
}

// figures returns the columns of which any row has a figure.
func (t FitTable) figures() []fitFigure {
	all := []fitFigure{
		{"Off by", func(r FitRow) Value { return r.Delta }},
		{"Garment", func(r FitRow) Value { return r.Garment }},
		{"Body", func(r FitRow) Value { return r.Body }},
		{"Ease had", func(r FitRow) Value { return r.Had }},
		{"Ease wanted", func(r FitRow) Value { return r.Wanted }},
		{"Error of measuring", func(r FitRow) Value { return r.Error }},
	}
	return slices.DeleteFunc(all, func(f fitFigure) bool {
		return !slices.ContainsFunc(t.Rows, func(r FitRow) bool { return f.of(r).Text != "" })
	})
}

// fitGrid prints several garments side by side.
func (p *printer) fitGrid(g FitGrid) {
	p.rests(g.Rests)
	if len(g.Rows) == 0 {
		return
	}
	p.openTable("grid", g.Title)
	p.WriteString(`<th scope="col">Build</th>`)
	for _, measure := range g.Measures {
		p.WriteString(`<th scope="col">`)
		p.text(measure)
		p.WriteString("</th>")
	}
	p.WriteString("</tr>\n</thead>\n<tbody>")
	for _, row := range g.Rows {
		p.WriteString("\n<tr><th scope=\"row\">")
		p.link(row.Build)
		if row.Who.Text != "" {
			p.WriteString(` <span class="aside">for `)
			p.link(row.Who)
			p.WriteString("</span>")
		}
		p.within(` <small class="aside">`, row.Day, "</small>")
		p.WriteString("</th>")
		for _, cell := range row.Cells {
			p.WriteString("<td>")
			p.fitCell(cell)
			p.WriteString("</td>")
		}
		p.WriteString("</tr>")
	}
	p.closeTable()
}

func (p *printer) fitCell(c FitCell) {
	if c.Delta.Other != "" {
		p.WriteString(`<abbr title="`)
		p.text(c.Delta.Other)
		p.WriteString(`">`)
	}
	p.verdict(c.Verdict)
	if c.Delta.Other != "" {
		p.WriteString("</abbr>")
	}
	p.notes(c.Delta.Notes)
}

// ledger prints what was done to a garment.
func (p *printer) ledger(rows []LedgerRow) {
	p.openTable("ledger", "Alterations")
	p.WriteString(`<th scope="col">Day</th><th scope="col">What</th><th scope="col">Where</th><th scope="col">What it should do</th><th scope="col">Because</th></tr>
</thead>
<tbody>`)
	for _, row := range rows {
		p.WriteString("\n<tr><th scope=\"row\" class=\"day\">")
		p.link(row.Day)
		p.WriteString(`</th><td class="words">`)
		p.figures(row.What)
		p.WriteString("</td><td>")
		p.text(row.Where)
		p.WriteString("</td><td>")
		if len(row.Effects) > 0 {
			p.WriteString(`<ul class="effects">`)
			for _, effect := range row.Effects {
				p.WriteString("<li>")
				p.text(effect.Name)
				p.WriteString(` <span class="value">`)
				p.figures(effect.Value)
				p.WriteString("</span></li>")
			}
			p.WriteString("</ul>")
		}
		p.WriteString(`</td><td class="words">`)
		p.figures(row.Because)
		p.WriteString("</td></tr>")
	}
	p.closeTable()
}

// ledgerChecks prints what was expected beside what was measured.
func (p *printer) ledgerChecks(checks []LedgerCheck) {
	p.openTable("checks", "Expected against measured")
	p.WriteString(`<th scope="col">Day</th><th scope="col">Measure</th><th scope="col">Verdict</th><th scope="col" class="figure">Expected</th><th scope="col" class="figure">Measured</th><th scope="col">Rests on</th></tr>
</thead>
<tbody>`)
	for _, check := range checks {
		p.WriteString("\n<tr><th scope=\"row\" class=\"day\">")
		p.link(check.Day)
		p.WriteString("</th><td>")
		p.text(check.Measure)
		p.WriteString("</td><td>")
		p.verdict(check.Verdict)
		p.WriteString("</td>")
		p.figureCells(check.Expected, check.Measured)
		p.WriteString(`<td class="words">`)
		p.figures(check.Rests)
		p.WriteString("</td></tr>")
	}
	p.closeTable()
}
