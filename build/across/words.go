package across

import (
	"fmt"

	"hussif/build/fit"
	"hussif/content/quantity"
)

// Words says what to do on the pattern: "add 7/8 in to each edge", "take 1/4 in off
// each edge", "leave it". It is empty on a sheet of a kind of garment.
func (r Row) Words(f quantity.Format) string {
	words := r.advice(f)
	if r.OneOnly() && r.Verdict != Untold && words != "" {
		words += ", by one build only"
	}
	return words
}

func (r Row) advice(f quantity.Format) string {
	fine := f.Finer() // so that what is shared over the edges adds up
	by, each := fine.Length(max(r.Change, -r.Change)), fine.Length(max(r.PerEdge, -r.PerEdge))
	shared := each != fine.Length(0)
	switch {
	case r.Verdict == Leave && r.Change == 0:
		return "leave it"
	case r.Verdict == Leave:
		return fmt.Sprintf("leave it: too close to call (%s, error %s)", fine.Signed(r.Change), fine.Length(r.Error))
	case r.Verdict == Add && shared:
		return "add " + each + " to each edge"
	case r.Verdict == TakeOff && shared:
		return "take " + each + " off each edge"
	case r.Verdict == Add:
		return "add " + by + " in all" + r.amongEdges()
	case r.Verdict == TakeOff:
		return "take " + by + " off in all" + r.amongEdges()
	case r.Verdict == Untold && r.Lacks == fit.NoGarment:
		return "no build was measured here at its first finish"
	case r.Verdict == Untold:
		return fit.Row{Verdict: r.Lacks, Over: r.Over, Body: r.Body, Wanted: r.Wanted}.Words(f)
	}
	return ""
}

// amongEdges says why a change is not given for an edge.
func (r Row) amongEdges() string {
	if r.Edges == 0 {
		return ": how many seam edges share it is not noted"
	}
	return fmt.Sprintf(" over %d edges, too little to mark on one", r.Edges)
}

// OffWords says how the builds came out at first finish against what was wanted
// then: "short by 1/2 in, the middle of 3 builds". The fault is the garments'.
func (r Row) OffWords(f quantity.Format) string {
	if r.Judged == 0 {
		return "no build could be judged here"
	}
	words := "as wanted"
	by := max(r.Off.Median, -r.Off.Median)
	switch {
	case by == 0:
	case by <= r.OffError:
		words = "too close to call"
	case r.Off.Median < 0:
		words = "short by " + f.Finer().Length(by)
	default:
		words = "ample by " + f.Finer().Length(by)
	}
	if r.Judged == 1 {
		return words + ", one build only"
	}
	return fmt.Sprintf("%s, the middle of %d builds", words, r.Judged)
}

// Words says what keeps something from being counted.
func (n NotCounted) Words() string {
	switch n.Why {
	case Unfinished:
		return "not finished by then, or nobody noted the day"
	case NeverTaped:
		return "never measured by its first finish"
	case MockUpOnly:
		return "only its mock-up was measured"
	case UnsureChange:
		return "altered before it was finished, by how much is not known"
	case Undated:
		return "changed on the pattern, on a day that is not noted"
	}
	return ""
}
