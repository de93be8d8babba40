package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"hussif/build/worksheet"
)

// ask asks for each figure that a worksheet misses until it can be worked out, and
// works it out. An empty answer leaves out what may follow from the others.
func (w *working) ask(a *asker, given []worksheet.Entry, p *worksheet.Paper) (*worksheet.Paper, error) {
	var left []string // out
	told := false
	for {
		i := slices.IndexFunc(p.Missing(), func(name string) bool { return !slices.Contains(left, name) })
		if i < 0 {
			return p, nil
		}
		sheet, _ := worksheet.Find(w.name)
		inputs := sheet.Inputs()
		in := inputs[slices.IndexFunc(inputs, func(in worksheet.Input) bool { return in.Name == p.Missing()[i] })]
		if !told && in.Need == worksheet.Solved {
			told = true
			a.sayf("What follows from the others may be left out: press Enter.")
		}
		answer, err := a.line(fmt.Sprintf("%s (%s; as in %s)?", in.Name, in.Doc, in.Example))
		switch {
		case errors.Is(err, io.EOF):
			return p, nil // which says what is missing
		case err != nil:
			return nil, err
		case answer == "" && in.Need == worksheet.Always:
			a.sayf("  nothing can be worked out without it")
			continue
		case answer == "":
			left = append(left, in.Name)
			continue
		}
		entry, err := w.entry(in, answer)
		if err != nil {
			a.sayf("  %v", err)
			continue
		}
		tried := append(slices.Clone(given), entry)
		sheet, _ = worksheet.Find(w.name)
		next := worksheet.Work(sheet, tried, w.f)
		if wrong := slices.IndexFunc(next.Faults, func(f worksheet.Fault) bool { return f.Input == in.Name }); wrong >= 0 {
			fault := next.Faults[wrong]
			a.sayf("  %s", fault.Text)
			if len(fault.Instead) > 0 {
				a.sayf("  did you mean %s?", strings.Join(fault.Instead, " or "))
			}
			continue
		}
		given, p = tried, next
	}
}
