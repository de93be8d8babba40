package evidence

import (
	"cmp"
	"slices"
	"strings"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/near"
)

// A Book is every feature that a journal, or several together, speak of.
type Book struct {
	Features []Feature // by name

	customs edtf.Customs
	find    func(journal.Ref) (journal.Record, bool)
	faulty  func(journal.Record) bool // it could not be read whole
	objects []*Object
	of      map[*journal.Reference]*Object
	at      map[string]int // place in Features by folded name
}

// A Feature is a detail of dress with what the references say of it. One name may
// be written with other capitals and blanks; Name is the way most write it.
type Feature struct {
	Name     string
	Shown    []*Object        // oldest first, those without a date last
	Lacked   []*Object        // the same
	Disputed []*Object        // said both to show and to lack it
	Claimed  []*journal.Build // in the journal's order
	Uses     []Use            // wherever the name is written, references first
}

// A Use is one place where a feature is named.
type Use struct {
	Word journal.Word
	In   journal.Record
}

// Gather returns what a journal says of features, in its references and builds. It is
// worked out once for a journal.
func Gather(j *journal.Journal) *Book {
	return journal.Known(j, gathered{}, func() *Book { return gather(j.Traced(nil)) })
}

type gathered struct{} // the key of the book

func gather(j *journal.Journal) *Book {
	b := Pool(j.References(), j.Builds(), j.Settings.Customs)
	b.find = func(ref journal.Ref) (journal.Record, bool) { return j.Find(ref.To) }
	b.faulty = j.Faulty
	return b
}

// Pool returns what references say of features, and which builds claim these, whatever
// journals they are from. No two may have the same ID; a build rests on references of
// that ID and on nothing else.
func Pool(references []*journal.Reference, builds []*journal.Build, customs edtf.Customs) *Book {
	byID := make(map[string]*journal.Reference, len(references))
	for _, r := range references {
		byID[string(r.ID)] = r
	}
	b := &Book{
		customs: customs, objects: objects(references, customs),
		of: make(map[*journal.Reference]*Object), at: make(map[string]int),
		find: func(ref journal.Ref) (journal.Record, bool) {
			r, ok := byID[ref.To]
			return r, ok
		},
		faulty: func(journal.Record) bool { return false },
	}
	for _, o := range b.objects {
		b.hear(o)
		for _, r := range o.References {
			b.of[r] = o
		}
	}
	for _, build := range builds {
		for _, claim := range build.Features {
			f := b.feature(Use{claim.What, build})
			if f != nil && !slices.Contains(f.Claimed, build) {
				f.Claimed = append(f.Claimed, build)
			}
		}
	}
	for i := range b.Features {
		f := &b.Features[i]
		f.Name = usual(f.Uses)
		for _, list := range [][]*Object{f.Shown, f.Lacked, f.Disputed} {
			slices.SortFunc(list, byDate)
		}
	}
	slices.SortFunc(b.Features, func(f, g Feature) int { return cmp.Compare(near.Folded(f.Name), near.Folded(g.Name)) })
	for i, f := range b.Features {
		b.at[near.Folded(f.Name)] = i
	}
	return b
}

// hear puts down what is said of an object, once however often it is said.
func (b *Book) hear(o *Object) {
	type saying struct{ shown, lacked bool }
	said := make(map[string]saying)
	var order []string
	note := func(words []journal.Word, r *journal.Reference, add saying) {
		for _, word := range words {
			if b.feature(Use{word, r}) == nil {
				continue
			}
			key := near.Folded(word.Text)
			before, known := said[key]
			if !known {
				order = append(order, key)
			}
			said[key] = saying{before.shown || add.shown, before.lacked || add.lacked}
		}
	}
	for _, r := range o.References {
		note(r.Shows, r, saying{shown: true})
		note(r.Lacks, r, saying{lacked: true})
	}
	for _, key := range order {
		f := &b.Features[b.at[key]]
		switch s := said[key]; {
		case s.shown && s.lacked:
			f.Disputed = append(f.Disputed, o)
		case s.shown:
			f.Shown = append(f.Shown, o)
		default:
			f.Lacked = append(f.Lacked, o)
		}
	}
}

// feature returns the feature that a word names, with the use put down, or nil for
// a word that says nothing.
func (b *Book) feature(u Use) *Feature {
	key := near.Folded(u.Word.Text)
	if key == "" {
		return nil
	}
	i, known := b.at[key]
	if !known {
		i = len(b.Features)
		b.at[key] = i
		b.Features = append(b.Features, Feature{})
	}
	f := &b.Features[i]
	f.Uses = append(f.Uses, u)
	return f
}

// For returns the feature of a name, whatever its capitals and blanks. A name that
// nobody uses gives a feature without evidence, and false.
func (b *Book) For(name string) (Feature, bool) {
	i, known := b.at[near.Folded(name)]
	if !known {
		return Feature{Name: strings.Join(strings.Fields(name), " ")}, false
	}
	return b.Features[i], true
}

// Names returns the names of all features, in order.
func (b *Book) Names() []string {
	var names []string
	for _, f := range b.Features {
		names = append(names, f.Name)
	}
	return names
}

// Attested returns the narrowest span that holds all dates at which the feature is
// shown, in years; the zero date where it is never shown at a known one.
func (f Feature) Attested() edtf.Date {
	var spans []edtf.Date
	for _, o := range f.Shown {
		spans = append(spans, o.Span)
	}
	all := covering(spans)
	all.Text, all.EDTF = Years(all), ""
	return all
}

// usual returns the way of writing a name that most use.
func usual(uses []Use) string {
	var names []string
	for _, u := range uses {
		names = append(names, u.Word.Text)
	}
	return near.Usual(names)
}
