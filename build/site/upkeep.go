package site

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"sync"

	"hussif/build/check"
	"hussif/build/keep"
	"hussif/build/output"
	"hussif/build/photo"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
)

// An Upkeep makes the site of a journal's folder, and brings it up to date again and
// again: it reads what has changed, makes the pages that asked for it, and writes
// those that came out otherwise. Its exported fields are set before the first use. It
// is for one goroutine.
type Upkeep struct {
	Files    fs.FS // the journal's folder
	Out      string
	Today    func() edtf.Day
	Photos   *photo.Darkroom
	Workshop *Workshop

	folder   *journal.Folder // as it was read last
	keeper   journal.Keeper
	checker  check.Checker
	news     journal.News    // since the workshop was shown the journal
	shown    *journal.Folder // of which the site was made
	journal  *journal.Journal
	pictures map[string][]photo.Picture // of that
	photos   int
	order    []string // the site's pages as they were written
	session  *output.Session
}

// An Outcome says what came of bringing a site up to date.
type Outcome struct {
	Made
	Findings []source.Finding
	Sound    bool // no error is among them; where one is the site stays as it was
}

// Bring brings the site up to date with some folders of the journal, each without
// what lies below it, or with all of it, as it does the first time. It errs like
// [journal.Read] and [output.Write].
func (u *Upkeep) Bring(ctx context.Context, folders []string, all bool) (Outcome, error) {
	folder, err := u.read(folders, all)
	if err != nil {
		return Outcome{}, err
	}
	u.folder = folder
	var bodies *Bodies
	var update journal.Update
	if u.shown == nil {
		bodies = new(Bodies)
		update = u.keeper.Update(folder, bodies.See)
	} else {
		update = u.keeper.Update(folder, nil)
	}
	u.news.Add(update.News)
	check := sync.OnceValue(func() []source.Finding {
		return u.checker.Run(update.Journal, u.Files, update.Findings, update.Again)
	})
	go check()    // while the workshop works out what follows
	defer check() // nobody may change the journal while it is looked through
	out := Outcome{}
	if source.Count(update.Findings, source.Error) > 0 {
		out.Findings = check()
		return out, nil
	}
	if u.journal != update.Journal || !samePictures(u.shown, folder) {
		pictures, made, faults, err := develop(ctx, Order{Journal: update.Journal, Files: u.Files, Photos: u.Photos})
		if err != nil {
			return out, err
		}
		if len(faults) > 0 {
			out.Findings = source.Sort(append(check(), faults...))
			return out, nil
		}
		u.journal, u.pictures, u.photos = update.Journal, pictures, made.Photos
	}
	u.Workshop.Show(Input{
		Journal: update.Journal, Await: check, Bodies: bodies, Pictures: u.pictures, Today: u.Today(), Since: &u.news,
	})
	u.news = journal.News{}
	if out.Findings = check(); source.Count(out.Findings, source.Error) > 0 {
		return out, nil
	}
	out.Sound = true
	out.Pages, out.Photos = u.Workshop.Pages(), u.photos
	out.Report, err = u.write(ctx)
	if err != nil {
		return out, fmt.Errorf("writing the site: %w", err)
	}
	u.shown = folder
	return out, nil
}

func (u *Upkeep) read(folders []string, all bool) (*journal.Folder, error) {
	if all || u.folder == nil {
		return journal.Read(u.Files)
	}
	return u.folder.Again(u.Files, folders)
}

// samePictures reports whether two folders hold the same files but for their texts.
func samePictures(a, b *journal.Folder) bool {
	others := func(f *journal.Folder) []source.Entry {
		var out []source.Entry
		for _, e := range f.Entries {
			if _, ok := f.Texts[e.Path]; !ok {
				out = append(out, e)
			}
		}
		return out
	}
	return slices.Equal(others(a), others(b))
}

// write writes the pages that are stale, and only where there are others than before
// looks at the whole folder.
func (u *Upkeep) write(ctx context.Context) (output.Report, error) {
	files := u.Workshop.Files()
	if u.session != nil && slices.Equal(u.order, u.Workshop.order) && samePictures(u.shown, u.folder) {
		stale := slices.DeleteFunc(slices.Clone(files), func(f output.File) bool { return f.Sum != keep.Sum{} })
		report, err := u.session.Put(ctx, stale)
		if err == nil {
			report.Kept += len(files) - len(stale)
			return report, nil
		}
		if !errors.Is(err, output.ErrOther) {
			return report, errors.Join(err, u.leave())
		}
	}
	if err := u.leave(); err != nil {
		return output.Report{}, err
	}
	report, err := output.Write(ctx, u.Out, output.Site{Files: Whole(files, u.pictures)})
	if err != nil {
		return report, err
	}
	u.order = u.Workshop.order
	u.session, err = output.Hold(ctx, u.Out)
	return report, err
}

// leave ends a session: what was made but not written is found by looking at the whole
// folder the next time.
func (u *Upkeep) leave() error {
	if u.session == nil {
		return nil
	}
	session := u.session
	u.session = nil
	return session.Leave()
}

// Folder returns the journal's folder as the site has it now; nil before there is one.
func (u *Upkeep) Folder() *journal.Folder { return u.shown }

// Close ends the upkeep. The recipe stands for the site as it is, for another run to
// know.
func (u *Upkeep) Close(ctx context.Context, recipe keep.Recipe) error {
	if u.session == nil {
		return nil
	}
	return u.session.Close(ctx, recipe)
}
