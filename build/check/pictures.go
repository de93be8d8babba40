package check

import (
	"fmt"
	"io/fs"
	"path"
	"strings"

	"hussif/build/photo"
	"hussif/content/journal"
	"hussif/content/near"
	"hussif/content/source"
)

var missingPicture = Rule{
	Name: "missing picture",
	Doc:  "A photo is named that is not in the journal's folder. File names are taken from the folder of the note, with forward slashes.",
	Bad: `
-- notes/2026-03-01.md --
---
photos:
  - {file: photos/bakc.png, alt: The back}
---
-- notes/photos/back.png --
`,
	Good: `
-- notes/2026-03-01.md --
No photos yet.
`,
	Run: func(p *Pass) {
		p.pictures(func(pic picture) {
			if p.Journal.Holds(pic.path) {
				return
			}
			if p.outside(pic) {
				return
			}
			f := p.Report(pic.at, source.Error, "there is no file %s", pic.path)
			var names []string
			for _, name := range p.Journal.FilesIn(path.Dir(pic.path)) {
				if path.Ext(name) != ".md" {
					names = append(names, strings.TrimPrefix(path.Join(path.Dir(pic.path), name), pic.folder+"/"))
				}
			}
			if f.Instead = near.Of(pic.written, names); len(f.Instead) == 0 {
				f.Help = "put the picture there, or leave its line out"
			}
		})
	},
}

// outside reports a picture whose name leads out of the journal or is written as
// another system writes names, and says whether it was one.
func (p *Pass) outside(pic picture) bool {
	slashed := strings.ReplaceAll(pic.written, `\\`, "/")
	switch {
	case strings.Contains(pic.written, "://"):
		p.Report(pic.at, source.Error, "a picture on the web is not shown: a site must open without the network").
			Help = "put a copy in the note's folder"
	case path.IsAbs(slashed), len(slashed) > 1 && slashed[1] == ':', !fs.ValidPath(pic.path):
		p.Report(pic.at, source.Error, "this picture lies outside the journal").Help = "put a copy in the note's folder"
	case slashed != pic.written:
		f := p.Report(pic.at, source.Error, "names of files are written with forward slashes")
		f.Instead = []string{slashed}
	default:
		return false
	}
	return true
}

var badPicture = Rule{
	Name: "bad picture",
	Doc:  "A picture cannot be used: it is of a kind that browsers or this program do not show, damaged, cut short, or far too large.",
	Bad: `
-- notes/2026-03-01.md --
---
photos:
  - {file: back.jpg, alt: The back}
---
-- notes/back.jpg --
This is no picture.
`,
	Good: `
-- notes/2026-03-01.md --
No photos yet.
`,
	Run: func(p *Pass) {
		looked := make(map[string]*photo.Fault)
		p.pictures(func(pic picture) {
			if !p.Journal.Holds(pic.path) {
				return
			}
			fault, ok := looked[pic.path]
			if !ok {
				fault = p.look(pic.path)
				looked[pic.path] = fault
			}
			if fault != nil {
				*p.found = append(*p.found, BadPicture(pic.at, fault))
			}
		})
	},
}

func (p *Pass) look(name string) *photo.Fault {
	_, fault, err := photo.Look(p.Files, name)
	if err != nil {
		return &photo.Fault{Reason: fmt.Sprintf("%s cannot be read: %v", name, err)}
	}
	return fault
}

// BadPicture is the finding for a picture that cannot be used. Some faults show
// only when a picture is made ready for the site.
func BadPicture(at source.Span, fault *photo.Fault) source.Finding {
	f := source.Found(at, source.Error, "bad picture", "%s", fault.Reason)
	written := strings.Trim(at.Text(), `"'`)
	for _, name := range fault.Instead {
		// The fault names the file from the journal's folder, the maker from her own.
		if name = path.Join(path.Dir(written), path.Base(name)); name != written {
			f.Instead = append(f.Instead, name)
		}
	}
	return f
}

var noAltText = Rule{
	Name: "no words for a picture",
	Doc:  "A photo has neither `alt` nor a caption, so a reader who cannot see it learns nothing from it.",
	Bad: `
-- notes/2026-03-01.md --
---
photos: [back.png]
---
-- notes/back.png --
`,
	Good: `
-- notes/2026-03-01.md --
---
photos:
  - {file: back.png, alt: Back view; the side seams hang straight}
---
-- notes/back.png --
`,
	Run: func(p *Pass) {
		p.pictures(func(pic picture) {
			if p.Journal.Holds(pic.path) && !pic.words {
				f := p.Report(pic.at, source.Hint, "nothing says what this picture shows")
				f.Help = "add `alt: ...`, in a few words"
			}
		})
	},
}

// A picture is one that the journal shows.
type picture struct {
	path    string // from the journal's folder
	written string
	folder  string // of the file that shows it
	at      source.Span
	words   bool // whether anything says what it shows
}

func (p *Pass) pictures(visit func(picture)) {
	for _, r := range p.Journal.Records() {
		if p.Journal.Faulty(r) {
			continue
		}
		for _, pic := range journal.Pictures(r) {
			visit(picture{
				path: pic.Path, written: pic.Written, folder: path.Dir(r.Head().File.Name),
				at: pic.Span, words: pic.Alt != "" || pic.Caption != "",
			})
		}
	}
}
