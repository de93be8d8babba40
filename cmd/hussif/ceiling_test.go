//go:build linux

package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"hussif/testdata/generate"
)

// nasty are notes by somebody who means harm, each as large as the limits let through
// or far larger.
func nasty() map[string]string {
	repeat := strings.Repeat
	return map[string]string{
		"aliases":    "---\na: &a [x, x]\n" + repeat("b: [*a, *a, *a]\n", 1000) + "---\n",
		"keys":       "---\n" + repeat("titel: 1\n", 400_000) + "---\n",
		"many keys":  "---\n" + numbered("k%d: 1\n", 40_000) + "---\n",
		"deep":       "---\na: " + repeat("[", 500_000) + "\n---\n",
		"scalar":     "---\ntitle: " + repeat("x", 500_000) + "\n---\n",
		"huge":       repeat("word ", 1_000_000),
		"list":       "---\nnext time:\n" + numbered("  - do %d\n", 1900) + "---\n",
		"links":      "---\nnext time:\n" + numbered("  - {do: x, about: [nope%d]}\n", 1900) + "---\n",
		"emphasis":   repeat(repeat("*a_ ", 2400)+"\n\n", 4),
		"brackets":   repeat(repeat("[a](", 4900)+"\n\n", 4),
		"ties":       repeat(repeat("[[nope]] ", 2400)+"\n\n", 4),
		"quotes":     repeat(">", 100_000) + "a",
		"lists":      repeat(repeat("- ", 50)+"a\n\n", 4000),
		"table":      repeat("a|", 200) + "\n" + repeat("-|", 200) + "\n" + repeat("b\n", 200),
		"footnotes":  numbered("[^%d]: a\n\n", 1900),
		"next":       numbered("Next time: do %d\n\n", 1900),
		"headings":   repeat("# a\n", 4900),
		"html":       repeat("<script>\n", 15_000),
		"zero bytes": repeat("\x00", 1_000_000),
		"pictures":   repeat("![a](nope.jpg) ", 4000),
	}
}

func numbered(line string, n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, line, i)
	}
	return b.String()
}

// TestCeilings: a journal of 10,000 notes is checked in seconds, forty more that do what
// harm a note can add a second or two each, and the memory is that of a small computer.
func TestCeilings(t *testing.T) {
	if testing.Short() {
		t.Skip("writes and reads a large journal")
	}
	dir := t.TempDir()
	for name, f := range generate.Journal(10_000, 1) {
		lay(t, filepath.Join(dir, filepath.FromSlash(name)), f.Data)
	}
	took, memory := checking(t, dir)
	t.Logf("without the nasty ones: %s and %d MB", took, memory>>20)
	if took > 30*time.Second || memory > 1<<30 {
		t.Errorf("without the nasty ones: %s and %d MB", took, memory>>20)
	}
	for name, text := range nasty() {
		for i := range 2 {
			lay(t, filepath.Join(dir, "notes", fmt.Sprintf("2026-03-%02d-%s.md", 1+i, strings.ReplaceAll(name, " ", "-"))), []byte(text))
		}
	}
	took, memory = checking(t, dir)
	t.Logf("with the nasty ones: %s and %d MB", took, memory>>20)
	if took > time.Minute || memory > 1<<30 {
		t.Errorf("with the nasty ones: %s and %d MB", took, memory>>20)
	}
}

func lay(t *testing.T, name string, data []byte) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, data, 0o666); err != nil {
		t.Fatal(err)
	}
}

// checking runs check on a journal and returns the time that processors spent on it and
// the most memory, in bytes, that it had at once (getrusage(2) of Linux counts in
// kilobytes).
func checking(t *testing.T, dir string) (time.Duration, int64) {
	t.Helper()
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command(program)
	c.Args = []string{"hussif", "check", dir} // see TestMain
	var said strings.Builder
	c.Stderr = &said
	err = c.Run()
	if failed, ok := errors.AsType[*exec.ExitError](err); err != nil && (!ok || failed.ExitCode() != exitFound) {
		t.Fatalf("%v: %.2000s", err, said.String())
	}
	return c.ProcessState.UserTime() + c.ProcessState.SystemTime(), c.ProcessState.SysUsage().(*syscall.Rusage).Maxrss << 10
}
