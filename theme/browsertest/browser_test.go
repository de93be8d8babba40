package browsertest_test

import (
	"bytes"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"hussif/theme/browsertest"
)

// A browser that never complained would let every test of a page's policy pass.
func TestBrowserSaysWhatAPolicyRefuses(t *testing.T) {
	b := browsertest.Open(t)
	b.Visit(page(t, `<meta http-equiv="Content-Security-Policy" content="default-src 'none'"><p style="color:red">red`), 400, false)
	said := strings.Join(b.Said(), "\n")
	if !strings.Contains(said, "Content Security Policy") {
		t.Errorf("an inline style against the policy: the console said %q", said)
	}
	if again := b.Said(); len(again) > 0 {
		t.Errorf("said twice: %q", again)
	}
}

func TestVisitSetsWidthAndHour(t *testing.T) {
	b := browsertest.Open(t)
	address := page(t, `<meta name="viewport" content="width=device-width"><p>a page`)
	for _, dark := range []bool{false, true} {
		b.Visit(address, 360, dark)
		if width := browsertest.Ask[int](b, `innerWidth`); width != 360 {
			t.Errorf("the window is %d px wide, want 360", width)
		}
		if got := browsertest.Ask[bool](b, `matchMedia("(prefers-color-scheme: dark)").matches`); got != dark {
			t.Errorf("dark is %v, want %v", got, dark)
		}
	}
	shot, err := png.DecodeConfig(bytes.NewReader(b.Shot()))
	if err != nil || shot.Width != 360 {
		t.Errorf("the picture is %d px wide, want 360: %v", shot.Width, err)
	}
}

func page(t *testing.T, html string) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "page #1.html") // a name that an address must escape
	if err := os.WriteFile(name, []byte("<!DOCTYPE html>"+html), 0o600); err != nil {
		t.Fatal(err)
	}
	return browsertest.File(t, name)
}
