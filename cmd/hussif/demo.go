package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path/filepath"
	"slices"

	"github.com/spf13/cobra"

	"hussif/build/fit"
	"hussif/build/lesson"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
	"hussif/testdata/demo"
)

func demoCommand(say *voice) *cobra.Command {
	c := &cobra.Command{
		Use:   "demo [folder]",
		Short: "Write a finished journal and its site to look at",
		Long: `demo writes the journal of a made-up sewing circle and its site into a folder,
./hussif-demo where none is named, with the small journals of two neighbours and
one site of what all three share. Files of an earlier demo that you have changed
are left as they are, and the sites are made from them.`,
		Example: `  hussif demo
  hussif demo ~/look-at-this
  hussif demo --on 2026-03-01`,
		Args:              atMostOne("folder"),
		ValidArgsFunction: completeFolder,
	}
	on := onFlag(c, today())
	c.RunE = func(c *cobra.Command, args []string) error {
		dir := firstArg(args)
		if dir == "" {
			dir = "hussif-demo"
		}
		return demonstrate(c.Context(), say, dir, on.day)
	}
	return c
}

func demonstrate(ctx context.Context, say *voice, dir string, day edtf.Day) error {
	journalDir, siteDir := filepath.Join(dir, "journal"), filepath.Join(dir, "site")
	kept, err := unpack(demo.Journal(), journalDir)
	if err != nil {
		return fmt.Errorf("writing the demo: %w", err)
	}
	if kept > 0 {
		say.sayf("Left as they are, for they were there already: %s.", number(kept, "file"))
	}
	if err := makeSite(ctx, say, siteOrder{dir: journalDir, out: siteDir, day: day}); err != nil {
		return err
	}
	w, err := openJournal(journalDir)
	if err != nil {
		return err
	}
	say.sayf("")
	say.summary(w, day)
	say.sayf("")
	circleDir, err := demonstrateCircle(ctx, say, dir, day)
	if err != nil {
		return err
	}
	say.sayf("")
	say.sayf("Now open %s in a browser, or look at the notes in %s; what three makers share is in %s.",
		filepath.Join(siteDir, "index.html"), journalDir, filepath.Join(circleDir, "index.html"))
	return nil
}

// demonstrateCircle writes the neighbours' journals, has each maker share, and makes one
// site of it all, whose folder it returns.
func demonstrateCircle(ctx context.Context, say *voice, dir string, day edtf.Day) (string, error) {
	order := circleOrder{out: filepath.Join(dir, "circle"), title: "Three workrooms", day: day}
	makers := map[string]string{"juno": filepath.Join(dir, "journal")}
	for _, name := range demo.Neighbours {
		makers[name] = filepath.Join(dir, "neighbours", name)
		if _, err := unpack(demo.Neighbour(name), makers[name]); err != nil {
			return "", fmt.Errorf("writing the demo: %w", err)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(makers)) {
		shared := filepath.Join(dir, "shared", name)
		made, err := buildSite(ctx, say, siteOrder{dir: makers[name], out: shared, day: day, who: journal.Circle})
		switch {
		case err != nil:
			return "", err
		case !made.Made:
			w := workroom{findings: made.found}
			return "", w.sound(say, asItWas(order.out))
		}
		order.sites = append(order.sites, shared)
	}
	report, err := joinSites(ctx, say, order)
	if err == nil {
		err = say.joined(report)
	}
	return order.out, err
}

// unpack writes files that are not there yet and counts those that are.
func unpack(files fs.FS, dir string) (kept int, err error) {
	err = fs.WalkDir(files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(files, name)
		if err != nil {
			return err
		}
		err = writeNew(filepath.Join(dir, filepath.FromSlash(name)), data)
		if errors.Is(err, fs.ErrExist) {
			kept++
			return nil
		}
		return err
	})
	return kept, err
}

// summary says in plain words what a journal holds and what was found in it.
func (v *voice) summary(w *workroom, day edtf.Day) {
	j := w.journal
	wearers := make(map[*journal.Person]bool)
	for _, b := range j.Builds() {
		if p := j.Person(b.For); p != nil {
			wearers[p] = true
		}
	}
	v.sayf("%s: %s for %s, with %s, %s and %s.", j.Settings.Title, number(len(j.Builds()), "build"), number(len(wearers), "wearer"),
		number(len(j.Notes()), "note"), number(len(j.Patterns()), "pattern"), number(len(j.References()), "reference"))
	for _, b := range j.Builds() {
		v.sayf("  %s", b.Title+": "+inShort(j, b, day))
	}
	if list := lesson.Gather(j); len(list.All) > 0 {
		v.sayf("%s gathered, the newest: %s", number(len(list.All), "next-time note"), list.All[0].Text)
	}
	for _, f := range w.findings {
		if f.Level != source.Hint {
			v.sayf("Worth a look: %s (%s)", f.Text, f.Span)
		}
	}
}

// inShort says how a build fits in a line: what is short or ample, or that all
// that is known fits.
func inShort(j *journal.Journal, b *journal.Build, day edtf.Day) string {
	f := j.Settings.Format
	words, judged := "", 0
	for _, r := range fit.Of(j, b, day).Rows {
		if r.Verdict.Judged() {
			judged++
		}
		if (r.Verdict == fit.Short || r.Verdict == fit.Ample) && !r.Accepted {
			if words != "" {
				words += ", "
			}
			words += r.Point.String() + " " + r.Words(f)
		}
	}
	switch {
	case words != "":
		return words
	case judged > 0:
		return "fits wherever it can be told"
	}
	return "nothing to compare yet"
}
