package leaf

import (
	"strings"

	"hussif/content/amend"
	"hussif/content/edtf"
	"hussif/content/front"
	"hussif/content/journal"
)

// A Leaf is a note that is about to be written.
type Leaf struct {
	Journal *journal.Journal
	Build   *journal.Build
	Day     edtf.Day
	Stage   journal.Stage
	Title   string // may be empty
}

// Text returns the whole note.
func (l Leaf) Text() string {
	s := &sheet{Leaf: l}
	s.lines = append(s.lines, "---", "date: "+l.Day.String())
	if l.Title != "" {
		s.lines = append(s.lines, "title: "+amend.Inline(amend.Text(l.Title)))
	}
	s.lines = append(s.lines, "stage: "+string(l.Stage))
	s.ask(`Take the one mark away from each line that you fill in, and write what else there is to tell below.`)
	s.field("hours", front.Node{}, "as in 3.5 or 3h 20m")
	if fill, ok := stages[l.Stage]; ok {
		fill(s)
	}
	s.entries("photos", "as in {file: photos/back.jpg, caption: After letting out, alt: Back view}", group("file", front.Node{}, "caption", front.Node{}, "alt", front.Node{}))
	return strings.Join(append(s.lines, "---", "", ""), "\n")
}

// A sheet is a leaf while it is being filled.
type sheet struct {
	Leaf
	lines []string
}

// widest is how many characters a line of a question has at most.
const widest = 96

// ask puts a question, broken into lines. It has two marks, so that one is left when
// an editor takes the first away from all lines at once.
func (s *sheet) ask(question string) {
	line := "##"
	for _, word := range strings.Fields(question) {
		if len([]rune(line+" "+word)) > widest && line != "##" {
			s.lines = append(s.lines, line)
			line = "##"
		}
		line += " " + word
	}
	s.lines = append(s.lines, line)
}

// field adds a field with one value; an example of others stands behind it.
func (s *sheet) field(name string, value front.Node, example string) {
	s.lines = append(s.lines, strings.TrimRight("# "+name+": "+amend.Inline(value), " ")+remark(example))
}

// entries adds a field with a list; an example stands behind it.
func (s *sheet) entries(name, example string, items ...front.Node) {
	s.lines = append(s.lines, "# "+name+":"+remark(example))
	for _, item := range items {
		s.lines = append(s.lines, "#   - "+amend.Inline(item))
	}
}

// A row is a field of a group, with what is known of it beside it.
type row struct {
	name  string
	known string
}

// rows adds a field with a group, a line for each of its own fields.
func (s *sheet) rows(name string, rows []row) {
	s.lines = append(s.lines, "# "+name+":")
	for _, r := range rows {
		s.lines = append(s.lines, "#   "+amend.Inline(amend.Text(r.name))+":"+remark(r.known))
	}
}

// remark is a comment within a line.
func remark(text string) string {
	if text = oneLine(text); text == "" {
		return ""
	}
	return "   # " + text
}

// oneLine keeps what somebody wrote on a line of its own from leaving the comment
// that it is put in.

func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// group makes a group of names and values in turn.
func group(pairs ...any) front.Node {
	var fields []front.Field
	for i := 0; i+1 < len(pairs); i += 2 {
		f := front.Field{Key: pairs[i].(string)}
		switch v := pairs[i+1].(type) {
		case front.Node:
			f.Value = v
		case string:
			f.Value = amend.Text(v)
		}
		fields = append(fields, f)
	}
	return amend.Group(fields...)
}
