package main

func petticoat(s *sheet) {
	mid := s.wide() / 2
	s.ground(pt(mid, 93), 36, 2.6)
	left := curve(pt(mid-13, 14), pt(mid-21, 28), pt(mid-28, 55), pt(mid-34, 90))
	right := curve(pt(mid+13, 14), pt(mid+21, 28), pt(mid+28, 55), pt(mid+34, 90))
	hem := curve(left[len(left)-1], pt(mid-15, 94), pt(mid+14, 94.2), right[len(right)-1])
	outline := ring(left, hem, right.back(), straight(pt(mid+13, 14), pt(mid-13, 14)))
	s.cloth(outline, blue)
	s.hatch(ring(amid(left, right, 0.84), right.back()), 64, 1.1, sepia.at(0.42))
	const folds = 15
	for i := 1; i < folds; i++ {
		share := float64(i) / folds
		l := amid(left, right, share)
		depth := 1.5
		if share < 0.5 {
			depth = -1.5
		}
		long := 0.55 + 0.42*noise(float64(i)*1.7, 3)
		s.fold(l.part(0, long), depth, blue)
		s.ink(amid(left, right, share+0.018).part(0, 0.3), thin*0.8, sepia.at(0.7))
	}
	for _, up := range []float64{0.76, 0.84, 0.93} {
		tuck := levelLine(left, right, up, 3.2)
		s.stain(s.cover(ring(tuck, tuck.moved(0, 0.9).back())), dark(blue), true)
		s.ink(tuck, thin, sepia)
		s.stitch(tuck.moved(0, -0.8), 0.7, 0.6, thin, sepia.at(0.7))
	}
	slit := curve(pt(mid+12.6, 14.4), pt(mid+15, 22), pt(mid+16.6, 31))
	gap := ring(slit, curve(pt(mid+16.6, 31), pt(mid+17, 23), pt(mid+14.4, 14.4)))
	s.blank(gap)
	s.wash(gap, dark(blue).at(0.75))
	s.ink(ring(gap, gap[:1]), medium, sepia)
	band := straight(pt(mid-13.4, 10.6), pt(mid+13.2, 10.6), pt(mid+13.2, 14.4), pt(mid-13.4, 14.4), pt(mid-13.4, 10.6))
	s.cloth(band, linen)
	s.stitch(straight(pt(mid-13, 13.9), pt(mid+13, 13.9)), 0.4, 0.4, thin, sepia)
	s.stitch(straight(pt(mid-13, 11.3), pt(mid+13, 11.3)), 0.6, 0.5, thin, sepia.at(0.8))
	for _, tape := range []line{
		curve(pt(mid+13, 12), pt(mid+20, 12), pt(mid+22, 18), pt(mid+20.4, 27)),
		curve(pt(mid+13, 13), pt(mid+18, 15), pt(mid+18.4, 21), pt(mid+23.6, 30)),
		curve(pt(mid-13.4, 12), pt(mid-19, 12), pt(mid-23, 17), pt(mid-22, 28)),
	} {
		both := ring(tape.beside(0.45), tape.beside(-0.45).back())
		s.blank(both)
		s.ink(tape.beside(0.45), thin, sepia)
		s.ink(tape.beside(-0.45), thin, sepia)
	}
}

func pleats(s *sheet) {
	wide := s.wide()
	const n = 11
	step := wide / n
	s.stain(s.cover(straight(pt(0, 30), pt(wide, 30), pt(wide, 100), pt(0, 100))), blue, true)
	for i := range n + 1 {
		x := float64(i) * step
		lean := 1.6 * noise(float64(i), 2)
		edge := curve(pt(x, 31), pt(x+0.5, 55), pt(x+lean, 80), pt(x+lean*1.6, 101))
		s.stain(s.cover(ring(edge, edge.moved(-4.6, 0).back())), dark(blue), true)
		s.stain(s.cover(ring(edge, edge.moved(-2.0, 0).back())), dark(blue), true)
		s.ink(edge, broad, sepia)
		s.hatch(ring(edge, edge.moved(-3.2, 0).back()), 70, 1.0, sepia.at(0.5))
		s.ink(edge.moved(step*0.45, 0).part(0.02, 0.45), thin*0.8, sepia.at(0.4))
	}
	for _, y := range []float64{36, 39} {
		s.stitch(curve(pt(0, y), pt(wide*0.5, y+0.5), pt(wide, y)), 2.2, 1.2, medium, linen.at(0.9))
	}
	band := straight(pt(-2, 9), pt(wide+2, 9), pt(wide+2, 32), pt(-2, 32), pt(-2, 9))
	s.stain(s.cover(band.moved(0, 1.2)), shadow, true)
	s.cloth(band, linen)
	for x := 1.0; x < wide; x += 1.15 {
		s.ink(straight(pt(x, 30.7), pt(x+0.5, 33.4)), thin, sepia)
	}
	s.stitch(straight(pt(0, 12), pt(wide, 12)), 1.4, 0.9, thin, sepia.at(0.8))
	for y := 14.0; y < 30; y += 1.3 {
		s.ink(straight(pt(0, y), pt(wide, y+0.2)), thin*0.6, walnut.at(0.25))
	}
	for i := range n - 1 {
		x := (float64(i) + 0.75) * step
		pin := straight(pt(x+4, 19.5), pt(x-1, 43))
		s.ink(pin.moved(0.7, 0.6), medium, shadow)
		s.ink(pin, broad, sepia.at(0.8))
		s.dot(pt(x+4, 19.3), 1.0, red)
	}
}

func walkingSkirt(s *sheet, cloth tint, pockets bool) {
	mid := s.wide() / 2
	s.ground(pt(mid, 94.5), 20, 1.8)
	left := curve(pt(mid-9.2, 8), pt(mid-9.3, 12), pt(mid-12.6, 22), pt(mid-14.9, 34), pt(mid-15.6, 52), pt(mid-15.8, 72), pt(mid-16.4, 92))
	right := left.mirrored(mid)
	hem := curve(left[len(left)-1], pt(mid-6, 94.2), pt(mid+7, 94), right[len(right)-1])
	back := curve(pt(mid-9.2, 8), pt(mid, 6.6), pt(mid+9.2, 8))
	top := curve(pt(mid+9.2, 8), pt(mid, 9.4), pt(mid-9.2, 8))
	inside := ring(back, top)
	s.cloth(inside, dark(cloth).at(0.8))
	outline := ring(left, hem, right.back(), top)
	s.cloth(outline, cloth)
	s.hatch(ring(amid(left, right, 0.86), right.back()), 66, 1, sepia.at(0.48))
	s.hatch(ring(left, amid(left, right, 0.07).back()), 114, 1.2, sepia.at(0.35))
	seam := amid(left, right, 0.74)
	s.ink(seam, medium, sepia)
	s.stitch(seam.beside(0.6), 0.6, 0.4, thin*0.9, sepia.at(0.8))
	placket := amid(left, right, 0.27)
	s.fold(placket, 1.2, cloth)
	s.stitch(placket.beside(-0.8), 0.6, 0.4, thin, sepia)
	for i := range 8 {
		p := placket.beside(-1.9).at(0.04 + 0.045*float64(i))
		s.dot(p, 0.62, dark(cloth).at(0.95))
		s.ink(oval(p, 0.62, 0.62), thin, sepia)
	}
	s.stitch(levelLine(left, right, 0.045, 1.4), 0.6, 0.4, thin, sepia.at(0.8))
	s.stitch(levelLine(left, right, 0.955, 1.5), 0.7, 0.5, thin, sepia.at(0.8))
	s.fold(amid(left, right, 0.42).part(0.5, 0.97), -1.4, cloth)
	s.fold(amid(left, right, 0.58).part(0.42, 0.93), 1.4, cloth)
	s.fold(amid(left, right, 0.88).part(0.55, 0.98), 1.2, cloth)
	s.fold(amid(left, right, 0.14).part(0.6, 0.97), -1.1, cloth)
	if !pockets {
		return
	}
	for _, x := range []float64{0.42, 0.84} {
		a, b := amid(left, right, x-0.1), amid(left, right, x+0.07)
		patch := ring(straight(a.at(0.23), b.at(0.23)), straight(b.at(0.34), between(a.at(0.355), b.at(0.355), 0.5), a.at(0.34)), straight(a.at(0.34), a.at(0.23)))
		s.cloth(patch, cloth)
		s.stitch(patch.beside(0.7), 0.5, 0.35, thin, sepia)
	}
}

// strip is the panel let in, to scale: seam line, cutting line, grain.
func strip(s *sheet) {
	mid := s.wide() / 2
	// Finished, 1/4 in at the waist and 3/4 in from the hip down, drawn four
	// times as wide as it is long so that it can be seen.
	const tall = 84.0 / 38
	const broadly = tall * 4
	const top, hip = 8.0, 8 + 8*tall
	const foot = top + 38*tall
	right := straight(pt(mid+broadly/8, top), pt(mid+broadly*3/8, hip), pt(mid+broadly*3/8, foot))
	seamline := ring(right, right.mirrored(mid).back(), right[:1])
	cut := straight(pt(mid+broadly/8+broadly/2, top-1.1), pt(mid+broadly*7/8, hip), pt(mid+broadly*7/8, foot+1.1))
	cutline := ring(cut, cut.mirrored(mid).back(), cut[:1])
	s.stain(s.cover(cutline), blue.at(0.42), false)
	s.hatch(seamline, 58, 1.5, sepia.at(0.35))
	s.ink(cutline, medium, sepia)
	s.stitch(seamline, 1.4, 0.9, medium, red)
	grain := straight(pt(mid, 34), pt(mid, 70))
	s.ink(grain, medium, sepia)
	for _, end := range []struct{ y, dy float64 }{{34, 2.2}, {70, -2.2}} {
		s.ink(straight(pt(mid-1.1, end.y+end.dy), pt(mid, end.y), pt(mid+1.1, end.y+end.dy)), medium, sepia)
	}
	for _, y := range []float64{top, hip} {
		s.stitch(straight(pt(mid-10, y), pt(mid+10, y)), 0.5, 0.5, thin, sepia)
	}
	s.label(pt(mid+15.6, top), "waist 1/4", 2)
	s.label(pt(mid+14.6, hip), "hip 3/4", 2)
	s.label(pt(mid+13, 84), "cut 2", 2)
}
