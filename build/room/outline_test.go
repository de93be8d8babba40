package room

import (
	"fmt"
	"strings"
	"testing"

	"hussif/content/measure"
	"hussif/content/quantity"
)

func TestOutline(t *testing.T) {
	hip := measure.Point{Measure: "hip girth"}
	at := func(p measure.Point, height, width quantity.Length) Width {
		return Width{Point: p, At: height * inch, Width: width * inch, Placed: true}
	}
	for _, test := range []struct {
		name   string
		widths []Width
		seam   quantity.Length
		want   string
	}{
		{"short at two, and it fits below", []Width{at(bust, 2, 1), at(waist, 10, 2), at(hip, 18, 0)}, 40, "end 0: 0, bust girth 2: 1, natural waist girth 10: 2, hip girth 18: 0"},
		{"short between two that fit", []Width{at(bust, 2, 0), at(waist, 10, 2), at(hip, 18, 0)}, 40, "bust girth 2: 0, natural waist girth 10: 2, hip girth 18: 0"},
		{"far from what fits", []Width{at(bust, 1, 0), at(waist, 10, 0), at(hip, 18, 2)}, 40, "natural waist girth 10: 0, hip girth 18: 2, end 40: 0"},
		{"short at both ends", []Width{at(bust, 0, 1), at(waist, 8, 2)}, 8, "bust girth 0: 1, natural waist girth 8: 2"},
		{"a seam of unknown length", []Width{at(bust, 3, 1), at(waist, 8, 2)}, 0, "end 0: 0, bust girth 3: 1, natural waist girth 8: 2"},
		{"one level only", []Width{at(waist, 8, 2)}, 20, "end 0: 0, natural waist girth 8: 2, end 20: 0"},
		{"an unknown height", []Width{{Point: bust, Width: inch}, at(waist, 8, 2)}, 20, "end 0: 0, natural waist girth 8: 2, end 20: 0"},
		{"two legs at one height", []Width{at(bust, 4, 1), at(hip, 4, 2), at(waist, 9, 0)}, 9, "end 0: 0, hip girth 4: 2, natural waist girth 9: 0"},
		{"nothing missing", []Width{at(bust, 4, 0)}, 9, ""},
		{"no height at all", []Width{{Point: bust, Width: inch}}, 9, ""},
	} {
		var got []string
		for _, w := range (Panel{Widths: test.widths}).Outline(test.seam * inch) {
			name := w.Point.String()
			if w.IsEnd() {
				name = "end"
			}
			got = append(got, fmt.Sprintf("%s %d: %d", name, w.At/inch, w.Width/inch))
		}
		if got := strings.Join(got, ", "); got != test.want {
			t.Errorf("%s\ngot  %s\nwant %s", test.name, got, test.want)
		}
	}
}
