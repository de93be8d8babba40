package quantity_test

import (
	"testing"

	. "hussif/content/quantity"
)

func TestParseEstimate(t *testing.T) {
	foot := Estimate{12 * Inch, About}
	accepts(t, spelt(ParseEstimate), []trial[Estimate]{
		{"12 in", Estimate{12 * Inch, Exact}}, {"-1/4 in", Estimate{-quarter, Exact}},
		{"about 12 in", foot}, {"About 12 in", foot}, {"ca. 12 in", foot}, {"ca 12 in", foot}, {"c. 12 in", foot}, {"circa 12 in", foot}, {"c.12 in", foot},
		{"~12 in", foot}, {"~ 12 in", foot}, {"≈12 in", foot}, {"approx. 12 in", foot}, {"approximately 12 in", foot}, {"roughly 12 in", foot}, {"around 1 ft", foot},
		{"unknown", Estimate{State: Unknown}}, {"Not  known", Estimate{State: Unknown}}, {" ? ", Estimate{State: Unknown}},
		{"not measured", Estimate{State: NotMeasured}}, {"unmeasured", Estimate{State: NotMeasured}},
	})
	accepts(t, inInches(ParseEstimate), []trial[Estimate]{{"about 12", foot}})
	refuses(t, spelt(ParseEstimate), []refusal{
		{"", "", "number is missing", nil},
		{"about", "", "number is missing", nil},
		{"about 12", "", "unit is missing", []string{"about 12 in", "about 12 cm"}},
		{"about 12 inchs", "inchs", "no unit", []string{"about 12 inch", "about 12 inches"}},
		{"aboot 12 in", "aboot 12 in", "a length is missing", []string{"about 12 in"}},
		{"unknwon", "unknwon", "a length is missing", []string{"unknown"}},
		{"not mesured", "not mesured", "a length is missing", []string{"not measured"}},
		{"about unknown", "unknown", "a length is missing", []string{"unknown"}},
		{"about about 12 in", "about 12 in", "a length is missing", nil},
		{"unknown 12 in", "unknown 12 in", "a length is missing", nil},
	})
	for state, known := range map[State]bool{Exact: true, About: true, Unknown: false, NotMeasured: false} {
		if got := (Estimate{State: state}).Known(); got != known {
			t.Errorf("state %d: known is %v", state, got)
		}
	}
}

func TestParseRange(t *testing.T) {
	wide := Range{Inch + half, 2*Inch + half}
	accepts(t, spelt(ParseRange), []trial[Range]{
		{"0 to 1 in", Range{0, Inch}}, {"0 in to 1 in", Range{0, Inch}}, {"0–1 in", Range{0, Inch}}, {"0 – 1 in", Range{0, Inch}}, {"0—1 in", Range{0, Inch}},
		{"1 in", Range{Inch, Inch}}, {"1-1/2 in", Range{Inch + half, Inch + half}}, {"2 to 2 cm", Range{2 * Centimetre, 2 * Centimetre}},
		{"1 1/2 to 2 1/2 in", wide}, {"1½–2½ in", wide}, {"1-1/2 to 2-1/2 in", wide}, {"1-1/2-2-1/2 in", wide}, {"1 1/2-2 1/2 in", wide}, {`1½" to 2½"`, wide},
		{"1-2 in", Range{Inch, 2 * Inch}}, {"1 - 2 in", Range{Inch, 2 * Inch}}, {"1-2 1/2 in", Range{Inch, 2*Inch + half}}, {"1\u20102 in", Range{Inch, 2 * Inch}},
		{"1/2-3/4 in", Range{half, 3 * quarter}}, {"0-1/2 in", Range{0, half}}, {"1-3/2 in", Range{Inch, Inch + half}},
		{"-1 to 1 in", Range{-Inch, Inch}}, {"−1–1 in", Range{-Inch, Inch}}, {"-1 - −1/2 in", Range{-Inch, -half}}, {"-1 to -1/2 in", Range{-Inch, -half}},
		{"1 cm to 1 in", Range{Centimetre, Inch}}, {"11 in to 1 ft 1 in", Range{11 * Inch, 13 * Inch}},
	})
	accepts(t, inInches(ParseRange), []trial[Range]{{"0 to 1", Range{0, Inch}}, {"1", Range{Inch, Inch}}, {"0 in to 1", Range{0, Inch}}, {"0 to 1 cm", Range{0, Centimetre}}})
	refuses(t, spelt(ParseRange), []refusal{
		{"", "", "number is missing", nil},
		{"1 to", "", "number is missing", nil},
		{"0 to 1", "", "unit is missing", []string{"0 to 1 in", "0 to 1 cm"}},
		{"0 cm to 1", "", "unit is missing", []string{"0 cm to 1 cm"}},
		{"1 to 1 ft 3 in", " to 1 ft 3 in", "unit is missing", []string{"1 in to 1 ft 3 in", "1 cm to 1 ft 3 in"}},
		{"2 to 1 in", "2 to 1 in", "least to the most", []string{"1 in to 2 in"}},
		{"1 in to 1 cm", "1 in to 1 cm", "least to the most", []string{"1 cm to 1 in"}},
		{"1–1/2 in", "1–1/2 in", "least to the most", []string{"1 1/2 in", "1/2 in to 1 in"}},
		{"1 - 1/2 in", "1 - 1/2 in", "least to the most", []string{"1 1/2 in", "1/2 in to 1 in"}},
		{"1 -2 in", "-2 in", "a dash or a minus", []string{"1 to 2 in"}},
		{"1- 2 in", "- 2 in", "a dash or a minus", []string{"1 to 2 in"}},
		{"-3 -2 in", "-2 in", "a dash or a minus", []string{"-3 to 2 in", "-3 to -2 in"}},
		{"-1-1/2 in", "-1/2 in", "mixed number or to a range", []string{"-1 1/2 in", "-1 to 1/2 in"}},
		{"1 until 2 in", "until 2 in", "no unit", nil},
		{"1 to 2 inn", "inn", "no unit", []string{"1 to 2 in", "1 to 2 ins"}},
		{"1 to 2 to 3 in", "to 3 in", "no unit", nil},
	})
}

func TestParseSize(t *testing.T) {
	piece := Size{9 * Inch, 31 * Inch}
	accepts(t, spelt(ParseSize), []trial[Size]{
		{"9 in x 31 in", piece}, {"9 x 31 in", piece}, {"9 in × 31 in", piece}, {"9x31in", piece}, {"9×31 in", piece}, {`9" X 31"`, piece}, {"9 by 31 in", piece},
		{"9 in x 2 ft 7 in", piece}, {"9 1/2 x 31-1/4 in", Size{9*Inch + half, 31*Inch + quarter}}, {"20 cm x 1 m", Size{20 * Centimetre, Metre}},
	})
	accepts(t, inInches(ParseSize), []trial[Size]{{"9 x 31", piece}, {"9 in x 31", piece}})
	refuses(t, spelt(ParseSize), []refusal{
		{"", "", "number is missing", nil},
		{"9 in", "", "a width and a length", nil},
		{"1/7 x 31 in", "1/7 x 31 in", "exactly", []string{"1/8 in x 31 in", "4 mm x 31 in"}},
		{"9 x", "", "number is missing", nil},
		{"9 x 31", "", "unit is missing", []string{"9 x 31 in", "9 x 31 cm"}},
		{"9 cm x 31", "", "unit is missing", []string{"9 cm x 31 cm"}},
		{"9 inn x 31 in", "inn x 31 in", "no unit", []string{"9 in x 31 in", "9 ins x 31 in"}},
		{"0 x 31 in", "0 x 31 in", "wider than nothing", nil},
		{"9 x -31 in", "-31 in", "longer than nothing", nil},
		{"9 x 31 x 2 in", "x 2 in", "no unit", nil},
	})
}

func TestParseEdges(t *testing.T) {
	accepts(t, spelt(ParseEdges), []trial[Edges]{
		{"3/8 in each edge", Edges{3 * eighth, EachEdge}}, {"3/4 in each seam", Edges{3 * quarter, EachSeam}}, {"1 1/2 in all round", Edges{Inch + half, AllRound}},
		{"3/8 in on each edge", Edges{3 * eighth, EachEdge}}, {`3/8" per edge`, Edges{3 * eighth, EachEdge}}, {"3/8 in an edge", Edges{3 * eighth, EachEdge}},
		{"3/4 in in  each\tseam", Edges{3 * quarter, EachSeam}}, {"3/4 in A SEAM", Edges{3 * quarter, EachSeam}}, {"-2 cm all around", Edges{-2 * Centimetre, AllRound}},
	})
	accepts(t, inInches(ParseEdges), []trial[Edges]{{"3/8 each edge", Edges{3 * eighth, EachEdge}}})
	refuses(t, spelt(ParseEdges), []refusal{
		{"", "", "number is missing", nil},
		{"3/8 in", "", "could be either", []string{"3/8 in each edge", "3/8 in each seam", "3/8 in all round"}},
		{"3/8 in each side", "each side", "counted on", []string{"3/8 in each edge", "3/8 in each seam", "3/8 in all round"}},
		{"3/8 in each egde", "each egde", "counted on", []string{"3/8 in each edge"}},
		{"3/8 each edge", " each edge", "unit is missing", []string{"3/8 in each edge", "3/8 cm each edge"}},
		{"3/8 inhc each edge", "inhc each edge", "no unit", []string{"3/8 inch each edge"}},
	})
}
