package output

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"hussif/build/keep"
)

// pages returns a site of n pages of 6 kB in 10 folders.
func pages(n int) Site {
	s := Site{Recipe: keep.NewRecipe("bench", 1, fmt.Sprint(n))}
	for i := range n {
		text := fmt.Sprintf("%06d", i) + strings.Repeat("stitch ", 856)
		s.Files = append(s.Files, File{
			Path:    fmt.Sprintf("%d/page-%d.html", i%10, i),
			Content: func(w io.Writer) error { _, err := io.WriteString(w, text); return err },
		})
	}
	return s
}

func BenchmarkSite(b *testing.B) {
	for _, n := range []int{1000, 10000} {
		s := pages(n)
		run := func(name string, each func(dir string)) {
			b.Run(fmt.Sprintf("%s/%d", name, n), func(b *testing.B) {
				above := b.TempDir()
				dir := filepath.Join(above, "site")
				if name != "floor" && name != "first" {
					write(b, dir, s)
				}
				for b.Loop() {
					each(dir)
					if name == "floor" || name == "first" {
						b.StopTimer()
						os.RemoveAll(dir)
						b.StartTimer()
					}
				}
			})
		}
		run("floor", func(dir string) { // os.WriteFile and nothing else, one after another
			for i := range 10 {
				os.MkdirAll(filepath.Join(dir, fmt.Sprint(i)), 0o777)
			}
			for _, f := range s.Files {
				var text strings.Builder
				f.Content(&text)
				if err := os.WriteFile(filepath.Join(dir, f.Path), []byte(text.String()), 0o666); err != nil {
					b.Fatal(err)
				}
			}
		})
		run("first", func(dir string) { write(b, dir, s) })
		run("unchanged", func(dir string) { write(b, dir, s) })
		run("current", func(dir string) {
			if _, ok := Current(dir, s.Recipe); !ok {
				b.Fatal("not current")
			}
		})
		turn := 0
		run("all changed", func(dir string) {
			turn++
			changed := Site{Recipe: s.Recipe}
			for _, f := range s.Files {
				was := f.Content
				f.Content = func(w io.Writer) error { fmt.Fprintf(w, "%06d", turn); return was(w) }
				changed.Files = append(changed.Files, f)
			}
			write(b, dir, changed)
		})
	}
}

func write(b *testing.B, dir string, s Site) {
	if _, err := Write(context.Background(), dir, s); err != nil {
		b.Fatal(err)
	}
}
