package intake

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"runtime"
	"slices"
	"strings"
	"sync"

	"golang.org/x/sync/errgroup"

	"hussif/content/amend"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
)

// A Sorting is what a plan is made from.
type Sorting struct {
	Journal *journal.Journal
	Files   fs.FS          // of the journal
	Entries []source.Entry // all of them, by path
	Camera  fs.FS          // the camera's folder
	Except  string         // a folder in it that is not looked at, or ""
	Build   *journal.Build // that all pictures are of; nil to go by the days of its notes

	// Looking and Proving, where they are set, are told how many files have been
	// looked at, and then how many pictures to their last pixel. Neither is called
	// twice at once.
	Looking, Proving func(done, total int)
}

// A Plan says what goes where.
type Plan struct {
	Notes   []Entry // by day
	Doubles []Double
	Left    []Left
}

// Pictures counts the pictures that go into notes.
func (p *Plan) Pictures() int {
	n := 0
	for _, e := range p.Notes {
		n += len(e.Pictures)
	}
	return n
}

// An Entry is a note with the pictures that go into it.
type Entry struct {
	Day      edtf.Day
	Build    *journal.Build
	Why      string // this build; "" where it was asked for
	Note     string // its file, from the journal's folder
	New      bool
	Instead  string // why a note of that day that is there does not take them
	Pictures []Picture

	before []byte // what the note holds, unless it is new
	kind   string // that a new note has to state
}

// A Picture is a shot with its place in the journal.
type Picture struct {
	Shot
	To   string // from the journal's folder
	Here bool   // it was copied before, by a run that was stopped
}

// A Double is a picture that stays out because it is there already.
type Double struct {
	Path string // from the camera's folder
	Same string // the other: a file of the journal, or of the camera's folder
	Here bool   // whether Same is in the journal
}

// ErrWhichBuild is returned where nothing tells which build pictures are of.
var ErrWhichBuild = errors.New("no build has a note yet, so nothing tells which one these pictures are of")

// Plan looks at all files of the camera's folder. Nothing is written. The error is
// [ErrWhichBuild], the context's, or trouble with the camera's folder or the
// journal as a whole.
func (s *Sorting) Plan(ctx context.Context) (*Plan, error) {
	files, left, err := list(s.Camera, s.Except)
	if err != nil {
		return nil, err
	}
	p := &planner{Sorting: s, plan: &Plan{Left: left}, album: newAlbum(s.Files, s.Entries, s.Journal),
		taken: make(names), called: make(names), seen: make(map[string]string)}
	for _, e := range s.Entries {
		p.taken.take(e.Path)
	}
	for _, r := range s.Journal.Records() {
		p.called.take(r.Head().ID.Name())
	}
	for i, f := range files {
		if err := p.sort(ctx, f); err != nil {
			return nil, err
		}
		if s.Looking != nil {
			s.Looking(i+1, len(files))
		}
	}
	if err := p.prove(ctx); err != nil {
		return nil, err
	}
	slices.SortFunc(p.plan.Left, func(a, b Left) int { return cmp.Compare(a.Path, b.Path) })
	if err := p.settle(); err != nil {
		return nil, err
	}
	return p.plan, nil
}

type planner struct {
	*Sorting
	plan   *Plan
	album  *album
	taken  names             // files of the journal
	called names             // its pages, by the last part of their IDs
	seen   map[string]string // the camera's files by their hash
	shots  []Picture
}

// sort tells one file from those that are there already.
func (p *planner) sort(ctx context.Context, f file) error {
	shot, left, err := look(ctx, p.Camera, f)
	if err != nil {
		return err
	}
	if left != nil {
		p.plan.Left = append(p.plan.Left, *left)
		return nil
	}
	here, err := p.album.holding(ctx, shot)
	if err != nil {
		return err
	}
	if first := p.seen[shot.sum.String()]; first != "" {
		p.plan.Doubles = append(p.plan.Doubles, Double{shot.Path, first, false})
		return nil
	}
	p.seen[shot.sum.String()] = shot.Path
	unfinished := slices.IndexFunc(here, func(name string) bool {
		return !p.album.shown[name] && path.Base(path.Dir(name)) == photosFolder && isNumbered(path.Base(name), nameFor(shot))
	})
	switch {
	case unfinished >= 0 && !slices.ContainsFunc(here, func(name string) bool { return p.album.shown[name] }):
		p.shots = append(p.shots, Picture{Shot: shot, To: here[unfinished], Here: true})
	case len(here) > 0:
		p.plan.Doubles = append(p.plan.Doubles, Double{shot.Path, here[0], true})
	default:
		p.shots = append(p.shots, Picture{Shot: shot})
	}
	return nil
}

// prove takes out what shows only now to be damaged. A few pictures at once are
// enough: each takes its memory.
func (p *planner) prove(ctx context.Context) error {
	left := make([]*Left, len(p.shots))
	group, ctx := errgroup.WithContext(ctx)
	group.SetLimit(min(runtime.GOMAXPROCS(0), 4))
	var counting sync.Mutex
	done := 0
	for i, pic := range p.shots {
		group.Go(func() (err error) {
			if left[i], err = pic.prove(ctx, p.Camera); err != nil {
				return err
			}
			if p.Proving != nil {
				counting.Lock()
				defer counting.Unlock()
				done++
				p.Proving(done, len(p.shots))
			}
			return nil
		})
	}
	if err := group.Wait(); err != nil {
		return err
	}
	sound := p.shots[:0]
	for i, l := range left {
		if l != nil {
			p.plan.Left = append(p.plan.Left, *l)
		} else {
			sound = append(sound, p.shots[i])
		}
	}
	p.shots = sound
	return nil
}

// photosFolder is where in a build's folder pictures lie.
const photosFolder = "photos"

// settle gives each day's pictures a build and a note.
func (p *planner) settle() error {
	slices.SortStableFunc(p.shots, func(a, b Picture) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), a.moment().Compare(b.moment()), cmp.Compare(a.Path, b.Path))
	})
	for from := 0; from < len(p.shots); {
		day := p.shots[from].Day
		to := from
		for to < len(p.shots) && p.shots[to].Day == day {
			to++
		}
		if err := p.day(day, p.shots[from:to]); err != nil {
			return err
		}
		from = to
	}
	return nil
}

func (p *planner) day(day edtf.Day, pictures []Picture) error {
	build, why := p.Build, ""
	if build == nil {
		if build, why = choose(p.Journal, day); build == nil {
			return ErrWhichBuild
		}
	}
	folder := string(build.ID)
	photos := folder + "/" + photosFolder
	if info, err := fs.Lstat(p.Files, photos); err == nil && !info.IsDir() {
		return fmt.Errorf("%s is a file or a link; pictures go into a folder of that name: rename it", photos)
	}
	e := Entry{Day: day, Build: build, Why: why}
	for _, pic := range pictures {
		switch {
		case !pic.Here:
			pic.To = p.freeName(path.Join(photos, nameFor(pic.Shot)))
		case path.Dir(pic.To) != photos:
			// It was meant for another build.
			p.plan.Doubles = append(p.plan.Doubles, Double{pic.Path, pic.To, true})
			continue
		}
		e.Pictures = append(e.Pictures, pic)
	}
	if len(e.Pictures) == 0 {
		return nil
	}
	if err := p.note(&e, folder); err != nil {
		return err
	}
	p.plan.Notes = append(p.plan.Notes, e)
	return nil
}

// freeName takes a name that no file of the journal has, numbered where it must be.
func (p *planner) freeName(name string) string {
	n := 1
	for !p.isFree(numbered(name, n)) {
		n++
	}
	p.taken.take(numbered(name, n))
	return numbered(name, n)
}

// isFree reports whether nothing has a name, not even what is no file of the journal.
func (p *planner) isFree(name string) bool {
	_, err := fs.Lstat(p.Files, name)
	return p.taken.free(name) && errors.Is(err, fs.ErrNotExist)
}

// note finds a note of the day that can take the pictures, or names a new one.
func (p *planner) note(e *Entry, folder string) error {
	for _, n := range e.Build.Notes {
		if n.Date != e.Day {
			continue
		}
		if p.Journal.Faulty(n) {
			e.Instead = n.File.Name + " has errors"
			continue
		}
		before, err := fs.ReadFile(p.Files, n.File.Name)
		if err != nil {
			return fmt.Errorf("reading the journal: %w", err)
		}
		if _, err := withPictures(n.File.Name, before, e.paths(path.Dir(n.File.Name))); err != nil {
			refusal, ok := errors.AsType[*amend.Refusal](err)
			if !ok {
				return err
			}
			e.Instead = n.File.Name + ": " + refusal.Reason
			continue
		}
		e.Note, e.before, e.Instead = n.File.Name, bytes.Clone(before), ""
		return nil
	}
	e.New = true
	if !strings.HasPrefix(folder, "builds/") {
		e.kind = string(journal.KindNote)
	}
	name := newNoteName(e.Day)
	n := 1
	for !p.isFree(path.Join(folder, numbered(name, n))) || !p.called.free(strings.TrimSuffix(numbered(name, n), ".md")) {
		n++
	}
	e.Note = path.Join(folder, numbered(name, n))
	p.taken.take(e.Note)
	p.called.take(strings.TrimSuffix(path.Base(e.Note), ".md"))
	return nil
}

// paths returns the pictures as a note in a folder writes them.
func (e *Entry) paths(folder string) []string {
	out := make([]string, len(e.Pictures))
	for i, p := range e.Pictures {
		out[i] = relative(folder, p.To)
	}
	return out
}
