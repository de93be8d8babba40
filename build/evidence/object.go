package evidence

import (
	"cmp"
	"slices"
	"strings"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/near"
)

// An Object is what bears witness: the thing that one reference is about, or
// several with one holder and one accession number.
type Object struct {
	References []*journal.Reference // one or more, in the order given
	Date       edtf.Date            // as written; zero where no reference has a date
	Span       edtf.Date            // Date with what is approximate widened
}

// objects returns what references are about.
func objects(references []*journal.Reference, customs edtf.Customs) []*Object {
	var all []*Object
	known := make(map[string]*Object)
	for _, r := range references {
		key := objectKey(r)
		o := known[key]
		if o == nil {
			o = new(Object)
			known[key] = o
			all = append(all, o)
		}
		o.References = append(o.References, r)
	}
	for _, o := range all {
		var dates, spans []edtf.Date
		for _, r := range o.References {
			dates = append(dates, r.Date)
			spans = append(spans, r.Date.Padded(customs))
		}
		o.Date, o.Span = covering(dates), covering(spans)
	}
	return all
}

// objectKey is equal for references that are about one object.
func objectKey(r *journal.Reference) string {
	holder, number := near.Folded(r.Holder), strings.ReplaceAll(near.Folded(r.Accession), " ", "")
	if holder == "" || number == "" {
		return string(r.ID)
	}
	return holder + "\n" + number
}

// covering returns the narrowest date that holds all of some dates, in the words of
// all. Those that are no date make no difference.
func covering(dates []edtf.Date) edtf.Date {
	var distinct []edtf.Date
	var words []string
	for _, d := range dates {
		if !d.IsZero() && !slices.Contains(distinct, d) {
			distinct, words = append(distinct, d), append(words, d.String())
		}
	}
	switch len(distinct) {
	case 0:
		return edtf.Date{}
	case 1:
		return distinct[0]
	}
	all := distinct[0]
	for _, d := range distinct[1:] {
		all.OpenStart = all.OpenStart || d.OpenStart
		all.OpenEnd = all.OpenEnd || d.OpenEnd
		all.Earliest, all.Latest = min(all.Earliest, d.Earliest), max(all.Latest, d.Latest)
		all.Uncertain = all.Uncertain || d.Uncertain
		all.Approximate = all.Approximate || d.Approximate
	}
	if all.OpenStart {
		all.Earliest = 0
	}
	if all.OpenEnd {
		all.Latest = 0
	}
	all.Text, all.EDTF = strings.Join(words, " or "), ""
	return all
}

// byDate orders objects by the start of their spans, then by the end; those
// without a date come last.
func byDate(a, b *Object) int {
	rank := func(o *Object) int {
		switch {
		case o.Span.IsZero():
			return 2
		case o.Span.OpenStart:
			return 0
		}
		return 1
	}
	open := func(o *Object) int {
		if o.Span.OpenEnd {
			return 1
		}
		return 0
	}
	return cmp.Or(
		cmp.Compare(rank(a), rank(b)),
		cmp.Compare(a.Span.Earliest, b.Span.Earliest),
		cmp.Compare(open(a), open(b)),
		cmp.Compare(a.Span.Latest, b.Span.Latest),
		cmp.Compare(a.References[0].ID, b.References[0].ID),
	)
}
