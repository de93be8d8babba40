package site

import (
	"cmp"
	"path"
	"slices"

	"hussif/build/address"
	"hussif/build/show"
	"hussif/content/journal"
	"hussif/content/prose"
	"hussif/theme"
)

// A desk makes the links, pictures and text of one page, which know where the
// page lies.
type desk struct {
	*book
	path string
	root string
}

func (b *book) at(path string) desk { return desk{book: b, path: path, root: address.Root(path)} }

// to links to a record by its title.
func (d desk) to(r journal.Record) theme.Link {
	return theme.Link{Href: d.href(r, ""), Text: r.Head().Title}
}

func (d desk) href(r journal.Record, anchor string) string {
	root, target := d.root, d.facts.paths[r.Head().ID]
	if target == d.path {
		root, target = "", ""
	}
	if anchor == "" {
		return cmp.Or(root+target, "#")
	}
	anchor, _ = journal.Anchor(r, anchor)
	return root + target + "#" + anchor
}

// ref links to what a field names. A name that leads nowhere is shown as it was
// written; check has told of it.
func (d desk) ref(ref journal.Ref, kinds ...journal.Kind) theme.Link {
	r, ok := d.Journal.Named(ref.To, kinds...)
	if !ok {
		return theme.Link{Text: ref.To}
	}
	return theme.Link{Href: d.href(r, ref.Anchor), Text: r.Head().Title}
}

func (d desk) refs(refs []journal.Ref, kinds ...journal.Kind) []theme.Link {
	var links []theme.Link
	for _, ref := range refs {
		links = append(links, d.ref(ref, kinds...))
	}
	return links
}

// ids links to records; those of several lists stand together.
func (d desk) ids(lists ...[]journal.ID) []theme.Link {
	n := 0
	for _, ids := range lists {
		n += len(ids)
	}
	links := make([]theme.Link, 0, n)
	for _, ids := range lists {
		for _, id := range ids {
			if r, ok := d.Journal.Named(string(id)); ok {
				links = append(links, d.to(r))
			}
		}
	}
	return links
}

func (d desk) tagLinks(tags []journal.Word) []theme.Link {
	var links []theme.Link
	for _, t := range tags {
		links = append(links, theme.Link{Href: d.root + tagPath(t.Text), Text: t.Text})
	}
	return links
}

// A linker answers for the links and pictures in a record's text.
type linker struct {
	desk
	record journal.Record
}

// Tie implements [theme.Linker].
func (l linker) Tie(link prose.Link) (href, text string, ok bool) {
	var r journal.Record
	if link.To == "" {
		anchor, _ := journal.Anchor(l.record, link.Anchor)
		return "#" + anchor, cmp.Or(link.Text, link.Anchor), true
	}
	if link.Form == prose.Relative {
		r, ok = l.Journal.FileOf(l.record.Head().File, link.To)
	} else {
		r, ok = l.Journal.Named(link.To)
	}
	if !ok {
		return "", cmp.Or(link.Text, link.To), false
	}
	return l.href(r, link.Anchor), cmp.Or(link.Text, r.Head().Title), true
}

// Answer implements [theme.Linker].
func (l linker) Answer(anchor string) (words string, link theme.Link) {
	id := l.record.Head().ID
	for _, lesson := range l.lessonsFrom(id) {
		if lesson.Anchor == anchor {
			return l.answered(lesson)
		}
	}
	for _, c := range l.decisionsFor(id) {
		if o, ok := c.Outcome(); ok && c.From == id && c.Anchor == anchor {
			if from, ok := l.Journal.Named(string(o.From)); ok {
				return string(o.How) + ", says", l.to(from)
			}
		}
	}
	return "", theme.Link{}
}

// Picture implements [theme.Linker].
func (l linker) Picture(p prose.Picture) (theme.Photo, bool) {
	photo := l.photo(journal.Picture{
		Path: path.Join(path.Dir(l.record.Head().File.Name), p.To), Alt: p.Alt, Caption: p.Title,
	})
	if photo == nil {
		return theme.Photo{}, false
	}
	return *photo, true
}

// photo returns a picture with its scaled copies, or nil where there are none.
func (d desk) photo(p journal.Picture) *theme.Photo {
	photo := show.Photo(d.root, d.picturesOf(p.Path))
	if photo != nil {
		photo.Alt, photo.Caption, photo.Piece = altOf(p), p.Caption, p.Piece
	}
	return photo
}

func altOf(p journal.Picture) string { return cmp.Or(p.Alt, p.Caption) }

// photos returns the pictures of a record's front matter.
func (d desk) photos(r journal.Record) []theme.Photo {
	var out []theme.Photo
	for _, p := range journal.Pictures(r) {
		if photo := d.photo(p); photo != nil && !p.InText {
			out = append(out, *photo)
		}
	}
	return out
}

// opener returns the picture that a record's page opens with: its face, unless
// the text shows pictures of its own.
func (d desk) opener(r journal.Record) *theme.Photo {
	if len(r.Head().Text.Pictures) > 0 {
		return nil
	}
	return d.face(r)
}

// face returns the picture that stands for a record in lists: its own first one,
// or for a build the newest one of its notes.
func (d desk) face(r journal.Record) *theme.Photo {
	if p, ok := d.facing(r); ok {
		return d.photo(p)
	}
	return nil
}

func (d desk) facing(r journal.Record) (journal.Picture, bool) {
	for _, p := range journal.Pictures(r) {
		if len(d.picturesOf(p.Path)) > 0 {
			return p, true
		}
	}
	if b, ok := r.(*journal.Build); ok {
		for _, n := range slices.Backward(b.Notes) {
			if p, ok := d.facing(n); ok {
				return p, true
			}
		}
	}
	return journal.Picture{}, false
}
