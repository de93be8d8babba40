package site

import (
	"hussif/content/journal"
	"hussif/content/source"
)

// answer returns what stands for the answer to a question as the book has it: the
// same sum as long as a page that asked would be told the same.
func (b *book) answer(q journal.Question) source.Sum {
	if sum, ok := b.Journal.Answer(q); ok {
		return sum
	}
	f, id := b.facts, journal.ID(q.Of)
	h := hasher{source.NewHash(), b.Journal}
	switch q.About {
	case askLessons:
		for _, l := range f.lessons.From(id) {
			h.add(l)
		}
		for _, l := range f.lessons.For(id) {
			h.add(l)
			h.Text(string(f.lessons.StateFor(l, id)))
		}
	case askOpen:
		if build := b.Journal.Build(journal.Ref{To: q.Of}); build != nil {
			h.add(f.lessons.OpenFor(build))
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
	case askRates:
		h.add(b.rates())
	case askFound:
		for _, f := range b.Findings {
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
		panic("site: nobody knows the answer about " + string(q.About))
	}
	return h.Done()
}
