package output

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"hussif/build/keep"
	"hussif/content/source"
)

// A tree is what a folder holds, by path; a link is written "-> where".
type tree map[string]string

func page(text string) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := io.WriteString(w, text)
		return err
	}
}

// site returns a site of pages, the recipe of which is made from them.
func site(pages tree) Site {
	s := Site{Recipe: keep.NewRecipe("test", 1, fmt.Sprint(pages))}
	for name, text := range pages {
		s.Files = append(s.Files, File{Path: name, Content: page(text)})
	}
	return s
}

func mustWrite(t *testing.T, dir string, s Site) Report {
	t.Helper()
	report, err := Write(context.Background(), dir, s)
	if err != nil {
		t.Fatal(err)
	}
	return report
}

func lay(t *testing.T, dir string, files tree) {
	t.Helper()
	for name, text := range files {
		name = filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

// read returns all that a folder holds; folders end in a slash.
func read(t *testing.T, dir string) tree {
	t.Helper()
	files := tree{}
	err := filepath.WalkDir(dir, func(name string, d fs.DirEntry, err error) error {
		if err != nil || name == dir {
			return err
		}
		rel, _ := filepath.Rel(dir, name)
		rel = filepath.ToSlash(rel)
		switch {
		case d.IsDir():
			files[rel+"/"] = ""
		case d.Type()&fs.ModeSymlink != 0:
			to, err := os.Readlink(name)
			files[rel] = "-> " + to
			return err
		default:
			text, err := os.ReadFile(name)
			files[rel] = string(text)
			return err
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// checkTree compares a folder, but for the mark and folders, with what is wanted.
func checkTree(t *testing.T, dir string, want tree) {
	t.Helper()
	got := read(t, dir)
	if got[source.SiteMark] == "" {
		t.Error("there is no mark")
	}
	delete(got, source.SiteMark)
	for name := range got {
		if strings.HasSuffix(name, "/") {
			delete(got, name)
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("the folder differs (-want +got):\n%s", diff)
	}
}

// checkAlone looks for anything left beside a folder.
func checkAlone(t *testing.T, dir string) {
	t.Helper()
	entries, err := os.ReadDir(filepath.Dir(dir))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if strings.Contains(e.Name(), ".hussif-") {
			t.Errorf("%s was left beside the folder", e.Name())
		}
	}
}

func age(t *testing.T, dir string, names ...string) time.Time {
	t.Helper()
	long := time.Date(2020, 5, 1, 12, 0, 0, 0, time.UTC)
	for _, name := range names {
		if err := os.Chtimes(filepath.Join(dir, name), long, long); err != nil {
			t.Fatal(err)
		}
	}
	return long
}

func modified(t *testing.T, name string) time.Time {
	t.Helper()
	info, err := os.Stat(name)
	if err != nil {
		t.Fatal(err)
	}
	return info.ModTime()
}

func TestASiteIsWrittenAndBroughtUpToDate(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new", "site")
	long := strings.Repeat("pleat ", spoolSize/2)
	first := tree{"index.html": "one", "builds/jacket.html": "jacket", "builds/old/skirt.html": "skirt", "long.html": long}
	if got, want := mustWrite(t, dir, site(first)), (Report{Written: 4}); got != want {
		t.Errorf("first: %+v, want %+v", got, want)
	}
	checkTree(t, dir, first)
	checkAlone(t, dir)

	was := age(t, dir, "index.html", "long.html")
	second := tree{"index.html": "one", "builds/jacket.html": "JACKET", "long.html": long, "people/wren.html": long + "x"}
	if got, want := mustWrite(t, dir, site(second)), (Report{Written: 2, Kept: 2, Removed: 1}); got != want {
		t.Errorf("second: %+v, want %+v", got, want)
	}
	checkTree(t, dir, second)
	for _, name := range []string{"index.html", "long.html"} {
		if !modified(t, filepath.Join(dir, name)).Equal(was) {
			t.Errorf("%s has not changed, but its time stamp has", name)
		}
	}
	if _, err := os.Stat(filepath.Join(dir, "builds", "old")); !errors.Is(err, fs.ErrNotExist) {
		t.Error("a folder left empty has stayed")
	}

	mark := modified(t, filepath.Join(dir, source.SiteMark))
	if got, want := mustWrite(t, dir, site(second)), (Report{Kept: 4}); got != want {
		t.Errorf("third: %+v, want %+v", got, want)
	}
	if !modified(t, filepath.Join(dir, source.SiteMark)).Equal(mark) {
		t.Error("the mark was written though nothing has changed")
	}
}

// The SHA-256 of "abc" is the example of FIPS 180-2, appendix B.1.
func TestTheMarkNamesSizeAndSum(t *testing.T) {
	dir := t.TempDir()
	mustWrite(t, dir, site(tree{"a.html": "abc"}))
	info, err := os.Stat(filepath.Join(dir, "a.html"))
	if err != nil {
		t.Fatal(err)
	}
	want := fmt.Sprintf(`"files":[{"path":"a.html","size":3,"sha256":"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad","modified":%d}]`, info.ModTime().UnixNano())
	if mark := read(t, dir)[source.SiteMark]; !strings.Contains(mark, want) {
		t.Errorf("mark %s, want in it %s", mark, want)
	}
}

func TestWhatSomebodyChangedIsRepaired(t *testing.T) {
	dir := t.TempDir()
	pages := tree{"index.html": "one", "builds/jacket.html": "jacket", "skirt.html": "skirt"}
	mustWrite(t, dir, site(pages))
	was := modified(t, filepath.Join(dir, "index.html"))
	lay(t, dir, tree{"index.html": "two"}) // of the same size
	if err := os.Chtimes(filepath.Join(dir, "index.html"), was, was); err != nil {
		t.Fatal(err)
	}
	if err := os.RemoveAll(filepath.Join(dir, "builds")); err != nil {
		t.Fatal(err)
	}
	if got, want := mustWrite(t, dir, site(pages)), (Report{Written: 2, Kept: 1}); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	checkTree(t, dir, pages)
}

func TestAFileTakesThePlaceOfAFolderAndBack(t *testing.T) {
	dir := t.TempDir()
	for _, pages := range []tree{
		{"people": "all", "a/b/c": "c"},
		{"people/wren.html": "wren", "a": "a"},
		{"people": "all", "a/b": "b"},
		{"People": "all", "A/b": "b"},
		{"people/Wren.html": "wren", "a/b": "b"},
	} {
		mustWrite(t, dir, site(pages))
		checkTree(t, dir, pages)
	}
}

func TestLeftoversGoAlsoIfNothingElseChanges(t *testing.T) {
	dir := t.TempDir()
	pages := tree{"index.html": "one"}
	mustWrite(t, dir, site(pages))
	lay(t, dir, tree{markDraft: "half", partsName + "/0": "half", lockName: ""})
	if got, want := mustWrite(t, dir, site(pages)), (Report{Kept: 1}); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	checkTree(t, dir, pages)
}

// A run that was killed between a file and the folder in its place leaves a mark
// that names both.
func TestAMarkMayNameAFileAndAFolderInItsPlace(t *testing.T) {
	both := strings.Replace(naming("people"), `"files":[`, `"files":[{"path":"people/wren.html"},`, 1)
	for name, there := range map[string]tree{
		"the file":   {"people": "half way"},
		"the folder": {"people/wren.html": "half way"},
		"neither":    {},
	} {
		for _, pages := range []tree{{"people": "all"}, {"people/wren.html": "wren"}, {"index.html": "one"}} {
			dir := filepath.Join(t.TempDir(), "site")
			lay(t, dir, tree{source.SiteMark: both})
			lay(t, dir, there)
			if name == "neither" {
				if err := os.Mkdir(filepath.Join(dir, "people"), 0o777); err != nil {
					t.Fatal(err)
				}
			}
			mustWrite(t, dir, site(pages))
			checkTree(t, dir, pages)
		}
	}
}

func TestPicturesAreCopied(t *testing.T) {
	store := t.TempDir()
	dir := filepath.Join(t.TempDir(), "site")
	lay(t, store, tree{"aa": "picture", "bb": strings.Repeat("x", 3*spoolSize)})
	kept, err := keep.Open(filepath.Join(store, "keep"))
	if err != nil {
		t.Fatal(err)
	}
	sum, err := kept.PutFile([]byte("kept picture"))
	if err != nil {
		t.Fatal(err)
	}
	from, _ := kept.File(sum)
	s := Site{Files: []File{
		{Path: "a.png", From: filepath.Join(store, "aa")},
		{Path: "b.png", From: filepath.Join(store, "bb")},
		{Path: "c.png", From: from, Sum: sum},
	}}
	mustWrite(t, dir, s)
	checkTree(t, dir, tree{"a.png": "picture", "b.png": strings.Repeat("x", 3*spoolSize), "c.png": "kept picture"})

	// Scribbling over the site's file must not reach the store.
	lay(t, dir, tree{"c.png": "scribble"})
	if _, ok := kept.File(sum); !ok {
		t.Error("the store changed with the site")
	}
	mustWrite(t, dir, s)

	// A copy known to be right is not read again, nor is what it came from.
	if err := os.Remove(from); err != nil {
		t.Fatal(err)
	}
	if got, want := mustWrite(t, dir, s), (Report{Kept: 3}); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}

	lay(t, filepath.Dir(from), tree{filepath.Base(from): "damaged"})
	lay(t, dir, tree{"c.png": "scribble"})
	_, err = Write(context.Background(), dir, s)
	if fault := (*Fault)(nil); !errors.As(err, &fault) || fault.Path != "c.png" {
		t.Errorf("a damaged picture of the store gave %v", err)
	}
}

func TestAFaultSpoilsOnePageOnly(t *testing.T) {
	for _, hidden := range []bool{true, false} {
		dir := filepath.Join(t.TempDir(), "site")
		if !hidden {
			mustWrite(t, dir, site(tree{"a.html": "old a", "b.html": "old b", "z.html": "z"}))
		}
		sad := errors.New("no such seam")
		s := Site{Recipe: keep.NewRecipe("faulty", 1), Files: []File{
			{Path: "a.html", Content: func(w io.Writer) error { io.WriteString(w, "half"); return sad }},
			{Path: "b.html", Content: func(w io.Writer) error {
				w.Write(bytes.Repeat([]byte("half"), spoolSize))
				panic("lost thread")
			}},
			{Path: "c.html", Content: page("c")},
			{Path: "d.html", From: filepath.Join(dir, "no such picture")},
			{Path: "e.html", Content: page("e")},
		}}
		report, err := Write(context.Background(), dir, s)
		want, files := Report{Written: 2, Failed: 3, Removed: 1}, tree{"a.html": "old a", "b.html": "old b", "c.html": "c", "e.html": "e"}
		if hidden {
			want, files = Report{Written: 2, Failed: 3}, tree{"c.html": "c", "e.html": "e"}
		}
		if report != want {
			t.Errorf("%+v, want %+v", report, want)
		}
		checkTree(t, dir, files)
		checkAlone(t, dir)
		if !errors.Is(err, sad) || !errors.Is(err, fs.ErrNotExist) {
			t.Errorf("the error %v does not join the faults", err)
		}
		var panicked *Fault
		for _, err := range err.(interface{ Unwrap() []error }).Unwrap() {
			if f := err.(*Fault); f.Stack != nil {
				panicked = f
			}
		}
		if panicked == nil || panicked.Path != "b.html" || !strings.Contains(panicked.Error(), "lost thread") {
			t.Errorf("the panic is reported as %v", panicked)
		}
		if _, ok := Current(dir, s.Recipe); ok {
			t.Error("a site with faults counts as current")
		}
		mended := tree{"a.html": "a", "b.html": "b", "c.html": "c"}
		mustWrite(t, dir, site(mended))
		checkTree(t, dir, mended)
	}
}

func TestAFileLaidDownMeanwhileIsKept(t *testing.T) {
	dir := t.TempDir()
	mustWrite(t, dir, site(tree{"index.html": "one"}))
	s := Site{Files: []File{{Path: "aunt.txt", Content: func(w io.Writer) error {
		lay(t, dir, tree{"aunt.txt": "dear"})
		return nil
	}}}}
	if _, err := Write(context.Background(), dir, s); !errors.As(err, new(*Foreign)) {
		t.Errorf("written over with %v", err)
	}
	if _, err := Write(context.Background(), dir, s); !errors.As(err, new(*Foreign)) {
		t.Errorf("the next run wrote over it with %v", err)
	}
	checkTree(t, dir, tree{"aunt.txt": "dear", "index.html": "one"})
}

func TestCurrent(t *testing.T) {
	pages := tree{"index.html": "one", "builds/jacket.html": "jacket"}
	s := site(pages)
	for name, change := range map[string]func(dir string){
		"another size":   func(dir string) { lay(t, dir, tree{"index.html": "longer"}) },
		"another time":   func(dir string) { age(t, dir, "index.html") },
		"a file gone":    func(dir string) { os.Remove(filepath.Join(dir, "index.html")) },
		"a stranger":     func(dir string) { lay(t, dir, tree{"builds/aunt.txt": "dear"}) },
		"a damaged mark": func(dir string) { lay(t, dir, tree{source.SiteMark: "{"}) },
		"no mark":        func(dir string) { os.Remove(filepath.Join(dir, source.SiteMark)) },
		"no folder":      func(dir string) { os.RemoveAll(dir) },
	} {
		dir := filepath.Join(t.TempDir(), "site")
		mustWrite(t, dir, s)
		if report, ok := Current(dir, s.Recipe); !ok || report != (Report{Kept: 2}) {
			t.Errorf("%+v, %v right after writing", report, ok)
		}
		if _, ok := Current(dir, keep.NewRecipe("other", 1)); ok {
			t.Error("current under another recipe")
		}
		change(dir)
		if _, ok := Current(dir, s.Recipe); ok {
			t.Errorf("current with %s", name)
		}
	}
	dir := t.TempDir()
	mustWrite(t, dir, Site{Files: s.Files})
	if _, ok := Current(dir, keep.Recipe{}); ok {
		t.Error("current without a recipe")
	}
}

func TestCalledOffWorkIsTakenUp(t *testing.T) {
	for _, exists := range []bool{true, false} {
		dir := filepath.Join(t.TempDir(), "site")
		if exists {
			mustWrite(t, dir, site(tree{"old.html": "old", "p050.html": "old"}))
		}
		ctx, cancel := context.WithCancel(context.Background())
		defer cancel()
		var s Site
		want := tree{}
		for i := range 100 {
			name := fmt.Sprintf("p%03d.html", i)
			want[name] = name
			s.Files = append(s.Files, File{Path: name, Content: func(w io.Writer) error {
				if i == 40 {
					cancel()
				}
				return page(name)(w)
			}})
		}
		if _, err := Write(ctx, dir, s); !errors.Is(err, context.Canceled) {
			t.Errorf("called off: %v", err)
		}
		checkAlone(t, dir)
		if _, err := os.Stat(dir); (err == nil) != exists {
			t.Errorf("the folder is there: %v, was there: %v", err == nil, exists)
		}
		mustWrite(t, dir, s)
		checkTree(t, dir, want)
	}
}
