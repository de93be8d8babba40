package table

import (
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/prose"
)

func decisions() Subject {
	return Subject{
		Name: "decisions",
		Doc:  "what was decided, why, and how it turned out",
		Columns: []Column{
			{"day", "when it was decided"},
			{"build", "for which garment"},
			{"from", "the page that says so"},
			{"anchor", "where on that page"},
			{"question", "what was open"},
			{"chose", "what was chosen"},
			{"instead_of", "what else could have been"},
			{"because", "why"},
			{"rests_on", "the pages it rests on"},
			{"turned_out", "kept, regretted or changed, as last noted"},
			{"turned_out_because", "why"},
			{"turned_out_from", "the note that says so"},
		},
		rows: decisionRows,
	}
}

// A place is a part of a record's page.
type place struct {
	record journal.ID
	anchor string
}

// decisionRows lists the decisions by the ID of their record, and there as written,
// front matter before text. Private remarks are the maker's own and left out.
func decisionRows(j *journal.Journal, _ edtf.Day) [][]Cell {
	outcomes := outcomesOf(j)
	var rows [][]Cell
	for _, r := range j.Records() {
		page := r.Head()
		var on Cell
		var build *journal.Build
		var decided []journal.Decision
		switch r := r.(type) {
		case *journal.Note:
			on, build, decided = day(r.Date), r.Of, r.Decided
		case *journal.Build:
			build = r
		case *journal.Occasion:
			on = day(r.Date)
		}
		add := func(anchor string, d journal.Decision) {
			var rests []string
			for _, ref := range d.RestsOn {
				rests = append(rests, to(j, ref))
			}
			row := []Cell{
				on, Text(idOf(build)), Text(page.ID), Text(anchor),
				Text(d.Question), Text(d.Chose), List(d.InsteadOf), Text(d.Because), List(rests),
			}
			how := outcomes[place{page.ID, anchor}]
			rows = append(rows, append(row, how[:]...))
		}
		for _, d := range decided {
			add(d.Anchor, d)
		}
		for _, remark := range page.Text.Remarks {
			if remark.Kind == prose.Decided && !remark.Private {
				add(remark.Anchor, journal.Decision{Chose: j.Titled(remark.Text)})
			}
		}
	}
	return rows
}

// outcomesOf returns what the newest note says of each decision: how it turned out,
// why, and the note.
func outcomesOf(j *journal.Journal) map[place][3]Cell {
	outcomes := make(map[place][3]Cell)
	for _, n := range j.Notes() {
		for _, o := range n.TurnedOut {
			r, ok := j.Find(o.Decision.To)
			if !ok {
				continue
			}
			anchor, _ := journal.Anchor(r, o.Decision.Anchor)
			outcomes[place{r.Head().ID, anchor}] = [3]Cell{Text(o.How), Text(o.Because), Text(n.ID)}
		}
	}
	return outcomes
}
