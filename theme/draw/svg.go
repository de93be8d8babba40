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

func (p *pen) done() template.HTML { return template.HTML(p.String() + "</svg>") }

func (p *pen) line(class string, x1, y1, x2, y2 float64) {
	fmt.Fprintf(p, `<path class="%s" d="M%s %sL%s %s"%s/>`, class, num(x1), num(y1), num(x2), num(y2), dashes(class))
}

func (p *pen) polygon(class string, points []Point) {
	p.path(class, trace(points)+"Z")
}

func (p *pen) path(class, d string) {
	fmt.Fprintf(p, `<path class="%s" d="%s"%s/>`, class, d, dashes(class))
}

// filled draws a small solid shape.
func (p *pen) filled(class string, points ...Point) {
	fmt.Fprintf(p, `<path class="%s" d="%sZ" fill="currentColor"/>`, class, trace(points))
}

func (p *pen) circle(class string, x, y, r float64) {
	fmt.Fprintf(p, `<circle class="%s" cx="%s" cy="%s" r="%s"/>`, class, num(x), num(y), num(r))
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
	fmt.Fprintf(p, `<text class="%s" text-anchor="%s" x="%s" y="%s" fill="currentColor" stroke="none"%s>%s</text>`,
		class, anchor, num(x), num(y), more, fractions(words))
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
	f = math.Round(finite(f)*1000) / 1000
	return strconv.FormatFloat(f+0, 'f', -1, 64) // + 0 makes a plain zero of -0
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
	return fraction.ReplaceAllString(template.HTMLEscapeString(words), `<tspan class="fraction">$0</tspan>`)
}
