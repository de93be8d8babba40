package theme

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"hussif/theme/browsertest"
)

func TestShortFormIsPlainText(t *testing.T) {
	d := Documentation{Short: []Fact{
		{Name: "Hours", Value: "41 1/2"},
		{Name: "Pattern", Value: "unseen", Links: []Link{{Href: "a.html", Text: "Short jacket draft", Note: "2 builds"}, link("b.html", "Sleeve draft")}},
	}}
	if got, want := d.ShortForm(), "Hours: 41 1/2\nPattern: Short jacket draft, Sleeve draft"; got != want {
		t.Errorf("the short form is %q, want %q", got, want)
	}
	if got := (Documentation{}).ShortForm(); got != "" {
		t.Errorf("of nothing, the short form is %q", got)
	}
}

// What goes to a show has each choice and source, and nothing that is for the
// maker alone.
func TestDocumentationOnPaper(t *testing.T) {
	b := browsertest.Open(t)
	b.Visit(browsertest.File(t, hang(t)+"/builds/striped-jacket/documentation.html"), 1280, false)
	paper := strings.Join(strings.Fields(strings.Join(leaves(t, b.Print(chromedp.PaperA4)), " ")), " ")
	d := dossier()
	for _, claim := range d.Claims {
		if !strings.Contains(paper, claim.Words) {
			t.Errorf("the paper has no %q", claim.Words)
		}
	}
	for _, source := range d.Sources {
		if !strings.Contains(paper, source.Citation) || !strings.Contains(paper, source.Address) {
			t.Errorf("the paper has no %q at %q", source.Citation, source.Address)
		}
	}
	for _, unprinted := range []string{"Short form", d.Short[0].Value, "Not known", d.Empty[0], "Techniques"} {
		if strings.Contains(paper, unprinted) {
			t.Errorf("the paper has %q", unprinted)
		}
	}
}
