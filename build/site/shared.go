package site

import "hussif/theme"

// shared reports whether the site is for others. It then has no sheets for work on a
// garment and no wardrobes: without the measures that others may not see they would
// say of much that it is not known.
func (b *book) shared() bool { return b.For != "" }

// empty returns what an empty page says: to the maker, how to fill it.
func (b *book) empty(words string) string {
	if b.shared() {
		return "Nothing here."
	}
	return words
}

// sheets returns links to the maker's sheets of a record, and to those that the site
// has for anybody.
func (b *book) sheets(own, all []theme.Link) []theme.Link {
	if b.shared() {
		return all
	}
	return append(own, all...)
}
