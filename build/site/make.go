package site

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"io/fs"
	"slices"

	"hussif/build/audience"
	"hussif/build/check"
	"hussif/build/keep"
	"hussif/build/output"
	"hussif/build/photo"
	"hussif/build/show"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
	"hussif/theme"
)

// An Order says what site to make, of what, and where to.
type Order struct {
	Journal  *journal.Journal
	Files    fs.FS            // the journal's folder
	Findings []source.Finding // of check; none of them an error
	Bodies   *Bodies          // seen while the journal was read, or nil
	Today    edtf.Day
	For      journal.Audience            // whom the site is for, of whose journal this is; "" for its maker
	Fits     map[journal.ID]audience.Fit // of builds whose measures others do not see; nil for the maker
	Out      string                      // the site's folder
	Recipe   keep.Recipe                 // stands for all of the above but Out, for another run to know
	Photos   *photo.Darkroom
	Workshop *Workshop // nil for one that is used once
}

// A Made says what came of an order.
type Made struct {
	output.Report
	Pages  int
	Photos int // of the journal, each counted once however many copies it has
}

// Make makes a site. Findings are what kept it from being made: pictures that
// turned out to be damaged; then nothing is written.
// An error is trouble with the disk, or says which pages could not be made.
func Make(ctx context.Context, o Order) (Made, []source.Finding, error) {
	pictures, made, faults, err := develop(ctx, o)
	if err != nil {
		return made, nil, err
	}
	if len(faults) > 0 {
		return made, source.Sort(faults), nil
	}
	if o.Workshop == nil {
		if o.Workshop, err = NewWorkshop(); err != nil {
			return made, nil, err
		}
	}
	o.Workshop.Show(Input{Journal: o.Journal, Findings: o.Findings, Bodies: o.Bodies, Pictures: pictures, Today: o.Today, For: o.For, Fits: o.Fits})
	files := Whole(o.Workshop.Files(), pictures)
	made.Pages = o.Workshop.Pages()
	made.Report, err = output.Write(ctx, o.Out, output.Site{Recipe: o.Recipe, Files: files, For: string(o.For)})
	if err != nil {
		return made, nil, fmt.Errorf("writing the site: %w", err)
	}
	return made, nil, nil
}

// develop has every picture of the journal made ready, each once.
func develop(ctx context.Context, o Order) (map[string][]photo.Picture, Made, []source.Finding, error) {
	places := make(map[string][]source.Span)
	for _, r := range o.Journal.Records() {
		for _, p := range journal.Pictures(r) {
			if o.Journal.Holds(p.Path) { // check tells of those that are missing
				places[p.Path] = append(places[p.Path], p.Span)
			}
		}
	}
	names := make([]string, 0, len(places))
	for name := range places {
		names = append(names, name)
	}
	slices.Sort(names)
	results, err := o.Photos.Make(ctx, o.Files, names)
	if err != nil {
		return nil, Made{}, nil, fmt.Errorf("making the pictures ready: %w", err)
	}
	var made Made
	var findings []source.Finding
	pictures := make(map[string][]photo.Picture, len(results))
	for _, r := range results {
		if r.Fault != nil {
			for _, at := range places[r.Name] {
				findings = append(findings, check.BadPicture(at, r.Fault))
			}
			continue
		}
		pictures[r.Name] = r.Pictures
		made.Photos++
	}
	return pictures, made, findings, nil
}

// Whole returns the pages of a site with all else that it holds: what the theme has, and
// scaled pictures.
func Whole(pages []output.File, pictures map[string][]photo.Picture) []output.File {
	return slices.Concat(assets(), pages, copies(pictures))
}

func assets() []output.File {
	var files []output.File
	for _, a := range theme.Assets() {
		files = append(files, output.File{Path: a.Path, Content: func(w io.Writer) error {
			_, err := w.Write(a.Data)
			return err
		}})
	}
	return files
}

// copies lists the scaled pictures, each once: two photos of equal bytes have the
// same copies.
func copies(pictures map[string][]photo.Picture) []output.File {
	var files []output.File
	for _, list := range pictures {
		for _, p := range list {
			files = append(files, output.File{Path: show.PicturePath(p), From: p.Path, Sum: p.Sum})
		}
	}
	slices.SortFunc(files, func(a, b output.File) int { return cmp.Compare(a.Path, b.Path) })
	return slices.CompactFunc(files, func(a, b output.File) bool { return a.Path == b.Path })
}
