package output

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"reflect"
	"slices"
	"strings"
	"sync"

	"hussif/build/keep"
	"hussif/content/source"
)

// A run writes a site into one folder, which no other run writes meanwhile.
type run struct {
	dir    string // as the caller called it
	root   *os.Root
	plan   *plan
	hidden bool // nobody looks at the folder before it is whole

	old   map[string]entry       // what the mark names
	found map[string]fs.FileInfo // what of that is on disk
	begin func() error           // once, before the first file changes
	parts func() error           // once, before the first part file
	begun bool                   // whether begin has been called
	made  []made                 // beside plan.Files

	strange sync.Map // files that somebody laid where the plan has one, meanwhile

	broken bool // stopped before the end
}

// A made says what became of one file of the plan.
type made struct {
	entry   entry // what the folder now holds of that name; zero if nothing
	written bool
	fault   *Fault
}

func newRun(dir string, root *os.Root, p *plan) *run {
	return &run{dir: dir, root: root, plan: p, broken: true}
}

// write does all of it, in the order that lets a killed run be taken up.
func (r *run) write(ctx context.Context) (Report, error) {
	m, err := readMark(r.root)
	if err != nil {
		return Report{}, fmt.Errorf("%s cannot be relied on: %w; choose another folder", path.Join(r.dir, source.SiteMark), err)
	}
	if m != nil && m.For != r.plan.For {
		return Report{}, &Others{Dir: r.dir, For: m.For}
	}
	if r.found, err = scan(r.dir, r.root, m); err != nil {
		return Report{}, err
	}
	var before mark
	if m != nil {
		before = *m
	}
	r.old = make(map[string]entry, len(before.Files))
	var gone, first []string
	for _, e := range before.Files {
		r.old[e.Path] = e
		switch {
		case r.plan.wants(e.Path):
		case r.plan.obstructs(e.Path):
			first = append(first, e.Path)
		default:
			gone = append(gone, e.Path)
		}
	}
	r.begin = sync.OnceValue(func() error { return r.announce(before.Files) })
	r.parts = sync.OnceValue(func() error { return r.makeParts(m != nil) })
	if err := r.clear(first); err != nil {
		return Report{}, err
	}
	if err := r.makeAll(ctx); err != nil {
		return r.report(first), errors.Join(err, r.stop(before.Files))
	}
	if err := r.clear(gone); err != nil {
		return r.report(first), err
	}
	after, faults := r.outcome()
	if err := errors.Join(r.root.RemoveAll(partsName), r.root.RemoveAll(markDraft)); err != nil {
		return r.report(first), err
	}
	if m == nil || r.begun || !reflect.DeepEqual(before, after) {
		if err := writeMark(r.root, after); err != nil {
			return r.report(first), err
		}
	}
	r.broken = false
	return r.report(append(gone, first...)), faults
}

// announce writes a mark that names the old and the new files together.
func (r *run) announce(old []entry) error {
	m := mark{Version: markVersion, For: r.plan.For, Files: append([]entry{}, old...)}
	for _, f := range r.plan.Files {
		_, had := r.old[f.Path]
		if _, strange := r.strange.Load(f.Path); !had && !strange {
			m.Files = append(m.Files, entry{Path: f.Path})
		}
	}
	r.begun = true
	return writeMark(r.root, m)
}

// stop tidies up after trouble, so that the next run takes nothing for the
// site's own that is not.
func (r *run) stop(old []entry) error {
	err := r.root.RemoveAll(partsName)
	for range r.strange.Range {
		return errors.Join(err, r.announce(old))
	}
	return err
}

// makeParts makes the folder of part files. In a folder without a mark that
// must wait until there is one, or a killed run would leave it without an owner.
func (r *run) makeParts(owned bool) error {
	if !owned {
		if err := r.begin(); err != nil {
			return err
		}
	}
	if err := r.root.RemoveAll(partsName); err != nil {
		return err
	}
	return r.root.Mkdir(partsName, 0o777)
}

// outcome returns the final mark and the joined faults.
func (r *run) outcome() (mark, error) {
	m := mark{Version: markVersion, For: r.plan.For, Files: []entry{}}
	var faults []error
	for _, made := range r.made {
		if made.entry.Path != "" {
			m.Files = append(m.Files, made.entry)
		}
		if made.fault != nil {
			faults = append(faults, made.fault)
		}
	}
	slices.SortFunc(m.Files, func(a, b entry) int { return strings.Compare(a.Path, b.Path) })
	if faults == nil {
		m.Recipe = keep.Sum(r.plan.Recipe)
	}
	return m, errors.Join(faults...)
}

func (r *run) report(removed []string) Report {
	var report Report
	for _, m := range r.made {
		switch {
		case m.fault != nil:
			report.Failed++
		case m.written:
			report.Written++
		case m.entry.Path != "":
			report.Kept++
		}
	}
	for _, name := range removed {
		if r.found[name] != nil {
			report.Removed++
		}
	}
	return report
}
