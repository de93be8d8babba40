// Package prose reads the Markdown body of a note and answers what it says to
// the rest of the journal: which pages it points at, which pictures it shows,
// which places in it can be pointed at, and what its maker told herself to
// remember.
//
// The language is CommonMark 0.31.2 with the tables, struck text, task lists and
// bare addresses of GitHub Flavored Markdown 0.29, footnotes, and three
// constructs of our own, each a goldmark extension in a file of its own:
//
//   - a tie, [[id]] or [[id#place|words]], points at another record (tie.go);
//   - a line that begins "Next time:", "Decided:" or "Private:" makes a remark
//     of its paragraph or list item (remark.go);
//   - a block of code whose first line says "work" and a name is a worksheet
//     (work.go).
//
// [Read] returns facts and drops the tree, since the trees of a large journal
// would fill the memory; [Tree] makes it again for one page that is printed, and
// [ReadTree] returns both to who prints a page while it is read. All give the same
// places the same anchors. There is no HTML here. All spans are offsets in the
// whole file.
//
// A private remark and all that stands in it, nested remarks included, is marked
// Private in the facts. [HidePrivate] takes the same out of a tree.
package prose
