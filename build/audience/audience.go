package audience

import (
	"fmt"
	"maps"
	"slices"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"

	"github.com/yuin/goldmark/ast"
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
// Each record of the smaller journal is shown to see, which may be nil, with the tree of
// its text.
func For(j *journal.Journal, who journal.Audience, day edtf.Day, see func(journal.Record, ast.Node)) (*Share, error) {
	s := newSight(j, who)
	share := &Share{Who: who, Fits: s.fits(day), Blur: make(Blur)}
	// The second time it is known which parts of pages are left to link to.
	s.fill(share)
	s.left, _ = share.Folder.Journal(nil)
	s.fill(share)
	left, findings := share.Folder.Journal(see)
	if i := slices.IndexFunc(findings, func(f source.Finding) bool { return f.Level == source.Error }); i >= 0 {
		return nil, fmt.Errorf("what the %s may see of the journal cannot be put together, by a mistake in hussif: %s: %s", who, findings[i].Span, findings[i].Text)
	}
	share.Journal = left
	return share, nil
}

// fill puts the files together that are left.
func (s *sight) fill(share *Share) {
	share.Hidden, share.Cut = nil, nil
	texts := map[string][]byte{journal.SettingsFile: s.settings()}
	pictures := make(map[string]bool)
	for _, r := range s.full.Records() {
		if !s.seen[r] {
			share.Hidden = append(share.Hidden, r)
			continue
		}
		text, whole := s.page(r)
		if !whole {
			share.Cut = append(share.Cut, r)
		}
		texts[r.Head().File.Name] = text
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
