package theme

// A menuPlace is what the menu of a page depends on.
type menuPlace struct {
	root, section string
	circle        bool
}

// Policy is the element by which every page refuses all that does not come from
// its own site, and every script. [SearchPolicy] stands in its place on the search
// page, which alone has scripts: those of the site.
const (
	Policy       = `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; ` + ownOnly + `">`
	SearchPolicy = `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'; ` + ownOnly + `">`

	ownOnly = `img-src 'self' data:; style-src 'self'; font-src 'self'; base-uri 'none'; form-action 'self'`
)

// top prints a page down to its title.
func (p *printer) top(f Frame) { p.topWith(f, Policy, nil) }

// topWith prints the top of a page that has a policy and scripts of its own.
func (p *printer) topWith(f Frame, policy string, scripts []string) {
	p.WriteString(`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
` + policy + `
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
`)
	p.within(`<meta name="description" content="`, f.About, "\">\n")
	p.WriteString("<title>")
	p.text(f.Title)
	if f.Title != f.Site {
		p.WriteString(" · ")
		p.text(f.Site)
	}
	p.WriteString("</title>\n<link rel=\"stylesheet\" href=\"")
	p.text(address(f.Root))
	p.WriteString("theme/style.css\">\n")
	if f.Feed {
		p.WriteString(`<link rel="alternate" type="application/atom+xml" title="`)
		p.text(f.Site)
		p.WriteString(`: notes" href="`)
		p.text(address(f.Root + FeedPath))
		p.WriteString("\">\n")
	}
	p.told(f)
	for _, script := range scripts {
		p.WriteString(`<script defer src="`)
		p.text(address(f.Root + script))
		p.WriteString("\"></script>\n")
	}
	p.WriteString(`</head>
<body>
<a class="skip" href="#section-page">Skip to the page</a>
<header class="masthead">
<p class="journal"><a href="`)
	p.text(address(f.Root))
	p.WriteString(`index.html">`)
	p.text(f.Site)
	p.WriteString("</a></p>\n")
	p.menu(f)
	p.WriteString("</header>\n<main id=\"section-page\" tabindex=\"-1\">\n<div class=\"page-head\">\n")
	if len(f.Crumbs) > 0 {
		p.WriteString("<nav class=\"crumbs\" aria-label=\"Way here\">\n<ol>")
		for _, crumb := range f.Crumbs {
			p.WriteString("<li>")
			p.link(crumb)
			p.WriteString("</li>")
		}
		p.WriteString("</ol>\n</nav>\n")
	}
	p.within(`<p class="kind">`, f.Kind, "</p>\n")
	p.WriteString("<h1>")
	p.text(f.Title)
	p.WriteString("</h1>\n</div>\n")
}

// menu prints the menu as it stands on a page. It is kept, since all pages of one
// folder share it.
func (p *printer) menu(f Frame) {
	place := menuPlace{f.Root, f.Section, f.Circle}
	if menu, ok := p.theme.menus.Load(place); ok {
		p.WriteString(menu.(string))
		return
	}
	start := p.Len()
	p.template("menu.html", f)
	p.theme.menus.Store(place, string(p.Bytes()[start:]))
}

// bottom prints what ends a page.
func (p *printer) bottom(f Frame) {
	p.WriteString("</main>\n<footer class=\"colophon\">\n<p>")
	p.text(f.Site)
	if f.Circle {
		p.WriteString(`, put together with hussif from what its makers share.`)
	} else {
		p.WriteString(`, a journal kept with hussif.`)
	}
	if !f.Shared {
		p.WriteString(` <a href="`)
		p.text(address(f.Root + FoundPath))
		p.WriteString("\">What check found</a>")
	}
	p.WriteString("</p>\n</footer>\n</body>\n</html>\n")
}
