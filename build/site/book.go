package site

import (
	"slices"
	"sync"

	"hussif/build/address"
	"hussif/build/agenda"
	"hussif/build/audience"
	"hussif/build/decision"
	"hussif/build/effort"
	"hussif/build/evidence"
	"hussif/build/lesson"
	"hussif/build/photo"
	"hussif/build/stock"
	"hussif/content/journal"
	"hussif/content/source"
)

// A book is a journal with what follows from it, as one page reads it. All that the
// page reads is written down in its trace: the journal does so itself, the facts in
// the methods of the book, which are the only way to them.
type book struct {
	Input
	facts *facts
	trace *journal.Trace // or nil
}

// facts are what follows from a journal, shared by all pages.
type facts struct {
	paths    map[journal.ID]string // of records, those of earlier journals included
	lessons  lesson.List
	settled  decision.List
	evidence *evidence.Book
	stash    stock.Stash
	work     effort.Book
	agenda   agenda.Agenda
	byYear   map[string][]*journal.Note // as notesByYear has them
	tagged   []journal.Record           // that have tags
	shelved  [][]journal.Record         // by the part of the index of words that they are in
	inFile   func() map[string]journal.Record
	kept     *kept
}

// newBook works out what follows from a journal. What the book before it kept is used
// where it still holds; there may be none.
func newBook(in Input, before *facts) *book {
	j := in.Journal
	f := &facts{paths: make(map[journal.ID]string), kept: new(kept)}
	if before != nil {
		f.paths, f.kept = before.paths, before.kept
	}
	var group sync.WaitGroup
	group.Go(func() { f.lessons = lesson.Gather(j) })
	group.Go(func() { f.settled = decision.Gather(j) })
	group.Go(func() {
		f.evidence, f.stash, f.work = evidence.Gather(j), stock.Gather(j), effort.Gather(j, in.Today)
		f.agenda = agenda.Of(j, f.stash, f.work)
	})
	group.Go(func() { f.shelved = inParts(j.Records()) })
	group.Go(func() {
		f.byYear = notesByYear(j)
		for _, r := range j.Records() {
			if id := r.Head().ID; f.paths[id] == "" {
				f.paths[id] = address.Of(id)
			}
			if len(r.Head().Tags) > 0 {
				f.tagged = append(f.tagged, r)
			}
		}
	})
	f.inFile = sync.OnceValue(func() map[string]journal.Record {
		records := make(map[string]journal.Record, len(j.Records()))
		for _, r := range j.Records() {
			records[r.Head().File.Name] = r
		}
		return records
	})
	group.Wait()
	return &book{Input: in, facts: f}
}

// traced returns the book as a page reads it whose reading is written down in t.
func (b *book) traced(t *journal.Trace) *book {
	out := *b
	out.Journal, out.trace = b.Journal.Traced(t), t
	return &out
}

// The aspects of what follows from a journal.
const (
	askLessons   journal.Aspect = "lessons"   // of one record, with what became of them
	askCount     journal.Aspect = "count"     // of those that are open for a record
	askOpen      journal.Aspect = "open"      // lessons for one build
	askDecisions journal.Aspect = "decisions" // of one record
	askClaims    journal.Aspect = "claims"    // of one build
	askFeature   journal.Aspect = "feature"   // by name
	askStock     journal.Aspect = "stock"     // of one material
	askWork      journal.Aspect = "work"      // on one build
	askDressed   journal.Aspect = "dressed"   // whether anything is made for a person
	askPicture   journal.Aspect = "picture"   // its scaled copies
	askRates     journal.Aspect = "rates"     // of opening and sewing
	askFound     journal.Aspect = "found"     // what check found
	askCard      journal.Aspect = "card"      // of a record, in lists
	askTasks     journal.Aspect = "tasks"     // all that is to do
	askLinksTo   journal.Aspect = "links to"  // a record, with the names and days of those that link
	askAttested  journal.Aspect = "attested"  // whether a feature has a page, by its name
	askYear      journal.Aspect = "year"      // its notes
	askYears     journal.Aspect = "years"     // that have a page of their own
	askTagged    journal.Aspect = "tagged"    // records, with their tags
	askBorrow    journal.Aspect = "borrow"    // whether all garments are tried on all bodies
	askFile      journal.Aspect = "file"      // which record it holds
	askParts     journal.Aspect = "parts"     // how many the index of words has
	askPart      journal.Aspect = "part"      // which records it has, by its number
	askListed    journal.Aspect = "listed"    // what the index from A to Z has of all records
	askNames     journal.Aspect = "names"     // of features and tags
	askTold      journal.Aspect = "told"      // how one build fits, where others do not see its measures

	// Of all records together.
	askAllLessons   journal.Aspect = "all lessons"
	askAllDecisions journal.Aspect = "all decisions"
	askAllEvidence  journal.Aspect = "all evidence"
	askAllStock     journal.Aspect = "all stock"
)

func (b *book) lessonsFrom(id journal.ID) []lesson.Lesson {
	b.trace.Ask(askLessons, string(id))
	return b.facts.lessons.From(id)
}

func (b *book) lessonsFor(id journal.ID) []lesson.Lesson {
	b.trace.Ask(askLessons, string(id))
	return b.facts.lessons.For(id)
}

// open counts the next-time notes about a record that are not answered for it.
func (b *book) open(id journal.ID) int {
	b.trace.Ask(askCount, string(id))
	return b.facts.lessons.CountOpen(id)
}

// openFor returns the first of the lessons that a build has still to answer, and how
// many there are.
func (b *book) openFor(build *journal.Build) ([]lesson.Lesson, int) {
	b.trace.Ask(askOpen, string(build.ID))
	return b.facts.lessons.OpenFor(build, mostOpen)
}

func (b *book) allLessons() lesson.List {
	b.trace.Ask(askAllLessons, "")
	return b.facts.lessons
}

func (b *book) decisionsFor(id journal.ID) []decision.Decision {
	b.trace.Ask(askDecisions, string(id))
	return b.facts.settled.For(id)
}

func (b *book) allDecisions() decision.List {
	b.trace.Ask(askAllDecisions, "")
	return b.facts.settled
}

func (b *book) claims(build *journal.Build) []evidence.Claim {
	b.trace.Ask(askClaims, string(build.ID))
	return b.facts.evidence.Claims(build)
}

func (b *book) featureNamed(name string) (evidence.Feature, bool) {
	b.trace.Ask(askFeature, name)
	return b.facts.evidence.For(name)
}

func (b *book) allEvidence() *evidence.Book {
	b.trace.Ask(askAllEvidence, "")
	return b.facts.evidence
}

func (b *book) stockOf(m journal.ID) stock.Sheet {
	b.trace.Ask(askStock, string(m))
	sheet, _ := b.facts.stash.Of(m)
	return sheet
}

func (b *book) allStock() []stock.Sheet {
	b.trace.Ask(askAllStock, "")
	return b.facts.stash.All()
}

func (b *book) workOn(build journal.ID) effort.Work {
	b.trace.Ask(askWork, string(build))
	return b.facts.work.Of(build)
}

// outing returns who wears what at an occasion.
func (b *book) outing(o *journal.Occasion) agenda.Outing {
	out := agenda.For(b.Journal, o, b.facts.work)
	for _, w := range out.Wearers {
		for _, g := range w.Garments {
			b.trace.Ask(askWork, string(g.Build))
		}
	}
	return out
}

func (b *book) tasks() []agenda.Task {
	b.trace.Ask(askTasks, "")
	return b.facts.agenda.Tasks
}

// dressed reports whether anything is made for a person.
func (b *book) dressed(p *journal.Person) bool {
	b.trace.Ask(askDressed, string(p.ID))
	return len(b.Input.Journal.Traced(nil).BuildsFor(p)) > 0
}

// linksTo returns the links to a record, for who looks at no more of the others than
// what they are called and the day of a note.
func (b *book) linksTo(id journal.ID) []journal.Tie {
	b.trace.Ask(askLinksTo, string(id))
	return b.Journal.Traced(nil).LinkedFrom(id)
}

// attested reports whether a feature has a page.
func (b *book) attested(name string) bool {
	b.trace.Ask(askAttested, name)
	_, ok := b.facts.evidence.For(name)
	return ok
}

// notesIn returns the notes of a year that has a page of its own, oldest first.
func (b *book) notesIn(year string) []*journal.Note {
	b.trace.Ask(askYear, year)
	for _, n := range b.facts.byYear[year] {
		b.trace.Record(n)
	}
	return b.facts.byYear[year]
}

// allYears returns the years that have a page of their own, for who only counts their
// notes; nil where none has.
func (b *book) allYears() map[string][]*journal.Note {
	b.trace.Ask(askYears, "")
	return b.facts.byYear
}

// tagged returns the records that have tags, for who looks no further than these and
// what they are called.
func (b *book) tagged() []journal.Record {
	b.trace.Ask(askTagged, "")
	return b.facts.tagged
}

// all returns the findings of check.
func (in Input) all() []source.Finding {
	if in.Await != nil {
		return in.Await()
	}
	return in.Findings
}

// writtenIn returns the next-time notes and decisions that are written in a record, for
// who looks no further than at their words, which are its facts.
func (b *book) writtenIn(r journal.Record) ([]lesson.Lesson, []decision.Decision) {
	b.trace.Record(r)
	id := r.Head().ID
	elsewhere := func(d decision.Decision) bool { return d.From != id }
	return b.facts.lessons.From(id), slices.DeleteFunc(b.facts.settled.For(id), elsewhere)
}

func (b *book) findings() []source.Finding {
	b.trace.Ask(askFound, "")
	return b.all()
}

// recordIn returns the record that a file holds.
func (b *book) recordIn(f *source.File) (journal.Record, bool) {
	if f == nil {
		return nil, false
	}
	b.trace.Ask(askFile, f.Name)
	r, ok := b.facts.inFile()[f.Name]
	if ok {
		b.trace.Ask(journal.Named, string(r.Head().ID))
	}
	return r, ok
}

// borrows reports whether there are few enough garments and people for all wardrobes
// to tell what could be borrowed.
func (b *book) borrows() bool {
	b.trace.Ask(askBorrow, "")
	j := b.Journal.Traced(nil)
	return len(j.Builds())*len(j.People()) <= mostPairs
}

// told returns how a build fits, as its wearer lets others know who do not see its
// measures.
func (b *book) told(build journal.ID) audience.Fit {
	b.trace.Ask(askTold, string(build))
	return b.Fits[build]
}

// picturesOf returns the scaled copies of a picture.
func (b *book) picturesOf(path string) []photo.Picture {
	b.trace.Ask(askPicture, path)
	return b.Pictures[path]
}

func (b *book) madeFor(p *journal.Person) []*journal.Build {
	return newestFirst(b.Journal.BuildsFor(p))
}
