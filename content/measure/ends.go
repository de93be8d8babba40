package measure

func headHandFoot() []Measure {
	return []Measure{
		{"head girth", []string{"head", "head size"}, Head, single, iso2017Memory,
			"round the head over the brow and the fullest behind, as a hat sits"},
		{"hood length", []string{"neck to neck over the head"}, Head, single, practice,
			"from the neck shoulder point over the top of the head to the other one, for hoods and caps"},
		{"hand girth", []string{"hand", "knuckle girth"}, Hand, paired, iso2017Memory,
			"round the hand over the knuckles, without the thumb, fingers together"},
		{"hand girth over the thumb", []string{"hand with thumb", "hand over thumb"}, Hand, paired, practice,
			"round the hand at its widest with the thumb laid in the palm, as it goes through a tight sleeve"},
		{"hand length", nil, Hand, paired, iso2017Memory,
			"from the crease of the wrist to the tip of the middle finger"},
		{"hand breadth", []string{"hand width", "palm width"}, Hand, paired, iso7250,
			"straight across the palm over the knuckles, without the thumb"},
		{"foot length", []string{"foot"}, Foot, paired, iso2017Memory,
			"standing: straight from the heel to the longest toe"},
		{"foot breadth", []string{"foot width"}, Foot, paired, iso7250,
			"standing: straight across the widest of the foot"},
		{"ball girth", []string{"foot girth", "joint girth"}, Foot, paired, practice,
			"round the foot over the ball, where it is widest"},
		{"instep girth", []string{"instep"}, Foot, paired, practice,
			"round the foot over the top of the arch"},
		{"heel girth", []string{"heel", "heel and instep girth"}, Foot, paired, practice,
			"round the heel and over the bend of the foot, as it goes through a narrow leg or stocking"},
	}
}
