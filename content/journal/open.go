package journal

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"runtime"
	"slices"
	"strings"

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
}

// Read reads the files of a journal, on as many workers as there are processors.
// The error is [ErrNoJournal] or trouble with the disk.
func Read(fsys fs.FS) (*Folder, error) {
	entries, findings, err := source.Scan(fsys)
	if err != nil {
		return nil, fmt.Errorf("looking through the journal: %w", err)
	}
	var texts []source.Entry
	for _, e := range entries {
		if e.Path == SettingsFile || isNote(e.Path) {
			texts = append(texts, e)
		}
	}
	if !slices.ContainsFunc(texts, belongs) {
		return nil, ErrNoJournal
	}
	data := make([][]byte, len(texts))
	err = eachOnWorkers(len(texts), func(i int) (err error) {
		data[i], err = load(fsys, texts[i])
		return err
	})
	if err != nil {
		return nil, err
	}
	f := &Folder{Entries: entries, Texts: make(map[string][]byte, len(texts)), findings: findings}
	for i, e := range texts {
		f.Texts[e.Path] = data[i]
	}
	return f, nil
}

// Journal types what was read, on as many workers as there are processors, and
// puts it together. What it returns does not depend on their number. Each record is
// shown to see with the tree of its text, by any worker, before the tree is dropped;
// see may be nil.
func (f *Folder) Journal(see func(Record, ast.Node)) (*Journal, []source.Finding) {
	findings := slices.Clone(f.findings)
	var settingsFile *source.File
	data, hasSettings := f.Texts[SettingsFile]
	if hasSettings {
		file, loading := source.Load(SettingsFile, data)
		findings = append(findings, loading...)
		if len(loading) == 0 {
			settingsFile = file
		}
	}
	settings, found := ParseSettings(settingsFile)
	findings = append(findings, found...)
	parser := NewParser(settings)
	parser.see = see
	drafts := f.parse(parser)
	if hasSettings && (settingsFile == nil || unreadable(found)) {
		for i := range drafts {
			drafts[i].Findings = slices.DeleteFunc(drafts[i].Findings, restsOnSettings)
		}
	}
	j, found := Resolve(settings, drafts, f.Entries)
	return j, source.Sort(append(findings, found...))
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

func (f *Folder) parse(p *Parser) []Draft {
	var names []string
	for _, e := range f.Entries {
		if isNote(e.Path) {
			names = append(names, e.Path)
		}
	}
	drafts := make([]Draft, len(names))
	// No draft can fail: what is wrong with it is among its findings.
	_ = eachOnWorkers(len(names), func(i int) error {
		drafts[i] = p.Parse(source.Load(names[i], f.Texts[names[i]]))
		return nil
	})
	return drafts
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
	var b bytes.Buffer
	b.Grow(int(min(e.Size, source.MaxSize)) + bytes.MinRead)
	if _, err := b.ReadFrom(io.LimitReader(r, source.MaxSize+1)); err != nil {
		return nil, fmt.Errorf("reading %s: %w", e.Path, err)
	}
	return b.Bytes(), nil
}
