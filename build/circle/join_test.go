package circle

import (
	"fmt"
	"strings"
	"testing"

	"hussif/build/export"
	"hussif/content/edtf"
	"hussif/theme"
)

// TestSamePattern: which patterns of several makers are taken for one.
func TestSamePattern(t *testing.T) {
	for _, c := range []struct {
		name string
		logs string // of each maker after a bar; a pattern is a title and, after a colon, where it is from
		want string // the patterns, each with its makers
	}{
		{"alike", "Draft | Draft", "Draft of A B"},
		{"capitals, blanks and accents", "Robe à l'anglaise | robe a  l'Anglaise", "Robe à l'anglaise of A B"},
		{"as most write it", "draft | Draft | Draft", "Draft of A B C"},
		{"another title", "Draft | Drafts", "Draft of A; Drafts of B"},
		{"one source", "Draft: the Green Book | Draft: The green book", "Draft of A B"},
		{"two sources", "Draft: the Green Book | Draft: a leaflet", "Draft of A; Draft of B"},
		{"a source and none", "Draft: the Green Book | Draft", "Draft of A B"},
		{"two sources and none", "Draft: the Green Book | Draft: a leaflet | Draft", "Draft of A; Draft of B; Draft of C"},
		{"twice in one journal", "Draft, Draft | Draft", "Draft of A B; Draft of A"},
		{"marks that are no letters", "*** | ###", "### of B; *** of A"},
	} {
		var members []Member
		for i, said := range strings.Split(c.logs, "|") {
			log := &export.Log{}
			for n, pattern := range strings.Split(said, ",") {
				title, from, _ := strings.Cut(pattern, ":")
				log.Patterns = append(log.Patterns, export.Pattern{ID: fmt.Sprint(n), Title: strings.TrimSpace(title), From: strings.TrimSpace(from)})
			}
			members = append(members, Member{Name: string(rune('A' + i)), Log: log})
		}
		var got []string
		for _, p := range Gather(members).Patterns {
			words := p.Title + " of"
			for _, told := range p.Told {
				words += " " + told.By.Name
			}
			got = append(got, words)
		}
		for _, p := range Gather(members).Patterns {
			for _, other := range p.Namesakes {
				if other == p || !strings.EqualFold(other.Title, p.Title) {
					t.Errorf("%s: %s is called as %s", c.name, other.Title, p.Title)
				}
			}
		}
		if strings.Join(got, "; ") != c.want {
			t.Errorf("%s: got %s, want %s", c.name, strings.Join(got, "; "), c.want)
		}
	}
}

func TestEras(t *testing.T) {
	var log export.Log
	for i, era := range []string{"1785", "", "1782/1795", "1780/1789", "1600/1699", "../1750", "1911/..", "178X", "-0050"} {
		b := export.Build{ID: fmt.Sprint(i), Title: era}
		if era != "" {
			b.Era = &export.Date{EDTF: era}
		}
		log.Builds = append(log.Builds, b)
	}
	b := &book{Pool: Gather([]Member{{Name: "A", Log: &log}}), today: edtf.DayOf(2026, 11, 30)}
	var got []string
	for _, g := range b.byEra().(theme.List).Groups {
		got = append(got, g.Title)
	}
	want := "Up to 1750; 51 BC; 1600 to 1699; 1780s; 1782 to 1795; 1911 or later; No era given"
	if strings.Join(got, "; ") != want {
		t.Errorf("got %s, want %s", strings.Join(got, "; "), want)
	}
}
