package theme

import (
	"html/template"

	"hussif/theme/draw"
)

// decision is a settled question as pages other than its note show it.
func decision(root string, outcome *Outcome) Decision {
	d := stripedJacket().Decisions[0]
	d.Anchor, d.Outcome = "", outcome
	d.RestsOn = []Link{link(root+"references/sea-green-jacket.html", "Sea-green jacket")}
	d.From = Link{Href: root + "builds/striped-jacket/2026-02-14.html", Text: "First fitting", Note: "14 February 2026"}
	return d
}

// outcomes is one of each kind.
func outcomes(root string) []*Outcome {
	worn := Link{Href: root + "builds/striped-jacket/2026-03-09.html", Text: "Worn on market day", Note: "9 March 2026"}
	return []*Outcome{
		{Mark: "kept", Words: "kept", Because: "nobody missed the cuff, and the wrist stayed clean", From: worn},
		{Mark: "regretted", Words: "regretted", Because: "pins worked loose over 3 1/2 h of carrying baskets", From: worn},
		{Mark: "changed", Words: "changed", Because: "the lining is now linen, felled by hand", From: Link{Href: root + "builds/striped-jacket/2026-02-21.html", Text: "Armholes piped", Note: "21 February 2026"}},
	}
}

func decisionsPage() *Decisions {
	f := frame("decisions.html", "Decisions", "decisions")
	kinds := outcomes("")
	cuffs := decision("", kinds[0])
	front := Decision{Question: "Close the front with pins or with hooks?", Chose: "pins", InsteadOf: []string{"hooks and worked eyes"}, Because: "pins give up to 1 in of overlap to move", From: cuffs.From, Outcome: kinds[1]}
	lining := Decision{Question: "What to line the body with?", Chose: "cotton, from the left-over piece", From: cuffs.From, Outcome: kinds[2]}
	hem := Decision{Chose: "The hem stays raw until the first wearing.", From: cuffs.From}
	group := func(href, text string, of ...Decision) DecisionGroup {
		return DecisionGroup{Title: link(href, text), Decisions: of}
	}
	return &Decisions{
		Frame: f,
		Sections: []DecisionSection{
			{Title: "By garment", Anchor: "by-garment", Groups: []DecisionGroup{group("builds/striped-jacket/index.html", "Striped linen jacket", cuffs, front, lining), group("builds/promenade-skirt/index.html", "Promenade skirt", hem)}},
			{Title: "By technique", Anchor: "by-technique", Groups: []DecisionGroup{group("techniques/hot-iron.html", "Pressing linen", lining)}},
			{Title: "By outcome", Anchor: "by-outcome", Groups: []DecisionGroup{group("", "Kept", cuffs), group("", "Regretted", front), group("", "Changed", lining), group("", "Not told yet", hem)}},
		},
	}
}

// timeScale shows what has a piped armhole and what lacks it, against the 1780s.
func timeScale(id string) template.HTML {
	year := func(from, to float64) draw.Stretch { return draw.Stretch{From: from, To: to + 1} }
	thing := func(label, date string, stated, counted draw.Stretch) draw.Thing {
		return draw.Thing{Label: label, Date: date, Stated: stated, Counted: counted, Known: true}
	}
	return draw.DrawScale(draw.Scale{
		Words: draw.Words{ID: id, Title: "References by date", Desc: "Two references show it inside the era; one inside the era lacks it."},
		Era:   year(1780, 1789), EraName: "era: 1780 to 1789",
		Groups: []draw.Group{
			{Label: "shown by 2", Things: []draw.Thing{thing("Sea-green jacket", "about 1785", year(1785, 1785), year(1780, 1790)), thing("Cutting manual", "1789", year(1789, 1789), year(1789, 1789))}},
			{Label: "lacked by 1", Things: []draw.Thing{thing("Walking dress", "1787", year(1787, 1787), year(1787, 1787))}},
		},
	})
}

// claims is one of each verdict; of a build, or of a feature.
func claims(root string) []Claim {
	feature := func(path, text string) Link { return link(root+"evidence/"+path+".html", text) }
	jacket := Link{Href: root + "references/sea-green-jacket.html", Text: "Sea-green jacket", Note: "1784"}
	manual := Link{Href: root + "references/cutting-manual-1789.html", Text: "Cutting manual", Note: "1789"}
	return []Claim{
		{Feature: feature("piped-armhole", "piped armhole"), Mark: "supported", Words: "supported: 5 of 6 inside the era (44-97 %)", RestsOn: []Link{jacket, manual}, Notes: []string{"“ca. 1785” is read as 1780 to 1790"}},
		{Feature: feature("pinned-front", "pinned front"), Mark: "thin", Words: "thin: 1 of 1 inside the era (21-100 %)", RestsOn: []Link{jacket}},
		{Feature: feature("robings", "robings"), Mark: "earlier", Words: "only earlier: the latest is of 1774"},
		{Feature: feature("drawstring-waist", "drawstring at the waist"), Mark: "later", Words: "only later: the earliest is of 1794"},
		{Feature: feature("raised-waist", "raised waist"), Mark: "contradicted", Words: "contradicted: 1 of 5 inside the era (4-62 %)", RestsOn: []Link{manual}},
		{Feature: feature("plain-wrist", "plain wrist"), Mark: "none", Words: "without evidence: no dated reference shows it"},
		{Feature: feature("machine-woven-stripe", "machine-woven stripe"), Mark: "departs", Words: "departs: no dated reference shows it", Departs: "the width was what the budget allowed, 1 1/2 yd of it"},
	}
}

func evidencePage() *Evidence {
	const at = "evidence/index.html"
	builds := []Link{link("../builds/striped-jacket/index.html", "Striped linen jacket"), link("../builds/first-jacket/index.html", "First jacket")}
	return &Evidence{
		Frame: frame(at, "Evidence", "evidence"), Scale: timeScale("all"),
		Rests: []string{"12 references, 11 of them dated", "“ca.” is read as 5 years either way"},
		Features: []FeatureLine{
			{Feature: link("piped-armhole.html", "piped armhole"), Span: "1775 to 1790", Shows: 7, Lacks: 1, Claims: builds},
			{Feature: link("pinned-front.html", "pinned front"), Span: "1784", Shows: 1, Claims: builds[:1]},
			{Feature: link("plain-wrist.html", "plain wrist"), Lacks: 2},
		},
		Undated: []Link{{Href: "../references/portrait.html", Text: "Portrait of a woman at a market stall", Note: "no date is written down"}},
	}
}

func pipedArmhole() *FeaturePage {
	f := frame("evidence/piped-armhole.html", "Piped armhole", "evidence")
	f.Kind = "feature"
	f.Crumbs = []Link{link("index.html", "Evidence")}
	of := func(mark, words, href, build string) Claim {
		return Claim{Build: Link{Href: "../builds/" + href + "/index.html", Text: build, Note: "1780/1789"}, Mark: mark, Words: words}
	}
	return &FeaturePage{
		Frame: f, Scale: timeScale("feature"),
		Facts:  []Fact{{Name: "Shown", Value: "1775 to 1790, by 7 references"}, {Name: "Lacking", Value: "in 1 reference, of 1787"}, {Name: "Also written", Value: "armhole, piped"}},
		Table:  &Table{Heads: []string{"Reference", "Date", "Here", "Type", "Holder"}, Rows: [][]Link{{link("../references/sea-green-jacket.html", "Sea-green jacket"), {Text: "1784"}, {Text: "shows it"}, {Text: "surviving garment"}, {Text: "a town museum, invented"}}, {link("../references/cutting-manual-1789.html", "Cutting manual"), {Text: "1789"}, {Text: "shows it"}, {Text: "cutting manual"}, {}}, {link("../references/walking-dress.html", "Walking dress"), {Text: "1787", Note: "uncertain"}, {Text: "lacks it"}, {Text: "fashion plate"}, {}}}},
		Claims: []Claim{of("supported", "supported: 5 of 6 inside the era (44-97 %)", "striped-jacket", "Striped linen jacket"), of("thin", "thin: 1 of 1 inside the era (21-100 %)", "first-jacket", "First jacket")},
		Rests:  []string{"“ca.” is read as 5 years either way", "the range is Wilson's, at 95 %"},
	}
}

func dossier() *Documentation {
	const at = "builds/striped-jacket/documentation.html"
	jacket, front := stripedJacket(), photo("builds/striped-jacket/documentation.html", 0, "The jacket on a stand, sleeves pinned", "On the stand, before the sleeves were set")
	f := frame(at, "Striped linen jacket", "builds")
	f.Kind = "documentation"
	f.Crumbs = []Link{link("../index.html", "Builds"), link("index.html", "Striped linen jacket")}
	kinds := outcomes("../../")
	return &Documentation{
		Frame: f, Of: Link{Href: "index.html", Text: "Striped linen jacket", Note: "as of 15 March 2026"}, Photo: &front,
		Facts:  []Fact{{Name: "Made by", Value: "Ottilie"}, {Name: "Worn by", Links: jacket.Facts[0].Links}, {Name: "Date portrayed", Value: "1780s (1780/1789)"}, {Name: "Pattern", Links: jacket.Facts[2].Links}, {Name: "Material", Value: "striped linen, linen thread"}, {Name: "Hours", Value: "41 1/2"}},
		About:  "<p>A short jacket for market days, such as a woman who sells her own butter might have owned: strong linen, nothing that needs a maid.</p><p>The stripe is the one thing I would not give up.</p>",
		Claims: claims("../../"), Methods: []Link{link("../../techniques/hot-iron.html", "Pressing linen"), link("../../techniques/piping.html", "Piping by hand"), link("", "Backstitch")},
		Made: []Decision{decision("../../", kinds[0]), {Question: "Close the front with pins or with hooks?", Chose: "pins", InsteadOf: []string{"hooks and worked eyes"}, Because: "pins give up to 1 in of overlap to move", Outcome: kinds[1]}},
		Sources: []Source{
			{Link: link("../../references/sea-green-jacket.html", "Sea-green jacket"), Citation: "Jacket, sea-green linen, 1784. Surviving garment. The Thimble Lane Collection, TL.1784.3."},
			{Link: link("../../references/cutting-manual-1789.html", "Cutting manual"), Citation: "A. Nobody, The Cutter's Companion, printed for the author, 1789, plate 4.", Address: "https://books.example/cutters-companion/4"},
		},
		NextTime: jacket.Next,
		Short:    []Fact{{Name: "Material", Value: "striped linen, 2 1/4 yd"}, {Name: "Pattern", Links: []Link{link("../../patterns/short-jacket-draft.html", "Short jacket draft")}}, {Name: "Year", Value: "1780s"}, {Name: "Notions", Value: "piping cord 4 yd, linen thread, 12 pins"}, {Name: "How accurate", Value: "5 of 7 choices have evidence inside the era; the stripe is woven by machine"}, {Name: "Hours", Value: "41 1/2"}, {Name: "First worn", Value: "9 March 2026, market day"}, {Name: "Cost", Value: "74.20 EUR"}},
		Empty:    []string{"robings: name a reference, or say that it is a departure", "accession number of the Sea-green jacket's lining"},
	}
}

func stashPage() *Stash {
	const at = "materials/stash.html"
	f := frame(at, "Stash", "materials")
	f.Crumbs = []Link{link("index.html", "Materials")}
	jacket, first := link("../builds/striped-jacket/index.html", "Striped linen jacket"), link("../builds/first-jacket/index.html", "First jacket")
	return &Stash{
		Frame: f, Rests: []string{"as of 15 March 2026", "a material that nobody bought on the record is not counted"},
		Lacks: []StashLack{{Build: link("../builds/promenade-coat/index.html", "Promenade coat"), Words: []string{"piping cord: 3 yd", "blue wool: 1 3/4 yd at 60 in wide"}}, {Build: jacket, Words: []string{"pins: 4"}}},
		Rows: []StashRow{
			{Material: link("striped-linen.html", "Striped linen"), Lot: "bought 3 January 2026", Bought: "2 1/2 yd", Used: "2 1/4 yd", OnHand: "1/4 yd and 2 pieces", Pieces: []string{"9 x 31 in, straight", "6 x 7 in, grain not known"}, Builds: []Link{jacket, first}, Notes: []string{"washed once: it lost 3/4 in to the yard"}},
			{Material: link("piping-cord.html", "Piping cord"), Bought: "5 yd", Used: "4 yd", OnHand: "1 yd", Builds: []Link{jacket}},
			{Material: link("blue-wool.html", "Blue wool"), Lot: "end of a bolt, given", OnHand: "not known", Notes: []string{"nobody wrote down how much came"}},
		},
	}
}

func toDoPage() *ToDo {
	const at = "to-do.html"
	jacket := stripedJacket()
	stopped := jacket.Log[0]
	stopped.Link.Href = "builds/striped-jacket/2026-02-14.html"
	back := photo(at, 1, "Back view; the side seams hang straight", "")
	stopped.Photo = &back
	market := Link{Href: "occasions/market-day.html", Text: "Market day", Note: "9 March 2026"}
	return &ToDo{
		Frame: frame(at, "To do", "to do"),
		Jobs: []Job{
			{Build: link("builds/striped-jacket/index.html", "Striped linen jacket"), State: "under way", For: market, Away: "in 23 days", Mark: "tight", Ready: "ready between 2 and 14 March 2026, tight", Stopped: stopped, HeldUp: []string{"buy 3 yd of piping cord", "decide: keep the cuffs?", "measure the wrist girth of Wren over shift and stays"}, Next: []Next{{Text: "Cut the sleeve 1 in wider before trusting the draft.", From: link("builds/striped-jacket/2026-02-14.html#next-1", "First fitting"), Day: "14 February 2026"}}},
			{Build: link("builds/quilted-petticoat/index.html", "Quilted petticoat"), State: "waiting for repair", For: market, Away: "in 23 days", Mark: "in time", Ready: "ready about 20 February 2026, in time", HeldUp: []string{"mend the hem: 7 in of it hang loose"}},
			{Build: link("builds/promenade-skirt/index.html", "Promenade skirt"), State: "under way", For: Link{Href: "occasions/promenade.html", Text: "Seaside promenade", Note: "20 June 2026"}, Away: "in 126 days", Mark: "late", Ready: "ready about 9 July 2026, late by 19 days"},
			{Build: link("builds/promenade-coat/index.html", "Promenade coat"), State: "planned", Mark: "unknown", Ready: "no pace yet: no hours in the last 28 days"},
		},
	}
}

// bareRecord and longRecord are the pages of the record with next to nothing to
// say, and with words that have nowhere to break.
func bareRecord() map[string]any {
	return map[string]any{
		"bare/decisions.html":     &Decisions{Frame: frame("bare/decisions.html", "Decisions", "decisions"), Empty: "Nothing is decided yet. A paragraph that begins “Decided:” is gathered here."},
		"bare/evidence.html":      &Evidence{Frame: frame("bare/evidence.html", "Evidence", "evidence"), Empty: "No reference says yet what it shows."},
		"bare/feature.html":       &FeaturePage{Frame: frame("bare/feature.html", "Plain wrist", "evidence")},
		"bare/documentation.html": &Documentation{Frame: frame("bare/documentation.html", "Blue apron", "builds")},
		"bare/stash.html":         &Stash{Frame: frame("bare/stash.html", "Stash", "materials"), Empty: "Nothing is bought yet. A note with a line “bought:” begins the ledger."},
		"bare/to-do.html":         &ToDo{Frame: frame("bare/to-do.html", "To do", "to do"), Empty: "Nothing is planned, under way or waiting for repair."},
	}
}

func longRecord() map[string]any {
	const word = "Überrockärmelaufschlagsknopfleistenunterfütterungsstoffrest"
	f := frame("long/record.html", word, "builds")
	l := Link{Href: "#", Text: word, Note: word}
	facts := []Fact{{Name: word, Value: word}}
	next := Next{Text: word, From: l, Day: word, About: []Link{l}, State: word, Answer: l}
	decided := []Decision{{Question: word, Chose: word, Because: word, RestsOn: []Link{l}, From: l, Outcome: &Outcome{"regretted", word, word, l}}}
	claim := []Claim{{Feature: l, Build: l, Mark: "thin", Words: word, RestsOn: []Link{l}, Departs: word, Notes: []string{word}}}
	table := &Table{Heads: []string{word, word}, Rows: [][]Link{{l, l}}}
	entry := Entry{Link: l, Day: word, Stage: word, Hours: word, Text: word, Of: l}
	return map[string]any{
		"long/decisions.html":     &Decisions{Frame: f, Sections: []DecisionSection{{Title: word, Anchor: "by-word", Groups: []DecisionGroup{{Title: l, Decisions: decided}}}}},
		"long/evidence.html":      &Evidence{Frame: f, Features: []FeatureLine{{Feature: l, Span: word, Shows: 1000, Claims: []Link{l}}}, Undated: []Link{l}, Rests: []string{word}},
		"long/feature.html":       &FeaturePage{Frame: f, Facts: facts, Table: table, Claims: claim, Rests: []string{word}},
		"long/documentation.html": &Documentation{Frame: f, Of: l, Facts: facts, About: word + word, Claims: claim, Methods: []Link{l}, Made: decided, Sources: []Source{{Link: l, Citation: word, Address: "https://books.example/" + word}}, NextTime: []Next{next}, Short: facts, Empty: []string{word}},
		"long/stash.html":         &Stash{Frame: f, Rows: []StashRow{{Material: l, Lot: word, Bought: "1036 13/16 yd", Used: "1036 13/16 yd", OnHand: "1036 13/16 yd", Pieces: []string{word}, Builds: []Link{l}, Notes: []string{word}}}, Lacks: []StashLack{{Build: l, Words: []string{word}}}, Rests: []string{word}},
		"long/to-do.html":         &ToDo{Frame: f, Jobs: []Job{{Build: l, State: word, For: l, Away: word, Mark: "late", Ready: word, Stopped: entry, HeldUp: []string{word}, Next: []Next{next}}}},
	}
}
