package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"hussif/build/develop"
	"hussif/build/intake"
	"hussif/content/journal"
)

// photosFlags are what was said about how to go about it.
type photosFlags struct {
	dir, build        string
	dryRun, yes, json bool
}

func photosCommand(say *voice) *cobra.Command {
	var flags photosFlags
	c := &cobra.Command{
		Use:   "photos camera-folder",
		Short: "Sort a camera's pictures into the notes of the days they were taken",
		Long: `photos copies the pictures of a camera's folder, and of all folders in it, into
the journal: each goes to a note of the day on which it was taken, as the camera's
clock had it, or by the file's time where the picture does not say. The build is
the one with the nearest note, unless --build names it; where it has no note of
that day one is started.

Your pictures are copied, never moved or changed, and nothing in the journal is
written over: a note that is there gets the pictures below its other ` + "`photos`" + `, and
what is in the journal already is left out, whatever it is called. So the same
folder can be given again and again. HEIC pictures are developed to JPEG, a few
seconds and some 350 MB of memory each; keep the HEIC files, for they hold more.
Films and raw pictures are left out.

You are shown the plan and asked first. Where nobody can be asked, --yes carries it
out and --dry-run only shows it.`,
		Example: `  hussif photos /media/card/DCIM
  hussif photos ~/Pictures/phone --build grey-jacket
  hussif photos ~/Pictures/phone --dry-run
  hussif photos ~/Pictures/phone --yes --json`,
		Args: func(_ *cobra.Command, args []string) error {
			switch len(args) {
			case 0:
				return errors.New("photos wants the camera's folder, as in `hussif photos /media/card/DCIM`")
			case 1:
				return nil
			}
			return fmt.Errorf("photos takes one folder; %q is too much", args[1])
		},
		RunE: func(c *cobra.Command, args []string) error { return photos(c.Context(), say, args[0], flags) },
	}
	c.Flags().StringVarP(&flags.dir, "journal", "j", "", "the journal's folder")
	c.Flags().StringVarP(&flags.build, "build", "b", "", "the build that all pictures are of")
	c.Flags().BoolVar(&flags.dryRun, "dry-run", false, "show the plan and write nothing")
	c.Flags().BoolVarP(&flags.yes, "yes", "y", false, "carry the plan out without asking")
	c.Flags().BoolVar(&flags.json, "json", false, "print what was done as JSON; goes with --yes or --dry-run")
	c.MarkFlagsMutuallyExclusive("dry-run", "yes")
	_ = c.RegisterFlagCompletionFunc("build", completeNames(&flags.dir, journal.KindBuild))
	c.ValidArgsFunction = func(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
		return nil, cobra.ShellCompDirectiveFilterDirs
	}
	return c
}

// errLeft ends a command that has said which pictures could not be taken.
var errLeft = fmt.Errorf("some pictures could not be taken: %w", errFound)

func photos(ctx context.Context, say *voice, camera string, flags photosFlags) error {
	if flags.json && !flags.yes && !flags.dryRun {
		return errors.New("--json asks nothing: add --yes, or --dry-run to see the plan only")
	}
	if flags.dir == "" {
		flags.dir = journalAround(".")
	}
	except, err := cameraFolder(camera, flags.dir)
	if err != nil {
		return err
	}
	folder, err := readFolder(flags.dir)
	if err != nil {
		return err
	}
	w := openFolder(flags.dir, folder, nil)
	say.warn(w)
	sorting := intake.Sorting{Journal: w.journal, Files: w.files, Entries: folder.Entries, Camera: os.DirFS(camera), Except: except,
		Looking: say.progress("looking at the files"), Proving: say.progress("looking at the pictures")}
	if flags.build != "" {
		r, err := w.called(flags.build, journal.KindBuild)
		if err != nil {
			return err
		}
		sorting.Build = r.(*journal.Build)
	}
	plan, err := sorting.Plan(ctx)
	switch {
	case errors.Is(err, context.Canceled):
		return errors.New("stopped before anything was written")
	case errors.Is(err, intake.ErrWhichBuild):
		return fmt.Errorf("%w; name it with --build", err)
	case err != nil:
		return err
	}
	if !flags.json {
		say.photoPlan(plan, camera)
	}
	if plan.Pictures() == 0 || flags.dryRun {
		if flags.json {
			err = say.json(photosJSON(plan, plan.Notes, plan.Left, false))
		}
		return errors.Join(err, leftOf(plan.Left))
	}
	if !flags.yes {
		if err := agree(ctx, say); err != nil {
			return err
		}
	}
	return carry(ctx, say, flags, plan, camera)
}

// errNobody is returned where a question would have to be put to nobody.
var errNobody = errors.New("nothing was copied, for nobody is at a terminal to be asked; add --yes to carry the plan out")

// agree asks whether to go on. Where the answer is no it returns an error that says
// so.
func agree(ctx context.Context, say *voice) error {
	a := newAsker(ctx, say.Streams)
	if !a.typed || !isTerminal(say.Out) {
		return errNobody
	}
	switch yes, err := a.yes("Copy them?", true); {
	case err != nil:
		return errors.New("nothing was copied")
	case !yes:
		return errors.New("nothing was copied, as you said")
	}
	return nil
}

// carry carries a plan out and says what was done.
func carry(ctx context.Context, say *voice, flags photosFlags, plan *intake.Plan, camera string) error {
	root, err := os.OpenRoot(flags.dir)
	if err != nil {
		return err
	}
	defer root.Close()
	lab := &develop.Lab{Command: developProcess}
	defer lab.Close()
	desk := intake.Desk{Journal: root, Camera: os.DirFS(camera), Develop: lab.Develop, Progress: say.progress("copying")}
	report, err := desk.Carry(ctx, plan)
	if flags.json {
		left := append(plan.Left[:len(plan.Left):len(plan.Left)], report.Left...)
		if err := say.json(photosJSON(plan, report.Notes, left, true)); err != nil {
			return err
		}
	} else {
		say.photosDone(report)
	}
	switch {
	case errors.Is(err, context.Canceled):
		return errors.New("stopped before the end; what was copied is in its note, and the same command goes on from there")
	case err != nil:
		return err
	}
	return errors.Join(leftOf(plan.Left), leftOf(report.Left))
}

// leftOf returns an error where pictures that should have gone in did not.
func leftOf(left []intake.Left) error {
	for _, l := range left {
		if l.Trouble {
			return errLeft
		}
	}
	return nil
}

// cameraFolder refuses what is no folder of pictures outside the journal, and
// returns where in it the journal lies, or "".
func cameraFolder(camera, journal string) (except string, err error) {
	info, err := os.Stat(camera)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return "", fmt.Errorf("there is no folder %s", camera)
	case err != nil:
		return "", fmt.Errorf("opening the camera's folder: %w", err)
	case !info.IsDir():
		return "", fmt.Errorf("%s is a file; name the folder that it lies in", camera)
	}
	from, err := realPath(camera)
	if err != nil {
		return "", err
	}
	to, err := realPath(journal)
	if err != nil {
		return "", err
	}
	if rel, err := filepath.Rel(to, from); err == nil && filepath.IsLocal(rel) {
		return "", fmt.Errorf("%s lies in the journal; photos sorts pictures that lie outside it", camera)
	}
	if rel, err := filepath.Rel(from, to); err == nil && filepath.IsLocal(rel) {
		return filepath.ToSlash(rel), nil
	}
	return "", nil
}

func realPath(dir string) (string, error) {
	real, err := filepath.EvalSymlinks(dir)
	if err != nil {
		return "", err
	}
	return filepath.Abs(real)
}

// photoPlan shows what goes where before anything is written.
func (v *voice) photoPlan(p *intake.Plan, camera string) {
	for _, e := range p.Notes {
		line := fmt.Sprintf("%s: %s to %s", e.Day, number(len(e.Pictures), "picture"), e.Note)
		if e.New {
			line += ", a new note"
		}
		v.sayf("%s", v.bold(line))
		if e.Day > today() {
			v.sayf("  that day is still to come; is the camera's clock right?")
		}
		if e.Why != "" {
			v.sayf("  %s: %s", e.Build.Title, e.Why)
		}
		if e.New && e.Instead != "" {
			v.sayf("  not to the note that is there: %s", e.Instead)
		}
		for _, pic := range e.Pictures {
			v.sayf("  %s -> %s", pic.Path, pic.To+marks(pic))
		}
	}
	if len(p.Left) > 0 {
		v.sayf("%s", v.bold("left out"))
		for _, l := range p.Left {
			v.sayf("  %s: %s", l.Path, l.Reason)
		}
	}
	for _, d := range p.Doubles {
		if !d.Here {
			v.sayf("%s is the same picture as %s", d.Path, d.Same)
		}
	}
	v.sayf("%s", v.photoTally(p, camera))
}

func marks(p intake.Picture) string {
	var out []string
	if p.ByFile {
		out = append(out, "by the file's time")
	}
	if p.HEIC {
		out = append(out, "developed to JPEG")
	}
	if p.Here {
		out = append(out, "copied before")
	}
	if len(out) == 0 {
		return ""
	}
	return " (" + strings.Join(out, ", ") + ")"
}

// photoTally counts what a plan does: "5 pictures for 2 notes, 1 of them new; 3 are
// in the journal already; 2 left out".
func (v *voice) photoTally(p *intake.Plan, camera string) string {
	fresh, here, twice, trouble := 0, 0, 0, 0
	for _, l := range p.Left {
		if l.Trouble {
			trouble++
		}
	}
	for _, e := range p.Notes {
		if e.New {
			fresh++
		}
	}
	for _, d := range p.Doubles {
		if d.Here {
			here++
		} else {
			twice++
		}
	}
	out := fmt.Sprintf("%s: %s for %s", camera, number(p.Pictures(), "picture"), number(len(p.Notes), "note"))
	if p.Pictures() == 0 {
		out = camera + ": nothing new"
	}
	if fresh > 0 {
		out += fmt.Sprintf(", %d of them new", fresh)
	}
	if here > 0 {
		out += fmt.Sprintf("; %d in the journal already", here)
	}
	if twice > 0 {
		out += fmt.Sprintf("; %d there twice", twice)
	}
	if len(p.Left) > 0 {
		out += fmt.Sprintf("; %d left out", len(p.Left))
	}
	if trouble > 0 {
		out += fmt.Sprintf(", %d of them for a fault", trouble)
	}
	return out
}

// photosDone says what was written.
func (v *voice) photosDone(r intake.Report) {
	pictures := 0
	for _, e := range r.Notes {
		pictures += len(e.Pictures)
	}
	for _, l := range r.Left {
		v.sayf("left out after all: %s: %s", l.Path, l.Reason)
	}
	if pictures == 0 {
		v.sayf("Nothing was copied.")
		return
	}
	v.sayf("%s copied into %s. `hussif check` lists the pictures that want words (`alt`).", number(pictures, "picture"), number(len(r.Notes), "note"))
}
