package agenda

import (
	"fmt"

	"hussif/build/fit"
	"hussif/content/quantity"
)

// Words says what holds a build up: "synthetic-whalebone: 4 yd short: needs 14 yd, 6 1/2
// yd used, 3 1/2 yd on hand".
func (h Hold) Words(f quantity.Format) string {
	switch h.Why {
	case TimeShort:
		return h.Work.OutlookWords()
	case NoWearer:
		return "no wearer is named"
	case MeasureMissing:
		return fit.Missing{Why: fit.NoBody, Points: h.Points, Over: h.Over}.Words()
	case DoesNotFit:
		return fmt.Sprintf("%s at %s", h.Row.Words(f), h.Row.Point)
	case MaterialShort:
		return fmt.Sprintf("%s: %s", h.Lack.Material.Name(), h.Lack.Words(f))
	case DecisionOpen:
		return "to be decided: " + h.Question
	}
	return ""
}

// Words says what a second pair of hands is for.
func (h Help) Words() string {
	if h.Closure == "" {
		return "cannot be put on alone"
	}
	return "cannot be closed alone: " + h.Closure
}
