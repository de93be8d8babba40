package journal

import (
	"cmp"
	"maps"
	"path"
	"slices"
	"strings"
	"sync"

	"hussif/content/source"
)

// A Journal is all that the maker wrote, with links that can be followed. It is
// made by [Resolve] and never changed.
type Journal struct {
	Settings *Settings

	people     []*Person
	builds     []*Build
	notes      []*Note
	patterns   []*Pattern
	references []*Reference
	materials  []*Material
	techniques []*Technique
	occasions  []*Occasion

	files   map[string]source.Entry // every file of the journal's folder by its path
	records []Record                // by ID
	byID    map[string][]Record     // by ID in lower case; one each, as called wants them
	byName  map[string][]Record     // by the last part of the ID in lower case
	faulty  map[Record]bool
	ties    map[ID][]Tie // by the record linked to

	known *sync.Map // see Known
	trace *Trace    // of what is read, or nil
}

// A Tie is a link from one record to another.
type Tie struct {
	From  Record
	Field string // of the front matter, such as "rests on"; "" for a link in the text
}

// Faulty reports whether a record's file has faults, so that what it does not
// say proves nothing.
func (j *Journal) Faulty(r Record) bool {
	j.trace.Record(r)
	return j.faulty[r]
}

// LinkedFrom returns the links to a record from others, one for each record and
// field, in the order of the records' IDs.
func (j *Journal) LinkedFrom(id ID) []Tie {
	ties := j.ties[id]
	if j.trace != nil {
		j.trace.Ask(Linking, string(id))
		for _, tie := range ties {
			j.trace.Record(tie.From)
		}
	}
	return ties
}

// BuildsFor returns the builds that are for a person, by ID.
func (j *Journal) BuildsFor(p *Person) []*Build { return j.BuildsLinking(p.ID, "for") }

// BuildsFrom returns the builds that are cut from a pattern, by ID.
func (j *Journal) BuildsFrom(p *Pattern) []*Build { return j.BuildsLinking(p.ID, "pattern") }

// BuildsLinking returns the builds that link to a record by one of some fields of
// their own page, by ID.
func (j *Journal) BuildsLinking(id ID, fields ...string) []*Build {
	j.trace.Ask(Linking, string(id))
	var builds []*Build
	for _, tie := range j.ties[id] {
		b, ok := tie.From.(*Build)
		if ok && slices.Contains(fields, tie.Field) && (len(builds) == 0 || builds[len(builds)-1] != b) {
			j.trace.Record(b)
			builds = append(builds, b)
		}
	}
	return builds
}

// Find returns the record that a link written as to means: a whole ID, or the
// last part of one where a single record has it. Where kinds are given only
// records of those count.
func (j *Journal) Find(to string, kinds ...Kind) (Record, bool) { return j.one(to, kinds, Facts) }

// Named does the same for who looks at no more of the record than its ID, its kind,
// its title and the names of its parts.
func (j *Journal) Named(to string, kinds ...Kind) (Record, bool) { return j.one(to, kinds, Named) }

func (j *Journal) one(to string, kinds []Kind, about Aspect) (Record, bool) {
	var found Record
	for _, r := range j.called(to, about) {
		switch {
		case !isOf(r, kinds):
		case found != nil:
			return nil, false
		default:
			found = r
		}
	}
	return found, found != nil
}

// candidates returns all records of some kinds that a link could mean.
func (j *Journal) candidates(to string, kinds []Kind) []Record {
	var found []Record
	for _, r := range j.called(to, Facts) {
		if isOf(r, kinds) {
			found = append(found, r)
		}
	}
	return found
}

func isOf(r Record, kinds []Kind) bool {
	return len(kinds) == 0 || slices.Contains(kinds, r.Head().Kind)
}

// called returns the record of an ID, or else those whose IDs end so.
func (j *Journal) called(to string, about Aspect) []Record {
	key := strings.ToLower(strings.TrimSuffix(to, ".md"))
	found := j.byID[key]
	switch {
	case len(found) > 0:
	case strings.Contains(key, "/"):
		found = j.byID["builds/"+key]
	default:
		found = j.byName[key]
	}
	j.asked(key, found, about)
	return found
}

// FileOf returns the record that a path written in one file means, as relative
// Markdown links do, for who looks no further than with [Journal.Named].
func (j *Journal) FileOf(from *source.File, to string) (Record, bool) {
	name := path.Join(path.Dir(from.Name), to)
	id, _ := placeInFolder(name)
	key := strings.ToLower(string(id))
	found := j.byID[key]
	j.asked(key, found, Named)
	for _, r := range found {
		if r.Head().File.Name == name {
			return r, true
		}
	}
	return nil, false
}

// find returns what a reference means as a record of one type, or nil.
func find[T any, P interface {
	*T
	Record
}](j *Journal, ref Ref, kind Kind) P {
	if ref.IsZero() {
		return nil
	}
	r, ok := j.Find(ref.To, kind)
	if !ok {
		return nil
	}
	return r.(P)
}

// Person returns the person that a link means, or nil.
func (j *Journal) Person(ref Ref) *Person { return find[Person](j, ref, KindPerson) }

// Build returns the build that a link means, or nil.
func (j *Journal) Build(ref Ref) *Build { return find[Build](j, ref, KindBuild) }

// Pattern returns the pattern that a link means, or nil.
func (j *Journal) Pattern(ref Ref) *Pattern { return find[Pattern](j, ref, KindPattern) }

// Material returns the material that a link means, or nil.
func (j *Journal) Material(ref Ref) *Material { return find[Material](j, ref, KindMaterial) }

// Technique returns the technique that a link means, or nil.
func (j *Journal) Technique(ref Ref) *Technique { return find[Technique](j, ref, KindTechnique) }

// Occasion returns the occasion that a link means, or nil.
func (j *Journal) Occasion(ref Ref) *Occasion { return find[Occasion](j, ref, KindOccasion) }

// Resolve puts drafts together: it finds records of one name, gives each build
// its notes, and follows every link.
func Resolve(s *Settings, drafts []Draft, entries []source.Entry) (*Journal, []source.Finding) {
	sorted := make([]*Draft, len(drafts))
	var findings []source.Finding
	for i := range drafts {
		sorted[i] = &drafts[i]
		findings = append(findings, drafts[i].Findings...)
	}
	slices.SortFunc(sorted, func(a, b *Draft) int { return cmp.Compare(a.File.Name, b.File.Name) })
	j, links := resolve(s, sorted, entries)
	return j, links.all(findings)
}

// resolve does so with drafts in the order of their names. Their records may have
// been those of a journal before.
func resolve(s *Settings, drafts []*Draft, entries []source.Entry) (*Journal, links) {
	j := &Journal{
		Settings: s,
		files:    make(map[string]source.Entry, len(entries)),
		records:  make([]Record, 0, len(drafts)),
		byID:     make(map[string][]Record, len(drafts)),
		byName:   make(map[string][]Record, len(drafts)),
		faulty:   make(map[Record]bool),
		known:    new(sync.Map),
	}
	for _, e := range entries {
		j.files[e.Path] = e
	}
	var l links
	for _, d := range drafts {
		if d.Record == nil {
			continue
		}
		page := d.Record.Head()
		key := strings.ToLower(string(page.ID))
		if first := j.byID[key]; len(first) > 0 {
			l.clashes = append(l.clashes, twoOfOneName(page, first[0].Head()))
			continue
		}
		j.byID[key] = []Record{d.Record}
		name := strings.ToLower(page.ID.Name())
		j.byName[name] = append(j.byName[name], d.Record)
		if d.Faulty {
			j.faulty[d.Record] = true
		}
		j.records = append(j.records, d.Record)
	}
	slices.SortFunc(j.records, byID)
	for _, r := range j.records {
		j.shelve(r)
	}
	j.sort()
	j.giveNotes()
	l.follow(j)
	j.ties = l.ties(j)
	return j, l
}

// changed returns the journal after the facts of some of its records have changed, and
// nothing else: neither which records and files there are, nor what they are called.
func (j *Journal) changed(l links, drafts []*Draft, news *News) *Journal {
	next := *j
	next.known = new(sync.Map)
	next.faulty = maps.Clone(j.faulty)
	next.notes, next.occasions = slices.Clone(j.notes), slices.Clone(j.occasions)
	next.sort()
	for _, b := range j.builds {
		b.Notes = nil
	}
	var records []Record
	for _, d := range drafts {
		news.facts(d.Record) // with the build that it belonged to
		records = append(records, d.Record)
		if delete(next.faulty, d.Record); d.Faulty {
			next.faulty[d.Record] = true
		}
	}
	for _, n := range j.notes {
		n.Of = nil
	}
	next.giveNotes()
	for _, r := range records {
		news.facts(r)
		for _, out := range l.of[r].out {
			news.link(out.to)
		}
	}
	l.again(&next, records)
	for _, r := range records {
		for _, out := range l.of[r].out {
			news.link(out.to)
		}
	}
	next.ties = maps.Clone(j.ties)
	for id := range news.linked {
		next.ties[id] = l.tiesTo(id, j.ties[id], records)
	}
	return &next
}

// sort puts what goes by its day in order.
func (j *Journal) sort() {
	slices.SortStableFunc(j.notes, func(a, b *Note) int {
		return cmp.Or(cmp.Compare(a.Date, b.Date), cmp.Compare(a.ID, b.ID))
	})
	slices.SortStableFunc(j.occasions, func(a, b *Occasion) int {
		return cmp.Or(cmp.Compare(a.Date, b.Date), cmp.Compare(a.ID, b.ID))
	})
}

func (j *Journal) shelve(r Record) {
	switch r := r.(type) {
	case *Person:
		j.people = append(j.people, r)
	case *Build:
		r.Notes = nil
		j.builds = append(j.builds, r)
	case *Note:
		r.Of = nil
		j.notes = append(j.notes, r)
	case *Pattern:
		j.patterns = append(j.patterns, r)
	case *Reference:
		j.references = append(j.references, r)
	case *Material:
		j.materials = append(j.materials, r)
	case *Technique:
		j.techniques = append(j.techniques, r)
	case *Occasion:
		j.occasions = append(j.occasions, r)
	}
}

// giveNotes hands each note to the build that it names or in whose folder it lies.
func (j *Journal) giveNotes() {
	for _, n := range j.notes {
		of := j.Build(n.Build)
		if n.Build.IsZero() {
			of = j.buildAround(n.ID)
		}
		if of != nil {
			n.Of = of
			of.Notes = append(of.Notes, n)
		}
	}
}

func (j *Journal) buildAround(id ID) *Build {
	for dir := path.Dir(string(id)); dir != "." && dir != "/"; dir = path.Dir(dir) {
		for _, r := range j.byID[strings.ToLower(dir)] {
			if b, ok := r.(*Build); ok {
				return b
			}
		}
	}
	return nil
}

func twoOfOneName(page, first *Page) source.Finding {
	f := source.Found(page.File.Span(0, 0), source.Error, TwoOfOneName, "two files make the page %q", first.ID)
	f.Help = "rename one of them; capitals make no difference"
	f.Related = []source.Place{{Span: first.File.Span(0, 0), Text: "the other one"}}
	return f
}
