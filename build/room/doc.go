// Package room answers what the seams of a garment can still give, and how it is
// made to fit with the least work: which closings to move, which seams to open and
// how much each gives, and where a panel has to be let in.
//
// # What there is
//
// A seam that one reading of a measure crosses n times gives up to
//
//	n × 2 × (allowance now - allowance kept)
//
// there, for each of its seams has two edges. What is kept is what the crossing
// says, else the seam, else the journal's settings, else [Keep]. An edge that was
// trimmed has what is left. An edge that was clipped cannot be let out past its
// clips and gives nothing, unless the crossing has a `keep` of its own, by which
// the maker says how far the clips go. A piped seam gives like any other, but its
// piping has to be taken out and laid in again.
//
// A closing that laps gives its overlap less what must stay, once, at each
// measure it crosses, and needs no seam opened: hooks are moved first. The range
// of a lacing, and of any closing that the build lists among its adjustments too,
// is in what package fit compares, and is not counted again.
//
// # The plan
//
// All short measures are met at once, by as little as they are short. Plans are
// put in order by
//
//  1. fewest panels to cut;
//  2. no seam opened at all;
//  3. least way in, in hours of opening and sewing again where these are known of
//     every seam that could be opened, else in length, where a seam of unknown
//     length counts for more than any of known length;
//  4. fewest seams;
//  5. the smallest change of allowance on the edge that changes most;
//
// and where all that is the same, the first by the names of its seams stands for all.
// The first three are a choice of ours, after common practice.
//
// What is missing at a measure is divided by the number of seams that are open
// there (R. Robinson, Costume construction text, ch. 17, Central Washington
// University, of adding to the seams of a pattern), and so by their edges, of which
// each gives the same. An edge that cannot gives what it has, and the others share
// the rest (common practice). All seams of one entry give the same. Shares are
// rounded up to what can be marked on an edge, and what an edge has to give is
// rounded down to it, unless a panel would have to be cut for the difference. A
// seam let out at one measure stays as it is at the others, so that what fits there
// still does.
//
// Where the seams that could be opened cannot give enough, panels are let into
// one of them, as many as there are seams of it: the opened seams give all they
// can, and the panels are as wide, finished, as what is missing then, which at a
// level where nothing is missing is nothing. The second seam that each panel adds
// is not in the way in.
//
// Where one arm or leg is short and the other is not, half of an even number of seams
// is opened for it, those on its side, and as many panels are cut.
package room
