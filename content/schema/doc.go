// Package schema says what the front matter of each kind of page, and the settings
// file, may hold, as JSON Schema (draft 2020-12) for editors that complete and mark
// fields while one writes.
//
// It is made from the very struct tags and readers that package front decodes by,
// so a field that is added there is in the schema too. A schema never refuses what
// the decoder takes. It takes some things that the decoder refuses, since it cannot
// do sums, know the other pages, or know the measures that a journal adds: `check`
// has the last word.
//
// The general generators for Go, of which github.com/invopop/jsonschema is the
// best kept, were looked at first. They describe what encoding/json reads: a value
// of one type under a name. Here one value may stand for a list or for a group, a
// number for a text, and keys may be any names of measures, none of which their
// reflection or their type for a schema can say (it names one type a value). What
// would be left of them is the printing.
package schema
