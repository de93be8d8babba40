package measure

func trunkGirths() []Measure {
	return []Measure{
		{"neck girth", []string{"neck", "mid-neck girth"}, SmallGirth, single, iso2017,
			"round the neck just below the Adam's apple, square to the neck"},
		{"neck base girth", []string{"neck base", "base of neck"}, SmallGirth, single, iso2017,
			"round the foot of the neck, over the nape bone and the hollow between the collar bones; stand the tape on its edge"},
		{"upper chest girth", []string{"high bust", "upper chest", "upper bust girth", "above bust girth"}, LargeGirth, single, iso2017Memory,
			"round the body high under the arms, above the bust, level"},
		{"chest girth", []string{"chest", "breast girth"}, LargeGirth, single, iso2017Memory,
			"round the body at the fullest of the chest, level, under the arms and over the shoulder blades"},
		{"bust girth", []string{"bust", "full bust"}, LargeGirth, single, iso2017,
			"round the body over the bust points, level all the way"},
		{"underbust girth", []string{"underbust", "below bust girth", "rib cage girth", "rib cage"}, LargeGirth, single, iso2017,
			"round the ribs right below the bust, level"},
		{"waist girth", []string{"standard waist"}, LargeGirth, single, iso2017,
			"round the body midway between the lowest rib and the top of the hip bone, level"},
		{"natural waist girth", []string{"natural waist", "waist", "tied waist"}, LargeGirth, single, practice,
			"round the body where a tied cord settles, which need not be level"},
		{"abdomen girth", []string{"abdomen", "abdominal girth", "belly girth", "belly", "stomach"}, LargeGirth, single, practice,
			"round the body at the fullest of the belly, level"},
		{"top hip girth", []string{"top hip", "high hip girth", "high hip", "upper hip girth", "upper hip"}, LargeGirth, single, iso2017,
			"round the body midway between waist and hip, level"},
		{"hip girth", []string{"hip", "full hip", "low hip", "seat", "seat girth", "buttock girth"}, LargeGirth, single, iso2017,
			"round the body at the fullest of the seat, level, feet together"},
		{"trunk circumference", []string{"vertical trunk girth", "torso girth"}, LargeGirth, single, iso1989,
			"from the middle of one shoulder down the front, between the legs and up the back to where it began"},
	}
}

func limbGirths() []Measure {
	return []Measure{
		{"armscye girth", []string{"armscye", "armhole", "armhole girth", "scye", "scye girth"}, SmallGirth, paired, iso2017Memory,
			"round the arm where it joins the body, over the shoulder point and through the armpit, arm hanging"},
		{"upper arm girth", []string{"upper arm", "bicep", "bicep girth"}, SmallGirth, paired, iso2017,
			"round the upper arm midway between shoulder and elbow, square to the arm, arm hanging"},
		{"elbow girth", []string{"elbow"}, SmallGirth, paired, iso2017Memory,
			"round the elbow over its point, arm bent as for work"},
		{"forearm girth", []string{"forearm", "lower arm girth"}, SmallGirth, paired, iso2017Memory,
			"round the fullest of the forearm, square to the arm"},
		{"wrist girth", []string{"wrist"}, SmallGirth, paired, iso2017,
			"round the wrist over the bone on the side of the little finger"},
		{"thigh girth", []string{"thigh", "upper thigh", "upper leg girth"}, LargeGirth, paired, iso2017,
			"round the fullest of the thigh, just below the fold of the seat, level"},
		{"mid-thigh girth", []string{"mid-thigh"}, LargeGirth, paired, iso2017,
			"round the thigh midway between crotch and kneecap, level"},
		{"knee girth", []string{"knee"}, SmallGirth, paired, iso2017Memory,
			"round the knee over the middle of the kneecap, leg straight"},
		{"lower knee girth", []string{"lower knee", "below knee girth", "below knee", "garter", "garter girth"}, SmallGirth, paired, iso1989,
			"round the leg just below the kneecap, where a garter or the band of breeches sits"},
		{"calf girth", []string{"calf", "calves"}, SmallGirth, paired, iso2017Memory,
			"round the fullest of the calf, weight on both feet"},
		{"minimum leg girth", []string{"smallest leg girth"}, SmallGirth, paired, iso1989,
			"round the thinnest of the leg, above the ankle bones"},
		{"ankle girth", []string{"ankle"}, SmallGirth, paired, iso2017Memory,
			"round the ankle over both ankle bones"},
	}
}
