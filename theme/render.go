package theme

import (
	"bytes"
	"fmt"
	"html/template"
	"io"
	"sync"
)

// A Theme prints views. It may be used by many goroutines at once; make one with
// [New].
type Theme struct {
	templates *template.Template
	menus     sync.Map  // string by menuPlace
	printers  sync.Pool // of *printer
	buffers   sync.Pool // of *bytes.Buffer
}

// New reads all templates. An error is a fault in one of them.
func New() (*Theme, error) {
	t := &Theme{}
	t.buffers.New = func() any { return new(bytes.Buffer) }
	t.printers.New = func() any { return &printer{theme: t} }
	if err := t.parse(); err != nil {
		return nil, err
	}
	// Escaping is worked out when a template first runs: run each now, so that a
	// fault shows here and not on the first page.
	for _, view := range []any{Start{}, List{}, Build{}, Note{}, Person{}, Thing{}, NextTime{}, Tags{}, Found{}, Sheet{}, TakeDown{}, Wardrobe{}, Tiles{}, Decisions{}, Evidence{}, FeaturePage{}, Documentation{}, Stash{}, ToDo{}} {
		if err := t.Render(io.Discard, view); err != nil {
			return nil, err
		}
	}
	return t, nil
}

// parse reads the templates. Each is named for its file.
func (t *Theme) parse() (err error) {
	t.templates, err = template.New("").Funcs(template.FuncMap{
		"figures":      printing(t, (*printer).figures),
		"top":          printing(t, (*printer).top),
		"bottom":       printing(t, (*printer).bottom),
		"link":         printing(t, (*printer).link),
		"links":        printing(t, (*printer).links),
		"facts":        printing(t, (*printer).facts),
		"rows":         printing(t, (*printer).rows),
		"ruled":        t.ruled,
		"contents":     printing(t, (*printer).contents),
		"tagLinks":     printing(t, (*printer).tagLinks),
		"backlinks":    printing(t, (*printer).backlinks),
		"nexts":        printing(t, (*printer).nexts),
		"decisions":    printing(t, (*printer).decisions),
		"cards":        printing(t, (*printer).cards),
		"entries":      printing(t, (*printer).entries),
		"verdict":      printing(t, (*printer).verdict),
		"value":        printing(t, (*printer).value),
		"rests":        printing(t, (*printer).rests),
		"fitTable":     printing(t, (*printer).fitTable),
		"fitGrid":      printing(t, (*printer).fitGrid),
		"ledger":       printing(t, (*printer).ledger),
		"ledgerChecks": printing(t, (*printer).ledgerChecks),
		"places":       menuGroups,
	}).ParseFS(files, "templates/*.html", "templates/parts/*.html")
	return err
}

// Render writes the page of a view: a [Start], [List], [Build], [Note],
// [Person], [Thing], [NextTime], [Tags], [Found], [Sheet], [TakeDown],
// [Wardrobe], [Tiles], [Decisions], [Evidence], [FeaturePage], [Documentation],
// [Stash] or [ToDo], or a pointer to one. The error is about w, or about a view of
// another type; nothing has been written then but what w took.
func (t *Theme) Render(w io.Writer, view any) error {
	switch n := view.(type) {
	case Note:
		return t.renderNote(w, &n)
	case *Note:
		return t.renderNote(w, n)
	}
	name, err := templateOf(view)
	if err != nil {
		return err
	}
	page := t.buffers.Get().(*bytes.Buffer)
	defer t.buffers.Put(page)
	page.Reset()
	if err := t.templates.ExecuteTemplate(page, name, view); err != nil {
		return err
	}
	_, err = w.Write(page.Bytes())
	return err
}

func (t *Theme) renderNote(w io.Writer, n *Note) error {
	p := t.printers.Get().(*printer)
	defer t.printers.Put(p)
	p.Reset()
	p.err = nil
	p.note(n)
	if p.err != nil {
		return p.err
	}
	_, err := w.Write(p.Bytes())
	return err
}

// templateOf returns the name of the template for a view other than a note.
func templateOf(view any) (string, error) {
	switch view.(type) {
	case Start, *Start:
		return "start.html", nil
	case List, *List:
		return "list.html", nil
	case Build, *Build:
		return "build.html", nil
	case Person, *Person:
		return "person.html", nil
	case Thing, *Thing:
		return "thing.html", nil
	case NextTime, *NextTime:
		return "next_time.html", nil
	case Tags, *Tags:
		return "tags.html", nil
	case Found, *Found:
		return "found.html", nil
	case Sheet, *Sheet:
		return "sheet.html", nil
	case TakeDown, *TakeDown:
		return "take_down.html", nil
	case Wardrobe, *Wardrobe:
		return "wardrobe.html", nil
	case Tiles, *Tiles:
		return "tiles.html", nil
	case Decisions, *Decisions:
		return "all_decisions.html", nil
	case Evidence, *Evidence:
		return "evidence.html", nil
	case FeaturePage, *FeaturePage:
		return "feature.html", nil
	case Documentation, *Documentation:
		return "documentation.html", nil
	case Stash, *Stash:
		return "stash.html", nil
	case ToDo, *ToDo:
		return "to_do.html", nil
	}
	return "", fmt.Errorf("no page is made from a %T", view)
}
