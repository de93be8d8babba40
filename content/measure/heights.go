package measure

func heights() []Measure {
	return []Measure{
		{"stature", []string{"height", "body height", "total height"}, Height, single, iso2017Memory,
			"straight up from the floor to the top of the head, without shoes"},
		{"cervical height", []string{"nape height", "seventh cervical height"}, Height, single, iso1989,
			"straight up from the floor to the nape bone, without shoes"},
		{"sitting cervical height", []string{"cervical height (sitting)"}, Height, single, iso1989,
			"seated on a flat chair: straight up from the chair to the nape bone"},
		{"shoulder height", nil, Height, paired, iso2017Memory,
			"straight up from the floor to the shoulder point"},
		{"bust height", []string{"bust point height", "breast point height"}, Height, paired, iso2017Memory,
			"straight up from the floor to the bust point"},
		{"underbust height", nil, Height, single, iso2017Memory,
			"straight up from the floor to the level right below the bust"},
		{"waist height", nil, Height, single, iso2017Memory,
			"straight up from the floor to the waist, beside the hip and not over it"},
		{"top hip height", []string{"high hip height"}, Height, single, iso2017Memory,
			"straight up from the floor to midway between waist and hip"},
		{"hip height", []string{"seat height"}, Height, single, iso2017Memory,
			"straight up from the floor to the fullest of the seat"},
		{"knee height", []string{"knee to ground", "knee to floor"}, Height, paired, iso2017Memory,
			"straight up from the floor to the middle of the kneecap"},
		{"ankle height", nil, Height, paired, iso2017Memory,
			"straight up from the floor to the outer ankle bone"},
	}
}
