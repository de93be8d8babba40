package theme

import (
	"bytes"
	"fmt"
	"html/template"
	"io"
	"strings"
	"sync"
)

// A Theme prints views. It may be used by many goroutines at once; make one with
// [New].
type Theme struct {
	templates *template.Template
	menus     sync.Map  // template.HTML by menuPlace
	buffers   sync.Pool // of *bytes.Buffer
}

// A menuPlace is what the menu of a page depends on.
type menuPlace struct{ root, section string }

// New reads all templates. An error is a fault in one of them.
func New() (*Theme, error) {
	t := &Theme{}
	t.buffers.New = func() any { return new(bytes.Buffer) }
	if err := t.parse(); err != nil {
		return nil, err
	}
	// Escaping is worked out when a template first runs: run each now, so that a
	// fault shows here and not on the first page.
	for _, view := range []any{Start{}, List{}, Build{}, Note{}, Person{}, Thing{}, NextTime{}, Tags{}, Found{}, Sheet{}, TakeDown{}, Wardrobe{}, Tiles{}} {
		if err := t.Render(io.Discard, view); err != nil {
			return nil, err
		}
	}
	return t, nil
}

// parse reads the templates. Each is named for its file.
func (t *Theme) parse() (err error) {
	t.templates, err = template.New("").Funcs(template.FuncMap{
		"figures":   figures,
		"link":      linkPart,
		"links":     linksPart,
		"facts":     factsPart,
		"rows":      rowsPart,
		"contents":  contentsPart,
		"backlinks": backlinksPart,
		"nexts":     nextPart,
		"found":     func() string { return FoundPath },
		"menu":      t.menu,
		"places":    Menu,
	}).ParseFS(files, "templates/*.html", "templates/parts/*.html")
	return err
}

// menu returns the menu as it stands on a page. It is kept, since all pages of one
// folder share it and it would be half the allocations of a short page.
func (t *Theme) menu(frame Frame) (template.HTML, error) {
	place := menuPlace{frame.Root, frame.Section}
	if menu, ok := t.menus.Load(place); ok {
		return menu.(template.HTML), nil
	}
	var b strings.Builder
	if err := t.templates.ExecuteTemplate(&b, "menu.html", frame); err != nil {
		return "", err
	}
	menu := template.HTML(b.String())
	t.menus.Store(place, menu)
	return menu, nil
}

// Render writes the page of a view: a [Start], [List], [Build], [Note],
// [Person], [Thing], [NextTime], [Tags], [Found], [Sheet], [TakeDown],
// [Wardrobe] or [Tiles], or a pointer to one. The error is about w, or about a
// view of another type; nothing has been written then but what w took.
func (t *Theme) Render(w io.Writer, view any) error {
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

// templateOf returns the name of the template for a view.
func templateOf(view any) (string, error) {
	switch view.(type) {
	case Start, *Start:
		return "start.html", nil
	case List, *List:
		return "list.html", nil
	case Build, *Build:
		return "build.html", nil
	case Note, *Note:
		return "note.html", nil
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
	}
	return "", fmt.Errorf("no page is made from a %T", view)
}
