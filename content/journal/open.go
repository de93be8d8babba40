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

	"golang.org/x/sync/errgroup"

	"hussif/content/front"
	"hussif/content/source"
)

// ErrNoJournal is returned for a folder that holds no journal.
var ErrNoJournal = errors.New("there is no journal here")

// Open reads the journal in a folder. It reads files on as many workers as there
// are processors; what it returns does not depend on their number. The error is
// [ErrNoJournal] or trouble with the disk.
func Open(fsys fs.FS) (*Journal, []source.Finding, error) {
	entries, findings, err := source.Scan(fsys)
	if err != nil {
		return nil, nil, fmt.Errorf("looking through the journal: %w", err)
	}
	var settingsFile *source.File
	var names []string
	hasSettings := false
	for _, e := range entries {
		switch {
		case e.Path == SettingsFile:
			f, loading, err := load(fsys, e.Path)
			if err != nil {
				return nil, nil, err
			}
			findings = append(findings, loading...)
			hasSettings = true
			if len(loading) == 0 {
				settingsFile = f
			}
		case strings.EqualFold(path.Ext(e.Path), ".md"):
			names = append(names, e.Path)
		}
	}
	if !hasSettings && !holdsKinds(names) {
		return nil, nil, ErrNoJournal
	}
	settings, found := ParseSettings(settingsFile)
	findings = append(findings, found...)
	drafts, err := parseAll(fsys, NewParser(settings), names)
	if err != nil {
		return nil, nil, err
	}
	if hasSettings && (settingsFile == nil || unreadable(found)) {
		for i := range drafts {
			drafts[i].Findings = slices.DeleteFunc(drafts[i].Findings, restsOnSettings)
		}
	}
	j, found := Resolve(settings, drafts, entries)
	return j, source.Sort(append(findings, found...)), nil
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

func holdsKinds(names []string) bool {
	for _, name := range names {
		folder, _, _ := strings.Cut(name, "/")
		if folders[folder] != "" {
			return true
		}
	}
	return false
}

func parseAll(fsys fs.FS, p *Parser, names []string) ([]Draft, error) {
	drafts := make([]Draft, len(names))
	var g errgroup.Group
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		g.Go(func() error {
			for i := w; i < len(names); i += workers {
				f, loading, err := load(fsys, names[i])
				if err != nil {
					return err
				}
				drafts[i] = p.Parse(f, loading)
			}
			return nil
		})
	}
	return drafts, g.Wait()
}

// load reads a file, but no more of it than a journal may hold.
func load(fsys fs.FS, name string) (*source.File, []source.Finding, error) {
	r, err := fsys.Open(name)
	if err != nil {
		return nil, nil, fmt.Errorf("reading the journal: %w", err)
	}
	defer r.Close()
	info, err := r.Stat()
	if err != nil {
		return nil, nil, fmt.Errorf("reading the journal: %w", err)
	}
	var b bytes.Buffer
	b.Grow(int(min(info.Size(), source.MaxSize)) + bytes.MinRead)
	if _, err := b.ReadFrom(io.LimitReader(r, source.MaxSize+1)); err != nil {
		return nil, nil, fmt.Errorf("reading %s: %w", name, err)
	}
	f, findings := source.Load(name, b.Bytes())
	return f, findings, nil
}
