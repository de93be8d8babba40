package site_test

import (
	"context"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"golang.org/x/net/html"

	"hussif/build/check"
	"hussif/build/keep"
	"hussif/build/photo"
	"hussif/build/site"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
	"hussif/testdata/demo"
)

// today is a day on which the demo's next occasion is still to come.
var today = edtf.DayOf(2026, 11, 25)

// store returns the store that all tests share, so that each picture is made once.
func store(t testing.TB) *keep.Store {
	t.Helper()
	s, err := openStore()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

var storeDir string

var openStore = sync.OnceValues(func() (*keep.Store, error) { return keep.Open(storeDir) })

func TestMain(m *testing.M) {
	dir, err := os.MkdirTemp("", "hussif-site-test-")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	storeDir = dir
	status := m.Run()
	os.RemoveAll(dir)
	os.Exit(status)
}

// makeSite makes the site of a journal in a new folder, which it returns.
func makeSite(t testing.TB, files fs.FS) string {
	t.Helper()
	j, read, err := journal.Open(files)
	if err != nil {
		t.Fatal(err)
	}
	findings := check.Run(j, files, read)
	if source.Count(findings, source.Error) > 0 {
		source.Print(os.Stderr, findings, source.Palette{})
		t.Fatal("the journal has errors")
	}
	out := filepath.Join(t.TempDir(), "site")
	_, faults, err := site.Make(context.Background(), site.Order{
		Journal: j, Files: files, Findings: findings, Today: today, Out: out, Photos: &photo.Darkroom{Store: store(t)},
	})
	if err != nil || len(faults) > 0 {
		t.Fatal(err, faults)
	}
	return out
}

// A page is a written page, parsed.
type page struct {
	path string
	root *html.Node
	ids  map[string]bool
}

func readPages(t testing.TB, dir string) map[string]page {
	t.Helper()
	pages := make(map[string]page)
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
		p := page{path: filepath.ToSlash(rel), root: root, ids: make(map[string]bool)}
		for n := range root.Descendants() {
			if id := attr(n, "id"); id != "" {
				if p.ids[id] {
					t.Errorf("%s has two parts called %q", p.path, id)
				}
				p.ids[id] = true
			}
		}
		pages[p.path] = p
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return pages
}

func attr(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

// addresses returns every address that an element points at.
func addresses(n *html.Node) []string {
	var all []string
	for _, name := range []string{"href", "src"} {
		if slices.ContainsFunc(n.Attr, func(a html.Attribute) bool { return a.Key == name }) {
			all = append(all, attr(n, name))
		}
	}
	for _, candidate := range strings.Split(attr(n, "srcset"), ",") {
		if fields := strings.Fields(candidate); len(fields) > 0 {
			all = append(all, fields[0])
		}
	}
	return all
}

// TestEveryAddressLeadsSomewhere walks every href, src and srcset of the demo's
// site: each leads to a file of the site, and each fragment to a part of its page.
func TestEveryAddressLeadsSomewhere(t *testing.T) {
	dir := makeSite(t, demo.Journal())
	pages := readPages(t, dir)
	reached := map[string]bool{"index.html": true}
	checked := 0
	for _, p := range pages {
		for n := range p.root.Descendants() {
			for _, address := range addresses(n) {
				u, err := url.Parse(address)
				if err != nil {
					t.Errorf("%s: %q: %v", p.path, address, err)
					continue
				}
				if u.Scheme == "http" || u.Scheme == "https" || u.Scheme == "mailto" {
					continue
				}
				if u.IsAbs() || u.Host != "" || strings.HasPrefix(u.Path, "/") {
					t.Errorf("%s: %q is not relative", p.path, address)
					continue
				}
				target := p.path
				if u.Path != "" {
					target = path.Join(path.Dir(p.path), u.Path)
				}
				if _, err := os.Stat(filepath.Join(dir, filepath.FromSlash(target))); err != nil {
					t.Errorf("%s: %q leads nowhere", p.path, address)
				}
				if u.Fragment != "" && !pages[target].ids[u.Fragment] {
					t.Errorf("%s: %q: no such part", p.path, address)
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
	if checked < 1000 {
		t.Errorf("only %d addresses found", checked)
	}
}

// TestLinkedFrom: whatever a page of the journal links to links back.
func TestLinkedFrom(t *testing.T) {
	dir := makeSite(t, fstest.MapFS{
		"journal.yaml":             {Data: []byte("title: Costumes")},
		"patterns/jacket-draft.md": {Data: []byte("The draft.")},
		"builds/jacket/build.md":   {Data: []byte("---\npattern: jacket-draft\n---\n")},
		"builds/jacket/2026-01.md": {Data: []byte("---\ndate: 2026-01-03\n---\nSee [the draft](../../patterns/jacket-draft.md) and [[jacket]].")},
	})
	backlinks := func(p page) string {
		for n := range p.root.Descendants() {
			if attr(n, "id") == "section-linked-from" {
				return text(n)
			}
		}
		return ""
	}
	pages := readPages(t, dir)
	for name, want := range map[string][]string{
		"patterns/jacket-draft.html": {"Cut from it", "Jacket", "Mentioned in", "2026 01"},
		"builds/jacket.html":         {"Mentioned in"},
	} {
		got := backlinks(pages[name])
		for _, words := range want {
			if !strings.Contains(got, words) {
				t.Errorf("%s: %q is not among the backlinks: %s", name, words, got)
			}
		}
	}
}

func text(n *html.Node) string {
	var b strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			b.WriteString(d.Data + " ")
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// TestInert: HTML and scripts in a note are shown as text, wherever they stand.
func TestInert(t *testing.T) {
	const hostile = `<script>alert(1)</script><img src=x onerror=alert(1)>`
	dir := makeSite(t, fstest.MapFS{
		"journal.yaml":          {Data: []byte("title: '" + hostile + "'")},
		"people/ada.md":         {Data: []byte("---\ntitle: '" + hostile + "'\ntags: ['" + hostile + "']\n---\n" + hostile + "\n\n[x](javascript:alert(1))")},
		"builds/jacket.md":      {Data: []byte("---\nfor: ada\ngarment: '" + hostile + "'\nfeatures: ['" + hostile + "']\nnext time: ['" + hostile + "']\nseams: [{name: '" + hostile + "'}]\n---\n")},
		"references/r.md":       {Data: []byte("---\nholder: '" + hostile + "'\nshows: ['" + hostile + "']\n---\n")},
		"materials/" + "a&b.md": {Data: []byte(hostile)},
	})
	for _, p := range readPages(t, dir) {
		for n := range p.root.Descendants() {
			if n.Type != html.ElementNode {
				continue
			}
			if n.Data == "script" && attr(n, "type") != "application/ld+json" && (p.path != "search.html" || n.FirstChild != nil || !strings.HasSuffix(attr(n, "src"), ".js")) {
				t.Errorf("%s holds a script", p.path)
			}
			for _, a := range n.Attr {
				if strings.HasPrefix(a.Key, "on") || strings.HasPrefix(strings.ToLower(strings.TrimSpace(a.Val)), "javascript:") {
					t.Errorf("%s: %s=%q", p.path, a.Key, a.Val)
				}
			}
		}
	}
}
