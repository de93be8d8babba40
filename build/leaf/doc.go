// Package leaf answers what a maker who sits down to write a note has before her: a
// leaf with the day and the stage of the work on it, and everything that the stage
// asks for as lines that are marked out.
//
// A leaf that is left as it is says nothing but that there was such a day: all else
// in it is a comment. A field is put to use by taking the mark "# " away. Names of
// seams, pieces, measures and materials are those of the build, and what is not
// known is left blank, so that a line somebody unmarks without filling it in adds no
// false figure.
//
// Each stage asks first for what is rarely written and badly missed (common
// practice among makers), at the time at which it can still be seen: how the pieces
// lie while they are cut, what is piped before the lining hides it, what is pinned
// before the pins come out, and which piece went where before the first stitch is
// unpicked. Lines that ask have two marks, lines that are fields one.
package leaf
