package evidence

import (
	"testing"

	"hussif/content/edtf"
	"hussif/content/journal/journaltest"
)

func TestVerdicts(t *testing.T) {
	for _, c := range []struct {
		name          string
		shows, lacks  []string
		era           string
		verdict       Verdict
		reason, share string
	}{
		{"two inside", []string{"1782", "1786"}, nil, "1780/1789", Supported, "shown by 2 inside the era", "2 of 2 (34-100 %)"},
		{"one inside and one before", []string{"1786", "176X"}, nil, "1780/1789", Supported, "shown by 1 inside the era, 1 before it", "1 of 1 (21-100 %)"},
		{"one inside and one that may be", []string{"1786", "late 18th century"}, nil, "1780/1789", Supported, "shown by 1 inside the era, 1 perhaps inside it", "1 of 1 (21-100 %)"},
		{"one inside alone", []string{"1786"}, nil, "1780/1789", Thin, "shown by 1 inside the era", "1 of 1 (21-100 %)"},
		{"one that may be alone", []string{"1775/1785"}, nil, "1780/1789", Thin, "shown by 1 perhaps inside the era", ""},
		{"several that may be", []string{"1775/1785", "1788/1795", "17XX"}, nil, "1780/1789", Thin, "shown by 3 perhaps inside the era", ""},
		{"one that may be and one before", []string{"1775/1785", "1770"}, nil, "1780/1789", Thin, "shown by 1 perhaps inside the era, 1 before it", ""},
		{"before", []string{"1770", "1779-12-31"}, nil, "1780/1789", OnlyEarlier, "shown by 2 before the era", ""},
		{"after", []string{"1790-01-01"}, nil, "1780/1789", OnlyLater, "shown by 1 after the era", ""},
		{"before and after", []string{"1770", "1800"}, nil, "1780/1789", EarlierAndLater, "shown by 1 before the era, 1 after it", ""},
		{"nothing", nil, nil, "1780/1789", WithoutEvidence, "", ""},
		{"shown without a date", []string{"", ""}, nil, "1780/1789", WithoutEvidence, "2 without a date not counted", ""},
		{"lacked inside", nil, []string{"1785"}, "1780/1789", Contradicted, "lacked by 1 inside the era", "0 of 1 (0-79 %)"},
		{"lacked outside", nil, []string{"1770", "1795"}, "1780/1789", WithoutEvidence, "lacked by 1 before the era, 1 after it", ""},
		{"lacked by more, though two show it", []string{"1781", "1782"}, []string{"1783", "1784", "1785"}, "1780/1789", Contradicted, "shown by 2 inside the era; lacked by 3 inside it", "2 of 5 (12-77 %)"},
		{"lacked by as many", []string{"1781", "1782"}, []string{"1783", "1784"}, "1780/1789", Supported, "shown by 2 inside the era; lacked by 2 inside it", "2 of 4 (15-85 %)"},
		{"shown before, lacked inside", []string{"1770"}, []string{"1785"}, "1780/1789", Contradicted, "shown by 1 before the era; lacked by 1 inside it", "0 of 1 (0-79 %)"},
		{"lacked by one that may be inside", []string{"1786"}, []string{"1785~"}, "1780/1789", Thin, "shown by 1 inside the era; lacked by 1 perhaps inside it", "1 of 1 (21-100 %)"},
		{"five of six", []string{"1780", "1781", "1782", "1783", "1784"}, []string{"1785"}, "1780/1789", Supported, "shown by 5 inside the era; lacked by 1 inside it", "5 of 6 (44-97 %)"},
		{"uncertain dates are not widened", []string{"1780?", "1789?"}, nil, "1780/1789", Supported, "shown by 2 inside the era; 2 dated with a question mark", "2 of 2 (34-100 %)"},
		{"a question mark far from the era", []string{"1786", "1700?"}, nil, "1780/1789", Supported, "shown by 1 inside the era, 1 before it", "1 of 1 (21-100 %)"},
		{"before a year is of no known beginning", []string{"before 1786"}, nil, "1780/1789", Thin, "shown by 1 perhaps inside the era", ""},
		{"before the era begins", []string{"before 1780"}, nil, "1780/1789", OnlyEarlier, "shown by 1 before the era", ""},
		{"later than the era", []string{"1790 or later"}, nil, "1780/1789", OnlyLater, "shown by 1 after the era", ""},
		{"an open era", []string{"1790 or later", "1850"}, nil, "1780/..", Supported, "shown by 2 inside the era", "2 of 2 (34-100 %)"},
		{"no era", []string{"1785"}, nil, "", NoEra, "", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := journaltest.OpenClean(t, "-- journal.yaml --\ntitle: t\n"+dated("shows", c.shows...)+dated("lacks", c.lacks...))
			f, _ := Gather(j).For("frill")
			got := Judge(f, date(t, c.era), j.Settings.Customs)
			if got.Verdict != c.verdict || got.Reason() != c.reason || got.Share().Words() != c.share {
				t.Errorf("%s: %q, %q; want %s: %q, %q", got.Verdict, got.Reason(), got.Share().Words(), c.verdict, c.reason, c.share)
			}
		})
	}
}

// "ca." is five years to each side in Cataloging Cultural Objects (Visual Resources
// Association, 2006), rules for date, where "ca. 1610" is indexed as 1605 to 1615,
// and ten in the Object ID guide (ICOM). "Designed 1911 or 1912" is the former's
// own example too.
func TestPublishedCaptionsDecide(t *testing.T) {
	for _, c := range []struct {
		caption, era string
		circa        int
		want         When
		words        string
	}{
		{"ca. 1610", "1605/1615", 0, Inside, "ca. 1610, counted as 1605 to 1615"},
		{"ca. 1610", "1606/1615", 0, Overlapping, "ca. 1610, counted as 1605 to 1615"},
		{"ca. 1610", "1616", 0, Before, "ca. 1610, counted as 1605 to 1615"},
		{"ca. 1610", "1616", 10, Overlapping, "ca. 1610, counted as 1600 to 1620"},
		{"ca. 1610", "1604", 0, After, "ca. 1610, counted as 1605 to 1615"},
		{"designed 1911 or 1912", "1911/1912", 0, Inside, "designed 1911 or 1912"},
		{"designed 1911 or 1912", "1912", 0, Overlapping, "designed 1911 or 1912"},
		{"1617", "ca. 1612", 0, Inside, "1617"},
		{"1618", "ca. 1612", 0, After, "1618"},
		{"1611?", "1611", 0, Inside, "1611, uncertain"},
	} {
		j := journaltest.OpenClean(t, "-- journal.yaml --\ntitle: t\n"+dated("shows", c.caption))
		j.Settings.Customs.Circa = c.circa
		f, _ := Gather(j).For("frill")
		era := date(t, c.era).Padded(edtf.Customs{Circa: c.circa})
		if got := f.Shown[0].when(era); got != c.want || f.Shown[0].Words() != c.words {
			t.Errorf("%s against %s: %s, %q; want %s, %q", c.caption, c.era, got, f.Shown[0].Words(), c.want, c.words)
		}
	}
}

// Every way of counting has one verdict, which is what the definition of each says.
func TestVerdictsLeaveNoGap(t *testing.T) {
	few := []int{0, 1, 2, 3}
	for _, inside := range few {
		for _, overlapping := range few {
			for _, before := range few {
				for _, after := range few {
					for _, lacked := range few {
						all := inside + overlapping + before + after
						touches := inside+overlapping > 0
						against := lacked > inside
						var said []Verdict
						for v, holds := range map[Verdict]bool{
							Contradicted:    against,
							Supported:       !against && all >= 2 && inside >= 1,
							Thin:            !against && (inside == 1 && all == 1 || inside == 0 && overlapping >= 1),
							OnlyEarlier:     !against && !touches && before > 0 && after == 0,
							OnlyLater:       !against && !touches && after > 0 && before == 0,
							EarlierAndLater: !against && !touches && after > 0 && before > 0,
							WithoutEvidence: !against && all == 0,
						} {
							if holds {
								said = append(said, v)
							}
						}
						shown := Counts{Inside: inside, Overlapping: overlapping, Before: before, After: after}
						if got := verdict(shown, Counts{Inside: lacked}); len(said) != 1 || said[0] != got {
							t.Errorf("%+v, %d lack it: %s, want one of %s", shown, lacked, got, said)
						}
					}
				}
			}
		}
	}
}
