package decision

import (
	"slices"
	"strings"

	"hussif/content/journal"
	"hussif/content/near"
	"hussif/content/prose"
)

// readTail takes what the words in brackets after a remark say it is about.
func (d *Decision) readTail(j *journal.Journal, tail []prose.About) {
	for _, about := range tail {
		ref := journal.Ref{To: about.Value}
		ref.To, _, _ = strings.Cut(ref.To, "#")
		switch about.Key {
		case "garment":
			addGarment(&d.Garments, about.Value)
		case "pattern":
			add(&d.Patterns, j, ref, journal.KindPattern)
		case "technique":
			add(&d.Techniques, j, ref, journal.KindTechnique)
		case "person":
			add(&d.Wearers, j, ref, journal.KindPerson)
		case "material":
			add(&d.Others, j, ref, journal.KindMaterial)
		default:
			add(&d.Others, j, ref)
		}
	}
}

// belong says where a decision stands, and fills in what nothing was written of
// by the record it stands in.
func (d *Decision) belong(j *journal.Journal, from journal.Record) {
	d.From = from.Head().ID
	var techniques []journal.Ref
	var b *journal.Build
	switch r := from.(type) {
	case *journal.Note:
		d.Day, techniques, b = r.Date, r.Techniques, r.Of
	case *journal.Build:
		b = r
	case *journal.Occasion:
		d.Day = r.Date
	case *journal.Pattern:
		d.Patterns = appendNew(d.Patterns, r.ID)
		if len(d.Garments) == 0 {
			addGarment(&d.Garments, r.Garment)
		}
	case *journal.Technique:
		d.Techniques = appendNew(d.Techniques, r.ID)
	case *journal.Person:
		d.Wearers = appendNew(d.Wearers, r.ID)
	}
	if b != nil {
		d.Build = b.ID
		if len(techniques) == 0 {
			techniques = b.Techniques
		}
		if len(d.Garments) == 0 {
			addGarment(&d.Garments, b.Garment)
		}
		if len(d.Wearers) == 0 {
			add(&d.Wearers, j, b.For, journal.KindPerson)
		}
		if len(d.Patterns) == 0 {
			for _, ref := range b.Pattern {
				add(&d.Patterns, j, ref, journal.KindPattern)
			}
		}
	}
	if len(d.Techniques) == 0 {
		for _, ref := range techniques {
			add(&d.Techniques, j, ref, journal.KindTechnique)
		}
	}
}

// add puts the record that a link leads to among others, if there is one.
func add(list *[]journal.ID, j *journal.Journal, ref journal.Ref, kinds ...journal.Kind) {
	if r, ok := j.Find(ref.To, kinds...); ok {
		*list = appendNew(*list, r.Head().ID)
	}
}

func addGarment(list *[]string, word string) {
	if word = near.Folded(word); word != "" {
		*list = appendNew(*list, word)
	}
}

func appendNew[T comparable](list []T, item T) []T {
	if slices.Contains(list, item) {
		return list
	}
	return append(list, item)
}
