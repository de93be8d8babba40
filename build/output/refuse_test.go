package output

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"hussif/content/source"
)

const emptyMark = `{"version":1,"recipe":"","files":[]}`

var zeroSum = strings.Repeat("0", 64)

// naming returns a mark that claims one file.
func naming(path string) string {
	return `{"version":1,"recipe":"` + zeroSum + `","files":[{"path":"` + path + `","size":1,"sha256":"` + zeroSum + `","modified":1}]}`
}

// checkRefused writes a site to a folder that must come through untouched.
func checkRefused(t *testing.T, dir string) error {
	t.Helper()
	before, was := read(t, dir), modified(t, dir)
	_, err := Write(context.Background(), dir, site(tree{"index.html": "site", "letters/a.html": "site"}))
	if err == nil {
		t.Error("not refused")
	}
	if diff := cmp.Diff(before, read(t, dir)); diff != "" {
		t.Errorf("the refused folder has changed (-before +after):\n%s", diff)
	}
	if before[source.SiteMark] == "" && !modified(t, dir).Equal(was) {
		t.Error("something was made in the refused folder")
	}
	checkAlone(t, dir)
	return err
}

func TestFoldersOfTheMakerAreRefused(t *testing.T) {
	for name, test := range map[string]struct {
		files   tree
		foreign []string
		more    bool
	}{
		"a letter":           {tree{"aunt.txt": "dear"}, []string{"aunt.txt"}, false},
		"in a folder":        {tree{"letters/to/aunt.txt": "dear"}, []string{"letters/to/aunt.txt"}, false},
		"a page":             {tree{"index.html": "mine"}, []string{"index.html"}, false},
		"beside a site":      {tree{source.SiteMark: naming("index.html"), "index.html": "x", "aunt.txt": "dear"}, []string{"aunt.txt"}, false},
		"a hidden one below": {tree{"letters/.secret": "x"}, []string{"letters/.secret"}, false},
		"parts of no site":   {tree{partsName + "/0": "x"}, []string{partsName + "/0"}, false},
		"a domain's name":    {tree{source.SiteMark: naming("index.html"), "CNAME": "x"}, []string{"CNAME"}, false},
		"five":               {tree{"a": "", "b": "", "c": "", "d": "", "e": ""}, []string{"a", "b", "c", "d", "e"}, false},
		"many":               {tree{"a": "", "b": "", "c": "", "d": "", "e": "", "f": ""}, []string{"a", "b", "c", "d", "e"}, true},
	} {
		t.Run(name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "letters")
			lay(t, dir, test.files)
			err := checkRefused(t, dir)
			var foreign *Foreign
			if !errors.As(err, &foreign) {
				t.Fatalf("refused with %v", err)
			}
			want := &Foreign{Dir: dir, Names: test.foreign, More: test.more}
			if diff := cmp.Diff(want, foreign); diff != "" {
				t.Error(diff)
			}
		})
	}
	f := &Foreign{Dir: "letters", Names: []string{"aunt.txt"}}
	if want := "letters holds files that no site put there: aunt.txt; choose another folder"; !strings.HasPrefix(f.Error(), want) {
		t.Errorf("%q, want it to begin with %q", f, want)
	}
}

func TestWhatMayLieBesideASite(t *testing.T) {
	hers := tree{".git/config": "x", ".DS_Store": "x", ".hidden": "x", "builds/.DS_Store": "x", "builds/THUMBS.DB": "x", "desktop.ini": "x"}
	for _, pages := range []tree{
		{"index.html": "one", "builds/jacket.html": "jacket"},
		{"index.html": "two"},
	} {
		dir := filepath.Join(t.TempDir(), "site")
		lay(t, dir, hers)
		if err := os.MkdirAll(filepath.Join(dir, "empty", "folder"), 0o777); err != nil {
			t.Fatal(err)
		}
		mustWrite(t, dir, site(tree{"builds/skirt.html": "skirt"}))
		mustWrite(t, dir, site(pages))
		want := tree{}
		for _, some := range []tree{hers, pages} {
			for name, text := range some {
				want[name] = text
			}
		}
		checkTree(t, dir, want)
		if _, err := os.Stat(filepath.Join(dir, "empty", "folder")); err != nil {
			t.Error("an empty folder of hers is gone")
		}
	}
}

func TestMarksNotToBeTrustedAreRefused(t *testing.T) {
	outside := t.TempDir()
	lay(t, outside, tree{"diary.txt": "x"})
	for name, mark := range map[string]string{
		"empty":        " ",
		"cut off":      naming("index.html")[:60],
		"other JSON":   `[1,2]`,
		"no version":   `{"files":[]}`,
		"newer":        `{"version":2,"pages":{}}`,
		"a surplus":    naming("index.html") + "{}",
		"unknown":      `{"version":1,"recipe":"` + zeroSum + `","files":[],"also":1}`,
		"short sum":    emptyMark,
		"twice":        strings.Replace(naming("a"), `"files":[`, `"files":[{"path":"a"},`, 1),
		"upwards":      naming("../diary.txt"),
		"up and down":  naming("builds/../../diary.txt"),
		"absolute":     naming(filepath.ToSlash(filepath.Join(outside, "diary.txt"))),
		"backslash":    naming(`..\\diary.txt`),
		"drive":        naming("C:/diary.txt"),
		"drive alone":  naming("C:diary.txt"),
		"stream":       naming("index.html:more"),
		"nameless":     naming(""),
		"the folder":   naming("."),
		"empty part":   naming("builds//a"),
		"hidden":       naming(".git/config"),
		"itself":       naming(source.SiteMark),
		"NUL":          naming(`a\u0000b`),
		"a device":     naming("nul.html"),
		"trailing dot": naming("a./b"),
	} {
		t.Run(name, func(t *testing.T) {
			above := t.TempDir()
			dir := filepath.Join(above, "site")
			lay(t, above, tree{"diary.txt": "x"})
			lay(t, dir, tree{source.SiteMark: mark, "index.html": "x", ".git/config": "x"})
			err := checkRefused(t, dir)
			if errors.As(err, new(*Foreign)) {
				t.Errorf("refused for another reason: %v", err)
			}
			if newer := strings.Contains(err.Error(), "newer hussif"); newer != (name == "newer") {
				t.Errorf("refused with %v", err)
			}
			if !strings.Contains(err.Error(), source.SiteMark) {
				t.Errorf("%v does not name the mark", err)
			}
			if diff := cmp.Diff("x", read(t, above)["diary.txt"]); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestLinksInsideAreNotFollowed(t *testing.T) {
	elsewhere := t.TempDir()
	lay(t, elsewhere, tree{"jacket.html": "hers", "other.html": "hers"})
	for name, test := range map[string]struct {
		remove, link, to string
		ok               bool
	}{
		"a folder":      {"builds", "builds", elsewhere, false},
		"a file":        {"index.html", "index.html", filepath.Join(elsewhere, "jacket.html"), false},
		"a folder here": {"builds", "builds", "other", false},
		"a stranger":    {"", "aunt", elsewhere, false},
		"the mark":      {source.SiteMark, source.SiteMark, filepath.Join(elsewhere, "jacket.html"), false},
		"the lock":      {"", lockName, filepath.Join(elsewhere, "jacket.html"), false},
		"a missing one": {"", lockName, filepath.Join(elsewhere, "made"), false},
		"the draft":     {"", markDraft, filepath.Join(elsewhere, "jacket.html"), true},
		"the parts":     {"", partsName, elsewhere, true},
		"a hidden one":  {"", ".git", elsewhere, true},
	} {
		t.Run(name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "site")
			mustWrite(t, dir, site(tree{"index.html": "one", "builds/jacket.html": "jacket", "other/x.html": "x"}))
			if test.remove != "" {
				if err := os.RemoveAll(filepath.Join(dir, test.remove)); err != nil {
					t.Fatal(err)
				}
			}
			if err := os.Symlink(test.to, filepath.Join(dir, test.link)); err != nil {
				t.Skip(err)
			}
			if !test.ok {
				checkRefused(t, dir)
			} else {
				pages := tree{"index.html": "two", "long.html": strings.Repeat("x", 2*spoolSize)}
				mustWrite(t, dir, site(pages))
				if name == "a hidden one" {
					pages[".git"] = "-> " + elsewhere
				}
				checkTree(t, dir, pages)
			}
			if diff := cmp.Diff(tree{"jacket.html": "hers", "other.html": "hers"}, read(t, elsewhere)); diff != "" {
				t.Errorf("the link was followed:\n%s", diff)
			}
		})
	}
}

func TestTheFolderMayBeReachedByALink(t *testing.T) {
	above := t.TempDir()
	link := filepath.Join(above, "link")
	if err := os.Symlink("real", link); err != nil {
		t.Skip(err)
	}
	_, err := Write(context.Background(), link, site(tree{"a": "a"}))
	if err == nil || !strings.Contains(err.Error(), "a link to a folder that is not there") {
		t.Errorf("a link to nowhere gave %v", err)
	}
	if err := os.Mkdir(filepath.Join(above, "real"), 0o777); err != nil {
		t.Fatal(err)
	}
	mustWrite(t, link, site(tree{"a": "a"}))
	checkTree(t, filepath.Join(above, "real"), tree{"a": "a"})
}

// The pairs are one name to a disk that ignores case by full folding (Unicode,
// CaseFolding.txt: U+00DF, U+03C2) or that composes accents (UAX #15).
func TestNamesThatClashAreRefused(t *testing.T) {
	for _, test := range []struct{ one, other string }{
		{"A.html", "a.html"},
		{"builds/a.html", "Builds/b.html"},
		{"a.html", "a.html"},
		{"a", "a/b"},
		{"a/b", "A"},
		{"stra\u00dfe", "STRASSE"},
		{"\u03c2", "\u03a3"},
		{"caf\u00e9", "cafe\u0301"},
		{"CAF\u00c9/a", "cafe\u0301/b"},
	} {
		for _, paths := range [][]string{{test.one, test.other}, {test.other, test.one}} {
			dir := filepath.Join(t.TempDir(), "site")
			var s Site
			for _, p := range paths {
				s.Files = append(s.Files, File{Path: p, Content: page(p)})
			}
			_, err := Write(context.Background(), dir, s)
			var clash *Clash
			if !errors.As(err, &clash) {
				t.Fatalf("%q: %v", paths, err)
			}
			if got := []string{clash.One, clash.Other}; !slices.Equal(got, paths) {
				t.Errorf("%q clash as %q", paths, got)
			}
			if _, err := os.Lstat(dir); err == nil {
				t.Error("a folder was made")
			}
		}
	}
	mustWrite(t, filepath.Join(t.TempDir(), "site"), site(tree{"a/b": "", "a.html": "", "a/c/d": "", "b/c": "", "ab": ""}))
}

// The devices are those of Microsoft, "Naming Files, Paths, and Namespaces".
func TestPathsThatSomeSystemCannotHoldAreRefused(t *testing.T) {
	for _, p := range []string{"", ".", "..", "/a", "a/", "a//b", "../a", "a/../b", "./a", `a\b`, "C:/a", "a:b", "a?b", "a*", "<a>", `"a"`, "a|b",
		"a\x00", "a\n", "a\x7f", "a\xff", "a.", "a ", "a./b", ".a", "a/.b", "con", "CON.html", "a/aux.tar.gz", "com1", "Lpt9.html", "com\u00b9", "nul .html", strings.Repeat("a", 256)} {
		if checkPath(p) == nil {
			t.Errorf("%q passes", p)
		}
		if _, err := newPlan(Site{Files: []File{{Path: p, Content: page("")}}}); err == nil {
			t.Errorf("a site with %q passes", p)
		}
	}
	for _, p := range []string{"a", "a.b", "a/b/c.html", "a..b", "console.html", "com.html", "com10", "lptx", "caf\u00e9", "a b", strings.Repeat("a", 255), "common/null"} {
		if err := checkPath(p); err != nil {
			t.Errorf("%q: %v", p, err)
		}
	}
}

func TestAFileSaysWhatItHolds(t *testing.T) {
	for name, f := range map[string]File{
		"nothing": {Path: "a"},
		"both":    {Path: "a", Content: page(""), From: "b"},
	} {
		if _, err := Write(context.Background(), filepath.Join(t.TempDir(), "site"), Site{Files: []File{f}}); err == nil {
			t.Errorf("%s: not refused", name)
		}
	}
}

func TestTroubleWithTheDiskIsTold(t *testing.T) {
	above := t.TempDir()
	lay(t, above, tree{"file": "hers", ".taken.hussif-new": "hers", ".mine.hussif-new/aunt.txt": "dear"})
	if err := os.MkdirAll(filepath.Join(above, "blocked", "index.html"), 0o777); err != nil {
		t.Fatal(err)
	}
	before := read(t, above)
	for _, name := range []string{"file", "file/site", "taken", "mine"} {
		_, err := Write(context.Background(), filepath.Join(above, name), site(tree{"index.html": "x"}))
		if err == nil {
			t.Errorf("%s: no error", name)
		}
		if diff := cmp.Diff(before, read(t, above)); diff != "" {
			t.Errorf("%s: something has changed:\n%s", name, diff)
		}
	}
	// An empty folder where a page should be stops the work, but harms nothing.
	blocked := filepath.Join(above, "blocked")
	_, err := Write(context.Background(), blocked, site(tree{"index.html": "x"}))
	if err == nil || !strings.Contains(err.Error(), "write index.html") {
		t.Errorf("a folder in the way gave %v", err)
	}
	if err := os.Remove(filepath.Join(blocked, "index.html")); err != nil {
		t.Fatal(err)
	}
	mustWrite(t, blocked, site(tree{"index.html": "x"}))
	checkTree(t, blocked, tree{"index.html": "x"})
}

func TestSeparate(t *testing.T) {
	above := t.TempDir()
	journal := filepath.Join(above, "work", "journal")
	for _, dir := range []string{"work/journal/site", "work/journal-site", "work/other"} {
		if err := os.MkdirAll(filepath.Join(above, dir), 0o777); err != nil {
			t.Fatal(err)
		}
	}
	links := runtime.GOOS != "windows"
	if links {
		for from, to := range map[string]string{"link": "work", "again": "work/journal", "inside": "work/journal/site"} {
			if err := os.Symlink(to, filepath.Join(above, from)); err != nil {
				t.Fatal(err)
			}
		}
	}
	for dir, want := range map[string]string{
		"work/journal": "is the journal", "work": "holds the journal", "": "holds the journal", "work/journal/../journal": "is the journal",
		"link": "holds the journal", "again": "is the journal", "link/journal": "is the journal",
		"work/journal/site": "", "work/journal-site": "", "work/other": "", "work/new": "", "work/journal/new": "", "inside": "", "link/other": "",
	} {
		if !links && (strings.HasPrefix(dir, "link") || dir == "again" || dir == "inside") {
			continue
		}
		for _, j := range []string{journal, filepath.Join(above, "again")} {
			if !links && j != journal {
				continue
			}
			err := Separate(filepath.Join(above, dir), j)
			if want == "" && err != nil || want != "" && (err == nil || !strings.Contains(err.Error(), want)) {
				t.Errorf("%q: %v, want %q", dir, err, want)
			}
		}
	}
	if err := Separate(above, filepath.Join(above, "no journal")); err == nil {
		t.Error("a journal that is not there passes")
	}
}

func TestWaitingForALockCanBeCalledOff(t *testing.T) {
	dir := t.TempDir()
	unlock, err := lock(context.Background(), filepath.Join(dir, lockName))
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(context.Background(), 20*time.Millisecond)
	defer cancel()
	if _, err := Write(ctx, dir, site(tree{"a": "a"})); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("waiting ended with %v", err)
	}
	unlock()
	mustWrite(t, dir, site(tree{"a": "a"}))
	checkTree(t, dir, tree{"a": "a"})
}
