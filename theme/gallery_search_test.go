package theme

func searchPage() *Search {
	entry := func(href, text, note string) IndexEntry {
		return IndexEntry{Link: Link{Href: href, Text: text, Note: note}}
	}
	return &Search{
		Frame: frame("search.html", "Search", "search"),
		Parts: []string{"search/words.js"},
		Letters: []LetterGroup{
			{Letter: "Figures", Anchor: "letter-figures", Entries: []IndexEntry{entry("tags.html", "1780s", "tag")}},
			{Letter: "F", Anchor: "letter-f", Entries: []IndexEntry{entry("builds/striped-jacket/2026-02-14.html", "First fitting", "14 February 2026, Striped linen jacket")}},
			{Letter: "J", Anchor: "letter-j", Entries: []IndexEntry{{Link: Link{Text: "Jacket"}, Pages: []Link{link("builds/striped-jacket/index.html", "Striped linen jacket"), link("builds/first-jacket/index.html", "First jacket")}}}},
			{Letter: "P", Anchor: "letter-p", Entries: []IndexEntry{entry("evidence/piped-armhole.html", "Piped armhole", "feature")}},
			{Letter: "U", Anchor: "letter-u", Entries: []IndexEntry{entry("long/Überrockärmelaufschlagsknopfleiste.html", "Überrockärmelaufschlagsknopfleistenunterfütterungsstoffrest", "build")}},
		},
		Beside: []Link{link("notes/of.2025.html", "Notes of 2025")},
	}
}
