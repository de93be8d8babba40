package main

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"hussif/content/edtf"
	"hussif/content/journal"
)

//go:embed starter
var starter embed.FS

// starterNote is the file of the first note, whose name begins with its date.
const starterNote = "note.md"

func beginCommand(say *voice) *cobra.Command {
	return &cobra.Command{
		Use:   "begin [folder]",
		Short: "Start a new journal",
		Long: `begin makes a folder with the settings, a wearer, a build and a first note to
write over. It never writes over a file that is there.`,
		Example: `  hussif begin
  hussif begin ~/costumes`,
		Args: atMostOne("folder"),
		RunE: func(_ *cobra.Command, args []string) error {
			dir := firstArg(args)
			if dir == "" {
				dir = "."
			}
			return begin(say, dir, today())
		},
		ValidArgsFunction: completeFolder,
	}
}

func begin(say *voice, dir string, day edtf.Day) error {
	if _, err := os.Lstat(filepath.Join(dir, journal.SettingsFile)); err == nil {
		return fmt.Errorf("there is a journal in %s already", place(dir))
	}
	files, err := fs.Sub(starter, "starter")
	if err != nil {
		return err
	}
	var made []string
	err = fs.WalkDir(files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(files, name)
		if err != nil {
			return err
		}
		if name == starterNote {
			name = "builds/first-build/" + day.String() + "-planning.md"
			data = []byte(strings.Replace(string(data), "DATE", day.String(), 1))
		}
		switch err := writeNew(filepath.Join(dir, filepath.FromSlash(name)), data); {
		case err == nil:
			made = append(made, name)
		case !errors.Is(err, fs.ErrExist):
			return err
		}
		return nil
	})
	if err != nil {
		return fmt.Errorf("starting a journal: %w", err)
	}
	say.sayf("A journal is begun in %s:", place(dir))
	for _, name := range made {
		say.sayf("  %s", name)
	}
	say.sayf("Write over what is there, then try `hussif check` and `hussif site` in that folder.")
	return nil
}

// place names a folder in a sentence.
func place(dir string) string {
	if dir == "." {
		return "this folder"
	}
	return dir
}
