package check

import (
	"strings"

	"hussif/content/front"
	"hussif/content/journal"
	"hussif/content/prose"
	"hussif/content/source"
)

// note makes an example of one note with this front matter.
func note(front string) string {
	return "\n-- notes/2026-03-01.md --\n---\n" + front + "\n---\n"
}

// settings makes an example of a settings file.
func settings(text string) string { return "\n-- journal.yaml --\n" + text + "\n" }

// person makes an example of one measuring session.
func person(session string) string {
	return "\n-- people/ada.md --\n---\nmeasured:\n  - " + session + "\n---\n"
}

// readingRules are spoken for while the journal is read, file by file and then
// all together.
func readingRules() []Rule {
	return []Rule{
		{
			Name: source.NotPlainText,
			Doc:  "A file, or its name, is not text in UTF-8. Old editors save in other encodings; choose UTF-8 when saving.",
			Bad:  "\n-- notes/2026-03-01.md --\nThe caf\xe9 curtain.\n",
			Good: "\n-- notes/2026-03-01.md --\nThe café curtain.\n",
		}, {
			Name: front.FrontMatter,
			Doc:  "The fields at the top of a file stand between two lines of three hyphens at the very left.",
			Bad:  "\n-- notes/2026-03-01.md --\n---\nstage: sewing\nSewed the side seams.\n",
			Good: "\n-- notes/2026-03-01.md --\n---\nstage: sewing\n---\nSewed the side seams.\n",
		}, {
			Name: front.NotYAML,
			Doc:  "The fields at the top of a file cannot be read as YAML.",
			Bad:  note("title: Sleeves: second try"),
			Good: note(`title: "Sleeves: second try"`),
		}, {
			Name: front.NotPlain,
			Doc:  "Anchors, aliases and tags of YAML are not read: each value stands where it belongs.",
			Bad:  note("title: &sleeves Second try"),
			Good: note("title: Second try"),
		}, {
			Name: front.GivenTwice,
			Doc:  "One field, or one measure under two of its names, is given twice, and only one of them can hold.",
			Bad:  person("{date: 2026-01-10, bust: 36 in, bust girth: 36 1/2 in}"),
			Good: person("{date: 2026-01-10, bust girth: 36 1/2 in}"),
		}, {
			Name: front.UnknownField,
			Doc:  "A field has a name that this kind of page does not have. Most often it is misspelt.",
			Bad:  note("stge: sewing"),
			Good: note("stage: sewing"),
		}, {
			Name: front.NeededField,
			Doc:  "A field is missing without which the rest means nothing.",
			Bad:  "\n-- notes/first-fitting.md --\nIt binds under the arm.\n",
			Good: "\n-- notes/2026-03-01-first-fitting.md --\nIt binds under the arm.\n",
		}, {
			Name: front.WrongShape,
			Doc:  "A list stands where a single value should, or a single value where a group of fields should.",
			Bad:  note("measured: 36 in"),
			Good: note("measured: {bust girth: 36 in}"),
		}, {
			Name: journal.NotALength,
			Doc:  "A length is a number, with a fraction if you like, and a unit: 37 1/2 in, 95 cm. What is added to a seam says whether it means each edge, each seam, or all round.",
			Bad:  person("{date: 2026-01-10, bust girth: 36 1/2 inn}"),
			Good: person("{date: 2026-01-10, bust girth: 36 1/2 in}"),
		}, {
			Name: journal.NotAnAmount,
			Doc:  "An amount of material is a length, a size or a count: 2 1/4 yd, 9 in x 31 in, 24 hooks.",
			Bad:  "\n-- materials/linen.md --" + note("bought:\n  - {material: linen, amount: some}"),
			Good: "\n-- materials/linen.md --" + note("bought:\n  - {material: linen, amount: 2 1/4 yd}"),
		}, {
			Name: journal.NotMoney,
			Doc:  "Money is a number with a currency: 12.50 EUR. The journal's `currency` holds for bare numbers.",
			Bad:  note("spent: 12 thalers"),
			Good: note("spent: 12 EUR"),
		}, {
			Name: journal.NotADuration,
			Doc:  "A time of work is written as 3 h, 3.5 h or 3h 20m.",
			Bad:  note("hours: all day"),
			Good: note("hours: 6 h"),
		}, {
			Name: journal.NotADay,
			Doc:  "A calendar day is written as year, month and day: 2026-03-01.",
			Bad:  person("{date: 1 March, bust girth: 36 in}"),
			Good: person("{date: 2026-03-01, bust girth: 36 in}"),
		}, {
			Name: journal.NotADate,
			Doc:  "The date of a reference or an era is written as in EDTF (1784, 178X, 1780/1789, 1784~) or as on a museum's label (ca. 1785, late 18th century).",
			Bad:  "\n-- references/blue-jacket.md --\n---\ndate: next year\n---\n",
			Good: "\n-- references/blue-jacket.md --\n---\ndate: ca. 1785\n---\n",
		}, {
			Name: journal.NotACount,
			Doc:  "A count is a whole number from 1 up.",
			Bad:  "\n-- builds/grey-jacket/build.md --\n---\npieces:\n  - {name: sleeve, cut: two}\n---\n",
			Good: "\n-- builds/grey-jacket/build.md --\n---\npieces:\n  - {name: sleeve, cut: 2}\n---\n",
		}, {
			Name: journal.NotYesOrNo,
			Doc:  "The field takes yes or no, and nothing else.",
			Bad:  note("on the pattern: maybe"),
			Good: note("on the pattern: no"),
		}, {
			Name: journal.NotOneOf,
			Doc:  "The field takes one of a few words only.",
			Bad:  note("stage: sowing"),
			Good: note("stage: sewing"),
		}, {
			Name: journal.NotAnAddress,
			Doc:  "A web address begins with https:// or http://.",
			Bad:  "\n-- references/blue-jacket.md --\n---\naddress: example.org/jacket\n---\n",
			Good: "\n-- references/blue-jacket.md --\n---\naddress: https://example.org/jacket\n---\n",
		}, {
			Name: journal.NotALink,
			Doc:  "A field that names another page is empty but for its brackets.",
			Bad:  "\n-- builds/grey-jacket/build.md --\n---\npattern: \"[[]]\"\n---\n",
			Good: "\n-- builds/grey-jacket/build.md --\n---\npattern: jacket-draft\n---\n-- patterns/jacket-draft.md --\n",
		}, {
			Name: journal.NotARegion,
			Doc:  "A region of a picture is how far from the left and from the top, how wide and how high, in hundredths.",
			Bad:  "\n-- builds/grey-jacket/build.md --\n---\nphotos: [{file: back.png, alt: The back, blur: 40% 5% 20%}]\n---\n-- builds/grey-jacket/back.png --\n",
			Good: "\n-- builds/grey-jacket/build.md --\n---\nphotos: [{file: back.png, alt: The back, blur: 40% 5% 20% 25%}]\n---\n-- builds/grey-jacket/back.png --\n",
		}, {
			Name: journal.UnknownMeasure,
			Doc:  "No measure has this name. Names are those of ISO 8559-1 and the workroom's short forms; a journal may add its own.",
			Bad:  person("{date: 2026-01-10, wast girth: 29 in}"),
			Good: person("{date: 2026-01-10, waist girth: 29 in}"),
		}, {
			Name: journal.OwnMeasureFault,
			Doc:  "A measure or short form that the journal adds does not go with those there are.",
			Bad:  settings("measures:\n  - {name: bust girth, class: large girth}"),
			Good: settings("measures:\n  - {name: over stomacher, class: large girth}"),
		}, {
			Name: journal.UnknownKind,
			Doc:  "A file is no page of the journal: it lies in none of the journal's folders, or its `kind` is none.",
			Bad:  "\n-- notes/2026-03-01.md --\n---\nkind: nite\n---\n",
			Good: "\n-- notes/2026-03-01.md --\n---\nkind: note\n---\n",
		}, {
			Name: journal.TwoOfOneName,
			Doc:  "Two files make the same page, as a build's folder and a file of that name do.",
			Bad:  "\n-- builds/jacket.md --\nOne.\n-- builds/jacket/build.md --\nTwo.\n",
			Good: "\n-- builds/grey-jacket/build.md --\nOne.\n-- builds/blue-jacket/build.md --\nTwo.\n",
		}, {
			Name: journal.BrokenLink,
			Doc:  "A link leads to no page. A page is called after its file, or its build's folder.",
			Bad:  "\n-- patterns/jacket-draft.md --\n-- notes/2026-03-01.md --\nCut by [[jacket-drift]].\n",
			Good: "\n-- patterns/jacket-draft.md --\n-- notes/2026-03-01.md --\nCut by [[jacket-draft]].\n",
		}, {
			Name: journal.BrokenAnchor,
			Doc:  "A link leads to a part that its page does not have. Parts are headings, next-time notes and decisions, each called by its own words (next-cut-sleeve-wider, decided-keep-cuffs).",
			Bad:  "\n-- patterns/jacket-draft.md --\n## Sleeve\n-- notes/2026-03-01.md --\nSee [[jacket-draft#sleve]].\n",
			Good: "\n-- patterns/jacket-draft.md --\n## Sleeve\n-- notes/2026-03-01.md --\nSee [[jacket-draft#sleeve]].\n",
		}, {
			Name: journal.UnclearLink,
			Doc:  "Several pages have the name that a link gives. Give the folder too.",
			Bad:  "\n-- materials/piping.md --\n-- techniques/piping.md --\n-- notes/2026-03-01.md --\nMore [[piping]].\n",
			Good: "\n-- materials/piping.md --\n-- techniques/piping.md --\n-- notes/2026-03-01.md --\nMore [[techniques/piping]].\n",
		}, {
			Name: prose.TooDeep,
			Doc:  "Quotations, lists or brackets stand in each other too deep to be read.",
			Bad:  "\n-- notes/2026-03-01.md --\n" + strings.Repeat("> ", 70) + "too deep\n",
			Good: "\n-- notes/2026-03-01.md --\n> not too deep\n",
		}, {
			Name: prose.TooLong,
			Doc:  "A piece of text has no end: blank lines part paragraphs, and a long note is better as several.",
			Bad:  "\n-- notes/2026-03-01.md --\n" + strings.Repeat("and so on ", 7000) + "\n",
			Good: "\n-- notes/2026-03-01.md --\nand so on\n",
		}, {
			Name: prose.BrokenTie,
			Doc:  "A bar parts the cells of a table, and so it also tears a link that has words of its own; a backslash before the bar keeps it.",
			Bad:  "\n-- patterns/draft.md --\n-- notes/2026-03-01.md --\n| cut by | piece |\n|---|---|\n| [[draft|the draft]] | front |\n",
			Good: "\n-- patterns/draft.md --\n-- notes/2026-03-01.md --\n| cut by | piece |\n|---|---|\n| [[draft\\|the draft]] | front |\n",
		}, {
			Name: prose.OpenSecret,
			Doc:  "A heading or a cell of a table begins with `Private:`, which hides only paragraphs and list items.",
			Bad:  "\n-- notes/2026-03-01.md --\n## Private: what it cost\n",
			Good: "\n-- notes/2026-03-01.md --\nPrivate: what it cost.\n",
		}, {
			Name: source.NotAFile,
			Doc:  "The journal's folder holds a link or a device, which is not read. Put a copy there.",
		},
	}
}
