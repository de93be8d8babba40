package site_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"hussif/build/photo"
	"hussif/build/site"
	"hussif/build/site/sitetest"
	"hussif/content/edtf"
	"hussif/testdata/generate"
)

// BenchmarkUpkeep changes one note after another of a large journal and measures from
// there until the site's files are written: words of the text, which change nothing
// else; the hours of the work; a next-time note more; a measure.
func BenchmarkUpkeep(b *testing.B) {
	for _, notes := range []int{1000, 10000} {
		dir := b.TempDir()
		if err := os.CopyFS(dir, generate.Journal(notes, 1)); err != nil {
			b.Fatal(err)
		}
		workshop, err := site.NewWorkshop()
		if err != nil {
			b.Fatal(err)
		}
		u := &site.Upkeep{
			Files: os.DirFS(dir), Out: filepath.Join(b.TempDir(), "site"), Today: func() edtf.Day { return today },
			Photos: &photo.Darkroom{Store: sitetest.Store(b)}, Workshop: workshop,
		}
		if out, err := u.Bring(b.Context(), nil, true); err != nil || !out.Sound {
			b.Fatal(err, out.Findings)
		}
		names, err := filepath.Glob(filepath.Join(dir, "builds", "*", "2*.md"))
		if err != nil || len(names) == 0 {
			b.Fatal("no notes: ", err)
		}
		at := 0
		for _, edit := range []struct{ name, old, new string }{
			{"words", "", "\nOne word more.\n"}, {"hours", "hours: ", "hours: 1"}, {"next", "", "\n\nNext time: press it again.\n"},
			{"measure", "upper arm girth: 12 in", "upper arm girth: 12 1/8 in"},
		} {
			b.Run(fmt.Sprintf("notes=%d/%s", notes, edit.name), func(b *testing.B) {
				var took []time.Duration
				for b.Loop() {
					b.StopTimer()
					at = change(b, names, at, edit.old, edit.new)
					folder, err := filepath.Rel(dir, filepath.Dir(names[at]))
					if err != nil {
						b.Fatal(err)
					}
					b.StartTimer()
					start := time.Now()
					out, err := u.Bring(b.Context(), []string{filepath.ToSlash(folder)}, false)
					took = append(took, time.Since(start))
					if err != nil || !out.Sound || out.Written == 0 {
						b.Fatal(err, out.Written, out.Findings)
					}
				}
				slices.Sort(took)
				b.ReportMetric(float64(took[len(took)/2].Microseconds())/1000, "ms-median")
				b.ReportMetric(float64(took[len(took)*99/100].Microseconds())/1000, "ms-p99")
			})
		}
	}
}

// change makes an edit in the next note that has what is to be changed, or at the end
// of the next, and returns which it was.
func change(b *testing.B, names []string, at int, old, new string) int {
	for {
		at = (at + 37) % len(names)
		data, err := os.ReadFile(names[at])
		if err != nil {
			b.Fatal(err)
		}
		text := string(data)
		if old == "" {
			text += new
		} else if text = strings.Replace(text, old, new, 1); text == string(data) {
			continue
		}
		if err := os.WriteFile(names[at], []byte(text), 0o666); err != nil {
			b.Fatal(err)
		}
		return at
	}
}
