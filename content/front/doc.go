// Package front reads the front matter of a note: it is split from the body,
// parsed as YAML into a tree in which every key and every value knows its bytes,
// and decoded into Go structs.
//
// [Split] has github.com/adrg/frontmatter do the cutting and checks its answer
// against the fences it finds itself, because that library ends the front matter
// at an indented fence inside a block of text too, and takes an unclosed one for
// body. [Parse] refuses anchors, aliases and tags: a note has no use for them,
// and a reader of the file would have to look in two places for one value.
// [Schema.Decode] is strict and reports every fault of a file, not the first.
package front
