package evidence

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
)

// A calendar marks the years of a date among those of the test, which reach far
// beyond any of its dates: an open end marks all.
type calendar [200]bool

const firstYear = 1600

func (c calendar) ends() (first, last int) {
	first, last = -1, -1
	for i, marked := range c {
		if marked && first < 0 {
			first = i
		}
		if marked {
			last = i
		}
	}
	return first, last
}

func marked(first, last int) (c calendar) {
	for i := range c {
		c[i] = first <= i && i <= last
	}
	return c
}

// against classes a calendar by looking at each year.
func (c calendar) against(era calendar) When {
	shared, outside := false, false
	for i := range c {
		shared = shared || c[i] && era[i]
		outside = outside || c[i] && !era[i]
	}
	first, _ := c.ends()
	start, _ := era.ends()
	switch {
	case first < 0:
		return Undated
	case !outside:
		return Inside
	case shared:
		return Overlapping
	case first < start:
		return Before
	}
	return After
}

// drawn makes a date and its calendar; sometimes none.
func drawn(t *testing.T, random *rand.Rand) (edtf.Date, calendar) {
	t.Helper()
	a := 90 + random.IntN(20)
	b := a + random.IntN(8)
	var text string
	var c calendar
	switch random.IntN(7) {
	case 0:
		return edtf.Date{}, c
	case 1:
		text, c = fmt.Sprintf("[..%d]", firstYear+b), marked(0, b)
	case 2:
		text, c = fmt.Sprintf("%d/..", firstYear+a), marked(a, len(c))
	case 3:
		text, c = fmt.Sprintf("%d~", firstYear+a), marked(a-5, a+5)
	case 4:
		text, c = fmt.Sprintf("%d?", firstYear+a), marked(a, a)
	default:
		text, c = fmt.Sprintf("%d/%d", firstYear+a, firstYear+b), marked(a, b)
	}
	return date(t, text), c
}

// Counts are what one comes to by looking at each year of each object in turn.
func TestCountsByBruteForce(t *testing.T) {
	random := rand.New(rand.NewPCG(17, 80))
	seen := make(map[Verdict]int)
	for round := range 4000 {
		var drafts []journal.Draft
		var years []calendar
		for i := range 1 + random.IntN(7) {
			r := &journal.Reference{Page: journal.Page{ID: journal.ID(fmt.Sprintf("references/%d", i))}}
			if random.IntN(2) == 0 {
				r.Holder, r.Accession = []string{"An attic", "an  ATTIC", "A cellar", ""}[random.IntN(4)], []string{"", "1", "2"}[random.IntN(3)]
			}
			if random.IntN(3) > 0 {
				r.Shows = append(r.Shows, journal.Word{Text: []string{"frill", "Frill "}[random.IntN(2)]})
			}
			if random.IntN(3) == 0 {
				r.Lacks = append(r.Lacks, journal.Word{Text: "frill"})
			}
			var c calendar
			r.Date, c = drawn(t, random)
			drafts = append(drafts, journal.Draft{File: &source.File{Name: string(r.ID) + ".md"}, Record: r})
			years = append(years, c)
		}
		j, _ := journal.Resolve(new(journal.Settings), drafts, nil)
		eraDate, era := drawn(t, random)
		f, _ := Gather(j).For("FRILL")
		got := Judge(f, eraDate, j.Settings.Customs)
		seen[got.Verdict]++
		if eraDate.IsZero() {
			if got.Verdict != NoEra {
				t.Fatalf("without an era the verdict is %s", got.Verdict)
			}
			continue
		}
		shown, lacked, disputed := byHand(j.References(), years, era)
		for _, c := range []struct {
			got  Counts
			want map[When]int
		}{{got.Shown, shown}, {got.Lacked, lacked}} {
			if want := (Counts{c.want[Inside], c.want[Overlapping], c.want[Before], c.want[After], c.want[Undated]}); c.got != want {
				t.Fatalf("round %d: %+v, want %+v", round, c.got, want)
			}
		}
		if got.Disputed != disputed {
			t.Fatalf("round %d: %d are disputed, want %d", round, got.Disputed, disputed)
		}
		if share := got.Share(); share.Shows != shown[Inside] || share.Of != shown[Inside]+lacked[Inside] {
			t.Fatalf("round %d: share %v", round, share)
		}
	}
	for _, v := range []Verdict{Supported, Thin, OnlyEarlier, OnlyLater, EarlierAndLater, Contradicted, WithoutEvidence, NoEra} {
		if seen[v] == 0 {
			t.Errorf("no journal came out as %s", v)
		}
	}
}

// byHand counts the objects of references with their calendars.
func byHand(refs []*journal.Reference, years []calendar, era calendar) (shown, lacked map[When]int, disputed int) {
	shown, lacked = make(map[When]int), make(map[When]int)
	done := make([]bool, len(refs))
	for i, r := range refs {
		if done[i] {
			continue
		}
		first, last := years[i].ends()
		shows, lacks := len(r.Shows) > 0, len(r.Lacks) > 0
		for k := i + 1; k < len(refs); k++ {
			o := refs[k]
			same := r.Holder != "" && o.Holder != "" && r.Accession != "" && r.Accession == o.Accession &&
				(r.Holder == "A cellar") == (o.Holder == "A cellar")
			if !same {
				continue
			}
			done[k] = true
			shows, lacks = shows || len(o.Shows) > 0, lacks || len(o.Lacks) > 0
			if a, b := years[k].ends(); a >= 0 && first >= 0 {
				first, last = min(first, a), max(last, b)
			} else if a >= 0 {
				first, last = a, b
			}
		}
		var c calendar
		if first >= 0 {
			c = marked(first, last)
		}
		switch {
		case shows && lacks:
			disputed++
		case shows:
			shown[c.against(era)]++
		case lacks:
			lacked[c.against(era)]++
		}
	}
	return shown, lacked, disputed
}
