package slip

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"hussif/content/edtf"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A Reading is a value that was just read, with what it is compared with.
type Reading struct {
	Point  measure.Point
	Class  measure.Class
	Value  quantity.Estimate
	Unit   quantity.Unit // that it was given in, as [UnitOf] tells
	Day    edtf.Day
	Before Before
	Errors measure.Errors
}

// Before is the newest value known of the measure; the zero Before is none.
type Before struct {
	Value  quantity.Estimate
	Day    edtf.Day
	Others bool // read over other layers
}

// known reports whether there is a value to compare with. No measure is nothing.
func (b Before) known() bool { return b.Value.Known() && b.Value.Length != 0 }

// A Kind is a kind of doubt.
type Kind int

// The kinds of doubt.
const (
	Outside   Kind = iota + 1 // no body measures so much, or so little
	Change                    // more of a change than is likely
	OtherUnit                 // centimetres for inches, or inches for centimetres
	Swapped                   // two digits
	Mark                      // the decimal mark, one place off
	Half                      // of a girth
)

// A Doubt is a reason to look at the tape again.
type Doubt struct {
	Kind    Kind
	Reading Reading
	Instead quantity.Length // what it would be without the slip; 0 where none is likely
}

// Look returns the doubt there is about a reading, if any. What is unknown or not
// measured cannot be doubted.
func Look(r Reading) (Doubt, bool) {
	v := r.Value.Length
	scope := r.scope()
	known := r.Before.known()
	switch {
	case !r.Value.Known():
		return Doubt{}, false
	case known && r.off(v) > r.Limit():
		if d, ok := r.undone(r.Limit()); ok {
			return d, true
		}
		if v >= scope.least && v <= scope.most {
			return Doubt{Kind: Change, Reading: r}, true
		}
	case known && !r.Before.Others && r.off(v) > r.threefold():
		for _, swapped := range r.swapped() {
			if r.off(swapped) <= r.threefold() {
				return Doubt{Swapped, r, swapped}, true
			}
		}
	}
	if v < scope.least || v > scope.most {
		return Doubt{Kind: Outside, Reading: r}, true
	}
	if other := r.other(); !known && (v < scope.low || v > scope.high) && other >= scope.low && other <= scope.high {
		return Doubt{OtherUnit, r, other}, true
	}
	return Doubt{}, false
}

// off returns how far a value lies from the one before.
func (r Reading) off(v quantity.Length) quantity.Length {
	by := v - r.Before.Value.Length
	return max(by, -by)
}

// undone returns the slip without which the value comes nearest to the one before,
// within a limit.
func (r Reading) undone(limit quantity.Length) (Doubt, bool) {
	v := r.Value.Length
	slips := []Doubt{{OtherUnit, r, r.other()}, {Mark, r, v / 10}, {Mark, r, v * 10}}
	for _, swapped := range r.swapped() {
		slips = append(slips, Doubt{Swapped, r, swapped})
	}
	if r.Class == measure.LargeGirth || r.Class == measure.SmallGirth {
		slips = append(slips, Doubt{Half, r, 2 * v})
	}
	var best Doubt
	for _, s := range slips {
		if r.off(s.Instead) <= limit && (best.Kind == 0 || r.off(s.Instead) < r.off(best.Instead)) {
			best = s
		}
	}
	return best, best.Kind != 0
}

// metric reports whether the value was given in a metric unit.
func (r Reading) metric() bool {
	switch r.Unit {
	case quantity.Millimetres, quantity.Centimetres, quantity.Metres:
		return true
	}
	return false
}

// other returns what the same figure is in centimetres for inches, or in inches for
// any metric unit.
func (r Reading) other() quantity.Length {
	if r.metric() {
		// Exact to 50 nm: less than any figure that is written.
		return r.Value.Length * 127 / 50
	}
	return r.Value.Length * 50 / 127
}

// swapped returns the value with each two neighbours among the digits of its whole
// part swapped.
func (r Reading) swapped() []quantity.Length {
	unit := r.Unit.Length()
	if unit == 0 || r.Value.Length < 0 {
		return nil
	}
	digits := []byte(strconv.FormatInt(int64(r.Value.Length/unit), 10))
	var out []quantity.Length
	for i := 0; i+1 < len(digits); i++ {
		if digits[i] == digits[i+1] || i == 0 && digits[1] == '0' {
			continue
		}
		digits[i], digits[i+1] = digits[i+1], digits[i]
		if n, err := strconv.ParseInt(string(digits), 10, 64); err == nil {
			out = append(out, quantity.Length(n)*unit+r.Value.Length%unit)
		}
		digits[i], digits[i+1] = digits[i+1], digits[i]
	}
	return out
}

// UnitOf returns the unit that a text which is a length was given in: the last one
// it names, or else that of bare numbers.
func UnitOf(text string, bare quantity.Unit) quantity.Unit {
	text = strings.TrimRight(text, " .")
	at := strings.LastIndexFunc(text, func(r rune) bool { return unicode.IsNumber(r) || unicode.IsSpace(r) })
	if at < 0 {
		return bare
	}
	_, size := utf8.DecodeRuneInString(text[at:])
	if unit, ok := quantity.ParseUnit(text[at+size:]); ok {
		return unit
	}
	return bare
}
