package draw_test

import (
	"fmt"
	"html/template"
	"math"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"hussif/theme/draw"
)

func stretch(from, to float64) draw.Stretch { return draw.Stretch{From: from, To: to} }

// year is a thing dated to one year, about is one that is padded by five.
func year(label string, y float64) draw.Thing {
	return draw.Thing{Label: label, Date: fmt.Sprint(y), Stated: stretch(y, y+1), Counted: stretch(y, y+1), Known: true}
}

func about(label string, y float64) draw.Thing {
	t := year(label, y)
	t.Date, t.Counted = "about "+t.Date, stretch(y-5, y+6)
	return t
}

func open(label, date string, s draw.Stretch) draw.Thing {
	return draw.Thing{Label: label, Date: date, Stated: s, Counted: s, Known: true}
}

// scaleSamples are scales of years, plain and awkward.
func scaleSamples() map[string]template.HTML {
	unsure := year("Photograph album of a pier", 1911)
	unsure.Unsure, unsure.Date = true, "1911?"
	both := about("A tailor's sample book of which nobody knows where it came from, with forty-one cuttings", 1907)
	both.Unsure, both.Date = true, "perhaps about 1907, by the paper that it is pasted into"
	undated := draw.Thing{Label: "Ballad sheet", Date: "without a date"}
	var many []draw.Thing
	for i := range 30 {
		many = append(many, year(fmt.Sprintf("Plate %d of a set in which every one is much like the last", i+1), 1780+float64(i%7)))
	}
	return map[string]template.HTML{
		"scale-feature": draw.DrawScale(draw.Scale{
			Words: words("k1", "Piped seams, dated", "Shown by two objects and lacked by two."),
			Era:   stretch(1780, 1790), EraName: "era: 1780 to 1789",
			Groups: []draw.Group{
				{Label: "shown by 2", Things: []draw.Thing{about("Moss green jacket with piped back", 1785), year("A cutter's pocket book", 1789)}},
				{Label: "lacked by 2", Things: []draw.Thing{
					open("Brown linen jacket with turned-back cuffs", "1770s", stretch(1770, 1780)),
					open("Portrait of a woman with a basket", "1780s", stretch(1780, 1790)),
				}},
			},
		}),
		"scale-kinds": draw.DrawScale(draw.Scale{
			Words: words("k2", "Dates of each kind", "Uncertain, approximate and open dates."),
			Era:   stretch(1912, 1913), EraName: "era of the walking skirt, which is to be worn at the promenade: 1912",
			Groups: []draw.Group{
				{Label: "shown by 5", Things: []draw.Thing{
					open("A pattern in a drawer", "before 1900", draw.Stretch{OpenFrom: true, To: 1900}), both, unsure,
					open("Plate of promenade dress, May 1912", "May 1912", stretch(1912.33, 1912.42)),
					open("A hook", "1913 or later", draw.Stretch{From: 1913, OpenTo: true}), undated,
				}},
				{Label: "lacked by none"},
			},
		}),
		"scale-one":     draw.DrawScale(draw.Scale{Words: words("k3", "One", "One year."), Groups: []draw.Group{{Label: "references", Things: []draw.Thing{year("A plate", 1786)}}}}),
		"scale-undated": draw.DrawScale(draw.Scale{Words: words("k4", "None", "No dates."), Era: stretch(1780, 1790), EraName: "era: 1780s", Groups: []draw.Group{{Label: "shown by 1", Things: []draw.Thing{undated}}}}),
		"scale-many":    draw.DrawScale(draw.Scale{Words: words("k5", "Many", "Thirty plates."), Groups: []draw.Group{{Label: "shown by 30", Things: many}}}),
		"scale-far": draw.DrawScale(draw.Scale{
			Words: words("k6", "Far apart", "From before our era to now."), Era: draw.Stretch{From: 1850, OpenTo: true}, EraName: "era: from 1850 on",
			Groups: []draw.Group{{Label: "shown by 3", Things: []draw.Thing{open("A pin", "45 BC", stretch(-44, -43)), year("A tuck", 1850), open("Anything", "any year", draw.Stretch{OpenFrom: true, OpenTo: true})}}},
		}),
	}
}

var (
	dateBar = regexp.MustCompile(`<rect class="date-bar[^"]*" x="([^"]+)" y="([^"]+)" width="([^"]+)"`)
	numeral = regexp.MustCompile(`class="halo numeral" text-anchor="middle" x="([^"]+)"[^>]*>(\d+)<`)
)

func figure(t *testing.T, text string) float64 {
	t.Helper()
	f, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// A bar stands where the numbers on the axis say, to half a unit, and bars of later
// years stand further right.
func TestBarsStandAtTheirYears(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		from := 1500 + float64(random.IntN(400))
		long := 20 + float64(random.IntN(300))
		s := stretch(from, from+long)
		svg := string(draw.DrawScale(draw.Scale{
			Words:  words("x", "a", "b"),
			Groups: []draw.Group{{Things: []draw.Thing{open("first", "", s), open("last", "", stretch(from+long-2, from+long))}}},
		}))
		marks := numeral.FindAllStringSubmatch(svg, -1)
		if len(marks) < 2 {
			t.Fatalf("%v: only %d years are marked", s, len(marks))
		}
		a, b := marks[0], marks[len(marks)-1]
		x0, y0, x1, y1 := figure(t, a[1]), figure(t, a[2]), figure(t, b[1]), figure(t, b[2])
		at := func(year float64) float64 { return x0 + (year-y0)/(y1-y0)*(x1-x0) }
		bar := dateBar.FindStringSubmatch(svg)
		left := figure(t, bar[1])
		right := left + figure(t, bar[3])
		if math.Abs(left-at(s.From)) > 0.5 || math.Abs(right-at(s.To)) > 0.5 {
			t.Errorf("%v is drawn from %g to %g, want %g to %g", s, left, right, at(s.From), at(s.To))
		}
	}
}

// A year among centuries can still be seen.
func TestShortDatesAreSeen(t *testing.T) {
	svg := string(scaleSamples()["scale-far"])
	bars := dateBar.FindAllStringSubmatch(svg, -1)
	if len(bars) != 5 { // two of them in the key
		t.Fatalf("%d bars", len(bars))
	}
	for _, bar := range bars {
		if wide := figure(t, bar[3]); wide < 4 {
			t.Errorf("a bar is %g wide", wide)
		}
	}
}

// Each kind of date has a shape of its own, with its line in the key.
func TestKindsOfDateDifferInShape(t *testing.T) {
	svg := string(scaleSamples()["scale-kinds"])
	for part, n := range map[string]int{
		`class="date-bar" `:        5, // two open, one plain, two in the key
		`class="date-bar unsure" `: 3,
		`fill="url(#k2-unsure)"`:   3,
		`class="date-arrow"`:       3,
		`class="reach"`:            8, // four lines a thing, one thing and the key
		`class="era-edge"`:         2,
		`as dated<`:                1,
		`a question mark<`:         1,
		`as far as that`:           1,
		`no known beginning`:       1,
		`>without a date<`:         1,
	} {
		if got := strings.Count(svg, part); got != n {
			t.Errorf("%s stands there %d times, want %d", part, got, n)
		}
	}
	plain := string(scaleSamples()["scale-one"])
	if strings.Contains(plain, "as dated") {
		t.Error("a scale with plain dates only has a key")
	}
}

func TestScaleOfNonsense(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	w := words("x", `<b>"&`, `</desc><script>`)
	for name, v := range map[string]draw.Scale{
		"empty":     {Words: w},
		"no number": {Words: w, EraName: "</text>", Era: stretch(nan, -inf), Groups: []draw.Group{{Label: "<", Things: []draw.Thing{open("&", "<i>", stretch(inf, nan)), year("far", 1e300)}}}},
		"far":       {Words: w, Groups: []draw.Group{{Things: []draw.Thing{year("far", 9e8), year("further", -9e8)}}}},
		"backwards": {Words: w, EraName: "era", Era: stretch(1800, 1700), Groups: []draw.Group{{Things: []draw.Thing{open("", "", stretch(1790, 1780))}}}},
		"open":      {Words: w, EraName: "era", Era: draw.Stretch{OpenFrom: true, OpenTo: true}, Groups: []draw.Group{{Things: []draw.Thing{open("", "", draw.Stretch{OpenFrom: true, OpenTo: true})}}}},
		"the edge":  {Words: w, Groups: []draw.Group{{Things: []draw.Thing{year("a", 1780), open("b", "", draw.Stretch{From: 1781, OpenTo: true}), open("c", "", draw.Stretch{OpenFrom: true, To: 1780})}}}},
	} {
		t.Run(name, func(t *testing.T) { parsed(t, draw.DrawScale(v), false) })
	}
}
