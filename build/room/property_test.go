package room

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"hussif/build/wayin"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// unit is the grid on which the allowances and needs of random garments lie.
const unit = inch / 4

// A sketch is a random garment, and the journal's build it would be from.
type sketch struct {
	Input
	build  *journal.Build
	rates  wayin.Rates
	halved []measure.Side // by brute force: the side on which each seam is opened, or Both
}

// count is how many of a seam are opened.
func (s sketch) count(i int) int {
	if s.halved[i] != measure.Both {
		return s.Seams[i].Count / 2
	}
	return s.Seams[i].Count
}

func point(k int) measure.Point { return measure.Point{Measure: fmt.Sprintf("measure %d", k)} }

// points are as many measures, some of them of one side of the body.
func points(random *rand.Rand, n int) []measure.Point {
	var out []measure.Point
	for k := range n {
		p := point(k)
		if random.IntN(3) == 0 {
			p.Side = []measure.Side{measure.Left, measure.Right}[random.IntN(2)]
		}
		out = append(out, p)
	}
	return out
}

// edges is how many edges of a set of seams one reading crosses: on one side, those
// of half the set.
func edges(p measure.Point, count int) int {
	if p.Side != measure.Both && count == 2 {
		return 2
	}
	return 2 * count
}

// draw makes a garment of some seams that may cross some measures, each with up to
// most units to give on an edge.
func draw(random *rand.Rand, seams, measures, most int) sketch {
	s := sketch{build: &journal.Build{}}
	stitches := []string{"backstitch, linen", "whip"}
	s.rates = wayin.Rates{
		Opening: map[string]wayin.Rate{"backstitch": {Hourly: 16 * inch, Notes: 1}},
		Sewing:  map[string]wayin.Rate{"backstitch": {Hourly: 8 * inch, Notes: 1}},
	}
	if random.IntN(2) == 0 {
		s.Step = unit
	}
	crossed := points(random, measures)
	kinds := 1 + random.IntN(2)
	names := random.Perm(seams)
	for i := range seams {
		js := journal.Seam{
			Name: journal.Word{Text: fmt.Sprintf("seam %02d", names[i])}, Count: 1 + random.IntN(2),
			Length: quantity.Length(random.IntN(9)) * inch, Sewn: stitches[random.IntN(kinds)],
		}
		for k := range i { // later in the list, sewn earlier
			if random.IntN(4) == 0 {
				js.CaughtBy = append(js.CaughtBy, journal.Caught{Seam: journal.Word{Text: fmt.Sprintf("seam %02d", names[k])}})
			}
		}
		s.build.Seams = append(s.build.Seams, js)
		seam := Seam{Name: js.Name.Text, Entry: i, Count: js.Count}
		for k := range measures {
			if random.IntN(3) > 0 {
				keep := quantity.Length(random.IntN(3)) * unit
				now := keep + quantity.Length(random.IntN(most+2)-1)*unit
				seam.Levels = append(seam.Levels, Level{Point: crossed[k], Edges: edges(crossed[k], js.Count), Now: now, Keep: keep})
			}
		}
		s.Seams = append(s.Seams, seam)
	}
	for k := range measures {
		by := quantity.Length(1+random.IntN(2+2*most*seams)) * unit
		s.Needs = append(s.Needs, Need{Point: crossed[k], By: by - quantity.Length(random.IntN(4))*unit/4})
	}
	if random.IntN(2) == 0 {
		s.Closures = []Closure{{Name: "front", Overlap: 3 * unit, Keep: unit, Crosses: crossed[:1]}}
	}
	s.Garment = wayin.Read(s.build, s.rates)
	return s
}

// rank is what plans are compared by, but for names.
type rank struct {
	panels  int
	unknown int
	load    quantity.Length // or nanoseconds
	seams   int
	largest int // in units
}

func (a rank) compare(b rank) int {
	for _, d := range []int{a.panels - b.panels, a.unknown - b.unknown, int(a.load - b.load), a.seams - b.seams, a.largest - b.largest} {
		if d != 0 {
			return d
		}
	}
	return 0
}

// A pair is which seams are open and which have panels, by name.
type pair struct{ open, panels string }

// brute tries every amount on the grid for every seam at every measure, with and
// without panels, and returns the best rank of each pair that meets all needs
// that any seam crosses.
func (s sketch) brute() (ranks map[pair]rank, byHours bool) {
	var needs []quantity.Length // less what closings give; 0 where no seam crosses
	var crossing [][]int
	sides := make([]map[measure.Side]bool, len(s.Seams)) // of what each seam is opened for
	for i := range sides {
		sides[i] = make(map[measure.Side]bool)
	}
	for _, n := range s.Needs {
		by := n.By
		for _, c := range s.Closures {
			if slices.Contains(c.Crosses, n.Point) {
				by -= c.Overlap - c.Keep
			}
		}
		var here []int
		for i, seam := range s.Seams {
			if s.at(seam, n.Point) != nil {
				here = append(here, i)
			}
		}
		if by <= 0 || len(here) == 0 {
			by, here = 0, nil
		}
		for _, i := range here {
			sides[i][n.Point.Side] = true
		}
		needs, crossing = append(needs, by), append(crossing, here)
	}
	for i, of := range sides {
		s.halved = append(s.halved, measure.Both)
		if len(of) == 1 && s.Seams[i].Count == 2 {
			for side := range of {
				s.halved[i] = side
			}
		}
	}
	var all []int
	for _, here := range crossing {
		all = append(all, here...)
	}
	_, _, _, byHours = s.naive(all)

	ranks = make(map[pair]rank)
	amounts := make([][]int, len(s.Seams))
	for i := range amounts {
		amounts[i] = make([]int, len(s.Needs))
	}
	var try func(seam, need int, panels uint)
	try = func(seam, need int, panels uint) {
		if need == len(s.Needs) {
			seam, need = seam+1, 0
		}
		if seam == len(s.Seams) {
			if s.meets(amounts, needs, crossing, panels) {
				p, r := s.rank(amounts, panels, byHours)
				if known, ok := ranks[p]; !ok || r.compare(known) < 0 {
					ranks[p] = r
				}
			}
			return
		}
		most := 0
		if l := s.at(s.Seams[seam], s.Needs[need].Point); l != nil && needs[need] > 0 {
			most = max(0, int((l.Now-l.Keep)/unit))
		}
		for a := range most + 1 {
			amounts[seam][need] = a
			try(seam, need+1, panels)
		}
		amounts[seam][need] = 0
	}
	for panels := range uint(1) << len(s.Seams) {
		useful := true
		for i := range s.Seams {
			useful = useful && (panels&(1<<i) == 0 || slices.Contains(all, i))
		}
		if useful {
			try(0, 0, panels)
		}
	}
	return ranks, byHours
}

func (s sketch) at(seam Seam, p measure.Point) *Level {
	for k := range seam.Levels {
		if seam.Levels[k].Point == p {
			return &seam.Levels[k]
		}
	}
	return nil
}

func (s sketch) meets(amounts [][]int, needs []quantity.Length, crossing [][]int, panels uint) bool {
	for k, need := range needs {
		for _, i := range crossing[k] {
			edges := s.at(s.Seams[i], s.Needs[k].Point).Edges
			if need -= quantity.Length(edges*amounts[i][k]) * unit; panels&(1<<i) != 0 {
				need = 0
			}
			if need <= 0 {
				break
			}
		}
		if need > 0 {
			return false
		}
	}
	return true
}

func (s sketch) rank(amounts [][]int, panels uint, byHours bool) (pair, rank) {
	var p pair
	var r rank
	var open []int
	for i, seam := range s.Seams {
		most := slices.Max(amounts[i])
		panel := panels&(1<<i) != 0
		if panel {
			r.panels += s.count(i)
			p.panels += seam.Name + ","
		}
		if most > 0 || panel {
			open = append(open, i)
			r.seams += s.count(i)
			p.open += seam.Name + ","
		}
		r.largest = max(r.largest, most)
	}
	unknown, length, hours, _ := s.naive(open)
	r.unknown, r.load = unknown, length
	if byHours {
		r.unknown, r.load = 0, quantity.Length(hours)
	}
	return p, r
}

// naive works out a way in by following names.
func (s sketch) naive(open []int) (unknown int, length quantity.Length, hours time.Duration, known bool) {
	sides := make(map[string]int) // opened on the left 1, on the right 2, on both 3
	var follow func(name string, on int)
	follow = func(name string, on int) {
		for _, js := range s.build.Seams {
			if js.Name.Text != name {
				continue
			}
			if js.Count == 1 {
				on = 3
			}
			if sides[name]|on == sides[name] {
				return
			}
			sides[name] |= on
			for _, c := range js.CaughtBy {
				follow(c.Seam.Text, sides[name])
			}
		}
	}
	for _, i := range open {
		follow(s.Seams[i].Name, map[measure.Side]int{measure.Both: 3, measure.Left: 1, measure.Right: 2}[s.halved[i]])
	}
	known = true
	for _, js := range s.build.Seams {
		on := sides[js.Name.Text]
		if on == 0 {
			continue
		}
		l := js.Length * quantity.Length(js.Count)
		if on < 3 {
			l /= 2
		}
		length += l
		if l == 0 {
			unknown++
		}
		known = known && l > 0 && js.Sewn == "backstitch, linen"
		// 16 in an hour to open, and 8 to sew.
		hours += time.Duration(l/inch) * (time.Hour/16 + time.Hour/8)
	}
	return unknown, length, hours, known
}

func TestAgainstBruteForce(t *testing.T) {
	random := rand.New(rand.NewPCG(31, 1789))
	var panelled, byHours, several, tied, oneSide int
	for range 4000 {
		var s sketch
		switch random.IntN(3) {
		case 0:
			s = draw(random, 4, 1, 2)
		case 1:
			s = draw(random, 3, 2, 2)
		default:
			s = draw(random, 2, 3, 2)
		}
		ranks, hours := s.brute()
		p := Solve(s.Input)
		if len(p.Options) == 0 {
			if len(ranks) > 1 || len(ranks) == 1 && ranks[pair{}] != (rank{}) {
				t.Fatalf("no option, brute force has %v\n%+v", ranks, s.Input)
			}
			continue
		}
		if p.ByHours != hours {
			t.Fatalf("by hours: %t, want %t", p.ByHours, hours)
		}
		var best pair
		none := true
		for pr, r := range ranks {
			if none || r.compare(ranks[best]) < 0 {
				best, none = pr, false
			}
		}
		checkBest(t, p, ranks, ranks[best])
		near := 0
		for _, r := range ranks {
			if r.panels == ranks[best].panels && r.unknown == ranks[best].unknown && 5*r.load <= 6*ranks[best].load {
				near++
			}
		}
		told := p.Others
		for _, o := range p.Options {
			told += 1 + len(o.Or)
			tied += len(o.Or)
		}
		if told != near {
			t.Fatalf("%d options, want %d\n%s", told, near, said(p))
		}
		first := strings.Split(pairOf(p, p.Options[0]).open, ",")
		further := false
		for pr, r := range ranks {
			apart := slices.ContainsFunc(first, func(name string) bool { return !slices.Contains(strings.Split(pr.open, ","), name) })
			further = further || apart && r.panels == ranks[best].panels && (r.unknown != ranks[best].unknown || 5*r.load > 6*ranks[best].load)
		}
		if further != (p.Next != nil) {
			t.Fatalf("another way: %t, %+v\n%s", further, p.Next, said(p))
		}
		for _, c := range p.Options[0].Seams {
			if c.Side != measure.Both {
				oneSide++
			}
		}
		checkPlan(t, p)
		panelled += min(1, len(p.Options[0].Panels))
		several += min(1, len(p.Options)-1)
		if p.ByHours {
			byHours++
		}
	}
	if panelled < 200 || byHours < 200 || several < 200 || tied < 50 || oneSide < 100 {
		t.Errorf("too few with panels (%d), by hours (%d), with a choice (%d), tied (%d), or of one side (%d)", panelled, byHours, several, tied, oneSide)
	}
}

func pairOf(p Plan, o Option) pair {
	var pr pair
	for _, seam := range p.Seams { // names in the order of brute force
		if slices.ContainsFunc(o.Seams, func(c Change) bool { return c.Seam == seam.Name }) {
			pr.open += seam.Name + ","
		}
		if slices.ContainsFunc(o.Panels, func(c Panel) bool { return c.Seam == seam.Name }) {
			pr.panels += seam.Name + ","
		}
	}
	return pr
}

// checkBest compares the first option with the best of brute force. Amounts on the
// grid are at most one unit larger than what needs no grid.
func checkBest(t *testing.T, p Plan, ranks map[pair]rank, best rank) {
	t.Helper()
	o := p.Options[0]
	got, ok := ranks[pairOf(p, o)]
	if !ok {
		t.Fatalf("brute force does not find %v\n%s", pairOf(p, o), said(p))
	}
	if best.panels > 0 {
		got.largest, best.largest = 0, 0 // with panels, all that is open gives all it has
	}
	if got.compare(best) != 0 {
		t.Fatalf("got %+v, brute force has %+v\n%s", got, best, said(p))
	}
	if most := quantity.Length(best.largest) * unit; best.panels == 0 && (o.Largest > most || o.Largest <= most-unit || p.Step == unit && o.Largest != most) {
		t.Fatalf("an edge gives %d, by brute force %d\n%s", o.Largest, most, said(p))
	}
}

// checkPlan checks what holds of every plan: all needs are met and not by more
// than rounding, no seam gives more than it has, edges of one level give the same
// where they can, and no option is better than the one before.
func checkPlan(t *testing.T, p Plan) {
	t.Helper()
	met := make(map[measure.Point]quantity.Length)
	for _, m := range p.Moves {
		for _, l := range m.Levels {
			met[l.Point] += l.By
		}
	}
	for k, o := range p.Options {
		for _, n := range p.Needs {
			if slices.ContainsFunc(p.Unmet, func(u Unmet) bool { return u.Point == n.Point }) {
				continue
			}
			given := met[n.Point]
			var edges quantity.Length
			var each []quantity.Length
			for _, c := range o.Seams {
				for _, e := range c.Levels {
					if e.Point != n.Point {
						continue
					}
					l := levelOf(p, c.Seam, e.Point)
					if e.By <= 0 || e.By > l.Each() || e.Was != l.Now || e.Now != e.Was-e.By || e.Now < l.Keep || e.Edges != l.Edges {
						t.Fatalf("%s gives %+v of %+v", c.Seam, e, l)
					}
					if e.By < l.Each() {
						each = append(each, e.By)
					}
					if p.Step > 0 && e.By%p.Step != 0 {
						t.Fatalf("%s is marked at %d, and steps are %d", c.Seam, e.By, p.Step)
					}
					given += e.Gives()
					edges += quantity.Length(e.Edges)
				}
			}
			for _, by := range each {
				if by < slices.Max(each)-1 {
					t.Fatalf("shares of %s differ: %v", n.Point, each)
				}
			}
			for _, panel := range o.Panels {
				for _, w := range panel.Widths {
					if w.Point == n.Point {
						given += w.Width * quantity.Length(w.Times)
						edges += quantity.Length(w.Times)
					}
				}
			}
			if given < n.By || given > n.By+max(edges, 1)*max(p.Step, 1) {
				t.Fatalf("%s: %d given of %d\n%s", n.Point, given, n.By, said(p))
			}
		}
		if k > 0 {
			before := p.Options[k-1]
			a, b := rankOf(p, before), rankOf(p, o)
			if a.compare(b) > 0 || a.compare(b) == 0 && b.panels == 0 && before.Largest == o.Largest {
				t.Fatalf("option %d stands before %d\n%s", k-1, k, said(p))
			}
		}
		if why := p.Why(k, inches); why == "" || strings.Contains(why, "-") || strings.HasPrefix(why, "a panel") != (k == 0 && len(o.Panels) > 0) {
			t.Fatalf("option %d of %d: %q", k, len(p.Options), why)
		}
	}
}

func levelOf(p Plan, seam string, at measure.Point) Level {
	for _, s := range p.Seams {
		for _, l := range s.Levels {
			if s.Name == seam && l.Point == at {
				return l
			}
		}
	}
	return Level{}
}

// Where there is enough, and only marking it loses some, no panel is cut.
func TestNoPanelForWhatCannotBeMarked(t *testing.T) {
	random := rand.New(rand.NewPCG(41, 1795))
	saved := 0
	for range 3000 {
		s := draw(random, 1+random.IntN(4), 1, 3)
		s.Step = unit
		var enough quantity.Length
		for i := range s.Seams {
			for k := range s.Seams[i].Levels {
				l := &s.Seams[i].Levels[k]
				l.Now += unit / 2
				enough += l.Room()
			}
		}
		for i := range s.Closures {
			enough += s.Closures[i].Room()
		}
		p := Solve(s.Input)
		if need := s.Needs[0].By; len(p.Options) > 0 && (need > enough) != (len(p.Options[0].Panels) > 0) {
			t.Fatalf("short by %d of %d\n%s", need, enough, said(p))
		}
		if !p.exact {
			continue
		}
		saved++
		for _, o := range p.Options {
			given := quantity.Length(0)
			for _, m := range p.Moves {
				given += m.Levels[0].By
			}
			for _, c := range o.Seams {
				for _, e := range c.Levels {
					if l := levelOf(p, c.Seam, e.Point); e.By > l.Each() {
						t.Fatalf("%s gives %d of %d", c.Seam, e.By, l.Each())
					}
					given += e.Gives()
				}
			}
			if given < s.Needs[0].By {
				t.Fatalf("%d given of %d\n%s", given, s.Needs[0].By, said(p))
			}
		}
	}
	if saved < 100 {
		t.Errorf("only %d were spared a panel", saved)
	}
}

// With more to let out at one place no plan gets worse.
func TestMoreAllowance(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 1791))
	better := 0
	for range 3000 {
		s := draw(random, 1+random.IntN(6), 1+random.IntN(4), 3)
		before := Solve(s.Input)
		i := random.IntN(len(s.Seams))
		if len(s.Seams[i].Levels) == 0 || len(before.Options) == 0 {
			continue
		}
		s.Seams[i].Levels[random.IntN(len(s.Seams[i].Levels))].Now += quantity.Length(1+random.IntN(8)) * unit
		after := Solve(s.Input)
		a, b := rankOf(after, after.Options[0]), rankOf(before, before.Options[0])
		if a.compare(b) > 0 {
			t.Fatalf("worse: %+v than %+v\n%s\n\n%s", a, b, said(after), said(before))
		}
		if a.compare(b) < 0 {
			better++
		}
	}
	if better < 100 {
		t.Errorf("only %d plans got better", better)
	}
}

// rankOf is the rank of an option, with the largest change in nanometres where
// there are no panels.
func rankOf(p Plan, o Option) rank {
	r := rank{panels: o.panels(), unknown: o.Way.Unknown, load: o.Way.Length, seams: o.count(), largest: int(o.Largest)}
	if p.ByHours {
		r.unknown, r.load = 0, quantity.Length(o.Way.Opening.For+o.Way.Sewing.For)
	}
	if r.panels > 0 {
		r.largest = 0
	}
	return r
}

// In whatever order seams, closings and needs are listed, the plan is the same.
func TestOrderMakesNoDifference(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 1792))
	for range 500 {
		s := draw(random, 1+random.IntN(14), 1+random.IntN(4), 3)
		first := Solve(s.Input)
		random.Shuffle(len(s.Seams), func(i, k int) { s.Seams[i], s.Seams[k] = s.Seams[k], s.Seams[i] })
		again := Solve(s.Input)
		if said(again) != said(first) {
			t.Fatalf("got\n%s\nbefore\n%s", said(again), said(first))
		}
	}
}

// Measure by measure, the plan is a plan, and never better than the best.
func TestGreedy(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 1793))
	for range 300 {
		s := draw(random, 13+random.IntN(4), 1+random.IntN(6), 2)
		p := Solve(s.Input)
		used := make(map[string]bool)
		for _, seam := range s.Seams {
			for _, l := range seam.Levels {
				if slices.ContainsFunc(s.Needs, func(n Need) bool { return n.Point == l.Point && n.By > 0 }) {
					used[seam.Name] = true
				}
			}
		}
		if p.Greedy && len(used) <= mostTried || p.Greedy && len(p.Options) != 1 {
			t.Fatalf("greedy with %d seams, %d options", len(used), len(p.Options))
		}
		checkPlan(t, p)
	}
	for range 500 {
		s := draw(random, 1+random.IntN(6), 1+random.IntN(4), 2)
		p := Solve(s.Input)
		if len(p.Options) == 0 {
			continue
		}
		pr := newProblem(s.Input)
		for _, n := range (&Plan{Input: s.Input}).close() {
			if n.By > 0 {
				pr.add(n)
			}
		}
		pr.gatherSeams()
		greedy := p
		greedy.Options, greedy.Next, greedy.Greedy = []Option{pr.option(pr.greedy())}, nil, true
		checkPlan(t, greedy)
		a, b := rankOf(greedy, greedy.Options[0]), rankOf(p, p.Options[0])
		if a.seams, b.seams, a.largest, b.largest = 0, 0, 0, 0; a.compare(b) < 0 {
			t.Fatalf("greedy is better: %+v than %+v\n%s\n\n%s", a, b, said(greedy), said(p))
		}
	}
}

func BenchmarkSolve(b *testing.B) {
	random := rand.New(rand.NewPCG(10, 1794))
	inputs := make([]Input, 20)
	for i := range inputs {
		inputs[i] = draw(random, 12, 12, 4).Input
	}
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		Solve(inputs[i%len(inputs)])
		i++
	}
}

// Each measure is crossed by half the seams, which have too little everywhere, so
// that there are many ways to place as few panels as can be.
func BenchmarkSolveManyPanels(b *testing.B) {
	random := rand.New(rand.NewPCG(10, 1794))
	s := sketch{build: &journal.Build{}}
	for i := range 12 {
		name := fmt.Sprintf("seam %02d", i)
		s.build.Seams = append(s.build.Seams, journal.Seam{Name: journal.Word{Text: name}, Length: 10 * inch})
		s.Seams = append(s.Seams, Seam{Name: name, Entry: i, Count: 1})
	}
	for k := range 12 {
		s.Needs = append(s.Needs, Need{Point: point(k), By: 40 * unit})
		for _, i := range random.Perm(12)[:6] {
			s.Seams[i].Levels = append(s.Seams[i].Levels, Level{Point: point(k), Edges: 2, Now: unit})
		}
	}
	s.Garment = wayin.Read(s.build, wayin.Rates{})
	b.ReportAllocs()
	for b.Loop() {
		Solve(s.Input)
	}
}
