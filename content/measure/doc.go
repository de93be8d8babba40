// Package measure answers what can be measured on a body or a garment: under
// which names, how it is taken, how far one reading may be off, and over which
// layers it was read.
//
// A [Catalogue] knows the measures, a [Point] names one of them on one side of
// the body, a [Foundation] is what was worn under the tape, and [Errors] says
// what to expect of a reading.
//
// # Names
//
// A measure goes by its title in ISO 8559-1:2017 where it has one. The title it
// had in ISO 8559:1989, and the workroom's short forms, are aliases. Titles of
// the 1989 edition were compared with its list as reprinted in "Anthropometry,
// Apparel Sizing and Design", table 4.1; those of the 2017 edition were written
// from memory, and the Source of a measure says so where the wording is unsure.
// How each measure is taken is told in our own words and is no part of either
// standard.
//
// Two waists are kept apart. The standard's waist girth lies midway between the
// lowest rib and the hip bone; the natural waist girth lies where a tied cord
// settles, which is the one makers mean. So "waist" is short for the second,
// unless a journal says otherwise ([Catalogue.With]).
//
// # What it refuses
//
// A side is understood only of a measure taken on a paired part: there is a
// left wrist girth but no left waist girth. The gap left by a lacing is a fact
// of how a garment was worn, not a measure of a body, and has no name here.
package measure
