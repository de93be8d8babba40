package theme

func start() *Start {
	const at = "index.html"
	jacket := photo(at, 0, "The jacket on a stand, sleeves pinned", "")
	back := photo(at, 1, "Back of the jacket; the side seams hang straight", "")
	return &Start{
		Frame: frame(at, "The Thimble Lane circle", "start"),
		Intro: "<p>What we cut, wore and took apart again, so that we need not remember it.</p>",
		OnTable: []Card{
			{Link: link("builds/striped-jacket/index.html", "Striped linen jacket"), Kind: "jacket", State: "under way", Lines: []string{"for Wren, 1780s", "last worked on 14 February 2026"}, Photo: &jacket, Fit: &Verdict{"short", "waist short by 1 1/4 in"}, NextUp: 3},
			{Link: link("builds/promenade-skirt/index.html", "Promenade skirt"), Kind: "skirt", State: "waiting for repair", Lines: []string{"for Ottilie, 1912"}, Fit: &Verdict{"unknown", "no body measure over corset"}},
		},
		Next: &OccasionCard{
			Link: link("occasions/market-day.html", "Market day"), Day: "9 March 2026", Away: "in 23 days",
			Wears: []Card{{Link: link("builds/striped-jacket/index.html", "Striped linen jacket"), Kind: "Wren", State: "under way", Fit: &Verdict{"short", "waist short by 1 1/4 in"}}, {Link: link("builds/quilted-petticoat/index.html", "Quilted petticoat"), Kind: "Ottilie", State: "finished", Fit: &Verdict{"fits", "fits"}}},
		},
		NotFit: []Card{{Link: link("builds/first-jacket/index.html", "First jacket"), Kind: "jacket", State: "finished", Lines: []string{"for Wren, 1780s"}, Fit: &Verdict{"short", "upper arm short by 3/4 in"}, NextUp: 1}},
		Newest: []Entry{
			{Link: link("builds/striped-jacket/2026-02-14.html", "First fitting"), Day: "14 February 2026", Stage: "fitting", Hours: "3 h 30 min", Text: "Let the sleeve seam out from the armhole to the elbow.", Photo: &back, Of: link("builds/striped-jacket/index.html", "Striped linen jacket")},
			{Link: link("builds/striped-jacket/2026-01-31.html", "Mock-up, second of two"), Day: "31 January 2026", Stage: "mock-up", Hours: "2 h", Text: "The back neck now lies flat; 3/8 in off the shoulder seam at the neck.", Of: link("builds/striped-jacket/index.html", "Striped linen jacket")},
		},
		NextTime: []Next{
			{Text: "Cut the sleeve 1 in wider before trusting the draft.", From: link("builds/striped-jacket/2026-02-14.html#next-1", "First fitting"), Day: "14 February 2026", About: []Link{{Href: "patterns/short-jacket-draft.html", Text: "Short jacket draft", Note: "pattern"}}},
		},
		NextAll: link("next-time.html", "All 12 next-time notes"),
		ToDo:    link("to-do.html", "To do: what holds each up"),
		Counts:  []Link{link("builds/index.html", "5 builds"), link("builds/index.html", "31 notes"), link("people/index.html", "2 wearers"), link("references/index.html", "12 references")},
	}
}

func buildList() *List {
	const at = "builds/index.html"
	stripes, sea := photo(at, 0, "Striped jacket, front", ""), photo(at, 3, "Quilted petticoat, a corner turned up", "")
	return &List{
		Frame: frame(at, "Builds", "builds"),
		Intro: "Garments being made, worn and altered.",
		Groups: []CardGroup{
			{Title: "Under way", Cards: []Card{{Link: link("striped-jacket/index.html", "Striped linen jacket"), Kind: "jacket", State: "under way", Lines: []string{"for Wren, 1780s"}, Photo: &stripes, Fit: &Verdict{"short", "waist short by 1 1/4 in"}, NextUp: 3}}},
			{Title: "Finished", Cards: []Card{
				{Link: link("quilted-petticoat/index.html", "Quilted petticoat"), Kind: "petticoat", State: "finished", Lines: []string{"for Ottilie, 1780s"}, Photo: &sea, Fit: &Verdict{"fits", "fits"}},
				{Link: link("first-jacket/index.html", "First jacket"), Kind: "jacket", State: "finished", Lines: []string{"for Wren, 1780s", "remade as the striped linen jacket"}, Fit: &Verdict{"close", "bust too close to call"}, NextUp: 1},
				{Link: link("shift/index.html", "Shift"), Kind: "shift", State: "worn", Lines: []string{"for Wren, 1780s"}, Fit: &Verdict{"ample", "ample by 2 in"}},
			}},
			{Title: "Planned", Cards: []Card{{Link: link("promenade-coat/index.html", "Promenade coat"), Kind: "coat", State: "planned"}}},
			{Title: "Waiting for repair", Cards: []Card{{Link: link("promenade-skirt/index.html", "Promenade skirt"), Kind: "skirt"}}},
			{Title: "Lent", Cards: []Card{{Link: link("cap/index.html", "Cap"), Kind: "cap", State: "lent"}}},
		},
	}
}

func materialList() *List {
	return &List{
		Frame:  frame("materials/index.html", "Materials", "materials"),
		Beside: []Link{{Href: "stash.html", Text: "The stash", Note: "what is on hand, and what is short"}},
		Groups: []CardGroup{{Title: "Linen", Cards: []Card{{Link: link("striped-linen.html", "Striped linen"), Kind: "cloth", Lines: []string{"1/4 yd and 2 pieces on hand"}}}}},
	}
}

func stripedJacket() *Build {
	const at = "builds/striped-jacket/index.html"
	front := photo(at, 0, "The jacket on a stand, sleeves pinned", "On the stand, before the sleeves were set")
	back := photo(at, 1, "Back view; the side seams hang straight", "Back after letting out")
	f := frame(at, "Striped linen jacket", "builds")
	f.Kind, f.About = "jacket", "A striped linen jacket of the 1780s for Wren."
	f.Crumbs = []Link{link("../index.html", "Builds")}
	bust := FitRow{Measure: link("../../measures.html#bust", "bust girth"), Body: inch("36 1/2 in", "92.7 cm"), Garment: inch("36 3/4 in", "93.3 cm"), Had: inch("1/4 in", "0.6 cm"), Wanted: inch("0 to 1 in", "0 to 2.5 cm"), Delta: inch("0 in", "0 cm"), Error: inch("1/2 in", "1.1 cm"), Verdict: Verdict{"fits", "fits"}}
	waist := FitRow{Measure: link("../../measures.html#waist", "natural waist girth"), Body: inch("28 3/4 in", "73 cm"), Garment: inch("27 1/2 in", "69.9 cm"), Had: inch("−1 1/4 in", "−3.2 cm"), Wanted: inch("0 in", "0 cm"), Delta: inch("−1 1/4 in", "−3.2 cm"), Error: inch("1/2 in", "1.1 cm"), Verdict: Verdict{"short", "short by 1 1/4 in"}, Notes: []string{"laced to a 1 in gap", "taken by Ottilie, others by Wren alone"}}
	arm := FitRow{Measure: link("../../measures.html#arm", "upper arm girth"), Body: inch("11 in", "27.9 cm"), Garment: inch("12 3/4 in", "32.4 cm", "expected, not measured since 14 February 2026"), Had: inch("1 3/4 in", "4.4 cm"), Wanted: inch("1 1/2 to 2 1/2 in", "3.8 to 6.4 cm"), Delta: inch("0 in", "0 cm"), Error: inch("1/4 in", "0.5 cm"), Verdict: Verdict{"close", "too close to call"}, Notes: []string{"rests on 1 row of the ledger"}}
	wrist := FitRow{Measure: link("", "wrist girth"), Garment: inch("8 1/2 in", "21.6 cm"), Verdict: Verdict{"unknown", "no body measure over shift and stays"}}
	back1 := FitRow{Measure: link("", "back neck point to waist"), Body: inch("15 in", "38.1 cm"), Garment: inch("16 13/16 in", "42.7 cm"), Had: inch("1 13/16 in", "4.6 cm"), Wanted: inch("0 to 1/2 in", "0 to 1.3 cm"), Delta: inch("+1 5/16 in", "+3.3 cm"), Error: inch("1/4 in", "0.6 cm"), Verdict: Verdict{"ample", "ample by 1 5/16 in"}}
	return &Build{
		Frame: f, Photo: &front, State: "Under way since 3 January 2026, waiting for the cuffs.",
		Facts: []Fact{{Name: "For", Links: []Link{link("../../people/wren.html", "Wren")}}, {Name: "Era", Value: "1780s (1780/1789)"}, {Name: "Pattern", Links: []Link{{Href: "../../patterns/short-jacket-draft.html", Text: "Short jacket draft", Note: "2 builds"}}}, {Name: "Remakes", Links: []Link{link("../first-jacket/index.html", "First jacket")}}, {Name: "For the", Links: []Link{{Href: "../../occasions/market-day.html", Text: "Market day", Note: "in 23 days"}}}, {Name: "Hours", Value: "21 1/2 of 45 planned"}},
		Body:  "<p>Second try at the jacket, cut longer in the body. The stripe is the one thing I would not give up, <a href=\"2026-02-14.html\">whatever the sleeves say</a>.</p>",
		FitNow: &FitTable{Title: "Fit on 14 February 2026", Rests: []string{"measured 10 January 2026 over shift and stays", "by Ottilie", "garment measured 14 February 2026"}, Rows: []FitRow{waist, bust, arm, back1, wrist},
			Missed: []string{"wrist girth of Wren over shift and stays", "across back width of the jacket"}},
		Sheets:   []Link{link("before.html", "Before a remake"), link("take-down.html", "Take-down")},
		Tapes:    tapes("build"),
		Room:     room("build", "../../"),
		Time:     changes("build"),
		FitThen:  &FitTable{Title: "Fit on 2 March 2024", Rests: []string{"measured 20 February 2024 over shift and stays"}, Rows: []FitRow{bust}},
		Next:     []Next{{Anchor: "next-1", Text: "Cut the sleeve 1 in wider before trusting the draft.", From: link("2026-02-14.html#next-1", "First fitting"), Day: "14 February 2026", About: []Link{{Href: "../../patterns/short-jacket-draft.html", Text: "Short jacket draft", Note: "pattern"}, {Text: "sleeve", Note: "garment"}}}, {Anchor: "next-3", Text: "Pipe the armholes before the sleeves are set.", From: link("2026-02-21.html", "Armholes piped"), Day: "21 February 2026", State: "set aside:", Answer: Link{Href: "../promenade-coat/index.html", Text: "the coat has no piping", Note: "Promenade coat"}}, {Anchor: "next-2", Text: "Mark the waist on the lining before the stays come off; the tape slid by 3/4 in while I looked for a pin, and I only found out at the mock-up.", From: link("2026-01-31.html", "Mock-up"), Day: "31 January 2026"}},
		Carried:  []Next{{Text: "Cut the back 1/2 in longer.", From: link("../first-jacket/2024-03-02.html#next-1", "First wearing"), Day: "2 March 2024", State: "carried into", Answer: Link{Href: "2026-01-03.html", Text: "3 January 2026"}}},
		Dressing: []string{"shift", "stays", "petticoat", "petticoat", "jacket"},
		Ledger: &Ledger{
			Rows:   []LedgerRow{{Day: link("2026-02-14.html", "14 Feb 2026"), What: "sleeve seam let out from 5/8 to 1/4 in", Where: "armhole to elbow, both sleeves", Effects: []Fact{{Name: "upper arm girth", Value: "+3/4 in"}}, Because: "binds when the arm is raised"}, {Day: link("2026-02-01.html", "1 Feb 2026"), What: "taken in 1/4 in at the side seams", Where: "bust to waist", Effects: []Fact{{Name: "bust girth", Value: "−1 in"}, {Name: "natural waist girth", Value: "−1 in"}}, Because: "gaped at the front"}},
			Checks: []LedgerCheck{{Day: link("2026-02-14.html", "14 Feb 2026"), Measure: "bust girth", Expected: inch("36 3/4 in", "93.3 cm"), Measured: inch("36 3/4 in", "93.3 cm"), Verdict: Verdict{"fits", "agrees"}, Rests: "1 Feb 2026, side seams"}, {Day: link("2026-02-14.html", "14 Feb 2026"), Measure: "natural waist girth", Expected: inch("28 1/4 in", "71.8 cm"), Measured: inch("27 1/2 in", "69.9 cm"), Verdict: Verdict{"short", "short by 3/4 in"}, Rests: "1 Feb 2026, side seams"}},
		},
		Across:    acrossBuilds("Against the builds of the same draft"),
		Seams:     &Table{Heads: []string{"Seam", "How many", "At", "Allowance now", "Must stay", "Sewn", "Caught by"}, Numeric: []bool{false, true, false, true, true}, Rows: [][]Link{cells("side", "2", "bust girth", "1 in", "1/4 in", "backstitch, linen thread", "armhole, waist binding"), cells("sleeve", "2", "upper arm girth", "1/4 in", "1/4 in", "running stitch with a back stitch every third", "armhole")}},
		Closures:  &Table{Heads: []string{"Closure", "Kind", "Overlap now", "Must stay", "Alone"}, Numeric: []bool{false, false, true, true}, Rows: [][]Link{cells("front", "pins", "1 in", "1/2 in", "yes")}},
		Pieces:    &Table{Heads: []string{"Piece", "Cut", "Grain", "Marks"}, Numeric: []bool{false, true}, Rows: [][]Link{cells("sleeve", "2", "bias", "two notches to the back, thread cross on the right side"), cells("side front", "2", "straight", "")}},
		Features:  []Feature{{What: "piped armhole", Href: "../../evidence/piped-armhole.html", Mark: "supported", Words: "supported: 5 of 6 inside the era (44-97 %)", RestsOn: []Link{{Href: "../../references/sea-green-jacket.html", Text: "Sea-green jacket", Note: "1784"}}}, {What: "machine-woven stripe", Departs: "the width was what the budget allowed"}},
		Decisions: []Decision{{Anchor: "decided-1", Question: "Keep the cuffs?", Chose: "plain wrist", InsteadOf: []string{"turned-back cuff", "ruffle"}, Because: "the left-over strip is on the straight grain and too narrow", RestsOn: []Link{link("../../references/sea-green-jacket.html", "Sea-green jacket")}, From: Link{Href: "2026-02-14.html", Text: "First fitting", Note: "14 February 2026"}, Outcome: outcomes("../../")[0]}},
		Needs:     &Table{Heads: []string{"Material", "Needed", "On hand"}, Numeric: []bool{false, true, true}, Rows: [][]Link{{link("../../materials/striped-linen.html", "Striped linen"), {Text: "2 1/4 yd"}, {Text: "2 1/2 yd"}}, {link("../../materials/piping-cord.html", "Piping cord"), {Text: "4 yd"}, {Text: "1 yd", Note: "3 yd short"}}}},
		Log:       []Entry{{Link: link("2026-02-14.html", "First fitting"), Day: "14 February 2026", Stage: "fitting", Hours: "3 h 30 min", Text: "Let the sleeve seam out from the armhole to the elbow.", Photo: &back}, {Link: link("2026-02-01.html", "Side seams"), Day: "1 February 2026", Stage: "sewing", Hours: "4 h"}, {Link: link("2026-01-03.html", "3 January 2026"), Day: "3 January 2026", Text: "Cut the lining today."}},
		Hours:     "21 1/2 h so far: mock-up 5, cutting 3, sewing 10, fitting 3 1/2.",
		Photos:    []Photo{back, front, photo(at, 2, "Inside of the left sleeve", "Inside of the left sleeve, seam opened to the elbow, with the old stitch holes still to be seen"), photo(at, 3, "", "")},
		Backlinks: Backlinks{{How: "mentioned in", Links: []Link{link("../first-jacket/index.html", "First jacket"), link("../../techniques/hot-iron.html", "Pressing linen")}}, {How: "worn at", Links: []Link{link("../../occasions/market-day.html", "Market day")}}},
		Tags:      []Link{link("../../tags.html#linen", "linen"), link("../../tags.html#stripes", "stripes")},
	}
}

func acrossBuilds(title string) *FitGrid {
	short, fits := Verdict{"short", "short by 1 1/4 in"}, Verdict{"fits", "fits"}
	return &FitGrid{
		Title: title, Measures: []string{"bust girth", "natural waist girth", "upper arm girth", "back neck point to waist", "wrist girth"},
		Rests: []string{"each on the day it was first finished", "over shift and stays"},
		Rows: []FitGridRow{
			{Build: link("#", "Striped linen jacket"), Who: link("#", "Wren"), Day: "14 February 2026", Cells: []FitCell{{inch("0 in", "0 cm"), fits}, {inch("−1 1/4 in", "−3.2 cm"), short}, {inch("0 in", "0 cm"), Verdict{"close", "too close to call"}}, {inch("+1 5/16 in", "+3.3 cm"), Verdict{"ample", "ample by 1 5/16 in"}}, {}}},
			{Build: link("#", "First jacket"), Who: link("#", "Wren"), Day: "2 March 2024", Cells: []FitCell{{inch("0 in", "0 cm"), fits}, {inch("0 in", "0 cm"), fits}, {inch("−3/4 in", "−1.9 cm", "estimated"), Verdict{"short", "short by 3/4 in"}}, {}, {Value{}, Verdict{"unknown", "garment not measured"}}}},
		},
	}
}

func firstFitting() *Note {
	const at = "builds/striped-jacket/2026-02-14.html"
	f := frame(at, "First fitting", "builds")
	f.Kind = "fitting"
	f.Crumbs = []Link{link("../index.html", "Builds"), link("index.html", "Striped linen jacket")}
	return &Note{
		Frame: f, Day: "14 February 2026", Of: link("index.html", "Striped linen jacket"),
		Facts: []Fact{{Name: "Hours", Value: "3 h 30 min"}, {Name: "Spent", Value: "12.40 EUR"}},
		Body: `<p>Let the sleeve seam out from the armhole to the elbow. <a href="index.html">The jacket</a> now closes.<sup id="fnref:1"><a href="#fn:1" class="footnote-ref" role="doc-noteref">1</a></sup></p>
<h2 id="the-sleeve">The sleeve</h2>
<ul><li>left: let out</li><li>right: let out, <code>1/4 in</code> left</li></ul>
<aside role="note" class="remark next-time" id="next-1"><p><strong class="label">Next time</strong> cut the sleeve an inch wider before trusting the draft.</p>
<p class="about">pattern: <a href="../../patterns/short-jacket-draft.html">Short jacket draft</a></p>
</aside>
<aside role="note" class="remark private"><p><strong class="label">Private</strong> Wren would rather her waist stayed between us.</p></aside>
<blockquote><p>A sleeve that will not let her reach is a bandage.</p></blockquote>
<div class="wide" tabindex="0" role="group" aria-label="table">
<table>
<thead><tr><th scope="col">Where</th><th scope="col" class="right">Was</th><th scope="col" class="right">Now</th><th scope="col">Unbreakable</th></tr></thead>
<tbody><tr><td>armhole</td><td class="right">5/8 in</td><td class="right">1/4 in</td><td>armhole-to-elbow-without-a-break-and-then-some-more</td></tr></tbody>
</table>
</div>
<p><a href="../../photos/stripes-1.png"><img src="../../photos/stripes-1.png" width="640" height="480" alt="Back view; the side seams hang straight" loading="lazy" decoding="async"></a></p>
<pre><code>a line of typed text that is a good deal longer than a narrow window could ever hold in one piece</code></pre>
<p>A tie that leads <span class="broken">nowhere-yet</span>.</p>
<section class="footnotes" role="doc-endnotes" aria-label="footnotes">
<ol><li id="fn:1"><p>Just.&#160;<a href="#fnref:1" class="footnote-backref" role="doc-backlink" aria-label="back to the mark of footnote 1">↩</a></p></li></ol>
</section>`,
		Measured:  &Table{Heads: []string{"Measure", "That day", "Before"}, Numeric: []bool{false, true, true}, Rows: [][]Link{cells("bust girth", "36 3/4 in", "37 3/4 in"), cells("natural waist girth", "27 1/2 in", "not measured")}},
		Bodies:    []SessionTable{{Title: "14 February 2026, over shift and stays", Rests: []string{"by Ottilie"}, Table: Table{Heads: []string{"Measure", "Girth"}, Numeric: []bool{false, true}, Rows: [][]Link{cells("bust girth", "36 1/2 in"), cells("natural waist girth", "28 3/4 in")}}}},
		Altered:   stripedJacket().Ledger.Rows[:1],
		Checks:    stripedJacket().Ledger.Checks,
		Faults:    []Fact{{Name: "upper arm", Value: "binds when the arm is raised"}, {Name: "back neck", Value: "stands away by 3/8 in"}},
		Moves:     []string{"can reach the top shelf", "cannot dress alone: the back lacing"},
		Decisions: stripedJacket().Decisions,
		TurnedOut: []Decision{{Question: "Close the front with pins or with hooks?", Chose: "pins", Outcome: outcomes("../../")[1]}},
		Next:      stripedJacket().Next[1:],
		Carried:   stripedJacket().Carried,
		Material:  &Table{Heads: []string{"Material", "What", "Size", "Grain"}, Rows: [][]Link{cells("striped linen", "left over", "9 in x 31 in", "straight")}},
		Photos:    []Photo{photo(at, 1, "Back view; the side seams hang straight", "Back after letting out"), photo(at, 2, "Sleeve", "")},
		Earlier:   &Link{Href: "2026-02-01.html", Text: "Side seams", Note: "1 February 2026"},
		Later:     &Link{Href: "2026-02-21.html", Text: "Armholes piped", Note: "21 February 2026"},
		Backlinks: Backlinks{{How: "mentioned in", Links: []Link{link("index.html", "Striped linen jacket")}}},
		Tags:      []Link{link("../../tags.html#sleeves", "sleeves")},
	}
}

func wren() *Person {
	const at = "people/wren.html"
	portrait := photo(at, 2, "A swatch in Wren's colours", "")
	f := frame(at, "Wren", "people")
	f.Kind = "wearer"
	return &Person{
		Frame: f, Photo: &portrait, Facts: []Fact{{Name: "Last measured", Value: "10 January 2026, over shift and stays"}, {Name: "Builds", Value: "3"}},
		Body:     "<p>Stands on one leg when measured; say so beside the figure.</p>",
		Usual:    []string{"back waist length: 1/2 in shorter than drafted", "sleeve: 1 in wider at the upper arm"},
		Fit:      acrossBuilds("Today, by the measuring of 10 January 2026"),
		Sheets:   []Link{link("wren-wardrobe.html", "Wardrobe"), link("wren-before.html", "Before a remake")},
		Time:     changes("wren"),
		Advances: []Advance{advance("Jackets"), {Title: "Petticoats", Out: []string{"Blue petticoat: its waist is adjusted by ties"}}},
		FitThen:  acrossBuilds("On the day each was first finished"),
		Next:     stripedJacket().Next[:1],
		Builds:   buildList().Groups[1].Cards,
		Changes:  []Table{{Title: "Over shift and stays", Heads: []string{"Measure", "20 Feb 2024", "5 Mar 2025", "10 Jan 2026", "Change"}, Numeric: []bool{false, true, true, true, true}, Rows: [][]Link{cells("bust girth", "36 in", "36 1/4 in", "36 1/2 in", "+1/2 in"), cells("natural waist girth", "27 1/2 in", "28 in", "28 3/4 in", "+1 1/4 in")}}},
		Sessions: []SessionTable{{From: link("../builds/striped-jacket/2026-02-14.html", "First fitting"), Title: "10 January 2026, over shift and stays", Rests: []string{"by Ottilie"}, Table: Table{Heads: []string{"Measure", "Reading", "Error of measuring"}, Numeric: []bool{false, true, true}, Rows: [][]Link{cells("bust girth", "36 1/2 in", "3/8 in"), cells("natural waist girth", "28 3/4 in", "3/8 in"), cells("upper arm girth", "11 in", "1/8 in")}}}, {Title: "10 January 2026, unclothed", Rests: []string{"by Wren alone"}, Table: Table{Heads: []string{"Measure", "Reading"}, Numeric: []bool{false, true}, Rows: [][]Link{cells("bust girth", "37 in")}}}},
	}
}

func shortJacketDraft() *Thing {
	const at = "patterns/short-jacket-draft.html"
	f := frame(at, "Short jacket draft", "patterns")
	f.Kind = "pattern"
	return &Thing{
		Frame: f, Photos: []Photo{photo(at, 3, "The draft on brown paper", "Drawn on brown paper, corrected in red")},
		Facts:    []Fact{{Name: "Drawn after", Value: "a cutting manual of 1789"}, {Name: "On the pattern", Value: "not yet: sleeve width"}},
		Body:     "<p>Drafted for a small back; the sleeve is the old one and narrow.</p>",
		Features: &Table{Heads: []string{"Feature", "Shown"}, Rows: [][]Link{cells("piped armhole", "yes")}},
		Changes:  &Table{Heads: []string{"Build", "Measure", "Changed by", "On the pattern"}, Numeric: []bool{false, false, true}, Rows: [][]Link{cells("Striped linen jacket", "natural waist girth", "+1/2 in", "yes"), cells("First jacket", "upper arm girth", "+1 in", "no")}},
		Sheets:   []Link{link("short-jacket-before.html", "Before the next cutting")},
		Advances: []Advance{advance("For Wren")},
		Fit:      acrossBuilds("All builds of this draft"),
		Next:     stripedJacket().Next, Builds: buildList().Groups[0].Cards, Decisions: stripedJacket().Decisions,
		Tags: []Link{link("../tags.html#drafts", "drafts")},
	}
}

func pressing() *Thing {
	f := frame("techniques/hot-iron.html", "Pressing linen", "techniques")
	f.Kind = "technique"
	return &Thing{
		Frame:     f,
		Cautions:  []string{"A hot iron burns skin and scorches cloth: set it on its heel, and never leave it flat.", "Keep skirts and paper away from a stove that heats irons."},
		Body:      "<p>Damp, from the wrong side, with a cloth between.</p>",
		Movements: &Table{Heads: []string{"Day", "What", "Amount"}, Numeric: []bool{false, false, true}, Rows: [][]Link{cells("3 Jan 2026", "bought", "2 1/2 yd")}},
	}
}

func marketDay() *Thing {
	f := frame("occasions/market-day.html", "Market day", "occasions")
	f.Kind = "occasion"
	return &Thing{
		Frame: f, Facts: []Fact{{Name: "Day", Value: "9 March 2026, in 23 days"}},
		NotReady: []string{"Striped linen jacket: waist short by 1 1/4 in, piping cord missing", "Quilted petticoat: the hem hangs loose"},
		Hands:    []Fact{{Name: "Wren", Value: "the back lacing of the stays; the pins of the front below the waist"}, {Name: "Ottilie", Links: []Link{link("../builds/quilted-petticoat/index.html", "Quilted petticoat")}}},
		Dressing: []CardGroup{{Title: "Wren", Cards: []Card{{Link: link("../builds/striped-jacket/index.html", "Striped linen jacket"), Kind: "jacket", Lines: []string{"over shift, stays, two petticoats"}, Fit: &Verdict{"short", "waist short by 1 1/4 in"}}}}, {Title: "Ottilie", Cards: buildList().Groups[1].Cards[:1]}},
	}
}

func nextTimePage() *NextTime {
	notes := stripedJacket().Next
	return &NextTime{
		Frame: frame("next-time.html", "Next time", "next time"),
		Sections: []NextSection{
			{Title: "By pattern", Anchor: "by-pattern", Groups: []Group{{Title: link("patterns/short-jacket-draft.html", "Short jacket draft"), Next: notes[:1]}, {Title: link("", "No pattern"), Next: notes[1:]}}},
			{Title: "By technique", Anchor: "by-technique", Groups: []Group{{Title: link("techniques/hot-iron.html", "Pressing linen"), Next: []Next{{Text: "Press before piping, 1/4 in at a time.", Day: "1 February 2026"}}}}},
		},
	}
}

func tagsPage() *Tags {
	return &Tags{Frame: frame("tags.html", "Tags", "tags"), Groups: []TagGroup{{Tag: "linen", Anchor: "tag-linen", Links: []Link{{Href: "builds/striped-jacket/index.html", Text: "Striped linen jacket", Note: "build"}, {Href: "materials/striped-linen.html", Text: "Striped linen", Note: "material"}}}, {Tag: "sleeves", Anchor: "tag-sleeves", Links: []Link{link("builds/striped-jacket/2026-02-14.html", "First fitting")}}}}
}

func foundPage() *Found {
	return &Found{Frame: frame("found.html", "What the check found", ""), Findings: []Finding{
		{Level: "error", Place: "builds/striped-jacket/build.md:14:3", Page: link("builds/striped-jacket/index.html", "Striped linen jacket"), Text: `no measure is called "wast girth"`, Rule: "unknown measure", Line: "  wast girth: 29 in", Advice: `did you mean "waist girth"?`},
		{Level: "warning", Place: "builds/striped-jacket/2026-02-14-first-fitting.md:9:1", Text: "the sleeve seam is let out to 1/4 in, all that must stay", Rule: "nothing left", Line: "  - {seam: sleeve, at: upper arm girth, was: 5/8 in, now: 1/4 in, because: binds when the arm is raised and lowered again}"},
		{Level: "hint", Place: "journal.yaml", Text: "no error of measuring is set; those of trained measurers are used", Rule: "default error"},
	}}
}

// longWords is a build whose words have nowhere to break.
func longWords() *Build {
	const word = "Überrockärmelaufschlagsknopfleistenunterfütterungsstoffrest"
	f := frame("long/Überrockärmelaufschlagsknopfleiste.html", word, "builds")
	f.Site, f.Kind = word, word
	f.Crumbs = []Link{link("#", word), link("#", word)}
	fit := FitRow{Measure: link("#", word), Body: inch("1036 13/16 in", "2633 cm", word), Garment: inch("1036 13/16 in", "2633 cm"), Verdict: Verdict{"short", "short by " + word}, Notes: []string{word}}
	return &Build{
		Frame: f, State: word, Facts: []Fact{{Name: word, Value: word}},
		Body:      "<p>" + word + word + "</p>",
		FitNow:    &FitTable{Title: word, Rests: []string{word}, Rows: []FitRow{fit}, Missed: []string{word}},
		Next:      []Next{{Text: word, From: link("#", word), Day: word, About: []Link{link("#", word)}}},
		Dressing:  []string{word, word},
		Ledger:    &Ledger{Rows: []LedgerRow{{Day: link("#", "14 Feb 2026"), What: word, Where: word, Effects: []Fact{{Name: word, Value: "+1 in"}}, Because: word}}},
		Features:  []Feature{{What: word, Departs: word}},
		Decisions: []Decision{{Question: word, Chose: word, Because: word}},
		Log:       []Entry{{Link: link("#", word), Day: "14 February 2026", Stage: word, Hours: word, Text: word, Of: link("#", word)}},
		Tags:      []Link{link("#", word), link("#", word)},
		Backlinks: Backlinks{{How: word, Links: []Link{link("#", word)}}},
	}
}
