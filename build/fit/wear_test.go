package fit

import (
	"math/rand/v2"
	"testing"

	"hussif/content/journal/journaltest"
	"hussif/content/quantity"
)

// What is worn as advised fits at every measure that is advised for.
func TestOneSettingServesAll(t *testing.T) {
	random := rand.New(rand.NewPCG(13, 21))
	some := func(most int) quantity.Length { return quantity.Length(random.IntN(most)) * quantity.Inch / 8 }
	served := 0
	for range 2000 {
		rows := make([]Row, 2+random.IntN(2))
		adjust := Adjust{How: "lacing", Lap: random.IntN(2) == 0, MeasuredAt: some(16), Size: quantity.Range{Most: 2*quantity.Inch + some(8)}}
		for i := range rows {
			ease := quantity.Range{Least: some(8)}
			ease.Most = ease.Least + some(12)
			rows[i] = Row{Garment: GarmentValue{Length: 35*quantity.Inch + some(24)}, Body: BodyValue{Length: 36 * quantity.Inch}, Wanted: &Wanted{Named: true, Ease: ease}}
			rows[i].Adjusted = &Adjusted{Settings: []Setting{{Adjust: adjust}}}
			rows[i].Adjusted.Had = rows[i].Garment.Length - adjust.MeasuredAt - rows[i].Body.Length
			if adjust.Lap {
				rows[i].Adjusted.Had = rows[i].Garment.Length + adjust.MeasuredAt - rows[i].Body.Length
			}
			if s := rows[i].sizes(rows[i].Adjusted.Settings[0]); s.Least <= s.Most {
				rows[i].Verdict = Fits
			}
		}
		all := wear(rows)
		if len(all) != 1 || len(all[0].Points) < 2 {
			continue
		}
		served++
		by := all[0].Setting.Size - adjust.MeasuredAt
		if adjust.Lap {
			by = -by
		}
		for _, r := range rows {
			if r.Verdict != Fits {
				continue
			}
			had := r.Garment.Length + by - r.Body.Length
			if had < r.Wanted.Ease.Least || had > r.Wanted.Ease.Most {
				t.Fatalf("%d of ease, wanted %v", had, r.Wanted.Ease)
			}
			if r.Adjusted.Settings[0].Size != all[0].Setting.Size || r.Adjusted.Had != had {
				t.Fatalf("the row is worn at %d with %d, all at %d with %d", r.Adjusted.Settings[0].Size, r.Adjusted.Had, all[0].Setting.Size, had)
			}
		}
	}
	if served < 200 {
		t.Errorf("only %d were served by one setting", served)
	}
}

// A gap is named once for a row's own words and for all the rows it serves.
func TestRowsNameTheCommonGap(t *testing.T) {
	j := journaltest.Open(t, `
-- people/wren.md --
---
measured: [{date: 2026-01-10, bust: 36 in, waist: 28 in}]
---
-- builds/stays/build.md --
---
for: wren
fit: {bust: 0 to 1 in, waist: 0 to 2 in}
adjusts: [{how: lacing, gap: 0 to 3 in, measured at: 1 in, changes: [bust, waist]}]
---
-- builds/stays/2026-02-01.md --
---
measured: {bust: 35 in, waist: 26 in}
---
`)
	// The bust wants 2 to 3 in, the waist 3 in (to 5 in).
	for _, r := range Of(j, build(t, j, "stays"), day("2026-03-01")).Rows {
		if got := r.Words(inches); got != "fits: lace to a 3 in gap" {
			t.Errorf("%s %s", r.Point, got)
		}
	}
}
