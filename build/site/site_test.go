package site_test

import (
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"golang.org/x/net/html"

	"hussif/build/check"
	"hussif/build/photo"
	"hussif/build/site"
	"hussif/build/site/sitetest"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
	"hussif/testdata/demo"
)

// today is a day on which the demo's next occasion is still to come.
var today = edtf.DayOf(2026, 11, 25)

func TestMain(m *testing.M) { sitetest.Main(m) }

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
		Journal: j, Files: files, Findings: findings, Today: today, Out: out, Photos: &photo.Darkroom{Store: sitetest.Store(t)},
	})
	if err != nil || len(faults) > 0 {
		t.Fatal(err, faults)
	}
	return out
}

// TestEveryAddressLeadsSomewhere walks every href, src and srcset of the demo's site.
func TestEveryAddressLeadsSomewhere(t *testing.T) {
	if checked := sitetest.Walk(t, makeSite(t, demo.Journal())); checked < 1000 {
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
	backlinks := func(p sitetest.Page) string {
		for n := range p.Root.Descendants() {
			if sitetest.Attr(n, "id") == "section-linked-from" {
				return sitetest.Text(n)
			}
		}
		return ""
	}
	pages := sitetest.Pages(t, dir)
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
	for _, p := range sitetest.Pages(t, dir) {
		for n := range p.Root.Descendants() {
			if n.Type != html.ElementNode {
				continue
			}
			if n.Data == "script" && sitetest.Attr(n, "type") != "application/ld+json" && (p.Path != "search.html" || n.FirstChild != nil || !strings.HasSuffix(sitetest.Attr(n, "src"), ".js")) {
				t.Errorf("%s holds a script", p.Path)
			}
			for _, a := range n.Attr {
				if strings.HasPrefix(a.Key, "on") || strings.HasPrefix(strings.ToLower(strings.TrimSpace(a.Val)), "javascript:") {
					t.Errorf("%s: %s=%q", p.Path, a.Key, a.Val)
				}
			}
		}
	}
}
