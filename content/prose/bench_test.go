package prose

import (
	"testing"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/text"
)

// BenchmarkGoldmark is the floor: the same note without our constructs.
func BenchmarkGoldmark(b *testing.B) {
	parser := goldmark.New(goldmark.WithExtensions(extension.GFM, extension.Footnote)).Parser()
	src := []byte(note)
	b.SetBytes(int64(len(src)))
	b.ReportAllocs()
	for b.Loop() {
		parser.Parse(text.NewReader(src))
	}
}

func BenchmarkRead(b *testing.B) {
	f, span := load(b, note)
	b.SetBytes(int64(len(note)))
	b.ReportAllocs()
	for b.Loop() {
		Read(f, span, Start{})
	}
}
