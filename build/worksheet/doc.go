// Package worksheet works the arithmetic of the workroom: pleats, piping, panels,
// spacing, skirts and yards of cloth. It answers how much to cut, how many, and
// where to mark, with the formula filled in, a drawing to scale and what to mind.
//
// A worksheet is a [Sheet]: a Go type in a file of its own, whose fields are the
// inputs and whose Solve fills a [Paper]. All else is made from its [Input] list
// and its [About]: the block in a note, the command, the JSON Schema, the help and
// the guide. To add one, write its file and put it into [All].
//
// # Figures
//
// Lengths are whole nanometres and are rounded once, where they are shown: answers
// to the fractions of the journal's format made finer ([quantity.Format.Finer]),
// figures within a formula exactly or to a thousandth. What no formula keeps exact,
// with pi or a root of two, is worked in floating point and rounded once to the
// nanometre.
//
// # What is not given
//
// Where the formula allows, any one of the figures that belong together may be
// left out and is worked out from the others. Figures that are all given and do
// not agree are a [Fault], and so is a figure out of its range: nothing is guessed
// and nothing is worked with it.
//
// # Sources
//
// Every sheet names the source of its formula in its About. "Common practice" is
// what any workroom does and no one source says first.
package worksheet
