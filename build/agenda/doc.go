// Package agenda answers what is on the table: which builds wait to be begun, to go on
// or to be repaired, what holds each one up and where its maker stopped; and, for an
// occasion, who wears what, in which order it goes on, what needs a second pair of
// hands and what is not ready.
//
// # What holds a build up
//
// Only what the journal tells is said. A material is short by the reckoning of package
// stock, where builds are served by the date of their next occasion, and those without
// one by which was worked on last. A measure is missing where an ease is wanted and the
// wearer was not measured there over the layers the garment is worn over; of a garment
// not begun the garment's own measures are not missed. A decision is open where a note
// asks a question, with its mark, and gives no answer, and no note of the build answers
// the same question or says how it turned out. A garment waiting for repair is held to
// the measures at which it is short. Whether it will be in time is that of package
// effort. Next-time notes are not here: they bind no one, and the checker asks for them.
//
// # Dressing
//
// The dressing list of a wearer is made of what each garment is worn over and the
// garment itself, from the skin out. Where one garment is worn over two petticoats and
// another is a petticoat worn over one, that is the second of the two; a layer with a
// garment of its own is that garment. Layers that no garment puts in an order stand as
// the garment with the fewest layers has them. Where garments contradict each other, as
// in a shift over stays in one and under them in another, the list says so.
package agenda
