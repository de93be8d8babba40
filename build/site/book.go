package site

import (
	"runtime"
	"sync"
	"sync/atomic"

	"hussif/build/across"
	"hussif/build/address"
	"hussif/build/agenda"
	"hussif/build/decision"
	"hussif/build/effort"
	"hussif/build/evidence"
	"hussif/build/fit"
	"hussif/build/lesson"
	"hussif/build/room"
	"hussif/build/stock"
	"hussif/build/wayin"
	"hussif/content/journal"
)

// A book is a site in the making. It is filled by newBook and read by workers.
type book struct {
	Input
	paths   map[journal.ID]string // of records
	lessons lesson.List
	moved   map[*journal.Material][]movement // oldest first
	madeFor map[*journal.Person][]*journal.Build
	taught  map[cutFor]func() across.Sheet
	fits    map[*journal.Build]buildFit
	panels  map[*journal.Build][]cutPanel // of the best plan for what is short

	settled  decision.List
	evidence *evidence.Book
	stash    stock.Stash
	work     effort.Book
	agenda   agenda.Agenda
}

// buildFit is how a build fits its wearer on the days that matter.
type buildFit struct {
	now    fit.Table
	plan   *room.Plan // what can be done about what is short now; nil where nothing is
	then   *fit.Table // when it was first finished, where that is known
	ledger fit.Book
}

func newBook(in Input) *book {
	fits := fitAll(in)
	b := &book{
		Input: in, paths: make(map[journal.ID]string, len(in.Journal.Records())), lessons: lesson.Gather(in.Journal),
		moved: movedBy(in.Journal), madeFor: madeForAll(in.Journal), taught: lessonsOfPatterns(in),
	}
	for _, r := range in.Journal.Records() {
		b.paths[r.Head().ID] = address.Of(r.Head().ID)
	}
	b.settled, b.evidence = decision.Gather(in.Journal), evidence.Gather(in.Journal)
	b.stash, b.work = stock.Gather(in.Journal), effort.Gather(in.Journal, in.Today)
	b.agenda = agenda.Of(in.Journal, b.stash, b.work)
	b.fits = fits()
	b.panels = make(map[*journal.Build][]cutPanel)
	for build, f := range b.fits {
		if f.plan != nil && len(f.plan.Options) > 0 {
			b.panels[build] = b.cutPanels(build, f.plan.Options[0])
		}
	}
	return b
}

// fitAll begins to work out how all builds fit, on as many workers as there are
// processors. The function it returns waits for them.
func fitAll(in Input) func() map[*journal.Build]buildFit {
	builds := in.Journal.Builds()
	list := make([]buildFit, len(builds))
	rates := wayin.RatesOf(in.Journal)
	var group sync.WaitGroup
	var next atomic.Int64
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for i := next.Add(1) - 1; i < int64(len(builds)); i = next.Add(1) - 1 {
				list[i] = fitOf(in, builds[i], rates)
			}
		})
	}
	return func() map[*journal.Build]buildFit {
		group.Wait()
		fits := make(map[*journal.Build]buildFit, len(builds))
		for i, build := range builds {
			fits[build] = list[i]
		}
		return fits
	}
}

func fitOf(in Input, build *journal.Build, rates wayin.Rates) buildFit {
	f := buildFit{now: fit.Of(in.Journal, build, in.Today), ledger: fit.Ledger(in.Journal, build)}
	if plan := room.For(in.Journal, build, f.now, rates); len(plan.Needs) > 0 {
		f.plan = &plan
	}
	if day, ok := fit.FirstFinish(build); ok {
		then := fit.Of(in.Journal, build, day)
		f.then = &then
	}
	return f
}
