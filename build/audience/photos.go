package audience

import (
	"slices"

	"hussif/content/journal"
)

// A photo is what all pages together say of a picture.
type photo struct {
	refused bool // somewhere it is kept from the audience
	allowed bool // and nothing more need be said of it where it is seen
	blur    []journal.Region
}

// photos are pictures by path.
type photos map[string]*photo

// photosOf gathers what is said of pictures. What a page says that the audience does
// not see counts only against showing one.
func (s *sight) photosOf() photos {
	all := make(photos)
	for _, r := range s.full.Records() {
		for _, p := range journal.Pictures(r) {
			at := all[p.Path]
			if at == nil {
				at = new(photo)
				all[p.Path] = at
			}
			at.refused = at.refused || s.refuses(p)
			if s.seen[r] && (p.InText || s.mayField(r, "photos") && s.mayField(r, "image")) {
				at.allowed = at.allowed || s.who != journal.Public || !ofPeople(r) || p.Share != "" || p.Face == journal.No || len(p.Blur) > 0
			}
			for _, region := range p.Blur {
				if !slices.Contains(at.blur, region) {
					at.blur = append(at.blur, region)
				}
			}
		}
	}
	return all
}

// refuses reports whether a picture's own words keep it from the audience.
func (s *sight) refuses(p journal.Picture) bool {
	if p.Share != "" {
		return !s.who.MaySee(p.Share)
	}
	return p.Face == journal.Yes && len(p.Blur) == 0
}

// mayField reports whether a page lets the audience see one of its fields.
func (s *sight) mayField(r journal.Record, field string) bool {
	with := r.Head().Fields.With(field)
	return with == "" || s.who.MaySee(with)
}

// ofPeople reports whether a page tells of somebody's doings and not of a thing.
func ofPeople(r journal.Record) bool {
	switch r.Head().Kind {
	case journal.KindPerson, journal.KindBuild, journal.KindNote, journal.KindOccasion:
		return true
	}
	return false
}

// shown reports whether the audience may see a picture, where it sees the page.
func (p photos) shown(path string) bool {
	at := p[path]
	return at != nil && at.allowed && !at.refused
}
