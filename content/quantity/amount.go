package quantity

import (
	"cmp"
	"errors"
	"fmt"
	"math/big"
	"strings"
)

// A Kind says what an [Amount] is an amount of. The zero value is Nothing.
type Kind int

// The kinds of amount.
const (
	Nothing  Kind = iota // of no kind yet; adds to any
	ByLength             // cloth, ribbon, cord
	ByPiece              // one piece of a size
	ByCount              // a number of things
)

// String returns words for the kind: "a length", "a piece", "a count".
func (k Kind) String() string {
	switch k {
	case Nothing:
		return "nothing"
	case ByLength:
		return "a length"
	case ByPiece:
		return "a piece"
	case ByCount:
		return "a count"
	}
	return ""
}

// An Amount is how much there is of a material: a length, one piece, or a
// number of things. Only the fields of its Kind are set. The zero value is
// nothing of any kind, from which a sum may start.
type Amount struct {
	Kind   Kind
	Length Length   // of ByLength
	Size   Size     // of ByPiece
	Number Fraction // of ByCount; part of a thing is a fraction of it
	Thing  string   // of ByCount, in the singular; may be ""
}

// ParseAmount reads a length ("2 1/4 yd"), a size ("9 x 31 in"), or a number
// with an optional word for what is counted ("12", "1/2 skein", "50 g"). A
// number alone is a count: bare is the unit of a size's numbers only. Weights
// are counts of their unit. A word that is probably a misspelt unit of length
// is refused, as is a negative amount.
func ParseAmount(text string, bare Unit) (Amount, error) {
	return parse(text, func(s *scanner) (Amount, *Error) {
		r, e := s.reading()
		if e != nil {
			return Amount{}, e
		}
		s.skipSpace()
		switch {
		case s.by():
			size, e := s.sizeFrom(r, bare)
			return Amount{Kind: ByPiece, Size: size}, e
		case r.negative:
			return Amount{}, s.fail(r.start, "an amount is not less than nothing", s.with(r.start, r.digits, ""))
		case r.open:
			thing, e := s.thing()
			return Amount{Kind: ByCount, Number: r.number, Thing: thing}, e
		case !s.done():
			return Amount{}, s.leftOver()
		}
		return Amount{Kind: ByLength, Length: r.size}, nil
	})
}

// Add returns a and b together. It fails where they are of different kinds,
// count different things, are pieces, which stay apart, or are too much to hold.
func (a Amount) Add(b Amount) (Amount, error) {
	if b.Kind == Nothing {
		return a, nil
	}
	if a.Kind == Nothing {
		return b, nil
	}
	if err := like(a, b); err != nil {
		return Amount{}, err
	}
	sum := a
	held := true
	switch a.Kind {
	case ByPiece:
		return Amount{}, errors.New("two pieces make no amount together: they are listed one by one")
	case ByLength:
		sum.Length = a.Length + b.Length
		held = (sum.Length > a.Length) == (b.Length > 0)
	case ByCount:
		sum.Number, held = fromRat(new(big.Rat).Add(a.Number.rat(), b.Number.rat()))
	}
	if !held {
		return Amount{}, errors.New("these amounts are too large to add")
	}
	return sum, nil
}

// Sub returns a less b, which may be less than nothing. It fails as Add does.
func (a Amount) Sub(b Amount) (Amount, error) {
	if b.Kind == ByPiece && a.Kind == Nothing {
		return Amount{}, errors.New("a piece cannot be taken from nothing")
	}
	b.Length = -b.Length
	b.Number.Num = -b.Number.Num
	return a.Add(b)
}

// Compare returns -1 where a is less than b, 0 where they are equal, and 1 where
// a is more. It fails where they are of different kinds or count different
// things, and for pieces of different sizes, of which neither need be more.
func (a Amount) Compare(b Amount) (int, error) {
	if a.Kind == ByPiece && b.Kind == ByPiece && a.Size == b.Size {
		return 0, nil
	}
	if a.Kind == ByPiece && b.Kind == ByPiece {
		return 0, errors.New("neither of two pieces of different sizes need be more")
	}
	rest, err := a.Sub(b)
	if err != nil {
		return 0, err
	}
	if rest.Kind == ByLength {
		return cmp.Compare(rest.Length, 0), nil
	}
	return cmp.Compare(rest.Number.Num, 0), nil
}

func like(a, b Amount) error {
	if a.Kind != b.Kind {
		return fmt.Errorf("%s and %s are no like amounts", a.Kind, b.Kind)
	}
	if !strings.EqualFold(a.Thing, b.Thing) {
		return fmt.Errorf("%s and %s are not the same things", counted(a.Number, a.Thing), counted(b.Number, b.Thing))
	}
	return nil
}
