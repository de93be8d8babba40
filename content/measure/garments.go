package measure

// garmentLengths are the measures a maker of period garments takes beside those
// of the standards: on the body over all that is worn under the garment, or
// along the garment itself.
func garmentLengths() []Measure {
	return []Measure{
		{"front length over stomacher", []string{"over stomacher", "stomacher length"}, SegmentLength, single, practice,
			"down the middle of the front from the top edge to the point, over the stomacher"},
		{"bodice point length", []string{"waist to point", "front point"}, SegmentLength, single, practice,
			"down the middle of the front from the waist to the tip of the point"},
		{"busk length", nil, SegmentLength, single, practice,
			"down the middle of the front of stays or corset from the top edge to the bottom"},
		{"strap length", []string{"shoulder strap", "shoulder strap length"}, SegmentLength, paired, practice,
			"from the top edge in front over the shoulder to the top edge behind"},
		{"neckline length", []string{"neckline", "neck edge"}, SegmentLength, single, practice,
			"along the whole edge of the neck opening"},
		{"front waist to hem", []string{"front skirt length", "skirt length"}, SegmentLength, single, practice,
			"from the waist down the middle of the front to the hem, over all that holds the skirt out, shoes on"},
		{"side waist to hem", []string{"side skirt length"}, SegmentLength, paired, practice,
			"from the waist down the side to the hem, over all that holds the skirt out, shoes on"},
		{"back waist to hem", []string{"back skirt length"}, SegmentLength, single, practice,
			"from the waist down the middle of the back to the hem, over all that holds the skirt out, shoes on"},
		{"back waist to train", []string{"train length", "train"}, SegmentLength, single, practice,
			"from the waist down the middle of the back to the end of the train, laid out"},
		{"front underbust to hem", []string{"high waist to hem"}, SegmentLength, single, practice,
			"from right below the bust down the middle of the front to the hem, for a raised waist, shoes on"},
		{"back neck point to hem", []string{"nape to hem", "back neck to hem", "full length", "garment length"}, SegmentLength, single, practice,
			"from the nape bone down the back, following the waist, to the hem, shoes on"},
		{"neck shoulder point to hem", []string{"neck shoulder to hem", "shoulder to hem"}, SegmentLength, paired, practice,
			"from the neck shoulder point down the front over the bust to the hem, shoes on"},
		{"side waist to below knee", []string{"breeches length", "waist to below knee"}, SegmentLength, paired, practice,
			"from the waist down the side over the hip to just below the kneecap, where breeches end"},
		{"hem girth", []string{"hem", "hem width", "hem sweep"}, LargeGirth, single, practice,
			"along the whole lower edge of the skirt"},
	}
}
