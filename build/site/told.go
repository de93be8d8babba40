package site

import (
	"strings"

	"hussif/build/address"
	"hussif/build/show"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/theme"
)

// frameOf returns what stands round the page of a record, with what programs are told
// of it: how its text begins, its face and its day, all of which the page shows.
func (d desk) frameOf(r journal.Record, kind, section string, crumbs ...theme.Link) theme.Frame {
	f := d.frame(d.path, r.Head().Title, kind, section, crumbs...)
	f.About = d.opening(r)
	f.Face = d.faceOf(r)
	switch r := r.(type) {
	case *journal.Note:
		f.Day = isoOf(r.Date)
	case *journal.Occasion:
		f.Event = &theme.Event{From: isoOf(r.Date), Until: isoOf(r.Until), Place: r.Place}
	}
	return f
}

// faceOf returns the largest copy of a record's face. It is nil where there is none,
// and where somebody can be recognised: what is shown with a pasted link goes further
// than the page.
func (d desk) faceOf(r journal.Record) *theme.Face {
	p, ok := d.facing(r)
	if !ok || p.Face == journal.Yes && len(p.Blur) == 0 {
		return nil
	}
	copies := d.picturesOf(p.Path)
	largest := copies[len(copies)-1]
	path := show.PicturePath(largest)
	face := &theme.Face{Src: d.onTheWeb(path), Alt: altOf(p), Width: largest.Width, Height: largest.Height}
	if face.Src == "" {
		face.Src = d.root + path
	}
	return face
}

// onTheWeb returns the full address of a file of the site; empty where the journal
// does not say where the site is.
func (b *book) onTheWeb(path string) string {
	base := string(b.Journal.Settings.Address)
	if base == "" {
		return ""
	}
	if path == address.Start {
		path = ""
	}
	return strings.TrimSuffix(base, "/") + "/" + path
}

func isoOf(d edtf.Day) string {
	if d == 0 {
		return ""
	}
	return d.String()
}
