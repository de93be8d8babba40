package preview

import (
	"bytes"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path"
	"reflect"
	"sync"

	"hussif/build/check"
	"hussif/build/output"
	"hussif/build/photo"
	"hussif/build/show"
	"hussif/build/site"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
	"hussif/theme"
)

// A Bench is a [Maker] that reads again only what has changed, and makes a page
// when it is first asked for or no longer as it was. Make one with [NewBench].
type Bench struct {
	dir    string
	files  fs.FS
	today  func() edtf.Day
	assets map[string]Content
	prints *prints

	// Look holds mu alone, for the keeper changes the records of the journal that
	// pages are made from.
	mu      sync.RWMutex
	keeper  journal.Keeper
	checker check.Checker
	news    journal.News    // since the shop was shown the journal
	folder  *journal.Folder // as it was looked at
	input   site.Input      // of that
	state   State
	shop    *site.Workshop
	good    *display // the last sound state; nil before the first
}

// A display is a sound state and what is made of it.
type display struct {
	folder *journal.Folder
	input  site.Input
	past   bool // the keeper has gone on to an unsound state
	files  map[string]output.File
	photos map[string]copyOf // by the path of a scaled copy

	mu   sync.Mutex
	made map[string]Content
}

// NewBench returns a maker of the site of the journal in a folder. today tells the
// day its pages are for. It is closed when nobody asks any more. The error is a
// fault in the theme.
func NewBench(dir string, photos *photo.Darkroom, today func() edtf.Day) (*Bench, error) {
	shop, err := site.NewWorkshop()
	if err != nil {
		return nil, err
	}
	files := os.DirFS(dir)
	b := &Bench{dir: dir, files: files, today: today, shop: shop, assets: make(map[string]Content), prints: newPrints(files, photos)}
	for _, asset := range theme.Assets() {
		b.assets[asset.Path] = held(asset.Data)
	}
	return b, nil
}

// Close ends the work on photos and waits until it has ended.
func (b *Bench) Close() { b.prints.close() }

func held(data []byte) Content { return Content{Data: data, Sum: sha256.Sum256(data)} }

// Look implements [Maker].
func (b *Bench) Look(_ context.Context, folders []string, all bool) (State, error) {
	folder, err := b.read(folders, all)
	if err != nil {
		return State{}, err
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.good != nil {
		b.good.past = true
	}
	u := b.keeper.Update(folder, nil)
	b.news.Add(u.News)
	found := b.checker.Run(u.Journal, b.files, u.Findings, u.Again)
	expected, faults, err := b.prints.expect(u.Journal, folder.Entries)
	if err != nil {
		return State{}, err
	}
	in := site.Input{Journal: u.Journal, Findings: source.Sort(append(found, faults...)), Pictures: expected, Today: b.today()}
	if len(u.Again) > 0 || !alike(in, b.input) {
		b.state.Generation++
	}
	b.state.Findings, b.state.Sound = in.Findings, source.Count(in.Findings, source.Error) == 0
	b.folder, b.input = folder, in
	if b.state.Sound {
		b.show()
	}
	return b.state, nil
}

// read reads again what may have changed.
func (b *Bench) read(folders []string, all bool) (*journal.Folder, error) {
	if _, err := os.Stat(b.dir); errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("its folder %s is not there any more", b.dir)
	} else if err != nil {
		return nil, err
	}
	if all || b.folder == nil {
		return journal.Read(b.files)
	}
	return b.folder.Again(b.files, folders)
}

// alike reports whether two states look the same to a maker.
func alike(a, b site.Input) bool {
	return a.Journal == b.Journal && a.Today == b.Today && reflect.DeepEqual(a.Pictures, b.Pictures) &&
		printed(a.Findings) == printed(b.Findings)
}

func printed(found []source.Finding) string {
	var text bytes.Buffer
	if err := source.Print(&text, found, source.Palette{}); err != nil {
		panic(err) // writing to memory does not fail
	}
	return text.String()
}

// show puts the state that was looked at on display. What was made before is kept
// where it would come out the same.
func (b *Bench) show() {
	d := &display{folder: b.folder, input: b.input, photos: make(map[string]copyOf), made: make(map[string]Content)}
	in := d.input
	in.Since = &b.news
	b.shop.Show(in)
	b.news = journal.News{}
	if d.take(b.shop); b.good != nil {
		maps.Copy(d.made, b.good.made)
		maps.DeleteFunc(d.made, func(name string, c Content) bool { return d.files[name].Sum != c.Sum })
	}
	for name, pictures := range d.input.Pictures {
		for i, picture := range pictures {
			d.photos[show.PicturePath(picture)] = copyOf{name, i}
		}
	}
	b.good = d
}

func (d *display) take(shop *site.Workshop) {
	d.files = make(map[string]output.File)
	for _, file := range shop.Files() {
		d.files[file.Path] = file
	}
}

// File implements [Maker].
func (b *Bench) File(ctx context.Context, name string) (Content, error) {
	if c, ok := b.assets[name]; ok {
		return c, nil
	}
	b.mu.RLock()
	d := b.good
	if d == nil {
		b.mu.RUnlock()
		return Content{}, fs.ErrNotExist
	}
	if c, ok := d.photos[name]; ok {
		b.mu.RUnlock()
		return b.prints.make(ctx, c)
	}
	c, past, err := d.file(name)
	b.mu.RUnlock()
	if past {
		b.mu.Lock()
		defer b.mu.Unlock()
		b.bringBack()
		c, _, err = b.good.file(name)
	}
	return c, err
}

// bringBack reads the last sound state again from its files as they were, for a page
// of it that was not made while it lasted.
func (b *Bench) bringBack() {
	d := b.good
	if !d.past {
		return
	}
	in := d.input
	in.Journal, _ = d.folder.Journal(nil)
	b.shop.Show(in)
	d.take(b.shop)
	d.past = false
}

// file returns what is made, or makes it; or past where it cannot be made any more.
// A panic is an error that says so.
func (d *display) file(name string) (c Content, past bool, err error) {
	d.mu.Lock()
	c, ok := d.made[name]
	d.mu.Unlock()
	if ok {
		return c, false, nil
	}
	file, ok := d.files[name]
	if !ok {
		return c, false, fs.ErrNotExist
	}
	if d.past {
		return c, true, nil
	}
	defer func() {
		if fault := recover(); fault != nil {
			err = fmt.Errorf("%s could not be made, by a mistake in hussif: %v", path.Base(name), fault)
		}
	}()
	var text bytes.Buffer
	if err := file.Content(&text); err != nil {
		return c, false, err
	}
	c = held(text.Bytes())
	file.Made(c.Sum)
	d.mu.Lock()
	defer d.mu.Unlock()
	d.made[name] = c
	return c, false, nil
}
