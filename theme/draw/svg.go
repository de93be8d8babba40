package draw

import (
	"fmt"
	"html/template"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// page is how wide a drawing is in its own units, which are CSS pixels on a
// screen of 360.
const page = 328.0

// A pen writes one drawing.
type pen struct {
	strings.Builder
	id string
}

// drawing begins a drawing of a kind, which is also a class, so high.
func drawing(kind string, w Words, high float64) *pen {
	return begin(kind, w, page, high, "")
}

// begin begins a drawing of any width: in CSS pixels, or in the unit "mm".
func begin(kind string, w Words, wide, high float64, unit string) *pen {
	p := &pen{id: template.HTMLEscapeString(w.ID)}
	p.Grow(4 << 10) // as long as most
	fmt.Fprintf(p, `<svg xmlns="http://www.w3.org/2000/svg" class="draw draw-%s" role="img" aria-labelledby="%s-title %s-desc"`, kind, p.id, p.id)
	stroke, letters := 1.0, 12.0
	if unit == "mm" {
		stroke, letters = 0.3, 3.6
	}
	fmt.Fprintf(p, ` width="%s%s" height="%s%s" viewBox="0 0 %s %s" fill="none" stroke="currentColor" stroke-width="%s" font-size="%s">`,
		num(wide), unit, num(high), unit, num(wide), num(high), num(stroke), num(letters))
	fmt.Fprintf(p, `<title id="%s-title">%s</title><desc id="%s-desc">%s</desc>`,
		p.id, template.HTMLEscapeString(w.Title), p.id, template.HTMLEscapeString(w.Desc))
	return p
}

func (p *pen) done() template.HTML {
	p.WriteString("</svg>")
	return template.HTML(p.String())
}

// all writes some pieces. A drawing has hundreds of strokes, over which a format
// would take four times as long.
func (p *pen) all(pieces ...string) {
	for _, piece := range pieces {
		p.WriteString(piece)
	}
}

// num writes a number as [num] does.
func (p *pen) num(f float64) {
	var digits [32]byte
	p.Write(appendNum(digits[:0], f))
}

// place writes the coordinates of a point.
func (p *pen) place(before string, x, y float64) {
	p.WriteString(before)
	p.num(x)
	p.WriteByte(' ')
	p.num(y)
}

// attr writes a number as an attribute.
func (p *pen) attr(before string, f float64) {
	p.WriteString(before)
	p.num(f)
	p.WriteByte('"')
}

func (p *pen) line(class string, x1, y1, x2, y2 float64) {
	p.all(`<path class="`, class, `" d="`)
	p.place("M", x1, y1)
	p.place("L", x2, y2)
	p.all(`"`, dashes(class), `/>`)
}

func (p *pen) polygon(class string, points []Point) {
	p.path(class, trace(points)+"Z")
}

func (p *pen) path(class, d string) {
	p.all(`<path class="`, class, `" d="`, d, `"`, dashes(class), `/>`)
}

// filled draws a small solid shape.
func (p *pen) filled(class string, points ...Point) {
	p.all(`<path class="`, class, `" d="`, trace(points), `Z" fill="currentColor"/>`)
}

func (p *pen) circle(class string, x, y, r float64) {
	p.all(`<circle class="`, class, `"`)
	p.attr(` cx="`, x)
	p.attr(` cy="`, y)
	p.attr(` r="`, r)
	p.WriteString(`/>`)
}

// text writes a line of words; anchor is "start", "middle" or "end".
func (p *pen) text(class, anchor string, x, y float64, words string) {
	p.lettering(class, anchor, x, y, words, "")
}

// upright writes words that are read from below upwards, centred.
func (p *pen) upright(class string, x, y float64, words string) {
	p.lettering(class, "middle", x, y, words, fmt.Sprintf(` transform="rotate(-90 %s %s)"`, num(x), num(y)))
}

func (p *pen) lettering(class, anchor string, x, y float64, words, more string) {
	p.all(`<text class="`, class, `" text-anchor="`, anchor, `"`)
	p.attr(` x="`, x)
	p.attr(` y="`, y)
	p.all(` fill="currentColor" stroke="none"`, more, `>`, fractions(words), `</text>`)
}

// dashes returns the kind of line of a class, so that a drawing can be told apart
// without its style sheet.
func dashes(class string) string {
	switch class {
	case "seam-line", "under", "era-edge":
		return ` stroke-dasharray="5 3"`
	case "level-line", "leader":
		return ` stroke-dasharray="1 3"`
	case "run run-2":
		return ` stroke-dasharray="7 4"`
	case "run run-3":
		return ` stroke-dasharray="2 3"`
	case "run run-4":
		return ` stroke-dasharray="9 3 2 3"`
	}
	return ""
}

// trace returns the path through points.
func trace(points []Point) string {
	var b strings.Builder
	for i, q := range points {
		if i == 0 {
			b.WriteByte('M')
		} else {
			b.WriteByte('L')
		}
		b.WriteString(num(q.X) + " " + num(q.Y))
	}
	return b.String()
}

// num writes a number to a thousandth.
func num(f float64) string {
	var digits [32]byte
	return string(appendNum(digits[:0], f))
}

func appendNum(dst []byte, f float64) []byte {
	f = math.Round(finite(f)*1000) / 1000
	return strconv.AppendFloat(dst, f+0, 'f', -1, 64) // + 0 makes a plain zero of -0
}

// finite keeps what is no number, or beyond any cloth, out of a drawing.
func finite(f float64) float64 {
	if math.IsNaN(f) || math.Abs(f) > 1e9 {
		return 0
	}
	return f
}

var fraction = regexp.MustCompile(`\b\d{1,2}/(?:2|4|8|16|32|64)\b`)

// fractions marks the fractions of an inch, so that the style can build them.
func fractions(words string) string {
	if !strings.Contains(words, "/") {
		return template.HTMLEscapeString(words)
	}
	return fraction.ReplaceAllString(template.HTMLEscapeString(words), `<tspan class="fraction">$0</tspan>`)
}
