// Package panel answers which piece to cut so that a garment grows by a wanted
// amount at each level of a seam, and whether a left-over piece of cloth yields it.
//
// # The shape
//
// A panel (a gore, a gusset, a godet) has a finished width at each [Level] along
// the seam and is straight between the levels. It is symmetric about its grain
// line, which lies at X = 0; Y grows downwards and is the level's own distance
// along the seam. All lengths are nanometres and the given ones stay exact.
// Where a width is an odd number of nanometres its right half is one nanometre
// the wider.
//
// The cutting outline is the finished outline moved outwards by the [Allowance],
// with mitred corners, each rounded once to the nanometre. Three rules hold where
// a mitre would not serve, all of them common practice:
//
//   - A mitre that would reach further than [MitreLimit] times the larger
//     allowance is cut square to the corner, at that allowance from it. With
//     equal allowances this befalls a corner sharper than 60 degrees.
//   - An end that comes to a point has no edge of its own. It is cut straight
//     across at the allowance of that end, as if it had one; where the sides have
//     no allowance, the point has none either.
//   - The ends are cut straight across. Where a side runs so flat that its own
//     allowance reaches beyond the end's, the end is cut that much further out.
//
// # The layout
//
// [LayOut] places bounding shapes in rows: side by side, or head to tail, where
// a trapezium turned upside down nests into its neighbour. It can miss a
// cleverer layout, and so it says "not found", never that there is none.
package panel
