package main

func plate1912(s *sheet) {
	frame(s)
	mid := s.wide() / 2
	s.ground(pt(mid, 92), 15, 1.6)
	s.walker(mid, 0, tint{0.46, 0.52, 0.50, 0.6})
	ferrule := straight(pt(mid+14.6, 50), pt(mid+19, 90))
	s.ink(ferrule, broad*1.3, sepia)
	folded := ring(curve(pt(mid+15, 54), pt(mid+16.4, 60), pt(mid+18.7, 84)), curve(pt(mid+18.7, 84), pt(mid+18.3, 68), pt(mid+17, 54)))
	s.cloth(folded, madder)
	s.ink(curve(pt(mid+14.6, 50), pt(mid+13.6, 47), pt(mid+16, 46)), broad, walnut.at(1))
}

// walker is a woman of 1912, drawn at an x; wind pushes her skirt to one side.
func (s *sheet) walker(mid, wind float64, cloth tint) {
	for _, x := range []float64{-2.6, 2.2} {
		boot := ring(curve(pt(mid+x-1.1, 86), pt(mid+x-1.3, 89), pt(mid+x-2.8, 90.6), pt(mid+x-2.7, 91.4)), straight(pt(mid+x-2.7, 91.4), pt(mid+x+1.5, 91.4), pt(mid+x+1.2, 86)))
		s.cloth(boot, tint{0.25, 0.22, 0.22, 0.8})
	}
	left := curve(pt(mid-4.8, 43.6), pt(mid-7.6, 52), pt(mid-8.4, 66), pt(mid-8.2-wind*0.2, 87))
	right := curve(pt(mid+4.8, 43.6), pt(mid+7.6, 52), pt(mid+8.4+wind*0.35, 68), pt(mid+8.2+wind, 86.4))
	skirt := ring(left, levelLine(left, right, 1, 1.2), right.back(), straight(pt(mid+4.8, 43.6), pt(mid-4.8, 43.6)))
	s.cloth(skirt, cloth)
	s.hatch(ring(amid(left, right, 0.8), right.back()), 66, 0.9, sepia.at(0.48))
	s.fold(amid(left, right, 0.3).part(0, 0.98), 0.8, cloth)
	for i := range 9 {
		s.dot(amid(left, right, 0.25).at(0.04+0.05*float64(i)), 0.34, sepia)
	}
	s.fold(amid(left, right, 0.58).part(0.35, 0.97), 0.9, cloth)
	if wind > 0 {
		for _, share := range []float64{0.5, 0.66, 0.9} {
			s.fold(curve(amid(left, right, share*0.6).at(0.35), amid(left, right, share).at(0.65), amid(left, right, share).at(0.98)), 1.1, cloth)
		}
	}
	s.stitch(levelLine(left, right, 0.96, 1.1), 0.5, 0.4, thin, sepia.at(0.7))

	down := ring(curve(pt(mid+6.6, 26.4), pt(mid+9.8, 31), pt(mid+11.8, 39), pt(mid+13.8, 48)), straight(pt(mid+13.8, 48), pt(mid+11.8, 48.8)), curve(pt(mid+11.8, 48.8), pt(mid+9.2, 41), pt(mid+6.6, 34)))
	s.fist(pt(mid+12.8, 47.6), -14)
	if wind == 0 {
		hip := ring(curve(pt(mid-6.6, 26.4), pt(mid-12, 32), pt(mid-13.6, 39), pt(mid-8, 46)), straight(pt(mid-8, 46), pt(mid-6.6, 44.4)), curve(pt(mid-6.6, 44.4), pt(mid-9.8, 39), pt(mid-8.6, 35.6), pt(mid-6.2, 33)))
		s.fist(pt(mid-7.5, 44.6), -50)
		s.blank(hip)
		s.wash(hip, linen.at(0.18))
		s.ink(ring(hip, hip[:1]), medium, sepia)
	} else {
		up := ring(curve(pt(mid-6.6, 26.6), pt(mid-12.4, 25), pt(mid-14.4, 21), pt(mid-9.4, 12.6)), straight(pt(mid-9.4, 12.6), pt(mid-7.4, 13.6)), curve(pt(mid-7.4, 13.6), pt(mid-10.4, 20.4), pt(mid-9.6, 22.2), pt(mid-5.8, 31)))
		s.fist(pt(mid-8.4, 13.6), 196)
		s.blank(up)
		s.wash(up, linen.at(0.18))
		s.ink(ring(up, up[:1]), medium, sepia)
	}
	s.blank(down)
	s.wash(down, linen.at(0.18))
	s.hatch(down, 60, 0.9, sepia.at(0.3))
	s.ink(ring(down, down[:1]), medium, sepia)
	side := curve(pt(mid+2, 23.4), pt(mid+6.6, 26), pt(mid+7, 34), pt(mid+4.6, 43.6))
	blouse := ring(side, straight(pt(mid+4.6, 43.6), pt(mid-4.6, 43.6)), side.mirrored(mid).back())
	s.blank(blouse)
	s.wash(blouse, linen.at(0.18))
	s.ink(ring(blouse, blouse[:1]), medium, sepia)
	for _, x := range []float64{-4, -2.7, 2.7, 4} {
		s.ink(curve(pt(mid+x*0.8, 26), pt(mid+x*1.1, 34), pt(mid+x*0.8, 43)), thin, sepia.at(0.7))
	}
	for i := range 6 {
		s.dot(pt(mid, 27+2.6*float64(i)), 0.26, sepia)
	}
	belt := straight(pt(mid-4.9, 42), pt(mid+4.9, 42), pt(mid+4.9, 44.4), pt(mid-4.9, 44.4), pt(mid-4.9, 42))
	s.cloth(belt, dark(cloth).at(0.8))
	collar := straight(pt(mid-1.9, 20), pt(mid+1.9, 20), pt(mid+2.1, 24), pt(mid-2.1, 24), pt(mid-1.9, 20))
	s.blank(collar)
	s.ink(collar, medium, sepia)
	s.cloth(oval(pt(mid, 14.6), 4.6, 4.4), walnut)
	s.head(pt(mid, 16), 0.9)
	brim := oval(pt(mid-0.4, 11.2), 12, 2.6).turned(pt(mid, 11), 6)
	s.cloth(brim, tint{0.30, 0.30, 0.36, 0.6})
	crown := ring(curve(pt(mid-6, 10.4), pt(mid-5.6, 6.4), pt(mid, 5), pt(mid+5.4, 7), pt(mid+6, 11.4)), curve(pt(mid+6, 11.4), pt(mid, 12), pt(mid-6, 10.4)))
	s.cloth(crown, tint{0.30, 0.30, 0.36, 0.6})
	s.hatch(crown, 40, 0.6, sepia.at(0.4))
	for i := range 5 {
		x := mid + 3.4 + float64(i)*0.9
		s.dot(pt(x, 9.8-0.5*float64(i%2)), 1.05, madder.at(0.75))
		s.ink(oval(pt(x, 9.8-0.5*float64(i%2)), 1.05, 1), thin, sepia)
	}
}

func promenade(s *sheet) {
	wide := s.wide()
	s.stain(s.cover(straight(pt(0, 0), pt(wide, 0), pt(wide, 50), pt(0, 50))), water.at(0.25), true)
	s.stain(s.cover(straight(pt(0, 50), pt(wide, 50), pt(wide, 82), pt(0, 82))), water, true)
	for i := range 34 {
		y := 51.5 + 30*noise(float64(i)*3.7, 1)
		x := wide * noise(float64(i)*5.3, 7)
		s.ink(curve(pt(x, y), pt(x+3, y-0.5), pt(x+7, y), pt(x+11, y-0.4)), thin, sepia.at(0.45))
	}
	s.ink(straight(pt(0, 50), pt(wide, 50)), thin, sepia)
	for _, g := range []point{{118, 30}, {128, 26}, {30, 24}} {
		s.ink(curve(pt(g.x-2.4, g.y-0.6), pt(g.x-1, g.y-1), pt(g.x, g.y), pt(g.x+1, g.y-1), pt(g.x+2.4, g.y-0.4)), medium, sepia)
	}
	roof := ring(curve(pt(118, 45), pt(124, 39), pt(129, 35.5), pt(134, 39), pt(140, 45)))
	s.cloth(ring(roof, roof[:1]), green)
	for _, x := range []float64{120, 126, 132, 138} {
		s.ink(straight(pt(x, 45), pt(x, 55)), medium, sepia)
	}
	s.ink(straight(pt(116, 55), pt(142, 55)), broad, sepia)
	for x := 118.0; x < 142; x += 4 {
		s.ink(straight(pt(x, 55), pt(x-1, 66)), medium, sepia.at(0.8))
	}
	deck := straight(pt(0, 80), pt(wide, 80), pt(wide, 100), pt(0, 100))
	s.blank(deck)
	s.wash(deck, tint{0.78, 0.68, 0.54, 0.5})
	for i := range 22 {
		x := -40 + float64(i)*11
		s.ink(straight(pt(wide/2+(x-wide/2)*0.72, 80), pt(x, 100)), thin, sepia.at(0.6))
	}
	for x := 4.0; x < wide; x += 5.2 {
		s.ink(straight(pt(x, 61), pt(x, 80)), medium, sepia)
		s.dot(pt(x, 70), 0.5, sepia)
	}
	for _, y := range []float64{60.4, 62, 78} {
		s.ink(straight(pt(0, y), pt(wide, y)), broad, sepia)
	}
	s.ground(pt(66, 93), 17, 1.8)
	s.walker(64, 9, blue)
	scarf := ring(curve(pt(66, 22.6), pt(72, 20), pt(79, 23), pt(86, 19)), curve(pt(86.4, 21), pt(79, 25.4), pt(72, 22.6), pt(66, 24.6)))
	s.cloth(scarf, madder)
}
