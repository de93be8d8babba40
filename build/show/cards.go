package show

import (
	"slices"

	"hussif/theme"
)

// Under puts a card below a heading, which is the last where it is not there yet.
func Under(groups []theme.CardGroup, title string, c theme.Card) []theme.CardGroup {
	i := slices.IndexFunc(groups, func(g theme.CardGroup) bool { return g.Title == title })
	if i < 0 {
		i = len(groups)
		groups = append(groups, theme.CardGroup{Title: title})
	}
	groups[i].Cards = append(groups[i].Cards, c)
	return groups
}
