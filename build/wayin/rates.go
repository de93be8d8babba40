package wayin

import (
	"math"
	"slices"
	"strings"
	"time"

	"hussif/content/journal"
	"hussif/content/near"
	"hussif/content/quantity"
)

// Rates are how fast the maker opens and sews seams, by the kind of stitch: the
// words of `sewn` before the first comma, in lower case. Of a kind that is
// missing, no rate is known; the zero Rates know none.
type Rates struct {
	Opening, Sewing map[string]Rate
}

// A Rate is how much of a seam is done in an hour.
type Rate struct {
	Hourly quantity.Length
	Notes  int // that it rests on
}

// RatesOf returns the rates that a journal's own notes give, the median where
// there are several. A note of unpicking with its hours and the seams opened that
// day gives one for opening; one of sewing, altering or finishing with the seams
// sewn that day, for sewing. It must tell of one of the two only, of seams whose
// lengths are all known, and of one kind of stitch, or its hours cannot be shared
// out.
func RatesOf(j *journal.Journal) Rates {
	opening, sewing := make(map[string][]float64), make(map[string][]float64)
	for _, n := range j.Notes() {
		if n.Of == nil || n.Hours <= 0 {
			continue
		}
		switch n.Stage {
		case "unpicking":
			if len(n.Sewed) == 0 {
				learn(opening, n, n.Opened)
			}
		case "sewing", "altering", "finishing":
			if len(n.Opened) == 0 {
				learn(sewing, n, n.Sewed)
			}
		}
	}
	return Rates{medians(opening), medians(sewing)}
}

func learn(rates map[string][]float64, n *journal.Note, named []journal.Word) {
	g := Garment{build: n.Of}
	var seams []int
	var sum quantity.Length
	kind := ""
	for _, w := range named {
		i, ok := g.find(w.Text)
		if !ok {
			return
		}
		s := &n.Of.Seams[i]
		switch {
		case slices.Contains(seams, i):
			continue
		case length(s) == 0, stitch(s.Sewn) == "", kind != "" && kind != stitch(s.Sewn):
			return
		}
		kind = stitch(s.Sewn)
		seams = append(seams, i)
		sum += length(s)
	}
	if kind != "" {
		rates[kind] = append(rates[kind], float64(sum)*float64(time.Hour)/float64(n.Hours))
	}
}

func medians(rates map[string][]float64) map[string]Rate {
	out := make(map[string]Rate, len(rates))
	for kind, all := range rates {
		slices.Sort(all)
		middle := (all[(len(all)-1)/2] + all[len(all)/2]) / 2
		out[kind] = Rate{quantity.Length(math.Round(middle)), len(all)}
	}
	return out
}

// stitch returns the kind of stitch in what is said of how a seam is sewn.
func stitch(sewn string) string {
	kind, _, _ := strings.Cut(sewn, ",")
	return near.Folded(kind)
}
