package circle

import (
	"cmp"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"hussif/build/evidence"
	"hussif/build/export"
	"hussif/build/search"
	"hussif/content/edtf"
	"hussif/content/journal"
)

// A Member is one maker's log, with the site that it lies in.
type Member struct {
	Name  string // of the maker
	From  string // the path of what she handed over, for messages
	Log   *export.Log
	Files fs.FS // of the site; its pictures are taken from there
}

// A Maker is a member with her place in the site.
type Maker struct {
	Member
	Path     string // of her page
	Builds   []*Build
	Next     []*Lesson
	patterns map[string]*Pattern // by ID of her log
	ways     map[string]*Technique
	shown    map[string]*Reference
}

// stem is the maker's own part of addresses.
func (m *Maker) stem() string { return strings.TrimSuffix(path.Base(m.Path), ".html") }

// A Build is a garment with its place in the site.
type Build struct {
	*export.Build
	Maker      *Maker
	Path       string
	Era        edtf.Date
	Patterns   []*Pattern
	Techniques []*Technique
	Next       []*Lesson // written in its log
	Claims     []evidence.Claim

	record *journal.Build // as evidence is gathered from it
}

// A Common is what several makers may use, each of whom tells of it.
type Common[T any] struct {
	Title     string // as most of them call it
	Source    string // where it is from, if anybody says
	Path      string
	Namesakes []*Common[T] // things of that title that are from elsewhere
	Told      []Told[T]
	Builds    []*Build // newest first
	Next      []*Lesson
}

// A Told is what one maker says of a thing.
type Told[T any] struct {
	By   *Maker
	Says *T
}

// A Pattern is what garments are cut after.
type Pattern = Common[export.Pattern]

// A Technique is a way of working.
type Technique = Common[export.Technique]

// A Reference is one maker's page about something that bears witness.
type Reference struct {
	*journal.Reference
	Maker *Maker
	Page  string // on the maker's own site

	Builds []*Build // that rest on it
}

// A Lesson is one thing to do another time.
type Lesson struct {
	*export.Next
	By         *Maker
	Build      *Build // in whose log it is, or nil
	Patterns   []*Pattern
	Techniques []*Technique
}

// A Pool is all that the makers show one another. Lists go by name, builds and lessons by
// day with the newest first.
type Pool struct {
	Makers     []*Maker
	Builds     []*Build
	Patterns   []*Pattern
	Techniques []*Technique
	References []*Reference
	Lessons    []*Lesson
	Evidence   *evidence.Book

	byID map[journal.ID]*Reference
	of   map[journal.ID]*Build
}

// Namesakes returns an error where two members have one name, as when a maker's folder
// and her zip file are both named: nobody could tell them apart.
func Namesakes(members []Member) error {
	by := make(map[string]Member)
	for _, m := range members {
		if other, ok := by[folded(m.Name)]; ok {
			return fmt.Errorf("%s and %s are both of a maker called %s; leave one out, or have one of them write another name as `maker:` in her journal.yaml", other.From, m.From, m.Name)
		}
		by[folded(m.Name)] = m
	}
	return nil
}

// Gather puts together what members show. The order in which they come makes no
// difference.
func Gather(members []Member) *Pool {
	p := &Pool{byID: make(map[journal.ID]*Reference), of: make(map[journal.ID]*Build)}
	paths := newPaths()
	members = slices.Clone(members)
	slices.SortStableFunc(members, func(a, b Member) int {
		return cmp.Or(
			cmp.Compare(search.Fold(a.Name), search.Fold(b.Name)), cmp.Compare(a.Name, b.Name),
			cmp.Compare(a.Log.Title, b.Log.Title), cmp.Compare(a.Log.Site, b.Log.Site),
		)
	})
	for _, m := range members {
		p.Makers = append(p.Makers, &Maker{Member: m, Path: paths.new("makers", m.Name)})
	}
	p.Patterns = join(p.Makers, paths, "patterns", patternsOf, func(m *Maker) *map[string]*Pattern { return &m.patterns })
	p.Techniques = join(p.Makers, paths, "techniques", techniquesOf, func(m *Maker) *map[string]*Technique { return &m.ways })
	for _, m := range p.Makers {
		p.addReferences(m, paths)
		p.addBuilds(m, paths)
	}
	newestFirst(p.Builds)
	for _, b := range p.Builds {
		for _, pattern := range b.Patterns {
			pattern.Builds = append(pattern.Builds, b)
		}
		for _, technique := range b.Techniques {
			technique.Builds = append(technique.Builds, b)
		}
	}
	for _, m := range p.Makers {
		newestFirst(m.Builds)
		p.addLessons(m)
	}
	slices.SortStableFunc(p.Lessons, func(a, b *Lesson) int { return cmp.Compare(b.Day, a.Day) })
	for _, l := range p.Lessons {
		l.tell()
	}
	p.Evidence = p.gatherEvidence()
	for _, b := range p.Builds {
		b.Claims = p.Evidence.Claims(b.record)
		p.rest(b)
	}
	return p
}

// tell lets all know of a lesson that it is about.
func (l *Lesson) tell() {
	l.By.Next = append(l.By.Next, l)
	if l.Build != nil {
		l.Build.Next = append(l.Build.Next, l)
	}
	for _, p := range l.Patterns {
		p.Next = append(p.Next, l)
	}
	for _, t := range l.Techniques {
		t.Next = append(t.Next, l)
	}
}

// rest lets references know of a build that rests on them.
func (p *Pool) rest(b *Build) {
	for _, c := range b.Claims {
		for _, rest := range c.RestsOn {
			r := p.byID[rest.Record.Head().ID]
			if last := len(r.Builds) - 1; last < 0 || r.Builds[last] != b {
				r.Builds = append(r.Builds, b)
			}
		}
	}
}

func (p *Pool) addReferences(m *Maker, paths *paths) {
	m.shown = make(map[string]*Reference)
	for i := range m.Log.References {
		said := &m.Log.References[i]
		r := &Reference{Maker: m, Page: said.Page, Reference: &journal.Reference{
			Type: journal.ReferenceType(said.Type), Date: dateOf(said.Date), Creator: said.Creator, Publisher: said.Publisher,
			Holder: said.Holder, Accession: said.Accession, Address: journal.Address(said.Address),
			Shows: wordsOf(said.Shows), Lacks: wordsOf(said.Lacks),
		}}
		r.Title, r.ID = said.Title, journal.ID(paths.new("references/"+m.stem(), path.Base(said.ID)))
		m.shown[said.ID], p.byID[r.ID] = r, r
		p.References = append(p.References, r)
	}
}

func (p *Pool) addBuilds(m *Maker, paths *paths) {
	for i := range m.Log.Builds {
		said := &m.Log.Builds[i]
		b := &Build{
			Build: said, Maker: m, Path: paths.new("builds/"+m.stem(), path.Base(said.ID)), Era: dateOf(said.Era),
			Patterns: known(m.patterns, said.Patterns), Techniques: known(m.ways, said.Techniques),
		}
		b.record = &journal.Build{Era: b.Era}
		b.record.ID, b.record.Title = journal.ID(b.Path), b.Title
		for _, f := range said.Features {
			feature := journal.Feature{What: journal.Word{Text: f.What}, Departs: f.Departs}
			for _, r := range known(m.shown, f.RestsOn) {
				feature.RestsOn = append(feature.RestsOn, journal.Ref{To: string(r.ID)})
			}
			b.record.Features = append(b.record.Features, feature)
		}
		p.of[b.record.ID] = b
		m.Builds, p.Builds = append(m.Builds, b), append(p.Builds, b)
	}
}

func (p *Pool) addLessons(m *Maker) {
	builds := make(map[string]*Build)
	for _, b := range m.Builds {
		builds[b.ID] = b
	}
	for i := range m.Log.Next {
		said := &m.Log.Next[i]
		p.Lessons = append(p.Lessons, &Lesson{
			Next: said, By: m, Build: builds[said.Build],
			Patterns: known(m.patterns, said.Patterns), Techniques: known(m.ways, said.Techniques),
		})
	}
}

func (p *Pool) gatherEvidence() *evidence.Book {
	var references []*journal.Reference
	for _, r := range p.References {
		references = append(references, r.Reference)
	}
	var builds []*journal.Build
	for _, b := range p.Builds {
		builds = append(builds, b.record)
	}
	return evidence.Pool(references, builds, edtf.Customs{})
}

// known returns those of some IDs that lead to something, each once.
func known[T comparable](by map[string]T, ids []string) []T {
	var out []T
	for _, id := range ids {
		if found, ok := by[id]; ok && !slices.Contains(out, found) {
			out = append(out, found)
		}
	}
	return out
}

// dateOf returns a date of a log, which has been read before.
func dateOf(d *export.Date) edtf.Date {
	if d == nil {
		return edtf.Date{}
	}
	date, err := edtf.Parse(d.EDTF)
	if err != nil {
		return edtf.Date{}
	}
	if d.Words != "" {
		date.Text = d.Words
	}
	return date
}

func wordsOf(texts []string) []journal.Word {
	var out []journal.Word
	for _, text := range texts {
		out = append(out, journal.Word{Text: text})
	}
	return out
}

// newestFirst orders builds by the day of their newest note, those without one last.
func newestFirst(builds []*Build) {
	slices.SortStableFunc(builds, func(a, b *Build) int { return strings.Compare(b.newest(), a.newest()) })
}

// newest returns the day of a build's newest note.
func (b *Build) newest() string {
	newest := b.Finished
	for _, e := range b.Log {
		newest = max(newest, e.Day)
	}
	return newest
}
