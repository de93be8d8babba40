package circle_test

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"hussif/build/circle"
	"hussif/build/export"
	"hussif/build/photo/phototest"
	"hussif/build/site/sitetest"
	"hussif/content/source"
)

// evil would be an element, close the page's title, leave an attribute, be a link that
// runs, and turn what follows round.
const evil = "</title></script>\"'><evil-element onclick=pwned=1>{{.}}<!-- [x](javascript:pwned=1) \u202e&lt;"

// evilLog is a log that is evil in every text that is no more than words, and in its HTML.
func evilLog() *export.Log {
	log := new(export.Log)
	fill(reflect.ValueOf(log).Elem(), reflect.StructField{})
	log.Version = export.Version
	return log
}

func fill(v reflect.Value, f reflect.StructField) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			fill(v.Field(i), v.Type().Field(i))
		}
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		fill(v.Elem(), f)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1, 1))
		fill(v.Index(0), f)
	case reflect.Float64:
		v.SetFloat(99999)
	case reflect.String:
		words, _, _ := strings.Cut(f.Tag.Get("one"), "|")
		v.SetString(map[string]string{
			"id": "../../" + evil, "day": "2026-02-28", "edtf": "178X", "page": "../..//evil.example/" + evil[:2] + ".html",
			"address": "https://example.org/\"><script>pwned=1</script>", "picture": "pictures/0123456789ab-60.jpg",
			"html": `<p>before ` + evil + `</p></div></main><table><tr><td><form action=x><input><iframe srcdoc="<script>pwned=1</script>">`,
		}[f.Tag.Get("is")])
		if v.String() == "" {
			v.SetString(words)
		}
		if v.String() == "" && f.Tag.Get("max") != "50" {
			v.SetString(evil)
		}
	}
}

// hand writes a log and files into a folder as if a site had been made there.
func hand(t testing.TB, log any, files map[string][]byte) string {
	t.Helper()
	dir := t.TempDir()
	text, err := json.Marshal(log)
	if err != nil {
		t.Fatal(err)
	}
	for name, data := range files {
		if err := os.MkdirAll(filepath.Join(dir, filepath.Dir(name)), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, export.Path), text, 0o600); err != nil {
		t.Fatal(err)
	}
	return dir
}

// TestEvilLogs: whatever the logs say, the pages hold it as words only, and lie where
// pages lie.
func TestEvilLogs(t *testing.T) {
	picture := map[string][]byte{"pictures/0123456789ab-60.jpg": phototest.JPEG(1, "", "")}
	var sites []string
	for range 2 { // of one name
		sites = append(sites, hand(t, evilLog(), picture))
	}
	for _, name := range []string{"../../etc", "CON", ".", "..", "🧵", "a/b", "index", strings.Repeat("ä", 100), "\u202egnp.exe", "con.html"} {
		log := evilLog()
		log.Maker, log.Builds[0].ID, log.Builds[0].Title = name, name, name
		log.Patterns[0].ID, log.Patterns[0].Title, log.References[0].ID = name, name, name
		log.Builds[0].Patterns = []string{name}
		sites = append(sites, hand(t, log, picture))
	}
	out, made, found := makeCircle(t, open(t, sites...))
	if len(found) > 0 || made.Makers != len(sites) || made.Builds != len(sites) {
		t.Errorf("made %+v, found %v", made, found)
	}
	sitetest.Walk(t, out)
	words := 0
	for _, p := range sitetest.Pages(t, out) {
		for _, found := range sitetest.Active(p.Root) {
			t.Errorf("%s has %s", p.Path, found)
		}
		text := sitetest.Text(p.Root)
		words += strings.Count(text, "<evil-element onclick")
		if strings.ContainsAny(text, "\u202e\u2066") {
			t.Errorf("%s turns its words round", p.Path)
		}
	}
	if words < 100 {
		t.Errorf("the evil words stand on the pages only %d times", words)
	}
}

// TestPicturesAreMadeAnew: what is no picture is left out, and of a picture nothing stays
// but the picture.
func TestPicturesAreMadeAnew(t *testing.T) {
	const name = "pictures/0123456789ab-60.jpg"
	sound := phototest.JPEG(1, "2026:01:02 03:04:05", "+01:00")
	for what, data := range map[string][]byte{
		"sound": sound, "with a tail": append(bytes.Clone(sound), "PWNED<script>"...), "none": nil,
		"a page": []byte("<html><script>pwned=1</script>"), "a drawing": []byte(`<svg xmlns="http://www.w3.org/2000/svg"><script>pwned=1</script></svg>`), "cut short": sound[:len(sound)/2],
	} {
		files := map[string][]byte{name: data}
		if what == "none" {
			files = nil
		}
		out, made, found := makeCircle(t, open(t, hand(t, evilLog(), files)))
		if shown := what == "sound" || what == "with a tail"; shown != (made.Photos == 1) || shown != (len(found) == 0) {
			t.Errorf("%s: %d photos, found %v", what, made.Photos, found)
		}
		err := fs.WalkDir(os.DirFS(out), "pictures", func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return nil // there need be none
			}
			data, err := os.ReadFile(filepath.Join(out, path))
			if bytes.Contains(data, []byte("PWNED")) || bytes.Contains(data, []byte("Exif")) {
				t.Errorf("%s: %s holds more than the picture", what, path)
			}
			return err
		})
		if err != nil {
			t.Error(err)
		}
	}
}

// TestNothingOutsideIsRead: links in what was handed over lead nowhere else.
func TestNothingOutsideIsRead(t *testing.T) {
	outside := hand(t, evilLog(), map[string][]byte{"private.jpg": phototest.JPEG(9, "", "")})
	const name = "pictures/0123456789ab-60.jpg"
	dir := hand(t, evilLog(), map[string][]byte{"pictures/other": nil})
	if err := os.Symlink(filepath.Join(outside, "private.jpg"), filepath.Join(dir, name)); err != nil {
		t.Skip(err) // not every system has links
	}
	_, made, found := makeCircle(t, open(t, dir))
	if made.Photos != 0 || len(found) != 1 {
		t.Errorf("a picture by a link: %d photos, found %v", made.Photos, found)
	}
	dir = t.TempDir()
	if err := os.Symlink(filepath.Join(outside, export.Path), filepath.Join(dir, export.Path)); err != nil {
		t.Fatal(err)
	}
	if m, _, closer, err := circle.Open(dir); err == nil {
		closer.Close()
		t.Errorf("a log by a link is that of %q", m.Name)
	}
}

// packed writes a zip file.
func packed(t testing.TB, files map[string]io.Reader, modes map[string]fs.FileMode) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "ada.zip")
	f, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	z := zip.NewWriter(f)
	for name, data := range files {
		h := &zip.FileHeader{Name: name, Method: zip.Deflate}
		h.SetMode(0o644 | modes[name])
		w, err := z.CreateHeader(h)
		if err == nil {
			_, err = io.Copy(w, data)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	return name
}

// zeros are so many bytes that pack into next to nothing.
func zeros(n int64) io.Reader { return io.LimitReader(zero{}, n) }

type zero struct{}

func (zero) Read(p []byte) (int, error) {
	clear(p)
	return len(p), nil
}

func TestEvilZips(t *testing.T) {
	text, err := json.Marshal(evilLog())
	if err != nil {
		t.Fatal(err)
	}
	log := func() io.Reader { return bytes.NewReader(text) }
	const picture = "site/pictures/0123456789ab-60.jpg"
	for _, c := range []struct {
		what    string
		files   map[string]io.Reader
		modes   map[string]fs.FileMode
		refused bool // by an error or a finding
		photos  int
	}{
		{"as it should be", map[string]io.Reader{"site/circle.json": log(), picture: bytes.NewReader(phototest.JPEG(1, "", ""))}, nil, false, 1},
		{"no folder in it", map[string]io.Reader{"circle.json": log()}, nil, false, 0},
		{"a log that swells", map[string]io.Reader{"site/circle.json": zeros(20 << 20)}, nil, true, 0},
		{"a picture that swells", map[string]io.Reader{"site/circle.json": log(), picture: zeros(36 << 20)}, nil, false, 0},
		{"a way out", map[string]io.Reader{"../circle.json": log()}, nil, true, 0},
		{"a way in from the top", map[string]io.Reader{"/circle.json": log()}, nil, true, 0},
		{"a link", map[string]io.Reader{"site/circle.json": strings.NewReader("/etc/passwd")}, map[string]fs.FileMode{"site/circle.json": fs.ModeSymlink}, true, 0},
		{"a picture that is a link", map[string]io.Reader{"site/circle.json": log(), picture: strings.NewReader("/etc/passwd")}, map[string]fs.FileMode{picture: fs.ModeSymlink}, false, 0},
		{"a folder for a log", map[string]io.Reader{"site/circle.json/a": log()}, nil, true, 0},
		{"nothing", nil, nil, true, 0},
	} {
		m, found, closer, err := circle.Open(packed(t, c.files, c.modes))
		refused := err != nil || source.Count(found, source.Error) > 0
		if refused != c.refused {
			t.Errorf("%s: refused is %t: %v %v", c.what, refused, err, found)
		}
		if !refused {
			if _, made, _ := makeCircle(t, []circle.Member{m}); made.Photos != c.photos {
				t.Errorf("%s: %d photos", c.what, made.Photos)
			}
		}
		closer.Close()
	}
	dir := t.TempDir()
	for name, want := range map[string]string{"ada.zip": "opening", "ada.tar": "neither a folder nor a zip file", "gone": "gone"} {
		name = filepath.Join(dir, name)
		if want != "gone" {
			if err := os.WriteFile(name, []byte("PK\x03\x04 and no more"), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		if _, _, _, err := circle.Open(name); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", name, err, want)
		}
	}
}
