package sitetest

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"hussif/theme/browsertest"
)

// Outside skips a test for want of something from outside the project, or fails it
// where HUSSIF_OUTSIDE is "required".
func Outside(t testing.TB, missing string) {
	t.Helper()
	if os.Getenv("HUSSIF_OUTSIDE") == "required" {
		t.Fatal(missing)
	}
	t.Skip(missing)
}

// Axe returns the source of axe-core, which knows by what rules a page can be read by
// everybody (W3C, Web Content Accessibility Guidelines 2.2, and more). HUSSIF_AXE
// names its file.
func Axe(t testing.TB) string {
	t.Helper()
	name := os.Getenv("HUSSIF_AXE")
	if name == "" {
		Outside(t, "HUSSIF_AXE does not name the file axe.min.js of axe-core")
	}
	source, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(source)
}

// Violations has axe-core look at a page, and lists what it finds wrong.
const Violations = `axe.run(document, {resultTypes: ["violations"]}).then(found => found.violations.flatMap(
	rule => rule.nodes.map(node => rule.id + ": " + node.target.join(" ") + ": " + node.failureSummary)))`

// ReadByEverybody has axe-core look at pages of a site, by day or by night.
func ReadByEverybody(t testing.TB, dir string, names []string, dark bool) {
	t.Helper()
	source := Axe(t)
	b := browsertest.Open(t)
	for _, name := range names {
		b.Visit(browsertest.File(t, dir)+"/"+name, 1280, dark)
		browsertest.Ask[bool](b, source+"; true")
		for _, found := range browsertest.Ask[[]string](b, Violations) {
			t.Errorf("%s, dark %v: %s", name, dark, found)
		}
	}
}

// Look opens pages of a site from the disk, as a maker would: they have all their
// pictures, nothing is refused, and nothing runs off the side.
func Look(t testing.TB, dir string, names []string) {
	t.Helper()
	b := browsertest.Open(t)
	for _, name := range names {
		address := browsertest.File(t, filepath.Join(dir, filepath.FromSlash(name)))
		for _, width := range []int{360, 1280} {
			b.Visit(address, width, width == 360)
			if wide := browsertest.Ask[int](b, `document.scrollingElement.scrollWidth`); wide > width {
				t.Errorf("%s is %d px wide in a window of %d", name, wide, width)
			}
			b.Shot() // fetches the pictures further down
			if missing := browsertest.Ask[int](b, `[...document.images].filter(i => !i.naturalWidth).length`); missing > 0 {
				t.Errorf("%s lacks %d of its pictures", name, missing)
			}
			if heading := browsertest.Ask[string](b, `document.querySelector("h1").textContent`); heading == "" {
				t.Errorf("%s has no heading", name)
			}
		}
		if said := b.Said(); len(said) > 0 {
			t.Errorf("%s: the browser says %q", name, said)
		}
	}
}

// Valid has the Nu Html Checker of the W3C look at every page of a site. HUSSIF_VNU
// names its jar.
func Valid(t testing.TB, dir string) {
	t.Helper()
	jar := os.Getenv("HUSSIF_VNU")
	if jar == "" {
		Outside(t, "HUSSIF_VNU does not name the jar of the Nu Html Checker")
	}
	var out bytes.Buffer
	check := exec.Command("java", "-jar", jar, "--errors-only", "--skip-non-html", "--format", "gnu", dir)
	check.Stdout, check.Stderr = &out, &out
	if err := check.Run(); err != nil {
		t.Errorf("%v\n%s", err, out.String())
	}
}
