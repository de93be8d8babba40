package keep

import (
	"crypto/sha256"
	"io"
	"os"
)

// PutFile keeps a file under the hash of its bytes, which it returns. The
// error says what could not be written.
func (s *Store) PutFile(content []byte) (Sum, error) {
	sum := Sum(sha256.Sum256(content))
	err := s.write(s.place("file", sum[:]), content)
	if err != nil {
		// Some systems refuse to rename over a file that another process is
		// reading. What it reads may be all we wanted to put there.
		if _, ok := s.File(sum); ok {
			return sum, nil
		}
	}
	return sum, err
}

// File returns the path of a kept file to copy from, and whether it is there
// and whole. All of it is read to know that. A damaged file stays where it is
// until PutFile replaces it, since another process may be doing so just now.
func (s *Store) File(sum Sum) (path string, ok bool) {
	path = s.place("file", sum[:])
	f, err := os.Open(path)
	if err != nil {
		return "", false
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil || Sum(h.Sum(nil)) != sum {
		return "", false
	}
	return path, true
}
