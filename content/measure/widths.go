package measure

func widths() []Measure {
	return []Measure{
		{"shoulder width", []string{"across shoulder", "shoulder to shoulder"}, Breadth, single, iso1989,
			"from shoulder point to shoulder point, tape over the back"},
		{"across back shoulder width", []string{
			"across back shoulder width through the back neck point", "shoulder to shoulder over the nape",
		}, Breadth, single, iso2017, "from shoulder point to shoulder point, tape over the nape bone"},
		{"across back width", []string{"across back", "back width", "cross back"}, Breadth, single, iso2017,
			"across the back from arm to arm, halfway down the armholes, arms hanging"},
		{"across front width", []string{"across front", "front width", "cross front", "across chest"}, Breadth, single, iso2017Memory,
			"across the front from arm to arm, halfway down the armholes, arms hanging"},
		{"bust point width", []string{
			"bust point to bust point", "breast point width", "bust span", "apex to apex",
		}, Breadth, single, iso2017Memory, "straight from one bust point to the other"},
		{"chest breadth", []string{"bust breadth"}, Breadth, single, iso7250,
			"straight across the body at the level of the bust, with callipers or between two boards"},
		{"hip breadth", nil, Breadth, single, iso7250,
			"straight across the body at its widest below the waist, with callipers or between two boards"},
		{"chest depth", nil, BodyDepth, single, iso7250,
			"straight from back to front at the level of the bust, with callipers or between two boards"},
		{"abdominal depth", []string{"abdomen depth", "belly depth"}, BodyDepth, single, iso7250,
			"straight from back to front at the fullest of the belly, with callipers or between two boards"},
	}
}
