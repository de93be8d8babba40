package source

import (
	"io/fs"
	"path"
	"strings"
	"time"
	"unicode/utf8"
)

// An Entry is a file of the journal's folder before it is read.
type Entry struct {
	Path     string // from the journal's folder, with forward slashes
	Size     int64
	Modified time.Time
}

// SiteMark is the file that a written site carries. A folder that holds one is
// not part of a journal even where it stands inside the journal's folder.
const SiteMark = ".hussif-site.json"

// NotAFile is the rule for things in the journal's folder that are neither a file
// nor a folder.
const NotAFile = "not a file"

// Scan lists the files of a journal's folder in the order of their paths. Names
// that begin with a dot or an underscore are left out with all that is below
// them, and so are folders that hold a site. Links and devices are not followed, and
// names that are not UTF-8 not opened; each is a finding. An error is trouble with the disk.
func Scan(fsys fs.FS) ([]Entry, []Finding, error) {
	var entries []Entry
	var findings []Finding
	err := fs.WalkDir(fsys, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		base := path.Base(name)
		hidden := name != "." && (strings.HasPrefix(base, ".") || strings.HasPrefix(base, "_"))
		switch {
		case !hidden && !utf8.ValidString(base):
			findings = append(findings, foundAt(name, NotPlainText,
				"the name of this file or folder is not UTF-8, and it is not read", "rename it"))
			if d.IsDir() {
				return fs.SkipDir
			}
			return nil
		case d.IsDir():
			if hidden {
				return fs.SkipDir
			}
			if _, err := fs.Stat(fsys, path.Join(name, SiteMark)); err == nil {
				return fs.SkipDir
			}
			return nil
		case hidden:
			return nil
		case !d.Type().IsRegular():
			findings = append(findings, foundAt(name, NotAFile,
				"this is neither a file nor a folder and is not read", "put a copy of what it points at here, or take it away"))
			return nil
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		entries = append(entries, Entry{Path: name, Size: info.Size(), Modified: info.ModTime()})
		return nil
	})
	return entries, findings, err
}

// foundAt makes a finding about something of which no bytes were read.
func foundAt(name, rule, text, help string) Finding {
	f := &File{Name: name, lines: []int{0}}
	return Finding{Span: f.Whole(), Level: Warning, Rule: rule, Text: text, Help: help}
}
