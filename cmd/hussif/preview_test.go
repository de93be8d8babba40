package main

import (
	"os"
	"regexp"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
)

// await waits until a file that a running command writes matches a pattern. It is
// a command of scripts.
func await(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: await file pattern")
	}
	pattern := regexp.MustCompile(args[1])
	var text []byte
	for end := time.Now().Add(time.Minute); time.Now().Before(end); time.Sleep(10 * time.Millisecond) {
		text, _ = os.ReadFile(ts.MkAbs(args[0])) // it may not be there yet
		if pattern.Match(text) {
			return
		}
	}
	ts.Fatalf("%s does not come to match %q:\n%s", args[0], args[1], text)
}
