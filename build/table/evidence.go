package table

import (
	"hussif/build/evidence"
	"hussif/content/edtf"
	"hussif/content/journal"
)

func features() Subject {
	return Subject{
		Name: "evidence",
		Doc:  "which reference shows or lacks which feature, and what garments claim",
		Columns: []Column{
			{"feature", "the detail"},
			{"says", "shows or lacks, of a reference; claims, of a garment"},
			{"from", "the page of the reference or the garment"},
			{"title", "what that is called"},
			{"type", "what a reference is"},
			{"date", "the date of the reference, or the one that the garment portrays, as written"},
			{"earliest", "the first day of that date, before \"ca.\" is widened; empty where open or not written"},
			{"latest", "the last day of that date, likewise"},
			{"holder", "who has the reference"},
			{"accession_number", "under which number"},
			{"verdict", "what becomes of a garment's claim"},
			{"reason", "what the verdict rests on"},
			{"departs", "why the garment knowingly differs"},
			{"rests_on", "the pages that the claim names"},
		},
		rows: featureRows,
	}
}

// featureRows lists the features of each reference, those it shows first, and then
// the claims of each build.
func featureRows(j *journal.Journal, _ edtf.Day) [][]Cell {
	var rows [][]Cell
	for _, r := range j.References() {
		earliest, latest := ends(r.Date)
		for _, group := range []struct {
			says     string
			features []journal.Word
		}{{"shows", r.Shows}, {"lacks", r.Lacks}} {
			for _, feature := range group.features {
				rows = append(rows, []Cell{
					Text(feature.Text), Text(group.says), Text(r.ID), Text(r.Title), Text(r.Type),
					Text(r.Date.Text), earliest, latest, Text(r.Holder), Text(r.Accession), {}, {}, {}, {},
				})
			}
		}
	}
	book := evidence.Gather(j)
	for _, b := range j.Builds() {
		earliest, latest := ends(b.Era)
		for _, c := range book.Claims(b) {
			var rests []string
			for _, rest := range c.RestsOn {
				rests = append(rests, to(j, rest.Ref))
			}
			rows = append(rows, []Cell{
				Text(c.What.Text), Text("claims"), Text(b.ID), Text(b.Title), {},
				Text(b.Era.Text), earliest, latest, {}, {},
				Text(c.Verdict), Text(c.Evidence.Reason()), Text(c.Departs), List(rests),
			})
		}
	}
	return rows
}

// ends returns the first and the last day of a date. Unlike days of the work they
// may be 1970-01-01, the zero Day.
func ends(d edtf.Date) (earliest, latest Cell) {
	if d.IsZero() {
		return Cell{}, Cell{}
	}
	if !d.OpenStart {
		earliest = Text(d.Earliest.String())
	}
	if !d.OpenEnd {
		latest = Text(d.Latest.String())
	}
	return earliest, latest
}
