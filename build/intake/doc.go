// Package intake answers: which note does each picture of a camera belong to?
//
// A [Sorting] looks at a camera's folder and at a journal, and makes a [Plan]
// without writing anything: the calendar day of each picture as the camera's clock
// had it (by the file's time where the picture does not say), the build that was
// worked on about that day, a note of it of that very day or a new one, and a name
// that nothing has yet. What the journal has already is known by its content and
// left out, wherever it lies and whatever it is called; so is what the camera's
// folder holds twice.
//
// A [Desk] carries a plan out. Pictures are copied, never moved or changed, to a
// temporary name and then renamed to one that is free; HEIC pictures are developed
// to JPEG instead, with a comment inside that names the content they were made
// from. A note is written after its pictures, whole or not at all, and nothing in
// one that was there already changes but for the pictures put in. What was stopped
// half-way is finished by planning again: pictures that were copied and stand in no
// note yet are taken up.
package intake
