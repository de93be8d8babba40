// Package demo holds the journal of a made-up sewing circle, which answers what
// a full journal looks like: two wearers, five builds over four years, some
// thirty notes, and drawn pictures. Two neighbours keep small ones, of garments cut from
// the same patterns. Every person, holder, reference and maker in
// it is invented. The pictures are drawn by the program in draw.
package demo

import (
	"embed"
	"io/fs"
)

//go:embed all:journal all:neighbours
var files embed.FS

// Journal returns the journal's folder. Its settings file lies at the top.
func Journal() fs.FS { return folder("journal") }

// Neighbours names the other makers who share with the circle.
var Neighbours = []string{"bram", "sorrel"}

// Neighbour returns the folder of the journal of one of [Neighbours].
func Neighbour(name string) fs.FS { return folder("neighbours/" + name) }

func folder(name string) fs.FS {
	f, err := fs.Sub(files, name)
	if err != nil {
		panic(err) // only for a name that is no path
	}
	return f
}
