package main

import (
	"testing"
	"time"

	"hussif/build/across"
	"hussif/build/fit"
	"hussif/build/room"
	"hussif/build/wardrobe"
	"hussif/build/wayin"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/testdata/generate"
)

// BenchmarkDerived works out everything that is derived from the 500 builds of a large
// journal: how each fits now and fitted when it was finished, its ledger, its room
// and plan, what each pattern teaches, and every wearer's wardrobe. All of it together
// may take no longer than a maker notices.
func BenchmarkDerived(b *testing.B) {
	j, _, err := journal.Open(generate.Journal(10000, 1))
	if err != nil {
		b.Fatal(err)
	}
	if len(j.Builds()) != 500 {
		b.Fatalf("%d builds", len(j.Builds()))
	}
	const most = 200 * time.Millisecond
	today := edtf.DayOf(2026, 11, 25)
	short := 0
	for b.Loop() {
		short = derive(j, today)
	}
	if short == 0 {
		b.Fatal("nothing is short, so nothing was planned")
	}
	if took := b.Elapsed() / time.Duration(b.N); took > most {
		b.Errorf("%s, to be done in %s", took, most)
	}
}

// derive returns how many builds have something to plan.
func derive(j *journal.Journal, today edtf.Day) (plans int) {
	rates := wayin.RatesOf(j)
	type cutFor struct {
		pattern *journal.Pattern
		wearer  *journal.Person
	}
	taught := make(map[cutFor]bool)
	for _, b := range j.Builds() {
		now := fit.Of(j, b, today)
		if on, ok := fit.FirstFinish(b); ok {
			fit.Of(j, b, on)
		}
		fit.Ledger(j, b)
		if p := room.For(j, b, now, rates); len(p.Options) > 0 {
			plans++
		}
		for _, ref := range b.Pattern {
			key := cutFor{j.Pattern(ref), j.Person(b.For)}
			if key.pattern != nil && !taught[key] {
				taught[key] = true
				across.Pattern(j, key.pattern, key.wearer, today)
			}
		}
	}
	for _, p := range j.People() {
		for _, g := range wardrobe.Of(j, p, today).Garments {
			_ = g.Words(j.Settings.Format)
		}
	}
	return plans
}
