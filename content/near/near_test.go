package near

import (
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestOf(t *testing.T) {
	fields := []string{"waist girth", "natural waist girth", "bust girth", "hip girth", "waist", "hip", "Bust"}
	for _, c := range []struct {
		name, word string
		among      []string
		want       []string
	}{
		{"a letter missing", "wast girth", fields, []string{"waist girth"}},
		{"a letter wrong", "weist", fields, []string{"waist"}},
		{"a letter too many", "waisst", fields, []string{"waist"}},
		{"neighbours swapped", "wiast", fields, []string{"waist"}},
		{"capitals make no difference", "BUST", fields, []string{"Bust"}},
		{"nearest first, not first come", "sleves", []string{"sleeve", "sleeves"}, []string{"sleeves"}},
		{"equally near ones in order of the alphabet", "hip", []string{"zip", "lip", "dip", "rip"}, []string{"dip", "lip", "rip"}},
		{"no word twice", "wast", []string{"waist", "waist"}, []string{"waist"}},
		{"three of many, best first", "abcdefghijkl", []string{"abcdefghi", "babcdefghij", "abcdefghij", "abcdefghio", "abcdefghijkmn"},
			[]string{"abcdefghij", "abcdefghijkmn", "abcdefghi"}},
		{"none with twice the slips of the nearest", "wast girth", []string{"bust girth", "waist girth"}, []string{"waist girth"}},
		{"letters outside ASCII count as one", "taïlle", []string{"taille"}, []string{"taille"}},
		{"two letters are too few to guess from", "it", []string{"at", "in"}, nil},
		{"nothing far-fetched", "crinoline", fields, nil},
		{"nothing to choose from", "waist", nil, nil},
		{"an empty word", "", fields, nil},
	} {
		if diff := cmp.Diff(c.want, Of(c.word, c.among)); diff != "" {
			t.Errorf("%s: Of(%q) (-want +got):\n%s", c.name, c.word, diff)
		}
	}
}

// The distances were counted by another program, named in the file's first line.
func TestSlipsAgreesWithAnotherCount(t *testing.T) {
	table, err := os.ReadFile("testdata/distance.tsv")
	if err != nil {
		t.Fatal(err)
	}
	rows := strings.Split(strings.TrimSpace(string(table)), "\n")[1:]
	for _, row := range rows {
		cells := strings.Split(row, "\t")
		want, err := strconv.Atoi(cells[2])
		if err != nil {
			t.Fatalf("%q: %v", row, err)
		}
		m := newMeter(cells[0])
		for _, limit := range []int{0, 1, 2, 3, 5, 100} {
			if got := m.slips(cells[1], limit); got != min(want, limit+1) {
				t.Errorf("from %q to %q, at most %d: %d slips, want %d", cells[0], cells[1], limit, got, min(want, limit+1))
			}
		}
	}
}

// What Of answers while narrowing its limit must be what it would answer with
// every candidate counted in full.
func FuzzOf(f *testing.F) {
	f.Add("wast girth", "waist girth,bust girth,hip girth,girth")
	f.Add("ca", "abc,ac,ca")
	f.Add("nach", "nahc,anhc,nch,\xff,ñach")
	f.Fuzz(func(t *testing.T, word, list string) {
		among := strings.Split(list, ",")
		m := newMeter(word)
		var all []candidate
		for _, text := range among {
			if slips := m.slips(text, 1000); slips <= m.allowed() {
				all = append(all, candidate{text, slips})
			}
		}
		slices.SortFunc(all, compare)
		all = slices.Compact(all)
		var want []string
		for _, c := range all[:min(3, len(all))] {
			if c.slips == all[0].slips || c.slips < 2*all[0].slips {
				want = append(want, c.text)
			}
		}
		if diff := cmp.Diff(want, Of(word, among)); diff != "" {
			t.Errorf("Of(%q, %q) (-want +got):\n%s", word, among, diff)
		}
	})
}

func BenchmarkOfTenThousand(b *testing.B) {
	among := make([]string, 10_000)
	for i := range among {
		among[i] = fmt.Sprintf("striped-jacket-%04d", i)
	}
	b.ReportAllocs()
	for b.Loop() {
		Of("stripde-jacket-421", among)
	}
}
