// Package audience answers: what of a journal may others see?
//
// [For] makes of a journal the folder of a smaller one that has lost what an audience
// may not see, and all pages for that audience are made from the smaller one alone. So
// nothing that comes after it, no page, search, feed, calendar, count, name of a file
// or drawing, can show what was taken out. It works on the words of the files and not
// on what was read from them: front matter is written again without the fields that
// are hidden, and from the text below it the lines are cut that are.
//
// How a garment fits follows from measures that the smaller journal does not hold. What
// its wearer lets others know of that is worked out here, in words, and handed on beside it;
// what hidden pages and fields say does not count for it.
//
// # Who may see a thing
//
// What counts is the narrowest of a thing's own setting and of all that holds it. The
// journal holds all; a person holds the builds made for her, a build its notes, a page
// its fields, paragraphs and photos. A page below the folder of a hidden page is
// hidden too, since its path would name that. Links to hidden pages are read as
// [Elsewhere]: their own words may name what they lead to.
//
// A body's measures and money are for the maker alone, unless the page of the person
// says otherwise (`shows measures`, `shows money`), and so is how a garment fits, unless
// that says `shows fit`. Where a garment has no known wearer nobody has allowed anything.
// Places are never for the public. A picture with a face that is neither blurred
// nor given its own `share` is for the maker alone; for the public, so is one of
// somebody's doings of which that is not said. What one page hides of a picture no other
// page shows.
//
// # What would give a hidden value back
//
// These are withheld with it, each held to by a test:
//
//   - What a finished garment measures: less the usual ease, that is the body.
//   - The ease that is wanted, and a seam's whole length and the heights at which it
//     is crossed: with the tape laid on a photo, or with what a garment measures,
//     they give the body.
//   - The gap at which a laced garment was measured, and the size of a pattern.
//   - By how much a garment was let out or taken in: what was short. Only a wearer
//     who shows deltas shows that.
//   - A worksheet on the page of a garment or one of its notes: what is drawn up, spaced
//     or cut there is as long as a part of the body.
//   - A delta beside any of the garment's measures. Where deltas are shown nothing is
//     that they could be added to.
//   - A plan to let out, a panel to let in, how much the pattern is to change, and
//     which garments fit: they are worked out from measures that the smaller journal
//     does not hold, and so are not there.
//   - Budgets, forecasts and cost per wearing, which come from what was paid.
//   - The number of a list's first item, of a footnote, of a next-time note: they
//     would count what is hidden.
package audience
