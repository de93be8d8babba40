package source

import (
	"bytes"
	"strings"
	"testing"
)

func TestLoad(t *testing.T) {
	for _, c := range []struct {
		name, data string
		place      string // of the finding, or "" where there is none
		text       string
	}{
		{"plain", "Cut the lining.\n", "", ""},
		{"nothing", "", "", ""},
		{"CR LF", "one\r\ntwo\r\n", "", ""},
		{"a byte order mark", "\xef\xbb\xbfone\n", "", ""},
		{"every width of UTF-8", "é ½ 裁 🧵\n", "", ""},
		{"UTF-16, little end first", "\xff\xfeo\x00n\x00e\x00", "n.md:1:1", "this file is UTF-16"},
		{"UTF-16, big end first", "\xfe\xff\x00o\x00n", "n.md:1:1", "this file is UTF-16"},
		{"UTF-16 without its mark", "o\x00n\x00", "n.md:1:2", "a zero byte: this is no text file"},
		{"another encoding", "caf\xe9\n", "n.md:1:4", "byte 0xe9 is not UTF-8"},
		{"half a character", "one\né \xc3", "n.md:2:3", "byte 0xc3 is not UTF-8"},
		{"a surrogate", "\xed\xa0\x80", "n.md:1:1", "byte 0xed is not UTF-8"},
		{"too long a form", "a\xc0\xaf", "n.md:1:2", "byte 0xc0 is not UTF-8"},
		{"a carriage return alone", "one\rtwo\n", "n.md:1:4", "a line ends in a carriage return alone"},
		{"a carriage return at the end", "one\r", "n.md:1:4", "a line ends in a carriage return alone"},
		{"two carriage returns", "one\r\r\n", "n.md:1:4", "a line ends in a carriage return alone"},
		{"as large as may be", strings.Repeat("a", MaxSize), "", ""},
		{"too large", strings.Repeat("a", MaxSize+1), "n.md:1:1", "this file is larger than 4 MB"},
		// The reader stops one byte after the limit, so the mark must count.
		{"too large with a byte order mark", "\xef\xbb\xbf" + strings.Repeat("a", MaxSize-2), "n.md:1:1", "this file is larger than 4 MB"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, findings := Load("n.md", []byte(c.data))
			if c.place == "" {
				if len(findings) > 0 {
					t.Fatalf("found %q", findings[0].Text)
				}
				if want := strings.TrimPrefix(c.data, "\xef\xbb\xbf"); string(f.Data) != want {
					t.Errorf("holds %.20q, want %.20q", f.Data, want)
				}
				return
			}
			if len(findings) != 1 {
				t.Fatalf("found %d, want 1", len(findings))
			}
			got := findings[0]
			if got.Span.String() != c.place || got.Text != c.text || got.Rule != NotPlainText || got.Level != Error || got.Help == "" {
				t.Errorf("got %s: %s (%s, %v)", got.Span, got.Text, got.Rule, got.Level)
			}
		})
	}
}

func TestPosition(t *testing.T) {
	f, _ := Load("n.md", []byte("\xef\xbb\xbfé: ½\r\n\r\n裁🧵x"))
	for _, c := range []struct {
		of           string
		line, column int
	}{
		{"é", 1, 1}, {"½", 1, 4}, {"\r\n\r\n", 1, 5}, {"\n裁", 2, 2}, {"裁", 3, 1}, {"🧵", 3, 2}, {"x", 3, 3},
	} {
		start := bytes.Index(f.Data, []byte(c.of))
		s := f.Span(start, start+len(c.of))
		if line, column := s.Position(); line != c.line || column != c.column {
			t.Errorf("%q is at %d:%d, want %d:%d", c.of, line, column, c.line, c.column)
		}
		if s.Text() != c.of {
			t.Errorf("text of %q is %q", c.of, s.Text())
		}
	}
	if line, column := f.Span(len(f.Data), len(f.Data)).Position(); line != 3 || column != 4 {
		t.Errorf("the end is at %d:%d, want 3:4", line, column)
	}
	if f.Lines() != 3 || f.LineStart(3) != len("é: ½\r\n\r\n") {
		t.Errorf("%d lines, the third at %d", f.Lines(), f.LineStart(3))
	}
	if got := f.Span(0, 0).Line(); got != "é: ½" {
		t.Errorf("first line is %q", got)
	}
}

// A file that ends in a line end has an empty last line, which holds the end.
func TestLastLine(t *testing.T) {
	f, _ := Load("n.md", []byte("one\n"))
	end := f.Span(4, 4)
	if line, column := end.Position(); line != 2 || column != 1 || end.Line() != "" || f.Lines() != 2 {
		t.Errorf("end at %d:%d of %d lines", line, column, f.Lines())
	}
}

func TestZeroSpan(t *testing.T) {
	var s Span
	if line, column := s.Position(); line != 0 || column != 0 || s.Text() != "" || s.Line() != "" || !s.IsZero() {
		t.Error("the zero span is somewhere")
	}
	if s.At(3, 5) != (Span{}) {
		t.Error("a part of the zero span is somewhere")
	}
}

func TestAtStaysWithin(t *testing.T) {
	f, _ := Load("n.md", []byte("0123456789"))
	s := f.Span(2, 8)
	for _, c := range []struct {
		offset, length int
		want           string
	}{
		{0, 3, "234"}, {2, 100, "4567"}, {100, 1, ""}, {-5, 2, "23"}, {1, -1, ""}, {6, 2, ""},
	} {
		if got := s.At(c.offset, c.length); got.Text() != c.want || got.Start < 2 || got.End > 8 {
			t.Errorf("At(%d, %d) is %q", c.offset, c.length, got.Text())
		}
	}
}
