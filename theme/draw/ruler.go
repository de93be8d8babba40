package draw

import (
	"math"
	"strconv"
)

// A ruler is a scale of lengths from one end to another, with its marks.
type ruler struct {
	from, to float64 // in millimetres
	unit     float64 // an inch or a centimetre
	name     string  // of the unit
	tick     float64 // between marks, in units
	number   float64 // between numbered marks, in units
}

// fineness are the distances between marks that a tape of each kind may have.
var (
	inchSteps  = [...]float64{1.0 / 16, 1.0 / 8, 1.0 / 4, 1.0 / 2, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000}
	metreSteps = [...]float64{0.1, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000}
)

// newRuler returns the scale of a length drawn so long, with marks no nearer to
// one another than given and numbers at whole units no nearer than given.
func newRuler(from, to, long float64, metric bool, ticks, numbers float64) ruler {
	r := ruler{from: from, to: to, unit: 25.4, name: "in"}
	steps := inchSteps[:]
	if metric {
		r.unit, r.name, steps = 10, "cm", metreSteps[:]
	}
	per := long / ((to - from) / r.unit)
	r.tick, r.number = steps[len(steps)-1], steps[len(steps)-1]
	for i := len(steps) - 1; i >= 0; i-- {
		if steps[i]*per >= ticks {
			r.tick = steps[i]
		}
		if steps[i]*per >= numbers {
			r.number = steps[i]
		}
	}
	return r
}

// whole makes the numbers stand at whole units only, as on a tape.
func (r ruler) whole() ruler {
	r.number = max(r.number, 1)
	return r
}

// marks returns the marks between both ends in units, at multiples of a step.
func (r ruler) marks(step float64) []float64 {
	var all []float64
	const slack = 1e-9
	for n := math.Ceil(r.from/r.unit/step - slack); n*step <= r.to/r.unit+slack; n++ {
		all = append(all, n*step)
	}
	return all
}

// multiple reports whether a mark stands at a multiple of a step.
func multiple(mark, step float64) bool {
	n := mark / step
	return math.Abs(n-math.Round(n)) < 1e-6
}

// numeral writes a number of units: halves to sixteenths as fractions where the
// unit is the inch.
func (r ruler) numeral(n float64) string {
	if r.name == "cm" {
		return strconv.FormatFloat(math.Round(n*10)/10, 'f', -1, 64)
	}
	sign := ""
	if n < 0 {
		sign, n = "−", -n
	}
	sixteenths := int(math.Round(n * 16))
	whole, part, of := sixteenths/16, sixteenths%16, 16
	for part > 0 && part%2 == 0 {
		part, of = part/2, of/2
	}
	switch {
	case part == 0:
		return sign + strconv.Itoa(whole)
	case whole == 0:
		return sign + strconv.Itoa(part) + "/" + strconv.Itoa(of)
	}
	return sign + strconv.Itoa(whole) + " " + strconv.Itoa(part) + "/" + strconv.Itoa(of)
}
