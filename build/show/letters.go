package show

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"hussif/build/address"
	"hussif/build/search"
	"hussif/theme"
)

// Letters sorts entries under their first letters. What begins with none comes first.
func Letters(entries []theme.IndexEntry) []theme.LetterGroup {
	slices.SortFunc(entries, func(a, b theme.IndexEntry) int {
		return cmp.Or(
			cmp.Compare(letterOf(a.Link.Text), letterOf(b.Link.Text)),
			cmp.Compare(search.Fold(a.Link.Text), search.Fold(b.Link.Text)),
			cmp.Compare(a.Link.Text, b.Link.Text),
			cmp.Compare(a.Link.Note, b.Link.Note),
			cmp.Compare(a.Link.Href, b.Link.Href),
		)
	})
	var groups []theme.LetterGroup
	for _, e := range entries {
		letter := letterOf(e.Link.Text)
		if letter == "" {
			letter = "Figures"
		}
		if len(groups) == 0 || groups[len(groups)-1].Letter != letter {
			groups = append(groups, theme.LetterGroup{Letter: letter, Anchor: address.Anchor("letter", letter)})
		}
		last := &groups[len(groups)-1]
		last.Entries = append(last.Entries, e)
	}
	return groups
}

// letterOf returns the letter under which a title stands; none for a figure or mark.
func letterOf(title string) string {
	first, _ := utf8.DecodeRuneInString(strings.TrimSpace(search.Fold(title)))
	if !unicode.IsLetter(first) {
		return ""
	}
	return string(unicode.ToUpper(first))
}
