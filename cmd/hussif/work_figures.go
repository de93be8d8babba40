package main

import (
	"context"
	"fmt"

	"hussif/build/stock"
	"hussif/build/worked"
	"hussif/build/worksheet"
	"hussif/content/journal"
	"hussif/content/quantity"
)

// A working is one worksheet with what was typed for it.
type working struct {
	name      string
	typed     map[string]*typedFlag // by the inputs' names
	dir, unit string
	f         quantity.Format
	journal   *journal.Journal // the one around, for its figures; or nil
}

// format settles the unit: what was asked for, or the journal's, or inches.
func (w *working) format() error {
	w.f = quantity.Format{Unit: quantity.Inches}
	dir := w.dir
	if dir == "" {
		dir = journalAround(".")
	}
	switch folder, err := readFolder(dir); {
	case err == nil:
		w.journal, _ = folder.Journal(nil)
		w.f = w.journal.Settings.Format
	case w.dir != "":
		return err
	}
	if w.unit == "" {
		return nil
	}
	unit, ok := quantity.ParseUnit(w.unit)
	switch {
	case !ok:
		return fmt.Errorf("%q is no unit of length; there are in, cm and mm", w.unit)
	case unit != quantity.Inches && unit != quantity.Centimetres && unit != quantity.Millimetres:
		return fmt.Errorf("answers are given in in, cm or mm, not in %s", unit)
	}
	w.f = quantity.Format{Unit: unit, Fraction: w.f.Fraction}
	return nil
}

// entries returns what was typed as flags.
func (w *working) entries() ([]worksheet.Entry, error) {
	sheet, _ := worksheet.Find(w.name)
	var all []worksheet.Entry
	for _, in := range sheet.Inputs() {
		if texts := w.typed[in.Name].texts; len(texts) > 0 {
			e, err := w.entry(in, texts...)
			if err != nil {
				return nil, fmt.Errorf("--%s: %w", in.Flag(), err)
			}
			all = append(all, e)
		}
	}
	return all, nil
}

// entry returns what was typed for an input, with the journal's figure where one of
// its is meant.
func (w *working) entry(in worksheet.Input, texts ...string) (worksheet.Entry, error) {
	e := in.Typed(texts...)
	if w.journal == nil {
		return e, nil
	}
	room := worked.Room{Journal: w.journal, Stock: func(m journal.ID) stock.Sheet {
		sheet, _ := stock.Gather(w.journal).Of(m)
		return sheet
	}}
	// A layer after a comma is no item of its own.
	if b, err := w.journal.Settings.Borrow(in.Name, texts[0]); err == nil && b != nil && len(texts) == 1 {
		e.Items = []worksheet.Item{{Text: texts[0]}}
	}
	for i, item := range e.Items {
		b, err := w.journal.Settings.Borrow(in.Name, item.Text)
		if err != nil {
			return e, err
		}
		if b == nil {
			continue
		}
		lent, err := room.Lend(b)
		if err != nil {
			return e, err
		}
		lent.Name = item.Name
		e.Items[i] = lent
	}
	return e, nil
}

// work works the sheet out. At a terminal it asks for what is missing.
func (w *working) work(ctx context.Context, say *voice, quiet bool) (*worksheet.Paper, error) {
	given, err := w.entries()
	if err != nil {
		return nil, err
	}
	sheet, _ := worksheet.Find(w.name)
	paper := worksheet.Work(sheet, given, w.f)
	if quiet || len(paper.Missing()) == 0 || !isTyped(say.In) || !isTerminal(say.Out) {
		return paper, nil
	}
	return w.ask(newAsker(ctx, say.Streams), given, paper)
}
