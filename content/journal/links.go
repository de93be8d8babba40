package journal

import (
	"cmp"
	"path"
	"reflect"
	"slices"
	"strings"

	"hussif/content/prose"
	"hussif/content/source"
)

// linkFindings are what was found of records' names and links.
type linkFindings struct {
	clashes []source.Finding
	of      map[Record][]source.Finding // of links; only records that have any
}

// all adds them to others.
func (f linkFindings) all(findings []source.Finding) []source.Finding {
	findings = append(findings, f.clashes...)
	for _, found := range f.of {
		findings = append(findings, found...)
	}
	return findings
}

// renew finds again what is wrong with the links of some records that were read
// again, and with those of all where something was wrong before: the places that are
// told may have moved, but nothing else has changed.
func (f linkFindings) renew(j *Journal, again []Record) {
	for r := range f.of {
		again = append(again, r)
	}
	slices.SortFunc(again, func(a, b Record) int { return cmp.Compare(a.Head().ID, b.Head().ID) })
	l := newLinker(j)
	for _, r := range slices.Compact(again) {
		if found := l.follow(r); len(found) > 0 {
			f.of[r] = found
		}
	}
}

// follow checks every link of every record. It returns those that lead somewhere,
// by what they lead to, and what was found.
func (j *Journal) follow() (map[ID][]Tie, map[Record][]source.Finding) {
	l := newLinker(j)
	all := make(map[Record][]source.Finding)
	for _, r := range j.records {
		if found := l.follow(r); len(found) > 0 {
			all[r] = found
		}
	}
	return l.ties, all
}

// A linker follows links and reports those that lead nowhere.
type linker struct {
	j        *Journal
	ties     map[ID][]Tie
	near     map[nearKey][]string // answers of nearest
	fields   map[reflect.Type]*refFields
	parts    map[string][]Record // by the anchors of notes and decisions; nil until one is missed
	findings []source.Finding
}

func newLinker(j *Journal) *linker {
	return &linker{j: j, ties: make(map[ID][]Tie), near: make(map[nearKey][]string), fields: make(map[reflect.Type]*refFields)}
}

// follow checks the links of one record and returns what was found.
func (l *linker) follow(r Record) []source.Finding {
	l.findings = nil
	l.eachRef(r, func(field string, kinds []Kind, ref Ref) {
		l.field(r, field, kinds, ref)
	})
	l.text(r)
	return l.findings
}

func (l *linker) tie(from, to Record, field string) {
	id := to.Head().ID
	if from.Head().ID == id {
		return
	}
	// The links of one record stand together at the end.
	ties := l.ties[id]
	for i := len(ties) - 1; i >= 0 && ties[i].From == from; i-- {
		if ties[i].Field == field {
			return
		}
	}
	l.ties[id] = append(ties, Tie{From: from, Field: field})
}

func (l *linker) field(from Record, field string, kinds []Kind, ref Ref) {
	if to, ok := l.target(ref, kinds); ok {
		l.tie(from, to, field)
		l.part(to, ref.Anchor, ref.Span, l.j.Name)
	}
}

// text follows the links in a record's body.
func (l *linker) text(from Record) {
	page := from.Head()
	for _, link := range page.Text.Links {
		switch link.Form {
		case prose.Tie:
			if link.To == "" {
				l.part(from, link.Anchor, link.Span, l.j.Name)
			} else if to, ok := l.target(Ref{To: link.To, Anchor: link.Anchor, Span: link.Span}, nil); ok {
				l.tie(from, to, "")
				l.part(to, link.Anchor, link.Span, l.j.Name)
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
	name := func(r Record) string { return relativePath(file.Name, r.Head().File.Name) }
	if link.To == "" {
		l.part(from, link.Anchor, link.Span, name)
		return
	}
	to, ok := l.j.FileOf(file, link.To)
	if ok {
		l.tie(from, to, "")
		l.part(to, link.Anchor, link.Span, name)
		return
	}
	f := source.Found(link.Span, source.Error, BrokenLink, "no page of the journal lies at %q", path.Join(path.Dir(file.Name), link.To))
	if _, exists := l.j.files[path.Join(path.Dir(file.Name), link.To)]; exists {
		f = source.Found(link.Span, source.Error, BrokenLink, "%q is no page of the journal", link.To)
		f.Help = "show a picture with ![what it shows](file); other files have no page"
	} else if to, ok := l.j.Find(strings.TrimSuffix(path.Base(link.To), path.Ext(link.To))); ok {
		f.Instead = []string{name(to)}
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
