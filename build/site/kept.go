package site

import (
	"reflect"
	"sync"

	"hussif/build/across"
	"hussif/build/address"
	"hussif/build/fit"
	"hussif/build/lesson"
	"hussif/build/room"
	"hussif/build/wayin"
	"hussif/content/journal"
	"hussif/content/source"
)

// kept holds what was asked, and what several pages ask of one build or pattern. That
// is worked out when the first asks, and kept until something that it was worked out
// from changes.
type kept struct {
	known   answers
	fits    drawer[*journal.Build, buildFit]
	ledgers drawer[*journal.Build, fit.Book]
	panels  drawer[*journal.Build, []cutPanel]
	taught  drawer[cutFor, across.Sheet]
	rates   drawer[struct{}, wayin.Rates]
	cards   drawer[journal.ID, source.Sum]
}

// renew asks all questions again, of another state of the journal, drops what rests
// on an answer that has changed, and returns which have. What opening and sewing
// takes by all notes, and the cards of records, are themselves both kept and asked for.
func (k *kept) renew(b *book, before *facts) changes {
	may := b.since(before)
	changed := k.known.renew(b, func(q journal.Question) bool { return q.About != askRates && q.About != askCard && may(q) })
	k.rates.forget(changed)
	if n, ok := k.known.numbers[journal.Question{About: askRates}]; ok {
		changed[n] = k.known.again(b, n)
	}
	k.forget(changed)
	cards := k.known.renew(b, func(q journal.Question) bool { return q.About == askCard && !k.cards.has(journal.ID(q.Of)) })
	for n := range changed {
		changed[n] = changed[n] || cards[n]
	}
	return changed
}

// since returns a function that tells whether a question may have another answer
// than before. It is quick to say no where many records are asked about one thing.
func (b *book) since(before *facts) func(journal.Question) bool {
	if before == nil {
		return func(journal.Question) bool { return true }
	}
	f := b.facts
	var lessons lesson.Change
	var settled, stash bool
	var group sync.WaitGroup
	group.Go(func() { lessons = f.lessons.Since(before.lessons) })
	group.Go(func() {
		settled = reflect.DeepEqual(f.settled, before.settled)
		stash = reflect.DeepEqual(f.stash, before.stash)
	})
	group.Wait()
	return func(q journal.Question) bool {
		switch q.About {
		case askLessons, askCount:
			return lessons.Bears(journal.ID(q.Of))
		case askOpen:
			return lessons.Opens(journal.ID(q.Of))
		case askAllLessons:
			return !lessons.None()
		case askDecisions, askAllDecisions:
			return !settled
		case askStock, askAllStock:
			return !stash
		case askLinksTo, askDressed:
			return b.may(journal.Question{About: journal.Linking, Of: q.Of})
		case askFile, askBorrow:
			return b.may(journal.Question{About: journal.Called}) // which records there are
		}
		return b.may(q)
	}
}

// forget drops what rests on an answer that has changed.
func (k *kept) forget(changed changes) {
	k.fits.forget(changed)
	k.ledgers.forget(changed)
	k.panels.forget(changed)
	k.taught.forget(changed)
	k.cards.forget(changed)
	k.rates.forget(changed)
}

// A drawer keeps values with the questions that they are the answer to.
type drawer[K comparable, V any] struct {
	mu    sync.Mutex
	items map[K]*item[V]
}

type item[V any] struct {
	once  sync.Once
	value V
	asked []journal.Question
	known []uint32 // their numbers
}

// get returns the value of a key, made now if there is none, and has the page that
// reads it ask all that it was made from.
func (s *drawer[K, V]) get(b *book, key K, make func(*book) V) V {
	it := s.item(key)
	it.once.Do(func() {
		t := journal.NewTrace()
		it.value = make(b.traced(t))
		it.asked = t.Questions()
		it.known = b.facts.kept.known.number(b, it.asked)
	})
	b.trace.Add(it.asked)
	return it.value
}

func (s *drawer[K, V]) item(key K) *item[V] {
	s.mu.Lock()
	defer s.mu.Unlock()
	it := s.items[key]
	if it == nil {
		if s.items == nil {
			s.items = make(map[K]*item[V])
		}
		it = new(item[V])
		s.items[key] = it
	}
	return it
}

func (s *drawer[K, V]) forget(changed changes) {
	for key, it := range s.items {
		if changed.any(it.known) {
			delete(s.items, key)
		}
	}
}

// has reports whether there is a value of a key.
func (s *drawer[K, V]) has(key K) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	_, ok := s.items[key]
	return ok
}

// cardSum stands for the card of a record.
func (b *book) cardSum(id journal.ID) source.Sum {
	return b.facts.kept.cards.get(b.traced(nil), id, func(b *book) source.Sum {
		h := hasher{new(source.Hash), b.Journal.Traced(nil)}
		if r, ok := b.Journal.Find(string(id)); ok {
			h.add(b.at(address.Start).drawCard(r))
		}
		return h.Done()
	})
}

// buildFit is how a build fits its wearer on the days that matter.
type buildFit struct {
	now  fit.Table
	plan *room.Plan // what can be done about what is short now; nil where nothing is
	then *fit.Table // when it was first finished, where that is known
}

func (b *book) fit(build *journal.Build) buildFit {
	return b.facts.kept.fits.get(b, build, func(b *book) buildFit {
		b.trace.Record(build)
		f := buildFit{now: fit.Of(b.Journal, build, b.Today)}
		if plan := room.For(b.Journal, build, f.now, b.rates()); len(plan.Needs) > 0 {
			f.plan = &plan
		}
		if day, ok := fit.FirstFinish(build); ok {
			then := fit.Of(b.Journal, build, day)
			f.then = &then
		}
		return f
	})
}

// ledgerOf returns what was altered on a build.
func (b *book) ledgerOf(build *journal.Build) fit.Book {
	return b.facts.kept.ledgers.get(b, build, func(b *book) fit.Book {
		b.trace.Record(build)
		return fit.Ledger(b.Journal, build)
	})
}

// rates returns how long opening and sewing takes by all notes.
func (b *book) rates() wayin.Rates {
	b.trace.Ask(askRates, "")
	untraced := b.traced(nil)
	return b.facts.kept.rates.get(untraced, struct{}{}, func(b *book) wayin.Rates { return wayin.RatesOf(b.Journal) })
}

// panelsOf returns the panels of a build's best plan.
func (b *book) panelsOf(build *journal.Build) []cutPanel {
	return b.facts.kept.panels.get(b, build, func(b *book) []cutPanel {
		plan := b.fit(build).plan
		if plan == nil || len(plan.Options) == 0 {
			return nil
		}
		return b.cutPanels(build, plan.Options[0])
	})
}

// A cutFor is a pattern and a wearer it was cut for.
type cutFor struct {
	pattern *journal.Pattern
	wearer  *journal.Person // nil where nobody is named
}

// taughtBy returns what the builds of a pattern teach about the next one.
func (b *book) taughtBy(p *journal.Pattern, wearer *journal.Person) across.Sheet {
	return b.facts.kept.taught.get(b, cutFor{p, wearer}, func(b *book) across.Sheet {
		b.trace.Record(p)
		if wearer != nil {
			b.trace.Record(wearer)
		}
		return across.Pattern(b.Journal, p, wearer, b.Today)
	})
}
