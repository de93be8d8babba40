package journal

import (
	"path"
	"slices"
	"strings"

	"hussif/content/source"
)

// A Question is something that was asked of a journal, or of what was worked out
// from one, and whose answer another state of the journal may change.
type Question struct {
	About Aspect
	Of    string // the ID, name, kind or path that was asked about
}

// An Aspect is what a [Question] is about. Packages that answer from a journal add
// aspects of their own.
type Aspect string

// The aspects of a journal.
const (
	Facts   Aspect = "facts"   // what a record holds; of a build, with its notes
	Named   Aspect = "named"   // what a record is called: its kind, its title and the names of its parts
	Text    Aspect = "text"    // the words of one record's text
	Called  Aspect = "called"  // which records have a name, in lower case
	Linking Aspect = "linking" // which records link to one, by which fields
	Shelved Aspect = "shelved" // which records of a kind there are, and their facts
	Present Aspect = "present" // whether the journal's folder holds a file
	Within  Aspect = "within"  // which files one folder holds
	All     Aspect = "all"     // anything at all
)

// A Trace writes down what was asked of a journal, so that what was made from the
// answers can be kept until one of them changes. It is for one goroutine. What a
// nil Trace is told it forgets.
type Trace struct {
	asked map[Question]struct{}
}

// NewTrace returns an empty trace.
func NewTrace() *Trace { return &Trace{asked: make(map[Question]struct{})} }

// Ask writes a question down.
func (t *Trace) Ask(about Aspect, of string) {
	if t != nil {
		t.asked[Question{about, of}] = struct{}{}
	}
}

// Record writes down that a record was looked at. The notes of a build are part of
// it, since each leads to the others.
func (t *Trace) Record(r Record) {
	if t != nil {
		t.Ask(Facts, string(Family(r)))
	}
}

// Add writes down again what another trace holds.
func (t *Trace) Add(questions []Question) {
	if t != nil {
		for _, q := range questions {
			t.asked[q] = struct{}{}
		}
	}
}

// Questions returns what was written down, in no order.
func (t *Trace) Questions() []Question {
	out := make([]Question, 0, len(t.asked))
	for q := range t.asked {
		out = append(out, q)
	}
	return out
}

// Family returns the ID of the build that a note belongs to, and any other
// record's own.
func Family(r Record) ID {
	if n, ok := r.(*Note); ok && n.Of != nil {
		return n.Of.ID
	}
	return r.Head().ID
}

// Traced returns the same journal, of which all that is read is written down in t.
// A record that is read leads to its build and its build's notes; all others are
// asked of the journal.
func (j *Journal) Traced(t *Trace) *Journal {
	traced := *j
	traced.trace = t
	return &traced
}

func (j *Journal) shelf(k Kind) { j.trace.Ask(Shelved, string(k)) }

// People returns all people by ID.
func (j *Journal) People() []*Person { j.shelf(KindPerson); return j.people }

// Builds returns all builds by ID.
func (j *Journal) Builds() []*Build { j.shelf(KindBuild); return j.builds }

// Notes returns all notes, oldest first.
func (j *Journal) Notes() []*Note { j.shelf(KindNote); return j.notes }

// Patterns returns all patterns by ID.
func (j *Journal) Patterns() []*Pattern { j.shelf(KindPattern); return j.patterns }

// References returns all references by ID.
func (j *Journal) References() []*Reference { j.shelf(KindReference); return j.references }

// Materials returns all materials by ID.
func (j *Journal) Materials() []*Material { j.shelf(KindMaterial); return j.materials }

// Techniques returns all techniques by ID.
func (j *Journal) Techniques() []*Technique { j.shelf(KindTechnique); return j.techniques }

// Occasions returns all occasions by date.
func (j *Journal) Occasions() []*Occasion { j.shelf(KindOccasion); return j.occasions }

// Records returns all records in the order of their IDs.
func (j *Journal) Records() []Record { j.trace.Ask(All, ""); return j.records }

// Holds reports whether the journal's folder holds a file.
func (j *Journal) Holds(file string) bool {
	j.trace.Ask(Present, file)
	_, ok := j.files[file]
	return ok
}

// Entry returns a file of the journal's folder, for who has asked whether that holds it.
func (j *Journal) Entry(file string) source.Entry { return j.files[file] }

// FilesIn returns the names of the files in one folder of the journal, in order.
func (j *Journal) FilesIn(folder string) []string {
	j.trace.Ask(Within, folder)
	var names []string
	for name := range j.files {
		if path.Dir(name) == folder {
			names = append(names, path.Base(name))
		}
	}
	slices.Sort(names)
	return names
}

// asked writes down that a name was looked up, and what is asked of that which it
// leads to: its facts, or only what it is called.
func (j *Journal) asked(key string, found []Record, about Aspect) {
	if j.trace == nil {
		return
	}
	j.trace.Ask(Called, key[strings.LastIndexByte(key, '/')+1:])
	for _, r := range found {
		if about == Named {
			j.trace.Ask(Named, string(r.Head().ID))
		} else {
			j.trace.Record(r)
		}
	}
}
