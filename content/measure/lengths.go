package measure

func trunkLengths() []Measure {
	return []Measure{
		{"shoulder length", []string{"shoulder", "shoulder seam"}, SegmentLength, paired, iso2017Memory,
			"from the neck shoulder point, where the neck meets the shoulder, to the shoulder point"},
		{"scye depth", []string{"armscye depth", "armhole depth"}, SegmentLength, single, iso2017Memory,
			"from the nape bone down the middle of the back to a tape held level through the armpits"},
		{"back neck point to waist", []string{
			"back neck to waist", "nape to waist", "cervical to waist (back)", "cervical to waist",
			"back waist length", "back length", "centre back length",
		}, SegmentLength, single, iso2017, "from the nape bone down the middle of the back to the waist, lying close"},
		{"front neck point to waist", []string{"front neck to waist", "centre front length"}, SegmentLength, single, iso2017Memory,
			"from the hollow between the collar bones down the middle of the front to the waist"},
		{"cervical to front waist", []string{"cervical to waist (front)", "nape to front waist"}, SegmentLength, paired, iso1989,
			"from the nape bone round the side of the neck and over the bust point to the waist in front"},
		{"back neck point to bust point", []string{"cervical to breast point", "cervical to bust point", "nape to bust point"}, SegmentLength, paired, iso2017Memory,
			"from the nape bone round the side of the neck to the bust point"},
		{"neck shoulder point to bust point", []string{
			"neck shoulder point to breast point", "neck shoulder to bust point", "shoulder to bust point", "shoulder to bust",
		}, SegmentLength, paired, iso2017Memory, "from the neck shoulder point, where the neck meets the shoulder, to the bust point"},
		{"neck shoulder point to waist", []string{
			"neck shoulder to waist", "neck shoulder point to front waist", "shoulder to waist", "front waist length", "front length",
		}, SegmentLength, paired, iso2017Memory, "from the neck shoulder point over the bust point to the waist in front"},
		{"neck shoulder point to back waist", []string{"neck shoulder to back waist", "shoulder to back waist"}, SegmentLength, paired, practice,
			"from the neck shoulder point straight down over the shoulder blade to the waist behind"},
		{"bust point to waist", []string{"bust to waist", "apex to waist"}, SegmentLength, paired, practice,
			"from the bust point straight down to the waist"},
		{"under arm length", []string{"armpit to waist", "side length", "side bodice length"}, SegmentLength, paired, iso1989,
			"from the armpit down the side to the waist"},
		{"trunk length", nil, SegmentLength, single, iso1989,
			"straight down from the level of the nape bone to the level of the crotch"},
		{"body rise", []string{"rise", "crotch depth", "sitting rise"}, SegmentLength, single, iso2017Memory,
			"seated on a flat chair: from the waist down the side to the chair"},
		{"waist to hip", []string{"side waist to hip", "hip depth"}, SegmentLength, paired, iso2017Memory,
			"from the waist down the side to the level of the fullest seat"},
		{"total crotch length", []string{"crotch", "crotch length", "through crotch"}, SegmentLength, single, iso2017Memory,
			"from the waist in front between the legs to the waist behind"},
		{"front crotch length", []string{"front rise"}, SegmentLength, single, iso2017Memory,
			"from the waist in front to the lowest of the crotch"},
		{"back crotch length", []string{"back rise"}, SegmentLength, single, iso2017Memory,
			"from the waist behind to the lowest of the crotch"},
		{"cervical to knee hollow", []string{"cervical to knee", "nape to knee", "back neck point to knee"}, SegmentLength, single, iso1989,
			"from the nape bone down the back, following the waist, to the hollow of the knee"},
		{"back neck point to ground", []string{
			"nape to ground", "nape to floor", "back neck to ground", "back neck to floor", "cervical to ground",
		}, SegmentLength, single, iso2017Memory, "from the nape bone down the back, following the waist, and straight on to the floor"},
	}
}

func limbLengths() []Measure {
	return []Measure{
		{"upper arm length", []string{"shoulder to elbow"}, SegmentLength, paired, iso2017Memory,
			"from the shoulder point to the point of the elbow, arm bent"},
		{"lower arm length", []string{"forearm length", "elbow to wrist"}, SegmentLength, paired, iso2017Memory,
			"from the point of the elbow to the wrist bone, arm bent"},
		{"arm length", []string{"outer arm length", "shoulder to wrist", "sleeve length", "sleeve"}, SegmentLength, paired, iso2017Memory,
			"from the shoulder point over the elbow to the wrist bone, arm bent"},
		{"inner arm length", []string{"armpit to wrist", "underarm to wrist", "underarm sleeve length", "sleeve inseam"}, SegmentLength, paired, practice,
			"from the armpit along the inside of the arm to the wrist, arm hanging"},
		{"back neck point to wrist length", []string{
			"back neck point to wrist", "seventh cervical to wrist length", "cervical to wrist", "nape to wrist", "centre back to wrist",
		}, SegmentLength, paired, iso2017, "from the nape bone over the shoulder point and the elbow to the wrist bone, arm bent"},
		{"outside leg length", []string{
			"outside leg", "outer leg length", "outseam", "side waist to ground", "side waist to floor", "waist to ground", "waist to floor",
		}, SegmentLength, paired, iso2017Memory, "from the waist down the side over the hip and straight on to the floor, without shoes"},
		{"front waist to ground", []string{"front waist to floor"}, SegmentLength, single, practice,
			"from the waist down the middle of the front to the floor, without shoes"},
		{"back waist to ground", []string{"back waist to floor"}, SegmentLength, single, practice,
			"from the waist down the middle of the back over the seat to the floor, without shoes"},
		{"waist to knee", []string{"side waist to knee"}, SegmentLength, paired, iso2017Memory,
			"from the waist down the side over the hip to the middle of the kneecap"},
		{"inside leg length", []string{"inside leg", "inner leg length", "inseam", "crotch height"}, SegmentLength, paired, iso2017Memory,
			"straight down from the crotch to the floor, without shoes"},
		{"thigh length", []string{"crotch to knee"}, SegmentLength, paired, iso1989,
			"straight down from the level of the crotch to the level of the knee"},
	}
}
