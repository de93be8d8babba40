package audience_test

import (
	"bytes"
	"path"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"golang.org/x/tools/txtar"

	"hussif/content/journal"
)

// withSecrets is a journal; the lines that begin with ~ are hidden from the public, and
// so are files whose names do.
const withSecrets = `
-- journal.yaml --
title: Costumes
share: public
unit: in
currency: EUR
~ease: {jacket: {bust girth: 1 to 2 in}}
-- people/ada.md --
---
title: Ada
~measured:
~  - {date: 2026-01-10, over: [shift, stays], bust: 36 in, waist: 28 in}
~  - {date: 2026-06-10, over: [shift, stays], bust: 37 in, waist: 29 in}
~usual changes: [longer in the back]
---
Ada sews.

~Private: not for others.
-- ~people/bea.md --
---
share: self
measured: [{date: 2026-01-10, bust: 40 in}]
---
Bea.
-- builds/jacket/build.md --
---
for: ada
garment: jacket
over: [shift, stays]
pattern: draft
state: under way
~planned: {cost: 80}
~fit: {bust: 1 to 2 in, waist: 1/2 in}
seams: [{name: side, count: 2, now: 5/8 in, keep: 1/4 in, crosses: [bust, waist]}]
needs: [{material: linen, amount: 2 yd}]
occasion: fair
---
A jacket.

- one
~- Private: two
- three

~Circle: come on Friday.

~Private: Next time: hidden. (pattern: secret-draft)

Last.
-- builds/jacket/2026-03-01-cut.md --
---
stage: cutting
hours: 3
~spent: [12 EUR]
~measured: {bust: 37 in, waist: 28 1/4 in}
~body: [{over: [shift], waist: 28 in}]
~altered: [{seam: side, was: 5/8 in, now: 3/8 in}]
~pattern changed: {waist: 1/2 in}
~fitted: [{where: waist, fault: gapes}]
~moves: {reach: no}
---
Cut.

~` + "```" + `work knife pleats
~finished: 12 1/4 in
~cloth: 57 in
~pleats: 14
~` + "```" + `

Next time: cut it wider. (pattern: draft)
-- ~builds/jacket/2026-03-02-fitting.md --
---
share: circle
decided: [{question: "Cuffs?", chose: none}]
carries: [2026-03-01-cut#next-cut-wider]
hours: 100
tags: [secret]
used: [{material: linen, amount: 1 yd}]
bought: [{material: linen, amount: 5 yd, cost: 60 EUR}]
---
Fitted.

Next time: fit it sooner. (pattern: draft)
-- ~builds/gown/build.md --
---
for: bea
pattern: draft
remakes: jacket
occasion: fair
needs: [{material: linen, amount: 9 yd}]
features: [{what: piped armhole, rests on: [green-jacket]}, {what: long train}]
---
A gown, after [[jacket]].
-- ~builds/gown/2026-04-01-worn.md --
---
stage: worn
occasion: fair
techniques: [piping]
---
Worn.
-- patterns/draft.md --
---
garment: jacket
~size: "14"
---
A draft.
-- ~patterns/secret-draft.md --
---
share: self
---
-- references/green-jacket.md --
---
date: 1785
shows: [piped armhole]
---
-- ~references/blue-jacket.md --
---
share: circle
date: 1786
shows: [piped armhole, long train]
---
-- materials/linen.md --
---
what: cloth
~price: 20 EUR
~from: the fair
---
-- techniques/piping.md --
A piping.
-- occasions/fair.md --
---
date: 2027-06-01
~place: the green
~worn: [gown]
---
-- ~occasions/birthday.md --
---
share: self
date: 2026-12-01
worn: [jacket]
---
`

// aHref is a link to another file of the site.
var aHref = regexp.MustCompile(`(?:href|src)="([^":#]+)[#"]`)

// secrets returns the journal with its secrets, or one in which they never were.
func secrets(with bool) *planter {
	p := &planter{files: fstest.MapFS{}}
	for _, f := range txtar.Parse([]byte(withSecrets)).Files {
		name, hidden := strings.CutPrefix(f.Name, "~")
		if hidden && !with {
			continue
		}
		var text strings.Builder
		for line := range strings.Lines(string(f.Data)) {
			if rest, secret := strings.CutPrefix(line, "~"); !secret {
				text.WriteString(line)
			} else if with {
				text.WriteString(rest)
			}
		}
		p.add(name, text.String())
	}
	return p
}

// A site for others is to the byte what it would be if nothing of what is hidden had
// ever been written: so no count, order, date, forecast or drawing depends on it.
func TestASharedSiteIsAsIfSecretsNeverWere(t *testing.T) {
	with, without := secrets(true).make(t, journal.Public), secrets(false).make(t, journal.Public)
	for name, data := range with {
		if strings.HasPrefix(name, ".hussif-site") {
			continue // it has times
		}
		other, ok := without[name]
		switch {
		case !ok:
			t.Errorf("%s is there because of what is hidden", name)
		case !bytes.Equal(data, other) && name != "the zip itself":
			i := 0
			for i < min(len(data), len(other)) && data[i] == other[i] {
				i++
			}
			t.Errorf("%s tells of what is hidden: %q, and without %q", name, data[max(0, i-80):min(len(data), i+80)], other[max(0, i-80):min(len(other), i+80)])
		}
	}
	for name := range without {
		if _, ok := with[name]; !ok {
			t.Errorf("%s is not there because of what is hidden", name)
		}
	}
	if len(with) < 40 {
		t.Errorf("only %d files were made", len(with))
	}
	for name, data := range with {
		for _, m := range aHref.FindAllSubmatch(data, -1) {
			if to := path.Join(path.Dir(name), string(m[1])); strings.HasSuffix(name, ".html") && !strings.HasPrefix(name, "in zip") && with[to] == nil {
				t.Errorf("%s links to %s, which is not there", name, to)
			}
		}
	}
	own := secrets(true).make(t, "")
	if len(own) <= len(with) {
		t.Error("the maker's own site has no more than the public's")
	}
}
