package address

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

// Whatever a file is called, every part of its page's name is one that all disks take
// and no address has to escape, and the name of that name is the same again.
func FuzzSlug(f *testing.F) {
	for _, name := range []string{
		"builds/Grey Jacket", "con", "nul.txt", "a/con/b", "tail.", "...", "..", "a/../b", "zoe\u0301", "\u202egpj.exe", "İ", "ǅ", "\xff",
		"<script>", "a\nb", "C:\\x", strings.Repeat("é", 200), strings.Repeat("a.", 200), strings.Repeat("\u0301", 300),
	} {
		f.Add(name)
	}
	f.Fuzz(func(t *testing.T, name string) {
		slug := Slug(name)
		if strings.Count(slug, "/") != strings.Count(name, "/") {
			t.Errorf("%q has other parts than %q", slug, name)
		}
		for _, part := range strings.Split(slug, "/") {
			stem, _, _ := strings.Cut(part, ".")
			if len(part) > longest || strings.HasSuffix(part, ".") || devices[stem] || part == ".." || !utf8.ValidString(part) {
				t.Errorf("%q has the part %q", name, part)
			}
			for _, r := range part {
				if r > unicode.MaxRune || !unicode.IsLetter(r) && !unicode.IsDigit(r) && !unicode.Is(unicode.Mn, r) && !strings.ContainsRune("-_.", r) {
					t.Errorf("%q has the character %q", name, r)
				}
			}
		}
		if again := Slug(slug); again != slug {
			t.Errorf("%q makes %q, and that %q", name, slug, again)
		}
	})
}
