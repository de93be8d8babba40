// Package wayin answers what has to be unpicked to get at a seam: which seams, in
// what order, how they go back, how long that takes, and what comes loose and has
// to be marked before the first stitch is cut.
//
// # Order
//
// A seam that was sewn later across another catches it, and is opened before it.
// The order out is a topological order of the seams, the later sewn first, and by
// name where neither catches the other; the order back is its reverse. The way in
// to several seams is what any of them needs.
//
// # How far
//
// A seam that is caught all along has the catching one opened whole. Where only
// its ends are caught, the catching seam is opened at the crossing alone, [Reach]
// to either side. Each of a set of seams makes one crossing: two side seams caught by
// one binding make two, and so do two caught by two; a centre back caught by two
// waist seams that meet there makes one. Where a seam is itself opened at crossings
// only, a seam over it is opened as far as that.
//
// Of an even number of seams half are on either side of the body. Where one side is
// to be reached half of them are opened, and half of the pairs that catch them; a
// pair that is opened at crossings on one side and whole on the other is opened
// whole on both.
//
// # Length and time
//
// The length is the sum of seam length × count, and hours are length / rate for
// each kind of stitch, the rate being the median of this journal's own notes; see
// [RatesOf]. What is not known is said and never taken for nothing.
//
// # What comes loose
//
// Pieces are held together by the seams that join them. With the seams opened
// whole taken away, what was one garment falls into parts; the part with the most
// sewn length is what the others come loose from. Order and marking are common
// practice.
package wayin
