package site

import (
	"strings"
	"unicode"

	"hussif/content/journal"
)

// Pages that are not about one record.
const (
	startPath = "index.html"
	nextPath  = "next-time.html"
	tagsPath  = "tags.html"
	foundPath = "found.html"
)

// shelf is what the menu and the list page of a kind are called.
type shelf struct {
	Kind    journal.Kind
	Section string // of the menu, and the folder of the list
	Title   string
	One     string // what a page of the kind is, in a word
}

func (s shelf) path() string { return s.Section + "/index.html" }

var shelves = []shelf{
	{journal.KindBuild, "builds", "Builds", "Build"},
	{journal.KindPerson, "people", "People", "Person"},
	{journal.KindPattern, "patterns", "Patterns", "Pattern"},
	{journal.KindReference, "references", "References", "Reference"},
	{journal.KindMaterial, "materials", "Materials", "Material"},
	{journal.KindTechnique, "techniques", "Techniques", "Technique"},
	{journal.KindOccasion, "occasions", "Occasions", "Occasion"},
	{journal.KindNote, "notes", "Notes", "Note"},
}

func shelfOf(k journal.Kind) shelf {
	for _, s := range shelves {
		if s.Kind == k {
			return s
		}
	}
	panic("site: no shelf for " + string(k))
}

// pathOf returns where in the site the page of a record lies.
func pathOf(id journal.ID) string {
	name := slug(string(id))
	if !strings.Contains(name, "/") {
		name = "pages/" + name // not among the site's own pages
	}
	return name + ".html"
}

// slug makes a name that is the same on every file system and in every address:
// letters and digits in lower case, and hyphens for most of the rest.
func slug(name string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsLetter(r), unicode.IsDigit(r), unicode.Is(unicode.Mn, r):
			return unicode.ToLower(r)
		case strings.ContainsRune("/-_.", r):
			return r
		}
		return '-'
	}, name)
}

// anchor makes the name of a part of a page from words.
func anchor(prefix, words string) string {
	return prefix + "-" + strings.ReplaceAll(slug(words), "/", "-")
}

// rootFrom returns the relative way from a page to the site's top folder.
func rootFrom(path string) string { return strings.Repeat("../", strings.Count(path, "/")) }
