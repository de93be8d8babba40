package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"time"

	"github.com/spf13/cobra"

	"hussif/build/keep"
	"hussif/build/output"
	"hussif/build/photo"
	"hussif/build/preview"
	"hussif/build/site"
	"hussif/content/edtf"
	"hussif/content/journal"
)

// flagged returns the day that was asked for, or today, whichever day that is.
func (f *dayFlag) flagged(c *cobra.Command) func() edtf.Day {
	if c.Flags().Changed("on") {
		return func() edtf.Day { return f.day }
	}
	return today
}

// watchSite makes a site and keeps it up to date until ctx is done.
func watchSite(ctx context.Context, say *voice, dir, out string, day func() edtf.Day) error {
	if err := output.Separate(out, dir); err != nil {
		return err
	}
	store, err := openStore(say)
	if err != nil {
		return err
	}
	absolute, err := filepath.Abs(dir)
	if err != nil {
		return err
	}
	workshop, err := site.NewWorkshop()
	if err != nil {
		return err
	}
	w := &siteWatch{say: say, dir: dir, out: out, day: day, store: store, name: pagesOf(absolute, ""), upkeep: &site.Upkeep{
		Files: os.DirFS(absolute), Out: out, Today: day, Workshop: workshop,
		Photos: &photo.Darkroom{Store: store, Journal: absolute},
	}}
	batches := make(chan preview.Batch)
	watcher := preview.Watcher{Dir: absolute, Warn: func(text string) { say.asidef("hussif: %s", text) }}
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	var working sync.WaitGroup
	working.Go(func() { watcher.Run(ctx, batches) })
	working.Go(func() { eachDay(ctx, batches) })
	err = w.follow(ctx, batches)
	stop()
	working.Wait()
	return errors.Join(err, w.end(context.WithoutCancel(ctx)))
}

// A siteWatch keeps a site up to date.
type siteWatch struct {
	say      *voice
	dir, out string
	day      func() edtf.Day
	store    *keep.Store
	name     keep.Recipe // of the pages' ledger
	upkeep   *site.Upkeep
	begun    bool
	last     site.Outcome // that was sound
	told     string       // of what was found, the last time
}

// follow brings the site up to date with each batch. The first must not fail.
func (w *siteWatch) follow(ctx context.Context, batches <-chan preview.Batch) error {
	for {
		select {
		case <-ctx.Done():
			return nil
		case b := <-batches:
			start := time.Now()
			made, err := w.upkeep.Bring(ctx, b.Folders, b.All)
			switch {
			case ctx.Err() != nil:
				return nil
			case err != nil && !w.begun:
				return noJournal(w.dir, err)
			case err != nil:
				w.say.fault(noJournal(w.dir, err))
				continue
			}
			if err := w.tell(made, time.Since(start)); err != nil {
				return err
			}
			w.begun = true
		}
	}
}

// tell says what came of a batch.
func (w *siteWatch) tell(made site.Outcome, took time.Duration) error {
	found := fmt.Sprint(made.Sound, advice(made.Findings))
	if !made.Sound {
		if found != w.told {
			if err := w.say.findings(made.Findings); err != nil {
				return err
			}
			w.say.sayf("%s: %s", tally(made.Findings), asItWas(w.out))
		}
		w.told = found
		return nil
	}
	w.last = made
	switch {
	case !w.begun:
		w.say.sayf("%s: %s and %s; %s", w.out, number(made.Pages, "page"), number(made.Photos, "photo"), advice(made.Findings))
		w.say.sayf("It is kept up to date until you press Ctrl-C")
	case made.Written+made.Removed > 0 || found != w.told:
		w.say.sayf("%s %d written, %d removed, %d ms; %s", time.Now().Format(time.TimeOnly), made.Written, made.Removed, took.Milliseconds(), advice(made.Findings))
	}
	w.told = found
	return nil
}

// end notes what the next run can go on from.
func (w *siteWatch) end(ctx context.Context) error {
	folder := w.upkeep.Folder()
	if folder == nil {
		return nil
	}
	recipe := siteRecipe(folder, w.day())
	report, err := json.Marshal(reportOf(w.out, w.last.Made, w.last.Findings))
	if err != nil {
		return err
	}
	ledger := w.upkeep.Workshop.Save(pagesGiven(folder, w.day()))
	return errors.Join(w.upkeep.Close(ctx, recipe), w.store.PutLast(w.name, ledger), w.store.Put(recipe, report))
}

// pagesOf names the ledger of the pages of a journal's site for somebody.
func pagesOf(absolute string, who journal.Audience) keep.Recipe {
	if who != "" {
		return keep.NewRecipe("pages of a site for others", 1, absolute, string(who))
	}
	return keep.NewRecipe("pages of a site", 1, absolute)
}
