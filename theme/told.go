package theme

import "encoding/json"

// A Face is the picture that stands for a page where a link to it is pasted.
type Face struct {
	Src           string // relative to the page, or on the web where that is known
	Alt           string
	Width, Height int // in pixels
}

// An Event is an occasion, as programs are told of it. Days are of ISO 8601.
type Event struct {
	From  string
	Until string // the last day; may be empty
	Place string // may be empty
}

// told prints what programs are told of a page: those of a chat into which a link to
// it is pasted (The Open Graph protocol, ogp.me), and those that look for data in
// pages (schema.org, as JSON-LD 1.1). It is nothing but what the page shows.
func (p *printer) told(f Frame) {
	property := func(name, content string) {
		if content != "" {
			p.WriteString(`<meta property="` + name + `"`)
			p.attr("content", content)
			p.WriteString(">\n")
		}
	}
	property("og:title", f.Title)
	property("og:type", "website")
	property("og:site_name", f.Site)
	property("og:description", f.About)
	property("og:url", address(f.URL))
	if f.Face != nil {
		property("og:image", address(f.Face.Src))
		property("og:image:alt", f.Face.Alt)
		p.WriteString(`<meta property="og:image:width" content="`)
		p.number(f.Face.Width)
		p.WriteString("\">\n<meta property=\"og:image:height\" content=\"")
		p.number(f.Face.Height)
		p.WriteString("\">\n")
	}
	data, err := json.Marshal(f.data()) // which leaves no mark in it by which it could end
	if err != nil {
		panic(err) // it is text and numbers
	}
	// A block of data: it is not run, so that no policy speaks of it (HTML Living
	// Standard, "Data blocks").
	p.WriteString(`<script type="application/ld+json">`)
	p.Write(data)
	p.WriteString("</script>\n")
}

// A datum is a thing in the words of schema.org.
type datum struct {
	Context     string  `json:"@context,omitempty"`
	Type        string  `json:"@type"`
	Name        string  `json:"name,omitempty"`
	URL         string  `json:"url,omitempty"`
	Description string  `json:"description,omitempty"`
	Image       string  `json:"image,omitempty"`
	Created     string  `json:"dateCreated,omitempty"`
	From        string  `json:"startDate,omitempty"`
	Until       string  `json:"endDate,omitempty"`
	Location    *datum  `json:"location,omitempty"`
	About       *datum  `json:"mainEntity,omitempty"`
	PartOf      *datum  `json:"isPartOf,omitempty"`
	Breadcrumb  *datum  `json:"breadcrumb,omitempty"`
	Items       []datum `json:"itemListElement,omitempty"`
	Position    int     `json:"position,omitempty"`
	Item        string  `json:"item,omitempty"`
}

func (f Frame) data() datum {
	page := datum{
		Context: "https://schema.org", Type: "WebPage", Name: f.Title, Description: f.About, Created: f.Day,
		PartOf: &datum{Type: "WebSite", Name: f.Site},
	}
	if f.URL != "" {
		page.URL = address(f.URL)
	}
	if f.Face != nil {
		page.Image = address(f.Face.Src)
	}
	if f.Event != nil {
		page.About = &datum{Type: "Event", Name: f.Title, From: f.Event.From, Until: f.Event.Until}
		if f.Event.Place != "" {
			page.About.Location = &datum{Type: "Place", Name: f.Event.Place}
		}
	}
	if len(f.Crumbs) > 0 {
		page.Breadcrumb = &datum{Type: "BreadcrumbList"}
		for i, crumb := range f.Crumbs {
			page.Breadcrumb.Items = append(page.Breadcrumb.Items, datum{
				Type: "ListItem", Position: i + 1, Name: crumb.Text, Item: address(crumb.Href),
			})
		}
	}
	return page
}
