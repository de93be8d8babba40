package worked

import (
	"fmt"
	"strings"

	"hussif/build/stock"
	"hussif/build/worksheet"
	"hussif/content/journal"
	"hussif/content/quantity"
	"hussif/content/source"
)

// Rule is the rule of all findings about worksheets.
const Rule = journal.MisreadWork

// A Room is where worksheets are worked: a journal, and its stash.
type Room struct {
	Journal *journal.Journal
	Stock   func(material journal.ID) stock.Sheet
}

// A Sheet is a worksheet of a text, worked out.
type Sheet struct {
	Work    journal.Work
	Paper   *worksheet.Paper
	Sources map[string]journal.Record // what an input was taken from, by its name
	Faults  []source.Finding          // warnings, each at its place
}

// Sheets works out all worksheets in a record's text, in order.
func (r Room) Sheets(of journal.Record) []Sheet {
	var all []Sheet
	for _, w := range of.Head().Works {
		all = append(all, r.Sheet(of, w))
	}
	return all
}

// Sheet works out one of them.
func (r Room) Sheet(of journal.Record, w journal.Work) Sheet {
	s := Sheet{Work: w, Sources: make(map[string]journal.Record)}
	for _, f := range w.Findings {
		f.Rule = Rule
		s.Faults = append(s.Faults, f)
	}
	sheet := s.find()
	if sheet == nil || len(s.Faults) > 0 {
		s.Paper = &worksheet.Paper{Title: w.Name}
		return s
	}
	var entries []worksheet.Entry
	var mind []string
	for _, figure := range w.Figures {
		e := worksheet.Entry{Name: figure.Name}
		for _, item := range figure.Items {
			given := worksheet.Item{Name: item.Name, Text: item.Text}
			if item.Borrowed != nil {
				lent, err := r.lend(of, item.Borrowed)
				if err != nil {
					s.warn(item.At(0), err.Error(), "")
					continue
				}
				given.Text, given.Shown, given.From = lent.text, lent.shown, lent.from
				if lent.record != nil {
					s.Sources[figure.Name] = lent.record
				}
				if lent.since != "" {
					mind = append(mind, lent.since)
				}
			}
			e.Items = append(e.Items, given)
		}
		entries = append(entries, e)
	}
	if len(s.Faults) > 0 {
		s.Paper = &worksheet.Paper{Title: sheet.About().Name}
		return s
	}
	s.Paper = worksheet.Work(sheet, entries, r.Journal.Settings.Format)
	if len(s.Paper.Faults) == 0 {
		s.Paper.Cautions = append(mind, s.Paper.Cautions...)
	}
	for _, fault := range s.Paper.Faults {
		s.place(fault)
	}
	return s
}

// find returns the sheet that is meant, or nil.
func (s *Sheet) find() worksheet.Sheet {
	if s.Work.Name == "" {
		s.warn(s.Work.Span, "this block does not say which worksheet it is", "write its name after "+worksheet.Fence+", as in "+worksheet.Fence+" knife pleats")
		return nil
	}
	sheet, near := worksheet.Find(s.Work.Name)
	if sheet != nil {
		return sheet
	}
	f := s.warn(s.Work.Span, fmt.Sprintf("no worksheet is called %q", s.Work.Name), "")
	for _, name := range near {
		f.Instead = append(f.Instead, worksheet.Fence+" "+name)
	}
	if len(near) == 0 {
		f.Help = "there are " + strings.Join(worksheet.Names(), ", ")
	}
	return nil
}

func (s *Sheet) warn(at source.Span, text, help string) *source.Finding {
	f := source.Found(at, source.Warning, Rule, "%s", text)
	f.Help = help
	s.Faults = append(s.Faults, f)
	return &s.Faults[len(s.Faults)-1]
}

// place reports a fault of the paper where its figure stands.
func (s *Sheet) place(fault worksheet.Fault) {
	at := s.Work.Span
	instead := fault.Instead
	for _, figure := range s.Work.Figures {
		if fault.Input == "" || worksheet.Plain(figure.Name) != worksheet.Plain(fault.Input) {
			continue
		}
		at = figure.Key
		if fault.Name || len(figure.Items) == 0 {
			continue
		}
		item := figure.Items[min(max(fault.Item, 0), len(figure.Items)-1)]
		at = item.At(0) // what is suggested stands for all of it
		if len(instead) == 0 {
			at = item.At(fault.Offset)
		}
	}
	f := s.warn(at, fault.Text, fault.Help)
	f.Instead = instead
}

// exactly writes a length so that it is read again as it is.
func exactly(l quantity.Length) string {
	return fmt.Sprintf("%d.%06d mm", l/quantity.Millimetre, l%quantity.Millimetre)
}
