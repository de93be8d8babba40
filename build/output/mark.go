package output

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"hussif/build/keep"
	"hussif/content/source"
)

const (
	markVersion = 1
	markDraft   = source.SiteMark + ".new" // until it is whole
	lockName    = ".hussif-site.lock"
	partsName   = ".hussif-site.parts" // the folder of files that are not yet whole
)

// A mark is what [source.SiteMark] holds.
type mark struct {
	Version int `json:"version"`

	// Recipe is that of the site, or zero while the folder is being changed and
	// when a file could not be made.
	Recipe keep.Sum `json:"recipe"`
	For    string   `json:"for,omitempty"` // whom the site is for; "" for its maker
	Files  []entry  `json:"files"`
}

// An entry is a file that belongs to the site. It may not be on disk yet; then
// all but its path is zero.
type entry struct {
	Path     string   `json:"path"`
	Size     int64    `json:"size"`
	Sum      keep.Sum `json:"sha256"`
	Modified int64    `json:"modified"` // nanoseconds since 1970 in UTC
}

// matches reports whether a file on disk still is as it was written, as far as
// can be told without reading it.
func (e entry) matches(info fs.FileInfo) bool {
	return info.Size() == e.Size && info.ModTime().UnixNano() == e.Modified
}

// largestMark is how many bytes of a mark are read. That of a site of 30,000 files has
// some 6 MB.
const largestMark = 256 << 20

// readMark returns the mark of a folder, or nil if it has none. The error says
// why the mark cannot be relied on.
func readMark(root *os.Root) (*mark, error) {
	info, err := root.Lstat(source.SiteMark)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, errors.New("it is not a file")
	}
	if info.Size() > largestMark {
		return nil, fmt.Errorf("it is damaged (it has %d bytes, and %d are the most)", info.Size(), int64(largestMark))
	}
	text, err := root.ReadFile(source.SiteMark)
	if err != nil {
		return nil, err
	}
	return parseMark(text)
}

func parseMark(text []byte) (*mark, error) {
	var m mark
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	err := d.Decode(&m)
	if err != nil {
		// A newer mark may look different in all but its version.
		var head struct {
			Version int `json:"version"`
		}
		if json.Unmarshal(text, &head) == nil {
			m.Version = head.Version
		}
	}
	switch {
	case m.Version > markVersion:
		return nil, errors.New("a newer hussif wrote it")
	case err != nil:
		return nil, fmt.Errorf("it is damaged (%w)", err)
	case m.Version != markVersion:
		return nil, fmt.Errorf("it is damaged (there is no version %d)", m.Version)
	}
	if _, err := d.Token(); err != io.EOF {
		return nil, errors.New("it is damaged (something follows its end)")
	}
	seen := make(map[string]bool, len(m.Files))
	for _, e := range m.Files {
		if err := checkPath(e.Path); err != nil {
			return nil, fmt.Errorf("it is damaged (no site of ours has a file %q)", e.Path)
		}
		if seen[e.Path] {
			return nil, fmt.Errorf("it is damaged (%q stands in it twice)", e.Path)
		}
		seen[e.Path] = true
	}
	return &m, nil
}

// writeMark replaces the mark of a folder. It alone is forced to the disk:
// without it the site's files would have no owner. That the rename reaches the
// disk before the files that follow it is left to the disk's journal, which
// keeps such changes in order.
func writeMark(root *os.Root, m mark) error {
	text, err := json.Marshal(m)
	if err != nil {
		return err
	}
	// A killed run may have left a draft; a link of that name is not followed.
	if err := root.Remove(markDraft); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	f, err := root.OpenFile(markDraft, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = f.Write(text)
	if err == nil {
		err = f.Sync()
	}
	if err := errors.Join(err, f.Close()); err != nil {
		return err
	}
	return patiently(func() error { return root.Rename(markDraft, source.SiteMark) })
}
