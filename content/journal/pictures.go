package journal

import (
	"path"

	"hussif/content/prose"
	"hussif/content/source"
)

// A Picture is a picture that a record shows, in its front matter or its text.
type Picture struct {
	Path    string // from the journal's folder
	Written string // as the maker wrote it
	Span    source.Span
	Alt     string
	Caption string
	Piece   string
	Face    Answer
	Blur    []Region
	Share   Audience
	InText  bool // shown where it stands in the text
}

// Pictures returns the pictures that a record shows, those of its front matter
// first.
func Pictures(r Record) []Picture {
	page, photos := r.Head(), photosOf(r)
	if len(photos) == 0 && len(page.Text.Pictures) == 0 {
		return nil // as most; every list asks
	}
	folder := path.Dir(page.File.Name)
	var out []Picture
	for _, p := range photos {
		out = append(out, Picture{
			Path: path.Join(folder, p.File.Text), Written: p.File.Text, Span: p.File.Span,
			Alt: p.Alt, Caption: p.Caption, Piece: p.Piece.Text, Face: p.Face, Blur: p.Blur, Share: p.Share,
		})
	}
	for _, p := range page.Text.Pictures {
		if p.Form != prose.Relative {
			continue
		}
		out = append(out, Picture{
			Path: path.Join(folder, p.To), Written: p.To, Span: p.Span,
			Alt: p.Alt, Caption: p.Title, InText: true,
		})
	}
	return out
}

func photosOf(r Record) []Photo {
	switch r := r.(type) {
	case *Build:
		return r.Photos
	case *Note:
		return r.Photos
	case *Pattern:
		return r.Photos
	case *Reference:
		return r.Photos
	case *Material:
		return r.Photos
	case *Technique:
		return r.Photos
	case *Occasion:
		return r.Photos
	}
	return nil
}
