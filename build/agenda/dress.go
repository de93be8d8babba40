package agenda

import (
	"slices"
	"strconv"
	"strings"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/near"
)

// A Layer is one thing to put on.
type Layer struct {
	Name  string     // as first written, or the title of the garment
	Build journal.ID // the garment that it is; empty where the journal has none for the occasion
}

// A step is a layer that is not put in order yet.
type step struct {
	Layer
	after map[string]bool // keys of what goes on before it
}

// dress puts the layers of all garments in order. The garments come in the order of
// how many layers they are worn over. Where they contradict each other, what was met
// first goes on first.
func dress(garments []*journal.Build) (layers []Layer, contradicts bool) {
	d := dresser{steps: make(map[string]*step)}
	for _, b := range garments {
		d.add(b)
	}
	for len(d.order) > 0 {
		next := slices.IndexFunc(d.order, func(key string) bool { return len(d.steps[key].after) == 0 })
		if next < 0 {
			next, contradicts = 0, true
		}
		key := d.order[next]
		layers = append(layers, d.steps[key].Layer)
		d.order = slices.Delete(d.order, next, next+1)
		for _, s := range d.steps {
			delete(s.after, key)
		}
	}
	return layers, contradicts
}

type dresser struct {
	steps map[string]*step
	order []string // keys, as first met
}

// add takes up what a garment is worn over, and the garment.
func (d *dresser) add(b *journal.Build) {
	worn := make(map[string]int) // how many of each kind of layer so far
	last := ""
	put := func(kind, name string) *step {
		worn[kind]++
		key := kind + " " + strconv.Itoa(worn[kind])
		s := d.steps[key]
		if s == nil {
			s = &step{Layer{Name: name}, make(map[string]bool)}
			d.steps[key] = s
			d.order = append(d.order, key)
		}
		if last != "" {
			s.after[last] = true
		}
		last = key
		return s
	}
	for _, w := range b.Over {
		kind, count := layerOf(w.Text)
		for range count {
			name := kind
			if count == 1 {
				name = w.Text
			}
			put(kind, name)
		}
	}
	kind, _ := layerOf(b.Garment)
	if kind == "" || d.taken(kind, worn[kind]+1) {
		kind = string(b.ID) // two of a kind for one day, of which the wearer will choose
	}
	s := put(kind, b.Title)
	s.Name, s.Build = b.Title, b.ID
}

// taken reports whether a layer is another garment already.
func (d *dresser) taken(kind string, n int) bool {
	s := d.steps[kind+" "+strconv.Itoa(n)]
	return s != nil && s.Build != ""
}

// layerOf returns a layer's name in the form in which layers are told apart, and how
// many of it are worn. Nothing at all is none of "".
func layerOf(written string) (name string, count int) {
	// The key of one layer is its count and its name.
	n, name, ok := strings.Cut(strings.TrimSpace(measure.Foundation{written}.Key()), " ")
	if !ok {
		return "", 0
	}
	count, _ = strconv.Atoi(n)
	return name, count
}

// Help is something for which a wearer needs a second pair of hands.
type Help struct {
	Build   journal.ID
	Closure string     // which closure, with its kind and place; empty where a note says it of the whole garment
	Note    journal.ID // the note that says so; empty where the build's page does
}

// helpers returns what the journal says cannot be done alone, by the last note of each
// garment that speaks of it.
func helpers(garments []*journal.Build, day edtf.Day) []Help {
	var out []Help
	for _, b := range garments {
		for i := range b.Closures {
			if c := &b.Closures[i]; c.Alone == journal.No {
				out = append(out, Help{Build: b.ID, Closure: closureWords(c)})
			}
		}
		var said *journal.Note
		for _, n := range b.Notes {
			if n.Date <= day && n.Moves.DressAlone != journal.Unsaid {
				said = n
			}
		}
		if said != nil && said.Moves.DressAlone == journal.No {
			out = append(out, Help{Build: b.ID, Note: said.ID})
		}
	}
	return out
}

// closureWords names a closure: "front, pins, at centre front".
func closureWords(c *journal.Closure) string {
	words := c.Name.Text
	if c.How != "" && !strings.Contains(near.Folded(words), near.Folded(c.How)) {
		words += ", " + c.How
	}
	if c.At != "" && !strings.Contains(near.Folded(words), near.Folded(c.At)) {
		words += ", at " + c.At
	}
	return words
}
