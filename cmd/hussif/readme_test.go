package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"hussif/build/photo/phototest"
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
	layCard(t, filepath.Join(dir, "card", "DCIM"))
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

// layCard makes the camera's folder that the README's reader has at hand.
func layCard(t *testing.T, dir string) {
	t.Helper()
	for name, data := range map[string][]byte{
		"100/IMG_0412.JPG": phototest.JPEG(1, "2026:11:21 19:40:10", "+01:00"),
		"100/IMG_0413.JPG": phototest.JPEG(2, "2026:11:21 19:52:33", "+01:00"),
		"100/MVI_0414.MOV": []byte("\x00\x00\x00\x14ftypqt  \x00\x00\x00\x00qt  "),
		"scan.jpg":         phototest.JPEG(3, "", ""),
	} {
		name = filepath.Join(dir, filepath.FromSlash(name))
		if err := writeNew(name, data); err != nil {
			t.Fatal(err)
		}
		day := time.Date(2026, 11, 23, 12, 0, 0, 0, time.Local)
		if err := os.Chtimes(name, day, day); err != nil {
			t.Fatal(err)
		}
	}
}
