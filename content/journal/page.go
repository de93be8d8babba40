package journal

import (
	"path"
	"strings"

	"hussif/content/edtf"
	"hussif/content/front"
	"hussif/content/prose"
	"hussif/content/source"
)

// An ID names a record of the journal: its path without the ending, or the folder
// of a build, as in "patterns/short-jacket-draft" and "builds/striped-jacket".
type ID string

// Name returns the last part of an ID, which is enough to link to it where no
// other record has the same.
func (id ID) Name() string { return path.Base(string(id)) }

// A Kind is a kind of record.
type Kind string

// The kinds of record. A file's folder tells which it is; `kind:` overrides it.
const (
	KindPerson    Kind = "person"
	KindBuild     Kind = "build"
	KindNote      Kind = "note"
	KindPattern   Kind = "pattern"
	KindReference Kind = "reference"
	KindMaterial  Kind = "material"
	KindTechnique Kind = "technique"
	KindOccasion  Kind = "occasion"
)

// withArticle names one record of the kind: "a person", "an occasion".
func (k Kind) withArticle() string {
	if k == KindOccasion {
		return "an " + string(k)
	}
	return "a " + string(k)
}

// Kinds returns all kinds of record in the order in which pages list them.
func Kinds() []Kind {
	return []Kind{KindBuild, KindNote, KindPerson, KindPattern, KindReference, KindMaterial, KindTechnique, KindOccasion}
}

// folders tells the kind of a file by the folder it lies in. In builds/NAME the
// file build.md is the build and all others are its notes.
var folders = map[string]Kind{
	"people":     KindPerson,
	"builds":     KindBuild,
	"notes":      KindNote,
	"patterns":   KindPattern,
	"references": KindReference,
	"materials":  KindMaterial,
	"techniques": KindTechnique,
	"occasions":  KindOccasion,
}

// A Word is a piece of the maker's text with its place.
type Word struct {
	Text string
	Span source.Span
}

// A Ref is a link to another record, written as its ID or the ID's last part,
// with an anchor after "#" where it means one part of that page.
type Ref struct {
	To     string
	Anchor string
	Span   source.Span
}

// IsZero reports whether no link was written.
func (r Ref) IsZero() bool { return r.To == "" }

// A Page is what all kinds of record have in common.
type Page struct {
	front.Where
	KindName Word     `field:"kind" doc:"what the page is, where its folder does not tell" eg:"note"`
	Title    string   `field:"title" doc:"what the page is called; made from the file's name where not given" eg:"Striped jacket"`
	Tags     []Word   `field:"tags" doc:"words to find the page by" eg:"[market day, 1780s]"`
	Share    Audience `field:"share" tells:"sharing" doc:"who may see the page"`
	Fields   Shares   `field:"share fields" tells:"sharing" doc:"who may see single fields of the page, where those are fewer" eg:"{hours: self, techniques: circle}"`
	Next     []Next   `field:"next time" doc:"what to do otherwise another time" eg:"[cut the sleeve an inch wider]"`

	ID   ID           // computed
	Kind Kind         // computed
	File *source.File // computed
	Text prose.Doc    // computed: what the text below the front matter holds

	Works []Work // computed: the worksheets in the text

	sum   source.Sum // computed: of the file
	stamp source.Sum // computed: of the file as it was when what it says last changed
}

// Head returns the page itself, so that every kind of record is a [Record].
func (p *Page) Head() *Page { return p }

// A Record is anything in the journal that has a page.
type Record interface{ Head() *Page }

// A Next is something to do another time.
type Next struct {
	front.Where `noun:"a next-time note"`
	Do          string `field:"do,needed,short" doc:"what to do" eg:"cut the sleeve an inch wider"`
	About       []Ref  `field:"about" doc:"pages that it is about, of any kind" eg:"[striped-jacket]"`
	Pattern     []Ref  `field:"pattern" to:"pattern" doc:"patterns that it is about" eg:"jacket-draft"`
	Technique   []Ref  `field:"technique" to:"technique" doc:"techniques that it is about" eg:"piping"`
	Material    []Ref  `field:"material" to:"material" doc:"materials that it is about" eg:"striped-linen"`
	Person      []Ref  `field:"person" to:"person" doc:"people that it is about" eg:"wren"`
	Garment     []Word `field:"garment" doc:"kinds of garment that it is about, in a word each" eg:"jacket"`

	Anchor string // computed: names the part of the page that holds it
}

// A SetAside is a next-time note that a build leaves unanswered on purpose.
type SetAside struct {
	front.Where `noun:"a note set aside"`
	Note        Ref    `field:"note,needed,short" doc:"the next-time note, as a link to its page and part" eg:"jacket-draft#next-cut-sleeve-wider"`
	Because     string `field:"because,needed" doc:"why it is left unanswered" eg:"this one has no sleeves"`
}

// titleFromName makes a title of a file's name for a page that has none: hyphens
// become blanks and a leading date is dropped.
func titleFromName(name string) string {
	if day, rest, ok := leadingDay(name); ok {
		if rest == "" {
			return day.String()
		}
		name = rest
	}
	title := strings.Join(strings.FieldsFunc(name, func(r rune) bool { return r == '-' || r == '_' }), " ")
	if title == "" {
		return name
	}
	first := []rune(title)[:1]
	return strings.ToUpper(string(first)) + title[len(string(first)):]
}

// leadingDay reads the date that a note's file name may begin with.
func leadingDay(name string) (day edtf.Day, rest string, ok bool) {
	const layout = len("2006-01-02")
	if len(name) < layout {
		return 0, "", false
	}
	day, err := edtf.ParseDay(name[:layout])
	if err != nil {
		return 0, "", false
	}
	rest = name[layout:]
	if rest != "" && rest[0] != '-' && rest[0] != '_' && rest[0] != ' ' {
		return 0, "", false
	}
	return day, strings.TrimLeft(rest, "-_ "), true
}
