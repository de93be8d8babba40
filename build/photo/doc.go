// Package photo answers: what may a page show of a maker's picture?
//
// A picture goes in as she took it: a JPEG, PNG or WebP of up to 100
// megapixels, perhaps lying on its side, perhaps with the place and the time
// it was taken written inside. Clean pictures come out: upright, in up to three
// widths, never larger than the original, and with nothing but pixels in them.
// Metadata is not filtered but never written: a picture is decoded, and what is
// encoded again are its pixels. A colour profile is dropped like all else,
// unconverted, so colours outside sRGB come out a little duller.
//
// What is wrong with a picture is a [Fault], in words for its maker: a format
// that is not read here, a name that says another format than the bytes, a file
// cut short or damaged. [Look] finds most of that from a few kilobytes; a
// [Darkroom] finds the rest. An error means trouble that is not the picture's.
//
// Formats are told by their first bytes and decoded by three decoders named
// here. Nothing that other packages register with package image takes part.
package photo
