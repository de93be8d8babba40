package preview

import "time"

// A pile gathers hints until they are ripe to be handed on.
type pile struct {
	Batch
	folders, files map[string]bool
	first, last    time.Time // of the hints; zero where there are none
}

func newPile() *pile {
	return &pile{folders: make(map[string]bool), files: make(map[string]bool)}
}

// wait returns how long it is until the pile is ripe, and whether there is
// anything on it.
func (p *pile) wait(now time.Time) (time.Duration, bool) {
	if p.first.IsZero() {
		return 0, false
	}
	return min(p.last.Add(quiet).Sub(now), p.first.Add(longest).Sub(now)), true
}

func (p *pile) hint() {
	p.last = time.Now()
	if p.first.IsZero() {
		p.first = p.last
	}
}

func (p *pile) all() {
	p.All = true
	p.hint()
}

func (p *pile) folder(names ...string) {
	for _, name := range names {
		if !p.folders[name] {
			p.folders[name] = true
			p.Folders = append(p.Folders, name)
		}
	}
	p.hint()
}

func (p *pile) file(name string) {
	if !p.files[name] {
		p.files[name] = true
		p.Files = append(p.Files, name)
	}
}
