package main

import (
	"slices"

	"github.com/spf13/cobra"

	"hussif/build/lesson"
	"hussif/build/table"
	"hussif/content/journal"
)

const noFiles = cobra.ShellCompDirectiveNoFileComp

// completeNames lets the shell complete the names of pages of some kinds, of the
// journal that the flag -j names or that is around.
func completeNames(dir *string, kinds ...journal.Kind) cobra.CompletionFunc {
	return func(_ *cobra.Command, args []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
		w, err := openJournal(*dir)
		if err != nil || len(args) > 0 {
			return nil, noFiles
		}
		return w.names(kinds...), noFiles
	}
}

// names returns how a shell completes pages of some kinds, or of all.
func (w *workroom) names(kinds ...journal.Kind) []cobra.Completion {
	var names []cobra.Completion
	for _, r := range w.journal.Records() {
		if page := r.Head(); len(kinds) == 0 || slices.Contains(kinds, page.Kind) {
			names = append(names, cobra.CompletionWithDesc(w.journal.Name(r), page.Title))
		}
	}
	return names
}

// completeLessons completes what next-time notes can be about.
func completeLessons(dir *string) cobra.CompletionFunc {
	return func(_ *cobra.Command, args []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
		w, err := openJournal(*dir)
		if err != nil || len(args) > 0 {
			return nil, noFiles
		}
		names := w.names()
		for _, g := range lesson.Gather(w.journal).ByGarment() {
			names = append(names, cobra.CompletionWithDesc(g.Name, "a kind of garment"))
		}
		return names, noFiles
	}
}

// completeSeams completes a build and then its seams.
func completeSeams(dir *string) cobra.CompletionFunc {
	return func(_ *cobra.Command, args []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
		w, err := openJournal(*dir)
		if err != nil {
			return nil, noFiles
		}
		if len(args) == 0 {
			return w.names(journal.KindBuild), noFiles
		}
		r, err := w.called(args[0], journal.KindBuild)
		if err != nil {
			return nil, noFiles
		}
		var names []cobra.Completion
		for _, s := range r.(*journal.Build).Seams {
			if !slices.Contains(args[1:], s.Name.Text) {
				names = append(names, s.Name.Text)
			}
		}
		return names, noFiles
	}
}

// completeTables completes the names of tables.
func completeTables(_ *cobra.Command, args []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
	var names []cobra.Completion
	if len(args) == 0 {
		for _, s := range table.Subjects() {
			names = append(names, cobra.CompletionWithDesc(s.Name, s.Doc))
		}
	}
	return names, noFiles
}

// completeKinds completes the kinds of page that have a schema.
func completeKinds(_ *cobra.Command, args []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
	var names []cobra.Completion
	if len(args) == 0 {
		for _, s := range everySchema() {
			names = append(names, cobra.CompletionWithDesc(s.Kind, s.Schema.Title))
		}
	}
	return names, noFiles
}

// completeFolder completes one folder.
func completeFolder(_ *cobra.Command, args []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, noFiles
	}
	return nil, cobra.ShellCompDirectiveFilterDirs
}

// completeDays completes days on which somebody may want to stand: those of the
// journal's occasions, and those on which builds were finished.
func completeDays(c *cobra.Command, args []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
	dir := ""
	if f := c.Flag("journal"); f != nil {
		dir = f.Value.String()
	} else if c.Name() == "site" {
		dir = firstArg(args)
	}
	w, err := openJournal(dir)
	if err != nil {
		return nil, noFiles
	}
	var days []cobra.Completion
	for _, o := range w.journal.Occasions() {
		days = append(days, cobra.CompletionWithDesc(o.Date.String(), o.Title))
	}
	for _, b := range w.journal.Builds() {
		if b.Finished != 0 {
			days = append(days, cobra.CompletionWithDesc(b.Finished.String(), b.Title+" finished"))
		}
	}
	return days, noFiles | cobra.ShellCompDirectiveKeepOrder
}

// completeFlags gives flags of one name the completion that all of them have, and
// folders to arguments that are one.
func completeFlags(root *cobra.Command) error {
	for _, c := range root.Commands() {
		if c.Flag("journal") != nil {
			if err := c.MarkFlagDirname("journal"); err != nil {
				return err
			}
		}
		if c.Flag("on") != nil {
			if err := c.RegisterFlagCompletionFunc("on", completeDays); err != nil {
				return err
			}
		}
		if f := c.Flag("output"); f != nil && c.Name() != "table" {
			if err := c.MarkFlagDirname("output"); err != nil {
				return err
			}
		}
	}
	return nil
}
