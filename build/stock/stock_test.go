package stock

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"hussif/content/journal"
	"hussif/content/journal/journaltest"
	"hussif/content/quantity"
	"hussif/testdata/demo"
	"hussif/testdata/generate"
)

var inches = quantity.Format{Unit: quantity.Inches, Fraction: 8}

// twill is a journal with one cloth, 60 in wide, and notes of one build, a line each.
func twill(notes ...string) string {
	var b strings.Builder
	b.WriteString("-- materials/twill.md --\n---\nwidth: 60 in\n---\n-- builds/gown/build.md --\n---\ngarment: gown\n---\n")
	for i, n := range notes {
		day, fields, _ := strings.Cut(n, " ")
		fmt.Fprintf(&b, "-- builds/gown/%s-%c.md --\n---\n%s\n---\n", day, 'a'+i, strings.ReplaceAll(fields, "; ", "\n"))
	}
	return b.String()
}

func sheet(t testing.TB, j *journal.Journal, material string) Sheet {
	t.Helper()
	s, ok := Gather(j).Of(journal.ID("materials/" + material))
	if !ok {
		t.Fatalf("no sheet of %s", material)
	}
	return s
}

// said puts a sheet into lines.
func said(s Sheet) []string {
	var out []string
	for _, h := range s.OnHand {
		out = append(out, "on hand "+h.Words(inches))
	}
	for _, l := range s.Lots {
		for _, h := range l.OnHand {
			out = append(out, fmt.Sprintf("lot %s: %s", l.Name, h.Words(inches)))
		}
	}
	for _, p := range s.Pieces {
		words := "piece " + p.Words(inches)
		if p.Apart {
			words += ", apart"
		}
		out = append(out, words)
	}
	for _, f := range s.Faults {
		out = append(out, "fault: "+f.Words(inches))
	}
	return out
}

// Worked by hand. That a left-over piece describes the rest of the cloth and does not
// come to it, and that cloth torn across keeps its whole width, is common practice.
func TestLedger(t *testing.T) {
	for _, test := range []struct {
		name  string
		notes []string
		want  []string
	}{
		{"bought less used", []string{
			"2026-01-01 bought: [{material: twill, amount: 3 yd}]",
			"2026-01-02 used: [{material: twill, amount: 2 1/4 yd}]",
		}, []string{"on hand 27 in"}},
		{"a left-over piece is not added", []string{
			"2026-01-01 bought: [{material: twill, amount: 3 yd}]",
			"2026-01-02 used: [{material: twill, amount: 2 3/4 yd}]; left over: [{material: twill, size: 9 in x 60 in, grain: straight}]",
		}, []string{"on hand 9 in", "piece 9 × 60 in, straight grain"}},
		{"a piece of the whole width takes its length when it is used", []string{
			"2026-01-01 bought: [{material: twill, amount: 3 yd}]",
			"2026-01-02 used: [{material: twill, amount: 2 1/2 yd}]; left over: [{material: twill, size: 9 in x 60 in}]",
			"2026-01-03 used: [{material: twill, size: 60 in x 9 in}]",
		}, []string{"on hand 9 in", "piece 9 × 60 in, used since"}},
		{"what a smaller piece takes is not known", []string{
			"2026-01-01 bought: [{material: twill, amount: 3 yd}]",
			"2026-01-02 used: [{material: twill, amount: 2 3/4 yd}]; left over: [{material: twill, size: 9 in x 31 in}]",
			"2026-01-03 used: [{material: twill, size: 9 in x 31 in}]",
		}, []string{"on hand at most 9 in", "piece 9 × 31 in, used since"}},
		{"the amount written with a piece is what it stood for", []string{
			"2026-01-01 bought: [{material: twill, amount: 3 yd}]",
			"2026-01-02 used: [{material: twill, amount: 2 1/2 yd}]; left over: [{material: twill, amount: 6 in, size: 6 in x 31 in}]",
			"2026-01-03 used: [{material: twill, size: 6 in x 31 in}]",
		}, []string{"on hand 12 in", "piece 6 × 31 in, used since"}},
		{"a use with size and amount is counted once", []string{
			"2026-01-01 bought: [{material: twill, amount: 3 yd}]",
			"2026-01-02 used: [{material: twill, amount: 2 1/2 yd}]; left over: [{material: twill, size: 9 in x 60 in}]",
			"2026-01-03 used: [{material: twill, amount: 9 in, size: 9 in x 60 in}]",
		}, []string{"on hand 9 in", "piece 9 × 60 in, used since"}},
		{"a piece counted as used before makes nothing negative", []string{
			"2026-01-01 bought: [{material: twill, amount: 3 yd}]",
			"2026-01-02 used: [{material: twill, amount: 3 yd}]; left over: [{material: twill, size: 9 in x 60 in}]",
			"2026-01-03 used: [{material: twill, size: 9 in x 60 in}]",
		}, []string{"on hand 0 in", "piece 9 × 60 in, used since"}},
		{"some of several pieces, and the rest of them", []string{
			"2026-01-01 stage: unpicking; left over: [{material: twill, size: 60 in x 44 in, pieces: 3}]",
			"2026-01-02 used: [{material: twill, size: 60 in x 44 in, pieces: 2}]; left over: [{material: twill, size: 6 in x 38 in, pieces: 2}]",
		}, []string{"piece 3 pieces, 60 × 44 in, 1 of them left, apart", "piece 2 pieces, 6 × 38 in, apart"}},
		{"a grain that differs is another piece", []string{
			"2026-01-01 bought: [{material: twill, amount: 1 yd}]; left over: [{material: twill, size: 9 in x 31 in, grain: bias}]",
			"2026-01-02 used: [{material: twill, size: 9 in x 31 in, grain: straight}]",
		}, []string{"on hand at most 1 yd", "piece 9 × 31 in, bias grain", "fault: a piece of 9 × 31 in used, but none is written down as left over"}},
		{"a note does not use what it leaves over", []string{
			"2026-01-01 used: [{material: twill, size: 9 in x 31 in}]; left over: [{material: twill, size: 9 in x 31 in}]",
		}, []string{"piece 9 × 31 in", "fault: a piece of 9 × 31 in used, but none is written down as left over"}},
		{"a remnant bought by its size", []string{
			"2026-01-01 bought: [{material: twill, size: 45 in x 60 in}]",
			"2026-01-02 used: [{material: twill, amount: 1 yd}]",
		}, []string{"on hand not known: none is written down as bought, and 1 yd as used", "piece 45 × 60 in, apart",
			"fault: 1 yd used, but what there was is a piece of 45 × 60 in, so what is left cannot be told"}},
		{"an amount that came back", []string{
			"2026-01-01 bought: [{material: twill, amount: 24 hooks}]",
			"2026-01-02 used: [{material: twill, amount: 20 hooks}]",
			"2026-02-02 stage: unpicking; left over: [{material: twill, amount: 18 hooks}]",
		}, []string{"on hand 22 hooks"}},
		{"an amount found left agrees", []string{
			"2026-01-01 bought: [{material: twill, amount: 3 yd}]",
			"2026-01-02 used: [{material: twill, amount: 2 yd}]; left over: [{material: twill, amount: 1 yd}]",
		}, []string{"on hand 1 yd"}},
		{"an amount found left tells of a use forgotten", []string{
			"2026-01-01 bought: [{material: twill, amount: 3 yd}]",
			"2026-01-02 left over: [{material: twill, amount: 1/2 yd}]",
		}, []string{"on hand 3 yd", "fault: 18 in left over, but bought less used makes 3 yd: is a use of 2 1/2 yd not written down?"}},
		{"more than was bought", []string{
			"2026-01-01 bought: [{material: twill, amount: 3 reels}]",
			"2026-01-02 used: [{material: twill, amount: 3 1/2 reels}]",
		}, []string{"on hand 0 reels, and 1/2 reel more used than there was", "fault: 1/2 reel more used than was ever bought"}},
		{"used before it was bought", []string{
			"2026-01-02 used: [{material: twill, amount: 1 yd}]",
			"2026-01-09 bought: [{material: twill, amount: 3 yd}]",
		}, []string{"on hand 2 yd", "fault: 1 yd more used by this day than was bought by then"}},
		{"bought and used on one day", []string{
			"2026-01-02 used: [{material: twill, amount: 1 yd}]",
			"2026-01-02 bought: [{material: twill, amount: 3 yd}]",
		}, []string{"on hand 2 yd"}},
		{"never bought is not zero", []string{
			"2026-01-02 used: [{material: twill, amount: 2 reels}]",
		}, []string{"on hand not known: none is written down as bought, and 2 reels as used", "fault: 2 reels used, and none is written down as bought"}},
		{"a reel is no length", []string{
			"2026-01-01 bought: [{material: twill, amount: 3 reels}]",
			"2026-01-02 used: [{material: twill, amount: 100 m}]",
		}, []string{"on hand not known: none is written down as bought, and 109 yd 13 in as used", "on hand 3 reels",
			"fault: 109 yd 13 in used, but 3 reels bought, so what is left cannot be told"}},
		{"no amount", []string{
			"2026-01-01 bought: [{material: twill, cost: 8 EUR}]",
		}, []string{"fault: how much it was is not said"}},
		{"one lot, which a use need not name", []string{
			"2026-01-01 bought: [{material: twill, amount: 2 yd, lot: Spring bath}]",
			"2026-01-02 used: [{material: twill, amount: 1 3/4 yd}]",
		}, []string{"on hand 9 in", "lot Spring bath: 9 in"}},
		{"two lots, of which a use names none", []string{
			"2026-01-01 bought: [{material: twill, amount: 2 yd, lot: spring}, {material: twill, amount: 1 yd, lot: autumn}]",
			"2026-01-02 used: [{material: twill, amount: 1 yd, lot: SPRING}, {material: twill, amount: 1/2 yd}]",
		}, []string{"on hand 1 1/2 yd", "lot spring: at most 1 yd", "lot autumn: at most 1 yd"}},
		{"more of one lot than it was", []string{
			"2026-01-01 bought: [{material: twill, amount: 2 yd, lot: spring}, {material: twill, amount: 1 yd, lot: autumn}]",
			"2026-01-02 used: [{material: twill, amount: 1 1/2 yd, lot: autumn}]",
		}, []string{"on hand 1 1/2 yd", "lot spring: 2 yd", "lot autumn: 0 in, and 18 in more used than there was",
			`fault: 18 in more used than was ever bought (lot "autumn")`}},
		{"a lot of which nothing was bought", []string{
			"2026-01-01 bought: [{material: twill, amount: 2 yd, lot: spring}]",
			"2026-01-02 used: [{material: twill, amount: 1 yd, lot: sprang}]",
		}, []string{"on hand 1 yd", "lot spring: 2 yd", "lot sprang: not known: none is written down as bought, and 1 yd as used",
			`fault: 1 yd used of a lot of which none is written down as bought (lot "sprang")`}},
		{"a size written as an amount", []string{
			"2026-01-01 bought: [{material: twill, amount: 9 in x 31 in}]",
		}, []string{"piece 9 × 31 in, apart"}},
		{"two pieces and no such piece left", []string{
			"2026-01-01 bought: [{material: twill, amount: 3 yd}]; left over: [{material: twill, size: 9 in x 31 in}]",
			"2026-01-02 used: [{material: twill, size: 9 in x 31 in, pieces: 3}]",
		}, []string{"on hand at most 3 yd", "piece 9 × 31 in, used since",
			"fault: 2 pieces of 9 × 31 in used, but so many are not written down as left over"}},
		{"the piece of the lot that is named, then the one lying that way", []string{
			"2026-01-01 stage: unpicking; left over: [{material: twill, size: 9 in x 31 in, lot: a}, {material: twill, size: 31 in x 9 in, lot: b}, {material: twill, size: 9 in x 31 in, lot: b}]",
			"2026-01-02 used: [{material: twill, size: 9 in x 31 in, lot: b}]",
		}, []string{"piece 9 × 31 in, apart", "piece 31 × 9 in, apart", "piece 9 × 31 in, used since, apart"}},
		{"a piece of no lot out of cloth of two", []string{
			"2026-01-01 bought: [{material: twill, amount: 1 yd, lot: a}, {material: twill, amount: 1 yd, lot: b}]; left over: [{material: twill, size: 9 in x 60 in}]",
			"2026-01-02 used: [{material: twill, size: 9 in x 60 in}]",
		}, []string{"on hand 1 3/4 yd", "lot a: at most 1 yd", "lot b: at most 1 yd", "piece 9 × 60 in, used since"}},
		{"what is found left may be of one lot", []string{
			"2026-01-01 bought: [{material: twill, amount: 2 yd, lot: a}, {material: twill, amount: 1 yd, lot: b}]",
			"2026-01-02 left over: [{material: twill, amount: 1 yd}]",
		}, []string{"on hand 3 yd", "lot a: 2 yd", "lot b: 1 yd"}},
		{"or not", []string{
			"2026-01-01 bought: [{material: twill, amount: 2 yd, lot: a}, {material: twill, amount: 1 yd, lot: b}]",
			"2026-01-02 left over: [{material: twill, amount: 1 yd, lot: a}]",
		}, []string{"on hand 3 yd", "lot a: 2 yd", "lot b: 1 yd",
			`fault: 1 yd left over, but bought less used makes 2 yd: is a use of 1 yd not written down? (lot "a")`}},
		{"more found left than can be", []string{
			"2026-01-01 bought: [{material: twill, amount: 1 yd}]; left over: [{material: twill, amount: 2 yd}]",
		}, []string{"on hand 1 yd", "fault: 2 yd left over, but bought less used makes only 1 yd"}},
		{"fractions that no sum holds", []string{
			"2026-01-01 bought: [{material: twill, amount: 1/999999937 reel}, {material: twill, amount: 1/999999929 reel}, {material: twill, amount: 1/999999893 reel}]",
		}, []string{"on hand 1999999866/999999866000004473 reel", "fault: 1/999999893 reel is too much to be added to the rest"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			if diff := cmp.Diff(test.want, said(sheet(t, journaltest.Open(t, twill(test.notes...)), "twill"))); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// A note without a date may be of any day, and so proves nothing used too early.
func TestWithoutADate(t *testing.T) {
	j, _, err := journal.Open(fstest.MapFS{
		"materials/twill.md":          {},
		"builds/gown/build.md":        {},
		"builds/gown/2026-01-01.md":   {Data: []byte("---\nused: [{material: twill, amount: 1 yd}]\nleft over: [{material: twill, amount: 1 yd}]\n---\n")},
		"builds/gown/cloth-bought.md": {Data: []byte("---\nbought: [{material: twill, amount: 3 yd}]\n---\n")},
	})
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]string{"on hand 2 yd"}, said(sheet(t, j, "twill"))); diff != "" {
		t.Error(diff)
	}
}

func TestSumWords(t *testing.T) {
	s := sheet(t, journaltest.Open(t, twill(
		"2026-01-01 bought: [{material: twill, amount: 3 yd}]; left over: [{material: twill, size: 9 in x 60 in}]",
		"2026-01-02 used: [{material: twill, amount: 1 yd}]",
		"2026-01-03 used: [{material: twill, size: 9 in x 60 in}]",
		"2026-01-04 stage: unpicking; left over: [{material: twill, amount: 1/2 yd}]",
	)), "twill")
	want := "bought 3 yd, come back 18 in, used 1 yd, cut from left-over pieces 9 in"
	if got := s.OnHand[0].SumWords(inches); got != want {
		t.Errorf("%s\nwanted %s", got, want)
	}
}

// Where it came from, and where it went.
func TestPieceIsFollowed(t *testing.T) {
	j := journaltest.Open(t, twill(
		"2026-01-01 bought: [{material: twill, amount: 3 yd, lot: spring, from: market}]",
		"2026-01-02 used: [{material: twill, amount: 2 yd}]; left over: [{material: twill, size: 9 in x 31 in, pieces: 2}]",
	)+"-- builds/cap/build.md --\n---\n---\n-- builds/cap/2026-02-01.md --\n---\nused: [{material: twill, size: 9 in x 31 in}]\n---\n")
	s := sheet(t, j, "twill")
	p := s.Pieces[0]
	if p.Build != "builds/gown" || p.From.Record != "builds/gown/2026-01-02-b" || p.Left() != 1 {
		t.Errorf("the piece is %+v", p)
	}
	if len(p.Taken) != 1 || p.Taken[0].Build != "builds/cap" || p.Taken[0].Count != 1 {
		t.Errorf("taken %+v", p.Taken)
	}
	var uses []string
	for _, u := range s.Builds {
		uses = append(uses, fmt.Sprint(u.Build, " ", u.Lot, " ", len(u.Amounts), " ", u.Pieces))
	}
	if diff := cmp.Diff([]string{"builds/gown spring 1 0", "builds/cap spring 0 1"}, uses); diff != "" {
		t.Error(diff)
	}
	if got := s.Lots[0].Suppliers; !slices.Equal(got, []string{"market"}) {
		t.Errorf("from %v", got)
	}
}

// The sums were worked by hand by somebody else.
func TestDemo(t *testing.T) {
	j, _, err := journal.Open(demo.Journal())
	if err != nil {
		t.Fatal(err)
	}
	for material, want := range map[string][]string{
		"synthetic-whalebone": {"on hand 3 1/2 yd"},
		"linen-thread":        {"on hand 0 reels"},
		"lining-linen":        {"on hand 1 1/2 yd"},
		"piping-cord":         {"on hand 5 3/4 yd"},
		"hooks":               {"on hand 15 hooks"},
		"petersham":           {"on hand 7 in"},
		"stays-canvas":        {"on hand 9 in", "piece 9 × 54 in, straight grain"},
		"grey-broadcloth":     {"on hand 9 in", "piece 9 × 40 in, straight grain", "piece 5 × 16 in, bias grain"},
		"madder-worsted": {"on hand 9 in", "lot dye bath of September: 9 in",
			"piece 7 × 22 in, straight grain", "piece 4 × 11 in, bias grain"},
		"blue-twill": {"on hand 9 in", "lot one bolt end: 9 in", "piece 9 × 60 in, straight grain",
			"piece 2 pieces, 60 × 44 in, straight grain, used since, apart", "piece 2 pieces, 6 × 38 in, straight grain, apart"},
	} {
		if diff := cmp.Diff(want, said(sheet(t, j, material))); diff != "" {
			t.Errorf("%s: %s", material, diff)
		}
	}
	stays := j.Build(journal.Ref{To: "oat-linen-stays"})
	if diff := cmp.Diff([]string{
		"synthetic-whalebone: 4 yd short: needs 14 yd, 6 1/2 yd used, 3 1/2 yd on hand",
		"linen-thread: 1 reel short: needs 2 reels, 1 reel used, none on hand",
	}, lacks(Allot(j, Gather(j), []*journal.Build{stays}), "builds/oat-linen-stays")); diff != "" {
		t.Error(diff)
	}
}

func lacks(a Allotment, build journal.ID) []string {
	var out []string
	for _, l := range a.Of(build) {
		out = append(out, l.Material.Name()+": "+l.Words(inches))
	}
	return out
}

// wants is a journal with 3 yd of twill on hand beside what stash adds, and builds
// that need what they say.
func wants(stash string, needs ...string) string {
	var b strings.Builder
	b.WriteString("-- materials/twill.md --\n---\nwidth: 60 in\n---\n-- materials/silk.md --\n---\n---\n")
	fmt.Fprintf(&b, "-- notes/2026-01-01.md --\n---\n%s\n---\n", strings.ReplaceAll(stash, "; ", "\n"))
	for i, n := range needs {
		need, used, _ := strings.Cut(n, " | ")
		fmt.Fprintf(&b, "-- builds/b%d/build.md --\n---\nneeds: %s\n---\n", i+1, need)
		if used != "" {
			fmt.Fprintf(&b, "-- builds/b%d/2026-01-02.md --\n---\nused: %s\n---\n", i+1, used)
		}
	}
	return b.String()
}

func TestShort(t *testing.T) {
	const threeYards = "bought: [{material: twill, amount: 3 yd}]"
	for _, test := range []struct {
		name  string
		stash string
		needs []string
		want  []string // of the last build
	}{
		{"enough", threeYards, []string{"[{material: twill, amount: 3 yd}]"}, nil},
		{"short", threeYards, []string{"[{material: twill, amount: 4 yd}]"},
			[]string{"twill: 1 yd short: needs 4 yd, 3 yd on hand"}},
		{"what it used itself counts for it", threeYards, []string{"[{material: twill, amount: 3 yd}] | [{material: twill, amount: 2 yd}]"}, nil},
		{"more used than needed", threeYards, []string{"[{material: twill, amount: 1 yd}] | [{material: twill, amount: 3 yd}]"}, nil},
		{"named twice", threeYards, []string{"[{material: twill, amount: 2 yd}, {material: twill, amount: 2 yd}]"},
			[]string{"twill: 1 yd short: needs 4 yd, 3 yd on hand"}},
		{"the first is served first", threeYards, []string{"[{material: twill, amount: 2 yd}]", "[{material: twill, amount: 2 yd}]"},
			[]string{"twill: 1 yd short: needs 2 yd, 3 yd on hand, 2 yd of it for b1"}},
		{"one that is short takes what there is", threeYards, []string{"[{material: twill, amount: 4 yd}]", "[{material: twill, amount: 2 yd}]"},
			[]string{"twill: 2 yd short: needs 2 yd, 3 yd on hand, 3 yd of it for b1"}},
		{"yards wanted, pieces there", "stage: unpicking; left over: [{material: twill, size: 60 in x 44 in, pieces: 2}]",
			[]string{"[{material: twill, amount: 2 1/2 yd}]"},
			[]string{"twill: whether enough is there cannot be told: needs 2 1/2 yd, and what is on hand is counted another way; left over, and not counted: 2 pieces, 60 × 44 in"}},
		{"yards wanted, pieces used", threeYards, []string{"[{material: twill, amount: 4 yd}] | [{material: twill, size: 60 in x 44 in}]"},
			[]string{"twill: whether enough is there cannot be told: needs 4 yd, and what was used for it is written another way"}},
		{"pieces used, and enough all the same", threeYards, []string{"[{material: twill, amount: 1 yd}] | [{material: twill, size: 60 in x 44 in}]"}, nil},
		{"never bought", threeYards, []string{"[{material: silk, amount: 2 yd}]"},
			[]string{"silk: 2 yd short: needs 2 yd, none is written down as bought"}},
		{"used, and never bought", threeYards, []string{"[{material: silk, amount: 2 yd}]", "[{material: silk, amount: 2 yd}] | [{material: silk, amount: 1 yd}]"},
			[]string{"silk: whether enough is there cannot be told: needs 2 yd, 1 yd used, and it was used before, but none is written down as bought"}},
		{"a ledger in doubt", "bought: [{material: twill, amount: 3 yd}]; used: [{material: twill, amount: 4 yd}]", []string{"[{material: twill, amount: 2 yd}]"},
			[]string{"twill: 2 yd short: needs 2 yd, none on hand; but 1 yd more used than was ever bought"}},
		{"at least short", threeYards + "; left over: [{material: twill, size: 9 in x 31 in}]",
			[]string{"[{material: silk, amount: 1 in}] | [{material: twill, size: 9 in x 31 in}]", "[{material: twill, amount: 4 yd}]"},
			[]string{"twill: at least 1 yd short: needs 4 yd, at most 3 yd on hand"}},
		{"no amount", threeYards, []string{"[twill]"}, []string{"twill: how much is needed is not said"}},
		{"a piece from a piece", "left over: [{material: twill, size: 9 in x 31 in}]", []string{"[{material: twill, amount: 30 in x 8 in}]"}, nil},
		{"a piece serves once", "left over: [{material: twill, size: 9 in x 31 in}]",
			[]string{"[{material: twill, amount: 30 in x 8 in}]", "[{material: twill, amount: 30 in x 8 in}]"},
			[]string{"twill: short: needs 30 × 8 in, and no piece so large is left that is for no other build; left over, and not counted: 9 × 31 in"}},
		{"a piece from a length is for the cutter to say", threeYards, []string{"[{material: twill, amount: 30 in x 8 in}]"},
			[]string{"twill: whether enough is there cannot be told: needs 30 × 8 in, and what is on hand is counted another way"}},
		{"perhaps short", threeYards + "; left over: [{material: twill, size: 9 in x 31 in}]",
			[]string{"[{material: silk, amount: 1 in}] | [{material: twill, size: 9 in x 31 in}]", "[{material: twill, amount: 3 yd}]"},
			[]string{"twill: perhaps short: needs 3 yd, at most 3 yd on hand"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			j := journaltest.Open(t, wants(test.stash, test.needs...))
			last := j.Builds()[len(j.Builds())-1].ID
			if diff := cmp.Diff(test.want, lacks(Allot(j, Gather(j), j.Builds()), last)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// Whatever notes say, what all builds get is never more than what is on hand, and
// the ledger does not hang on the order of a day's notes.
func TestProperties(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		var notes []string
		bought, used := 0, 0
		for range 2 + random.IntN(6) {
			n, way, size := 1+random.IntN(9), "bought", ""
			switch random.IntN(3) {
			case 0:
				way = "used"
				used += n
			case 1:
				way, size = "left over", fmt.Sprintf(", size: %d in x 20 in", n)
			default:
				bought += n
			}
			notes = append(notes, fmt.Sprintf("2026-01-01 %s: [{material: twill, amount: %d in%s}]", way, n, size))
		}
		first := sheet(t, journaltest.Open(t, twill(notes...)), "twill")
		random.Shuffle(len(notes), func(i, k int) { notes[i], notes[k] = notes[k], notes[i] })
		second := sheet(t, journaltest.Open(t, twill(notes...)), "twill")
		if got, want := fmt.Sprint(onHand(first), len(first.Left())), fmt.Sprint(onHand(second), len(second.Left())); got != want {
			t.Fatalf("%v gives %s in one order and %s in another", notes, got, want)
		}
		if bought > 0 && onHand(first) != quantity.Length(bought-used)*quantity.Inch {
			t.Fatalf("%v makes %s", notes, inches.Length(onHand(first)))
		}
	}
	for range 200 {
		var needs []string
		for range 1 + random.IntN(5) {
			needs = append(needs, fmt.Sprintf("[{material: twill, amount: %d in}]", 1+random.IntN(60)))
		}
		j := journaltest.Open(t, wants("bought: [{material: twill, amount: 3 yd}]", needs...))
		var needed, short quantity.Length
		a := Allot(j, Gather(j), j.Builds())
		for _, b := range j.Builds() {
			needed += b.Needs[0].Amount.Length
			for _, l := range a.Of(b.ID) {
				short += l.Short.Length
			}
		}
		if want := max(needed-3*quantity.Yard, 0); short != want {
			t.Fatalf("%v are short by %s in all, not %s", needs, inches.Length(short), inches.Length(want))
		}
	}
}

func onHand(s Sheet) quantity.Length {
	for _, h := range s.OnHand {
		if h.kind == length && h.Known {
			return h.OnHand.Length
		}
	}
	return 0
}

func BenchmarkGather(b *testing.B) {
	j, _, err := journal.Open(generate.Journal(10_000, 1))
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		Allot(j, Gather(j), j.Builds())
	}
}
