package lesson

import (
	"slices"
	"strings"

	"hussif/content/journal"
	"hussif/content/near"
	"hussif/content/prose"
)

// readFields takes what the front matter says a lesson is about.
func (l *Lesson) readFields(j *journal.Journal, next *journal.Next) {
	for _, field := range []struct {
		refs  []journal.Ref
		kinds []journal.Kind
	}{
		{next.About, nil},
		{next.Pattern, []journal.Kind{journal.KindPattern}},
		{next.Technique, []journal.Kind{journal.KindTechnique}},
		{next.Material, []journal.Kind{journal.KindMaterial}},
		{next.Person, []journal.Kind{journal.KindPerson}},
	} {
		for _, ref := range field.refs {
			l.add(j, ref.To, field.kinds...)
		}
	}
	for _, word := range next.Garment {
		l.addGarment(word.Text)
	}
}

// readTail takes what the words in brackets after a remark say it is about.
func (l *Lesson) readTail(j *journal.Journal, tail []prose.About) {
	for _, about := range tail {
		to, _, _ := strings.Cut(about.Value, "#")
		switch about.Key {
		case "garment":
			l.addGarment(about.Value)
		case "pattern":
			l.add(j, to, journal.KindPattern)
		case "technique":
			l.add(j, to, journal.KindTechnique)
		case "material":
			l.add(j, to, journal.KindMaterial)
		case "person":
			l.add(j, to, journal.KindPerson)
		default:
			l.add(j, to)
		}
	}
}

// add makes a lesson one about a record, if the link leads to one.
func (l *Lesson) add(j *journal.Journal, to string, kinds ...journal.Kind) {
	r, ok := j.Find(to, kinds...)
	if !ok {
		return
	}
	l.addRecord(r)
}

func (l *Lesson) addRecord(r journal.Record) {
	list := &l.Others
	switch r.(type) {
	case *journal.Pattern:
		list = &l.Patterns
	case *journal.Technique:
		list = &l.Techniques
	case *journal.Material:
		list = &l.Materials
	case *journal.Person:
		list = &l.People
	}
	if id := r.Head().ID; !slices.Contains(*list, id) {
		*list = append(*list, id)
	}
	// A lesson about a garment that was made is one for its kind.
	if b, ok := r.(*journal.Build); ok {
		l.addGarment(b.Garment)
	}
}

func (l *Lesson) addGarment(word string) {
	word = near.Folded(word)
	if word != "" && !slices.Contains(l.Garments, word) {
		l.Garments = append(l.Garments, word)
	}
}

// inherit fills in what nothing was written of, by the record it is written in.
func (l *Lesson) inherit(j *journal.Journal, from journal.Record) {
	var techniques []journal.Ref
	var b *journal.Build
	switch r := from.(type) {
	case *journal.Note:
		techniques, b = r.Techniques, r.Of
	case *journal.Build:
		techniques, b = r.Techniques, r
	case *journal.Pattern, *journal.Technique, *journal.Material, *journal.Person:
		l.addRecord(r)
	}
	if len(l.Techniques) == 0 {
		for _, ref := range techniques {
			l.add(j, ref.To, journal.KindTechnique)
		}
	}
	if b == nil {
		return
	}
	if len(l.Patterns) == 0 {
		for _, ref := range b.Pattern {
			l.add(j, ref.To, journal.KindPattern)
		}
	}
	if len(l.Garments) == 0 {
		l.addGarment(b.Garment)
	}
	if len(l.People) == 0 {
		l.add(j, b.For.To, journal.KindPerson)
	}
}
