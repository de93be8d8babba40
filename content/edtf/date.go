package edtf

// A Date is what a text says of when something was: a closed interval of days,
// open at either end where the text says so. Its zero value is no date at all.
// Dates are compared with ==, and a Date is never changed once read.
type Date struct {
	Text             string // as the maker wrote it, without the space around it
	EDTF             string // the expression it was read as; equals Text when that was EDTF already
	Earliest, Latest Day    // the strict interval, both days within it; zero where open

	// OpenStart and OpenEnd say that the interval has no known first or last
	// day: EDTF's ".." and its empty end alike.
	OpenStart, OpenEnd bool

	// Uncertain ("?") and Approximate ("~") are true when every date named in
	// the text carries that mark on at least one of its parts. An interval of
	// which one end is approximate is not Approximate as a whole, but
	// [Date.Padded] widens that end.
	Uncertain, Approximate bool
}

// IsZero reports whether d is no date at all.
func (d Date) IsZero() bool { return d == Date{} }

// Within reports whether no day of d lies outside e. The zero Date is within
// nothing, and nothing is within it.
func (d Date) Within(e Date) bool {
	if d.IsZero() || e.IsZero() {
		return false
	}
	starts := e.OpenStart || !d.OpenStart && e.Earliest <= d.Earliest
	ends := e.OpenEnd || !d.OpenEnd && d.Latest <= e.Latest
	return starts && ends
}

// Overlaps reports whether d and e have a day in common.
func (d Date) Overlaps(e Date) bool {
	return !d.IsZero() && !e.IsZero() && !d.Before(e) && !d.After(e)
}

// Before reports whether every day of d is earlier than every day of e.
func (d Date) Before(e Date) bool {
	return !d.IsZero() && !e.IsZero() && !d.OpenEnd && !e.OpenStart && d.Latest < e.Earliest
}

// After reports whether every day of d is later than every day of e.
func (d Date) After(e Date) bool { return e.Before(d) }
