package photo

import (
	"strings"
	"testing"
	"testing/fstest"
	"time"
)

// What is expected of a picture is what is made of it, but for the names.
func TestExpectedIsWhatIsMade(t *testing.T) {
	files := map[string][]byte{
		"wide.jpg":   asJPEG(t, drawing(2000, 300)),
		"small.jpg":  asJPEG(t, drawing(41, 30)),
		"large.png":  pngOf(t, drawing(1000, 700)),
		"screen.png": pngOf(t, translucent(500, 30)),
	}
	for o := turn(1); o <= 8; o++ {
		for name, file := range turned(t, translucent(700, 300), o) {
			files[strings.Replace(name, ".", string(rune('0'+o))+".", 1)] = file
		}
	}
	fsys := fstest.MapFS{}
	for name, file := range files {
		fsys[name] = &fstest.MapFile{Data: file, ModTime: time.Unix(1_700_000_000, 0)}
	}
	names := make(map[string]string)
	for name, made := range makeAll(t, darkroom(t), files) {
		expected, fault, err := Expect(fsys, name)
		if fault != nil || err != nil || len(expected) != len(made.Pictures) {
			t.Fatalf("%s: expected %v, %v, %v; made %v", name, expected, fault, err, made.Pictures)
		}
		for i, e := range expected {
			m := made.Pictures[i]
			if e.Width != m.Width || e.Height != m.Height {
				t.Errorf("%s: expected %d by %d, made %d by %d", name, e.Width, e.Height, m.Width, m.Height)
			}
			if strings.HasSuffix(e.Name, ".jpg") && !strings.HasSuffix(m.Name, ".jpg") {
				t.Errorf("%s: expected %s, made %s", name, e.Name, m.Name)
			}
			if other, ok := names[e.Name]; ok {
				t.Errorf("%s and %s are both expected as %s", name, other, e.Name)
			}
			names[e.Name] = name
		}
	}
	if len(names) < len(files) {
		t.Errorf("%d names for %d pictures", len(names), len(files))
	}
}

func TestAChangedPictureIsExpectedByAnotherName(t *testing.T) {
	file := &fstest.MapFile{Data: asJPEG(t, drawing(600, 300)), ModTime: time.Unix(1_700_000_000, 0)}
	fsys := fstest.MapFS{"a.jpg": file}
	name := func() string {
		p, fault, err := Expect(fsys, "a.jpg")
		if fault != nil || err != nil {
			t.Fatal(fault, err)
		}
		return p[0].Name
	}
	first := name()
	if again := name(); again != first {
		t.Errorf("%s, then %s", first, again)
	}
	file.ModTime = file.ModTime.Add(time.Second)
	if other := name(); other == first {
		t.Errorf("still %s", other)
	}
}

func TestExpectTellsFaults(t *testing.T) {
	fsys := fstest.MapFS{"a.jpg": {Data: []byte("GIF89a")}}
	for _, name := range []string{"a.jpg", "b.jpg"} {
		if p, fault, err := Expect(fsys, name); fault == nil || err != nil || p != nil {
			t.Errorf("%s: %v, %v, %v", name, p, fault, err)
		}
	}
}
