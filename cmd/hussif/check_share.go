package main

import (
	"hussif/build/audience"
	"hussif/content/journal"
	"hussif/content/source"
)

// seenJSON is what an audience will see of a journal.
type seenJSON struct {
	For      string               `json:"for" doc:"circle or public"`
	Pages    []seenPage           `json:"pages" doc:"every page that they see"`
	Hidden   int                  `json:"hidden" doc:"how many pages they do not see"`
	Findings []source.FindingJSON `json:"findings,omitempty" doc:"what only the maker can judge, as hussif check --json has it"`
}

type seenPage struct {
	Page     string   `json:"page" doc:"the name by which links know it"`
	Title    string   `json:"title" doc:"what it is called"`
	Photos   []string `json:"photos,omitempty" doc:"those of its photos that they see, by file"`
	Measures []string `json:"measures,omitempty" doc:"those of its measures that they see, with their values"`
	Fit      []string `json:"fit,omitempty" doc:"how it fits, as its wearer lets them know"`
	Money    int      `json:"money,omitempty" doc:"how many amounts of money they see"`
}

// seenBy tells what an audience will see of a journal.
func (v *voice) seenBy(w *workroom, who journal.Audience, asJSON bool) error {
	if err := w.sound(v, "what others would see cannot be told before that is mended"); err != nil {
		return err
	}
	share, err := audience.For(w.journal, who, today())
	if err != nil {
		return err
	}
	if len(share.Folder.Texts) == 1 {
		return nothingShared(w.journal, who)
	}
	pages, doubts := share.Pages(), share.Doubts(w.journal)
	if asJSON {
		out := seenJSON{For: string(who), Hidden: len(share.Hidden), Findings: source.JSON(doubts)}
		for _, p := range pages {
			out.Pages = append(out.Pages, seenPage{string(p.ID), p.Title, p.Photos, p.Measures, p.Fit, p.Money})
		}
		return v.json(out)
	}
	if err := v.findings(doubts); err != nil {
		return err
	}
	for _, p := range pages {
		line := string(p.ID) + ": " + p.Title
		if p.Money > 0 {
			line += "; " + number(p.Money, "amount") + " of money"
		}
		v.sayf("%s", line)
		for _, name := range p.Photos {
			line := "  photo " + name
			if len(share.Blur[name]) > 0 {
				line += ", blurred in part"
			}
			v.sayf("%s", line)
		}
		for _, m := range p.Measures {
			v.sayf("  measure %s", m)
		}
		for _, f := range p.Fit {
			v.sayf("  fit at %s", f)
		}
	}
	v.sayf("%s; %s", audience.Summary(who, pages, len(w.journal.Records())), tally(doubts))
	return nil
}
