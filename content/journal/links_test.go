package journal

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const linked = `
-- people/wren.md --
-- people/ottilie.md --
-- builds/grey-jacket/build.md --
---
title: The grey jacket
next time: [cut it longer, line it]
---
## Sleeve *heads*
## Sleeve heads

Next time: less ease.
-- builds/grey-jacket/2026-03-01-fitting.md --
---
decided: [keep the cuffs]
---
Decided: no collar.
-- builds/cap/2026-03-01-fitting.md --
-- patterns/Jacket-Draft.md --
-- materials/piping.md --
-- techniques/piping.md --
-- occasions/fair.md --
---
date: 2026-06-01
---
`

func TestFind(t *testing.T) {
	j := sound(t, linked)
	for _, c := range []struct {
		to    string
		kinds []Kind
		want  ID // "" where it means nothing, or too much
	}{
		{"wren", nil, "people/wren"},
		{"people/wren", nil, "people/wren"},
		{"people/wren.md", nil, "people/wren"},
		{"WREN", nil, "people/wren"},
		{"grey-jacket", nil, "builds/grey-jacket"},
		{"builds/grey-jacket", nil, "builds/grey-jacket"},
		{"jacket-draft", nil, "patterns/Jacket-Draft"},
		{"grey-jacket/2026-03-01-fitting", nil, "builds/grey-jacket/2026-03-01-fitting"},
		{"2026-03-01-fitting", nil, ""},
		{"piping", nil, ""},
		{"piping", []Kind{KindMaterial}, "materials/piping"},
		{"techniques/piping", []Kind{KindMaterial}, ""},
		{"nobody", nil, ""},
		{"wren", []Kind{KindBuild}, ""},
		{"", nil, ""},
		{"build", nil, ""},
	} {
		r, ok := j.Find(c.to, c.kinds...)
		switch {
		case ok != (c.want != ""):
			t.Errorf("%q %v: found %t", c.to, c.kinds, ok)
		case ok && r.Head().ID != c.want:
			t.Errorf("%q means %s", c.to, r.Head().ID)
		}
	}
	if j.Person(ref("wren")) == nil || j.Build(ref("grey-jacket")) == nil || j.Pattern(ref("jacket-draft")) == nil ||
		j.Material(ref("piping")) == nil || j.Technique(ref("piping")) == nil || j.Occasion(ref("fair")) == nil {
		t.Error("a record is not found as one of its kind")
	}
	if j.Person(Ref{}) != nil || j.Build(ref("wren")) != nil {
		t.Error("a record is found that was not meant")
	}
}

// linking tells what one note's text, in a build's folder, brings up.
func linking(t *testing.T, text string) []string {
	t.Helper()
	_, findings := open(t, linked+"-- builds/grey-jacket/2026-03-09.md --\n"+text+"\n")
	return lines(findings)
}

func TestLinksInText(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"a name", "[[wren]]", ""},
		{"other words", "[[wren|her]]", ""},
		{"folder and name", "[[techniques/piping]]", ""},
		{"a note of a build", "[[cap/2026-03-01-fitting]]", ""},
		{"up and down", "[a](../../people/wren.md) [b](2026-03-01-fitting.md) [c](build.md) [d](./build.md)", ""},
		{"over a folder and back", "[a](../grey-jacket/../cap/2026-03-01-fitting.md)", ""},
		{"percent signs", "[a](%62uild.md)", ""},
		{"an anchor", "[[grey-jacket#next-3]] [[grey-jacket#next-1]] [a](build.md#sleeve-heads) [[grey-jacket#sleeve-heads-2]]", ""},
		{"a heading as it is written", "[[grey-jacket#Sleeve heads]]", ""},
		{"an anchor in words", "[[grey-jacket#next-cut-longer]] [[grey-jacket#Next less ease]] [a](build.md#next-line)", ""},
		{"a heading like a note", "## Next steps\n[[#Next steps]] [[#next-steps]] [a](#heading-next-steps)", ""},
		{"decisions", "[[grey-jacket/2026-03-01-fitting#decided-2]] [[grey-jacket/2026-03-01-fitting#decided-1]]", ""},
		{"within the note", "## Hem\n[[#hem]] [a](#hem)", ""},
		{"the web", "<https://example.org/> [a](https://example.org/x) [b](mailto:a@example.org)", ""},

		{"misspelt", "[[wern]]", `1:3: error: no page is called "wern" [broken link] did you mean "wren"?`},
		{"like nothing", "[[the-blue-gown]]", `1:3: error: no page is called "the-blue-gown" [broken link] a page is called after its file, or its build's folder`},
		{"like one of several", "[[pipping]]", `1:3: error: no page is called "pipping" [broken link] did you mean "materials/piping" or "techniques/piping"?`},
		{"a folder and a misspelt name", "[[people/wern]]", `1:3: error: no page is called "people/wern" [broken link] did you mean "wren"?`},
		{"the wrong folder", "[[patterns/wren]]", `1:3: error: no page is called "patterns/wren" [broken link] did you mean "wren"?`},
		{"several", "[[piping]]", `1:3: error: several pages are called "piping" [unclear link] did you mean "materials/piping" or "techniques/piping"?`},
		{"a misspelt path", "[a](../../people/wern.md)", `1:5: error: no page of the journal lies at "people/wern.md" [broken link]`},
		{"a path from the wrong folder", "[a](people/wren.md)", `1:5: error: no page of the journal lies at "builds/grey-jacket/people/wren.md" [broken link] did you mean "../../people/wren.md"?`},
		{"capitals of a path", "[a](../../patterns/jacket-draft.md)", `1:5: error: no page of the journal lies at "patterns/jacket-draft.md" [broken link] did you mean "../../patterns/Jacket-Draft.md"?`},
		{"out of the journal", "[a](../../../x.md)", `1:5: error: no page of the journal lies at "../x.md" [broken link]`},
		{"a file of the disk", "[a](file:///etc/passwd)", `1:5: warning: this link leads out of the journal and is left as text [broken link] link to a page of the journal, or to a web address that begins with https://`},
		{"a picture from the web", "![a](https://example.org/a.png)", `1:6: warning: this picture lies outside the journal and is not shown [broken link] put a copy in the note's folder: a site must open without the network`},
		{"a misspelt anchor", "[[grey-jacket#sleve-heads]]", `1:3: error: grey-jacket has no part called "sleve-heads" [broken anchor] did you mean "sleeve-heads"?`},
		{"an anchor like none", "[a](build.md#collar)", `1:5: error: grey-jacket has no part called "collar" [broken anchor] its parts are next-cut-longer, next-line, next-less-ease, sleeve-heads, sleeve-heads-2`},
		{"a note past the last", "[[grey-jacket#next-4]]", `1:3: error: grey-jacket has no part called "next-4" [broken anchor] its parts are next-cut-longer, next-line, next-less-ease, sleeve-heads, sleeve-heads-2`},
		{"a note in other words since", "[[grey-jacket#next-cut-two-inches-longer-back]]", `1:3: error: grey-jacket has no part called "next-cut-two-inches-longer-back" [broken anchor] did you mean "next-cut-longer"?`},
		{"a note gone", "[[grey-jacket#next-press-collar]]", `1:3: error: grey-jacket has no part called "next-press-collar" [broken anchor] its parts are next-cut-longer, next-line, next-less-ease, sleeve-heads, sleeve-heads-2`},
		{"a note on another page", "[[wren#next-cut-longer]]", `1:3: error: wren has no part called "next-cut-longer" [broken anchor] did you mean "grey-jacket#next-cut-longer"?`},
		{"a note on another page, by path", "[a](../cap/2026-03-01-fitting.md#decided-keep-cuffs)", `1:5: error: 2026-03-01-fitting has no part called "decided-keep-cuffs" [broken anchor] did you mean "2026-03-01-fitting.md#decided-keep-cuffs"?`},
		{"a note of a page that was renamed", "[[old-name#decided-keep-cuffs]]", `1:3: error: no page is called "old-name" [broken link] did you mean "builds/grey-jacket/2026-03-01-fitting#decided-keep-cuffs"?`},
		{"an anchor within", "[[#hem]]", `1:3: error: 2026-03-09 has no part called "hem" [broken anchor]`},
		{"a remark about nothing", "Next time: less. (pattern: jacket-drat)", `1:28: error: no page is called "jacket-drat" [broken link] did you mean "Jacket-Draft"?`},
		{"a remark about another kind", "Next time: less. (pattern: wren)", `1:28: error: "wren" is a person; this field wants a pattern [broken link]`},
		{"a remark about a kind of garment", "Next time: less. (garment: gown)", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			var want []string
			if c.want != "" {
				want = []string{"builds/grey-jacket/2026-03-09.md:" + c.want}
			}
			if diff := cmp.Diff(want, linking(t, c.text)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestLinksInFields(t *testing.T) {
	for _, c := range []struct{ name, front, want string }{
		{"a name", "build: grey-jacket", ""},
		{"in brackets", `build: "[[grey-jacket]]"`, ""},
		{"in brackets with words", `build: "[[grey-jacket|the jacket]]"`, ""},
		{"a file", "build: builds/grey-jacket.md", ""},
		{"an anchor", `decided: [{question: a, rests on: "grey-jacket#next-1"}]`, ""},
		{"the kind tells", "techniques: piping", ""},
		{"misspelt, but only of its kind", "build: wren", `2:8: error: "wren" is a person; this field wants a build [broken link]`},
		{"an occasion", "build: fair", `2:8: error: "fair" is an occasion; this field wants a build [broken link]`},
		{"for an occasion", "occasion: wren", `2:11: error: "wren" is a person; this field wants an occasion [broken link]`},
		{"misspelt", "techniques: [pipping]", `2:14: error: no page is called "pipping" [broken link] did you mean "piping"?`},
		{"deep within", "decided: [{question: a, rests on: [wren, wern]}]", `2:42: error: no page is called "wern" [broken link] did you mean "wren"?`},
		{"any kind, several", "decided: [{question: a, rests on: piping}]", `2:35: error: several pages are called "piping" [unclear link] did you mean "materials/piping" or "techniques/piping"?`},
		{"an anchor that is not there", `decided: [{question: a, rests on: "grey-jacket#next-9"}]`, `2:35: error: grey-jacket has no part called "next-9" [broken anchor] its parts are next-cut-longer, next-line, next-less-ease, sleeve-heads, sleeve-heads-2`},
		{"nothing", `build: "[[]]"`, `2:8: error: this names no page of the journal [not a link]`},
		{"an anchor only", `build: "#next-1"`, `2:8: error: this names no page of the journal [not a link]`},
	} {
		t.Run(c.name, func(t *testing.T) {
			var want []string
			if c.want != "" {
				want = []string{"builds/grey-jacket/2026-03-09.md:" + c.want}
			}
			if diff := cmp.Diff(want, linking(t, "---\n"+c.front+"\n---")); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// A file that cannot be read whole is one fault, not one for each link to it.
func TestNoLinkBreaksByAFault(t *testing.T) {
	_, findings := open(t, `
-- patterns/draft.md --
---
garmet: jacket
---
-- techniques/piping.md --
---
title: [
---
## Hidden by the fault
-- builds/cap/build.md --
---
pattern: draft
techniques: piping
---
By [[draft#sleeve]] and [[piping#hidden-by-the-fault]].
`)
	want := []string{
		`patterns/draft.md:2:1: error: no field of a pattern is called "garmet" [unknown field] did you mean "garment"?`,
		`techniques/piping.md:2:1: error: the fields cannot be read from about here: did not find expected node content [not YAML] put a value that begins with a bracket, & or * in quotes`,
	}
	if diff := cmp.Diff(want, lines(findings)); diff != "" {
		t.Error(diff)
	}
}

func TestLinkedFrom(t *testing.T) {
	j := sound(t, `
-- patterns/draft.md --
See [[draft]] itself.
-- builds/cap/build.md --
---
pattern: draft
features: [{what: brim, rests on: [draft]}]
next time: [{do: less, pattern: draft}]
---
-- builds/cap/2026-03-01.md --
---
decided: [{question: a, rests on: [draft, draft]}]
---
[[draft]] and [again](../../patterns/draft.md)

Next time: more. (pattern: draft)
-- notes/2026-03-02.md --
---
body: [{of: wren, bust: 36 in}]
---
-- people/wren.md --
`)
	var got []string
	for _, tie := range j.LinkedFrom("patterns/draft") {
		got = append(got, string(tie.From.Head().ID)+" "+tie.Field)
	}
	want := []string{
		"builds/cap next time", "builds/cap pattern", "builds/cap rests on",
		"builds/cap/2026-03-01 rests on", "builds/cap/2026-03-01 ", "builds/cap/2026-03-01 next time",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if ties := j.LinkedFrom("people/wren"); len(ties) != 1 || ties[0].Field != "body" {
		t.Errorf("the session links as %v", ties)
	}
	if j.LinkedFrom("builds/cap") != nil {
		t.Error("a note's folder is no link")
	}
}

// A note called by its day may be in any of a hundred builds.
func TestUnclearLinkNamesAFew(t *testing.T) {
	archive := ""
	for i := range 100 {
		archive += fmt.Sprintf("-- builds/b%02d/2026-03-01.md --\n", i)
	}
	_, findings := open(t, archive+"-- notes/2026-03-02.md --\nAs on [[2026-03-01]].\n")
	want := `notes/2026-03-02.md:1:9: error: several pages are called "2026-03-01" [unclear link] ` +
		`did you mean "builds/b00/2026-03-01", "builds/b01/2026-03-01", "builds/b02/2026-03-01" or "builds/b03/2026-03-01"?`
	if diff := cmp.Diff([]string{want}, lines(findings)); diff != "" {
		t.Error(diff)
	}
}
