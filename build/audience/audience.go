package audience

import (
	"fmt"
	"maps"
	"runtime"
	"slices"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"

	"golang.org/x/sync/errgroup"
)

// A Share is what one audience may see of a journal.
type Share struct {
	Who     journal.Audience
	Folder  *journal.Folder  // of the smaller journal
	Journal *journal.Journal // which it is
	Fits    map[journal.ID]Fit
	Blur    Blur             // what is to be made unsharp of the pictures in it
	Hidden  []journal.Record // of the whole journal, by ID
	Cut     []journal.Record // whose text is left out, since it could not be parted from what is private in it
}

// Blur is which regions of a picture are to be made unsharp, by its path.
type Blur map[string][]journal.Region

// For returns what an audience may see of a journal on a day. The journal must have no
// errors. An error says that what is left is no sound journal, which is a fault of ours.
func For(j *journal.Journal, who journal.Audience, day edtf.Day) (*Share, error) {
	s := newSight(j, who)
	share := &Share{Who: who, Fits: s.fits(day), Blur: make(Blur)}
	// The second time it is known which parts of pages are left to link to.
	var keeper journal.Keeper
	s.fill(share)
	s.left = keeper.Update(share.Folder, nil).Journal
	s.fill(share)
	left := keeper.Update(share.Folder, nil)
	if i := slices.IndexFunc(left.Findings, func(f source.Finding) bool { return f.Level == source.Error }); i >= 0 {
		at := left.Findings[i]
		return nil, fmt.Errorf("what the %s may see of the journal cannot be put together, by a mistake in hussif: %s: %s", who, at.Span, at.Text)
	}
	share.Journal = left.Journal
	return share, nil
}

// A written page is the file of a page as the audience may read it.
type written struct {
	text  []byte
	whole bool // but for what is hidden in it
	asked bool // it depends on which parts of other pages are left
}

// write writes the files of the records that are seen, on as many workers as there are
// processors. Of those that were written before only those are written again that asked
// what is left.
func (s *sight) write() {
	if s.pages == nil {
		s.pages = make([]written, len(s.full.Records()))
	}
	var group errgroup.Group
	group.SetLimit(runtime.GOMAXPROCS(0))
	for i, r := range s.full.Records() {
		page := &s.pages[i]
		if !s.seen[r] || page.text != nil && !page.asked {
			continue
		}
		group.Go(func() error {
			one := *s // to itself, for what it asks
			page.text, page.whole = one.page(r)
			page.asked = one.asked
			return nil
		})
	}
	_ = group.Wait() // nothing fails
}

// fill puts the files together that are left.
func (s *sight) fill(share *Share) {
	share.Hidden, share.Cut = nil, nil
	texts := map[string][]byte{journal.SettingsFile: s.settings()}
	pictures := make(map[string]bool)
	s.write()
	for i, r := range s.full.Records() {
		if !s.seen[r] {
			share.Hidden = append(share.Hidden, r)
			continue
		}
		if !s.pages[i].whole {
			share.Cut = append(share.Cut, r)
		}
		texts[r.Head().File.Name] = s.pages[i].text
	}
	if s.left != nil {
		for _, r := range s.left.Records() {
			for _, p := range journal.Pictures(r) {
				pictures[p.Path] = true
			}
		}
	}
	var entries []source.Entry
	for _, name := range slices.Sorted(maps.Keys(texts)) {
		entries = append(entries, source.Entry{Path: name, Size: int64(len(texts[name]))})
	}
	for _, name := range slices.Sorted(maps.Keys(pictures)) {
		if s.full.Holds(name) {
			entries = append(entries, s.full.Entry(name))
		}
		if regions := s.photos[name].blur; len(regions) > 0 {
			share.Blur[name] = regions
		}
	}
	slices.SortFunc(entries, func(a, b source.Entry) int { return compare(a.Path, b.Path) })
	share.Folder = &journal.Folder{Entries: entries, Texts: texts}
}
