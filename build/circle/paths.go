package circle

import (
	"fmt"
	"strings"

	"hussif/build/address"
)

// paths gives each page a path of its own, whatever it is called.
type paths struct{ taken map[string]bool }

func newPaths() *paths { return &paths{make(map[string]bool)} }

// new returns a path in a section that no page has yet.
func (p *paths) new(section, name string) string {
	name = strings.Trim(address.Slug(strings.ReplaceAll(name, "/", "-")), ".")
	if strings.Trim(name, "-") == "" {
		name = "unnamed"
	}
	stem := section + "/" + name
	out := stem + ".html"
	for n := 2; p.taken[out] || out == address.List(section); n++ {
		out = fmt.Sprintf("%s-%d.html", stem, n)
	}
	p.taken[out] = true
	return out
}
