package citation

import (
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/testdata/demo"
)

func reference(t testing.TB, title, date string) *journal.Reference {
	t.Helper()
	r := &journal.Reference{Page: journal.Page{Title: title}}
	if date != "" {
		d, err := edtf.Read(date, edtf.Customs{})
		if err != nil {
			t.Fatal(err)
		}
		r.Date = d
	}
	return r
}

func TestCite(t *testing.T) {
	for _, c := range []struct {
		name  string
		title string
		date  string
		more  func(*journal.Reference)
		want  string
	}{
		{"everything", "Riding jacket", "ca. 1785", func(r *journal.Reference) {
			r.Creator, r.Type, r.Holder, r.Accession = "J. Thimble", "surviving garment", "a town's attic", "CC 1.2"
			r.Publisher, r.Address = "printed for the author", "https://attic.example/1.2"
		}, "J. Thimble. Riding jacket (ca. 1785). Surviving garment. A town's attic, accession number CC 1.2. Printed for the author. https://attic.example/1.2"},
		{"a title only", "Riding jacket", "", func(*journal.Reference) {}, "Riding jacket."},
		{"a date only", "", "1785", func(*journal.Reference) {}, "(1785)."},
		{"a maker and a date", "", "1785", func(r *journal.Reference) { r.Creator = "J. Thimble" }, "J. Thimble. (1785)."},
		{"a number without a holder", "Cap", "", func(r *journal.Reference) { r.Accession = "17" }, "Cap. Accession number 17."},
		{"a holder without a number", "Cap", "1786-10", func(r *journal.Reference) { r.Holder = "an attic" }, "Cap (October 1786). An attic."},
		{"an address only", "", "", func(r *journal.Reference) { r.Address = "http://attic.example/" }, "http://attic.example/"},
		{"a title that asks", "What is worn?", "", func(r *journal.Reference) { r.Publisher = `the "Post."` }, `What is worn? The "Post."`},
		{"a title that asks, with a date", "What is worn?", "1912", func(*journal.Reference) {}, "What is worn? (1912)."},
		{"punctuation that waits for more", " Cap,\n of  linen; ", "", func(r *journal.Reference) { r.Holder = "," }, "Cap, of linen."},
		{"initials", "Cap", "", func(r *journal.Reference) { r.Creator = "Thimble, J." }, "Thimble, J. Cap."},
		{"a number with a dot at its end", "Cap", "", func(r *journal.Reference) { r.Holder, r.Accession = "An attic", "1." }, "Cap. An attic, accession number 1."},
		{"a capital with an accent", "élan", "", func(*journal.Reference) {}, "Élan."},
		{"nothing", "", "", func(*journal.Reference) {}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := reference(t, c.title, c.date)
			c.more(r)
			if got := Cite(r); got != c.want {
				t.Errorf("%q, want %q", got, c.want)
			}
		})
	}
}

// A caption keeps the maker's words, EDTF is said in words.
func TestCitedDates(t *testing.T) {
	for written, want := range map[string]string{
		"ca. 1785": "(ca. 1785)", "c1785": "(c1785)", "late 18th century": "(late 18th century)", "1911 or 1912": "(1911 or 1912)",
		"1785": "(1785)", "178X": "(1780s)", "1784~": "(about 1784)", "1780/1789": "(1780 to 1789)", "1786-10": "(October 1786)",
	} {
		if got := Cite(reference(t, "Cap", written)); got != "Cap "+want+"." {
			t.Errorf("%s: %q, want %s", written, got, want)
		}
	}
}

var dangling = regexp.MustCompile(`^[.,; )]|[(][)]|[,;:]$|[,;:(] *[.,;)]|[.]{2}|  |, $`)

// Whatever is missing, each element that is there stands in the citation once, in
// order, and no punctuation is left over.
func TestNoPunctuationDangles(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 8))
	for what := range 1 << 8 {
		r := reference(t, "", "")
		var want []Element
		has := func(i int, e Element, put func()) {
			if what>>i&1 == 1 {
				put()
				want = append(want, e)
			}
		}
		text := func() string { return []string{"one", "two words.", "three?", "four (4)", "five, "}[random.IntN(5)] }
		has(0, Creator, func() { r.Creator = text() })
		has(1, Title, func() { r.Title = text() })
		has(2, Date, func() { r.Date = reference(t, "", "ca. 1785").Date })
		has(3, Type, func() { r.Type = "print" })
		has(4, Holder, func() { r.Holder = text() })
		has(5, Accession, func() { r.Accession = text() })
		has(6, Publisher, func() { r.Publisher = text() })
		has(7, Address, func() { r.Address = "https://attic.example/" })
		var got []Element
		for _, p := range Parts(r) {
			if p.Element != "" {
				got = append(got, p.Element)
			}
		}
		if len(got) != len(want) {
			t.Fatalf("elements %q, want %q", got, want)
		}
		for i := range got {
			if got[i] != want[i] {
				t.Errorf("elements %q, want %q", got, want)
			}
		}
		if cited := Cite(r); dangling.MatchString(cited) {
			t.Errorf("%q", cited)
		}
	}
}

func TestDemo(t *testing.T) {
	j, _, err := journal.Open(demo.Journal())
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{
		"moss-green-jacket":      "Moss green jacket with piped back (ca. 1785). Surviving garment. A county costume collection, accession number CC.1931.14.",
		"cutting-book-1789":      "A cutter's pocket book (1789). Cutting manual. The library of a drapers' guild. Printed for the author.",
		"portrait-with-a-basket": "An itinerant painter, unnamed. Portrait of a woman with a basket (1780s). Portrait. A town council's parlour.",
	}
	for _, r := range j.References() {
		cited := Cite(r)
		if w := want[r.ID.Name()]; w != "" && cited != w {
			t.Errorf("%q, want %q", cited, w)
		}
		for _, part := range []string{r.Title, r.Holder, r.Accession} {
			if !strings.Contains(cited, part) {
				t.Errorf("%q does not name %q", cited, part)
			}
		}
	}
	if len(j.References()) < len(want) {
		t.Errorf("the demo has %d references", len(j.References()))
	}
}
