package source

import (
	"bytes"
	"fmt"
	"sort"
	"unicode/utf8"
)

// MaxSize is the largest text file, in bytes, that a journal may hold. A note of
// this size would be a thick book; anything larger is a mistake or an attack.
const MaxSize = 4 << 20

// A File is one text file of the journal as it was read, without a byte order
// mark. It is never changed after [Load].
type File struct {
	Name  string // from the journal's folder, with forward slashes
	Data  []byte // UTF-8; line ends as the maker's editor wrote them
	lines []int  // where each line starts
}

var (
	bomUTF8  = []byte("\xef\xbb\xbf")
	bomUTF16 = [][]byte{[]byte("\xff\xfe"), []byte("\xfe\xff")}
)

// Load takes in the bytes of one file and keeps them. A file that is not UTF-8
// text gets a finding of rule "not plain text"; its File is still returned so that the
// finding has a place, but there is nothing to be read from it.
func Load(name string, data []byte) (*File, []Finding) {
	return LoadWithin(name, data, MaxSize, "split it into several notes")
}

// LoadWithin is [Load] for files of another kind, which may have so many bytes; help
// says what to do about a larger one.
func LoadWithin(name string, data []byte, most int, help string) (*File, []Finding) {
	tooLarge := len(data) > most
	data = bytes.TrimPrefix(data, bomUTF8)
	f := &File{Name: name, Data: data, lines: lineStarts(data)}
	refuse := func(offset, length int, text, instead string) []Finding {
		return []Finding{{
			Span: f.Span(offset, offset+length), Level: Error, Rule: NotPlainText,
			Text: text, Help: instead,
		}}
	}
	if tooLarge {
		return f, refuse(0, 0, fmt.Sprintf("this file is larger than %d MB", most>>20), help)
	}
	for _, bom := range bomUTF16 {
		if bytes.HasPrefix(data, bom) {
			return f, refuse(0, 0, "this file is UTF-16", "save it again as UTF-8")
		}
	}
	for i := 0; i < len(data); {
		if data[i] < utf8.RuneSelf {
			switch {
			case data[i] == 0:
				return f, refuse(i, 1, "a zero byte: this is no text file", "look at it in the program that made it")
			case data[i] == '\r' && (i+1 == len(data) || data[i+1] != '\n'):
				return f, refuse(i, 1, "a line ends in a carriage return alone", "save the file with LF or CR LF line ends")
			}
			i++
			continue
		}
		r, size := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && size == 1 {
			return f, refuse(i, 1, fmt.Sprintf("byte %#x is not UTF-8", data[i]), "save the file again as UTF-8")
		}
		i += size
	}
	return f, nil
}

// NotPlainText is the rule that [Load] speaks for.
const NotPlainText = "not plain text"

func lineStarts(data []byte) []int {
	starts := make([]int, 1, 1+bytes.Count(data, []byte{'\n'}))
	for i, b := range data {
		if b == '\n' {
			starts = append(starts, i+1)
		}
	}
	return starts
}

// Span returns the place of the bytes from start up to end.
func (f *File) Span(start, end int) Span { return Span{File: f, Start: start, End: end} }

// Whole returns the place of all of the file's bytes.
func (f *File) Whole() Span { return f.Span(0, len(f.Data)) }

// Lines returns the number of lines; a file that ends in a line end has an empty
// last line.
func (f *File) Lines() int { return len(f.lines) }

// LineStart returns the offset of the first byte of a line, counted from 1.
func (f *File) LineStart(line int) int { return f.lines[line-1] }

// line returns the number of the line, counted from 1, that holds an offset.
func (f *File) line(offset int) int {
	return sort.SearchInts(f.lines, offset+1)
}

// lineText returns a line's bytes without its line end.
func (f *File) lineText(line int) []byte {
	end := len(f.Data)
	if line < len(f.lines) {
		end = f.lines[line]
	}
	return bytes.TrimRight(f.Data[f.lines[line-1]:end], "\r\n")
}

// A Span is a run of bytes in a file. The zero Span stands for the journal as a
// whole.
type Span struct {
	File       *File
	Start, End int
}

// IsZero reports whether the span names no file.
func (s Span) IsZero() bool { return s.File == nil }

// Text returns the bytes of the span as a string.
func (s Span) Text() string {
	if s.File == nil {
		return ""
	}
	return string(s.File.Data[s.Start:s.End])
}

// At returns the part of the span that starts offset bytes into it and is length
// bytes long, kept within the span.
func (s Span) At(offset, length int) Span {
	start := min(s.Start+max(offset, 0), s.End)
	return Span{File: s.File, Start: start, End: min(start+max(length, 0), s.End)}
}

// Position returns the line and the column of the span's first byte. Both count
// from 1 and columns count characters.
func (s Span) Position() (line, column int) {
	if s.File == nil {
		return 0, 0
	}
	line = s.File.line(s.Start)
	return line, 1 + utf8.RuneCount(s.File.Data[s.File.lines[line-1]:s.Start])
}

// Line returns the line in which the span begins, without its line end.
func (s Span) Line() string {
	if s.File == nil {
		return ""
	}
	line, _ := s.Position()
	return string(s.File.lineText(line))
}
