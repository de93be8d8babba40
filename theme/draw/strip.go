package draw

import (
	"fmt"
	"html/template"
	"math"
)

// A MarkStrip is a long narrow strip with marks across it, such as the places of
// buttons, to be printed at its real size in several lengths.
type MarkStrip struct {
	Words
	Long  float64
	Marks []StripMark
}

// A StripMark is a mark at a distance from the strip's beginning.
type StripMark struct {
	At    float64
	Words string // "2 1/8 in"; may be ""
}

// Measures of a strip, in millimetres.
const (
	stripHigh  = 16.0
	stripApart = 10.0 // between two lengths on a page
	stripTop   = 66.0 // on the first page, below the test squares
	stripSide  = 8.0
	stripLap   = 10.0 // of a length over the one before
	mostLines  = 200
)

// Strips splits a strip into lengths, one below the other, on as many pages as it
// takes. Each length but the last has a lap beyond the arrow at its end on which the
// next is laid, so that no join adds or takes anything. It fails where that is more
// paper than anyone will join.
func Strips(v MarkStrip, paper Paper) (Sheets, error) {
	wide, high := paper.Wide-2*Margin-short, paper.High-2*Margin-short
	one := wide - 2*stripSide - stripLap
	n := max(1, int(math.Ceil((finite(v.Long)-1e-6)/one)))
	if n > mostLines {
		return Sheets{}, fmt.Errorf("at full size this takes %d lengths on %s, more than the %d that can be joined with care", n, paper.Name, mostLines)
	}
	sheets := Sheets{Across: 1}
	for done := 0; done < n; {
		top := stripSide
		if done == 0 {
			top = stripTop
		}
		lines := max(1, int((high-top-12)/(stripHigh+stripApart)))
		sheets.Pages = append(sheets.Pages, v.page(sheets.Down, wide, high, top, one, done, min(n, done+lines), n))
		done += lines
		sheets.Down++
	}
	return sheets, nil
}

// page draws the lengths from one to another.
func (v MarkStrip) page(number int, wide, high, top, one float64, from, to, of int) template.HTML {
	w := v.Words
	own := name(number, 0)
	w.ID += "-" + own
	w.Title += ", page " + own
	w.Desc += fmt.Sprintf(" Page %s, with lengths %d to %d of %d, at full size.", own, from+1, to, of)
	p := begin("sheet", w, wide, high, "mm")
	if number == 0 {
		p.square(Point{6, 6}, 50, "5 cm")
		p.square(Point{62, 6}, 50.8, "2 in")
	}
	for i := from; i < to; i++ {
		v.length(p, float64(i)*one, math.Min(one, v.Long-float64(i)*one), top+float64(i-from)*(stripHigh+stripApart), i, of)
	}
	p.text("sheet-name", "start", stripSide, high-6, own)
	return p.done()
}

// length draws one length of the strip, which begins at a distance.
func (v MarkStrip) length(p *pen, start, long, y float64, i, of int) {
	left, right := stripSide, stripSide+long
	end := right
	if i < of-1 {
		end += stripLap
	}
	p.polygon("cut-line", []Point{{left, y}, {end, y}, {end, y + stripHigh}, {left, y + stripHigh}})
	if i < of-1 {
		p.line("trim", right, y, right, y+stripHigh)
		p.filled("register", Point{right, y}, Point{right - 1.5, y - 3}, Point{right + 1.5, y - 3})
	}
	if i > 0 {
		p.filled("register", Point{left, y}, Point{left - 1.5, y - 3}, Point{left + 1.5, y - 3})
	}
	last := math.Inf(-1)
	const slack = 1e-6
	for _, m := range v.Marks {
		at := m.At - start
		if at < -slack || at > long+slack || i < of-1 && at > long-slack {
			continue // a mark on a join stands on the length that begins with it
		}
		x := left + at
		p.line("strip-mark", x, y+6, x, y+stripHigh)
		if m.Words == "" || x-last < wide(m.Words, 3.2)+1 {
			continue
		}
		at = math.Min(math.Max(x, left+wide(m.Words, 3.2)/2), end-wide(m.Words, 3.2)/2)
		p.text("sheet-words", "middle", at, y+4.5, m.Words)
		last = x
	}
	p.text("sheet-words", "end", end, y+stripHigh+4, fmt.Sprintf("length %d of %d", i+1, of))
}
