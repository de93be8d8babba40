package worksheet_test

import (
	"slices"
	"strings"
	"testing"

	"hussif/build/worksheet"
)

func TestRefuses(t *testing.T) {
	for _, c := range []struct{ sheet, given, input, text string }{
		{"knife pleats", "finished: 34; shown: 0; depth: 1", "shown", "more than nothing"},
		{"knife pleats", "finished: -34; shown: 1; depth: 1", "finished", "less than nothing"},
		{"knife pleats", "finished: 34; shown: 1", "", "how deep"},
		{"knife pleats", "pleats: 34; depth: 1", "", "cannot be told"},
		{"knife pleats", "finished: 34; cloth: 30; pleats: 10", "cloth", "not wider"},
		{"knife pleats", "finished: 34; pleats: 34; shown: 2; depth: 1", "finished", "34 pleats that show 2 in make 68 in, not 34 in"},
		{"knife pleats", "finished: 34; pleats: 34; depth: 1; cloth: 90", "cloth", "make 102 in, not 90 in"},
		{"knife pleats", "cloth: 2; shown: 1; depth: 1", "cloth", "one pleat takes 3 in"},
		{"knife pleats", "pleats: 2.5; shown: 1; depth: 1", "pleats", "whole number"},
		{"knife pleats", "pleats: 0; shown: 1; depth: 1", "pleats", "from 1 to"},
		{"knife pleats", "pleats: 5; shown: 1; depth: 1; depht: 2", "depht", "nothing called"},
		{"knife pleats", "pleats: 5; shown: 1; depth: 1, 2", "depth", "not several"},
		{"knife pleats", "finished: 34; shown: 1; depth: 1; cloth width: 1; allowance: 1/2", "allowance", "whole width"},
		{"gauging", "spacing: 1/4", "", "how wide the cloth is"},
		{"gauging", "cloth: 100", "", "how far apart"},
		{"gauging", "cloth: 1; spacing: 1", "spacing", "no room"},
		{"gauging", "cloth: 100; spacing: 1; finished: 100", "finished", "narrower"},
		{"gauging", "cloth: 100; spacing: 1; pleats: 20", "spacing", "make 50 pleats, not 20"},
		{"gauging", "cloth: 100; spacing: 1; finished: 25; ratio: 3", "ratio", "4 to 1, not 3"},
		{"gauging", "cloth: 100; spacing: 1; finished: 25; stack: 1/4", "", "layers"},
		{"gathers", "finished: 30", "", "two of"},
		{"gathers", "finished: 30; cloth: 30", "cloth", "nothing to gather"},
		{"bias strips", "strip: 2", "", "alone"},
		{"bias strips", "strip: 20; piece: 10 x 10", "strip", "no strip"},
		{"bias strips", "strip: 1; piece: 1/2 x 10; seam: 1/4", "piece", "seams"},
		{"bias strips", "strip: 1 mm; piece: 900 m x 900 m", "strip", "more than"},
		{"straight strips", "strip: 2; cloth width: 54", "", "length that is needed"},
		{"straight strips", "strip: 2; cloth width: 54; needed: 100; number: 3", "number", "leave one"},
		{"piping", "diameter: 1/2", "", "two of"},
		{"piping", "round: 2; strip: 1", "strip", "cord alone"},
		{"piping", "strip: 1; allowance: 1/2", "allowance", "nothing for a cord"},
		{"piping", "diameter: 1; round: 1; allowance: 1", "round", "measures round"},
		{"let-out", "seams: 2; was: 1/4; gives: 3", "gives", "at the most"},
		{"let-out", "was: 1/2; now: 1/2; gives: 3", "now", "does not change"},
		{"let-out", "seams: 2; was: 1/2", "", "three of"},
		{"let-in panel", "widths: 2 at 0", "widths", "two levels"},
		{"let-in panel", "widths: 2, 3 at 4", "widths", "needs the place"},
		{"let-in panel", "widths: 2 at 0, 3 at 0", "widths", "further along"},
		{"spacing", "length: 10; first end: 6; last end: 4; number: 3", "first end", "take all"},
		{"spacing", "length: 10; number: 6; width: 2", "width", "take 12 in"},
		{"spacing", "length: 10; number: 3; largest gap: 2", "number", "6 would do"},
		{"spacing", "length: 10", "", "how many"},
		{"circle skirt", "part: fifth; waist: 26", "part", "full"},
		{"circle skirt", "part: full", "", "two of"},
		{"circle skirt", "part: full; waist: 2", "allowance", "radius of the waist"},
		{"circle skirt", "waist: 26; radius: 1", "radius", "whole circle"},
		{"circle skirt", "part: half; waist: 26; length: 30; cloth width: 3", "cloth width", "no piece"},
		{"hem level", "lengths: 38, 41; cut length: 41; hem: 1", "lengths", "too short by 1 in"},
		{"yardage", "pieces: 60 x 70; cloth width: 54", "pieces", "does not lie"},
		{"yardage", "pieces: 501 of 1 x 1; cloth width: 54", "pieces", "at most 500"},
		{"yardage", "pieces: 1 x 1; cloth width: 54; shrinkage: 60 %", "shrinkage", "from 0 to 50"},
	} {
		p := try(t, c.sheet, c.given, inches)
		found := slices.ContainsFunc(p.Faults, func(f worksheet.Fault) bool {
			return f.Input == c.input && strings.Contains(f.Text, c.text)
		})
		if !found {
			t.Errorf("%s with %s: faults %+v, want one about %q: %q", c.sheet, c.given, p.Faults, c.input, c.text)
		}
		if len(p.Answers)+len(p.Drawings)+len(p.Prints) > 0 {
			t.Errorf("%s with %s: answers in spite of its faults", c.sheet, c.given)
		}
	}
}

// What could stand in the place of what is wrong is told with the place.
func TestFaultsHaveAPlace(t *testing.T) {
	p := try(t, "hem level", "lengths: 38, 41 inn; hem: 1", inches)
	f := p.Faults[0]
	if f.Input != "lengths" || f.Item != 1 || f.Offset != 3 || len(f.Instead) == 0 || f.Instead[0] != "41 in" {
		t.Errorf("got %+v", f)
	}
	p = try(t, "piping", "round: 1/2; allowance: 1/2; seams: 2 of 17 inn", inches)
	if f := p.Faults[0]; f.Input != "seams" || f.Offset != 8 || len(f.Instead) == 0 || f.Instead[0] != "2 of 17 in" {
		t.Errorf("got %+v", f)
	}
}

// Every default and every example of an input is one that is read.
func TestInputsAreSound(t *testing.T) {
	names := make(map[string]bool)
	for _, s := range worksheet.All() {
		about := s.About()
		for _, name := range append([]string{about.Name}, about.Also...) {
			if names[name] {
				t.Errorf("two sheets are called %q", name)
			}
			names[name] = true
			if found, _ := worksheet.Find(strings.ToUpper(strings.ReplaceAll(name, " ", "-"))); found == nil || found.About().Name != about.Name {
				t.Errorf("%q does not lead to %s", name, about.Name)
			}
		}
		if about.Short == "" || about.Long == "" || about.Formula == "" || about.Source == "" {
			t.Errorf("%s does not say all about itself", about.Name)
		}
		seen := make(map[string]bool)
		for _, in := range s.Inputs() {
			if in.Doc == "" || in.Example == "" || in.Into == nil {
				t.Errorf("%s: %q lacks its words", about.Name, in.Name)
			}
			if seen[in.Name] {
				t.Errorf("%s has %q twice", about.Name, in.Name)
			}
			seen[in.Name] = true
			for _, text := range []string{in.Example, in.Default, in.Metric} {
				if text == "" {
					continue
				}
				e := entries(in.Name + ": " + text)
				p := worksheet.Work(s, e, inches)
				for _, f := range p.Faults {
					if f.Input == in.Name && f.Offset > 0 || strings.Contains(f.Text, "has to be a") {
						t.Errorf("%s: %s: %s is refused: %s", about.Name, in.Name, text, f.Text)
					}
				}
			}
		}
	}
}
