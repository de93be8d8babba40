package main

import (
	"os"
	"runtime/debug"

	"hussif/content/journal"
)

// The memory that making a site may take before rubbish is looked for more often: so
// much for the program, and so many times what the notes take.
const (
	memoryOfProgram = 64 << 20
	memoryOfNotes   = 15
)

// collectLess has rubbish collected half as often while a site is made, as long as
// that takes no more memory than twice what is in use would. The function it returns
// sets all back. What the user has set by GOGC or GOMEMLIMIT holds.
func collectLess(folder *journal.Folder) (restore func()) {
	if os.Getenv("GOGC") != "" || os.Getenv("GOMEMLIMIT") != "" {
		return func() {}
	}
	notes := 0
	for _, text := range folder.Texts {
		notes += len(text)
	}
	percent := debug.SetGCPercent(200)
	limit := debug.SetMemoryLimit(int64(memoryOfProgram + memoryOfNotes*notes))
	return func() {
		debug.SetGCPercent(percent)
		debug.SetMemoryLimit(limit)
	}
}
