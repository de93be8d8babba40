package journal_test

import (
	"testing"

	"hussif/content/journal"
	"hussif/testdata/generate"
)

func BenchmarkOpen(b *testing.B) {
	for _, size := range []struct {
		name  string
		notes int
	}{{"1000", 1000}, {"10000", 10000}} {
		b.Run(size.name, func(b *testing.B) {
			fsys := generate.Journal(size.notes, 1)
			var bytes int64
			for _, f := range fsys {
				bytes += int64(len(f.Data))
			}
			b.SetBytes(bytes)
			for b.Loop() {
				if _, findings, err := journal.Open(fsys); err != nil || len(findings) > 0 {
					b.Fatal(err, findings)
				}
			}
		})
	}
}
