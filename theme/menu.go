package theme

// A Place is an entry of the menu, on every page: the site must have a page there.
type Place struct {
	Section string // compared with [Frame.Section]
	Path    string // from the site's top folder
	Name    string
}

// FoundPath is where the page of what `check` found lies, from the site's top
// folder. The foot of each page leads there when there is something to see.
const FoundPath = "found.html"

// Menu returns the entries of the menu in order.
func Menu() []Place {
	return []Place{
		{"start", "index.html", "Start"},
		{"builds", "builds/index.html", "Builds"},
		{"people", "people/index.html", "People"},
		{"patterns", "patterns/index.html", "Patterns"},
		{"references", "references/index.html", "References"},
		{"materials", "materials/index.html", "Materials"},
		{"techniques", "techniques/index.html", "Techniques"},
		{"occasions", "occasions/index.html", "Occasions"},
		{"next time", "next-time.html", "Next time"},
		{"tags", "tags.html", "Tags"},
	}
}
