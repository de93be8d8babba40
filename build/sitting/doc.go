// Package sitting answers, before the tape comes out: what is worn under it, which
// measures are to be taken of a person, in which order, and what each was before.
//
// First come the measures that were taken over the same layers the last time, then
// those of earlier times, then what the person's garments are fitted at: the
// measures for which they name a wanted ease, and those that their seams cross.
// Garments worn over the same layers come before others; one that is gone asks for
// nothing.
package sitting
