package main

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestLicences holds the list of modules in DEVELOPERS.md to go.mod, and the licences
// in it to the texts that the modules come with. A licence that is not known here is
// for a person to read before the module is used.
func TestLicences(t *testing.T) {
	const page = "../../DEVELOPERS.md"
	text, err := os.ReadFile(page)
	if err != nil {
		t.Fatal(err)
	}
	rows := regexp.MustCompile("(?m)(^\\| `[^`]+` \\| .* \\| (program|tests) \\|\n)+")
	got := rows.FindString(string(text))
	linked := linkedModules(t)
	all := requiredModules(t)
	for _, dir := range []string{"build/develop/heif", "theme/fonts"} { // files that came from elsewhere
		all, linked[dir] = append(all, module{dir, filepath.Join("../..", dir)}), true
	}
	want := ""
	for _, m := range all {
		where := "tests"
		if linked[m.Path] {
			where = "program"
		}
		names, err := licencesIn(m.Dir)
		if err != nil {
			t.Fatal(err)
		}
		if len(names) == 0 {
			t.Errorf("nothing known here says under which licence %s is", m.Path)
		}
		want += fmt.Sprintf("| `%s` | %s | %s |\n", m.Path, strings.Join(names, ", "), where)
	}
	if *update {
		if err := os.WriteFile(page, rows.ReplaceAllLiteral(text, []byte(want)), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("the list in DEVELOPERS.md is another (-wanted +there):\n%s", diff)
	}
}

type module struct{ Path, Dir string }

// requiredModules returns the modules that go.mod names, in the order of their paths.
func requiredModules(t *testing.T) []module {
	t.Helper()
	var file struct{ Require []struct{ Path string } }
	if err := json.Unmarshal([]byte(goTool(t, nil, "mod", "edit", "-json")), &file); err != nil {
		t.Fatal(err)
	}
	args := []string{"mod", "download", "-json"}
	for _, r := range file.Require {
		args = append(args, r.Path)
	}
	out := goTool(t, nil, args...)
	var all []module
	for d := json.NewDecoder(strings.NewReader(out)); d.More(); {
		var m module
		if err := d.Decode(&m); err != nil {
			t.Fatal(err)
		}
		all = append(all, m)
	}
	slices.SortFunc(all, func(a, b module) int { return strings.Compare(a.Path, b.Path) })
	if len(all) < 10 {
		t.Fatalf("go.mod names only %d modules", len(all))
	}
	return all
}

// linkedModules tells which modules the program has in it on any of the systems it is
// made for.
func linkedModules(t *testing.T) map[string]bool {
	t.Helper()
	linked := make(map[string]bool)
	for _, system := range []string{"linux", "windows", "darwin"} {
		out := goTool(t, []string{"GOOS=" + system, "CGO_ENABLED=0"}, "list", "-deps", "-f", "{{with .Module}}{{.Path}}{{end}}", ".")
		for _, path := range strings.Fields(out) {
			linked[path] = true
		}
	}
	return linked
}

func goTool(t *testing.T, env []string, args ...string) string {
	t.Helper()
	c := exec.Command("go", args...)
	c.Env = append(os.Environ(), env...)
	c.Stderr = os.Stderr
	out, err := c.Output()
	if err != nil {
		t.Fatalf("go %s: %v", strings.Join(args, " "), err)
	}
	return string(out)
}

// licences are known by a sentence of theirs; their names are those of SPDX.
var licences = []struct{ name, sentence string }{
	{"Apache-2.0", "Apache License, Version 2.0|Apache License Version 2.0"},
	{"BSD-3-Clause", "Redistribution and use in source and binary forms.*(Neither the name|names? of its contributors may)"},
	{"BSD-2-Clause", "Redistribution and use in source and binary forms"},
	{"ISC", "Permission to use, copy, modify, and(/or)? distribute this software for any purpose"},
	{"MIT", "Permission is hereby granted, free of charge, to any person obtaining a copy of this software"},
	{"MPL-2.0", "Mozilla Public License,? Version 2.0"},
	{"OFL-1.1", "SIL OPEN FONT LICENSE Version 1.1"},
	{"LGPL-3.0", "GNU LESSER GENERAL PUBLIC LICENSE Version 3"},
}

// licencesIn returns the licences under which a folder says its content is.
func licencesIn(dir string) ([]string, error) {
	files, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	var names []string
	for _, f := range files {
		if f.IsDir() || !regexp.MustCompile(`(?i)licen[cs]e|copying|OFL`).MatchString(f.Name()) {
			continue
		}
		text, err := os.ReadFile(filepath.Join(dir, f.Name()))
		if err != nil {
			return nil, err
		}
		flat := strings.Join(strings.Fields(string(text)), " ")
		for _, l := range licences {
			if l.name == "BSD-2-Clause" && slices.Contains(names, "BSD-3-Clause") {
				continue
			}
			if regexp.MustCompile("(?i)"+l.sentence).MatchString(flat) && !slices.Contains(names, l.name) {
				names = append(names, l.name)
			}
		}
	}
	return names, nil
}
