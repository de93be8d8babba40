package keep

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

func open(t *testing.T, dir string) *Store {
	t.Helper()
	s, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func put(t *testing.T, s *Store, r Recipe, record string) {
	t.Helper()
	if err := s.Put(r, []byte(record)); err != nil {
		t.Fatal(err)
	}
}

func TestRecipesOfDifferentThingsDiffer(t *testing.T) {
	recipes := []Recipe{
		NewRecipe("turn", 1, "ab", "c"),
		NewRecipe("turn", 1, "a", "bc"),
		NewRecipe("turn", 1, "abc"),
		NewRecipe("turn", 1, "abc", ""),
		NewRecipe("turn", 2, "ab", "c"),
		NewRecipe("scale", 1, "ab", "c"),
		NewRecipe("turn", 1),
	}
	seen := map[Recipe]int{}
	for i, r := range recipes {
		if j, ok := seen[r]; ok {
			t.Errorf("recipes %d and %d are the same", i, j)
		}
		seen[r] = i
	}
	if NewRecipe("turn", 1, "ab", "c") != recipes[0] {
		t.Error("the same things give another recipe the second time")
	}
}

func TestARecordIsFoundAgain(t *testing.T) {
	dir := t.TempDir()
	s := open(t, dir)
	r := NewRecipe("turn", 1, "a")
	if _, ok := s.Get(r); ok {
		t.Fatal("found before it was kept")
	}
	for _, record := range []string{"collar", "", strings.Repeat("long ", 1e5)} {
		put(t, s, r, record)
		got, ok := open(t, dir).Get(r)
		if !ok || string(got) != record {
			t.Errorf("got %.20q, %v; want %.20q", got, ok, record)
		}
	}
	if _, ok := s.Get(NewRecipe("turn", 2, "a")); ok {
		t.Error("another version of the step found the record of the first")
	}
}

// The SHA-256 of "abc" is the example of FIPS 180-2, appendix B.1.
func TestAFileIsFoundAgainByItsHash(t *testing.T) {
	s := open(t, t.TempDir())
	sum, err := s.PutFile([]byte("abc"))
	if err != nil {
		t.Fatal(err)
	}
	if want := "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"; sum.String() != want {
		t.Errorf("sum %s, want %s", sum, want)
	}
	path, ok := s.File(sum)
	if !ok {
		t.Fatal("not found")
	}
	if got, err := os.ReadFile(path); err != nil || string(got) != "abc" {
		t.Errorf("read %q, %v", got, err)
	}

	var again Sum
	text, _ := sum.MarshalText()
	if err := again.UnmarshalText(text); err != nil || again != sum {
		t.Errorf("read back as %s, %v", again, err)
	}
	for _, bad := range []string{"", "ba78", strings.Repeat("g", 64), strings.Repeat("0", 66)} {
		if again.UnmarshalText([]byte(bad)) == nil {
			t.Errorf("%q was taken for a sum", bad)
		}
	}
}

// damages are what may have happened to a file since it was written.
var damages = map[string]func(path string) error{
	"cut short": func(path string) error { return os.Truncate(path, 5) },
	"emptied":   func(path string) error { return os.Truncate(path, 0) },
	"removed":   os.Remove,
	"one bit flipped": func(path string) error {
		content, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		content[len(content)-1] ^= 1
		return os.WriteFile(path, content, 0o600)
	},
	"grown": func(path string) error {
		content, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		return os.WriteFile(path, append(content, 0), 0o600)
	},
}

func TestADamagedRecordIsAMissAndGone(t *testing.T) {
	for name, damage := range damages {
		t.Run(name, func(t *testing.T) {
			s := open(t, t.TempDir())
			r := NewRecipe("turn", 1, "a")
			put(t, s, r, "the collar, turned")
			path := s.place("record", r[:])
			if err := damage(path); err != nil {
				t.Fatal(err)
			}
			if got, ok := s.Get(r); ok {
				t.Errorf("found %q", got)
			}
			if _, err := os.Stat(path); !errors.Is(err, fs.ErrNotExist) {
				t.Errorf("still there: %v", err)
			}
			put(t, s, r, "again")
			if got, ok := s.Get(r); !ok || string(got) != "again" {
				t.Errorf("after keeping it again: %q, %v", got, ok)
			}
		})
	}
}

func TestARecordUnderAnothersNameIsAMiss(t *testing.T) {
	s := open(t, t.TempDir())
	mine, other := NewRecipe("turn", 1, "a"), NewRecipe("turn", 1, "b")
	put(t, s, mine, "mine")
	put(t, s, other, "other's")
	if err := os.Rename(s.place("record", mine[:]), s.place("record", other[:])); err != nil {
		t.Fatal(err)
	}
	if got, ok := s.Get(other); ok {
		t.Errorf("found %q", got)
	}
}

func TestADamagedFileIsAMissUntilKeptAgain(t *testing.T) {
	content := []byte("a picture of a collar")
	for name, damage := range damages {
		t.Run(name, func(t *testing.T) {
			s := open(t, t.TempDir())
			sum, err := s.PutFile(content)
			if err != nil {
				t.Fatal(err)
			}
			path, _ := s.File(sum)
			if err := damage(path); err != nil {
				t.Fatal(err)
			}
			if _, ok := s.File(sum); ok {
				t.Error("found")
			}
			if _, err := s.PutFile(content); err != nil {
				t.Fatal(err)
			}
			if _, ok := s.File(sum); !ok {
				t.Error("not found after it was kept again")
			}
		})
	}
}

func TestTheFolderMayBeDeletedWhileInUse(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "store")
	s := open(t, dir)
	r := NewRecipe("turn", 1, "a")
	put(t, s, r, "once")
	if err := os.RemoveAll(dir); err != nil {
		t.Fatal(err)
	}
	if _, ok := s.Get(r); ok {
		t.Error("found in a folder that is gone")
	}
	put(t, s, r, "twice")
	if got, ok := s.Get(r); !ok || string(got) != "twice" {
		t.Errorf("got %q, %v", got, ok)
	}
}

func TestAFolderThatCannotBeMadeIsNamed(t *testing.T) {
	inTheWay := filepath.Join(t.TempDir(), "letters")
	if err := os.WriteFile(inTheWay, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(inTheWay); err == nil || !strings.Contains(err.Error(), "letters") {
		t.Errorf("error %v", err)
	}
}

func TestVerifyMakesAgainAndCompares(t *testing.T) {
	s := open(t, t.TempDir())
	r := NewRecipe("turn", 1, "a")
	put(t, s, r, "as kept")
	s.Verify = true
	if _, ok := s.Get(r); ok {
		t.Error("found a record, so nothing would be made again")
	}
	put(t, s, r, "as kept")
	if err := s.Put(r, []byte("otherwise")); !errors.Is(err, ErrDiffers) {
		t.Errorf("error %v, want ErrDiffers", err)
	}
	if err := damages["one bit flipped"](s.place("record", r[:])); err != nil {
		t.Fatal(err)
	}
	put(t, s, r, "a damaged record is nothing to compare with")
}

func TestManyMayUseOneFolder(t *testing.T) {
	dir := t.TempDir()
	r := NewRecipe("turn", 1, "a")
	record := bytes.Repeat([]byte("a long record "), 1e4)
	var wg sync.WaitGroup
	for i := range 8 {
		s := open(t, dir)
		wg.Go(func() {
			for range 20 {
				if err := s.Put(r, record); err != nil {
					t.Error(err)
				}
				if got, ok := s.Get(r); !ok || !bytes.Equal(got, record) {
					t.Errorf("store %d: got %d bytes, %v", i, len(got), ok)
				}
				sum, err := s.PutFile(record)
				if err != nil {
					t.Error(err)
				}
				if _, ok := s.File(sum); !ok {
					t.Errorf("store %d: a file just kept is not there", i)
				}
			}
		})
	}
	wg.Wait()
	filepath.WalkDir(dir, func(path string, _ fs.DirEntry, err error) error {
		if err != nil || strings.Contains(path, "unfinished") {
			t.Error(path, err)
		}
		return nil
	})
}

func ExampleStore() {
	dir, _ := os.MkdirTemp("", "")
	defer os.RemoveAll(dir)
	store, _ := Open(dir)

	recipe := NewRecipe("count the panels", 1, "front, front, side, back")
	if _, ok := store.Get(recipe); !ok {
		store.Put(recipe, []byte("4"))
	}
	panels, ok := store.Get(recipe)
	fmt.Println(string(panels), ok)
	// Output: 4 true
}
