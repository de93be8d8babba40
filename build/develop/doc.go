// Package develop makes a JPEG of a phone's HEIC picture, for a page cannot show
// the one and can the other.
//
// The decoder is libheif as a WebAssembly module, which can touch nothing but its own
// memory. A picture of 12 megapixels takes it about 2 seconds and 350 MB, and should a
// damaged one keep it busy for ever, it would be in code that Go cannot interrupt. It
// therefore works in a process of its own, one picture after the other: [Serve] is
// that process, and a [Lab] hands it pictures, waits, and ends it when it takes too
// long, falls over or is not wanted any more. Its memory is then the system's again.
//
// The JPEG lies upright, as the HEIC says by its own rotations (ISO/IEC 23008-12,
// 6.5.10), and has nothing in it but pixels.
package develop
