package worksheet

import (
	"fmt"

	"hussif/content/quantity"
	"hussif/theme/draw"
)

// A stripOf is a printable strip with marks on it.
type stripOf struct {
	name, title string
	long        quantity.Length
	marks       []quantity.Length
	words       []string // at each mark; none where they are all alike
}

// strip adds a strip with marks to be printed at full size.
func (p *Paper) strip(s stripOf) {
	view := draw.MarkStrip{Long: mm(s.long)}
	for i, m := range s.marks {
		mark := draw.StripMark{At: mm(m)}
		if i < len(s.words) {
			mark.Words = s.words[i]
		}
		view.Marks = append(view.Marks, mark)
	}
	p.Prints = append(p.Prints, Print{
		Name: s.name, Title: s.title,
		Desc:  fmt.Sprintf("A strip %s long with %s.", p.trade(s.long), plural(len(s.marks), "mark")),
		Words: []string{"Cut the strips out and join them at the arrows, each over the end of the one before.", "Measure the whole strip before you mark from it."},
		Sheet: func(w draw.Words, paper draw.Paper) (draw.Sheets, error) {
			view.Words = w
			return draw.Strips(view, paper)
		},
	})
}

// markStrip adds a strip of evenly spaced marks, no longer than is handy: it is moved
// along the cloth.
func (p *Paper) markStrip(name, title string, apart quantity.Length, spaces int) {
	const handy = 600 * quantity.Millimetre
	n := min(spaces, max(1, int(handy/apart)))
	s := stripOf{name: name, title: title, long: apart * quantity.Length(n)}
	for i := range n + 1 {
		s.marks = append(s.marks, apart*quantity.Length(i))
		words := ""
		if i%10 == 0 {
			words = fmt.Sprint(i)
		}
		s.words = append(s.words, words)
	}
	p.strip(s)
}
