package quantity

import (
	"fmt"
	"math"
	"math/bits"
	"strings"
)

// atNumber reports whether a number without its sign comes next.
func (s *scanner) atNumber() bool {
	rest := s.text[s.at:]
	if len(rest) > 1 && (rest[0] == '.' || rest[0] == ',') {
		return isDigit(rest[1])
	}
	if rest != "" && isDigit(rest[0]) {
		return true
	}
	r, _ := s.peek()
	return vulgar(r).Den != 0
}

// sign reads a plus or minus sign and the spaces after it.
func (s *scanner) sign() (negative, given bool) {
	r, size := s.peek()
	switch r {
	case '-', '−':
		negative = true
	case '+':
	default:
		return false, false
	}
	s.at += size
	s.skipSpace()
	return negative, true
}

// number reads a number without a sign; the package comment has its forms.
func (s *scanner) number() (Fraction, *Error) {
	start := s.at
	r, size := s.peek()
	if v := vulgar(r); v.Den != 0 {
		s.at += size
		return v, nil
	}
	whole, ok := s.digits()
	if !ok {
		return Fraction{}, s.tooManyDigits(start)
	}
	if s.atDecimals() {
		return s.decimals(start, whole)
	}
	if s.slash() {
		return s.below(start, whole)
	}
	return s.mixed(start, whole)
}

// digits reads a whole number, 0 where no digit stands, and reports whether it
// can be held.
func (s *scanner) digits() (n int64, held bool) {
	for ; s.at < len(s.text) && isDigit(s.text[s.at]); s.at++ {
		if n > (math.MaxInt64-9)/10 {
			return 0, false
		}
		n = n*10 + int64(s.text[s.at]-'0')
	}
	return n, true
}

// atDecimals reports whether a decimal mark and a digit come next.
func (s *scanner) atDecimals() bool {
	rest := s.text[s.at:]
	return len(rest) > 1 && (rest[0] == '.' || rest[0] == ',') && isDigit(rest[1])
}

// decimals reads what follows the whole number that began at start.
func (s *scanner) decimals(start int, whole int64) (Fraction, *Error) {
	mark := s.at
	s.at++
	num, den := whole, int64(1)
	for ; s.at < len(s.text) && isDigit(s.text[s.at]); s.at++ {
		if num > (math.MaxInt64-9)/10 || den > math.MaxInt64/10 {
			return Fraction{}, s.tooManyDigits(start)
		}
		num, den = num*10+int64(s.text[s.at]-'0'), den*10
	}
	if s.atDecimals() {
		return Fraction{}, s.groups(start)
	}
	// A thousand is never grouped after a 0, so "0,125" can only be a decimal.
	if s.text[mark] == ',' && den == 1000 && whole > 0 && mark-start <= 3 {
		written := s.text[start:s.at]
		return Fraction{}, s.fail(mark,
			fmt.Sprintf("%s could be a thousand or a decimal", quote(written)),
			s.with(start, s.at, strings.Replace(written, ",", "", 1)),
			s.with(start, s.at, strings.Replace(written, ",", ".", 1)))
	}
	return reduced(num, den), nil
}

// groups refuses a number with several marks, such as "1,250.5" or "1.250.000".
// Only the last can be a decimal mark, and only if it differs from the others.
func (s *scanner) groups(start int) *Error {
	second, last := s.at, s.at
	for s.atDecimals() {
		last = s.at
		s.at++
		for s.at < len(s.text) && isDigit(s.text[s.at]) {
			s.at++
		}
	}
	unmark := strings.NewReplacer(",", "", ".", "")
	plain := unmark.Replace(s.text[start:last])
	if strings.Count(s.text[start:s.at], s.text[last:last+1]) == 1 {
		plain += "."
	}
	plain += s.text[last+1 : s.at]
	return s.fail(second, "a number has one decimal mark, and none between its thousands", s.with(start, s.at, plain))
}

// below reads the lower part of a fraction whose upper part began at start.
func (s *scanner) below(start int, num int64) (Fraction, *Error) {
	at := s.at
	if at == len(s.text) || !isDigit(s.text[at]) {
		return Fraction{}, s.fail(at, "a fraction needs a number below the line, such as 1/2")
	}
	den, ok := s.digits()
	if !ok {
		return Fraction{}, s.tooManyDigits(start)
	}
	if den == 0 {
		return Fraction{}, s.fail(at, "a fraction cannot have 0 below the line")
	}
	return reduced(num, den), nil
}

// mixed adds the fraction that may follow a whole number.
func (s *scanner) mixed(start int, whole int64) (Fraction, *Error) {
	end := s.at
	hyphen := s.hyphen()
	if !hyphen {
		s.skipSpace()
	}
	if !s.atFraction() {
		s.at = end
		return Fraction{whole, 1}, nil
	}
	part, e := s.number()
	if e != nil {
		return Fraction{}, e
	}
	if hyphen && (whole == 0 || part.Num >= part.Den) {
		s.at = end
		return Fraction{whole, 1}, nil
	}
	hi, lo := bits.Mul64(uint64(whole), uint64(part.Den))
	if hi != 0 || lo > math.MaxInt64-uint64(part.Num) {
		return Fraction{}, s.tooManyDigits(start)
	}
	sum := reduced(int64(lo)+part.Num, part.Den)
	if part.Num >= part.Den {
		return Fraction{}, s.fail(end, fmt.Sprintf("the fraction after a whole number is less than 1, but here it is %s", part),
			s.with(start, s.at, sum.String()))
	}
	return sum, nil
}

// hyphen moves past a hyphen between a whole number and a fraction.
func (s *scanner) hyphen() bool {
	switch r, size := s.peek(); r {
	case '-', '\u2010', '\u2011':
		s.at += size
		return true
	}
	return false
}

// atFraction reports whether a fraction, not a whole number or a decimal, comes
// next.
func (s *scanner) atFraction() bool {
	ahead := *s
	start := ahead.at
	for ahead.at < len(ahead.text) && isDigit(ahead.text[ahead.at]) {
		ahead.at++
	}
	if ahead.at == start {
		r, _ := ahead.peek()
		return vulgar(r).Den != 0
	}
	return ahead.slash()
}

// slash moves past the line of a fraction.
func (s *scanner) slash() bool {
	switch r, size := s.peek(); r {
	case '/', '\u2044', '\u2215':
		s.at += size
		return true
	}
	return false
}

func (s *scanner) tooManyDigits(start int) *Error {
	return s.fail(start, "the number has more digits than can be held exactly")
}

func isDigit(b byte) bool { return '0' <= b && b <= '9' }
