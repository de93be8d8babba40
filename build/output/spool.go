package output

import (
	"bytes"
	"crypto/sha256"
	"hash"
	"os"

	"hussif/build/keep"
)

// spoolSize is how many bytes of a file are held in memory until it is whole.
const spoolSize = 1 << 20

// A spool holds what one file's Content writes until it is known to be whole
// and to differ from what is there: in memory, or if it is long in a part file.
// A worker uses one spool for one file after another.
type spool struct {
	name string                         // of the part file
	part func(string) (*os.File, error) // makes it, empty
	buf  bytes.Buffer
	hash hash.Hash
	size int64
	file *os.File // nil while all is in buf
	err  error    // trouble with the disk, which is not the fault of Content

	folder  lastFolder     // that a file was put into
	copying [32 << 10]byte // for whoever reads files to compare them
}

func newSpool(name string, part func(string) (*os.File, error)) *spool {
	return &spool{name: name, part: part, hash: sha256.New()}
}

// reset makes the spool ready for the next file.
func (s *spool) reset() {
	if s.file != nil {
		s.file.Close()
		s.file = nil
	}
	s.buf.Reset()
	s.hash.Reset()
	s.size, s.err = 0, nil
}

// close ends the use of the spool.
func (s *spool) close() {
	s.reset()
	s.folder.close()
}

func (s *spool) Write(p []byte) (int, error) {
	if s.err != nil {
		return 0, s.err
	}
	if s.buf.Len()+len(p) > spoolSize {
		if s.err = s.flush(); s.err != nil {
			return 0, s.err
		}
	}
	s.size += int64(len(p))
	s.hash.Write(p)
	if len(p) <= spoolSize {
		return s.buf.Write(p)
	}
	n, err := s.file.Write(p)
	s.err = err
	return n, err
}

// flush moves what is in memory to the part file.
func (s *spool) flush() error {
	if s.file == nil {
		f, err := s.part(s.name)
		if err != nil {
			return err
		}
		s.file = f
	}
	_, err := s.buf.WriteTo(s.file)
	return err
}

// finish brings all that was written to the part file and closes it.
func (s *spool) finish() error {
	if err := s.flush(); err != nil {
		return err
	}
	err := s.file.Close()
	s.file = nil
	return err
}

func (s *spool) sum() keep.Sum { return keep.Sum(s.hash.Sum(nil)) }
