package edtf

// Customs are the conventions by which captions are read, on which museums
// differ. The zero value is the default described in the package comment.
type Customs struct {
	// Circa is how many years "ca." reaches to each side; 0 or less means 5.
	Circa int
	// FromOne counts the 18th century as 1701 to 1800 instead of 1700 to
	// 1799. Every part of a century then lies one year later too.
	FromOne bool
}

func (c Customs) circa() int {
	if c.Circa <= 0 {
		return 5
	}
	return c.Circa
}

// century returns the first and last year of a part of the nth century.
func (c Customs) century(n int, part [2]int) (first, last int) {
	start := (n - 1) * 100
	if c.FromOne {
		start++
	}
	return start + part[0], start + part[1]
}

// A portion is a named part of a century, a decade or a year.
type portion struct {
	name    string
	century [2]int // first and last year, counted from the century's first
	decade  [2]int // the same for a decade; nowhere where it is not said of one
	year    int    // the EDTF code for that part of a year
}

var (
	nowhere      = [2]int{-1, -1}
	wholeCentury = [2]int{0, 99}
	wholeDecade  = [2]int{0, 9}
)

// portions is the table of the package comment.
var portions = []portion{
	{"early", [2]int{0, 25}, [2]int{0, 3}, 37},
	{"mid", [2]int{35, 65}, [2]int{4, 6}, 38},
	{"late", [2]int{75, 99}, [2]int{7, 9}, 39},
	{"first half", [2]int{0, 49}, [2]int{0, 4}, 40},
	{"second half", [2]int{50, 99}, [2]int{5, 9}, 41},
	{"first third", [2]int{0, 33}, nowhere, 37},
	{"second third", [2]int{34, 66}, nowhere, 38},
	{"third third", [2]int{67, 99}, nowhere, 39},
	{"first quarter", [2]int{0, 24}, nowhere, 33},
	{"second quarter", [2]int{25, 49}, nowhere, 34},
	{"third quarter", [2]int{50, 74}, nowhere, 35},
	{"fourth quarter", [2]int{75, 99}, nowhere, 36},
}

// portionNamed finds a row of the table; nil when there is none.
func portionNamed(name string) *portion {
	for i := range portions {
		if portions[i].name == name {
			return &portions[i]
		}
	}
	return nil
}
