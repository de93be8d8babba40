package table

import (
	"fmt"
	"math/big"
	"strings"
	"time"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/quantity"
)

// A Cell is one value: text, a number or a list of names. The zero Cell is empty.
type Cell struct {
	text   string
	list   []string
	number bool
}

// Text returns a cell that holds text, with "\n" for every kind of line break; an
// empty one for "".
func Text[T ~string](s T) Cell {
	return Cell{text: strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(string(s))}
}

// List returns a cell that holds several names; an empty one where there are none.
func List[T ~string](names []T) Cell {
	var c Cell
	for _, n := range names {
		c.list = append(c.list, Text(n).text)
	}
	return c
}

// Count returns a cell that holds a whole number.
func Count(n int) Cell { return number(big.NewRat(int64(n), 1), 0) }

// mm returns a cell with a length in millimetres, exact to the nanometre.
func mm(l quantity.Length) Cell {
	return number(big.NewRat(int64(l), int64(quantity.Millimetre)), 6)
}

// inHours returns a cell with a duration in hours to four digits.
func inHours(d time.Duration) Cell { return number(big.NewRat(int64(d), int64(time.Hour)), 4) }

// fraction returns a cell with a number to six digits.
func fraction(f quantity.Fraction) Cell {
	if f.Den == 0 {
		return Count(0) // the zero Fraction
	}
	return number(big.NewRat(f.Num, f.Den), 6)
}

// number returns a cell with a number that has at most so many digits after its
// point.
func number(n *big.Rat, digits int) Cell {
	text := n.FloatString(digits)
	if digits > 0 {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		text = "0"
	}
	return Cell{text: text, number: true}
}

// day returns a cell with a calendar day, an empty one for the zero Day, which
// stands for a day that is not written.
func day(d edtf.Day) Cell {
	if d == 0 {
		return Cell{}
	}
	return Text(d.String())
}

// price returns a cell with the number of an amount of money, and one with its
// currency; both are empty for no money.
func price(m quantity.Money) (amount, currency Cell) {
	if m == (quantity.Money{}) {
		return Cell{}, Cell{}
	}
	figures, code, _ := strings.Cut(m.String(), " ")
	return Cell{text: strings.Replace(figures, "\u2212", "-", 1), number: true}, Text(code)
}

// to returns the ID that a link leads to, or what is written where it leads nowhere.
func to(j *journal.Journal, ref journal.Ref, kinds ...journal.Kind) string {
	if ref.IsZero() {
		return ""
	}
	id := ref.To
	if r, ok := j.Find(ref.To, kinds...); ok {
		id = string(r.Head().ID)
	}
	if ref.Anchor != "" {
		id = fmt.Sprintf("%s#%s", id, ref.Anchor)
	}
	return id
}

// idOf returns the ID of the build that a note belongs to; "" where there is none.
func idOf(b *journal.Build) journal.ID {
	if b == nil {
		return ""
	}
	return b.ID
}
