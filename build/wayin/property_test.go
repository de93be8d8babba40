package wayin

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/graph/simple"
	"gonum.org/v1/gonum/graph/topo"

	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// garment is a random one; circles are allowed where backwards is.
func garment(random *rand.Rand, backwards bool) *journal.Build {
	b := &journal.Build{}
	word := func(format string, n int) journal.Word { return journal.Word{Text: fmt.Sprintf(format, n)} }
	pieces := 1 + random.IntN(6)
	for k := range pieces {
		b.Pieces = append(b.Pieces, journal.Piece{Name: word("piece %d", k), Cut: 1 + random.IntN(2)})
	}
	n := 1 + random.IntN(8)
	names := random.Perm(n)
	for i := range n {
		s := journal.Seam{Name: word("seam %d", names[i]), Count: 1 + random.IntN(2), Length: quantity.Length(random.IntN(30)) * inch}
		for range 1 + random.IntN(3) {
			s.Joins = append(s.Joins, word("piece %d", random.IntN(pieces)))
		}
		for k := range n {
			if (k > i || backwards) && random.IntN(4) == 0 {
				at := []journal.Extent{"", journal.ExtentWhole, journal.ExtentEnds}[random.IntN(3)]
				s.CaughtBy = append(s.CaughtBy, journal.Caught{Seam: word("seam %d", names[k]), At: at})
			}
		}
		b.Seams = append(b.Seams, s)
	}
	return b
}

// catching is the graph of which seam is opened before which, built anew from the
// names; self are seams said to catch themselves, which it cannot hold.
func catching(b *journal.Build) (g *simple.DirectedGraph, self []int) {
	g = simple.NewDirectedGraph()
	place := make(map[string]int64)
	for i, s := range b.Seams {
		place[s.Name.Text] = int64(i)
		g.AddNode(simple.Node(i))
	}
	for i, s := range b.Seams {
		for _, c := range s.CaughtBy {
			if by := place[c.Seam.Text]; by != int64(i) {
				g.SetEdge(g.NewEdge(simple.Node(by), simple.Node(i)))
			} else if !slices.Contains(self, i) {
				self = append(self, i)
			}
		}
	}
	return g, self
}

// Against gonum's graph package, as an outside reference: what is reached, that
// the order is a topological one, and which seams catch each other in circles.
func TestAgainstReference(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 1787))
	circles := 0
	for round := range 4000 {
		b := garment(random, round%2 == 1)
		graph, self := catching(b)
		read := Read(b, Rates{})

		want := len(self)
		var names []string
		for _, part := range topo.TarjanSCC(graph) {
			alone := len(part) == 1
			if alone && !slices.Contains(self, int(part[0].ID())) {
				continue
			}
			if !alone {
				want++
				for _, n := range part {
					if slices.Contains(self, int(n.ID())) {
						want-- // one fault for a set of seams
					}
				}
			}
			for _, n := range part {
				names = append(names, b.Seams[n.ID()].Name.Text)
			}
		}
		var found []Fault
		for _, f := range read.Faults() {
			if f.Kind == Circle {
				found = append(found, f)
			}
		}
		if len(found) != want {
			t.Fatalf("%d circles, want %d: %+v", len(found), want, b.Seams)
		}
		_, err := topo.Sort(graph)
		if acyclic := err == nil && len(self) == 0; acyclic != (len(found) == 0) {
			t.Fatalf("gonum: %v, %d circles", err, len(found))
		}
		circles += len(found)
		for _, f := range found {
			checkRound(t, b, f, names)
		}

		var asked []Target
		var askedNames []string
		for i, s := range b.Seams {
			if random.IntN(3) == 0 {
				asked = append(asked, Target{i, measure.Side(random.IntN(3))})
				askedNames = append(askedNames, s.Name.Text)
			}
		}
		w := read.WayTo(asked...)
		if w.Load != read.Load(asked...) {
			t.Fatalf("a way of %+v, a load of %+v", w.Load, read.Load(asked...))
		}
		if all := read.Way(askedNames...); w.Length > all.Length || len(w.Out) != len(all.Out) {
			t.Fatalf("one side is %s, both are %s", inches.Length(w.Length), inches.Length(all.Length))
		}
		if w.Circular() && len(found) == 0 {
			t.Fatal("a circle, and no fault")
		}
		checkReached(t, b, graph, asked, w)
		if len(found) == 0 {
			checkOrder(t, b, w)
			checkLoad(t, b, asked, w)
		}
	}
	if circles < 100 {
		t.Errorf("only %d circles were tried", circles)
	}
}

// checkRound: each seam of a circle is caught by the next, and all are in circles
// by the reference.
func checkRound(t *testing.T, b *journal.Build, f Fault, names []string) {
	t.Helper()
	if len(f.Round) < 2 || f.Round[0] != f.Round[len(f.Round)-1] {
		t.Fatalf("no circle: %q", f.Round)
	}
	for k, name := range f.Round[1:] {
		i := slices.IndexFunc(b.Seams, func(s journal.Seam) bool { return s.Name.Text == f.Round[k] })
		if !slices.ContainsFunc(b.Seams[i].CaughtBy, func(c journal.Caught) bool { return c.Seam.Text == name }) {
			t.Fatalf("%q: %s does not catch %s", f.Round, name, f.Round[k])
		}
		if !slices.Contains(names, name) {
			t.Fatalf("%s is in no circle", name)
		}
	}
}

func checkReached(t *testing.T, b *journal.Build, graph *simple.DirectedGraph, asked []Target, w Way) {
	t.Helper()
	for i := range b.Seams {
		want := slices.ContainsFunc(asked, func(a Target) bool {
			return a.Entry == i || topo.PathExistsIn(graph, simple.Node(i), simple.Node(a.Entry))
		})
		got := slices.ContainsFunc(w.Out, func(s Step) bool { return s.Seam == &b.Seams[i] })
		if got != want {
			t.Fatalf("asked %v: %s opened: %t, want %t", asked, b.Seams[i].Name.Text, got, want)
		}
	}
}

func checkOrder(t *testing.T, b *journal.Build, w Way) {
	t.Helper()
	place := make(map[string]int)
	for k, s := range w.Out {
		place[s.Seam.Name.Text] = k
		if w.Back[len(w.Back)-1-k].Seam != s.Seam {
			t.Fatal("the order back is not that of opening reversed")
		}
	}
	for _, s := range w.Out {
		for _, c := range s.Seam.CaughtBy {
			if place[c.Seam.Text] >= place[s.Seam.Name.Text] {
				t.Fatalf("%s is opened after %s, which it catches: %s", c.Seam.Text, s.Seam.Name.Text, said(w.Out))
			}
		}
	}
	for k := 1; k < len(w.Out); k++ {
		before, s := w.Out[k-1].Seam.Name.Text, w.Out[k].Seam
		caught := slices.ContainsFunc(s.CaughtBy, func(c journal.Caught) bool { return c.Seam.Text == before })
		if before > s.Name.Text && !caught {
			t.Fatalf("%s could go before %s by name: %s", s.Name.Text, before, said(w.Out))
		}
	}
}

// checkLoad works out what is opened by going over all seams until nothing
// changes any more. Lengths at crossings hold only where there are no circles.
func checkLoad(t *testing.T, b *journal.Build, asked []Target, w Way) {
	t.Helper()
	whole, part := make(map[string]bool), make(map[string]bool)
	sided := make(map[string]map[measure.Side]bool) // on which sides each is opened
	for _, s := range b.Seams {
		sided[s.Name.Text] = make(map[measure.Side]bool)
	}
	changed := false
	add := func(s *journal.Seam, sides ...measure.Side) {
		if s.Count == 1 {
			sides = []measure.Side{measure.Left, measure.Right}
		}
		for _, side := range sides {
			if !sided[s.Name.Text][side] {
				sided[s.Name.Text][side], changed = true, true
			}
		}
	}
	half := func(s *journal.Seam, all quantity.Length) quantity.Length {
		if s.Count == 2 && len(sided[s.Name.Text]) == 1 {
			return all / 2
		}
		return all
	}
	for _, a := range asked {
		s := &b.Seams[a.Entry]
		whole[s.Name.Text] = true
		if a.Side == measure.Both {
			add(s, measure.Left, measure.Right)
		} else {
			add(s, a.Side)
		}
	}
	short := make(map[string]quantity.Length)
	for changed = true; changed; {
		changed = false
		for i := range b.Seams {
			s := &b.Seams[i]
			for _, c := range s.CaughtBy {
				if !whole[s.Name.Text] && !part[s.Name.Text] {
					continue
				}
				if whole[s.Name.Text] && c.At != journal.ExtentEnds && !whole[c.Seam.Text] {
					whole[c.Seam.Text], changed = true, true
				}
				if !part[c.Seam.Text] {
					part[c.Seam.Text], changed = true, true
				}
				by := slices.IndexFunc(b.Seams, func(o journal.Seam) bool { return o.Name.Text == c.Seam.Text })
				for side := range sided[s.Name.Text] {
					add(&b.Seams[by], side)
				}
			}
			var sum quantity.Length // of what is opened of s, where not the whole
			for k := range b.Seams {
				other := &b.Seams[k]
				if !slices.ContainsFunc(other.CaughtBy, func(c journal.Caught) bool { return c.Seam.Text == s.Name.Text }) {
					continue
				}
				switch name := other.Name.Text; {
				case whole[name]:
					sum += half(other, 4*inch*quantity.Length(other.Count))
				case part[name]:
					sum += short[name]
				}
			}
			if all := half(s, s.Length*quantity.Length(s.Count)); all > 0 {
				sum = min(sum, all)
			}
			if sum != short[s.Name.Text] {
				short[s.Name.Text], changed = sum, true
			}
		}
	}
	var length quantity.Length
	unknown := 0
	for i := range b.Seams {
		s := &b.Seams[i]
		switch {
		case whole[s.Name.Text] && s.Length == 0:
			unknown++
		case whole[s.Name.Text]:
			length += half(s, s.Length*quantity.Length(s.Count))
		case part[s.Name.Text]:
			length += short[s.Name.Text]
		}
	}
	if w.Length != length || w.Unknown != unknown {
		t.Fatalf("got %s and %d unknown, want %s and %d: %s", inches.Length(w.Length), w.Unknown, inches.Length(length), unknown, said(w.Out))
	}
}

// Against gonum's connected components of a graph of pieces and the seams left in.
func TestLooseAgainstReference(t *testing.T) {
	random := rand.New(rand.NewPCG(12, 1784))
	loosened := 0
	for range 3000 {
		b := garment(random, false)
		for k := range b.Pieces {
			b.Pieces[k].Cut = 1
		}
		w := Find(b, Rates{}, b.Seams[random.IntN(len(b.Seams))].Name.Text, b.Seams[random.IntN(len(b.Seams))].Name.Text)
		before := components(b, func(*journal.Seam) bool { return true })
		after := components(b, func(s *journal.Seam) bool {
			return !slices.ContainsFunc(w.Out, func(o Step) bool { return o.Seam == s && o.Whole })
		})
		var want []string
		for _, part := range before {
			var best []string
			var most quantity.Length
			first := true
			for _, piece := range part.pieces { // in the order of the list
				i := slices.IndexFunc(after, func(p component) bool { return slices.Contains(p.pieces, piece) })
				if p := after[i]; first || p.sewn > most || p.sewn == most && len(p.pieces) > len(best) {
					best, most, first = p.pieces, p.sewn, false
				}
			}
			for _, piece := range part.pieces {
				if !slices.Contains(best, piece) {
					want = append(want, piece)
				}
			}
		}
		slices.Sort(want)
		var got []string
		for _, l := range w.Loose {
			got = append(got, l.Name)
		}
		if !slices.Equal(got, want) {
			t.Fatalf("loose %q, want %q: %s", got, want, said(w.Out))
		}
		loosened += len(got)
	}
	if loosened < 1000 {
		t.Errorf("only %d pieces came loose", loosened)
	}
}

type component struct {
	pieces []string
	sewn   quantity.Length
}

func components(b *journal.Build, in func(*journal.Seam) bool) []component {
	g := simple.NewUndirectedGraph()
	const seams = 1000 // nodes from here on are seams
	for k := range b.Pieces {
		g.AddNode(simple.Node(k))
	}
	for i := range b.Seams {
		if !in(&b.Seams[i]) {
			continue
		}
		for _, w := range b.Seams[i].Joins {
			k := slices.IndexFunc(b.Pieces, func(p journal.Piece) bool { return p.Name.Text == w.Text })
			g.SetEdge(g.NewEdge(simple.Node(k), simple.Node(seams+i)))
		}
	}
	var out []component
	for _, nodes := range topo.ConnectedComponents(g) {
		var c component
		for _, n := range nodes {
			if n.ID() < seams {
				c.pieces = append(c.pieces, b.Pieces[n.ID()].Name.Text)
			} else {
				s := b.Seams[n.ID()-seams]
				c.sewn += s.Length * quantity.Length(s.Count)
			}
		}
		slices.Sort(c.pieces)
		out = append(out, c)
	}
	return out
}
