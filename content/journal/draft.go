package journal

import (
	"crypto/sha256"
	"path"
	"strings"

	"github.com/yuin/goldmark/ast"

	"hussif/content/front"
	"hussif/content/near"
	"hussif/content/prose"
	"hussif/content/source"
)

// A Draft is what one file holds, before it is known what the others hold.
type Draft struct {
	File     *source.File
	Record   Record // nil where the file is no page of the journal
	Faulty   bool   // whether something in it could not be read
	Findings []source.Finding
}

// A Parser types files by the settings of their journal. It may be shared.
type Parser struct {
	settings *Settings
	schema   *front.Schema
	see      func(Record, ast.Node) // of Folder.Journal, or nil
}

// NewParser makes a parser for a journal with these settings.
func NewParser(s *Settings) *Parser {
	return &Parser{settings: s, schema: front.NewSchema(s.terms().readers(),
		Person{}, Build{}, Note{}, Pattern{}, Reference{}, Material{}, Technique{}, Occasion{},
		Want{}, Crossing{}, Level{})}
}

// Parse types one file. The record of a file with faults is returned too, as far
// as it could be read, so that links to it are not broken.
func (p *Parser) Parse(f *source.File, loading []source.Finding) Draft {
	draft := Draft{File: f, Findings: loading}
	id, kind := placeInFolder(f.Name)
	var parts front.Parts
	var node front.Node
	readable := false
	if len(loading) == 0 {
		var findings []source.Finding
		parts, findings = front.Split(f)
		draft.Findings = append(draft.Findings, findings...)
		if len(findings) == 0 {
			node, findings = front.Parse(parts.Front)
			draft.Findings = append(draft.Findings, findings...)
			readable = front.CanDecode(findings)
		}
	}
	if named, span, ok := kindField(node); ok {
		if k, known := kindNamed(named); known {
			kind = k
		} else {
			draft.Findings = append(draft.Findings, unknownKind(named, span))
			readable = false
			if kind == "" {
				return draft
			}
		}
	}
	if kind == "" {
		if !strings.EqualFold(path.Base(f.Name), "readme.md") {
			draft.Findings = append(draft.Findings, leftOut(f))
		}
		return draft
	}
	draft.Record = newRecord(kind)
	if readable {
		draft.Findings = append(draft.Findings, p.schema.Decode(node, draft.Record)...)
	}
	page := draft.Record.Head()
	page.ID, page.Kind, page.File = id, kind, f
	draft.Findings = append(draft.Findings, p.notFields(draft.Record)...)
	page.sum = sha256.Sum256(f.Data)
	page.stamp = page.sum
	if page.Where.Span.IsZero() {
		page.Where.Span = f.Span(0, 0)
	}
	nameParts(draft.Record)
	if parts.Body.File != nil {
		var tree ast.Node
		tree, page.Text = prose.ReadTree(f, parts.Body, Start(draft.Record))
		if p.see != nil {
			p.see(draft.Record, tree)
		}
		draft.Findings = append(draft.Findings, page.Text.Findings...)
		for _, w := range page.Text.Works {
			page.Works = append(page.Works, p.settings.terms().readWork(w))
		}
	}
	if page.Title == "" {
		page.Title = titleFromName(id.Name())
	}
	if note, ok := draft.Record.(*Note); ok && !note.dated() && source.Count(draft.Findings, source.Error) == 0 {
		draft.Findings = append(draft.Findings, note.needsDate())
	}
	draft.Faulty = source.Count(draft.Findings, source.Error) > 0
	return draft
}

// Start returns what a record's page has before its text, as [prose.Tree] needs it.
func Start(r Record) prose.Start {
	var start prose.Start
	for _, next := range r.Head().Next {
		start.Taken = append(start.Taken, next.Anchor)
	}
	if note, ok := r.(*Note); ok {
		for _, decision := range note.Decided {
			start.Taken = append(start.Taken, decision.Anchor)
		}
	}
	return start
}

// dated gives a note the date of its file's name where it states none, and
// reports whether it has one.
func (n *Note) dated() bool {
	if n.Has("date") {
		return true
	}
	day, _, ok := leadingDay(n.ID.Name())
	if ok {
		n.Date = day
	}
	return ok
}

func (n *Note) needsDate() source.Finding {
	f := source.Found(n.Where.Span, source.Error, front.NeededField, "a note needs a date")
	f.Help = "add `date: ...` to the front matter, or begin the file's name with it, as in 2026-03-01-" + path.Base(n.File.Name)
	return f
}

// BuildFolder returns the folder of a build that a file lies in.
func BuildFolder(name string) (folder string, ok bool) {
	parts := strings.Split(name, "/")
	if len(parts) < 3 || folders[parts[0]] != KindBuild {
		return "", false
	}
	return parts[0] + "/" + parts[1], true
}

// placeInFolder tells a record's ID and kind by its path.
func placeInFolder(name string) (ID, Kind) {
	stem := strings.TrimSuffix(name, path.Ext(name))
	folder, rest, nested := strings.Cut(stem, "/")
	kind := folders[folder]
	if !nested {
		return ID(stem), ""
	}
	if kind != KindBuild {
		return ID(stem), kind
	}
	build, file, nested := strings.Cut(rest, "/")
	switch {
	case !nested:
		return ID(stem), KindBuild
	case strings.EqualFold(file, "build"):
		return ID(folder + "/" + build), KindBuild
	}
	return ID(stem), KindNote
}

func kindField(n front.Node) (string, source.Span, bool) {
	for _, f := range n.Fields {
		if f.Key == "kind" && f.Value.Kind == front.Text {
			return f.Value.Text, f.Value.Span, true
		}
	}
	return "", source.Span{}, false
}

func kindNamed(name string) (Kind, bool) {
	for _, k := range Kinds() {
		if strings.EqualFold(name, string(k)) {
			return k, true
		}
	}
	return "", false
}

func unknownKind(name string, at source.Span) source.Finding {
	var names []string
	for _, k := range Kinds() {
		names = append(names, string(k))
	}
	f := source.Found(at, source.Error, UnknownKind, "a journal has no pages of the kind %q", name)
	if f.Instead = near.Of(name, names); len(f.Instead) == 0 {
		f.Help = "one of: " + strings.Join(names, ", ")
	}
	return f
}

func leftOut(f *source.File) source.Finding {
	finding := source.Found(f.Span(0, 0), source.Hint, UnknownKind, "this file lies in none of the journal's folders and is left out")
	finding.Help = "move it, or say what it is with `kind: ...`"
	return finding
}

func newRecord(k Kind) Record {
	switch k {
	case KindPerson:
		return &Person{}
	case KindBuild:
		return &Build{}
	case KindNote:
		return &Note{}
	case KindPattern:
		return &Pattern{}
	case KindReference:
		return &Reference{}
	case KindMaterial:
		return &Material{}
	case KindTechnique:
		return &Technique{}
	}
	return &Occasion{}
}
