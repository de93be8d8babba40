package evidence

import (
	"slices"

	"hussif/content/journal"
)

// A Claim is a feature of a garment, held against the date that it portrays.
type Claim struct {
	What     journal.Word // the feature, as the build names it
	Verdict  Verdict      // that of Evidence, or Departure
	Evidence Judgement
	RestsOn  []Rest
	Departs  string // why it knowingly differs from its period, where it says so
}

// A Rest is a page that a claim rests on.
type Rest struct {
	Ref    journal.Ref
	Record journal.Record
	Says   Says // what it says of the feature; empty for a page that is no reference
	When   When // where it lies against the era; empty where there is none, and with Says
}

// Says is what a reference says of a feature.
type Says string

// What a reference may say.
const (
	Shows    Says = "shows it"
	Lacks    Says = "lacks it"
	Disputes Says = "both shows and lacks it"
	Silent   Says = "does not say"
)

// Claims holds the features of a build against its era, in the order written.
// Links that lead nowhere are left out; reading the journal has told of them.
func (b *Book) Claims(build *journal.Build) []Claim {
	var claims []Claim
	for i := range build.Features {
		written := &build.Features[i]
		f, _ := b.For(written.What.Text)
		c := Claim{
			What:     written.What,
			Departs:  written.Departs,
			Evidence: Judge(f, build.Era, b.customs),
		}
		c.Verdict = c.Evidence.Verdict
		if c.Departs != "" {
			c.Verdict = Departure
		}
		for _, ref := range written.RestsOn {
			if record, found := b.find(ref); found {
				c.RestsOn = append(c.RestsOn, b.rest(ref, record, f, c.Evidence))
			}
		}
		claims = append(claims, c)
	}
	return claims
}

// rest says what a page that a claim rests on has to say of its feature.
func (b *Book) rest(ref journal.Ref, record journal.Record, f Feature, judged Judgement) Rest {
	rest := Rest{Ref: ref, Record: record}
	r, is := record.(*journal.Reference)
	if !is {
		return rest
	}
	o := b.of[r]
	switch {
	case slices.Contains(f.Shown, o):
		rest.Says = Shows
	case slices.Contains(f.Lacked, o):
		rest.Says = Lacks
	case slices.Contains(f.Disputed, o):
		rest.Says = Disputes
	case !b.faulty(r):
		// What a page that could not be read whole does not say proves nothing.
		rest.Says = Silent
	}
	if judged.Verdict != NoEra {
		rest.When = o.when(judged.Era)
	}
	return rest
}
