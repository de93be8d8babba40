package preview

import (
	"bytes"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"sync"

	"hussif/build/check"
	"hussif/build/keep"
	"hussif/build/output"
	"hussif/build/photo"
	"hussif/build/site"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
	"hussif/theme"
)

// Anew is a [Maker] that reads the whole journal anew whenever it looks, and makes
// a page when it is first asked for. Make one with [NewAnew].
type Anew struct {
	dir    string
	today  func() edtf.Day
	look   *theme.Theme
	assets map[string]Content
	prints *prints

	mu    sync.Mutex
	given keep.Recipe // what the state was made from
	state State
	site  *planned // of the last sound state; nil before the first
}

// A planned is a site of which each page is made when it is asked for.
type planned struct {
	pages  map[string]func() any
	beside map[string]output.File
	photos map[string]copyOf // by the path of a scaled copy
	made   sync.Map          // Content by path
}

// NewAnew returns a maker of the site of the journal in a folder. today tells the
// day its pages are for. It is closed when nobody asks any more. The error is a fault in the theme.
func NewAnew(dir string, photos *photo.Darkroom, today func() edtf.Day) (*Anew, error) {
	look, err := theme.New()
	if err != nil {
		return nil, err
	}
	a := &Anew{dir: dir, today: today, look: look, assets: make(map[string]Content), prints: newPrints(os.DirFS(dir), photos)}
	for _, asset := range theme.Assets() {
		a.assets[asset.Path] = held(asset.Data)
	}
	return a, nil
}

// Close ends the work on photos and waits until it has ended.
func (a *Anew) Close() { a.prints.close() }

func held(data []byte) Content { return Content{Data: data, Sum: sha256.Sum256(data)} }

// Look implements [Maker].
func (a *Anew) Look(context.Context, []string, bool) (State, error) {
	if _, err := os.Stat(a.dir); errors.Is(err, fs.ErrNotExist) {
		return State{}, fmt.Errorf("its folder %s is not there any more", a.dir)
	} else if err != nil {
		return State{}, err
	}
	files := os.DirFS(a.dir)
	folder, err := journal.Read(files)
	if errors.Is(err, fs.ErrNotExist) {
		folder, err = journal.Read(files) // a file was taken away between listing and reading
	}
	if err != nil {
		return State{}, err
	}
	day := a.today()
	given := a.recipe(folder, day)
	a.mu.Lock()
	defer a.mu.Unlock()
	if given == a.given {
		return a.state, nil
	}
	j, read := folder.Journal(nil)
	found := check.Run(j, files, read)
	expected, faults, err := a.prints.expect(j)
	if err != nil {
		return State{}, err
	}
	found = source.Sort(append(found, faults...))
	a.given = given
	a.state = State{Generation: a.state.Generation + 1, Findings: found, Sound: source.Count(found, source.Error) == 0}
	if a.state.Sound {
		a.site = plan(site.Input{Journal: j, Findings: found, Pictures: expected, Today: day}, expected)
	}
	return a.state, nil
}

// recipe stands for all that decides the state and the site.
func (a *Anew) recipe(folder *journal.Folder, day edtf.Day) keep.Recipe {
	given := []string{day.String(), fmt.Sprint(a.prints.damaged())}
	for _, e := range folder.Entries {
		given = append(given, e.Path, string(folder.Texts[e.Path]), fmt.Sprint(e.Size, e.Modified.UnixNano()))
	}
	return keep.NewRecipe("preview", 1, given...)
}

func plan(in site.Input, expected map[string][]photo.Picture) *planned {
	p := &planned{pages: make(map[string]func() any), beside: make(map[string]output.File), photos: make(map[string]copyOf)}
	pages, beside := site.Plan(in)
	for _, page := range pages {
		p.pages[page.Path] = page.View
	}
	for _, file := range beside {
		p.beside[file.Path] = file
	}
	for name, pictures := range expected {
		for i, picture := range pictures {
			p.photos[site.PicturePath(picture)] = copyOf{name, i}
		}
	}
	return p
}

// File implements [Maker].
func (a *Anew) File(ctx context.Context, name string) (Content, error) {
	if c, ok := a.assets[name]; ok {
		return c, nil
	}
	a.mu.Lock()
	p := a.site
	a.mu.Unlock()
	if p == nil {
		return Content{}, fs.ErrNotExist
	}
	if c, ok := p.photos[name]; ok {
		return a.prints.make(ctx, c)
	}
	if c, ok := p.made.Load(name); ok {
		return c.(Content), nil
	}
	c, err := a.print(p, name)
	if err == nil {
		p.made.Store(name, c)
	}
	return c, err
}

// print makes a page or a file beside the pages. A panic is an error that says so.
func (a *Anew) print(p *planned, name string) (c Content, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = fmt.Errorf("%s could not be made, by a mistake in hussif: %v", path.Base(name), fault)
		}
	}()
	var b bytes.Buffer
	if view, ok := p.pages[name]; ok {
		err = a.look.Render(&b, view())
	} else if file, ok := p.beside[name]; ok {
		err = file.Content(&b)
	} else {
		err = fs.ErrNotExist
	}
	return held(b.Bytes()), err
}
