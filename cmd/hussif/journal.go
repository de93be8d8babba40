package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"
	"github.com/yuin/goldmark/ast"

	"hussif/build/check"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
)

// A workroom is a journal that has been read and checked.
type workroom struct {
	dir      string // of the journal
	files    fs.FS
	journal  *journal.Journal
	findings []source.Finding
}

// openJournal reads and checks the journal in a folder; "" stands for the one
// round the folder we are in.
func openJournal(dir string) (*workroom, error) {
	if dir == "" {
		dir = journalAround(".")
	}
	folder, err := readFolder(dir)
	if err != nil {
		return nil, err
	}
	return openFolder(dir, folder, nil), nil
}

// readFolder reads the files of the journal in a folder.
func readFolder(dir string) (*journal.Folder, error) {
	if err := isFolder(dir); err != nil {
		return nil, err
	}
	folder, err := journal.Read(os.DirFS(dir))
	return folder, noJournal(dir, err)
}

// isFolder says why there is no folder at a path.
func isFolder(dir string) error {
	if info, err := os.Stat(dir); err != nil {
		return fmt.Errorf("opening the journal: %w", err)
	} else if !info.IsDir() {
		return fmt.Errorf("%s is a file; a journal is a folder", dir)
	}
	return nil
}

// noJournal says of a folder without a journal how to get one.
func noJournal(dir string, err error) error {
	if errors.Is(err, journal.ErrNoJournal) {
		return fmt.Errorf("there is no journal in %s; `hussif begin` starts one, `hussif demo` shows one", place(dir))
	}
	return err
}

// openFolder checks the journal in a folder whose files have been read. Each record
// is shown to see, which may be nil, with the tree of its text.
func openFolder(dir string, folder *journal.Folder, see func(journal.Record, ast.Node)) *workroom {
	files := os.DirFS(dir)
	j, read := folder.Journal(see)
	return &workroom{dir: dir, files: files, journal: j, findings: check.Run(j, files, read)}
}

// journalAround returns the nearest folder, from dir upwards, that has a settings
// file, or dir itself.
func journalAround(dir string) string {
	start, err := filepath.Abs(dir)
	if err != nil {
		return dir
	}
	for at := start; ; at = filepath.Dir(at) {
		if _, err := os.Stat(filepath.Join(at, journal.SettingsFile)); err == nil {
			if rel, err := filepath.Rel(start, at); err == nil {
				return rel
			}
			return at
		}
		if filepath.Dir(at) == at {
			return dir
		}
	}
}

// sound prints the findings of a journal that has errors and ends the command.
func (w *workroom) sound(say *voice, otherwise string) error {
	if source.Count(w.findings, source.Error) == 0 {
		return nil
	}
	if err := say.complain(w.findings); err != nil {
		return err
	}
	say.asidef("%s: %s", tally(w.findings), otherwise)
	return errFound
}

// warn says on standard error that what a command answers rests on a journal with
// errors.
func (v *voice) warn(w *workroom) {
	if n := source.Count(w.findings, source.Error); n > 0 {
		v.asidef("hussif: the journal has %s, so this may be incomplete; see `hussif check`", number(n, "error"))
	}
}

// A dayFlag is a flag that takes a calendar day.
type dayFlag struct{ day edtf.Day }

// Set implements pflag.Value.
func (f *dayFlag) Set(text string) error {
	d, err := edtf.ParseDay(text)
	f.day = d
	return err
}

func (f *dayFlag) String() string { return f.day.String() }

// Type implements pflag.Value.
func (f *dayFlag) Type() string { return "day" }

// onFlag adds the flag that moves a command to another day than today.
func onFlag(c *cobra.Command, today edtf.Day) *dayFlag {
	f := &dayFlag{day: today}
	c.Flags().Var(f, "on", "as of this `day`, as in 2026-03-01; today where not given")
	return f
}

// firstArg returns the first argument, or "".
func firstArg(args []string) string {
	if len(args) == 0 {
		return ""
	}
	return args[0]
}
