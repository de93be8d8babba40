// Package generate writes a large journal for tests and benchmarks: as many notes
// as are asked for, with all that hangs on them. It answers how the program
// behaves after decades of sewing.
//
// A note is about 1.8 kB long. Twenty make a build; four builds share a wearer and
// a pattern. Notes link to each other, to patterns, references, materials and
// techniques; they measure, alter, decide, buy and use, and say what to do next
// time. What the tape finds is what the alterations before it lead to expect, so
// that checking such a journal finds no fault in it.
package generate

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing/fstest"

	"hussif/content/edtf"
)

const (
	notesOfBuild   = 20
	buildsOfWearer = 4
	bodyLength     = 1500 // bytes; the front matter makes up the rest of 1.8 kB
)

// Journal returns the files of a journal with so many notes. The same number and
// seed give the same files.
func Journal(notes int, seed uint64) fstest.MapFS {
	w := &writer{files: fstest.MapFS{}, random: rand.New(rand.NewPCG(seed, uint64(notes)))}
	w.builds = (notes + notesOfBuild - 1) / notesOfBuild
	w.add("journal.yaml", "title: The Long Bench\nunit: in\ncurrency: EUR\n")
	for i := range w.builds {
		if i%buildsOfWearer == 0 {
			w.person(i / buildsOfWearer)
			w.pattern(i / buildsOfWearer)
		}
		w.reference(i)
		w.material(i)
		w.build(i, min(notesOfBuild, notes-i*notesOfBuild))
	}
	for i, name := range techniques {
		w.add("techniques/"+name+".md", fmt.Sprintf("---\nera: 17%d0s\ntools: [needle, awl]\n---\n%s\n", i+4, w.prose(400)))
	}
	for i := range w.builds/10 + 1 {
		w.add(fmt.Sprintf("occasions/fair-%d.md", i), fmt.Sprintf("---\ndate: %s\n---\n%s\n", firstDay+edtf.Day(30*i), w.prose(200)))
	}
	return w.files
}

var (
	firstDay   = edtf.DayOf(2001, 1, 6)
	techniques = []string{"backstitching", "piping", "gauging", "felling", "boning"}
	garments   = []string{"jacket", "gown", "waistcoat", "stays"}
	features   = []string{"piped armhole", "long sleeve", "pointed waist", "turned-back cuff", "back lacing", "shoulder strap"}
)

type writer struct {
	files  fstest.MapFS
	random *rand.Rand
	builds int
}

func (w *writer) add(name, text string) { w.files[name] = &fstest.MapFile{Data: []byte(text)} }

func (w *writer) one(of []string) string { return of[w.random.IntN(len(of))] }

// prose returns some sentences.
func (w *writer) prose(length int) string {
	var b strings.Builder
	for b.Len() < length {
		fmt.Fprintf(&b, "%s the %s %s until the %s lay flat. ", w.one(verbs), w.one(things), w.one(hows), w.one(things))
	}
	return b.String()
}

var (
	verbs  = []string{"Basted", "Unpicked", "Pressed", "Felled", "Pinned", "Whipped", "Eased", "Matched", "Turned", "Trimmed"}
	things = []string{"left side", "lining", "sleeve head", "waist seam", "stripe", "collar", "back", "hem", "facing", "strap"}
	hows   = []string{"twice", "from the wrong side", "with a linen thread", "by daylight", "over the knee", "in small stitches", "again"}
)

// eighths writes a length in inches.
func eighths(n int) string {
	switch whole, rest := n/8, n%8; {
	case rest == 0:
		return fmt.Sprintf("%d in", whole)
	case whole == 0:
		return fmt.Sprintf("%d/8 in", rest)
	default:
		return fmt.Sprintf("%d %d/8 in", whole, rest)
	}
}

func wearer(i int) string   { return fmt.Sprintf("wearer-%d", i) }
func pattern(i int) string  { return fmt.Sprintf("draft-%d", i) }
func material(i int) string { return fmt.Sprintf("cloth-%d", i) }
func named(i int) string    { return fmt.Sprintf("%s-%d", garments[i%len(garments)], i) }

func (w *writer) person(i int) {
	var b strings.Builder
	b.WriteString("---\nmeasured:\n")
	for session := range 5 {
		fmt.Fprintf(&b, "  - {date: %s, over: [shift, stays], bust girth: %s, waist: %s, upper arm girth: %s}\n",
			firstDay+edtf.Day(365*session), eighths(288+session), eighths(224+session), eighths(92+session))
	}
	fmt.Fprintf(&b, "---\n%s\n", w.prose(300))
	w.add("people/"+wearer(i)+".md", b.String())
}

func (w *writer) pattern(i int) {
	w.add("patterns/"+pattern(i)+".md", fmt.Sprintf("---\ngarment: %s\nera: 178X\nafter: plate-%d\n---\n## Cutting\n%s\n",
		garments[i%len(garments)], i*buildsOfWearer, w.prose(500)))
}

func (w *writer) reference(i int) {
	w.add(fmt.Sprintf("references/plate-%d.md", i), fmt.Sprintf("---\ntype: fashion plate\ndate: %d\nshows: [%s]\nlacks: [%s]\n---\n%s\n",
		1770+i%30, features[i%len(features)], features[(i+1)%len(features)], w.prose(500)))
}

func (w *writer) material(i int) {
	w.add("materials/"+material(i)+".md", fmt.Sprintf("---\nwhat: cloth\nfibre: linen\nwidth: 58 in\n---\n%s\n", w.prose(200)))
}

func (w *writer) build(i, notes int) {
	var b strings.Builder
	fmt.Fprintf(&b, "---\nfor: %s\ngarment: %s\nera: 1780/1789\npattern: %s\ntechniques: [%s]\n",
		wearer(i/buildsOfWearer), garments[i%len(garments)], pattern(i/buildsOfWearer), w.one(techniques))
	if i > 0 && i%3 == 0 {
		fmt.Fprintf(&b, "remakes: %s\n", named(i-1))
	}
	fmt.Fprintf(&b, `over: [shift, stays]
planned: {hours: 45, cost: 80}
fit:
  bust girth: {ease: 0 to 1 in}
  waist: {ease: 0 in, accepts: ample}
  upper arm girth: {ease: 1 to 2 in}
seams:
  - name: side
    count: 2
    joins: [back, front]
    crosses:
      bust girth: {now: 2 in, keep: 1/4 in}
      waist: {now: 2 in, keep: 1/4 in, at: 7 1/2 in}
    caught by: [armhole]
  - {name: sleeve, count: 2, joins: [sleeve], crosses: {upper arm girth: 5/8 in}, caught by: [armhole]}
  - {name: armhole, count: 2, joins: [sleeve, back, front], length: 17 in, piped: yes}
pieces: [back, front, {name: sleeve, cut: 2, grain: bias}]
features:
  - {what: %s, rests on: [plate-%d]}
needs:
  - {material: %s, amount: 2 1/4 yd}
---
%s
`, features[i%len(features)], i, material(i), w.prose(600))
	w.add("builds/"+named(i)+"/build.md", b.String())
	w.notes(i, notes)
}

// notes writes a build's notes, one a week, and keeps the ledger right.
func (w *writer) notes(build, count int) {
	stages := []string{"planning", "cutting", "sewing", "fitting", "altering", "worn"}
	bust, allowance := 280+w.random.IntN(12), 16
	for n := range count {
		day := firstDay + edtf.Day(7*(build*notesOfBuild/10+n))
		var b strings.Builder
		fmt.Fprintf(&b, "---\ndate: %s\nstage: %s\nhours: %d.5\n", day, stages[n*len(stages)/notesOfBuild], 1+w.random.IntN(5))
		switch n % 5 {
		case 0:
			fmt.Fprintf(&b, "bought:\n  - {material: %s, amount: %d yd, cost: %d EUR}\n", material(build), 2+n%3, 8+n)
		case 1:
			fmt.Fprintf(&b, "used:\n  - {material: %s, amount: 1 yd}\n", material(build))
		case 2:
			fmt.Fprintf(&b, "measured:\n  bust girth: %s\n  upper arm girth: 12 in\n", eighths(bust))
			fmt.Fprintf(&b, "altered:\n  - {seam: side, at: bust girth, was: %s, now: %s}\n", eighths(allowance), eighths(allowance-1))
			bust, allowance = bust+4, allowance-1 // two edges of each of two seams
		case 3:
			fmt.Fprintf(&b, "decided:\n  - question: \"Which %s?\"\n    chose: the older one\n    because: it lies flat\n    rests on: [plate-%d]\n",
				w.one(things), w.random.IntN(w.builds))
		case 4:
			fmt.Fprintf(&b, "next time:\n  - {do: cut the %s wider, pattern: %s}\n", w.one(things), pattern(build/buildsOfWearer))
		}
		fmt.Fprintf(&b, "---\n## The %s\n\n%s\n\n", w.one(things), w.prose(bodyLength/2))
		fmt.Fprintf(&b, "As in [[%s]], by [[%s]] and [the build](build.md).\n\n- %s\n- %s\n\n",
			named(w.random.IntN(w.builds)), w.one(techniques), w.prose(100), w.prose(100))
		fmt.Fprintf(&b, "%s\n\nNext time: press the %s first. (technique: %s)\n", w.prose(bodyLength/3), w.one(things), w.one(techniques))
		w.add(fmt.Sprintf("builds/%s/%s.md", named(build), day), b.String())
	}
}
