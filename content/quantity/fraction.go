package quantity

import (
	"math"
	"math/big"
	"math/bits"
	"strconv"
)

// A Fraction is an exact number in lowest terms; Den is greater than 0. The
// zero value is 0.
type Fraction struct{ Num, Den int64 }

func reduced(num, den int64) Fraction {
	a, b := num, den
	for b != 0 {
		a, b = b, a%b
	}
	return Fraction{num / a, den / a}
}

// times returns n times a fraction of at least 0, n being at least 0 too:
// the nearest whole number, halves upwards, whether that is exact, and whether
// it can be held at all.
func (f Fraction) times(n int64) (product int64, exact, held bool) {
	hi, lo := bits.Mul64(uint64(f.Num), uint64(n))
	den := uint64(f.Den)
	if hi >= den {
		return 0, false, false
	}
	whole, rest := bits.Div64(hi, lo, den)
	if whole >= math.MaxInt64 {
		return 0, false, false
	}
	if rest >= den-rest {
		return int64(whole) + 1, false, true
	}
	return int64(whole), rest == 0, true
}

func (f Fraction) rat() *big.Rat {
	return big.NewRat(f.Num, max(f.Den, 1))
}

// fromRat reports whether the number can be held.
func fromRat(r *big.Rat) (Fraction, bool) {
	return Fraction{r.Num().Int64(), r.Denom().Int64()}, r.Num().IsInt64() && r.Denom().IsInt64()
}

// String writes the number as the trade does: "3", "1 1/2", "−3/4".
func (f Fraction) String() string {
	var buf [48]byte
	n, den := magnitude(f.Num), uint64(max(f.Den, 1))
	dst := buf[:0]
	if f.Num < 0 {
		dst = append(dst, minus...)
	}
	return string(appendMixed(dst, n/den, n%den, den))
}

// appendMixed writes a whole number and a fraction that is in lowest terms.
func appendMixed(dst []byte, whole, num, den uint64) []byte {
	if whole > 0 || num == 0 {
		dst = strconv.AppendUint(dst, whole, 10)
		if num == 0 {
			return dst
		}
		dst = append(dst, ' ')
	}
	dst = strconv.AppendUint(dst, num, 10)
	dst = append(dst, '/')
	return strconv.AppendUint(dst, den, 10)
}

// magnitude is right for the least int64 too, whose negative does not exist.
func magnitude[T ~int64](n T) uint64 {
	if n < 0 {
		return -uint64(n)
	}
	return uint64(n)
}
