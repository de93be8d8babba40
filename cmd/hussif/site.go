package main

import (
	"context"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"hussif/build/audience"
	"hussif/build/export"
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
	var o siteOrder
	var asJSON, watch bool
	var who audienceFlag
	c := &cobra.Command{
		Use:   "site [journal]",
		Short: "Make the site of a journal",
		Long: `site checks a journal and makes its site: plain files that open from the disk, a
stick or any web host. Only what has changed is written. A folder that holds
anything a site did not put there is refused, and where the journal has errors
the site stays as it was. With --watch it is kept up to date until you press Ctrl-C.

With --for circle or --for public it holds only what these may see, by what the
journal says of sharing; ` + "`hussif check --for circle`" + ` lists it beforehand. The
maker's own site and those for others are never put in one another's place. One for
the circle holds a ` + export.Path + `, by which ` + "`hussif circle`" + ` makes one site of several.
--zip packs the site into one file beside its folder, to be handed over.`,
		Example: `  hussif site
  hussif site ~/costumes -o ~/costumes-site
  hussif site --for circle --zip
  hussif site --json
  hussif site --watch`,
		Args: atMostOne("journal"),
	}
	c.ValidArgsFunction = completeFolder
	c.Flags().StringVarP(&o.out, "output", "o", "", "the site's `folder`; site, or site-circle and so on, in the journal's, where not given")
	c.Flags().Var(&who, "for", "make a site for `others`: circle or public; the maker's own where not given")
	c.Flags().BoolVar(&o.zip, "zip", false, "pack the site into one file too, named as its folder")
	c.Flags().BoolVar(&asJSON, "json", false, "print what was done as JSON")
	c.Flags().BoolVar(&watch, "watch", false, "keep the site up to date as files are saved")
	c.MarkFlagsMutuallyExclusive("watch", "json")
	c.MarkFlagsMutuallyExclusive("watch", "for")
	c.MarkFlagsMutuallyExclusive("watch", "zip")
	completeAudience(c)
	on := onFlag(c, today())
	c.RunE = func(c *cobra.Command, args []string) error {
		dir := firstArg(args)
		if dir == "" {
			dir = journalAround(".")
		}
		o.dir, o.day, o.who = dir, on.day, who.others()
		if o.out == "" {
			o.out = filepath.Join(dir, "site")
			if o.who != "" {
				o.out += "-" + string(o.who)
			}
		}
		if watch {
			return watchSite(c.Context(), say, dir, o.out, on.flagged(c))
		}
		if asJSON {
			return reportSite(c.Context(), say, o)
		}
		return makeSite(c.Context(), say, o)
	}
	return c
}

// A siteOrder says what site to make.
type siteOrder struct {
	dir, out string
	day      edtf.Day
	who      journal.Audience // whom it is for; "" for the maker
	zip      bool
}

// makeSite makes the site of a journal and says what came of it.
func makeSite(ctx context.Context, say *voice, o siteOrder) error {
	out := o.out
	made, err := buildSite(ctx, say, o)
	switch {
	case err != nil:
		return err
	case !made.Made:
		w := workroom{findings: made.found}
		return w.sound(say, asItWas(out))
	case made.Current:
		say.sayf("%s is up to date: 0 written, %d kept; %s", out, made.Kept, made.advice())
	default:
		say.sayf("%s: %s and %s; %d written, %d kept, %d removed; %s", out, number(made.Pages, "page"),
			number(made.Photos, "photo"), made.Written, made.Kept, made.Removed, made.advice())
	}
	if made.Zip != "" {
		say.sayf("%s holds all of it in one file: unpack it and open index.html", made.Zip)
	}
	return nil
}

// reportSite does the same and prints it for another program.
func reportSite(ctx context.Context, say *voice, o siteOrder) error {
	made, err := buildSite(ctx, say, o)
	if err != nil {
		return err
	}
	if err := say.json(made); err != nil {
		return err
	}
	if !made.Made {
		return errFound
	}
	return nil
}

// siteJSON is what came of making a site.
type siteJSON struct {
	Site     string               `json:"site" doc:"the site's folder"`
	For      string               `json:"for,omitempty" doc:"whom it is for, where not for the maker: circle or public"`
	Zip      string               `json:"zip,omitempty" doc:"the one file that it was packed into"`
	Made     bool                 `json:"made" doc:"whether the site is as the journal is; where not it stays as it was"`
	Current  bool                 `json:"up_to_date" doc:"whether it was so already, and nothing was done"`
	Pages    int                  `json:"pages" doc:"pages of the site"`
	Photos   int                  `json:"photos" doc:"photos shown"`
	Written  int                  `json:"written" doc:"files written"`
	Kept     int                  `json:"kept" doc:"files left as they were"`
	Removed  int                  `json:"removed" doc:"files of the site's own that were removed"`
	Tally    siteTally            `json:"found" doc:"how many findings there are"`
	Findings []source.FindingJSON `json:"findings,omitempty" doc:"where the site was not made, what there is, as hussif check --json has it"`

	found []source.Finding
}

type siteTally struct {
	Errors   int `json:"errors" doc:"which keep a site from being made"`
	Warnings int `json:"warnings" doc:"which do not"`
	Hints    int `json:"hints" doc:"what may be worth a look"`
}

func tallyOf(found []source.Finding) siteTally {
	return siteTally{source.Count(found, source.Error), source.Count(found, source.Warning), source.Count(found, source.Hint)}
}

// advice counts the findings of a site in words.
func (s siteJSON) advice() string {
	var found []source.Finding
	for level, n := range []int{s.Tally.Errors, s.Tally.Warnings, s.Tally.Hints} {
		for range n {
			found = append(found, source.Finding{Level: source.Level(level)})
		}
	}
	return advice(found)
}

// refused is the report of a site that was not made, for what was found.
func (s siteJSON) refused(found []source.Finding) siteJSON {
	s.Tally, s.Findings, s.found = tallyOf(found), source.JSON(found), found
	return s
}

// buildSite makes the site of a journal, where nothing found forbids it.
func buildSite(ctx context.Context, say *voice, o siteOrder) (siteJSON, error) {
	report := siteJSON{Site: o.out, For: string(o.who)}
	if err := output.Separate(o.out, o.dir); err != nil {
		return report, err
	}
	store, err := openStore(say)
	if err != nil {
		return report, err
	}
	folder, err := readFolder(o.dir)
	if err != nil {
		return report, err
	}
	if o.who != "" {
		report, err = shareSite(ctx, say, o, store, folder)
	} else {
		report, err = ownSite(ctx, say, o, store, folder)
	}
	if err == nil && report.Made && o.zip {
		report.Zip, err = packSite(o)
	}
	return report, err
}

// ownSite makes the maker's own site.
func ownSite(ctx context.Context, say *voice, o siteOrder, store *keep.Store, folder *journal.Folder) (siteJSON, error) {
	recipe := siteRecipe(folder, o.day)
	if report, ok := currentSite(o, store, recipe); ok {
		return report, nil
	}
	var bodies site.Bodies
	w := openFolder(o.dir, folder, bodies.See)
	return writeSite(ctx, say, o, store, w, siteParts{folder: folder, journal: w.journal, findings: w.findings, bodies: &bodies, recipe: recipe})
}

// currentSite returns the report of a site that is up to date.
func currentSite(o siteOrder, store *keep.Store, recipe keep.Recipe) (siteJSON, bool) {
	var report siteJSON
	now, ok := output.Current(o.out, recipe)
	if !ok {
		return report, false
	}
	before, ok := store.Get(recipe)
	if !ok || json.Unmarshal(before, &report) != nil {
		return report, false
	}
	report.Site, report.Current, report.Written, report.Kept, report.Removed = o.out, true, 0, now.Kept, 0
	return report, true
}

// siteParts are what a site is made from.
type siteParts struct {
	folder   *journal.Folder
	journal  *journal.Journal
	fits     map[journal.ID]audience.Fit
	findings []source.Finding // that the site tells
	bodies   *site.Bodies
	recipe   keep.Recipe
	blur     map[string][]photo.Region
}

// writeSite makes a site from a journal that has been read and checked.
func writeSite(ctx context.Context, say *voice, o siteOrder, store *keep.Store, w *workroom, parts siteParts) (siteJSON, error) {
	report := siteJSON{Site: o.out, For: string(o.who)}
	if source.Count(w.findings, source.Error) > 0 {
		return report.refused(w.findings), nil
	}
	absolute, err := filepath.Abs(o.dir)
	if err != nil {
		return report, err
	}
	workshop, err := site.NewWorkshop()
	if err != nil {
		return report, err
	}
	pages, given := pagesOf(absolute, o.who), pagesGiven(parts.folder, o.day)
	if _, err := os.Stat(filepath.Join(o.out, source.SiteMark)); err == nil { // else all is to be made
		if ledger, ok := store.Last(pages); ok {
			_ = workshop.Load(ledger, given) // what is of other things or no ledger is of no use
		}
	}
	made, found, err := site.Make(ctx, site.Order{
		Journal: parts.journal, Files: w.files, Findings: parts.findings, Bodies: parts.bodies, Today: o.day, For: o.who, Fits: parts.fits,
		Out: o.out, Recipe: parts.recipe,
		Photos:   &photo.Darkroom{Store: store, Journal: absolute, Progress: say.progress("pictures"), Blur: parts.blur},
		Workshop: workshop,
	})
	if err != nil {
		return report, err
	}
	found = source.Sort(append(w.findings, found...))
	if source.Count(found, source.Error) > 0 {
		return report.refused(found), nil
	}
	report = reportOf(o.out, made, found)
	report.For = string(o.who)
	kept, err := json.Marshal(report)
	if err != nil {
		return report, err
	}
	if err := store.PutLast(pages, workshop.Save(given)); err != nil {
		return report, err
	}
	return report, store.Put(parts.recipe, kept)
}

func reportOf(out string, made site.Made, found []source.Finding) siteJSON {
	return siteJSON{
		Site: out, Made: true, Pages: made.Pages, Photos: made.Photos,
		Written: made.Written, Kept: made.Kept, Removed: made.Removed, Tally: tallyOf(found),
	}
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
	given := append([]string{version, program(), theme.Hash(), day.String()}, entriesGiven(folder)...)
	return keep.NewRecipe("site", 2, given...)
}

// entriesGiven stands for the files of a journal.
func entriesGiven(folder *journal.Folder) []string {
	var given []string
	for _, e := range folder.Entries {
		if text, ok := folder.Texts[e.Path]; ok {
			sum := sha256.Sum256(text)
			given = append(given, e.Path, string(sum[:]))
		} else {
			given = append(given, e.Path, fmt.Sprint(e.Size, e.Modified.UnixNano()))
		}
	}
	return given
}

// pagesGiven stands for all that decides pages beside the records of the journal.
func pagesGiven(folder *journal.Folder, day edtf.Day) source.Sum {
	return source.Sum(keep.NewRecipe("page", 1, version, program(), theme.Hash(), day.String(), string(folder.Texts[journal.SettingsFile])))
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
