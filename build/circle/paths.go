package circle

import (
	"cmp"
	"strconv"
	"strings"

	"hussif/build/address"
)

// paths gives each page a path of its own, whatever it is called.
type paths struct {
	taken map[string]bool
	again map[string]int // how often a name was wanted
}

func newPaths() *paths { return &paths{make(map[string]bool), make(map[string]int)} }

// new returns a path in a section that no page has yet.
func (p *paths) new(section, name string) string {
	words := strings.FieldsFunc(address.Slug(name), func(r rune) bool { return strings.ContainsRune("-./", r) })
	stem := section + "/" + address.Slug(cmp.Or(strings.Join(words, "-"), "unnamed"))
	for {
		out := stem + ".html"
		if p.again[stem]++; p.again[stem] > 1 {
			out = stem + "-" + strconv.Itoa(p.again[stem]) + ".html"
		}
		if !p.taken[out] && out != address.List(section) {
			p.taken[out] = true
			return out
		}
	}
}
