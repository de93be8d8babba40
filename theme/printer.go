package theme

import (
	"bytes"
	"html/template"
	"net/url"
	"strconv"
	"strings"
)

// A hypertext is HTML in the making.
type hypertext struct{ bytes.Buffer }

// text writes text, which it escapes.
func (h *hypertext) text(s string) {
	for i := range len(s) {
		if mustEscape[s[i]] {
			h.WriteString(template.HTMLEscapeString(s))
			return
		}
	}
	h.WriteString(s)
}

// mustEscape has the characters that [template.HTMLEscapeString] does not leave as
// they are.
var mustEscape = [256]bool{'<': true, '>': true, '&': true, '"': true, '\'': true, 0: true}

// attr writes an attribute, or nothing where it has no value.
func (h *hypertext) attr(name, value string) {
	if value == "" {
		return
	}
	h.WriteString(" " + name + `="`)
	h.text(value)
	h.WriteByte('"')
}

// A printer builds the HTML of one page from text, which it escapes, and from marks
// of its own. It prints what stands on a page by the hundred, or on every page: a
// template takes some ten times as long over each.
type printer struct {
	hypertext
	theme     *Theme
	templates *template.Template // whose functions print by this printer
	err       error              // a fault in a template that a part is printed by
}

// printing makes a function for templates of what a printer prints.
func printing[T any](p *printer, print func(T)) func(T) (template.HTML, error) {
	return func(shown T) (template.HTML, error) {
		print(shown)
		return "", p.err
	}
}

// within prints text between two tags; nothing for "".
func (p *printer) within(before, text, after string) {
	if text == "" {
		return
	}
	p.WriteString(before)
	p.text(text)
	p.WriteString(after)
}

// figured prints text with its fractions marked between two tags; nothing for "".
func (p *printer) figured(before, text, after string) {
	if text == "" {
		return
	}
	p.WriteString(before)
	p.figures(text)
	p.WriteString(after)
}

func (p *printer) number(n int) { p.Write(strconv.AppendInt(p.AvailableBuffer(), int64(n), 10)) }

// link prints a link, or its words where it leads nowhere.
func (p *printer) link(l Link) {
	if l.Href != "" {
		p.WriteString(`<a href="`)
		p.text(address(l.Href))
		p.WriteString(`">`)
	}
	p.figures(l.Text)
	if l.Href != "" {
		p.WriteString(`</a>`)
	}
	p.figured(` <small class="aside">`, l.Note, `</small>`)
}

// links prints links with commas between them.
func (p *printer) links(list []Link) {
	for i, l := range list {
		if i > 0 {
			p.WriteString(", ")
		}
		p.link(l)
	}
}

// template prints a part by its template.
func (p *printer) template(name string, shown any) {
	if err := p.templates.ExecuteTemplate(p, name, shown); err != nil && p.err == nil {
		p.err = err
	}
}

// address returns an address as it may stand in a page: one of another scheme than
// the web's leads nowhere, nor does one of another host without a scheme, and what an
// address cannot hold is put in its place by percent signs.
func address(href string) string {
	if plain(href) {
		return href
	}
	u, err := url.Parse(href)
	if err != nil {
		return "#"
	}
	switch u.Scheme {
	case "":
		if u.Host != "" || strings.HasPrefix(href, "//") {
			return "#"
		}
		return u.String()
	case "http", "https", "mailto":
		return u.String()
	}
	return "#"
}

// plain reports whether an address is a path and an anchor of nothing but letters
// of English, digits and the marks that need no thought; most are.
func plain(href string) bool {
	if strings.HasPrefix(href, "//") {
		return false
	}
	for i := range len(href) {
		c := href[i]
		if !isDigit(c) && !('a' <= c && c <= 'z') && !('A' <= c && c <= 'Z') && strings.IndexByte("-_./#", c) < 0 {
			return false
		}
	}
	return true
}
