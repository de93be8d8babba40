// Package demo holds the journal of a made-up sewing circle, which answers what
// a full journal looks like: two wearers, five builds over four years, some
// thirty notes, and drawn pictures. Every person, holder, reference and maker in
// it is invented. The pictures are drawn by the program in draw.
package demo

import (
	"embed"
	"io/fs"
)

//go:embed all:journal
var files embed.FS

// Journal returns the journal's folder. Its settings file lies at the top.
func Journal() fs.FS {
	journal, err := fs.Sub(files, "journal")
	if err != nil {
		panic(err) // only for a name that is no path, and this one is embedded
	}
	return journal
}
