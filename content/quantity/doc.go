// Package quantity answers what a maker meant by "37 1/2 in", "about 12 in",
// "9 x 31 in", "3 skeins", "12,50 EUR" or "3h 20m", holds it exactly, and shows
// it again as the trade writes it.
//
// # Exactness
//
// A [Length] is a whole number of nanometres. The inch is 25.4 mm and the yard
// 0.9144 m by definition (international yard and pound agreement, 1959: NBS
// Circular 572, addendum; NIST SP 811, appendix B), so every 1/64 in and every
// 0.1 mm is a whole number, and sums of them lose nothing. A number is read
// into a fraction of two integers and never passes through binary floating
// point. What is no whole number of nanometres, such as 1/3 in, is refused and
// the nearest useful length suggested; 1/3 yd is 12 in and is read. Rounding
// happens once, in [Format], where a value is shown.
//
// # Numbers
//
// A number is a whole number ("37"), a decimal with a point or a comma ("95.3",
// "95,3"), a fraction ("5/8", "⅝", with U+002F, U+2044 or U+2215 between its
// parts) or a whole number and a fraction, joined by a space, by nothing before
// a single-character fraction, or by a hyphen ("37 1/2", "37½", "37-1/2"). A comma
// before exactly three digits ("1,200") could be a thousand or a decimal and is
// refused, except after a 0 ("0,125").
//
// A hyphen joins a whole number to a fraction only where the other reading, a
// range, would run backwards: the whole number is at least 1 and the fraction
// less than 1. So "1-1/2 in" is 1 1/2 in, "1-2 in" is a range, and "0-1/2 in"
// is a range too.
//
// Any Unicode space may stand where a space may. The minus sign is read as "-"
// or U+2212 and always shown as U+2212, which is as wide as the plus sign and
// never breaks a line after itself.
//
// # What is refused
//
// Every parser refuses with an [*Error] that says where, why, and, where there
// is a likely reading, how the whole text could be written instead. A
// suggestion that the same parser would not read is never made.
package quantity
