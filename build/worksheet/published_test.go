package worksheet_test

import (
	"testing"

	"hussif/content/quantity"
)

// Worked examples and figures as published, or common practice where that is said.
// Where a page has rounded, or is wrong, the exact figure is tested and that is said.
func TestPublished(t *testing.T) {
	const exact = 1e-6
	in, cm := inches, centimetres
	for _, c := range []struct {
		source       string
		sheet, given string
		f            quantity.Format
		answer       string
		want, within float64
	}{
		{"common practice", "let-out", "seams: 1; was: 5/8; now: 1/4", in, "gives", 0.75, exact},
		{"common practice", "let-out", "seams: 2; was: 3/4; now: 1/4", in, "gives", 2, exact},
		{"R. Robinson, Costume construction text, ch. 17: the whole is divided by the seam edges", "let-out", "seams: 4; was: 5/8; gives: 3", in, "each edge moves", 0.375, exact},
		{"common practice", "let-out", "seams: 2; was: 2; now: 0.5; girth: 93", cm, "girth after", 99, exact},

		{"common practice", "gauging", "cloth: 100; spacing: 1/2", in, "pleats", 100, exact},
		{"common practice: half the spacing, twice the pleats", "gauging", "cloth: 100; spacing: 1/4", in, "pleats", 200, exact},
		{"common practice: and half as deep", "gauging", "cloth: 100; spacing: 1/4", in, "pleats stand", 0.25, exact},
		{"arithmetic on figures of renaissancetailor.com, cartridge pleating", "gauging", "cloth: 120; spacing: 1/4; finished: 30", in, "stitches in each row", 480, exact},
		{"the same", "gauging", "cloth: 120; spacing: 1/4; finished: 30", in, "pleats", 240, exact},
		{"the same", "gauging", "cloth: 120; spacing: 1/4; finished: 30", in, "pleats to the inch", 8, exact},
		{"the same", "gauging", "cloth: 120; spacing: 1/4; finished: 30", in, "cloth to finished", 4, exact},
		{"a practitioner's post, 2010: band 46.5 in, cloth 179 in, 7/8 in a pleat", "gauging", "cloth: 179; finished: 46.5; room: 7/8", in, "pleats", 53, exact},
		{"the same: 3.377 in of cloth in each, two stitches", "gauging", "cloth: 179; finished: 46.5; room: 7/8", in, "spacing", 3.377 / 2, 0.0005},
		{"the same", "gauging", "cloth: 179; finished: 46.5; room: 7/8", in, "cloth to finished", 3.85, 0.005},

		{"brushesandthread.wordpress.com 2013", "knife pleats", "finished: 34; shown: 1; depth: 1", in, "cloth", 102, exact},
		{"treadleyardgoods.blogspot.com", "knife pleats", "finished: 30; shown: 1; depth: 1", in, "cloth", 90, exact},
		{"treadleyardgoods.blogspot.com: pleats of 1 in with spaces of 1/2 in, three repeats", "knife pleats", "pleats: 3; shown: 1 1/2; depth: 1", in, "cloth", 10.5, exact},
		{"the same", "knife pleats", "pleats: 3; shown: 1 1/2; depth: 1", in, "finished", 4.5, exact},
		{"NIMI (India), dressmaking trade textbook, p. 203", "knife pleats", "finished: 92; shown: 5; depth: 4", cm, "pleats", 18, exact},
		{"the same, rounded there to 5.11", "knife pleats", "finished: 92; shown: 5; depth: 4", cm, "shown", 5.11, 0.005},
		{"the same", "knife pleats", "finished: 92; shown: 5; depth: 4", cm, "cloth", 236, exact},
		{"the same: from cloth 90 wide, allowance 2", "knife pleats", "finished: 92; shown: 5; depth: 4; cloth width: 90; allowance: 2", cm, "widths of cloth", 3, exact},
		{"the same, p. 204", "knife pleats", "finished: 50; shown: 2.5; depth: 2.5", cm, "pleats", 20, exact},
		{"the same, p. 204; 152 there has 2 cm of seams in it", "knife pleats", "finished: 50; shown: 2.5; depth: 2.5", cm, "cloth", 150, exact},

		{"number × (visible + 4 × depth), on several workroom pages", "box pleats", "pleats: 6; shown: 4; depth: 2", in, "cloth", 72, exact},
		{"the same", "box pleats", "pleats: 6; shown: 4; depth: 2", in, "finished", 24, exact},
		{"NIMI, p. 204: one box pleat in a section of 60", "box pleats", "pleats: 1; finished: 60; depth: 12", cm, "cloth", 108, exact},
		{"NIMI, p. 205: one inverted pleat in a section of 66", "inverted pleats", "pleats: 1; finished: 66; depth: 6.5", cm, "cloth", 92, exact},

		{"mydecozo.co.uk, soft-furnishing questions: by area", "bias strips", "strip: 2; piece: 20 x 20", in, "length by area", 200, exact},
		{"sewaquilt.com, bias tape: by area", "bias strips", "strip: 2; piece: 12 x 12", in, "length by area", 72, exact},
		{"mydecozo.co.uk, rounded there to 22.36", "bias strips", "strip: 2; needed: 250", in, "square by area", 22.36, 0.005},
		{"the same, to a whole inch", "bias strips", "strip: 2; needed: 250", in, "square by area, to a whole inch", 23, exact},
		{"quiltersquestiontime.com 2021, rounded there to 18.71", "bias strips", "strip: 3 1/2; needed: 100", in, "square by area", 18.71, 0.005},
		{"the same, to a whole inch", "bias strips", "strip: 3 1/2; needed: 100", in, "square by area, to a whole inch", 19, exact},
		{"thebuttonship.blogspot.com 2014: 7 strips", "bias strips", "strip: 1; needed: 98; seam: 1/4", in, "turns of a tube", 7, exact},
		{"the same: a square of 7 × 1 × √2 + 1/2, rounded there to 10.4", "bias strips", "strip: 1; needed: 98; seam: 1/4", in, "square by whole turns", 10.4, 0.001},
		{"upholster.com: 950 in of 1 1/2 in from cloth of 54 in", "straight strips", "strip: 1 1/2; cloth width: 54; needed: 950", in, "strips", 18, exact},
		{"the same", "straight strips", "strip: 1 1/2; cloth width: 54; needed: 950", in, "length of cloth", 27, exact},

		{"esprit670, piping: a cord of 1/2 in round", "piping", "round: 1/2; allowance: 1/2", in, "strip", 1.5, exact},
		{"upholsteryresource: a cord of 5/32 in across, rounded there to 1.491", "piping", "diameter: 5/32; allowance: 1/2", in, "strip", 1.491, 0.0005},

		{"treadleyardgoods.blogspot.com 2023: 8 buttons in 15 in, rounded there to 2.14", "spacing", "length: 15; number: 8", in, "gap", 2.14, 0.005},
		{"arithmetic: 7 in a band of 14 in with 3/4 in at both ends", "spacing", "length: 14; number: 7; first end: 3/4; last end: 3/4", in, "gap", 12.5 / 6, 1e-7},

		// prettyquirkypants.com 2014 gives radii to 1/4 in; these are exact to the figures shown.
		{"26 ÷ 2π", "circle skirt", "part: full; waist: 26", in, "radius of the waist seam", 4.14, 0.005},
		{"26 ÷ π", "circle skirt", "part: half; waist: 26", in, "radius of the waist seam", 8.28, 0.005},
		{"78 ÷ 2π", "circle skirt", "part: third; waist: 26", in, "radius of the waist seam", 12.41, 0.005},
		{"104 ÷ 2π", "circle skirt", "part: quarter; waist: 26", in, "radius of the waist seam", 16.55, 0.005},
		{"smartpatternmaking.com", "circle skirt", "part: full; waist: 110", cm, "radius of the waist seam", 17.5, 0.05},
		{"smartpatternmaking.com", "circle skirt", "part: half; waist: 110", cm, "radius of the waist seam", 35, 0.05},
	} {
		p := work(t, c.sheet, c.given, c.f)
		if got := figure(t, p, c.answer, c.f); !near(got, c.want, c.within) {
			t.Errorf("%s with %s: %s is %v, want %v (%s)", c.sheet, c.given, c.answer, got, c.want, c.source)
		}
	}
}

// A page promises 100 in of bias of 1 in from 10 1/2 in square, with seams of 1/4 in,
// and finds fewer: that is the area between the seams, and whole turns give √2 × 70.
func TestAreaPromisesMoreThanWholeStrips(t *testing.T) {
	p := work(t, "bias strips", "strip: 1; piece: 10 1/2 x 10 1/2; seam: 1/4", inches)
	byArea, round := figure(t, p, "length by area", inches), figure(t, p, "length round a tube", inches)
	if !near(byArea, 110.25, 1e-6) || !near(round, 98.99, 0.01) {
		t.Errorf("by area %v, round a tube %v; want 110.25 and 98.99", byArea, round)
	}
}

func TestSpacingMarksDoNotAddUpRounding(t *testing.T) {
	p := work(t, "spacing", "length: 14; number: 7; first end: 3/4; last end: 3/4", inches)
	// The exact marks are 0.75, 2.83, 4.92, 7, 9.08, 11.17 and 13.25, by arithmetic.
	want := "mark from the first end at 3/4 in, 2 13/16 in, 4 15/16 in, 7 in, 9 1/16 in, 11 3/16 in and 13 1/4 in"
	if p.Cut[0] != want {
		t.Errorf("got %q, want %q", p.Cut[0], want)
	}
}
