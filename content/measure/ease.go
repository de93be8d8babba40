package measure

import (
	"slices"

	"hussif/content/quantity"
)

// A Suggestion is the wearing ease a source recommends for one measure of one
// kind of garment.
type Suggestion struct {
	Ease    quantity.Range
	AtLeast bool   // the source names no most, and Ease.Most only repeats the least
	Garment string // in the source's word; empty where it says nothing of the kind
	Measure string // canonical name
	Source  string
}

// SuggestEase returns the wearing ease to offer for a canonical measure of a
// kind of garment where a build names none: one suggestion for each source, for
// sources differ and the maker is to see that. A dress is fitted at the bust as
// a bodice is; the two waists count as one. Of a kind of garment or a measure
// that no source speaks of, nothing is known and nil returned.
//
// A period bodice worn over stays has no ease at the waist as a rule (common
// practice). These figures are for clothes worn over none, and not offering
// them for such a bodice is the caller's part.
func SuggestEase(garment, measure string) []Suggestion {
	spoken := measure
	if measure == "natural waist girth" {
		spoken = "waist girth"
	}
	kinds := garmentKinds(garment)
	var found []Suggestion
	for _, s := range suggestions() {
		if s.Measure == spoken && (s.Garment == "" || slices.Contains(kinds, s.Garment)) {
			s.Measure = measure
			found = append(found, s)
		}
	}
	return found
}

// garmentKinds returns what the sources call a garment, going by the last word
// of its name: a walking skirt is a skirt.
func garmentKinds(garment string) []string {
	f := fold(nil, garment)
	switch string(f.key[f.last:]) {
	case "bodice":
		return []string{"bodice"}
	case "dress", "gown", "frock":
		return []string{"dress", "bodice"}
	case "skirt":
		return []string{"skirt"}
	case "trouser", "pant":
		return []string{"trousers"}
	}
	return nil
}

// suggestions are the figures published, those of one source together.
func suggestions() []Suggestion {
	const (
		robinson = "R. Robinson, Costume construction text, ch. 16, Central Washington University"
		guide    = "New Mexico State University, Guide C-228"
		quarter  = quantity.Inch / 4
	)
	ease := func(least, most quantity.Length) quantity.Range {
		return quantity.Range{Least: least, Most: most}
	}
	return []Suggestion{
		{Ease: ease(6*quarter, 8*quarter), Garment: "bodice", Measure: "bust girth", Source: robinson},
		{Ease: ease(3*quarter, 4*quarter), Garment: "dress", Measure: "waist girth", Source: robinson},
		{Ease: ease(2*quarter, 3*quarter), Garment: "skirt", Measure: "waist girth", Source: robinson},
		{Ease: ease(2*quarter, 3*quarter), Garment: "trousers", Measure: "waist girth", Source: robinson},
		{Ease: ease(8*quarter, 11*quarter), Measure: "hip girth", Source: robinson},
		{Ease: ease(4*quarter, 4*quarter), AtLeast: true, Measure: "thigh girth", Source: robinson},
		{Ease: ease(12*quarter, 16*quarter), Garment: "bodice", Measure: "bust girth", Source: guide},
	}
}
