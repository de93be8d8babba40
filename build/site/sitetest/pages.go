// Package sitetest reads sites that were made, as tests do: their pages, where their
// links lead, what could run on them, and how they stand in a browser.
package sitetest

import (
	"encoding/json"
	"io/fs"
	"net/url"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// A Page is a written page, parsed.
type Page struct {
	Path string
	Root *html.Node
	IDs  map[string]bool
}

// Pages reads all pages of a site, by path.
func Pages(t testing.TB, dir string) map[string]Page {
	t.Helper()
	pages := make(map[string]Page)
	err := filepath.WalkDir(dir, func(name string, d fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(name) != ".html" {
			return err
		}
		f, err := os.Open(name)
		if err != nil {
			return err
		}
		defer f.Close()
		root, err := html.Parse(f)
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(dir, name)
		p := Page{filepath.ToSlash(rel), root, make(map[string]bool)}
		for n := range root.Descendants() {
			if id := Attr(n, "id"); id != "" {
				if p.IDs[id] {
					t.Errorf("%s has two parts called %q", p.Path, id)
				}
				p.IDs[id] = true
			}
		}
		pages[p.Path] = p
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return pages
}

// Attr returns an attribute of an element; "" for none.
func Attr(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

// Addresses returns every address that an element points at.
func Addresses(n *html.Node) []string {
	var all []string
	for _, name := range []string{"href", "src"} {
		if slices.ContainsFunc(n.Attr, func(a html.Attribute) bool { return a.Key == name }) {
			all = append(all, Attr(n, name))
		}
	}
	for _, candidate := range strings.Split(Attr(n, "srcset"), ",") {
		if fields := strings.Fields(candidate); len(fields) > 0 {
			all = append(all, fields[0])
		}
	}
	return all
}

// Text returns the words of an element and all in it.
func Text(n *html.Node) string {
	var b strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			b.WriteString(d.Data + " ")
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// Walk walks every href, src and srcset of a site: each leads to a file of the site, and
// each fragment to a part of its page, and every page is led to. It returns how many
// there are.
func Walk(t testing.TB, dir string) (checked int) {
	t.Helper()
	pages := Pages(t, dir)
	reached := map[string]bool{"index.html": true}
	for _, p := range pages {
		for n := range p.Root.Descendants() {
			for _, address := range Addresses(n) {
				u, err := url.Parse(address)
				if err != nil {
					t.Errorf("%s: %q: %v", p.Path, address, err)
					continue
				}
				if u.Scheme == "http" || u.Scheme == "https" || u.Scheme == "mailto" {
					continue
				}
				if u.IsAbs() || u.Host != "" || strings.HasPrefix(u.Path, "/") {
					t.Errorf("%s: %q is not relative", p.Path, address)
					continue
				}
				target := p.Path
				if u.Path != "" {
					target = path.Join(path.Dir(p.Path), u.Path)
				}
				if _, err := os.Stat(filepath.Join(dir, filepath.FromSlash(target))); err != nil {
					t.Errorf("%s: %q leads nowhere", p.Path, address)
				}
				if u.Fragment != "" && !pages[target].IDs[u.Fragment] {
					t.Errorf("%s: %q: no such part", p.Path, address)
				}
				reached[target] = true
				checked++
			}
		}
	}
	for name := range pages {
		if !reached[name] {
			t.Errorf("no page links to %s", name)
		}
	}
	return checked
}

// ofSearch reports whether an element is the search form of a page, or a script beside
// the page on which is searched.
func ofSearch(n *html.Node) bool {
	switch n.Data {
	case "form":
		return Attr(n, "class") == "seek" && strings.HasSuffix(Attr(n, "action"), "search.html")
	case "script":
		if Attr(n, "type") == "application/ld+json" { // data, which no browser runs
			return n.FirstChild != nil && json.Valid([]byte(n.FirstChild.Data)) && len(n.Attr) == 1
		}
		return n.FirstChild == nil && regexp.MustCompile(`^(theme/scripts|search)/[a-z0-9.-]+\.js$`).MatchString(Attr(n, "src"))
	}
	return false
}

// Active lists the elements and attributes by which a page could do something,
// and addresses of schemes that nobody follows to read. Addresses are read as
// browsers read them (WHATWG URL Standard, "basic URL parser").
func Active(root *html.Node) []string {
	var found []string
	for n := range root.Descendants() {
		if n.Type != html.ElementNode {
			continue
		}
		switch n.Data {
		case "script", "style", "iframe", "object", "embed", "base", "form", "template", "evil-element":
			if !ofSearch(n) {
				found = append(found, "an element "+n.Data)
			}
		}
		for _, a := range n.Attr {
			if strings.HasPrefix(a.Key, "on") || a.Key == "style" || a.Key == "srcdoc" {
				found = append(found, a.Key+" of "+n.Data)
			}
		}
		for _, address := range Addresses(n) {
			address = strings.NewReplacer("\t", "", "\n", "", "\r", "").Replace(strings.TrimFunc(address, func(r rune) bool { return r <= ' ' }))
			scheme, _, ok := strings.Cut(address, ":")
			ok = ok && !strings.ContainsAny(scheme, "/?#")
			if ok && !slices.Contains([]string{"http", "https", "mailto"}, strings.ToLower(scheme)) || strings.HasPrefix(strings.ReplaceAll(address, `\`, "/"), "//") {
				found = append(found, "the address "+address)
			}
		}
	}
	return found
}
