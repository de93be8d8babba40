package quantity

import (
	"errors"
	"fmt"
	"strings"
	"unicode"
)

// Money is an amount of one currency, held in its minor unit: cents for euros,
// whole yen. The zero value is nothing, in no currency, from which a sum may
// start.
type Money struct {
	Minor    int64
	Currency string // code of ISO 4217
}

// dearest is the largest number of minor units that is read.
const dearest = 1_000_000_000_000_000

// ParseMoney reads a number and a currency in either order: "80 EUR", "€12.50",
// "12,50 EUR", "£3". The currency is a code of ISO 4217 or a common sign or
// word. A sign that several currencies use, such as "$", is read where
// bareCurrency is one of them and refused otherwise. A number alone takes
// bareCurrency, and is refused where that is "". More digits after the point
// than the currency has are refused.
func ParseMoney(text, bareCurrency string) (Money, error) {
	return parse(text, func(s *scanner) (Money, *Error) {
		s.skipSpace()
		negative, signed := s.sign()
		start := s.at
		mark := s.mark()
		s.skipSpace()
		if mark != "" && !signed {
			negative, _ = s.sign()
		}
		p := price{negative: negative, start: s.at}
		if !s.atNumber() {
			return Money{}, s.fail(s.at, "a number is missing, such as 12.50")
		}
		var e *Error
		if p.number, e = s.number(); e != nil {
			return Money{}, e
		}
		p.end = s.at
		s.skipSpace()
		at := start
		if mark == "" {
			at = s.at
			mark = s.mark()
		}
		if !s.done() {
			return Money{}, s.fail(s.at, "cannot make sense of "+quote(s.text[s.at:]))
		}
		code, e := s.code(mark, at, p, bareCurrency)
		if e != nil {
			return Money{}, e
		}
		minor, e := s.minor(p, code)
		return Money{minor, code}, e
	})
}

// A price is the number in a text of money, and its bytes.
type price struct {
	negative   bool
	number     Fraction
	start, end int
}

// mark moves past the sign, code or word of a currency and returns it without
// the full stop of an abbreviation.
func (s *scanner) mark() string {
	start := s.at
	for {
		r, size := s.peek()
		if size == 0 || !unicode.IsLetter(r) && !unicode.Is(unicode.Sc, r) {
			break
		}
		s.at += size
	}
	mark := s.text[start:s.at]
	if mark != "" && strings.HasPrefix(s.text[s.at:], ".") && !s.atNumber() {
		s.at++
	}
	return mark
}

// code finds the currency for the mark that stands at a byte, "" where there is
// none.
func (s *scanner) code(mark string, at int, p price, bare string) (string, *Error) {
	number := s.text[p.start:p.end]
	if p.negative {
		number = "-" + number
	}
	if mark == "" {
		if _, ok := digitsOf(bare); ok {
			return bare, nil
		}
		return "", s.fail(p.end, "a currency is missing, such as EUR", number+" EUR", number+" GBP", number+" USD")
	}
	code, likely := currency(mark, bare)
	if code != "" {
		return code, nil
	}
	var instead []string
	for _, code := range likely {
		instead = append(instead, number+" "+code)
	}
	return "", s.fail(at, fmt.Sprintf("cannot tell which currency %s is", quote(mark)), instead...)
}

// minor turns a number into minor units of a currency.
func (s *scanner) minor(p price, code string) (int64, *Error) {
	written := s.text[p.start:p.end]
	if strings.Trim(written, "0123456789.,") != "" {
		return 0, s.fail(p.start, "money is written as a decimal, such as 12.50")
	}
	digits, _ := digitsOf(code)
	if mark := strings.IndexAny(written, ".,"); mark >= 0 && len(written)-mark-1 > digits {
		point := p.start + mark
		kept := point
		if digits > 0 {
			kept = point + 1 + digits
		}
		return 0, s.fail(point, fmt.Sprintf("%s has %d digits after the point", code, digits),
			s.with(kept, p.end, ""), s.with(point, point+1, ""))
	}
	one := int64(1)
	for range digits {
		one *= 10
	}
	minor, _, held := p.number.times(one)
	if !held || minor > dearest {
		return 0, s.fail(p.start, "this is more money than can be held")
	}
	if p.negative {
		return -minor, nil
	}
	return minor, nil
}

// Add returns m and n together. It fails where their currencies differ or the
// sum is too large to hold.
func (m Money) Add(n Money) (Money, error) {
	switch {
	case n == Money{}:
		return m, nil
	case m == Money{}:
		return n, nil
	case m.Currency != n.Currency:
		return Money{}, fmt.Errorf("%s and %s do not add: they are of different currencies", m, n)
	}
	sum := Money{m.Minor + n.Minor, m.Currency}
	if (sum.Minor > m.Minor) != (n.Minor > 0) {
		return Money{}, errors.New("this is more money than can be held")
	}
	return sum, nil
}

// String writes the number with all digits the currency has, then the code:
// "12.50 EUR", "1200 JPY".
func (m Money) String() string {
	digits, _ := digitsOf(m.Currency)
	one := uint64(1)
	for range digits {
		one *= 10
	}
	n := magnitude(m.Minor)
	text := fmt.Sprint(n / one)
	if digits > 0 {
		text += fmt.Sprintf(".%0*d", digits, n%one)
	}
	if m.Minor < 0 {
		text = minus + text
	}
	if m.Currency == "" {
		return text
	}
	return text + " " + m.Currency
}
