package theme

import (
	"cmp"
	"fmt"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/util"

	"hussif/content/prose"
)

// A Linker knows where the pages and pictures of the site are. Addresses it
// returns are printed as they are, but for the escapes of HTML.
type Linker interface {
	// Tie returns the address of a tie or a relative link, and words for one to
	// which its maker gave none. It is asked for the values of a remark's tail
	// too, as ties. Where there is no such page, ok is false.
	Tie(prose.Link) (href, text string, ok bool)

	// Picture returns the picture of the site made from one of the journal.
	Picture(prose.Picture) (Photo, bool)

	// Worksheet returns a worksheet of this page, worked out.
	Worksheet(prose.Work) (Worksheet, bool)

	// Answer says what became of the remark of this page that has an anchor, and
	// where: "carried into". Words are empty where nothing has.
	Answer(anchor string) (words string, link Link)
}

// A linkWriter is one body while its links and pictures are filled in.
type linkWriter struct {
	hypertext
	linker  Linker
	linkEnd string // the tag that ends the link we are in
}

func printLink(p *proseWriter, _ []byte, n ast.Node, entering bool) ast.WalkStatus {
	if !entering {
		p.later((*linkWriter).endLink)
		return ast.WalkContinue
	}
	link, worded := n.(*prose.LinkNode).Link, n.HasChildren()
	p.later(func(w *linkWriter) { w.openLink(link, worded) })
	return ast.WalkContinue
}

// openLink prints the start of a link, and its words where the tree has none.
func (w *linkWriter) openLink(link prose.Link, worded bool) {
	words := cmp.Or(link.Text, link.To, link.Anchor)
	switch link.Form {
	case prose.Tie, prose.Relative:
		href, title, ok := w.linker.Tie(link)
		if link.Text == "" {
			words = cmp.Or(title, words)
		}
		if !ok {
			w.WriteString(`<span class="broken">`)
			w.linkEnd = "</span>"
			break
		}
		w.startLink(href, link.Title, "")
	case prose.Outside:
		w.startOutside(link.To, link.Title)
	}
	if !worded {
		w.text(words)
	}
}

func (w *linkWriter) startLink(href, title, rel string) {
	w.WriteString(`<a href="`)
	w.text(href)
	w.WriteByte('"')
	w.attr("title", title)
	w.attr("rel", rel)
	w.WriteByte('>')
	w.linkEnd = "</a>"
}

func (w *linkWriter) startOutside(address, title string) {
	w.startLink(string(util.URLEscape([]byte(address), false)), title, "noreferrer noopener")
}

// answer prints what became of a remark, where something did.
func (w *linkWriter) answer(anchor string) {
	words, link := w.linker.Answer(anchor)
	if words == "" {
		return
	}
	var p printer
	p.WriteString(` <small class="aside answer">`)
	p.figures(words)
	p.WriteByte(' ')
	p.link(link)
	p.WriteString("</small>")
	w.WriteString(p.String())
}

func (w *linkWriter) endLink() {
	w.WriteString(w.linkEnd)
	w.linkEnd = ""
}

func printPicture(p *proseWriter, _ []byte, n ast.Node, entering bool) ast.WalkStatus {
	if entering {
		picture := n.(*prose.PictureNode).Picture
		p.later(func(w *linkWriter) { w.picture(picture) })
	}
	return ast.WalkContinue
}

// picture prints a picture of the journal inside a link to its full size. One from
// elsewhere is never loaded: a link to it stands in its place.
func (w *linkWriter) picture(picture prose.Picture) {
	words := cmp.Or(picture.Alt, picture.To)
	linked := w.linkEnd == "</a>" // links do not nest
	switch picture.Form {
	case prose.Relative:
		if photo, ok := w.linker.Picture(picture); ok {
			w.photo(photo, linked)
			break
		}
		w.WriteString(`<span class="broken">`)
		w.text(words)
		w.WriteString("</span>")
	case prose.Outside:
		if linked {
			w.text(words)
			break
		}
		w.startOutside(picture.To, picture.Title)
		w.text(words)
		w.endLink()
	default:
		w.text(words)
	}
}

func (w *linkWriter) photo(photo Photo, linked bool) {
	if linked = linked || photo.Full == ""; !linked {
		w.WriteString("<a")
		w.attr("href", photo.Full)
		if photo.Alt == "" {
			w.attr("aria-label", "the picture in full")
		}
		w.WriteByte('>')
	}
	w.WriteString("<img")
	w.attr("src", photo.Src)
	w.attr("srcset", photo.Srcset)
	w.attr("sizes", photo.Sizes)
	if photo.Width > 0 && photo.Height > 0 {
		fmt.Fprintf(w, ` width="%d" height="%d"`, photo.Width, photo.Height)
	}
	w.WriteString(` alt="`) // also where it is empty: the picture says nothing then
	w.text(photo.Alt)
	w.WriteByte('"')
	w.attr("title", photo.Title)
	w.WriteString(` loading="lazy" decoding="async">`)
	if !linked {
		w.WriteString("</a>")
	}
}

// about prints what a remark is about, a word for each kind of thing before its
// values.
func (w *linkWriter) about(all []prose.About) {
	w.WriteString(`<p class="about">`)
	for i, a := range all {
		switch {
		case i > 0 && a.Key == all[i-1].Key:
			w.WriteString(", ")
		case i > 0:
			w.WriteString("; ")
			fallthrough
		default:
			w.WriteString(a.Key + ": ")
		}
		// Not every value has a page: a kind of garment need not.
		href, title, ok := w.linker.Tie(prose.Link{To: a.Value, Form: prose.Tie, Span: a.Span})
		if ok {
			w.startLink(href, "", "")
		}
		w.text(cmp.Or(title, a.Value))
		w.endLink()
	}
	w.WriteString("</p>\n")
}
