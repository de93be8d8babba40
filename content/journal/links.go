package journal

import (
	"path"
	"reflect"
	"slices"
	"strings"

	"hussif/content/front"
	"hussif/content/near"
	"hussif/content/prose"
	"hussif/content/source"
)

// follow checks every link of every record and keeps those that lead somewhere.
func (j *Journal) follow() []source.Finding {
	l := linker{j: j}
	for _, r := range j.records {
		eachRef(reflect.ValueOf(r).Elem(), "", func(field string, kinds []Kind, ref Ref) {
			l.field(r, field, kinds, ref)
		})
		l.text(r)
	}
	return l.findings
}

// A linker follows links and reports those that lead nowhere.
type linker struct {
	j        *Journal
	names    []string // of all records, once they are asked for
	findings []source.Finding
}

func (l *linker) tie(from, to Record, field string) {
	id := to.Head().ID
	if from.Head().ID == id {
		return
	}
	// The links of one record stand together at the end.
	ties := l.j.ties[id]
	for i := len(ties) - 1; i >= 0 && ties[i].From == from; i-- {
		if ties[i].Field == field {
			return
		}
	}
	l.j.ties[id] = append(ties, Tie{From: from, Field: field})
}

func (l *linker) field(from Record, field string, kinds []Kind, ref Ref) {
	if to, ok := l.target(ref.To, kinds, ref.Span); ok {
		l.tie(from, to, field)
		l.anchor(to, ref.Anchor, ref.Span)
	}
}

// text follows the links in a record's body.
func (l *linker) text(from Record) {
	page := from.Head()
	for _, link := range page.Text.Links {
		switch link.Form {
		case prose.Tie:
			if link.To == "" {
				l.anchor(from, link.Anchor, link.Span)
			} else if to, ok := l.target(link.To, nil, link.Span); ok {
				l.tie(from, to, "")
				l.anchor(to, link.Anchor, link.Span)
			}
		case prose.Relative:
			l.relative(from, link)
		case prose.Refused:
			f := source.Found(link.Span, source.Warning, BrokenLink, "this link leads out of the journal and is left as text")
			f.Help = "link to a page of the journal, or to a web address that begins with https://"
			l.findings = append(l.findings, f)
		}
	}
	for _, pic := range page.Text.Pictures {
		if pic.Form != prose.Relative {
			f := source.Found(pic.Span, source.Warning, BrokenLink, "this picture lies outside the journal and is not shown")
			f.Help = "put a copy in the note's folder: a site must open without the network"
			l.findings = append(l.findings, f)
		}
	}
	for _, remark := range page.Text.Remarks {
		for _, about := range remark.About {
			if about.Key != "garment" {
				l.field(from, "next time", aboutKinds[about.Key], Ref{To: about.Value, Span: about.Span})
			}
		}
	}
}

// aboutKinds are the kinds that the words after a remark may name.
var aboutKinds = map[string][]Kind{
	"pattern":   {KindPattern},
	"technique": {KindTechnique},
	"material":  {KindMaterial},
	"person":    {KindPerson},
}

func (l *linker) relative(from Record, link prose.Link) {
	file := from.Head().File
	if link.To == "" {
		l.anchor(from, link.Anchor, link.Span)
		return
	}
	to, ok := l.j.FileOf(file, link.To)
	if ok {
		l.tie(from, to, "")
		l.anchor(to, link.Anchor, link.Span)
		return
	}
	f := source.Found(link.Span, source.Error, BrokenLink, "no page of the journal lies at %q", path.Join(path.Dir(file.Name), link.To))
	if _, exists := l.j.Files[path.Join(path.Dir(file.Name), link.To)]; exists {
		f = source.Found(link.Span, source.Error, BrokenLink, "%q is no page of the journal", link.To)
		f.Help = "show a picture with ![what it shows](file); other files have no page"
	} else if to, ok := l.j.Find(strings.TrimSuffix(path.Base(link.To), path.Ext(link.To))); ok {
		f.Instead = []string{relativePath(file.Name, to.Head().File.Name)}
	}
	l.findings = append(l.findings, f)
}

// relativePath returns the way from one file to another.
func relativePath(from, to string) string {
	a, b := strings.Split(path.Dir(from), "/"), strings.Split(path.Dir(to), "/")
	for len(a) > 0 && len(b) > 0 && a[0] == b[0] {
		a, b = a[1:], b[1:]
	}
	steps := append(slices.Repeat([]string{".."}, len(a)), b...)
	return path.Join(append(steps, path.Base(to))...)
}

// target finds what a link means and reports where it means nothing or too much.
func (l *linker) target(to string, kinds []Kind, at source.Span) (Record, bool) {
	found := l.j.candidates(to, kinds)
	if len(found) == 1 {
		return found[0], true
	}
	var f source.Finding
	switch others := l.j.candidates(to, nil); {
	case len(found) > 1:
		f = source.Found(at, source.Error, UnclearLink, "several pages are called %q", to)
		for _, r := range found {
			f.Instead = append(f.Instead, string(r.Head().ID))
		}
	case len(others) > 0:
		f = source.Found(at, source.Error, BrokenLink, "%q is %s; this field wants %s", to, others[0].Head().Kind.withArticle(), kinds[0].withArticle())
		f.Instead = l.nearest(to, kinds)
	default:
		f = source.Found(at, source.Error, BrokenLink, "no page is called %q", to)
		if f.Instead = l.nearest(to, kinds); len(f.Instead) == 0 {
			f.Help = "a page is called after its file, or its build's folder"
		}
	}
	l.findings = append(l.findings, f)
	return nil, false
}

// nearest returns what a link that leads nowhere could have meant: names of
// records of some kinds, or of any, and whole IDs where several have one name.
func (l *linker) nearest(to string, kinds []Kind) []string {
	var out []string
	for _, name := range near.Of(path.Base(to), l.namesOf(kinds)) {
		found := l.j.candidates(name, kinds)
		if len(found) == 1 {
			out = append(out, name)
			continue
		}
		for _, r := range found {
			out = append(out, string(r.Head().ID))
		}
	}
	return out
}

// namesOf returns the names of the records of some kinds, or of all.
func (l *linker) namesOf(kinds []Kind) []string {
	if len(kinds) == 0 && l.names != nil {
		return l.names
	}
	var names []string
	for _, r := range l.j.records {
		if page := r.Head(); len(kinds) == 0 || slices.Contains(kinds, page.Kind) {
			names = append(names, page.ID.Name())
		}
	}
	if len(kinds) == 0 {
		l.names = names
	}
	return names
}

func (l *linker) anchor(to Record, anchor string, at source.Span) {
	if anchor == "" || l.j.Faulty(to) {
		return
	}
	anchors := Anchors(to)
	if slices.Contains(anchors, anchor) {
		return
	}
	f := source.Found(at, source.Error, BrokenAnchor, "%s has no part called %q", to.Head().ID.Name(), anchor)
	if f.Instead = near.Of(anchor, anchors); len(f.Instead) == 0 && len(anchors) > 0 {
		f.Help = "its parts are " + strings.Join(anchors, ", ")
	}
	l.findings = append(l.findings, f)
}

// Anchors returns the names of the parts of a record's page that can be linked
// to: its headings, next-time notes and decisions.
func Anchors(r Record) []string {
	page := r.Head()
	var anchors []string
	for i := range page.Next {
		anchors = append(anchors, NextAnchor(i))
	}
	if note, ok := r.(*Note); ok {
		for i := range note.Decided {
			anchors = append(anchors, DecisionAnchor(i))
		}
	}
	for _, remark := range page.Text.Remarks {
		if remark.Anchor != "" {
			anchors = append(anchors, remark.Anchor)
		}
	}
	for _, h := range page.Text.Headings {
		anchors = append(anchors, h.Anchor)
	}
	return anchors
}

// eachRef visits the links in a record's fields, with the name of the field and
// the kinds of record that it may lead to; none means any.
func eachRef(v reflect.Value, field string, visit func(field string, kinds []Kind, ref Ref)) {
	for i := range v.NumField() {
		f := v.Type().Field(i)
		name, tagged := f.Tag.Lookup("field")
		name, _, _ = strings.Cut(name, ",")
		if !tagged && !f.Anonymous || f.Type == reflect.TypeFor[front.Where]() {
			continue
		}
		if field != "" && !slices.Contains(ownName, name) {
			name = field
		}
		var kinds []Kind
		if to := f.Tag.Get("to"); to != "" {
			kinds = []Kind{Kind(to)}
		}
		switch value := v.Field(i).Interface().(type) {
		case Ref:
			if !value.IsZero() {
				visit(name, kinds, value)
			}
		case []Ref:
			for _, ref := range value {
				visit(name, kinds, ref)
			}
		default:
			eachWithin(v.Field(i), name, visit)
		}
	}
}

// ownName lists the fields inside a group that say more about a link than the
// name of the group does.
var ownName = []string{"rests on"}

func eachWithin(v reflect.Value, field string, visit func(string, []Kind, Ref)) {
	switch v.Kind() {
	case reflect.Struct:
		eachRef(v, field, visit)
	case reflect.Slice:
		if v.Type().Elem().Kind() == reflect.Struct {
			for i := range v.Len() {
				eachRef(v.Index(i), field, visit)
			}
		}
	}
}
