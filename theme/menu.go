package theme

import "slices"

// A Place is an entry of the menu, on every page: the site must have a page there.
type Place struct {
	Section string // compared with [Frame.Section]
	Path    string // from the site's top folder
	Name    string
}

// FoundPath is where the page of what `check` found lies, from the site's top
// folder. The foot of each page leads there when there is something to see.
const FoundPath = "found.html"

// FeedPath is where the feed of the notes lies, from the site's top folder. The
// head of each page names it when there is one.
const FeedPath = "notes.atom"

// SearchPath is where the search page lies, from the site's top folder. The menu of
// each page leads there.
const SearchPath = "search.html"

// menuGroups are the entries of the menu: the work, what it is made from and after,
// and what was learned by it. A narrow window shows a group to the line.
func menuGroups() [][]Place {
	return [][]Place{
		{
			{"start", "index.html", "Start"},
			{"to do", "to-do.html", "To do"},
			{"builds", "builds/index.html", "Builds"},
			{"people", "people/index.html", "People"},
			{"occasions", "occasions/index.html", "Occasions"},
		},
		{
			{"patterns", "patterns/index.html", "Patterns"},
			{"materials", "materials/index.html", "Materials"},
			{"techniques", "techniques/index.html", "Techniques"},
			{"references", "references/index.html", "References"},
		},
		{
			{"next time", "next-time.html", "Next time"},
			{"decisions", "decisions.html", "Decisions"},
			{"evidence", "evidence/index.html", "Evidence"},
			{"tags", "tags.html", "Tags"},
			{"search", SearchPath, "A to Z"},
		},
	}
}

// circleGroups are those of a site that several makers share: their work, what they have
// in common, and what was learned by it.
func circleGroups() [][]Place {
	return [][]Place{
		{
			{"start", "index.html", "Start"},
			{"builds", "builds/index.html", "Builds"},
			{"makers", "makers/index.html", "Makers"},
		},
		{
			{"patterns", "patterns/index.html", "Patterns"},
			{"techniques", "techniques/index.html", "Techniques"},
			{"references", "references/index.html", "References"},
		},
		{
			{"next time", "next-time.html", "Next time"},
			{"evidence", "evidence/index.html", "Evidence"},
			{"search", SearchPath, "A to Z"},
		},
	}
}

// places returns the menu of a page in groups.
func places(f Frame) [][]Place {
	if f.Circle {
		return circleGroups()
	}
	return menuGroups()
}

// Menu returns the entries of the menu of a journal in order.
func Menu() []Place { return slices.Concat(menuGroups()...) }

// CircleMenu returns those of a site that several makers share.
func CircleMenu() []Place { return slices.Concat(circleGroups()...) }
