package site

import (
	"hussif/build/address"
	"hussif/build/stock"
	"hussif/content/journal"
	"hussif/content/quantity"
	"hussif/theme"
)

// stashPage is all materials with what is on hand of each.
func (b *book) stashPage() any {
	d := b.at(address.Stash)
	view := theme.Stash{
		Frame: b.frame(d.path, "Stash", "Materials on hand", "materials", d.shelfLink(journal.KindMaterial)),
		Rests: []string{"On hand is what was bought less what was used, by the notes; a left-over piece is part of that"},
	}
	if len(b.allStock()) == 0 {
		view.Empty = b.empty("Nothing yet. Write `bought: [...]` in a note, with a material and an amount.")
	}
	for _, s := range b.allStock() {
		view.Rows = append(view.Rows, d.stashRow(s))
	}
	for _, task := range b.tasks() {
		var words []string
		for _, h := range task.Holds {
			if h.Lack.Material != "" {
				words = append(words, d.hold(h))
			}
		}
		if r, ok := b.Journal.Named(string(task.Build)); ok && len(words) > 0 {
			view.Lacks = append(view.Lacks, theme.StashLack{Build: d.to(r), Words: words})
		}
	}
	return view
}

func (d desk) stashRow(s stock.Sheet) theme.StashRow {
	f := d.Journal.Settings.Format
	row := theme.StashRow{}
	if r, ok := d.Journal.Named(string(s.Material)); ok {
		row.Material = d.to(r)
	}
	join := func(to *string, words string) {
		if *to != "" && words != "" {
			*to += "; "
		}
		*to += words
	}
	for _, h := range s.OnHand {
		if h.Bought.Kind != quantity.Nothing {
			join(&row.Bought, f.Amount(h.Bought))
		}
		if h.Used.Kind != quantity.Nothing {
			join(&row.Used, f.Amount(h.Used))
		}
		join(&row.OnHand, h.Words(f))
	}
	for _, l := range s.Lots {
		join(&row.Lot, l.Name)
	}
	for _, p := range s.Left() {
		row.Pieces = append(row.Pieces, p.Words(f))
	}
	seen := make(map[journal.ID]bool)
	for _, u := range s.Builds {
		if r, ok := d.Journal.Named(string(u.Build)); ok && !seen[u.Build] {
			seen[u.Build] = true
			row.Builds = append(row.Builds, d.to(r))
		}
	}
	for _, fault := range s.Faults {
		row.Notes = append(row.Notes, fault.Words(f))
	}
	return row
}
