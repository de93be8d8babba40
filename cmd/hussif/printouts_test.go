package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"hussif/build/export"
	"hussif/build/photo/phototest"
)

var update = flag.Bool("update", false, "write the shapes of answers into testdata/answers.txt")

// The names and kinds of what other programs read stay as they are. A field may be
// added; one that is renamed or gone breaks somebody's program.
func TestAnswersKeepTheirShape(t *testing.T) {
	const golden = "testdata/answers.txt"
	var got strings.Builder
	for _, a := range printouts() {
		for _, f := range a.fields() {
			if f.doc == "" {
				t.Errorf("%s: %s is not explained", a.command, f.path)
			}
			sometimes := ""
			if f.optional {
				sometimes = "?"
			}
			fmt.Fprintf(&got, "%s: %s%s: %s\n", a.command, f.path, sometimes, f.kind)
		}
	}
	if *update {
		if err := os.WriteFile(golden, []byte(got.String()), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got.String()); diff != "" {
		t.Error(diff)
	}
}

// What commands really print has the fields that `hussif help json` lists, and no
// others.
func TestAnswersAreAsExplained(t *testing.T) {
	dir := demoFolder(t)
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	pictures := pictureFolder(t)
	fields := make(map[string][]jsonField)
	for _, a := range printouts() {
		fields[a.command] = a.fields()
	}
	tried := make(map[string]bool)
	for _, args := range [][]string{
		{"check", dir, "--json"},
		{"check", faultyFolder(t), "--json"},
		{"check", dir, "--for", "circle", "--json"},
		{"site", pictures, "--json"},
		{"site", pictures, "--json"},
		{"site", faultyFolder(t), "--json"},
		{"circle", sharedFolder(t, dir), "-o", filepath.Join(t.TempDir(), "circle"), "--zip", "--json"},
		{"circle", changedFolder(t), "-o", filepath.Join(t.TempDir(), "circle"), "--json"},
		{"fit", "-j", dir, "--json", "--on", "2026-11-25"},
		{"takedown", "grey-wool-jacket", "-j", dir, "--json", "--on", "2026-11-25"},
		{"takedown", "grey-wool-jacket", "armhole", "-j", dir, "--json"},
		{"next", "-j", dir, "--json"},
		{"photos", cardFolder(t), "-j", dir, "--dry-run", "--json"},
		{"work", "let-out", "--seams", "2", "--was", "5/8 in", "--now", "1/4 in", "--json"},
		{"schema", "--json"},
	} {
		var out, errs bytes.Buffer
		if status := Run(t.Context(), args, Streams{In: strings.NewReader(""), Out: &out, Err: &errs}); status == exitFault || errs.Len() > 0 {
			t.Fatalf("hussif %s: status %d, %s", strings.Join(args, " "), status, errs.String())
		}
		var answer any
		if err := json.Unmarshal(out.Bytes(), &answer); err != nil {
			t.Fatalf("hussif %s: %v", strings.Join(args, " "), err)
		}
		command := args[0]
		if slices.Contains(args, "--for") && command == "check" {
			command = "check --for circle"
		}
		items, list := answer.([]any)
		if !list {
			items = []any{answer}
		}
		if len(items) == 0 {
			t.Errorf("hussif %s answers nothing", strings.Join(args, " "))
		}
		for _, item := range items {
			explained(t, command, fields[command], "", item.(map[string]any))
		}
		tried[command] = true
	}
	for command := range fields {
		if !tried[command] {
			t.Errorf("hussif %s --json was not tried", command)
		}
	}
}

// explained holds a group of an answer against the fields that are explained.
func explained(t *testing.T, command string, fields []jsonField, before string, group map[string]any) {
	t.Helper()
	known := make(map[string]bool)
	for _, f := range fields {
		rest, below := strings.CutPrefix(f.path, before)
		name := strings.TrimSuffix(rest, "[]")
		if !below || strings.ContainsAny(name, ".[") {
			continue
		}
		known[name] = true
		value, given := group[name]
		if !given {
			if !f.optional {
				t.Errorf("%s: %s is missing", command, f.path)
			}
			continue
		}
		values, list := value.([]any)
		if list != strings.HasSuffix(f.path, "[]") {
			t.Errorf("%s: %s is %v", command, f.path, value)
		}
		if !list {
			values = []any{value}
		}
		for _, v := range values {
			if !ofKind(v, f.kind) {
				t.Errorf("%s: %s is %v, not a %s", command, f.path, v, f.kind)
			}
			if sub, ok := v.(map[string]any); ok && f.kind == "group" && filepath.Base(f.path) != "findings[]" {
				explained(t, command, fields, f.path+".", sub)
			}
		}
	}
	for name := range group {
		if !known[name] {
			t.Errorf("%s: %s%s is not explained", command, before, name)
		}
	}
}

func ofKind(v any, kind string) bool {
	switch v.(type) {
	case string:
		return kind == "text"
	case bool:
		return kind == "true or false"
	case float64:
		return kind == "number"
	}
	return kind == "group" || kind == "JSON Schema"
}

// cardFolder returns a folder with a picture and a film.
func cardFolder(t *testing.T) string {
	dir := t.TempDir()
	for name, data := range map[string][]byte{
		"a.jpg": phototest.JPEG(1, "2026:11:21 18:22:03", "+01:00"), "b.jpg": phototest.JPEG(1, "2026:11:21 18:22:03", "+01:00"), "c.mov": nil,
	} {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// sharedFolder is the site of a journal for the circle.
func sharedFolder(t *testing.T, journal string) string {
	t.Helper()
	out := filepath.Join(t.TempDir(), "shared")
	var errs bytes.Buffer
	if status := Run(t.Context(), []string{"site", journal, "--for", "circle", "-o", out}, Streams{In: strings.NewReader(""), Out: &errs, Err: &errs}); status != exitDone {
		t.Fatal(errs.String())
	}
	return out
}

// changedFolder is such a site of which the log was changed by hand.
func changedFolder(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, export.Path), []byte(`{"hussif_circle": 1, "day": "today"}`), 0o600); err != nil {
		t.Fatal(err)
	}
	return dir
}
