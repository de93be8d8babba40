// Package fit answers whether a garment fits its wearer: at which measures, short
// or ample by how much, and how sure that is.
//
// # The difference
//
// For a measure p of a garment worn over the foundation F, on day t:
//
//	had(p,t) = garment(p,t) - body(p,t,F)      the ease there is
//	delta    = had - lo   where had < lo       the ease wanted is lo to hi
//	         = had - hi   where had > hi
//	         = 0          otherwise
//	u        = sqrt(u_body² + u_garment² + u_offset²)
//
// Lengths are exact and in nanometres. The error u is the root sum of squares of
// the errors of the readings (JCGM 100:2008, 5.1.2), whose defaults and their
// limits are told at [measure.Errors]. A garment is called short or ample only
// where |delta| > u; a smaller difference is too close to call, which is a guard
// band as wide as the error itself (JCGM 106:2012). A reading that is only "about"
// right is given twice the error of its class, a choice of ours.
//
// Nothing that is missing is taken for zero: each kind of missing datum is a
// [Verdict] of its own, and [Missing] says what to measure or write down.
//
// # The body
//
// What counts is the newest reading on or before the day, over F itself or over
// a foundation F1 that can be compared with it; on one day the reading over F
// comes first. A reading over F1 is carried over by an [Offset]: the mean
// difference between the two over all days on which the wearer was measured over
// both. Such a day may come after the asked one, for it tells of the layers and
// not of the body. u_offset is the experimental standard deviation of those
// differences (JCGM 100:2008, 4.2.2), or, where there is one such day only, the
// root sum of squares of its two readings' errors.
//
// # The garment
//
// A garment has the value last measured, and to that come the effects of the
// alterations made since, until it is measured again. In a note that tells of
// both, the tape comes first, as it does in a fitting: the measures are those of
// the garment as it was tried on. Only in a note of the stages altering and
// finishing does the tape come last. A value "not measured" leaves an earlier one
// standing; "unknown" does not.
//
// A seam re-sewn changes a girth by n × 2 × (was - now), for both edges of each
// seam move (the whole is shared over the seam edges: R. Robinson, Costume
// construction text, ch. 17, Central Washington University; common practice).
// [Ledger] says how n is found.
//
// # Sides
//
// The plain name of a paired measure stands for both sides. Where anything names
// one side of it, a [Table] has a row for each side, and what is plainly named
// serves both.
package fit
