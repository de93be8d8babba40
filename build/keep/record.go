package keep

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"os"
)

// ErrDiffers is what Put returns under [Store.Verify] when a step made
// something else than was kept under the same recipe.
var ErrDiffers = errors.New("made something else this time than was kept: its recipe leaves something out, or its version was not raised")

// Get returns the record kept under a recipe, and whether there is a whole
// one. A damaged record is removed.
func (s *Store) Get(r Recipe) ([]byte, bool) {
	if s.Verify {
		return nil, false
	}
	return s.whole("record", r)
}

// Put keeps a record under a recipe, in the place of a damaged one or of the
// same. The error says what could not be written; it is [ErrDiffers] only
// under [Store.Verify].
func (s *Store) Put(r Recipe, record []byte) error {
	if s.Verify {
		if kept, ok := s.whole("record", r); ok && !bytes.Equal(kept, record) {
			return ErrDiffers
		}
	}
	check := checkOf(r, record)
	return s.write(s.place("record", r[:]), check[:], record)
}

// whole returns what is kept under a recipe in one part of the store. What is damaged
// is removed.
func (s *Store) whole(sort string, r Recipe) ([]byte, bool) {
	path := s.place(sort, r[:])
	content, err := os.ReadFile(path)
	if err != nil {
		return nil, false
	}
	if len(content) >= sha256.Size {
		check, record := content[:sha256.Size], content[sha256.Size:]
		if want := checkOf(r, record); bytes.Equal(check, want[:]) {
			return record, true
		}
	}
	os.Remove(path)
	return nil, false
}

// checkOf covers the recipe too, so that a record under another's name is
// found out.
func checkOf(r Recipe, record []byte) Sum {
	h := sha256.New()
	h.Write(r[:])
	h.Write(record)
	return Sum(h.Sum(nil))
}
