package evidence

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"hussif/content/edtf"
	"hussif/content/journal/journaltest"
)

const attic = `
-- journal.yaml --
title: t
-- references/a-print.md --
---
date: 1786
shows: [Piped  seams, plain cap, "piped seams"]
---
-- references/jacket-as-listed.md --
---
date: 1784
holder: A county costume collection
accession number: CC 1
shows: [piped seams, pinned front]
---
-- references/jacket-as-seen.md --
---
date: ca. 1790
holder: a county  costume Collection
accession number: cc1
shows: piped seams
lacks: [pinned front, waist binding]
---
-- references/undated.md --
---
shows: [piped seams]
---
-- references/unnumbered-1.md --
---
holder: A county costume collection
date: before 1770
lacks: piped seams
---
-- references/unnumbered-2.md --
---
holder: A county costume collection
date: 1771
lacks: piped seams
---
-- builds/grey-jacket.md --
---
features: [PIPED SEAMS, wrist ties, piped seams]
---
`

func TestGather(t *testing.T) {
	b := Gather(journaltest.OpenClean(t, attic))
	if diff := cmp.Diff([]string{"pinned front", "piped seams", "plain cap", "waist binding", "wrist ties"}, b.Names()); diff != "" {
		t.Error(diff)
	}
	f, known := b.For(" Piped Seams")
	if !known {
		t.Fatal("piped seams are not known")
	}
	list := func(objects []*Object) [][]string {
		var all [][]string
		for _, o := range objects {
			all = append(all, append(ids(o), o.Words()))
		}
		return all
	}
	if diff := cmp.Diff([][]string{
		{"jacket-as-listed", "jacket-as-seen", "1784 or ca. 1790, counted as 1784 to 1795"},
		{"a-print", "1786"},
		{"undated", "without a date"},
	}, list(f.Shown)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([][]string{{"unnumbered-1", "before 1770"}, {"unnumbered-2", "1771"}}, list(f.Lacked)); diff != "" {
		t.Error(diff)
	}
	if len(f.Claimed) != 1 || f.Claimed[0].ID.Name() != "grey-jacket" {
		t.Errorf("claimed by %v", f.Claimed)
	}
	if got := f.Attested().String(); got != "1784 to 1795" {
		t.Errorf("attested %s", got)
	}
	front, _ := b.For("pinned front")
	if len(front.Shown)+len(front.Lacked) != 0 || len(front.Disputed) != 1 {
		t.Errorf("a front that one object both shows and lacks: %+v", front)
	}
	if got := Judge(front, date(t, "1790"), b.customs); got.Words() != "without evidence: 1 said both to show and to lack it not counted" {
		t.Errorf("it is %s", got.Words())
	}
	if f, known := b.For("hem  facing"); known || f.Name != "hem facing" || !f.Attested().IsZero() {
		t.Errorf("a feature that nobody names is known: %+v", f)
	}
	if got, want := front.Words(), "Shown by nothing. Lacked by nothing. Said both to be shown and to be lacked by Jacket as listed, 1784 or ca. 1790, counted as 1784 to 1795."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := f.Words(), "Shown by Jacket as listed, 1784 or ca. 1790, counted as 1784 to 1795; A print, 1786; Undated, without a date. Lacked by Unnumbered 1, before 1770; Unnumbered 2, 1771."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	same := b.SameObjects()
	if len(same) != 1 || !cmp.Equal(ids(same[0]), []string{"jacket-as-listed", "jacket-as-seen"}) {
		t.Errorf("pages of one object: %v", same)
	}
	undated := b.Undated()
	if len(undated) != 1 || undated[0].ID.Name() != "undated" {
		t.Errorf("undated: %v", undated)
	}
}

// Several dates of one object leave open what any of them does.
func TestCovering(t *testing.T) {
	for _, c := range []struct {
		dates       []string
		words, span string
		unsure      bool
	}{
		{nil, "", "", false},
		{[]string{"", "1786", "1786"}, "1786", "1786", false},
		{[]string{"1786", "", "1784?"}, "1786 or 1784, uncertain", "1784 to 1786", true},
		{[]string{"1786", "1784 or later"}, "1786 or 1784 or later", "1784 or later", false},
		{[]string{"before 1780", "1786"}, "before 1780 or 1786", "up to 1786", false},
		{[]string{"before 1780", "1990 or later"}, "before 1780 or 1990 or later", "any year", false},
	} {
		var dates []edtf.Date
		for _, text := range c.dates {
			dates = append(dates, date(t, text))
		}
		got := covering(dates)
		if got.String() != c.words || Years(got) != c.span || got.Uncertain != c.unsure || got.OpenStart && got.Earliest != 0 || got.OpenEnd && got.Latest != 0 {
			t.Errorf("%q: %+v, want %q, %q", c.dates, got, c.words, c.span)
		}
	}
}

func TestYears(t *testing.T) {
	for text, want := range map[string]string{
		"":           "",
		"1786":       "1786",
		"1786-10":    "1786",
		"1780/1789":  "1780 to 1789",
		"[..1789]":   "up to 1789",
		"1784/..":    "1784 or later",
		"-0043/0001": "44 BC to 1",
	} {
		if got := Years(date(t, text)); got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
	for _, c := range []struct {
		text     string
		from, to float64
	}{
		{"1786", 1786, 1787},
		{"1780/1789", 1780, 1790},
		{"1784-12-31", 1784 + 365.0/366, 1785}, // a leap year
		{"1785-01-01", 1785, 1785 + 1.0/365},
		{"[..1789]", 0, 1790},
		{"1784/..", 1784, 0},
		{"", 0, 0},
	} {
		if from, to := Extent(date(t, c.text)); from != c.from || to != c.to {
			t.Errorf("%s: %g to %g, want %g to %g", c.text, from, to, c.from, c.to)
		}
	}
}
