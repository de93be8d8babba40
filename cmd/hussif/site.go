package main

import (
	"context"
	"crypto/sha256"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"hussif/build/keep"
	"hussif/build/output"
	"hussif/build/photo"
	"hussif/build/site"
	"hussif/content/edtf"
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
		Args: cobra.MaximumNArgs(1),
	}
	c.Flags().StringVarP(&out, "output", "o", "", "the site's folder (site, in the journal's folder)")
	on := onFlag(c, today())
	c.RunE = func(c *cobra.Command, args []string) error {
		dir := firstArg(args)
		if dir == "" {
			dir = journalAround(".")
		}
		if out == "" {
			out = filepath.Join(dir, "site")
		}
		_, err := makeSite(c.Context(), say, dir, out, on.day)
		return err
	}
	return c
}

// makeSite makes the site of the journal in dir and says what came of it. The
// workroom is nil where nothing had changed and the journal was not read.
func makeSite(ctx context.Context, say *voice, dir, out string, day edtf.Day) (*workroom, error) {
	if err := output.Separate(out, dir); err != nil {
		return nil, err
	}
	store, err := openStore()
	if err != nil {
		return nil, err
	}
	recipe, err := siteRecipe(os.DirFS(dir), day)
	if err != nil {
		return nil, err
	}
	if report, ok := output.Current(out, recipe); ok {
		if tally, ok := store.Get(recipe); ok {
			say.sayf("%s is up to date: 0 written, %d kept; %s", out, report.Kept, tally)
			return nil, nil
		}
	}
	w, err := openJournal(dir)
	if err != nil {
		return nil, err
	}
	if err := w.sound(say, out+" stays as it was"); err != nil {
		return nil, err
	}
	absolute, err := filepath.Abs(dir)
	if err != nil {
		return nil, err
	}
	made, found, err := site.Make(ctx, site.Order{
		Journal: w.journal, Files: w.files, Findings: w.findings, Today: day, Out: out, Recipe: recipe,
		Photos: &photo.Darkroom{Store: store, Journal: absolute, Progress: say.progress("pictures")},
	})
	if err != nil {
		return nil, err
	}
	w.findings = source.Sort(append(w.findings, found...))
	if err := w.sound(say, out+" stays as it was"); err != nil {
		return nil, err
	}
	say.sayf("%s: %s and %s; %d written, %d kept, %d removed; %s", out, number(made.Pages, "page"),
		number(made.Pictures, "picture"), made.Written, made.Kept, made.Removed, advice(w.findings))
	return w, store.Put(recipe, []byte(advice(w.findings)))
}

// advice counts findings and says where to read them.
func advice(found []source.Finding) string {
	if len(found) == 0 {
		return tally(found)
	}
	return tally(found) + " (see `hussif check`)"
}

func today() edtf.Day { return edtf.DayFromTime(time.Now()) }

// openStore opens the store of things made before, in the user's cache folder.
func openStore() (*keep.Store, error) {
	cache, err := os.UserCacheDir()
	if err != nil {
		cache = os.TempDir()
	}
	return keep.Open(filepath.Join(cache, "hussif"))
}

// siteRecipe stands for all that decides a site: the program, the day, the words
// of every note and settings file by their content, and all other files by name,
// size and time.
func siteRecipe(files fs.FS, day edtf.Day) (keep.Recipe, error) {
	entries, _, err := source.Scan(files)
	if err != nil {
		return keep.Recipe{}, fmt.Errorf("looking through the journal: %w", err)
	}
	given := []string{version, program(), theme.Hash(), day.String()}
	for _, e := range entries {
		switch strings.ToLower(filepath.Ext(e.Path)) {
		case ".md", ".yaml":
			sum, err := sumOf(files, e.Path)
			if err != nil {
				return keep.Recipe{}, fmt.Errorf("reading the journal: %w", err)
			}
			given = append(given, e.Path, sum)
		default:
			given = append(given, e.Path, fmt.Sprint(e.Size, e.Modified.UnixNano()))
		}
	}
	return keep.NewRecipe("site", 1, given...), nil
}

func sumOf(files fs.FS, name string) (string, error) {
	f, err := files.Open(name)
	if err != nil {
		return "", err
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return "", err
	}
	return string(h.Sum(nil)), nil
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
