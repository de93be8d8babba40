package circle_test

import (
	"bytes"
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"hussif/build/audience"
	"hussif/build/circle"
	"hussif/build/output"
	"hussif/build/photo"
	"hussif/build/photo/phototest"
	"hussif/build/site"
	"hussif/build/site/sitetest"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/journal/journaltest"
	"hussif/content/source"
	"hussif/testdata/demo"
)

var today = edtf.DayOf(2026, 11, 30)

func TestMain(m *testing.M) { sitetest.Main(m) }

// share makes the site of a journal for the circle, in a new folder.
func share(t testing.TB, files fs.FS) string {
	t.Helper()
	j, findings, err := journal.Open(files)
	if err != nil {
		t.Fatal(err)
	}
	if source.Count(findings, source.Error) > 0 {
		source.Print(os.Stderr, findings, source.Palette{})
		t.Fatal("the journal has errors")
	}
	seen, err := audience.For(j, journal.Circle, today)
	if err != nil {
		t.Fatal(err)
	}
	out := filepath.Join(t.TempDir(), "site")
	if _, faults, err := site.Make(context.Background(), site.Order{
		Journal: seen.Journal, Files: files, Today: today, For: journal.Circle, Fits: seen.Fits, Out: out, Photos: &photo.Darkroom{Store: sitetest.Store(t)},
	}); err != nil || len(faults) > 0 {
		t.Fatal(err, faults)
	}
	return out
}

// journals returns the journals of testdata/members.txtar by their maker, with the
// picture that one of them shows.
func journals(t testing.TB) map[string]fstest.MapFS {
	t.Helper()
	archive, err := os.ReadFile("testdata/members.txtar")
	if err != nil {
		t.Fatal(err)
	}
	all := make(map[string]fstest.MapFS)
	for name, file := range journaltest.Files(string(archive)) {
		maker, name, _ := strings.Cut(name, "/")
		if all[maker] == nil {
			all[maker] = make(fstest.MapFS)
		}
		all[maker][name] = file
	}
	all["ada"]["builds/jacket/back.jpg"] = &fstest.MapFile{Data: phototest.JPEG(1, "", "")}
	return all
}

// members makes their sites. The second of them is packed into one file.
func members(t testing.TB) []string {
	t.Helper()
	all := journals(t)
	sites := []string{share(t, all["ada"]), share(t, all["bea"]), share(t, all["cleo"])}
	if err := output.Pack(sites[1], sites[1]+".zip"); err != nil {
		t.Fatal(err)
	}
	sites[1] += ".zip"
	return sites
}

// open opens sites that makers have handed over.
func open(t testing.TB, sites ...string) []circle.Member {
	t.Helper()
	var all []circle.Member
	for _, name := range sites {
		m, found, closer, err := circle.Open(name)
		t.Cleanup(func() { closer.Close() })
		if err != nil {
			t.Fatal(err)
		}
		if len(found) > 0 {
			source.Print(os.Stderr, found, source.Palette{})
			t.Fatalf("%s is not as it should be", name)
		}
		all = append(all, m)
	}
	return all
}

// make makes the site of a circle in a new folder.
func makeCircle(t testing.TB, members []circle.Member) (string, circle.Made, []source.Finding) {
	t.Helper()
	out := filepath.Join(t.TempDir(), "circle")
	made, found, err := circle.Make(context.Background(), circle.Order{Members: members, Title: "The Tuesday circle", Today: today, Out: out, Store: sitetest.Store(t)})
	if err != nil {
		t.Fatal(err)
	}
	return out, made, found
}

// TestCircle reads what three makers show one another, by what stands in their journals.
func TestCircle(t *testing.T) {
	out, made, found := makeCircle(t, open(t, members(t)...))
	if len(found) > 0 || made.Makers != 3 || made.Builds != 3 || made.Photos != 1 {
		t.Errorf("made %+v, found %v", made, found)
	}
	pages := sitetest.Pages(t, out)
	for _, c := range []struct {
		page, part string // the whole page for ""
		want, not  []string
	}{
		{"index.html", "", []string{"What Ada, Bea and Cléo show one another, put together on 30 November 2026.", "3 makers 3 builds 2 patterns 2 techniques 3 references", "Fitting Striped jacket by Ada"}, nil},
		{"builds/index.html", "", []string{"1780s", "1800 to 1815", "Striped jacket by Ada", "Grey spencer by Cléo"}, []string{"1785s"}},
		{"makers/ada.html", "", []string{"Ada's workroom", "https://example.org/ada/", "Striped jacket"}, []string{"Blue bedgown"}},
		// One pattern, called so by three: two say the same source, one says none.
		{"patterns/index.html", "", []string{"Used by several Short jacket draft", "used by Ada, Bea and Cléo 3 builds", "Used by one Spencer leaflet"}, nil},
		// Ada shows deltas, Bea words, Cléo nothing. Ada's bust: 36 1/4 less 37 1/2 is 1 1/4 in short of an ease of 0 in;
		// her waist: 28 1/4 less 28 is 1/4 in, of 0 to 1/2. Bea's: 105 less 101 is 4 cm, of 2 to 6; 79 less 81 is 2 cm short of none.
		{"patterns/short-jacket-draft-the-green-book-plate-4.html", "section-across-builds", []string{
			"Striped jacket by Ada for Ada 30 November 2026 short by 1 1/4 in fits",
			"Blue bedgown by Bea for Bea 30 November 2026 fits short",
			"Nothing may be known of how these fit: Grey spencer by Cléo.",
		}, []string{"cm", "short by 3"}},
		{"patterns/short-jacket-draft-the-green-book-plate-4.html", "section-next-time", []string{"press the seams before the lining goes in Grey spencer by Cléo 5 May 2026", "measure over the stays", "cut the front wider"}, nil},
		{"patterns/short-jacket-draft-the-green-book-plate-4.html", "section-about", []string{"Ada writes Drawn up from the plate, and trued at the shoulder."}, []string{"Bea writes"}},
		{"techniques/piping.html", "", []string{"test on a scrap (Ada)", "no child can pull it down (Bea)", "Ada writes Lay the cord", "Bea writes I clip the seam", "Used by Ada , Bea"}, nil},
		{"next-time.html", "section-by-maker", []string{"Ada cut the front wider", "Bea measure over the stays", "Cléo press the seams"}, nil},
		{"next-time.html", "section-by-garment", []string{"Bedgown measure over", "Jacket press the seams"}, nil},
		// Two makers found one object, which bears witness once; a third thing lacks it.
		{"evidence/piped-armhole.html", "", []string{
			"Shown by Green jacket, 1784. Lacked by A street print, 1787.",
			"Striped jacket by Ada", "thin: shown by 1 inside the era; lacked by 1 inside it",
			"Blue bedgown by Bea", "only earlier: shown by 1 before the era; lacked by 1 after it", "The green jacket once more shows it, before",
		}, nil},
		{"builds/ada/jacket.html", "", []string{"a stated departure: it washes", "From behind", "3 h 30 min", "side backstitch"}, []string{"for nobody else", "Private"}},
		{"builds/cléo/spencer.html", "", []string{"Maker Cléo", "Short jacket draft , Spencer leaflet"}, []string{"Fit today", "34", "35"}},
	} {
		p, ok := pages[c.page]
		if !ok {
			t.Errorf("there is no page %s", c.page)
			continue
		}
		text := sitetest.Text(p.Root)
		if c.part != "" {
			for n := range p.Root.Descendants() {
				if sitetest.Attr(n, "id") == c.part {
					text = sitetest.Text(n)
				}
			}
		}
		text = plainFractions(text)
		for _, want := range c.want {
			if !strings.Contains(text, want) {
				t.Errorf("%s does not say %q:\n%s", c.page, want, text)
			}
		}
		for _, not := range c.not {
			if strings.Contains(text, not) {
				t.Errorf("%s says %q:\n%s", c.page, not, text)
			}
		}
	}
	if checked := sitetest.Walk(t, out); checked < 300 {
		t.Errorf("only %d addresses found", checked)
	}
	for _, p := range pages {
		for _, found := range sitetest.Active(p.Root) {
			t.Errorf("%s has %s", p.Path, found)
		}
	}
}

// plainFractions writes what the theme sets as fractions as it was typed.
func plainFractions(text string) string {
	return strings.NewReplacer(" ¼", " 1/4", " ½", " 1/2", "¼", "1/4", "½", "1/2", "⁄", "/").Replace(text)
}

// TestOrderIsNothing: whoever is named first, the site is the same.
func TestOrderIsNothing(t *testing.T) {
	sites := append(members(t), share(t, demo.Journal()))
	one, _, _ := makeCircle(t, open(t, sites...))
	slices.Reverse(sites)
	other, _, _ := makeCircle(t, open(t, sites...))
	files := func(dir string) map[string][]byte {
		all := make(map[string][]byte)
		err := fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
			if err == nil && !d.IsDir() && name != source.SiteMark {
				all[name], err = os.ReadFile(filepath.Join(dir, name))
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
		return all
	}
	first, second := files(one), files(other)
	if len(first) != len(second) {
		t.Errorf("%d files and %d", len(first), len(second))
	}
	for name, data := range first {
		if !bytes.Equal(data, second[name]) {
			t.Errorf("%s differs", name)
		}
	}
}

// onePageOfEach is a page of every kind, of the members and the demo together.
var onePageOfEach = []string{
	"index.html", "builds/index.html", "makers/index.html", "patterns/index.html", "techniques/index.html", "references/index.html",
	"next-time.html", "evidence/index.html", "search.html", "makers/ada.html", "builds/ada/jacket.html", "builds/juno/madder-jacket.html",
	"patterns/short-jacket-draft-the-green-book-plate-4.html", "techniques/piping.html", "references/ada/green-jacket.html", "evidence/piped-armhole.html",
}

func TestInBrowser(t *testing.T) {
	if testing.Short() {
		t.Skip("opens pages in a browser")
	}
	out, _, found := makeCircle(t, open(t, append(members(t), share(t, demo.Journal()))...))
	if len(found) > 0 {
		t.Error(found)
	}
	sitetest.Walk(t, out)
	sitetest.Look(t, out, onePageOfEach)
}

// TestReadByEverybody has axe-core and the Nu Html Checker look at the pages.
func TestReadByEverybody(t *testing.T) {
	sitetest.Axe(t) // or skip
	out, _, _ := makeCircle(t, open(t, append(members(t), share(t, demo.Journal()))...))
	for _, dark := range []bool{false, true} {
		sitetest.ReadByEverybody(t, out, append([]string{"search.html?q=jacket"}, onePageOfEach...), dark)
	}
}

func TestValidHTML(t *testing.T) {
	out, _, _ := makeCircle(t, open(t, append(members(t), share(t, demo.Journal()))...))
	sitetest.Valid(t, out)
}
