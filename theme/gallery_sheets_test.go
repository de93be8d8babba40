package theme

import (
	"html/template"
	"time"

	"hussif/theme/draw"
)

// mm is how many millimetres so many inches are.
func mm(inches float64) float64 { return inches * 25.4 }

// tapes are those of the striped jacket; id keeps what is on one page apart.
func tapes(id string) []Tape {
	return []Tape{
		{"natural waist girth", draw.DrawTape(draw.Tape{
			Words: draw.Words{ID: id + "-waist", Title: "Natural waist girth on the tape", Desc: "Body 28 3/4 in; the garment, at 27 1/2 in, is short by 1 1/4 in."},
			Body:  draw.Mark{Least: mm(28.75), Most: mm(28.75), Error: 11, Label: "body 28 3/4 in"}, Garment: draw.Mark{Least: mm(27.5), Most: mm(27.5), Error: 6, Label: "garment 27 1/2 in"}, Wanted: draw.Mark{Least: mm(28.75), Most: mm(28.75), Label: "wanted 28 3/4 in"},
		})},
		{"bust girth", draw.DrawTape(draw.Tape{
			Words: draw.Words{ID: id + "-bust", Title: "Bust girth on the tape", Desc: "Body 36 1/2 in; the garment, at 36 3/4 in, is inside the wanted range of 36 1/2 to 37 1/2 in."},
			Body:  draw.Mark{Least: mm(36.5), Most: mm(36.5), Error: 11, Label: "body 36 1/2 in"}, Garment: draw.Mark{Least: mm(36.75), Most: mm(36.75), Error: 6, Label: "garment 36 3/4 in"}, Wanted: draw.Mark{Least: mm(36.5), Most: mm(37.5), Label: "wanted 36 1/2 to 37 1/2 in"},
		})},
		{"upper arm girth", draw.DrawTape(draw.Tape{
			Words: draw.Words{ID: id + "-arm", Title: "Upper arm girth on the tape", Desc: "Body 11 in; the garment, at 12 3/4 in, is inside the wanted range of 12 1/2 to 13 1/2 in."},
			Body:  draw.Mark{Least: mm(11), Most: mm(11), Error: 4, Label: "body 11 in"}, Garment: draw.Mark{Least: mm(12.75), Most: mm(12.75), Error: 4, Label: "garment 12 3/4 in, expected"}, Wanted: draw.Mark{Least: mm(12.5), Most: mm(13.5), Label: "wanted 12 1/2 to 13 1/2 in"},
		})},
	}
}

func changes(id string) []Change {
	day := func(year int, month time.Month, of int) time.Time {
		return time.Date(year, month, of, 0, 0, 0, 0, time.UTC)
	}
	return []Change{{
		Title: "Natural waist girth",
		Drawing: draw.DrawSeries(draw.Series{
			Words: draw.Words{ID: id + "-waist-time", Title: "Natural waist girth over time", Desc: "The body grew from 27 1/2 in to 28 3/4 in; the jacket was taken in to 27 1/2 in."},
			Runs: []draw.Run{
				{Label: "body over stays", Values: []draw.Value{{Day: day(2024, 2, 20), Size: mm(27.5), Known: true}, {Day: day(2025, 3, 5), Size: mm(28), Known: true}, {Day: day(2026, 1, 10), Size: mm(28.75), Known: true}}},
				{Label: "jacket", Stepped: true, Values: []draw.Value{{Day: day(2026, 1, 31), Size: mm(28.5), Known: true}, {Day: day(2026, 2, 14), Size: mm(27.5), Known: true}}},
			},
		}),
		Table: Table{Heads: []string{"Day", "Body", "Jacket"}, Numeric: []bool{false, true, true}, Rows: [][]Link{cells("20 Feb 2024", "27 1/2 in", "not made"), cells("10 Jan 2026", "28 3/4 in", "not measured"), cells("14 Feb 2026", "not measured", "27 1/2 in")}},
	}}
}

// The gore of the room's second plan: finished, and cut with 1/2 in all round.
var (
	goreFinished = []draw.Point{{X: mm(-0.3), Y: 0}, {X: mm(0.3), Y: 0}, {X: mm(0.625), Y: mm(7)}, {X: mm(1.4), Y: mm(11.5)}, {X: mm(-1.4), Y: mm(11.5)}, {X: mm(-0.625), Y: mm(7)}}
	goreCut      = []draw.Point{{X: mm(-0.8), Y: mm(-0.5)}, {X: mm(0.8), Y: mm(-0.5)}, {X: mm(1.125), Y: mm(6.9)}, {X: mm(2), Y: mm(12)}, {X: mm(-2), Y: mm(12)}, {X: mm(-1.125), Y: mm(6.9)}}
	goreLevels   = []draw.Level{{At: 0, Width: mm(0.6), Name: "under the arm", Size: "5/8 in"}, {At: mm(7), Width: mm(1.25), Name: "waist", Size: "1 1/4 in"}, {At: mm(11.5), Width: mm(2.8), Name: "hem", Size: "2 3/4 in"}}
)

// gore is a panel to let in, with one piece that yields it and one that does not.
func gore(id, root string) Panel {
	turned := func(points []draw.Point, x, y float64) []draw.Point {
		moved := make([]draw.Point, len(points))
		for i, p := range points {
			moved[i] = draw.Point{X: x + p.X, Y: y + p.Y}
		}
		return moved
	}
	placed := func(label string, x float64) draw.Placed {
		return draw.Placed{Finished: turned(goreFinished, x, mm(1.5)), Cut: turned(goreCut, x, mm(1.5)), Grain: [2]draw.Point{{X: x, Y: mm(3)}, {X: x, Y: mm(11)}}, Label: label}
	}
	return Panel{
		Name: "side gore", Count: 2,
		Widths:  Table{Heads: []string{"Level", "Finished", "Cut"}, Numeric: []bool{false, true, true}, Rows: [][]Link{cells("under the arm", "5/8 in", "1 5/8 in"), cells("waist", "1 1/4 in", "2 1/4 in"), cells("hem", "2 3/4 in", "4 in")}},
		Facts:   []Fact{{Name: "Seam allowance", Value: "1/2 in on each edge"}, {Name: "Grain", Value: "straight, along the middle"}, {Name: "Cut size", Value: "4 in x 12 1/2 in"}},
		Drawing: draw.DrawPanel(draw.Panel{Words: draw.Words{ID: id + "-gore", Title: "Side gore", Desc: "Narrow under the arm, 5/8 in, 1 1/4 in at the waist, 2 3/4 in at the hem."}, Finished: goreFinished, Cut: goreCut, Levels: goreLevels, Wide: "4 in", Long: "12 1/2 in"}),
		Layouts: []Layout{
			{Piece: Link{Href: root + "materials/striped-linen.html", Text: "Striped linen, 9 in x 31 in", Note: "left over 14 February 2026"}, Words: "two come out of it, 17 in of length to spare", Drawing: draw.DrawLayout(draw.Layout{
				Words: draw.Words{ID: id + "-layout", Title: "Two side gores on the left-over piece", Desc: "Side by side at one end."},
				Width: mm(9), Length: mm(31), Wide: "9 in", Long: "31 in", WarpKnown: true, Panels: []draw.Placed{placed("1", mm(2.1)), placed("2", mm(6.3))},
			})},
			{Piece: link(root+"materials/striped-linen.html", "Striped linen, 6 in x 7 in"), Words: "not found: 5 1/2 in more length"},
		},
		Prints: []Link{{Href: "side-gore-a4.html", Text: "A4", Note: "4 sheets"}, {Href: "side-gore-letter.html", Text: "Letter", Note: "4 sheets"}},
	}
}

func wayIn() *WayIn {
	return &WayIn{
		Out: []WayStep{
			{Seam: "waist binding", What: "2 in at each side seam", Sewn: "felled, linen thread", Notes: []string{"the binding itself stays on"}},
			{Seam: "armhole", What: "1 1/2 in under each arm", Sewn: "backstitch, waxed linen thread"},
			{Seam: "side", What: "whole, both", Sewn: "backstitch, linen thread"},
		},
		Back: []WayStep{
			{Seam: "side", What: "both, to the new line", Sewn: "backstitch, linen thread"},
			{Seam: "armhole", What: "1 1/2 in under each arm", Sewn: "backstitch, waxed linen thread", Notes: []string{"ease the sleeve over the top only"}},
			{Seam: "waist binding", What: "2 in at each side seam", Sewn: "felled, linen thread"},
		},
		Length: "29 in of seam to open; the length of the armhole is from the draft",
		Hours:  "about 1 h 10 min to open and 2 h 20 min to sew, by 3 notes of this journal",
		Loose:  []LoosePiece{{Piece: "side back", Recorded: []string{"two notches to the front", "right side: thread cross"}, Missing: []string{"which side of the body"}}},
		Faults: []string{"the piping is said to catch no seam; look before cutting"},
	}
}

func room(id, root string) *Room {
	return &Room{
		Needs: []Fact{{Name: "natural waist girth", Value: "1 1/4 in"}},
		Rests: []string{"allowances as of 14 February 2026", "1/4 in must stay on every edge"},
		Plans: []Plan{
			{
				Title: "Move the front pins by 1/4 in and let out the side seams by 1/4 in an edge", Why: "Opens 17 in less than the next, and cuts no cloth.",
				Closures: []Fact{{Name: "front, pinned", Value: "overlap 1 in becomes 3/4 in: gives 1/4 in"}},
				Gives:    Table{Heads: []string{"Seam", "Measure", "Each edge", "Allowance now", "Then"}, Numeric: []bool{false, false, true, true, true}, Rows: [][]Link{cells("side, two of them", "natural waist girth", "1/4 in", "1 in", "3/4 in"), cells("side, two of them", "bust girth", "0 in", "1 in", "1 in")}},
				WayIn:    wayIn(),
				Warnings: []string{"From bust to waist the allowance changes by 1/4 in over 7 in: blend it, or the seam will show a step."},
			},
			{
				Title: "Let a gore into each side seam", Why: "One panel more than the first plan; gives at the hem too.",
				Panels: []Panel{gore(id, root)},
			},
		},
		Nothing: []string{"upper arm girth: the sleeve seam is let out to the 1/4 in that must stay"},
	}
}

func advance(title string) Advance {
	return Advance{
		Title: title, Rests: []string{"body of 10 January 2026 over shift and stays", "each garment as first finished"},
		Rows: []AdvanceRow{
			{Measure: "natural waist girth", Pattern: inch("27 1/4 in", "69.2 cm"), Spread: inch("1/2 in", "1.3 cm"), Body: inch("28 3/4 in", "73 cm"), Wanted: inch("0 in", "0 cm"), Change: inch("+1 1/2 in", "+3.8 cm"), Error: inch("1/2 in", "1.1 cm"), Words: "add 3/8 in to each edge of the side seams", Builds: []Link{link("#", "Striped linen jacket"), link("#", "First jacket")}},
			{Measure: "bust girth", Pattern: inch("36 3/4 in", "93.3 cm"), Body: inch("36 1/2 in", "92.7 cm"), Wanted: inch("0 to 1 in", "0 to 2.5 cm"), Change: inch("+1/4 in", "+0.6 cm"), Error: inch("1/2 in", "1.1 cm"), Words: "leave it; one build only", Builds: []Link{link("#", "Striped linen jacket")}},
		},
		Out: []string{"Promenade coat: not measured when it was finished"},
	}
}

func beforeRemake() *Sheet {
	const at = "builds/striped-jacket/before.html"
	jacket := stripedJacket()
	f := frame(at, "Striped linen jacket", "builds")
	f.Kind = "before a remake"
	f.Crumbs = []Link{link("../index.html", "Builds"), link("index.html", "Striped linen jacket")}
	front := photo(at, 0, "The jacket on a stand, sleeves pinned", "")
	r := room("sheet", "../../")
	r.Plans = r.Plans[:1]
	return &Sheet{
		Frame: f, Of: Link{Href: "index.html", Text: "Striped linen jacket", Note: "as of 15 February 2026"}, Photo: &front,
		Facts: append(jacket.Facts, Fact{Name: "Worn over", Value: "shift, stays, two petticoats"}),
		Fit:   jacket.FitNow, Tapes: tapes("sheet"), Room: r, Ledger: jacket.Ledger,
		ToDo: []string{"buy 3 yd of piping cord", "decide: keep the cuffs?"},
		Next: jacket.Next, Seams: jacket.Seams, Closures: jacket.Closures, Pieces: jacket.Pieces,
		Features: jacket.Features, Decisions: jacket.Decisions,
		Left:     &Table{Heads: []string{"Piece", "Size", "Grain", "Since"}, Rows: [][]Link{cells("striped linen", "9 in x 31 in", "straight", "14 Feb 2026"), cells("striped linen", "6 in x 7 in", "not known", "14 Feb 2026")}},
		Needs:    jacket.Needs,
		Hours:    []Fact{{Name: "So far", Value: "21 1/2 h"}, {Name: "Planned", Value: "45 h"}, {Name: "Forecast", Value: "26 to 34 h more, by 2 finished jackets"}},
		TakeDown: &Link{Href: "take-down.html", Text: "Take-down sheet"},
		Empty:    []string{"wrist girth of Wren over shift and stays: measure it", "how long the armhole is: measure along the seam, not across"},
	}
}

// wearersSheet and patternsSheet have what that of a build has not.
func wearersSheet() *Sheet {
	f := frame("people/wren-before.html", "Wren", "people")
	f.Kind = "before a remake"
	person := wren()
	return &Sheet{Frame: f, Of: link("wren.html", "Wren"), Facts: person.Facts, Grid: person.Fit, Wardrobe: wardrobe().Own, Bodies: person.Sessions, Next: person.Next}
}

func patternsSheet() *Sheet {
	f := frame("patterns/short-jacket-before.html", "Short jacket draft", "patterns")
	f.Kind = "before the next cutting"
	pattern, change := shortJacketDraft(), advance("For Wren, in its next cutting")
	return &Sheet{Frame: f, Of: link("short-jacket-draft.html", "Short jacket draft"), Facts: pattern.Facts, Advances: []Advance{change}, Changes: pattern.Changes, Grid: pattern.Fit, Next: pattern.Next}
}

func takeDown() *TakeDown {
	const at = "builds/striped-jacket/take-down.html"
	f := frame(at, "Striped linen jacket", "builds")
	f.Kind = "to take down"
	f.Crumbs = []Link{link("../index.html", "Builds"), link("index.html", "Striped linen jacket")}
	plans := room("down", "../../").Plans
	return &TakeDown{
		Frame: f, Of: link("index.html", "Striped linen jacket"), Why: "To let out the side seams by 1/4 in an edge: the waist wants 1 1/4 in.",
		Before:   []string{"photograph the inside of both side seams", "lay out the seam ripper, tailor's tacks in two colours, and a tin for pins", "press nothing before the marks are in: steam takes the old seam line out"},
		Mark:     []LoosePiece{{Piece: "side back, both", Recorded: []string{"two notches to the front", "right side: thread cross"}, Missing: []string{"which side of the body", "which end is up"}}, {Piece: "sleeve, both", Missing: []string{"front and back", "where it meets the side seam"}}},
		WayIn:    wayIn(),
		Panels:   plans[1].Panels,
		Closures: plans[0].Closures,
		Gives:    &plans[0].Gives,
		Cautions: []string{"Cut away from the hand that holds the cloth.", "Count the pins out of the garment and into the tin."},
	}
}

func wardrobe() *Wardrobe {
	const at = "people/wren-wardrobe.html"
	f := frame(at, "What Wren can wear", "people")
	f.Kind = "wardrobe"
	f.Crumbs = []Link{link("index.html", "People"), link("wren.html", "Wren")}
	stripes, shift := photo(at, 0, "Striped jacket, front", ""), photo(at, 2, "Shift, folded", "")
	build := func(href, text string) Link { return link("../builds/"+href+"/index.html", text) }
	return &Wardrobe{
		Frame: f, Who: link("wren.html", "Wren"), Words: "Three of five can be worn today; the striped linen jacket wants 1 1/4 in at the waist.",
		Rests: []string{"measured 10 January 2026 over shift and stays", "by Ottilie"},
		Own: []Answer{
			{Build: build("petticoat", "Blue petticoat"), Verdict: Verdict{"fits", "fits"}, Basis: "at all 2 measures", State: "finished"},
			{Build: build("shift", "Shift"), Photo: &shift, Verdict: Verdict{"ample", "ample by 2 in at the bust"}, Basis: "3 of 4 measures", State: "worn"},
			{Build: build("first-jacket", "First jacket"), Verdict: Verdict{"close", "too close to call at the bust"}, Basis: "2 of 5 measures", State: "finished", Notes: []string{"laced to a 1 in gap"}},
			{Build: build("striped-jacket", "Striped linen jacket"), Photo: &stripes, Verdict: Verdict{"short", "waist short by 1 1/4 in"}, Basis: "3 of 5 measures fit", State: "under way", Notes: []string{"upper arm expected, not measured since 14 February 2026"}},
			{Build: build("promenade-skirt", "Promenade skirt"), Verdict: Verdict{"unknown", "no body measure over corset"}},
		},
		Made: []Answer{
			{Build: build("first-jacket", "First jacket"), Verdict: Verdict{"fits", "fits"}, Basis: "at 5 of 5 measures", Day: "2 March 2024"},
			{Build: build("striped-jacket", "Striped linen jacket"), Verdict: Verdict{"short", "waist short by 3/4 in"}, Day: "1 February 2026", Notes: []string{"before it was taken in"}},
			{Build: build("shift", "Shift"), Verdict: Verdict{"ample", "ample by 2 3/4 in at the bust"}, Day: "5 November 2023"},
			{Build: build("old-cap", "Old cap"), Verdict: Verdict{"fits", "fits"}, Day: "1 May 2023"},
		},
		Borrow: []Answer{{Build: build("quilted-petticoat", "Quilted petticoat"), Of: link("ottilie.html", "Ottilie"), Verdict: Verdict{"fits", "fits where measured"}, Basis: "1 of 2 measures", State: "finished"}},
		Others: []Link{link("ottilie-wardrobe.html", "Ottilie")},
	}
}

// fullSize is the gore on the sheets of a paper.
func fullSize(at string, paper draw.Paper) *Tiles {
	f := frame(at, "Side gore, full size", "builds")
	f.Kind = "full size"
	sheets, err := draw.Tiles(draw.FullSize{Words: draw.Words{ID: "gore", Title: "Side gore", Desc: "Cut two."}, Label: "side gore, cut 2", Finished: goreFinished, Cut: goreCut, Levels: goreLevels}, paper)
	if err != nil {
		panic(err)
	}
	return &Tiles{
		Frame: f, Of: link("index.html", "Striped linen jacket"), Paper: paper.Name,
		Words: []string{"Print at 100 %, on " + paper.Name + " paper, with nothing fitted to the page.", "Measure the test square before you cut: 2 in and 5 cm.", "Lay each page over the next by the strip of 10 mm so that the marks meet, and tape it."},
		Pages: sheets.Pages,
	}
}

// longSheets are the new pages with words that have nowhere to break.
func longSheets(at string) (*Sheet, *TakeDown, *Wardrobe) {
	const word = "Überrockärmelaufschlagsknopfleistenunterfütterungsstoffrest"
	drawing := template.HTML(draw.DrawTape(draw.Tape{Words: draw.Words{ID: "long", Title: word, Desc: word}, Body: draw.Mark{Least: 700, Most: 700, Label: word + word}}))
	f := frame(at, word, "builds")
	value := inch("1036 13/16 in", "2633 cm", word)
	table := Table{Heads: []string{word, word}, Rows: [][]Link{cells(word, word)}}
	way := &WayIn{Out: []WayStep{{Seam: word, What: word, Sewn: word, Notes: []string{word}}}, Back: []WayStep{{Seam: word}}, Length: word, Hours: word, Loose: []LoosePiece{{Piece: word, Recorded: []string{word}, Missing: []string{word}}}, Faults: []string{word}}
	panel := Panel{Name: word, Count: 2, Widths: table, Facts: []Fact{{Name: word, Value: word}}, Layouts: []Layout{{Piece: link("#", word), Words: word}}, Prints: []Link{link("#", word)}}
	plan := Plan{Title: word, Why: word, Closures: panel.Facts, Gives: table, Panels: []Panel{panel}, WayIn: way, Warnings: []string{word}}
	answer := Answer{Build: link("#", word), Of: link("#", word), Verdict: Verdict{"short", word}, Basis: word, State: word, Notes: []string{word}, Day: word}
	row := AdvanceRow{Measure: word, Pattern: value, Spread: value, Body: value, Wanted: value, Change: value, Error: value, Words: word, Builds: []Link{link("#", word)}}
	sheet := &Sheet{
		Frame: f, Of: link("#", word), Facts: panel.Facts, Tapes: []Tape{{word, drawing}}, Room: &Room{Needs: panel.Facts, Plans: []Plan{plan}, Rests: []string{word}, Nothing: []string{word}},
		Advances: []Advance{{Title: word, Rests: []string{word}, Rows: []AdvanceRow{row}, Out: []string{word}}}, Changes: &panel.Widths, ToDo: []string{word}, Wardrobe: []Answer{answer}, Hours: panel.Facts, Empty: []string{word},
	}
	down := &TakeDown{Frame: f, Of: link("#", word), Why: word, Before: []string{word}, Mark: way.Loose, WayIn: way, Panels: []Panel{panel}, Closures: panel.Facts, Gives: &table, Cautions: []string{word}}
	return sheet, down, &Wardrobe{Frame: f, Who: link("#", word), Words: word, Own: []Answer{answer}, Made: []Answer{answer}, Borrow: []Answer{answer}, Others: []Link{link("#", word)}}
}
