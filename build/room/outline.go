package room

import (
	"slices"

	"hussif/content/measure"
	"hussif/content/quantity"
)

// nearEnd is how near to the end of its seam a panel is taken to end there (common
// practice).
const nearEnd = quantity.Inch

// Outline returns the widths by which a panel is drawn, by height. It runs from the
// nearest level above that needs no panel, or from the top of its seam, to the nearest
// one below, or to the foot; the ends of a seam have no Point. A seam whose length is
// 0, not known, has no foot. Levels without a height are left out, and of those at
// one height, as of a left and a right leg, the widest counts.
func (p Panel) Outline(seam quantity.Length) []Width {
	var run []Width
	for _, w := range p.Widths {
		last := len(run) - 1
		switch {
		case !w.Placed:
		case last >= 0 && run[last].At == w.At:
			if w.Width > run[last].Width {
				run[last] = w
			}
		default:
			run = append(run, w)
		}
	}
	wide := func(w Width) bool { return w.Width > 0 }
	first := slices.IndexFunc(run, wide)
	if first < 0 {
		return nil
	}
	last := len(run) - 1
	for !wide(run[last]) {
		last--
	}
	out := slices.Clone(run[max(first-1, 0):min(last+2, len(run))])
	if first == 0 && run[0].At >= nearEnd {
		out = slices.Insert(out, 0, Width{Placed: true})
	}
	if end := run[len(run)-1]; wide(end) && seam-end.At >= nearEnd {
		out = append(out, Width{Placed: true, At: seam})
	}
	return out
}

// IsEnd reports whether a width of an outline is at an end of the seam and not at a
// measure.
func (w Width) IsEnd() bool { return w.Point == measure.Point{} }
