package prose

import (
	"bytes"

	"hussif/content/source"
)

// Rules for bodies that are refused before they cost time. Goldmark 1.8.7 takes
// time that grows with the square of the input for many small constructs (32,000
// times "- " on a line: 3 s), and a table makes a node for every cell that is
// missing from its rows. The limits are far above anything a maker writes.
const (
	TooDeep = "nested too deep"
	TooLong = "too long in one piece"
)

const (
	maxBody      = 512 << 10 // bytes
	maxPiece     = 64 << 10  // bytes without a blank line
	maxCells     = 50_000    // of all tables
	maxFootnotes = 2_000
	maxRemarks   = 2_000 // next-time notes and decisions, each of which is looked for by name
	maxHeadings  = 5_000
	maxSigns     = 20_000 // marks of links, emphasis and the like
	pieceSigns   = 5_000  // the same, without a blank line or a new point of a list
	maxMarks     = 64     // quote and list marks before the words of a line
	maxNesting   = 100    // of nodes in the tree
)

// isSign has the characters by which links, emphasis, code and HTML begin and end.
var isSign = [256]bool{'[': true, '*': true, '_': true, '~': true, '`': true, '<': true}

func tooDeep(at source.Span) source.Finding {
	finding := source.Found(at, source.Error, TooDeep, "lists, quotes or emphasis are nested too deep here to be read")
	finding.Help = "take out marks until a few levels are left"
	return finding
}

func tooLong(at source.Span, text, instead string) source.Finding {
	finding := source.Found(at, source.Error, TooLong, "%s", text)
	finding.Help = instead
	return finding
}

// tooMuch looks a body over before it is parsed.
func tooMuch(body source.Span, src []byte) (source.Finding, bool) {
	if len(src) > maxBody {
		return tooLong(body.At(0, 0), "this note is longer than 512 kB", "split it into several notes"), true
	}
	var all, piece struct{ signs, cells int } // piece: of the lines since the last blank one
	size, columns, rows, footnotes := 0, 0, 0, 0
	for at := 0; at < len(src); {
		line := src[at:]
		if end := bytes.IndexByte(line, '\n'); end >= 0 {
			line = line[:end+1]
		}
		if marks(line) > maxMarks {
			return tooDeep(body.At(at, len(bytes.TrimRight(line, "\r\n")))), true
		}
		signs := 0
		for _, c := range line {
			if isSign[c] {
				signs++
			}
		}
		all.signs += signs
		if len(bytes.TrimSpace(line)) == 0 {
			all.cells += piece.cells
			piece.signs, piece.cells, size, columns, rows = 0, 0, 0, 0, 0
		} else {
			if isPoint(line) {
				piece.signs = 0
			}
			if isFootnote(line) {
				footnotes++
			}
			size += len(line)
			piece.signs += signs
			rows++
			if len(bytes.Trim(line, "|:- \t\r\n>")) == 0 {
				columns = max(columns, bytes.Count(line, []byte{'|'})+1)
			}
			if columns > 1 {
				piece.cells = columns * rows
			}
		}
		switch {
		case size > maxPiece:
			return tooLong(body.At(at, 0), "more than 64 kB stand here without a blank line",
				"put blank lines between the paragraphs"), true
		case all.cells+piece.cells > maxCells:
			return tooLong(body.At(at, 0), "the tables up to here have too many cells", "split the note into several"), true
		case piece.signs > pieceSigns:
			return tooLong(body.At(at, 0), "more than 5,000 marks of links, emphasis and the like stand here without a blank line",
				"put blank lines between the paragraphs"), true
		case all.signs > maxSigns:
			return tooLong(body.At(at, 0), "this note has more than 20,000 marks of links, emphasis and the like", "split it into several notes"), true
		case footnotes > maxFootnotes:
			return tooLong(body.At(at, 0), "this note has more than 2,000 footnotes", "split it into several notes"), true
		}
		at += len(line)
	}
	return source.Finding{}, false
}

// isPoint reports whether a line begins a point of a list, wherever it stands; one
// with a number may be words.
func isPoint(line []byte) bool {
	rest := bytes.TrimLeft(line, " ")
	return len(line)-len(rest) < 4 && len(rest) > 2 && bytes.IndexByte([]byte("-*+"), rest[0]) >= 0 && rest[1] == ' ' && len(bytes.TrimSpace(rest[1:])) > 0
}

// isFootnote reports whether a line could be where a footnote's text begins.
func isFootnote(line []byte) bool {
	return bytes.HasPrefix(bytes.TrimLeft(line, " \t>-*+"), []byte("[^"))
}

// tooMany looks a body over after it has been read.
func tooMany(doc Doc) (source.Finding, bool) {
	switch {
	case len(doc.Remarks) > maxRemarks:
		return tooLong(doc.Body.At(0, 0), "this note has more than 2,000 next-time notes and decisions", "split it into several notes"), true
	case len(doc.Headings) > maxHeadings:
		return tooLong(doc.Body.At(0, 0), "this note has more than 5,000 headings", "split it into several notes"), true
	}
	return source.Finding{}, false
}

// marks counts the quotes and lists a line could open or go on with: the marks
// before its first word, and one for every two columns of indent among them. It
// stops counting where there are too many.
func marks(line []byte) int {
	found, blanks := 0, 0
	for i := 0; i < len(line) && found <= maxMarks; {
		size := 1
		switch c := line[i]; c {
		case ' ':
			blanks++
		case '\t':
			blanks += 4
		case '>':
			found++
		case '-', '*', '+':
			if isRule(line[i:], c) || !isBlankAt(line, i+1) {
				return depth(found, blanks)
			}
			found++
		default:
			for i+size-1 < len(line) && size < 10 && '0' <= line[i+size-1] && line[i+size-1] <= '9' {
				size++
			}
			if mark := i + size - 1; size == 1 || mark >= len(line) || line[mark] != '.' && line[mark] != ')' || !isBlankAt(line, mark+1) {
				return depth(found, blanks)
			}
			found++
		}
		i += size
	}
	return depth(found, blanks)
}

func depth(marks, blanks int) int {
	if marks == 0 {
		return 0
	}
	return marks + max(0, blanks-marks)/2
}

func isBlankAt(line []byte, i int) bool {
	return i >= len(line) || bytes.IndexByte([]byte(" \t\r\n"), line[i]) >= 0
}

// isRule reports whether the rest of a line is a thematic break.
func isRule(line []byte, mark byte) bool {
	return bytes.Count(line, []byte{mark}) >= 3 && len(bytes.Trim(line, string(mark)+" \t\r\n")) == 0
}
