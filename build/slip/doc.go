// Package slip answers, while somebody still stands there with the tape: may what
// was just read be a slip of the tape or the pen?
//
// It never refuses a value, and never doubts a body: a [Doubt] is a question about
// the figure, with what it would be if a common slip is undone.
//
// # How much a measure may change
//
// Between two readings over the same layers, w weeks apart, up to
//
//	limit = 3 u + r w, but no more than the larger of 3 u and a third of the value before
//
// is taken as it is. u is the root sum of squares of the two readings' errors
// (JCGM 100:2008, 5.1.2), and 3 u holds all but about 3 of 1000 of what they make
// of no change at all, if errors are normal (the same, G.1.3). r is how fast a body
// changes, a choice of ours on the generous side, in rounded figures from memory:
//
//   - large girths 10 mm a week: a waist changes by about 1 cm with 1 kg, and 1 kg a
//     week is as fast as health services advise anybody to lose it; a pregnant belly
//     grows by about 1 cm a week too
//   - small girths a third of that
//   - heights, and lengths along the body, 5 mm a week, as an infant grows in its
//     first months; a wearer may be a child
//   - head, hand, foot, breadths and depths 2 mm a week
//
// The cap is there because after years any limit that grows would let through a 63
// for a 36 and centimetres for inches.
//
// Over other layers, where nothing better is known, a value may differ by another
// third: a laced waist and skirts over a hoop stay within it, a wrong unit (2.54
// times) does not.
//
// # Slips that are looked for
//
// A value beyond the limit is compared with what it would be in centimetres
// instead of inches or the other way round, with two neighbouring digits swapped,
// with the decimal mark one place further on, and, for a girth, twice as large, as
// when half of it was read. Swapped digits are asked after within the limit too,
// where the other order is the value before to within 3 u and the one given is not.
// With no value before, only what no body measures is asked after, and what is
// strange in one unit and common in the other.
package slip
