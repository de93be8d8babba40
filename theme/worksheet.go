package theme

import (
	"html/template"
	"strconv"
	"strings"

	"github.com/yuin/goldmark/ast"

	"hussif/content/prose"
)

// A Worksheet is a worksheet of a text, worked out and drawn, or what is wrong with
// it, with the lines as they were written.
type Worksheet struct {
	ID       string // of the block, and what its drawings' names begin with; "" for none
	Name     string // "knife pleats"
	Given    []WorkInput
	Formula  []WorkLine
	Main     []Fact // the answers that it was asked for
	Others   []Fact // all the rest
	Cut      []string
	Cautions []string
	Care     string // where the work can hurt
	Drawings []template.HTML
	Prints   []Link // full-size sheets: "A4", "Letter"
	PrintsOf string // what is printed: "the panel"

	Faults []WorkFault
	Typed  string // the lines as written, shown where there are faults
}

// A WorkInput is a figure that a worksheet was worked with.
type WorkInput struct {
	Name, Value string
	From        string // where it is from, where that is not the maker's pen
	Source      Link   // the page that it was taken from
}

// A WorkLine is a formula in words, with the numbers in, and what comes out.
type WorkLine struct{ Rule, Filled, Out string }

// A WorkFault is what is wrong with one line of a worksheet.
type WorkFault struct {
	Line   int // of the file
	Words  string
	Advice string // what could stand there, or what to do
}

// printWork prints a worksheet when the others of the journal are known.
func printWork(p *proseWriter, _ []byte, n ast.Node, entering bool) ast.WalkStatus {
	if entering {
		work := n.(*prose.WorkNode).Work
		p.later(func(w *linkWriter) { w.work(work) })
	}
	return ast.WalkSkipChildren
}

// work prints a worksheet, or the lines as they were written where nobody knows it.
func (w *linkWriter) work(work prose.Work) {
	sheet, ok := w.linker.Worksheet(work)
	if !ok {
		w.WriteString("<pre><code>")
		w.text(work.Typed)
		w.WriteString("</code></pre>\n")
		return
	}
	var p printer
	p.worksheet(sheet)
	w.WriteString(p.String())
}

func (p *printer) worksheet(s Worksheet) {
	p.WriteString(`<section class="worksheet" aria-label="Worksheet: `)
	p.text(s.Name)
	p.WriteByte('"')
	p.attr("id", s.ID)
	p.WriteString(">\n<p class=\"worksheet-name\"><span class=\"label\">Worksheet</span> ")
	p.text(s.Name)
	p.WriteString("</p>\n")
	if len(s.Faults) > 0 {
		p.workFaults(s)
	} else {
		p.worked(s)
	}
	p.WriteString("</section>\n")
}

// workFaults prints what is wrong, below the lines that it is about.
func (p *printer) workFaults(s Worksheet) {
	if strings.TrimSpace(s.Typed) != "" {
		p.WriteString("<pre><code>")
		p.text(s.Typed)
		p.WriteString("</code></pre>\n")
	}
	p.WriteString("<div class=\"cautions\" role=\"note\" aria-label=\"Not worked out\">\n<p class=\"label\">Not worked out</p>\n<ul>")
	for _, f := range s.Faults {
		p.WriteString("\n<li>line " + strconv.Itoa(f.Line) + ": ")
		p.figures(f.Words)
		p.figured(` <small class="aside">`, f.Advice, "</small>")
		p.WriteString("</li>")
	}
	p.WriteString("\n</ul>\n</div>\n")
}

// worked prints what came out.
func (p *printer) worked(s Worksheet) {
	p.workFacts("worked-main", s.Main)
	for _, d := range s.Drawings {
		p.WriteString(string(d))
		p.WriteByte('\n')
	}
	if len(s.Cut) > 0 {
		p.WriteString("<p class=\"lead-in\">To cut and to mark</p>\n")
		p.points("missed", s.Cut)
	}
	if len(s.Cautions)+len(s.Care) > 0 {
		p.WriteString("<div class=\"cautions\" role=\"note\" aria-label=\"Take care\">\n<p class=\"label\">Take care</p>\n")
		all := s.Cautions
		if s.Care != "" {
			all = append(all[:len(all):len(all)], s.Care)
		}
		p.points("worked-cautions", all)
		p.WriteString("</div>\n")
	}
	if len(s.Prints) > 0 {
		p.WriteString(`<p class="tags"><span class="label">In full size</span> `)
		p.figures(s.PrintsOf + ": ")
		p.links(s.Prints)
		p.WriteString("</p>\n")
	}
	p.WriteString("<p class=\"lead-in\">Worked with</p>\n<ul class=\"worked-with\">")
	for _, g := range s.Given {
		p.WriteString("\n<li>")
		p.text(g.Name)
		p.WriteString(" <b>")
		p.figures(g.Value)
		p.WriteString("</b>")
		if g.From != "" {
			p.WriteString(` <small class="aside">`)
			p.figures(g.From)
			p.WriteString("</small>")
		}
		if g.Source.Href != "" {
			p.WriteString(" <small class=\"aside\">see ")
			p.link(g.Source)
			p.WriteString("</small>")
		}
		p.WriteString("</li>")
	}
	p.WriteString("\n</ul>\n<ol class=\"formula\">")
	for _, l := range s.Formula {
		p.WriteString("\n<li>")
		p.figures(l.Rule)
		p.WriteString("<br>= ")
		p.figures(l.Filled)
		p.WriteString(" = <b>")
		p.figures(l.Out)
		p.WriteString("</b></li>")
	}
	p.WriteString("\n</ol>\n")
	p.workFacts("worked-others", s.Others)
}

func (p *printer) workFacts(class string, facts []Fact) {
	if len(facts) == 0 {
		return
	}
	p.WriteString(`<dl class="facts ` + class + `">`)
	for _, f := range facts {
		p.WriteString("\n<div><dt>")
		p.figures(f.Name)
		p.WriteString("</dt><dd>")
		p.figures(f.Value)
		p.WriteString("</dd></div>")
	}
	p.WriteString("\n</dl>\n")
}
