package source

import (
	"errors"
	"io/fs"
	"path"
	"slices"
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
	var all []Entry
	var findings []Finding
	rest := []string{"."}
	for len(rest) > 0 {
		folder := rest[len(rest)-1]
		entries, below, found, err := ScanFolder(fsys, folder)
		if err != nil {
			return nil, nil, err
		}
		all, findings = append(all, entries...), append(findings, found...)
		rest = append(rest[:len(rest)-1], below...)
	}
	slices.SortFunc(all, func(a, b Entry) int { return strings.Compare(a.Path, b.Path) })
	slices.SortFunc(findings, func(a, b Finding) int { return strings.Compare(a.Span.File.Name, b.Span.File.Name) })
	return all, findings, nil
}

// ScanFolder lists likewise the files that lie in one folder of the journal and
// the folders in it. There is nothing in a folder that is not there, or that holds a
// site or lies in one that is left out.
func ScanFolder(fsys fs.FS, folder string) (entries []Entry, below []string, findings []Finding, err error) {
	for at := folder; at != "."; at = path.Dir(at) {
		if Hidden(path.Base(at)) || !utf8.ValidString(at) || holdsSite(fsys, path.Dir(at)) {
			return nil, nil, nil, nil
		}
	}
	if holdsSite(fsys, folder) {
		return nil, nil, nil, nil
	}
	list, err := fs.ReadDir(fsys, folder)
	if errors.Is(err, fs.ErrNotExist) && folder != "." {
		return nil, nil, nil, nil
	}
	if err != nil {
		return nil, nil, nil, err
	}
	for _, d := range list {
		name := path.Join(folder, d.Name())
		switch {
		case Hidden(d.Name()):
		case !utf8.ValidString(d.Name()):
			findings = append(findings, foundAt(name, NotPlainText,
				"the name of this file or folder is not UTF-8, and it is not read", "rename it"))
		case d.IsDir():
			below = append(below, name)
		case !d.Type().IsRegular():
			findings = append(findings, foundAt(name, NotAFile,
				"this is neither a file nor a folder and is not read", "put a copy of what it points at here, or take it away"))
		default:
			info, err := d.Info()
			if errors.Is(err, fs.ErrNotExist) {
				continue // gone since its folder was listed
			}
			if err != nil {
				return nil, nil, nil, err
			}
			entries = append(entries, Entry{Path: name, Size: info.Size(), Modified: info.ModTime()})
		}
	}
	return entries, below, findings, nil
}

func holdsSite(fsys fs.FS, folder string) bool {
	_, err := fs.Stat(fsys, path.Join(folder, SiteMark))
	return err == nil
}

// Hidden reports whether a file or folder is left out of a journal for its name,
// with all that is below it.
func Hidden(base string) bool { return strings.HasPrefix(base, ".") || strings.HasPrefix(base, "_") }

// foundAt makes a finding about something of which no bytes were read.
func foundAt(name, rule, text, help string) Finding {
	f := &File{Name: name, lines: []int{0}}
	return Finding{Span: f.Whole(), Level: Warning, Rule: rule, Text: text, Help: help}
}
