// Package stock answers what is left of a material: how much is on hand, by lot, in
// which pieces, where each came from and into which builds it went; and what a build
// is short of.
//
// # On hand
//
// A material's ledger is what the notes say was bought, used and left over:
//
//	on hand = bought + come back - used - cut from left-over pieces
//
// Lengths and each kind of thing counted are summed apart, for a reel is no length.
// What was left over in a note of the stage unpicking has come back out of a
// garment. At any other stage an amount left over tells what the maker found when
// she looked: it changes no sum, and is a [Fault] where the sum says otherwise.
// A material that was used and never bought has no figure on hand, neither zero nor
// less; the journal does not know.
//
// # Left-over pieces
//
// "Bought 3 yd, used 2 3/4 yd, left over 9 x 60 in" tells of one quarter of a yard,
// not of two: in makers' practice a left-over piece describes what remains (common
// practice). So pieces are listed beside the length on hand and never added to it. A
// piece out of a garment taken apart, or cut from such a piece, or bought by its
// size alone, was never in a length; it stands beside and for itself ([Piece.Apart]).
//
// A later use with a piece's size takes that piece, either way round, the oldest
// first, of the same lot and grain where both name them; never one that the same
// note leaves over. Where the piece taken was part of a length, that length is less
// by what the piece stood for: the amount written with it, or its other side where
// one side is the whole width of the cloth. Of a smaller piece that cannot be told,
// and the length on hand is then at most the figure ([Held.AtMost]). A use by size
// with no such piece is cut out of the cloth, to the same effect.
//
// # Lots
//
// A use that names no lot belongs to the material as a whole. Where all that was
// bought is of one lot, it came out of that. Else it may have come out of any, so
// each lot has at most its figure, while the sum of all is as sure as ever.
//
// # Short
//
// A build is short by what it needs, less what its own notes used, less what is on
// hand and no build before it has claimed. See [Allot].
package stock
