package across

import (
	"cmp"
	"slices"

	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A garment is a build that counts, at its first finish.
type garment struct {
	build   *journal.Build
	finish  edtf.Day
	cut     edtf.Day
	table   fit.Table
	book    fit.Book
	adjusts []fit.Adjust
}

// count returns the builds that were finished and taped by the day, by their first
// finish, and those that were not.
func count(j *journal.Journal, builds []*journal.Build, day edtf.Day) ([]garment, []NotCounted) {
	var counted []garment
	var not []NotCounted
	for _, b := range builds {
		leaveOut := func(why Why) { not = append(not, NotCounted{From: fit.Reason{Record: b.ID}, Build: b.ID, Why: why}) }
		finish, ok := fit.FirstFinish(b)
		if !ok || finish > day {
			leaveOut(Unfinished)
			continue
		}
		in := fit.InputFor(j, b, j.Person(b.For), finish)
		g := garment{build: b, finish: finish, cut: cut(b, finish), table: fit.Compute(in), adjusts: in.Adjusts}
		known := slices.ContainsFunc(g.table.Rows, taped)
		if !slices.ContainsFunc(g.table.Rows, func(r fit.Row) bool { return taped(r) && !r.Garment.MockUp }) {
			if known {
				leaveOut(MockUpOnly)
			} else {
				leaveOut(NeverTaped)
			}
			continue
		}
		g.book = fit.Ledger(j, b)
		counted = append(counted, g)
	}
	slices.SortFunc(counted, func(a, b garment) int {
		return cmp.Or(cmp.Compare(a.finish, b.finish), cmp.Compare(a.build.ID, b.build.ID))
	})
	slices.SortFunc(not, func(a, b NotCounted) int { return cmp.Compare(a.Build, b.Build) })
	return counted, not
}

func taped(r fit.Row) bool { return r.Garment.Measured.Known() }

// cut returns the day on which a build was cut.
func cut(b *journal.Build, finish edtf.Day) edtf.Day {
	var begun edtf.Day
	for _, n := range b.Notes {
		switch {
		case n.Date == 0:
		case n.Stage == "cutting":
			return n.Date
		case begun == 0 && n.Stage != "planning" && n.Stage != "mock-up":
			begun = n.Date
		}
	}
	if begun == 0 {
		return finish
	}
	return begun
}

// at returns the row of a garment's table that holds for a point.
func (g *garment) at(p measure.Point) (fit.Row, bool) {
	i := slices.IndexFunc(g.table.Rows, func(r fit.Row) bool { return covers(r.Point, p) })
	if i < 0 || !taped(g.table.Rows[i]) {
		return fit.Row{}, false
	}
	return g.table.Rows[i], true
}

// covers reports whether what is said of one point holds for another: the plain
// name of a paired measure stands for both sides.
func covers(said, asked measure.Point) bool {
	return said.Measure == asked.Measure && (said.Side == measure.Both || said.Side == asked.Side)
}

// closed returns how wide open a garment is when taped, less how far it laps, where
// anything adjusts it at a point.
func closed(adjusts []fit.Adjust, p measure.Point) (open quantity.Length, adjusted bool) {
	for _, a := range adjusts {
		switch {
		case !slices.ContainsFunc(a.Points, func(at measure.Point) bool { return covers(at, p) }):
			continue
		case a.Lap:
			open -= a.MeasuredAt
		default:
			open += a.MeasuredAt
		}
		adjusted = true
	}
	return open, adjusted
}
