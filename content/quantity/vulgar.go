package quantity

import "unicode/utf8"

// vulgar returns the value of a fraction that is one character, or a Fraction
// whose Den is 0.
func vulgar(r rune) Fraction {
	if r < utf8.RuneSelf {
		return Fraction{}
	}
	switch r {
	case '½':
		return Fraction{1, 2}
	case '¼':
		return Fraction{1, 4}
	case '¾':
		return Fraction{3, 4}
	case '⅛':
		return Fraction{1, 8}
	case '⅜':
		return Fraction{3, 8}
	case '⅝':
		return Fraction{5, 8}
	case '⅞':
		return Fraction{7, 8}
	case '⅓':
		return Fraction{1, 3}
	case '⅔':
		return Fraction{2, 3}
	case '⅙':
		return Fraction{1, 6}
	case '⅚':
		return Fraction{5, 6}
	case '⅕':
		return Fraction{1, 5}
	case '⅖':
		return Fraction{2, 5}
	case '⅗':
		return Fraction{3, 5}
	case '⅘':
		return Fraction{4, 5}
	case '⅐':
		return Fraction{1, 7}
	case '⅑':
		return Fraction{1, 9}
	case '⅒':
		return Fraction{1, 10}
	}
	return Fraction{}
}
