package check

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/token"
	"image"
	"image/png"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/rogpeppe/go-internal/txtar"

	"hussif/content/journal"
	"hussif/content/source"
)

// files makes a folder of the files of an archive. An archive is text, so an
// empty file whose name ends in .png stands for a picture.
func files(archive *txtar.Archive) fstest.MapFS {
	out := fstest.MapFS{}
	for _, f := range archive.Files {
		if len(f.Data) == 0 && strings.HasSuffix(f.Name, ".png") {
			f.Data = onePixel
		}
		out[f.Name] = &fstest.MapFile{Data: f.Data}
	}
	return out
}

var onePixel = func() []byte {
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewGray(image.Rect(0, 0, 1, 1))); err != nil {
		panic(err)
	}
	return b.Bytes()
}()

func checked(t testing.TB, fsys fstest.MapFS) []source.Finding {
	t.Helper()
	j, findings, err := journal.Open(fsys)
	if err != nil {
		t.Fatal(err)
	}
	return Run(j, fsys, findings)
}

func knownRules() map[string]bool {
	known := make(map[string]bool)
	for _, r := range Rules() {
		known[r.Name] = true
	}
	return known
}

func TestRulesAreExplained(t *testing.T) {
	seen := make(map[string]bool)
	for _, r := range Rules() {
		if r.Name == "" || strings.ToLower(r.Name) != r.Name && r.Name != "not YAML" {
			t.Errorf("%q is no name for a rule", r.Name)
		}
		if seen[r.Name] {
			t.Errorf("two rules are called %q", r.Name)
		}
		seen[r.Name] = true
		if !strings.HasSuffix(r.Doc, ".") || len(r.Doc) < 30 {
			t.Errorf("%s is not explained: %q", r.Name, r.Doc)
		}
		// An archive cannot hold a link or a device.
		if hasExample := r.Bad != "" && r.Good != ""; hasExample == (r.Name == source.NotAFile) {
			t.Errorf("%s: bad %t, good %t", r.Name, r.Bad != "", r.Good != "")
		}
	}
}

// What a rule shows as wrong it must find, and in what it shows as right nothing
// may be found at all.
func TestRuleExamples(t *testing.T) {
	for _, r := range Rules() {
		if r.Bad == "" {
			continue
		}
		t.Run(r.Name, func(t *testing.T) {
			bad := checked(t, files(txtar.Parse([]byte(r.Bad))))
			if !slices.ContainsFunc(bad, func(f source.Finding) bool { return f.Rule == r.Name }) {
				t.Errorf("the bad example does not raise it, but %q", texts(bad))
			}
			if slices.ContainsFunc(bad, func(f source.Finding) bool { return f.Rule != r.Name }) {
				t.Errorf("the bad example has other faults too: %q", texts(bad))
			}
			if good := checked(t, files(txtar.Parse([]byte(r.Good)))); len(good) > 0 {
				t.Errorf("the good example is not good: %q", texts(good))
			}
		})
	}
}

func texts(findings []source.Finding) []string {
	var out []string
	for _, f := range findings {
		out = append(out, f.Text+" ["+f.Rule+"]")
	}
	return out
}

// A link in the journal's folder is a warning, and the only one without an example.
func TestNotAFile(t *testing.T) {
	found := checked(t, fstest.MapFS{
		"notes/2026-03-01.md": {Data: []byte("Cut.")},
		"photos":              {Mode: fs.ModeSymlink},
	})
	if len(found) != 1 || found[0].Rule != source.NotAFile || found[0].Level != source.Warning {
		t.Errorf("found %q", texts(found))
	}
}

// Each rule that reading may speak for has a constant. A new one must be
// explained like the others.
func TestEveryRuleOfReadingIsExplained(t *testing.T) {
	known, constants := knownRules(), 0
	for _, name := range []string{"source", "front", "journal", "prose"} {
		for _, value := range ruleConstants(t, "../../content/"+name) {
			constants++
			if !known[value] {
				t.Errorf("package %s speaks for the rule %q, which is not explained", name, value)
			}
		}
	}
	if constants < 25 {
		t.Errorf("only %d constants were found", constants)
	}
}

// ruleConstants returns the values of a package's exported constants that are
// plain strings and no file names.
func ruleConstants(t *testing.T, dir string) []string {
	names, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		for _, decl := range file.Decls {
			general, ok := decl.(*ast.GenDecl)
			if !ok || general.Tok != token.CONST {
				continue
			}
			for _, spec := range general.Specs {
				value := spec.(*ast.ValueSpec)
				if value.Type != nil || len(value.Values) != 1 || !value.Names[0].IsExported() {
					continue
				}
				if literal, ok := value.Values[0].(*ast.BasicLit); ok && literal.Kind == token.STRING {
					if s, _ := strconv.Unquote(literal.Value); s != source.SiteMark && s != journal.SettingsFile {
						out = append(out, s)
					}
				}
			}
		}
	}
	return out
}

// A chain in which each garment comes from the one before in two ways has more
// ways through it than can be tried.
func TestRemakesOfALongLine(t *testing.T) {
	fsys := fstest.MapFS{"builds/b0/build.md": {}}
	for i := range 60 {
		text := "---\nremakes: b" + strconv.Itoa(i) + "\nreworks: b" + strconv.Itoa(i) + "\n---\n"
		fsys["builds/b"+strconv.Itoa(i+1)+"/build.md"] = &fstest.MapFile{Data: []byte(text)}
	}
	if found := checked(t, fsys); len(found) > 0 {
		t.Errorf("found %q", texts(found))
	}
}

func TestRunKeepsWhatReadingFound(t *testing.T) {
	fsys := fstest.MapFS{"notes/2026-03-01.md": {Data: []byte("---\nstge: x\n---\n")}}
	j, read, err := journal.Open(fsys)
	if err != nil {
		t.Fatal(err)
	}
	before := slices.Clone(read)
	if got := Run(j, fsys, read); len(got) != 1 || got[0].Rule != "unknown field" {
		t.Errorf("found %q", texts(got))
	}
	if !slices.EqualFunc(before, read, func(a, b source.Finding) bool { return a.Span == b.Span && a.Text == b.Text }) {
		t.Error("what was handed in is changed")
	}
}
