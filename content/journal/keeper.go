package journal

import (
	"bytes"
	"maps"
	"reflect"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"

	"hussif/content/source"
)

// A Keeper keeps a journal up to date with its folder. A file is parsed again only
// where its bytes changed, and the journal is put together anew only where what
// its records hold did: not where only words of their texts, or the places of
// things in their files, are others.
//
// The records of a file stay the same pointers while their kind is the same. So a
// journal that a Keeper returned before must not be read any more once [Keeper.Update]
// is called. The zero Keeper is ready.
type Keeper struct {
	settings *Settings
	file     *source.File // of the settings, or nil
	parser   *Parser
	given    []byte           // the settings as read
	found    []source.Finding // in them
	drafts   map[string]*Draft
	texts    map[string][]byte
	entries  []source.Entry
	journal  *Journal
	links    links
}

// An Update says what became of a journal.
type Update struct {
	Journal  *Journal // another pointer than before where facts have changed
	Findings []source.Finding
	Again    []Record // whose files were read again and whose facts are as they were
	News     News     // since the update before
}

// Update takes in the folder as it is now. Each record that is read is shown to see
// with the tree of its text, by any worker; see may be nil.
func (k *Keeper) Update(f *Folder, see func(Record, ast.Node)) Update {
	var u Update
	anew := k.journal == nil || len(k.links.clashes) > 0 || !slices.Equal(k.entries, f.Entries) && !sameNames(k.entries, f.Entries)
	if data, ok := f.Texts[SettingsFile]; k.parser == nil || !bytes.Equal(data, k.given) || ok != (k.given != nil) {
		anew = true
		k.readSettings(f)
	}
	k.parser.see = see
	var names []string
	drafts := make(map[string]*Draft, len(f.Texts))
	for name, data := range f.Texts {
		if name == SettingsFile {
			continue
		}
		if had, ok := k.drafts[name]; ok && same(k.texts[name], data) {
			drafts[name] = had
		} else {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	read := make([]Draft, len(names))
	// No draft can fail: what is wrong with it is among its findings.
	_ = eachOnWorkers(len(names), func(i int) error {
		read[i] = k.parser.Parse(source.Load(names[i], f.Texts[names[i]]))
		return nil
	})
	anew = anew || len(drafts)+len(names) != len(k.drafts)
	var changed []*Draft
	for i, name := range names {
		d := &read[i]
		switch was, alike := d.takePlaceOf(k.drafts[name]); {
		case !was:
			anew = true
		case !alike:
			changed = append(changed, d)
		case d.Record != nil:
			u.Again = append(u.Again, d.Record)
			u.News.read(d.Record)
		}
		drafts[name] = d
	}
	k.drafts, k.texts, k.entries = drafts, f.Texts, f.Entries
	switch {
	case anew:
		u.Again, u.News = nil, News{all: true}
		k.journal, k.links = resolve(k.settings, k.sorted(), f.Entries)
	case len(changed) > 0:
		k.journal = k.journal.changed(k.links, changed, &u.News)
		k.links.again(k.journal, u.Again)
		u.Again = nil
	default:
		k.links.again(k.journal, u.Again)
		k.journal.known.Clear() // it may tell of places, and these may have moved
	}
	u.Journal = k.journal
	u.Findings = k.findings(f)
	return u
}

// sameNames reports whether two folders hold the same files but for the bytes of
// those that are read as texts.
func sameNames(a, b []source.Entry) bool {
	return slices.EqualFunc(a, b, func(a, b source.Entry) bool {
		return a.Path == b.Path && (isNote(a.Path) || a == b)
	})
}

// same reports whether two texts are one, without reading them where they are kept.
func same(a, b []byte) bool {
	if len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0]) {
		return true
	}
	return bytes.Equal(a, b)
}

func (k *Keeper) readSettings(f *Folder) {
	k.file, k.given, k.found = nil, nil, nil
	if data, ok := f.Texts[SettingsFile]; ok {
		k.given = data
		file, loading := source.Load(SettingsFile, data)
		k.found = loading
		if len(loading) == 0 {
			k.file = file
		}
	}
	settings, found := ParseSettings(k.file)
	k.settings, k.found = settings, append(k.found, found...)
	k.parser = NewParser(settings)
	k.drafts = nil
}

func (k *Keeper) sorted() []*Draft {
	out := make([]*Draft, 0, len(k.drafts))
	for _, name := range slices.Sorted(maps.Keys(k.drafts)) {
		out = append(out, k.drafts[name])
	}
	return out
}

// findings puts together all that was found, sorted.
func (k *Keeper) findings(f *Folder) []source.Finding {
	findings := append(slices.Clone(f.findings), k.found...)
	unread := k.given != nil && (k.file == nil || unreadable(k.found))
	for _, d := range k.sorted() {
		for _, finding := range d.Findings {
			if !unread || !restsOnSettings(finding) {
				findings = append(findings, finding)
			}
		}
	}
	return source.Sort(k.links.all(findings))
}

// takePlaceOf has a draft go on as the record of an earlier one of the same file, if
// there was one of the same kind, and reports whether it holds the same facts.
func (d *Draft) takePlaceOf(had *Draft) (was, alike bool) {
	if had == nil {
		return false, false
	}
	if d.Record == nil || had.Record == nil {
		alike := d.Record == nil && had.Record == nil
		return alike, alike
	}
	old, is := reflect.ValueOf(had.Record).Elem(), reflect.ValueOf(d.Record).Elem()
	if old.Type() != is.Type() {
		return false, false
	}
	alike = d.Faulty == had.Faulty && sameFacts(old, is)
	stamp := had.Record.Head().stamp
	var of *Build
	var notes []*Note
	switch r := had.Record.(type) {
	case *Note:
		of = r.Of
	case *Build:
		notes = r.Notes
	}
	old.Set(is)
	switch r := had.Record.(type) {
	case *Note:
		r.Of = of
	case *Build:
		r.Notes = notes
	}
	if alike {
		had.Record.Head().stamp = stamp
	}
	d.Record = had.Record
	return true, alike
}

// notFacts are types that tell where something stands, what was found about it, and
// what Resolve made of it.
var notFacts = []reflect.Type{
	reflect.TypeFor[source.Span](), reflect.TypeFor[*source.File](), reflect.TypeFor[[]source.Finding](),
	reflect.TypeFor[*Build](), reflect.TypeFor[[]*Note](), reflect.TypeFor[source.Sum](),
}

// sameFacts reports whether two values say the same but for the places in the files.
func sameFacts(a, b reflect.Value) bool {
	if slices.Contains(notFacts, a.Type()) {
		return true
	}
	switch a.Kind() {
	case reflect.Struct:
		for i := range a.NumField() {
			if !sameFacts(a.Field(i), b.Field(i)) {
				return false
			}
		}
		return true
	case reflect.Slice, reflect.Array:
		if a.Len() != b.Len() {
			return false
		}
		for i := range a.Len() {
			if !sameFacts(a.Index(i), b.Index(i)) {
				return false
			}
		}
		return true
	case reflect.Map:
		if a.Len() != b.Len() {
			return false
		}
		for _, key := range a.MapKeys() {
			other := b.MapIndex(key)
			if !other.IsValid() || !sameFacts(a.MapIndex(key), other) {
				return false
			}
		}
		return true
	case reflect.Pointer, reflect.Interface:
		if a.IsNil() || b.IsNil() {
			return a.IsNil() == b.IsNil()
		}
		return a.Elem().Type() == b.Elem().Type() && sameFacts(a.Elem(), b.Elem())
	}
	return a.Equal(b)
}

// Answer returns what stands for the answer to a question about a journal: the same
// sum as long as the answer is the same. It is false for aspects that are not the
// journal's own.
func (j *Journal) Answer(q Question) (source.Sum, bool) {
	var h source.Hash
	switch q.About {
	case Facts:
		if found := j.byID[strings.ToLower(q.Of)]; len(found) > 0 {
			addFamily(&h, found[0])
		}
	case Named:
		if found := j.byID[strings.ToLower(q.Of)]; len(found) > 0 {
			page := found[0].Head()
			h.Text(page.Title)
			h.Text(string(page.Kind))
			for _, anchor := range Anchors(found[0]) {
				h.Text(anchor)
			}
		}
	case Text:
		if found := j.byID[strings.ToLower(q.Of)]; len(found) > 0 {
			h.Sum(found[0].Head().sum)
		}
	case Called:
		for _, r := range j.byName[q.Of] {
			h.Text(string(r.Head().ID))
		}
	case Linking:
		for _, tie := range j.ties[ID(q.Of)] {
			h.Text(string(tie.From.Head().ID))
			h.Text(tie.Field)
		}
	case Shelved:
		work := Kind(q.Of) == KindBuild || Kind(q.Of) == KindNote
		for _, r := range j.records {
			page := r.Head()
			if page.Kind == Kind(q.Of) || work && (page.Kind == KindBuild || page.Kind == KindNote) {
				h.Text(string(page.ID))
				h.Sum(page.stamp)
			}
		}
	case Present:
		if _, ok := j.files[q.Of]; ok {
			h.Text("there")
		}
	case Within:
		for _, name := range j.Traced(nil).FilesIn(q.Of) {
			h.Text(name)
		}
	case All:
		for _, r := range j.records {
			h.Text(string(r.Head().ID))
			h.Sum(r.Head().stamp)
		}
	default:
		return source.Sum{}, false
	}
	return h.Done(), true
}

// addFamily adds the facts of a record, and of a build those of its notes.
func addFamily(h *source.Hash, r Record) {
	h.Text(string(r.Head().ID))
	h.Sum(r.Head().stamp)
	if b, ok := r.(*Build); ok {
		for _, n := range b.Notes {
			h.Text(string(n.ID))
			h.Sum(n.stamp)
		}
	}
}
