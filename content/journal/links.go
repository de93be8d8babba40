package journal

import (
	"cmp"
	"maps"
	"path"
	"reflect"
	"slices"
	"strings"

	"hussif/content/prose"
	"hussif/content/source"
)

// links are what was found of records' names and links.
type links struct {
	clashes []source.Finding
	of      map[Record]followed
}

// followed is what following the links of one record came to.
type followed struct {
	out   []outgoing
	found []source.Finding
}

// An outgoing link leads to another record.
type outgoing struct {
	to    ID
	field string
}

// all adds what was found to other findings.
func (l links) all(findings []source.Finding) []source.Finding {
	findings = append(findings, l.clashes...)
	for _, f := range l.of {
		findings = append(findings, f.found...)
	}
	return findings
}

// again follows once more the links of some records that were read again, of those
// that link to them, and of all where something was wrong before: the places that are
// told may have moved. All else is as it was.
func (l links) again(j *Journal, read []Record) {
	again := make(map[Record]bool)
	for _, r := range read {
		again[r] = true
		for _, tie := range j.ties[r.Head().ID] {
			again[tie.From] = true
		}
	}
	for r, f := range l.of {
		if len(f.found) > 0 {
			again[r] = true
		}
	}
	linker := newLinker(j)
	for _, r := range slices.SortedFunc(maps.Keys(again), byID) {
		l.of[r] = linker.follow(r)
	}
}

func byID(a, b Record) int { return cmp.Compare(a.Head().ID, b.Head().ID) }

// follow follows the links of all records.
func (l *links) follow(j *Journal) {
	l.of = make(map[Record]followed, len(j.records))
	linker := newLinker(j)
	for _, r := range j.records {
		l.of[r] = linker.follow(r)
	}
}

// ties returns the links to each record, in the order of those that they come from.
func (l links) ties(j *Journal) map[ID][]Tie {
	ties := make(map[ID][]Tie)
	for _, r := range j.records {
		for _, out := range l.of[r].out {
			ties[out.to] = append(ties[out.to], Tie{From: r, Field: out.field})
		}
	}
	return ties
}

// tiesTo returns the links to a record, where those from some records may be others
// than before.
func (l links) tiesTo(id ID, before []Tie, from []Record) []Tie {
	var ties []Tie
	for _, tie := range before {
		if !slices.Contains(from, tie.From) {
			ties = append(ties, tie)
		}
	}
	for _, r := range from {
		for _, out := range l.of[r].out {
			if out.to == id {
				ties = append(ties, Tie{From: r, Field: out.field})
			}
		}
	}
	slices.SortStableFunc(ties, func(a, b Tie) int { return byID(a.From, b.From) })
	return ties
}

// A linker follows links and reports those that lead nowhere.
type linker struct {
	j        *Journal
	near     map[nearKey][]string // answers of nearest
	fields   map[reflect.Type]*refFields
	parts    map[string][]Record // by the anchors of notes and decisions; nil until one is missed
	followed                     // of the record that is followed
}

func newLinker(j *Journal) *linker {
	return &linker{j: j, near: make(map[nearKey][]string), fields: make(map[reflect.Type]*refFields)}
}

// follow follows the links of one record.
func (l *linker) follow(r Record) followed {
	l.followed = followed{}
	l.eachRef(r, func(field string, kinds []Kind, ref Ref) {
		l.field(r, field, kinds, ref)
	})
	l.text(r)
	l.works(r)
	return l.followed
}

func (l *linker) tie(from, to Record, field string) {
	out := outgoing{to.Head().ID, field}
	if from.Head().ID != out.to && !slices.Contains(l.out, out) {
		l.out = append(l.out, out)
	}
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
			l.found = append(l.found, f)
		}
	}
	for _, pic := range page.Text.Pictures {
		if pic.Form != prose.Relative {
			f := source.Found(pic.Span, source.Warning, BrokenLink, "this picture lies outside the journal and is not shown")
			f.Help = "put a copy in the note's folder: a site must open without the network"
			l.found = append(l.found, f)
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

// works follows what the worksheets in a record's text take from others.
func (l *linker) works(from Record) {
	for _, w := range from.Head().Works {
		for _, f := range w.Figures {
			for _, item := range f.Items {
				if b := item.Borrowed; b != nil && !b.From.IsZero() {
					l.field(from, "work", b.Kinds(), b.From)
				}
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
	l.found = append(l.found, f)
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
