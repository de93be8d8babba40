// Package across answers what the garments made so far teach about the next one:
// what a pattern really measures, learnt from all that was made of it, and what
// to change on it for a wearer; and how garments of one kind came out for one
// wearer.
//
// # What a pattern measures
//
// For each build b of a pattern and each measure p, at first finish:
//
//	pattern_b(p) = garment_b(p) - changed_b(p) - altered_b(p) + since_b(p)
//	pattern(p)   = the median over b;  spread(p) = the largest less the smallest
//
// All is brought to the pattern as it lies on the table on the day asked for:
//
//   - changed is what the build's notes up to its first finish say of `pattern
//     changed`: the garment was cut or fitted larger than the pattern by that.
//   - altered is what the ledger's rows up to then did beside it. A garment let out
//     before it was finished measures what it does because of that, and not because
//     of its pattern. A note that has a row and a change for one measure tells of
//     one thing twice: the row counts for the garment, the change for the paper.
//     Where the tape was put to a measure before and after, and the row did not do
//     what it said, what the tape says counts. Rows of a mock-up do not, for they
//     were never made in the garment.
//   - since is what reached the pattern that the garment was not cut from: its own
//     changes with `on the pattern: yes`, and everybody's after the day it was cut.
//     What the pattern's own page lists as changed was done to it that day, unless
//     it says `on the pattern: no`. One measure changed by the same on the same day,
//     in a note and on the page, is one change; a change on the page of the very
//     day of cutting was made before it.
//
// The day of cutting is that of the first note of cutting, or else of the first
// note that is neither planning nor mock-up. Where a garment is cut after two
// patterns, its changes count for both, for the notes do not say for which.
//
// A garment that is laced or lapped measures more or less by how far it was closed
// under the tape; such builds are compared as closed like the one that the next is
// reckoned by.
//
// # What to change next time
//
//	change(p) = body(p,F) + (lo+hi)/2 - pattern(p)
//	an edge   = change / (2 × seams crossing one reading of p)
//	u         = sqrt(u_garment² + (spread/2)² + u_body² [+ u_offset²])
//
// The next garment is reckoned by the newest build for the wearer, planned ones
// among them, or by the newest for anybody where there is none: its layers F, its
// wanted ease lo to hi, its seams and its closings. Ease that it does not name is
// taken from the newest build that does. Where something adjusts the measure, the
// garment worn in the middle of that is to have the ease.
//
// That the whole is shared over the seam edges is after R. Robinson, Costume
// construction text, ch. 17, Central Washington University (common practice). The
// error is the root sum of squares (JCGM 100:2008, 5.1.2) of the body's reading,
// of the worst reading of a garment, which more garments do not make smaller when
// the same hand tapes all of them, and of half the spread, as a bound like the
// others: that is a choice of ours. A change no larger than u is left alone.
package across
