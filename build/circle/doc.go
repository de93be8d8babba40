// Package circle answers: what do the makers of a sewing circle show one another? It
// takes the logs that sites for the circle hold (package export), finds what they have in
// common, and makes one site of them.
//
// Patterns are one where they are called the same and are from the same source; where
// some do not say a source and all others say the same one, they are taken for that.
// Techniques are one where they are called the same. Capitals, blanks and the marks of
// letters make no difference. References are each maker's own, but those with one holder
// and one accession number bear witness once (package evidence). Dates of all are widened
// by the same rule.
//
// How a garment fits is told in the words of its maker's log, which has them as far as
// the wearer allows: no measure is known here, and none can be worked out.
package circle
