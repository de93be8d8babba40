package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"hussif/build/leaf"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/near"
)

// A noteOrder is what was said at the prompt about a note.
type noteOrder struct {
	dir, build, stage, title string
	day                      edtf.Day
	path, open               bool
}

func noteCommand(say *voice) *cobra.Command {
	var o noteOrder
	c := &cobra.Command{
		Use:   "note [title]",
		Short: "Begin the next note of the build on the table",
		Long: `note begins a dated note of the build that was worked on last, at the stage that
follows from its last note. All that the stage asks for stands in it as lines that
are marked out, with the build's own seams, pieces, measures and materials: what
is rarely written and badly missed comes first. Left as it is the note says
nothing but the day. No note is ever written over.`,
		Example: `  hussif note
  hussif note First fitting --open
  hussif note --build grey-jacket --stage unpicking
  vi "$(hussif note --path)"`,
		Args: cobra.ArbitraryArgs,
	}
	c.Flags().StringVarP(&o.dir, "journal", "j", "", "the journal's folder")
	c.Flags().StringVar(&o.build, "build", "", "the build (that of the newest note)")
	c.Flags().StringVar(&o.stage, "stage", "", "the stage of the work (what follows from the last note)")
	c.Flags().BoolVar(&o.path, "path", false, "print the note's path and nothing else, for editors")
	c.Flags().BoolVar(&o.open, "open", false, "open it in the editor that VISUAL or EDITOR names")
	on := onFlag(c, today())
	c.Flags().Lookup("on").Usage = "of this day, as in 2026-03-01"
	c.RunE = func(c *cobra.Command, args []string) error {
		o.title, o.day = strings.Join(strings.Fields(strings.Join(args, " ")), " "), on.day
		return beginNote(c.Context(), say, o)
	}
	stages := make([]cobra.Completion, len(journal.Stages))
	for i, s := range journal.Stages {
		stages[i] = cobra.Completion(s)
	}
	complete := map[string]cobra.CompletionFunc{
		"build": func(c *cobra.Command, _ []string, typed string) ([]cobra.Completion, cobra.ShellCompDirective) {
			return completeNames(&o.dir, journal.KindBuild)(c, nil, typed)
		},
		"stage": cobra.FixedCompletions(stages, cobra.ShellCompDirectiveNoFileComp),
	}
	for flag, names := range complete {
		if err := c.RegisterFlagCompletionFunc(flag, names); err != nil {
			panic(err) // only for a flag that the command lacks, and it was given both above
		}
	}
	c.ValidArgsFunction = cobra.NoFileCompletions
	return c
}

func beginNote(ctx context.Context, say *voice, o noteOrder) error {
	var editor []string
	if o.open {
		if editor = namedEditor(); editor == nil {
			return errors.New("no editor is named; set VISUAL or EDITOR to the one you use")
		}
	}
	w, err := openJournal(o.dir)
	if err != nil {
		return err
	}
	say.warn(w)
	b, why, err := w.buildOfNote(ctx, say, o)
	if err != nil {
		return err
	}
	stage, err := stageNamed(o.stage)
	if err != nil {
		return err
	}
	if stage == "" {
		var last *journal.Note
		if stage, last = leaf.Follow(b, o.day); last != nil {
			why += fmt.Sprintf("; it follows on %s of %s", last.Stage, last.Date)
		}
	}
	l := leaf.Leaf{Journal: w.journal, Build: b, Day: o.day, Stage: stage, Title: o.title}
	name, err := w.writeLeaf(l)
	if err != nil {
		return err
	}
	say.sayf("%s", name)
	if !o.path {
		say.sayf("  %s of %s, %s", stage, b.Title, why)
	}
	if o.open {
		return edit(say, editor, name)
	}
	return nil
}

// buildOfNote returns the build that a note is of, and why it is that one.
func (w *workroom) buildOfNote(ctx context.Context, say *voice, o noteOrder) (*journal.Build, string, error) {
	if o.build != "" {
		r, err := w.called(o.build, journal.KindBuild)
		if err != nil {
			return nil, "", err
		}
		return r.(*journal.Build), "as asked", nil
	}
	if r, ok := w.journal.Find(o.title, journal.KindBuild); ok && o.title != "" {
		return nil, "", fmt.Errorf("%s is a build; say --build %s for a note of it, or give the note another title", o.title, w.journal.Name(r))
	}
	builds, day := leaf.LastWorked(w.journal, o.day)
	why := "worked on last"
	if len(builds) == 0 {
		builds, why = w.journal.Builds(), "the only build"
	}
	switch {
	case len(builds) == 0:
		return nil, "", errors.New("there is no build yet to write a note of; make a page for it in builds/NAME/build.md, with a name for the garment, " +
			"or look at what `hussif begin` writes")
	case len(builds) == 1:
		return builds[0], why, nil
	}
	names := make([]string, len(builds))
	for i, b := range builds {
		names[i] = w.journal.Name(b)
	}
	said := fmt.Sprintf("%s were worked on equally lately, on %s", strings.Join(names, " and "), day)
	if day == 0 {
		said = "no build has a note yet: there are " + strings.Join(names, ", ")
	}
	streams := say.Streams
	if o.path {
		streams.Out = say.Err // nothing but the path belongs on standard output
	}
	a := newAsker(ctx, streams)
	if !a.typed {
		return nil, "", fmt.Errorf("%s; say which with --build", said)
	}
	a.sayf("%s", said)
	name, err := a.choice("which?", names)
	if err != nil {
		return nil, "", errors.New("no note was begun")
	}
	return builds[slices.Index(names, name)], "as chosen", nil
}

// stageNamed reads a stage as it is typed; "" stays that.
func stageNamed(text string) (journal.Stage, error) {
	var names []string
	for _, s := range journal.Stages {
		names = append(names, string(s))
		if near.Folded(text) == string(s) {
			return s, nil
		}
	}
	if text == "" {
		return "", nil
	}
	if instead := near.Of(near.Folded(text), names); len(instead) > 0 {
		return "", fmt.Errorf("no stage of the work is called %q; did you mean %s?", text, strings.Join(instead, " or "))
	}
	return "", fmt.Errorf("no stage of the work is called %q; there are %s", text, strings.Join(names, ", "))
}

// writeLeaf writes a note under a name that no page of the journal has, so that no
// link becomes unclear, and returns its path.
func (w *workroom) writeLeaf(l leaf.Leaf) (string, error) {
	words := stem(l.Title)
	if words == "" {
		words = stem(string(l.Stage))
	}
	taken := make(map[string]bool)
	for _, r := range w.journal.Records() {
		taken[strings.ToLower(r.Head().ID.Name())] = true
	}
	for n := 1; ; n++ {
		name := l.Day.String() + "-" + words
		if n > 1 {
			name += fmt.Sprintf("-%d", n)
		}
		if taken[name] {
			continue
		}
		file := filepath.Join(w.dir, filepath.FromSlash(string(l.Build.ID)), name+".md")
		switch err := writeNew(file, []byte(l.Text())); {
		case err == nil:
			return file, nil
		case !errors.Is(err, fs.ErrExist):
			return "", fmt.Errorf("beginning a note: %w", err)
		}
	}
}

// namedEditor returns the command that somebody named as the editor to use; nil
// where none is named. It may have flags.
func namedEditor() []string {
	for _, name := range []string{"VISUAL", "EDITOR"} {
		if command := strings.Fields(os.Getenv(name)); len(command) > 0 {
			return command
		}
	}
	return nil
}

// edit opens a file in an editor and waits for it. Ctrl-C is the editor's while it
// runs, so it is not started under the program's context.
func edit(say *voice, editor []string, name string) error {
	c := exec.Command(editor[0], append(editor[1:], name)...)
	c.Stdin, c.Stdout, c.Stderr = say.In, say.Out, say.Err
	if err := c.Run(); err != nil {
		return fmt.Errorf("the note is begun, but the editor %s: %w", editor[0], err)
	}
	return nil
}
