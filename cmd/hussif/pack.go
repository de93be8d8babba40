package main

import (
	"path/filepath"

	"hussif/build/output"
)

// packSite packs a site that has been made into one file beside its folder.
func packSite(o siteOrder) (string, error) {
	name := filepath.Clean(o.out) + ".zip"
	return name, output.Pack(o.out, name)
}
