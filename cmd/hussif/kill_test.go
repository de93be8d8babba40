package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"hussif/build/photo/phototest"
	"hussif/testdata/demo"
)

// A workplace is a folder with the demo's journal, a camera and a home.
type workplace struct {
	t    *testing.T
	home string
}

func newWorkplace(t *testing.T) workplace {
	t.Helper()
	home := t.TempDir()
	if _, err := unpack(demo.Journal(), filepath.Join(home, "journal")); err != nil {
		t.Fatal(err)
	}
	for i := range 8 {
		name := filepath.Join(home, "card", fmt.Sprintf("IMG_%04d.JPG", i))
		if err := writeNew(name, phototest.JPEG(i, fmt.Sprintf("2026:11:%02d 18:22:03", 20+i), "")); err != nil {
			t.Fatal(err)
		}
	}
	return workplace{t, home}
}

func (w workplace) command(args ...string) *exec.Cmd {
	w.t.Helper()
	program, err := os.Executable()
	if err != nil {
		w.t.Fatal(err)
	}
	c := exec.Command(program)
	c.Args = append([]string{"hussif"}, args...) // see TestMain
	c.Dir = w.home
	c.Env = []string{"HOME=" + w.home, "XDG_CACHE_HOME=" + filepath.Join(w.home, "cache"), "PATH=" + os.Getenv("PATH")}
	return c
}

// killed runs a command, kills it after a while, and reports whether that was before
// its end.
func (w workplace) killed(after time.Duration, args ...string) bool {
	w.t.Helper()
	c := w.command(args...)
	if err := c.Start(); err != nil {
		w.t.Fatal(err)
	}
	time.Sleep(after)
	c.Process.Kill()
	return c.Wait() != nil
}

// runs runs a command to its end.
func (w workplace) runs(args ...string) string {
	w.t.Helper()
	out, err := w.command(args...).CombinedOutput()
	if err != nil {
		w.t.Fatalf("hussif %s: %v\n%s", strings.Join(args, " "), err, out)
	}
	return string(out)
}

// holds returns all files below a folder of the workplace but those that a killed run
// left to be taken away.
func (w workplace) holds(dir string) map[string]string {
	w.t.Helper()
	files := make(map[string]string)
	root := filepath.Join(w.home, dir)
	err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.HasPrefix(d.Name(), ".") && strings.Contains(d.Name(), ".hussif-") {
			return err
		}
		data, err := os.ReadFile(name)
		rel, _ := filepath.Rel(root, name)
		files[filepath.ToSlash(rel)] = string(data)
		return err
	})
	if err != nil {
		w.t.Fatal(err)
	}
	return files
}

// rest makes what a killed run left look as old as it must be to be taken away.
func (w workplace) rest() {
	long := time.Now().Add(-2 * resting)
	filepath.WalkDir(w.home, func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() && strings.Contains(d.Name(), ".hussif-") {
			os.Chtimes(name, long, long)
		}
		return nil
	})
}

// strike kills a command again and again, at moments from its start to its end, and
// has the outcome looked at after each.
func (w workplace) strike(rounds int, args []string, reset func(), look func()) {
	w.t.Helper()
	began := time.Now()
	w.runs(args...)
	took := time.Since(began)
	struck := 0
	for range rounds {
		reset()
		if w.killed(time.Duration(rand.Int64N(int64(took))), args...) {
			struck++
		}
		look()
		if w.t.Failed() {
			return
		}
	}
	if struck < rounds/5 {
		w.t.Errorf("%s: only %d of %d runs were struck before their end", args[0], struck, rounds)
	}
}

// put writes a file in one stroke: a program that watches sees the old one or the new.
func (w workplace) put(name, text string) {
	w.t.Helper()
	name = filepath.Join(w.home, filepath.FromSlash(name))
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		w.t.Fatal(err)
	}
	draft := filepath.Join(filepath.Dir(name), ".draft")
	if err := os.WriteFile(draft, []byte(text), 0o666); err != nil {
		w.t.Fatal(err)
	}
	if err := os.Rename(draft, name); err != nil {
		w.t.Fatal(err)
	}
}

func (w workplace) same(what string, want, got map[string]string) {
	w.t.Helper()
	for _, name := range slices.Sorted(maps.Keys(want)) {
		if text, ok := got[name]; !ok {
			w.t.Errorf("%s: %s is gone", what, name)
		} else if text != want[name] {
			w.t.Errorf("%s: %s is another", what, name)
		}
	}
	for name := range got {
		if _, ok := want[name]; !ok {
			w.t.Errorf("%s: %s came", what, name)
		}
	}
}

const killRounds = 12

// A site that was being made, or kept up to date, when the program was killed holds
// whole pages only, and the next run completes it. The journal is not touched.
func TestKilledSite(t *testing.T) {
	if testing.Short() {
		t.Skip("runs the program many times")
	}
	w := newWorkplace(t)
	const note = "journal/builds/oat-linen-stays/2026-11-22-more.md"
	versions := []string{"Sewed on.\n", "Sewed on and on, see [[oat-linen-stays]].\n"}
	var sites []map[string]string
	for _, v := range versions {
		w.put(note, v)
		w.runs("site", "journal", "-o", "want", "--on", "2026-11-25")
		site := w.holds("want")
		delete(site, ".hussif-site.json") // which has times in it
		sites = append(sites, site)
	}
	version := 0
	reset := func() {
		version = 1 - version
		w.put(note, versions[version])
	}
	before := map[string]string{}
	for _, args := range [][]string{
		{"site", "journal", "-o", "site", "--on", "2026-11-25"},
		{"site", "journal", "-o", "site", "--on", "2026-11-25", "--watch"},
	} {
		look := func() {
			for name, text := range w.holds("site") {
				if !strings.HasPrefix(name, ".") && text != sites[0][name] && text != sites[1][name] {
					t.Errorf("%v: %s is not whole: %d bytes", args, name, len(text))
				}
			}
			w.same("the journal", before, w.holds("journal"))
			w.runs("site", "journal", "-o", "site", "--on", "2026-11-25")
			site := w.holds("site")
			delete(site, ".hussif-site.json")
			w.same(fmt.Sprintf("after %v", args), sites[version], site)
		}
		keep := func() {
			reset()
			before = w.holds("journal")
		}
		if args[len(args)-1] != "--watch" {
			w.strike(killRounds, args, keep, look)
			continue
		}
		for range killRounds / 2 {
			keep()
			c := w.command(args...)
			if err := c.Start(); err != nil {
				t.Fatal(err)
			}
			time.Sleep(time.Duration(rand.Int64N(int64(600 * time.Millisecond))))
			keep() // it may see that, and be at work
			time.Sleep(time.Duration(rand.Int64N(int64(200 * time.Millisecond))))
			c.Process.Kill()
			c.Wait()
			look()
		}
	}
}

// The preview writes nothing into the journal, whenever it ends, and starts again.
func TestKilledPreview(t *testing.T) {
	if testing.Short() {
		t.Skip("runs the program many times")
	}
	w := newWorkplace(t)
	before := w.holds("journal")
	for range killRounds / 2 {
		w.killed(time.Duration(rand.Int64N(int64(800*time.Millisecond))), "preview", "journal", "--port", "0")
		w.same("the journal", before, w.holds("journal"))
	}
	c := w.command("preview", "journal", "--port", "0")
	var out bytes.Buffer
	c.Stdout, c.Stderr = &out, &out
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	time.Sleep(2 * time.Second)
	c.Process.Signal(os.Interrupt)
	if err := c.Wait(); err != nil || !strings.Contains(out.String(), "http://127.0.0.1:") {
		t.Errorf("afterwards: %v\n%s", err, out.String())
	}
}

// A page to which a measuring was being added has it whole or not at all.
func TestKilledMeasure(t *testing.T) {
	if testing.Short() {
		t.Skip("runs the program many times")
	}
	w := newWorkplace(t)
	args := []string{"measure", "hester", "waist=29in", "-j", "journal", "--on", "2026-11-26", "--over", "shift,stays"}
	before := w.holds("journal")
	w.runs(args...)
	after := w.holds("journal")
	reset := func() { w.put("journal/people/hester.md", before["people/hester.md"]) }
	reset()
	w.strike(3*killRounds, args, reset, func() {
		now := w.holds("journal")
		if now["people/hester.md"] == before["people/hester.md"] {
			w.same("before the measuring", before, now)
		} else {
			w.same("after the measuring", after, now)
		}
	})
	reset()
	w.runs(args...)
	w.same("the next run", after, w.holds("journal"))
}

// A note that was being begun is there whole or not at all.
func TestKilledNote(t *testing.T) {
	if testing.Short() {
		t.Skip("runs the program many times")
	}
	w := newWorkplace(t)
	const note = "builds/oat-linen-stays/2026-11-26-bones.md"
	args := []string{"note", "Bones", "-j", "journal", "--on", "2026-11-26", "--build", "oat-linen-stays"}
	before := w.holds("journal")
	w.runs(args...)
	after := w.holds("journal")
	if after[note] == "" || len(after) != len(before)+1 {
		t.Fatalf("%s is not what came", note)
	}
	reset := func() {
		if err := os.Remove(filepath.Join(w.home, "journal", note)); err != nil && !os.IsNotExist(err) {
			t.Fatal(err)
		}
	}
	reset()
	w.strike(3*killRounds, args, reset, func() {
		now := w.holds("journal")
		if _, ok := now[note]; ok {
			w.same("after the note", after, now)
		} else {
			w.same("before the note", before, now)
		}
	})
	reset()
	w.runs(args...)
	w.same("the next run", after, w.holds("journal"))
}

// Of a card that was being sorted in there are whole pictures and whole notes, and the
// next run puts in the rest and nothing twice.
func TestKilledPhotos(t *testing.T) {
	if testing.Short() {
		t.Skip("runs the program many times")
	}
	w := newWorkplace(t)
	args := []string{"photos", "card", "-j", "journal", "--yes", "--build", "oat-linen-stays"}
	before := w.holds("journal")
	card := w.holds("card")
	w.runs(args...)
	after := w.holds("journal")
	if len(after) < len(before)+len(card) {
		t.Fatalf("only %d files came", len(after)-len(before))
	}
	reset := func() {
		if err := os.RemoveAll(filepath.Join(w.home, "journal")); err != nil {
			t.Fatal(err)
		}
		for name, text := range before {
			w.put("journal/"+name, text)
		}
	}
	reset()
	w.strike(2*killRounds, args, reset, func() {
		for name, text := range w.holds("journal") {
			switch text {
			case before[name], after[name]:
			default:
				// A note that has the pictures of some of its day.
				if !strings.HasSuffix(name, ".md") || !strings.HasSuffix(text, "---\n") && !strings.HasPrefix(text, "---\n") {
					t.Errorf("%s is not whole: %d bytes", name, len(text))
				}
			}
		}
		w.rest()
		w.runs(args...)
		w.same("the next run", after, w.holds("journal"))
		w.same("the card", card, w.holds("card"))
	})
}
