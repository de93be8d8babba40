package worksheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"hussif/content/quantity"
)

// size writes an answer to the finer fractions of the trade, and what is lost by
// that where anything is. What would be lost altogether, such as the thickness of a
// thin cloth, is written exactly.
func (p *Paper) size(l quantity.Length) string {
	step := tradeOf(p.f).Step()
	switch {
	case l%step == 0:
		return p.trade(l)
	case max(l, -l) < step, !p.metric && l%(quantity.Inch/32) == 0:
		return p.exact(l) // half a sixteenth is found on a ruler too
	}
	return p.trade(l) + " (" + p.exact(l) + ")"
}

// Shown writes a length as an answer of a worksheet is written.
func Shown(f quantity.Format, l quantity.Length) string {
	return (&Paper{f: f, metric: metric(f)}).size(l)
}

// trade writes a length as it is marked with a tape.
func (p *Paper) trade(l quantity.Length) string { return tradeOf(p.f).Length(l) }

// tradeOf returns how a journal's lengths are shown on a worksheet: in its own unit, to
// a sixteenth of an inch or to the millimetre.
func tradeOf(f quantity.Format) quantity.Format {
	if metric(f) {
		return f
	}
	return f.Finer()
}

// exact writes a length as it stands in a formula: as a fraction down to 1/64 in or
// else to a thousandth of its unit.
func (p *Paper) exact(l quantity.Length) string {
	unit := p.f.Unit
	if !p.metric {
		if fine := (quantity.Format{Unit: quantity.Inches, Fraction: 64}); l%fine.Step() == 0 {
			return fine.Length(l)
		}
		unit = quantity.Inches
	}
	value := float64(l) / float64(unit.Length())
	return plainNumber(value) + " " + unit.String()
}

// plainNumber writes a number to a thousandth.
func plainNumber(f float64) string {
	f = math.Round(f*1000) / 1000
	sign := ""
	if f < 0 {
		sign, f = "−", -f
	}
	return sign + strconv.FormatFloat(f+0, 'f', -1, 64)
}

// list joins words: "a, b or c".
func list(words []string, last string) string {
	switch len(words) {
	case 0:
		return ""
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " " + last + " " + words[len(words)-1]
}

// plural puts a count before a word.
func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	if strings.HasSuffix(word, "ch") {
		return fmt.Sprintf("%d %ses", n, word)
	}
	return fmt.Sprintf("%d %ss", n, word)
}

func mm(l quantity.Length) float64 { return float64(l) / float64(quantity.Millimetre) }
