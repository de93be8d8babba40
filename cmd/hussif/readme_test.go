package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"hussif/testdata/demo"
)

// TestReadme runs every command that the README shows with its answer. The lines of
// the answer must come in that order; "..." stands for others.
func TestReadme(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if _, err := unpack(demo.Journal(), filepath.Join(dir, "hussif-demo", "journal")); err != nil {
		t.Fatal(err)
	}
	t.Chdir(dir)
	shown := 0
	blocks := strings.Split(string(readme), "    $ hussif ")
	for _, block := range blocks[1:] {
		lines := strings.Split(block, "\n")
		var out bytes.Buffer
		if status := Run(t.Context(), strings.Fields(lines[0]), Streams{In: strings.NewReader(""), Out: &out, Err: &out}); status != exitDone {
			t.Fatalf("hussif %s: status %d\n%s", lines[0], status, out.String())
		}
		rest := out.String()
		for _, line := range lines[1:] {
			if !strings.HasPrefix(line, "    ") {
				break
			}
			line = strings.TrimPrefix(line, "    ")
			if line == "..." {
				continue
			}
			at := strings.Index(rest, line+"\n")
			if at < 0 {
				t.Errorf("hussif %s does not say %q any more:\n%s", lines[0], line, out.String())
				break
			}
			rest = rest[at+len(line):]
		}
		shown++
	}
	if shown < 2 {
		t.Errorf("the README shows %d commands with their answers", shown)
	}
}
