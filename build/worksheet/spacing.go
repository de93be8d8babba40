package worksheet

import (
	"fmt"
	"html/template"

	"hussif/content/quantity"
	"hussif/theme/draw"
)

// Spacing places equal things evenly between two ends: buttons, eyelets, tucks.
type Spacing struct {
	Length  Length
	Number  Count
	Width   Length
	First   Length
	Last    Length
	Largest Length
}

// mostMarks is how many marks are listed and printed.
const mostMarks = 400

// About implements [Sheet].
func (*Spacing) About() About {
	return About{
		Name: "spacing", Also: []string{"even spacing", "buttons", "buttonholes", "eyelets"},
		Short:   "where buttons, eyelets or tucks lie, evenly between two ends",
		Long:    "Give how many there are, or the largest gap that there may be between two. Every mark is counted from the same end, so that no rounding adds up. For things that have a width of their own the ends are to their outer edges.",
		Example: "length: 14 in\nnumber: 7\nfirst end: 3/4 in\nlast end: 3/4 in",
		Formula: "gap = (length − both ends − number × width) ÷ (number − 1)",
		Source:  "arithmetic; common practice",
		Care:    "An awl or a punch goes through further than you think: put a board under, and your other hand behind the point.",
	}
}

// Inputs implements [Sheet].
func (s *Spacing) Inputs() []Input {
	return []Input{
		{Name: "length", Doc: "how long the edge is", Into: &s.Length, Need: Always, Example: "14 in"},
		{Name: "number", Doc: "how many things lie on it", Into: s.Number.from(2, mostMarks), Need: Solved, Example: "7"},
		{Name: "largest gap", Doc: "the most that may lie between two, instead of their number", Into: &s.Largest, Need: Solved, Example: "2 1/4 in"},
		{Name: "width", Doc: "how wide each thing is along the edge", Into: s.Width.orNothing(), Default: "0 in", Metric: "0 cm", Example: "1/2 in"},
		{Name: "first end", Doc: "from the first end to the first thing", Into: s.First.orNothing(), Default: "0 in", Metric: "0 cm", Example: "3/4 in"},
		{Name: "last end", Doc: "from the last thing to the last end", Into: s.Last.orNothing(), Default: "0 in", Metric: "0 cm", Example: "3/4 in"},
	}
}

// Solve implements [Sheet].
func (s *Spacing) Solve(p *Paper) {
	if s.First.Is+s.Last.Is >= s.Length.Is {
		p.fault("first end", "the two ends take all of the length")
		return
	}
	room := s.Length.Is - s.First.Is - s.Last.Is
	switch {
	case !s.Number.Known && !s.Largest.Known:
		p.wants("how many there are has to be known, or the largest gap", "number", "largest gap")
		return
	case !s.Number.Known:
		n := s.fewest(room)
		if n > mostMarks {
			p.fault("largest gap", "with gaps of %s there would be %d of them, more than %d", p.exact(s.Largest.Is), n, mostMarks)
			return
		}
		s.Number.set(int(n))
	}
	n := quantity.Length(s.Number.Is)
	if n*s.Width.Is > room {
		p.fault("width", "%d of %s take %s, and there are %s", n, p.exact(s.Width.Is), p.exact(n*s.Width.Is), p.exact(room))
		return
	}
	free := room - n*s.Width.Is
	gap := free / (n - 1)
	if s.Largest.Known && gap > s.Largest.Is+p.f.Finer().Step() {
		p.fault("number", "with %d of them the gaps are %s, more than the %s asked for; %d would do", n, p.exact(gap), p.exact(s.Largest.Is), s.fewest(room))
		return
	}
	p.line("gap = (length − first end − last end − number × width) ÷ (number − 1)", p.exact(gap), "(%s − %s − %s − %d × %s) ÷ %d",
		p.exact(s.Length.Is), p.exact(s.First.Is), p.exact(s.Last.Is), n, p.exact(s.Width.Is), n-1)
	p.count("number", int(n))
	p.say("gap", gap)
	if s.Width.Is > 0 {
		p.say("from the middle of one to the next", gap+s.Width.Is)
	}
	p.main("number", "gap")
	marks := s.marks(free)
	words := make([]string, len(marks))
	for i, m := range marks {
		words[i] = p.trade(m)
	}
	p.cut("mark from the first end at %s", list(words, "and"))
	if s.Width.Is > 0 {
		p.cut("each mark is where one begins; it ends %s further on", p.trade(s.Width.Is))
	}
	s.drawing(p, marks)
	p.strip(stripOf{name: "spacing", title: fmt.Sprintf("%d marks on %s", n, p.trade(s.Length.Is)), long: s.Length.Is, marks: marks, words: words})
}

// fewest returns how few leave gaps no larger than the largest.
func (s *Spacing) fewest(room quantity.Length) quantity.Length {
	// n things leave n-1 gaps: (n-1) × (gap + width) + width reaches the room.
	each := s.Largest.Is + s.Width.Is
	return max(2, (room-s.Width.Is+each-1)/each+1)
}

// marks returns where each thing begins. Each is worked out by itself.
func (s *Spacing) marks(free quantity.Length) []quantity.Length {
	n := quantity.Length(s.Number.Is)
	var marks []quantity.Length
	for i := range n {
		marks = append(marks, s.First.Is+i*s.Width.Is+(2*i*free+(n-1))/(2*(n-1)))
	}
	return marks
}

func (s *Spacing) drawing(p *Paper, marks []quantity.Length) {
	long := mm(s.Length.Is)
	high := long * 0.08
	fig := draw.Figure{Metric: p.metric}
	fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "cut-line", Closed: true, Points: []draw.Point{{}, {X: long}, {X: long, Y: high}, {Y: high}}})
	for _, m := range marks {
		x, w := mm(m), mm(s.Width.Is)
		if w > 0 {
			fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "seam-line", Closed: true,
				Points: []draw.Point{{X: x, Y: high * 0.3}, {X: x + w, Y: high * 0.3}, {X: x + w, Y: high * 0.7}, {X: x, Y: high * 0.7}}})
			continue
		}
		fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "cut-line", Points: []draw.Point{{X: x, Y: high * 0.2}, {X: x, Y: high * 0.8}}})
	}
	fig.Spans = []draw.Span{
		{From: mm(marks[0] + s.Width.Is), To: mm(marks[1]), Words: "gap " + p.trade(marks[1]-marks[0]-s.Width.Is)},
		{From: 0, To: long, Words: p.trade(s.Length.Is)},
	}
	p.Drawings = append(p.Drawings, Drawing{
		Title: fmt.Sprintf("%d on %s", len(marks), p.trade(s.Length.Is)),
		Desc: fmt.Sprintf("To scale: %d marks on an edge of %s, the first %s from its end, with gaps of %s.",
			len(marks), p.trade(s.Length.Is), p.trade(s.First.Is), p.trade(marks[1]-marks[0]-s.Width.Is)),
		Draw: func(w draw.Words) template.HTML { fig.Words = w; return draw.DrawFigure(fig) },
	})
}
