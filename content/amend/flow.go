package amend

import (
	"bytes"

	"hussif/content/front"
)

// beforeBracket puts text before the bracket that closes a list or group, after a
// comma where that is needed.
func (p page) beforeBracket(n front.Node, text string) [][]edit {
	at, ok := closing(p.file.Data, n.Span.Start)
	if !ok {
		return nil
	}
	if len(n.Items)+len(n.Fields) == 0 {
		return [][]edit{{{at, text}}}
	}
	return [][]edit{{{at, ", " + text}}, {{at, text}}}
}

// afterColon puts text after the colon of a key in brackets that has no value.
func (p page) afterColon(f front.Field, text string) [][]edit {
	i := bytes.IndexByte(p.file.Data[f.KeySpan.End:], ':')
	if i < 0 {
		return nil
	}
	return [][]edit{{{f.KeySpan.End + i + 1, text}}}
}

// roundGroup makes a list of a single group in brackets and the entry.
func (p page) roundGroup(n front.Node, entry front.Node) [][]edit {
	at, ok := closing(p.file.Data, n.Span.Start)
	if !ok {
		return nil
	}
	return [][]edit{{{n.Span.Start, "["}, {at + 1, ", " + flowText(entry) + "]"}}}
}

// inBrackets puts an entry at the end of a list in brackets: on a line of its own
// where the last one is, and behind a comment that belongs to that.
func (p page) inBrackets(list front.Node, entry front.Node) [][]edit {
	text := flowText(entry)
	if len(list.Items) == 0 {
		return [][]edit{{{list.Span.Start + 1, text}}}
	}
	last := list.Items[len(list.Items)-1]
	ways := p.beforeBracket(list, text)
	if last.Kind != front.Map || !p.isFlow(last) {
		return ways
	}
	closed, ok := closing(p.file.Data, last.Span.Start)
	if !ok {
		return ways
	}
	start := p.lineStart(last.Span.Start)
	indent := p.file.Data[start:last.Span.Start]
	end := p.nextLine(closed) // the line end is kept before what is put in
	if len(bytes.TrimLeft(indent, " ")) > 0 || bytes.ContainsAny(rest(p.file.Data[closed+1:end]), "]") {
		return append([][]edit{{{closed + 1, ", " + text}}}, ways...)
	}
	line := string(indent) + text
	return append([][]edit{
		{{closed + 1, ","}, {end, line + p.lineEnd(end)}},
		{{end, line + "," + p.lineEnd(end)}},
	}, ways...)
}

// rest returns what stands on a line before its comment.
func rest(line []byte) []byte {
	if i := bytes.IndexByte(line, '#'); i >= 0 {
		return line[:i]
	}
	return line
}

// closing returns where the bracket at an offset is closed. A quotation mark opens
// a text only where a value can begin: in the midst of one, as in tailor's tack, it
// is a letter.
func closing(data []byte, open int) (int, bool) {
	depth, begins, quoted := 0, true, -1
	for i := open; i < len(data); i++ {
		switch c := data[i]; c {
		case '[', '{':
			depth++
			begins = true
		case ']', '}':
			if depth--; depth == 0 {
				return i, true
			}
			begins = false
		case ',':
			begins = true
		case ':':
			begins = quoted == i-1 || i+1 < len(data) && bytes.IndexByte([]byte(" \t\r\n"), data[i+1]) >= 0
		case '\'', '"':
			if begins {
				i = unquote(data, i)
				quoted = i
			}
			begins = false
		case '#':
			if bytes.IndexByte([]byte(" \t\n"), data[i-1]) >= 0 {
				for i+1 < len(data) && data[i+1] != '\n' {
					i++
				}
			}
		case ' ', '\t', '\r', '\n':
		default:
			begins = false
		}
	}
	return 0, false
}

// unquote returns where the quotation mark at an offset has its partner, or the end
// of the data where it has none.
func unquote(data []byte, at int) int {
	mark := data[at]
	for i := at + 1; i < len(data); i++ {
		switch {
		case mark == '"' && data[i] == '\\':
			i++
		case mark == '\'' && data[i] == mark && i+1 < len(data) && data[i+1] == mark:
			i++
		case data[i] == mark:
			return i
		}
	}
	return len(data)
}
