package edtf

// A season is a part of a year that EDTF writes in place of the month.
type season struct {
	words string // before the year
	// first and last are months of the year, whole. Month 0 is December of the
	// year before and month 14 February of the year after.
	first, last int
}

const (
	firstSeason    = 21
	northernSpring = 25
	northernWinter = 28
)

// seasons holds the codes 21 to 41 of the specification. The months of 21 to
// 24, which it leaves open, are the quarters of the year as in the reference
// table of the tests; those of 25 to 32 are the three whole months that weather
// services call by that name. A winter or a summer around the new year may be
// named by the year it begins in or the year it ends in: both are covered.
var seasons = [...]season{
	{"spring ", 1, 3}, {"summer ", 4, 6}, {"autumn ", 7, 9}, {"winter ", 10, 12},
	{"northern spring ", 3, 5}, {"northern summer ", 6, 8}, {"northern autumn ", 9, 11}, {"northern winter ", 0, 14},
	{"southern spring ", 9, 11}, {"southern summer ", 0, 14}, {"southern autumn ", 3, 5}, {"southern winter ", 6, 8},
	{"first quarter of ", 1, 3}, {"second quarter of ", 4, 6}, {"third quarter of ", 7, 9}, {"fourth quarter of ", 10, 12},
	{"first four months of ", 1, 4}, {"middle four months of ", 5, 8}, {"last four months of ", 9, 12},
	{"first half of ", 1, 6}, {"second half of ", 7, 12},
}

// seasonOf returns the season with an EDTF code; nil when there is none.
func seasonOf(code int) *season {
	if code < firstSeason || code >= firstSeason+len(seasons) {
		return nil
	}
	return &seasons[code-firstSeason]
}

// days returns the first and last day of the season in a year.
func (s *season) days(year int) (first, last Day) {
	return DayOf(year, s.first, 1), DayOf(year, s.last+1, 1) - 1
}

var monthNames = [...]string{
	"January", "February", "March", "April", "May", "June",
	"July", "August", "September", "October", "November", "December",
}
