package circle

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"io/fs"
	"slices"

	"hussif/build/address"
	"hussif/build/keep"
	"hussif/build/output"
	"hussif/build/photo"
	"hussif/build/search"
	"hussif/build/site"
	"hussif/content/edtf"
	"hussif/content/near"
	"hussif/content/source"
	"hussif/theme"
)

// An Order says what site to make, of whose logs, and where to.
type Order struct {
	Members  []Member
	Title    string // of the site
	Today    edtf.Day
	Out      string // the site's folder
	Store    *keep.Store
	Progress func(done, total int) // of pictures, or nil
}

// A Made says what came of an order.
type Made struct {
	output.Report
	Makers, Builds, Pages, Photos int
}

// Make makes the site of a circle. Findings are warnings of pictures that are left out:
// a log names them, and there are none, or none that can be shown. An error is trouble
// with the disk, or says which pages could not be made.
func Make(ctx context.Context, o Order) (Made, []source.Finding, error) {
	b := &book{Pool: Gather(o.Members), title: o.Title, today: o.Today}
	made := Made{Makers: len(b.Makers), Builds: len(b.Builds)}
	found, err := b.develop(ctx, o)
	if err != nil {
		return made, nil, err
	}
	look, err := theme.New()
	if err != nil {
		return made, nil, err
	}
	b.nameFeatures()
	b.listed = b.list()
	var files []output.File
	for _, p := range b.pages() {
		files = append(files, output.File{Path: p.path, Content: func(w io.Writer) error { return look.Render(w, p.view(b)) }})
	}
	made.Pages = len(files)
	parts := b.parts()
	for i, pages := range parts {
		files = append(files, output.File{Path: address.SearchPart(i+1, len(parts)), Content: func(w io.Writer) error {
			text, err := search.Script(pages)
			if err == nil {
				_, err = w.Write(text)
			}
			return err
		}})
	}
	pictures := make(map[string][]photo.Picture)
	for m, hers := range b.pictures {
		for name, copies := range hers {
			pictures[m.Path+" "+name] = copies
		}
		made.Photos += len(hers)
	}
	slices.SortFunc(files, func(a, b output.File) int { return cmp.Compare(a.Path, b.Path) })
	made.Report, err = output.Write(ctx, o.Out, output.Site{Files: site.Whole(files, pictures), For: "members of a circle"})
	if err != nil {
		return made, nil, fmt.Errorf("writing the site: %w", err)
	}
	return made, source.Sort(found), nil
}

// nameFeatures gives the page of each feature a path.
func (b *book) nameFeatures() {
	paths := newPaths()
	b.features = make(map[string]string)
	for _, f := range b.Evidence.Features {
		b.features[near.Folded(f.Name)] = paths.new("evidence", f.Name)
	}
}

// develop has every picture of the logs made ready: decoded, freed of all that is no
// picture, and scaled.
func (b *book) develop(ctx context.Context, o Order) ([]source.Finding, error) {
	var found []source.Finding
	b.pictures = make(map[*Maker]map[string][]photo.Picture)
	for _, m := range b.Makers {
		leftOut := func(name, why string) {
			file, _ := source.Load(m.From+"/"+name, nil)
			f := source.Found(file.Whole(), source.Warning, LeftOut, "%s", why)
			f.Help = "the site is made without it"
			found = append(found, f)
		}
		var names []string
		seen := make(map[string]bool)
		for _, build := range m.Builds {
			for _, p := range build.Photos {
				if seen[p.File] {
					continue
				}
				seen[p.File] = true
				if why := unfit(m.Files, p.File); why != "" {
					leftOut(p.File, why)
				} else {
					names = append(names, p.File)
				}
			}
		}
		room := &photo.Darkroom{Store: o.Store, Progress: o.Progress}
		results, err := room.Make(ctx, m.Files, names)
		if err != nil {
			return nil, fmt.Errorf("making the pictures of %s ready: %w", m.Name, err)
		}
		b.pictures[m] = make(map[string][]photo.Picture)
		for _, r := range results {
			if r.Fault != nil {
				leftOut(r.Name, r.Fault.Reason)
				continue
			}
			b.pictures[m][r.Name] = r.Pictures
		}
	}
	return found, nil
}

// mostPixels is how many a picture of a log may have. Those of a site are made smaller.
const mostPixels = 12_000_000

// unfit says why a picture cannot be shown; "" where it may be tried.
func unfit(files fs.FS, name string) string {
	info, err := fs.Stat(files, name)
	switch {
	case err != nil || !info.Mode().IsRegular():
		return "the log names this picture, and there is no such file"
	case info.Size() > mostPicture:
		return fmt.Sprintf("this picture has more than %d MB", mostPicture>>20)
	}
	look, fault, err := photo.Look(files, name)
	switch {
	case fault != nil:
		return fault.Reason
	case err != nil:
		return err.Error()
	case look.Width*look.Height > mostPixels:
		return fmt.Sprintf("this picture has %d by %d pixels, and no site has any so large", look.Width, look.Height)
	}
	return ""
}
