package journal

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"runtime"
	"slices"
	"strings"
	"time"

	"github.com/yuin/goldmark/ast"
	"golang.org/x/sync/errgroup"

	"hussif/content/front"
	"hussif/content/source"
)

// ErrNoJournal is returned for a folder that holds no journal.
var ErrNoJournal = errors.New("there is no journal here")

// A Folder is a journal's folder as it was read. It is made by [Read] and never
// changed.
type Folder struct {
	Entries  []source.Entry    // all its files
	Texts    map[string][]byte // those that the journal is made from, by path: its settings and notes
	findings []source.Finding
	read     time.Time // when the reading began
}

// Read reads the files of a journal, on as many workers as there are processors.
// The error is [ErrNoJournal] or trouble with the disk.
func Read(fsys fs.FS) (*Folder, error) {
	entries, findings, err := source.Scan(fsys)
	if err != nil {
		return nil, fmt.Errorf("looking through the journal: %w", err)
	}
	return (&Folder{}).with(fsys, entries, findings)
}

// Again returns the folder as it is now where some of its folders are looked at
// again, each without what lies below it but for folders that were not there before.
// All else is taken to be as it was. It errs like [Read].
func (f *Folder) Again(fsys fs.FS, folders []string) (*Folder, error) {
	known := make(map[string]bool)
	for _, e := range f.Entries {
		for dir := path.Dir(e.Path); !known[dir]; dir = path.Dir(dir) {
			known[dir] = true
		}
	}
	var entries []source.Entry
	var findings []source.Finding
	stale := make(map[string]bool) // folders of which nothing that was known counts
	rest := slices.Clone(folders)
	for len(rest) > 0 {
		folder := rest[len(rest)-1]
		rest = rest[:len(rest)-1]
		if stale[folder] {
			continue
		}
		stale[folder] = true
		found, below, faults, err := source.ScanFolder(fsys, folder)
		if err != nil {
			return nil, fmt.Errorf("looking through the journal: %w", err)
		}
		entries, findings = append(entries, found...), append(findings, faults...)
		for _, sub := range below {
			if !known[sub] {
				rest = append(rest, sub)
			}
		}
		for dir := range known {
			if dir != "." && path.Dir(dir) == folder && !slices.Contains(below, dir) {
				rest = append(rest, dir) // it is gone, and so is all below it
			}
		}
	}
	for _, e := range f.Entries {
		if !stale[path.Dir(e.Path)] {
			entries = append(entries, e)
		}
	}
	for _, finding := range f.findings {
		if !stale[path.Dir(finding.Span.File.Name)] {
			findings = append(findings, finding)
		}
	}
	slices.SortFunc(entries, func(a, b source.Entry) int { return strings.Compare(a.Path, b.Path) })
	return f.with(fsys, entries, findings)
}

// settled is how long ago a file must have been written for its size and time to
// tell that it has not changed since: disks count time in steps of up to two seconds.
const settled = 3 * time.Second

// with reads what a folder holds of these files, and keeps what f has of those that
// have not changed.
func (f *Folder) with(fsys fs.FS, entries []source.Entry, findings []source.Finding) (*Folder, error) {
	out := &Folder{Entries: entries, Texts: make(map[string][]byte, len(entries)), findings: findings, read: time.Now()}
	var unread []source.Entry
	journal := false
	had := 0
	for _, e := range entries {
		if e.Path != SettingsFile && !isNote(e.Path) {
			continue
		}
		journal = journal || belongs(e)
		for had < len(f.Entries) && f.Entries[had].Path < e.Path {
			had++
		}
		if had < len(f.Entries) && f.Entries[had] == e && f.read.Sub(e.Modified) > settled {
			out.Texts[e.Path] = f.Texts[e.Path]
		} else {
			unread = append(unread, e)
		}
	}
	if !journal {
		return nil, ErrNoJournal
	}
	data := make([][]byte, len(unread))
	err := eachOnWorkers(len(unread), func(i int) (err error) {
		data[i], err = load(fsys, unread[i])
		if errors.Is(err, fs.ErrNotExist) {
			return nil // gone since its folder was listed
		}
		return err
	})
	if err != nil {
		return nil, err
	}
	gone := make(map[string]bool)
	for i, e := range unread {
		if out.Texts[e.Path] = data[i]; data[i] == nil {
			delete(out.Texts, e.Path)
			gone[e.Path] = true
		}
	}
	if len(gone) > 0 {
		out.Entries = slices.DeleteFunc(slices.Clone(entries), func(e source.Entry) bool { return gone[e.Path] })
	}
	return out, nil
}

// Journal types what was read, on as many workers as there are processors, and
// puts it together. What it returns does not depend on their number. Each record is
// shown to see with the tree of its text, by any worker, before the tree is dropped;
// see may be nil.
func (f *Folder) Journal(see func(Record, ast.Node)) (*Journal, []source.Finding) {
	u := new(Keeper).Update(f, see)
	return u.Journal, u.Findings
}

// Open reads the journal in a folder. The error is [ErrNoJournal] or trouble with
// the disk.
func Open(fsys fs.FS) (*Journal, []source.Finding, error) {
	folder, err := Read(fsys)
	if err != nil {
		return nil, nil, err
	}
	j, findings := folder.Journal(nil)
	return j, findings, nil
}

// unreadable reports whether a file's findings say that none of it was decoded.
func unreadable(findings []source.Finding) bool {
	return slices.ContainsFunc(findings, func(f source.Finding) bool {
		return f.Rule == front.NotYAML || f.Rule == front.NotPlain
	})
}

// restsOnSettings reports whether a fault may be due to settings that could not be
// read: they name measures, and the currency of bare amounts.
func restsOnSettings(f source.Finding) bool { return f.Rule == UnknownMeasure || f.Rule == NotMoney }

func isNote(name string) bool { return strings.EqualFold(path.Ext(name), ".md") }

// belongs reports whether a text shows that its folder is a journal's.
func belongs(e source.Entry) bool {
	folder, _, _ := strings.Cut(e.Path, "/")
	return e.Path == SettingsFile || folders[folder] != ""
}

// eachOnWorkers does something for each number below n, on as many workers as
// there are processors. The error is the first of any.
func eachOnWorkers(n int, do func(i int) error) error {
	var g errgroup.Group
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		g.Go(func() error {
			for i := w; i < n; i += workers {
				if err := do(i); err != nil {
					return err
				}
			}
			return nil
		})
	}
	return g.Wait()
}

// load reads a file, but hardly more of it than a journal may hold.
func load(fsys fs.FS, e source.Entry) ([]byte, error) {
	r, err := fsys.Open(e.Path)
	if err != nil {
		return nil, fmt.Errorf("reading the journal: %w", err)
	}
	defer r.Close()
	data := make([]byte, 0, min(e.Size, source.MaxSize)+1) // one more, to see the end by
	for len(data) <= source.MaxSize {
		n, err := r.Read(data[len(data):cap(data)])
		data = data[:len(data)+n]
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("reading %s: %w", e.Path, err)
		}
		if len(data) == cap(data) {
			data = slices.Grow(data, 1) // it has grown meanwhile
		}
	}
	return data, nil
}
