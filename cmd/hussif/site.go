package main

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"hussif/build/keep"
	"hussif/build/output"
	"hussif/build/photo"
	"hussif/build/site"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
	"hussif/theme"
)

func siteCommand(say *voice) *cobra.Command {
	var out string
	c := &cobra.Command{
		Use:   "site [journal]",
		Short: "Make the site of a journal",
		Long: `site checks a journal and makes its site: plain files that open from the disk, a
stick or any web host. Only what has changed is written. A folder that holds
anything a site did not put there is refused, and where the journal has errors
the site stays as it was.`,
		Example: `  hussif site
  hussif site ~/costumes -o ~/costumes-site`,
		Args: atMostOne("journal"),
	}
	c.ValidArgsFunction = completeFolder
	c.Flags().StringVarP(&out, "output", "o", "", "the site's `folder`; site, in the journal's, where not given")
	on := onFlag(c, today())
	c.RunE = func(c *cobra.Command, args []string) error {
		dir := firstArg(args)
		if dir == "" {
			dir = journalAround(".")
		}
		if out == "" {
			out = filepath.Join(dir, "site")
		}
		return makeSite(c.Context(), say, dir, out, on.day)
	}
	return c
}

// makeSite makes the site of the journal in dir and says what came of it.
func makeSite(ctx context.Context, say *voice, dir, out string, day edtf.Day) error {
	if err := output.Separate(out, dir); err != nil {
		return err
	}
	store, err := openStore(say)
	if err != nil {
		return err
	}
	folder, err := readFolder(dir)
	if err != nil {
		return err
	}
	recipe := siteRecipe(folder, day)
	if report, ok := output.Current(out, recipe); ok {
		if tally, ok := store.Get(recipe); ok {
			say.sayf("%s is up to date: 0 written, %d kept; %s", out, report.Kept, tally)
			return nil
		}
	}
	var bodies site.Bodies
	w := openFolder(dir, folder, bodies.See)
	if err := w.sound(say, asItWas(out)); err != nil {
		return err
	}
	absolute, err := filepath.Abs(dir)
	if err != nil {
		return err
	}
	made, found, err := site.Make(ctx, site.Order{
		Journal: w.journal, Files: w.files, Findings: w.findings, Bodies: &bodies, Today: day, Out: out, Recipe: recipe,
		Photos: &photo.Darkroom{Store: store, Journal: absolute, Progress: say.progress("pictures")},
	})
	if err != nil {
		return err
	}
	w.findings = source.Sort(append(w.findings, found...))
	if err := w.sound(say, asItWas(out)); err != nil {
		return err
	}
	say.sayf("%s: %s and %s; %d written, %d kept, %d removed; %s", out, number(made.Pages, "page"),
		number(made.Photos, "photo"), made.Written, made.Kept, made.Removed, advice(w.findings))
	return store.Put(recipe, []byte(advice(w.findings)))
}

// advice counts findings and says where to read them.
func advice(found []source.Finding) string {
	if len(found) == 0 {
		return tally(found)
	}
	return tally(found) + " (see `hussif check`)"
}

func today() edtf.Day { return edtf.DayFromTime(time.Now()) }

// asItWas says that a folder was not touched.
func asItWas(out string) string {
	if _, err := os.Stat(out); err != nil {
		return "no site was made"
	}
	return out + " stays as it was"
}

// openStore opens the store of things made before, in the user's cache folder, or
// where that cannot be written in one that lasts no longer than the system keeps it.
func openStore(say *voice) (*keep.Store, error) {
	cache, err := os.UserCacheDir()
	if err == nil {
		var store *keep.Store
		if store, err = keep.Open(filepath.Join(cache, "hussif")); err == nil {
			return store, nil
		}
	}
	dir, tempErr := os.MkdirTemp("", "hussif-")
	if tempErr != nil {
		return nil, fmt.Errorf("opening the store of things made before: %w", errors.Join(err, tempErr))
	}
	say.asidef("hussif: the cache folder cannot be used, so pictures are made anew next time: %v", err)
	return keep.Open(dir)
}

// siteRecipe stands for all that decides a site: the program, the day, the notes
// and settings by their content, and all other files by name, size and time.
func siteRecipe(folder *journal.Folder, day edtf.Day) keep.Recipe {
	given := []string{version, program(), theme.Hash(), day.String()}
	for _, e := range folder.Entries {
		if text, ok := folder.Texts[e.Path]; ok {
			sum := sha256.Sum256(text)
			given = append(given, e.Path, string(sum[:]))
		} else {
			given = append(given, e.Path, fmt.Sprint(e.Size, e.Modified.UnixNano()))
		}
	}
	return keep.NewRecipe("site", 1, given...)
}

// program tells builds of the program apart while its version stays the same: by
// the size and time of its file.
func program() string {
	name, err := os.Executable()
	if err != nil {
		return ""
	}
	info, err := os.Stat(name)
	if err != nil {
		return ""
	}
	return fmt.Sprint(info.Size(), info.ModTime().UnixNano())
}
