package output

import "fmt"

// A Clash is two files of a site that would be one and the same on some disks,
// or one that lies where the other needs a folder.
type Clash struct {
	One, Other string
}

func (c *Clash) Error() string {
	if c.One == c.Other {
		return fmt.Sprintf("the site has two files called %s; give one of them another name", c.One)
	}
	return fmt.Sprintf("%s and %s get in each other's way on some disks; give one of them another name", c.One, c.Other)
}

// A plan is a site whose names have been checked.
type plan struct {
	Site
	index  map[string]int // of each path in Files
	claims map[string]claim
	names  folder
}

// A claim says who needs a name, and as what.
type claim struct {
	name string // as it is spelled
	by   string // the path of the file that needs it
	file bool   // as a file, not as a folder
}

func newPlan(s Site) (*plan, error) {
	p := &plan{
		Site:   s,
		index:  make(map[string]int, len(s.Files)),
		claims: make(map[string]claim, len(s.Files)),
		names:  newFolder(),
	}
	for i, f := range s.Files {
		if err := f.validate(); err != nil {
			return nil, err
		}
		p.index[f.Path] = i
		if err := p.claim(claim{f.Path, f.Path, true}); err != nil {
			return nil, err
		}
		for dir := range parents(f.Path) {
			if err := p.claim(claim{dir, f.Path, false}); err != nil {
				return nil, err
			}
		}
	}
	return p, nil
}

func (p *plan) claim(c claim) error {
	key := p.names.fold(c.name)
	had, ok := p.claims[key]
	if ok && (had.file || c.file || had.name != c.name) {
		return &Clash{had.by, c.by}
	}
	if !ok {
		p.claims[key] = c
	}
	return nil
}

// wants reports whether the site shall have a file of this path.
func (p *plan) wants(name string) bool {
	_, ok := p.index[name]
	return ok
}

// obstructs reports whether an unwanted file must go before the wanted ones can
// be written: it has the name of one but for the case of a letter, or it lies
// where a folder is needed, or in a folder that lies where a file is needed.
func (p *plan) obstructs(name string) bool {
	if _, ok := p.claims[p.names.fold(name)]; ok {
		return true
	}
	for dir := range parents(name) {
		if p.claims[p.names.fold(dir)].file {
			return true
		}
	}
	return false
}
