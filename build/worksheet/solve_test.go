package worksheet_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"hussif/build/worksheet"
	"hussif/content/quantity"
)

// Whatever is left out comes back as it was: each sheet is worked with all that
// belongs together, and then with every part of it that is enough.
func TestEveryUnknownComesBack(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		n, shown, depth := 1+r.IntN(60), 1+r.IntN(40), 1+r.IntN(40)
		for k, sheet := range map[int]string{2: "knife pleats", 4: "box pleats"} {
			all := map[string]string{
				"pleats": fmt.Sprint(n), "shown": fmt.Sprintf("%d/8 in", shown), "depth": fmt.Sprintf("%d/8 in", depth),
				"finished": fmt.Sprintf("%d/8 in", n*shown), "cloth": fmt.Sprintf("%d/8 in", n*(shown+k*depth)),
			}
			comesBack(t, sheet, all, 3, func(given []string) bool {
				return !slices.Contains(given, "depth") && !slices.Contains(given, "cloth")
			})
		}
		seams, was, now := 1+r.IntN(8), 4+r.IntN(8), r.IntN(4)
		comesBack(t, "let-out", map[string]string{
			"seams": fmt.Sprint(seams), "was": fmt.Sprintf("%d/8 in", was), "now": fmt.Sprintf("%d/8 in", now), "gives": fmt.Sprintf("%d/8 in", 2*seams*(was-now)),
		}, 3, nil)
		pleats, spacing := 1+r.IntN(200), 1+r.IntN(12)
		comesBack(t, "gauging", map[string]string{
			"pleats": fmt.Sprint(pleats), "spacing": fmt.Sprintf("%d/16 in", spacing), "cloth": fmt.Sprintf("%d/16 in", 2*pleats*spacing),
		}, 2, nil)
		finished, ratio := 1+r.IntN(400), 2+r.IntN(4)
		comesBack(t, "gathers", map[string]string{
			"finished": fmt.Sprintf("%d/8 in", finished), "ratio": fmt.Sprint(ratio), "cloth": fmt.Sprintf("%d/8 in", finished*ratio),
		}, 2, nil)
		round, allowance := 1+r.IntN(20), 1+r.IntN(8)
		comesBack(t, "piping", map[string]string{
			"round": fmt.Sprintf("%d/8 in", round), "allowance": fmt.Sprintf("%d/8 in", allowance), "strip": fmt.Sprintf("%d/8 in", round+2*allowance),
		}, 2, nil)
	}
}

// answersOf names the answer that repeats an input, where it has another name.
var answersOf = map[string]string{
	"was": "allowance before", "now": "allowance after", "ratio": "cloth to finished", "round": "cord round",
}

// comesBack gives a sheet every choice of so many inputs, and looks for all of them
// among the answers. Choices that say too little are left out.
func comesBack(t *testing.T, sheet string, all map[string]string, enough int, tooLittle func(given []string) bool) {
	t.Helper()
	names := make([]string, 0, len(all))
	for name := range all {
		names = append(names, name)
	}
	slices.Sort(names)
	for set := range 1 << len(names) {
		var given, text []string
		for i, name := range names {
			if set&(1<<i) != 0 {
				given, text = append(given, name), append(text, name+": "+all[name])
			}
		}
		if len(given) < enough || tooLittle != nil && tooLittle(given) {
			continue
		}
		p := work(t, sheet, strings.Join(text, "; "), inches)
		for name, want := range all {
			as := answersOf[name]
			if as == "" {
				as = name
			}
			got := figure(t, p, as, inches)
			if exact := number(want); !near(got, exact, 1e-6) {
				t.Fatalf("%s with %s: %s is %v, want %s", sheet, strings.Join(text, "; "), name, got, want)
			}
		}
	}
}

// number reads "17/8 in" and "3".
func number(text string) float64 {
	var num, den float64 = 0, 1
	if n, _ := fmt.Sscanf(text, "%g/%g", &num, &den); n < 2 {
		den = 1
	}
	return num / den
}

func TestFullPleatsTakeThreeTimesTheWidth(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 200 {
		n, v := 1+r.IntN(80), 1+r.IntN(50)
		for sheet, depth := range map[string]int{"knife pleats": 16, "box pleats": 8, "inverted pleats": 8} {
			p := work(t, sheet, fmt.Sprintf("pleats: %d; shown: %d in; depth: %d/16 in", n, v, depth*v), inches)
			if got := figure(t, p, "cloth to finished", inches); !near(got, 3, 1e-9) {
				t.Fatalf("%s, full: cloth to finished is %v", sheet, got)
			}
			if got := figure(t, p, "layers at the thickest", inches); got != 3 {
				t.Fatalf("%s, full: %v layers, want 3", sheet, got)
			}
		}
	}
}

// The layers are counted by brute force: each fold covers a stretch of the row.
func TestLayersAreCounted(t *testing.T) {
	for v := 1; v <= 6; v++ {
		for d := 1; d <= 20; d++ {
			knife := work(t, "knife pleats", fmt.Sprintf("pleats: 60; shown: %d; depth: %d", v, d), inches)
			box := work(t, "box pleats", fmt.Sprintf("pleats: 60; shown: %d; depth: %d", v, d), inches)
			mostKnife, mostBox := 0, 0
			for x := 20.25; x < 30; x += 0.5 { // in the middle of the row, off every edge
				k, b := 1, 1
				for edge := -60 * v; edge <= 120*v; edge += v {
					e := float64(edge)
					if x < e && x > e-float64(d) {
						k, b = k+2, b+2 // a fold that reaches back from its edge
					}
					if x > e && x < e+float64(d) {
						b += 2
					}
				}
				mostKnife, mostBox = max(mostKnife, k), max(mostBox, b)
			}
			if got := int(figure(t, knife, "layers at the thickest", inches)); got != mostKnife {
				t.Errorf("knife pleats of %d, %d deep: %d layers, counted %d", v, d, got, mostKnife)
			}
			if got := int(figure(t, box, "layers at the thickest", inches)); got != mostBox {
				t.Errorf("box pleats of %d, %d deep: %d layers, counted %d", v, d, got, mostBox)
			}
		}
	}
}

// With the number left open, spacing takes the fewest that keep to the largest gap.
func TestSpacingTakesTheFewest(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 300 {
		length, width, largest := 100+r.IntN(500), r.IntN(10), 5+r.IntN(60)
		p := work(t, "spacing", fmt.Sprintf("length: %d mm; width: %d mm; largest gap: %d mm", length, width, largest), centimetres)
		n, gap := answer(t, p, "number").Count, answer(t, p, "gap").Length
		if gap > quantity.Length(largest)*quantity.Millimetre {
			t.Fatalf("the gap is %d, more than %d mm", gap, largest)
		}
		if fewer := n - 1; fewer >= 2 && float64(length-fewer*width)/float64(fewer-1) <= float64(largest) {
			t.Fatalf("%d of %d mm on %d mm: %d would do for gaps of %d mm", n, width, length, fewer, largest)
		}
	}
}

func TestWillNotCloseUp(t *testing.T) {
	const cloth = "cloth: 120; spacing: 1/4; finished: 30; " // 1/8 in for each pleat
	for given, want := range map[string]bool{
		"stack: 1/4; layers: 4":     false, // two layers are 1/8 in
		"stack: 1/4; layers: 3":     true,
		"thickness: 1/16":           false,
		"thickness: 1/16; tails: 0": false,
		"thickness: 5/64":           true,
	} {
		p := work(t, "gauging", cloth+given, inches)
		said := slices.ContainsFunc(p.Cautions, func(c string) bool { return strings.HasPrefix(c, "will not close up") })
		if said != want {
			t.Errorf("%s: cautions %q, want will not close up: %v", given, p.Cautions, want)
		}
	}
}

func TestTooThickForTheFoot(t *testing.T) {
	thin := work(t, "knife pleats", "pleats: 10; shown: 2 cm; depth: 2 cm; thickness: 2 mm", centimetres)
	thick := work(t, "knife pleats", "pleats: 10; shown: 2 cm; depth: 2 cm; thickness: 2.1 mm", centimetres)
	says := func(p *worksheet.Paper) bool {
		return slices.ContainsFunc(p.Cautions, func(c string) bool { return strings.Contains(c, "needle plate") })
	}
	if says(thin) || !says(thick) {
		t.Errorf("3 layers of 2 mm: %v, of 2.1 mm: %v; want a caution above 6 mm only", thin.Cautions, thick.Cautions)
	}
}
