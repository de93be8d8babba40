package effort

import (
	"cmp"
	"math"
	"slices"
	"time"

	"hussif/content/journal"
)

// A Past is what a finished build took of its planned hours.
type Past struct {
	Build journal.ID
	Kind  string // of garment
	Ratio float64
}

// Ratios are the quartiles of what past builds took of their planned hours.
type Ratios struct {
	Of                   []Past // least first; none where no build can tell, and the ratios are 1
	Kind                 string // that all of them are; empty where they are of all kinds
	Lower, Median, Upper float64
}

// A Forecast is how many hours are still to come, by what past builds took.
type Forecast struct {
	Ratios              Ratios
	Least, Middle, Most time.Duration
}

// fewest is how many past builds of a kind it takes to go by that kind alone.
const fewest = 3

// ratios are the quartiles of all kinds and of each kind that has enough.
type ratios struct {
	all    Ratios
	byKind map[string]Ratios
}

func pastRatios(past []Past) ratios {
	slices.SortFunc(past, func(a, b Past) int {
		return cmp.Or(cmp.Compare(a.Ratio, b.Ratio), cmp.Compare(a.Build, b.Build))
	})
	kinds := make(map[string][]Past)
	for _, p := range past {
		if p.Kind != "" {
			kinds[p.Kind] = append(kinds[p.Kind], p)
		}
	}
	r := ratios{quartiles("", past), make(map[string]Ratios)}
	for kind, of := range kinds {
		if len(of) >= fewest {
			r.byKind[kind] = quartiles(kind, of)
		}
	}
	return r
}

func (r ratios) of(kind string) Ratios {
	if own, ok := r.byKind[kind]; ok {
		return own
	}
	return r.all
}

func quartiles(kind string, past []Past) Ratios {
	return Ratios{past, kind, quantile(past, 0.25), quantile(past, 0.5), quantile(past, 0.75)}
}

// quantile returns the p-th quantile of ratios in rising order, by the definition in
// the package comment; 1 where there are none.
func quantile(past []Past, p float64) float64 {
	if len(past) == 0 {
		return 1
	}
	whole, part := math.Modf(p * float64(len(past)-1))
	below := past[int(whole)].Ratio
	if part == 0 {
		return below
	}
	return below + part*(past[int(whole)+1].Ratio-below)
}

// longest is the longest work that is forecast, as long as the longest that is read.
const longest = 10 * 365 * 24 * time.Hour

func forecast(w *Work, r Ratios) Forecast {
	rest := func(ratio float64) time.Duration {
		hours := math.Min(float64(w.Planned)*ratio, float64(longest))
		return max(time.Duration(math.Round(hours))-w.Made, 0)
	}
	return Forecast{r, rest(r.Lower), rest(r.Median), rest(r.Upper)}
}
