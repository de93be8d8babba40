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
	v.table(nil, rows)
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
	v.table(nil, rows)
	if len(p.Cut) > 0 {
		v.sayf("")
	}
	for _, c := range p.Cut {
		v.sayf("  [ ] %s", c)
	}
	for _, c := range p.Cautions {
		v.sayf("mind: %s", c)
	}
	if p.Care != "" {
		v.sayf("take care: %s", p.Care)
	}
}
