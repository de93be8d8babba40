package theme

import (
	"fmt"
	"html/template"
	"io"
	"sync"
)

// A Theme prints views. It may be used by many goroutines at once; make one with
// [New].
type Theme struct {
	templates *template.Template // as parsed; each printer has a copy
	menus     sync.Map           // string by menuPlace

	idle  []*printer
	guard sync.Mutex // of idle
}

// New reads all templates. An error is a fault in one of them.
func New() (*Theme, error) {
	t := &Theme{}
	if err := t.parse(); err != nil {
		return nil, err
	}
	// Escaping is worked out when a template first runs: run each now, so that a
	// fault shows here and not on the first page.
	for _, view := range []any{Start{}, List{}, Build{}, Note{}, Person{}, Thing{}, NextTime{}, Tags{}, Found{}, Sheet{}, TakeDown{}, Wardrobe{}, Tiles{}, Decisions{}, Evidence{}, FeaturePage{}, Documentation{}, Stash{}, ToDo{}, Search{}} {
		if err := t.Render(io.Discard, view); err != nil {
			return nil, err
		}
	}
	return t, nil
}

// parse reads the templates. Each is named for its file.
func (t *Theme) parse() (err error) {
	t.templates, err = template.New("").Funcs(new(printer).functions()).ParseFS(files, "templates/*.html", "templates/parts/*.html")
	return err
}

// functions are what templates call. What they print goes straight onto the page, in
// front of all that the template has still to print.
func (p *printer) functions() template.FuncMap {
	return template.FuncMap{
		"figures":      printing(p, p.figures),
		"top":          printing(p, p.top),
		"searchTop":    printing(p, p.searchTop),
		"bottom":       printing(p, p.bottom),
		"link":         printing(p, p.link),
		"links":        printing(p, p.links),
		"facts":        printing(p, p.facts),
		"rows":         printing(p, p.rows),
		"ruled":        p.labelled,
		"contents":     printing(p, p.contents),
		"tagLinks":     printing(p, p.tagLinks),
		"backlinks":    printing(p, p.backlinks),
		"nexts":        printing(p, p.nexts),
		"decisions":    printing(p, p.decisions),
		"cards":        printing(p, p.cards),
		"entries":      printing(p, p.entries),
		"verdict":      printing(p, p.verdict),
		"value":        printing(p, p.value),
		"rests":        printing(p, p.rests),
		"fitTable":     printing(p, p.fitTable),
		"fitGrid":      printing(p, p.fitGrid),
		"ledger":       printing(p, p.ledger),
		"ledgerChecks": printing(p, p.ledgerChecks),
		"places":       places,
		"address":      address,
	}
}

// take returns a printer with an empty page, to be given back.
func (t *Theme) take() (*printer, error) {
	t.guard.Lock()
	defer t.guard.Unlock()
	if last := len(t.idle) - 1; last >= 0 {
		p := t.idle[last]
		t.idle = t.idle[:last]
		p.Reset()
		p.err = nil
		return p, nil
	}
	templates, err := t.templates.Clone()
	if err != nil {
		return nil, err
	}
	p := &printer{theme: t, templates: templates}
	templates.Funcs(p.functions())
	return p, nil
}

func (t *Theme) giveBack(p *printer) {
	t.guard.Lock()
	defer t.guard.Unlock()
	t.idle = append(t.idle, p)
}

// Render writes the page of a view: a [Start], [List], [Build], [Note],
// [Person], [Thing], [NextTime], [Tags], [Found], [Sheet], [TakeDown],
// [Wardrobe], [Tiles], [Decisions], [Evidence], [FeaturePage], [Documentation],
// [Stash], [ToDo] or [Search], or a pointer to one. The error is about w, or about a view of
// another type; nothing has been written then but what w took.
func (t *Theme) Render(w io.Writer, view any) error {
	p, err := t.take()
	if err != nil {
		return err
	}
	defer t.giveBack(p)
	if err := p.page(view); err != nil {
		return err
	}
	_, err = w.Write(p.Bytes())
	return err
}

// page prints the page of a view.
func (p *printer) page(view any) error {
	switch n := view.(type) {
	case Note:
		p.note(&n)
		return p.err
	case *Note:
		p.note(n)
		return p.err
	}
	name, err := templateOf(view)
	if err != nil {
		return err
	}
	return p.templates.ExecuteTemplate(p, name, view)
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
	case Search, *Search:
		return "search.html", nil
	}
	return "", fmt.Errorf("no page is made from a %T", view)
}
