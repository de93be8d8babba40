package main

import (
	"strings"

	"hussif/build/worksheet"
)

// paper prints a worksheet that has been worked out.
func (v *voice) paper(p *worksheet.Paper) {
	v.sayf("%s", v.bold(strings.ToUpper(p.Title[:1])+p.Title[1:]))
	var rows [][]string
	for _, g := range p.Given {
		row := []string{"  " + g.Name, g.Value}
		if g.From != "" {
			row = append(row, g.From)
		}
		rows = append(rows, row)
	}
	v.columns(rows)
	v.sayf("")
	for _, l := range p.Formula {
		v.sayf("  %s", l.Rule)
		v.sayf("    = %s", l.Filled)
		v.sayf("    = %s", l.Out)
	}
	v.sayf("")
	rows = nil
	for _, a := range p.Answers {
		name, words := a.Name, a.Words
		if a.Main {
			name = "* " + name
		} else {
			name = "  " + name
		}
		rows = append(rows, []string{name, words})
	}
	v.columns(rows)
	if len(p.Cut) > 0 {
		v.sayf("")
	}
	for _, c := range p.Cut {
		v.sayf("%s", wrapAfter("  [ ] ", c, 80))
	}
	for _, c := range p.Cautions {
		v.sayf("%s", wrapAfter("mind: ", c, 80))
	}
	if p.Care != "" {
		v.sayf("%s", wrapAfter("take care: ", p.Care, 80))
	}
}

// wrap breaks text into lines no longer than given, where blanks let it. Lines that
// begin with blanks keep them.
func wrap(text string, most int) string {
	var out []string
	for _, line := range strings.Split(text, "\n") {
		indent := line[:len(line)-len(strings.TrimLeft(line, " "))]
		out = append(out, wrapAfter(indent, strings.TrimSpace(line), most))
	}
	return strings.Join(out, "\n")
}

// wrapAfter breaks text after a lead, and sets the lines that follow under the first.
func wrapAfter(lead, text string, most int) string {
	lines := []string{lead}
	indent := strings.Repeat(" ", len([]rune(lead)))
	for word := range strings.FieldsSeq(text) {
		last := &lines[len(lines)-1]
		switch {
		case *last == lead && len(lines) == 1, *last == indent:
			*last += word
		case len([]rune(*last))+1+len([]rune(word)) > most:
			lines = append(lines, indent+word)
		default:
			*last += " " + word
		}
	}
	return strings.TrimRight(strings.Join(lines, "\n"), " ")
}
