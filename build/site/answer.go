package site

import (
	"maps"
	"slices"
	"strconv"

	"hussif/content/journal"
	"hussif/content/source"
)

// answer returns what stands for the answer to a question as the book has it: the
// same sum as long as a page that asked would be told the same. It is zero where nobody
// knows what the question is about.
func (b *book) answer(q journal.Question) source.Sum {
	if sum, ok := b.Journal.Answer(q); ok {
		return sum
	}
	f, id := b.facts, journal.ID(q.Of)
	h := hasher{new(source.Hash), b.Journal}
	switch q.About {
	case askLessons:
		for _, l := range f.lessons.From(id) {
			h.add(l)
		}
		for _, l := range f.lessons.For(id) {
			h.add(l)
		}
	case askCount:
		h.Number(uint64(f.lessons.CountOpen(id)))
	case askOpen:
		if build := b.Journal.Build(journal.Ref{To: q.Of}); build != nil {
			open, all := f.lessons.OpenFor(build, mostOpen)
			h.add(open)
			h.Number(uint64(all))
		}
	case askDecisions:
		h.add(f.settled.For(id))
	case askClaims:
		if build := b.Journal.Build(journal.Ref{To: q.Of}); build != nil {
			h.add(f.evidence.Claims(build))
		}
	case askFeature:
		if feature, ok := f.evidence.For(q.Of); ok {
			h.add(feature)
		}
	case askAttested:
		if _, ok := f.evidence.For(q.Of); ok {
			h.Text("attested")
		}
	case askLinksTo:
		for _, tie := range b.linksTo(id) {
			page := tie.From.Head()
			h.Text(string(page.ID))
			h.Text(page.Title)
			h.Text(tie.Field)
			if n, ok := tie.From.(*journal.Note); ok {
				h.Number(uint64(n.Date))
			}
		}
	case askYear:
		for _, n := range f.byYear[q.Of] {
			h.Text(string(n.ID))
		}
	case askYears:
		for _, year := range slices.Sorted(maps.Keys(f.byYear)) {
			h.Text(year)
			h.Number(uint64(len(f.byYear[year])))
		}
	case askTagged:
		for _, r := range f.tagged {
			page := r.Head()
			h.Text(string(page.ID))
			h.Text(page.Title)
			h.Text(string(page.Kind))
			h.add(page.Tags)
		}
	case askParts:
		h.Number(uint64(len(f.shelved)))
	case askPart:
		if n, _ := strconv.Atoi(q.Of); n < len(f.shelved) {
			for _, r := range f.shelved[n] {
				h.Text(string(r.Head().ID))
			}
		}
	case askListed:
		for _, r := range b.listed() {
			page := r.Head()
			h.Text(string(page.ID))
			h.Text(page.Title)
			h.Text(string(page.Kind))
			switch r := r.(type) {
			case *journal.Build:
				h.Text(r.Garment)
			case *journal.Note:
				h.Number(uint64(r.Date))
				if r.Of != nil {
					h.Text(r.Of.Title)
				}
			}
		}
	case askNames:
		features, tags := b.names()
		h.add(features)
		h.add(tags)
	case askBorrow:
		if b.borrows() {
			h.Text("borrow")
		}
	case askFile:
		if r, ok := b.recordIn(&source.File{Name: q.Of}); ok {
			h.Text(string(r.Head().ID))
		}
	case askStock:
		sheet, _ := f.stash.Of(id)
		h.add(sheet)
	case askWork:
		h.add(f.work.Of(id))
	case askDressed:
		if p := b.Journal.Person(journal.Ref{To: q.Of}); p != nil && b.dressed(p) {
			h.Text("dressed")
		}
	case askPicture:
		for _, p := range b.Pictures[q.Of] {
			h.Text(p.Name)
			h.Number(uint64(p.Width))
			h.Number(uint64(p.Height))
		}
	case askTold:
		h.add(b.Fits[id])
	case askCard:
		return b.cardSum(id)
	case askRates:
		h.add(b.rates())
	case askFound:
		for _, f := range b.all() {
			h.Text(f.Span.String())
			h.Text(f.Span.Line())
			h.Number(uint64(f.Level))
			h.Text(f.Text)
			h.Text(f.Rule)
			h.Text(f.Advice())
		}
	case askTasks:
		h.add(f.agenda.Tasks)
	case askAllLessons:
		h.add(f.lessons.All)
	case askAllDecisions:
		h.add(f.settled.All)
	case askAllEvidence:
		h.add(f.evidence.Features)
	case askAllStock:
		h.add(f.stash.All())
	default:
		return source.Sum{}
	}
	return h.Done()
}
