package output

import (
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"hussif/content/source"
)

// childEnv makes the test program write a version of the site again and again
// to a folder instead of testing: its value is the version, its argument the
// folder.
const childEnv = "HUSSIF_TEST_WRITE_VERSION"

func TestMain(m *testing.M) {
	version, err := strconv.Atoi(os.Getenv(childEnv))
	if err != nil {
		os.Exit(m.Run())
	}
	times := 1
	if version > manyTimes {
		version, times = version-manyTimes, 3
	}
	for range times {
		if _, err := Write(context.Background(), os.Args[1], versioned(version).site()); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	}
}

// manyTimes is added to a version to have it written several times.
const manyTimes = 1000

// versioned returns a site of which some pages come and go from version to
// version, some change and some do not. One is longer than a spool, and one lies
// where another version has a folder.
func versioned(version int) tree {
	pages := tree{
		"index.html": text("index", version),
		"long.html":  text("long", version) + strings.Repeat("pleat ", spoolSize/4),
	}
	for i := range 36 {
		name := fmt.Sprintf("builds/%d/page.html", i)
		switch {
		case i%3 == 0:
			pages[name] = text(name, 0)
		case i%3 == 1:
			pages[name] = text(name, version)
		case (i+version)%2 == 0:
			pages[name] = text(name, version)
		}
	}
	if version%2 == 0 {
		pages["people"] = text("people", version)
	} else {
		pages["people/wren.html"] = text("wren", version)
	}
	return pages
}

func text(name string, version int) string {
	return strings.Repeat(fmt.Sprintf("%s, version %d\n", name, version), 100)
}

// site writes its pages in many pieces, as templates do.
func (pages tree) site() Site {
	s := site(pages)
	for i, f := range s.Files {
		s.Files[i].Content = func(w io.Writer) error {
			for text := pages[f.Path]; text != ""; {
				n := min(len(text), max(64, len(text)/8))
				if _, err := io.WriteString(w, text[:n]); err != nil {
					return err
				}
				text = text[n:]
			}
			return nil
		}
	}
	return s
}

func child(t *testing.T, version int, dir string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(self, dir)
	cmd.Env = append(os.Environ(), childEnv+"="+strconv.Itoa(version))
	cmd.Stderr = os.Stderr
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	return cmd
}

// checkWhole reports every file of the site that is not a whole page of one of
// the versions.
func checkWhole(t *testing.T, dir string, versions ...tree) {
	t.Helper()
	for name, text := range read(t, dir) {
		if strings.HasSuffix(name, "/") || strings.HasPrefix(name, ".") {
			continue
		}
		whole := func(version tree) bool { return version[name] == text }
		if !slices.ContainsFunc(versions, whole) {
			t.Errorf("%s is not whole: %d bytes", name, len(text))
		}
	}
}

func TestAKilledRunLeavesWholePagesAndTheNextRepairs(t *testing.T) {
	// How long a run takes here says where in it to strike.
	began := time.Now()
	if err := child(t, 1, filepath.Join(t.TempDir(), "site")).Wait(); err != nil {
		t.Fatal(err)
	}
	took := time.Since(began)

	above := t.TempDir()
	over := filepath.Join(above, "over", "site")
	mustWrite(t, over, versioned(0).site())
	lay(t, over, tree{".git/config": "hers"})
	struck := 0
	for round := 1; round <= 30; round++ {
		dir := over
		if round%3 == 0 {
			dir = filepath.Join(above, strconv.Itoa(round), "site")
		}
		cmd := child(t, round, dir)
		time.Sleep(time.Duration(rand.Int64N(int64(took))))
		cmd.Process.Kill()
		if cmd.Wait() != nil {
			struck++
		}
		if dir == over {
			checkWhole(t, dir, versioned(round-1), versioned(round))
		} else if _, err := os.Stat(dir); err == nil {
			checkTree(t, dir, versioned(round))
		}
		if t.Failed() {
			t.Fatalf("in round %d", round)
		}
		// Every other time the next run is killed as well.
		if round%2 == 0 {
			cmd := child(t, round-1, dir)
			time.Sleep(time.Duration(rand.Int64N(int64(took))))
			cmd.Process.Kill()
			cmd.Wait()
		}
		want := versioned(round)
		mustWrite(t, dir, want.site())
		if dir == over {
			want[".git/config"] = "hers"
		}
		checkTree(t, dir, want)
		checkAlone(t, dir)
		if _, ok := Current(dir, site(versioned(round)).Recipe); !ok {
			t.Error("repaired, but not current")
		}
		if t.Failed() {
			t.Fatalf("after round %d", round)
		}
		if round%3 == 2 {
			// The next round that writes over this folder is two later.
			mustWrite(t, over, versioned(round+1).site())
		}
	}
	if struck < 5 {
		t.Errorf("only %d of 30 runs were struck before their end", struck)
	}
}

func TestTwoRunsAtOnceWaitForEachOther(t *testing.T) {
	for round := range 4 {
		dir := filepath.Join(t.TempDir(), "site")
		if round%2 == 1 {
			mustWrite(t, dir, versioned(5).site())
		}
		one, other := child(t, manyTimes+1, dir), child(t, manyTimes+2, dir)
		for _, cmd := range []*exec.Cmd{one, other} {
			if err := cmd.Wait(); err != nil {
				t.Errorf("a run failed: %v", err)
			}
		}
		last := 1
		if read(t, dir)["people"] != "" {
			last = 2
		}
		checkTree(t, dir, versioned(last))
		checkAlone(t, dir)
		if _, ok := Current(dir, site(versioned(last)).Recipe); !ok {
			t.Errorf("the folder holds version %d, but %s does not say so", last, source.SiteMark)
		}
	}
}
