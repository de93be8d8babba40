package main

// The right half of a jacket, seen from behind, drawn with its middle at x 40.
// The left half is its mirror.
const middle = 40.0

// sleeve hangs from the shoulder, bent at the elbow.
func sleeve() (outer, inner line) {
	outer = curve(pt(57.5, 17), pt(62.5, 21), pt(66.5, 34), pt(70.5, 48), pt(71.3, 62), pt(70.6, 73))
	inner = curve(pt(56.8, 37), pt(60.2, 46), pt(63.2, 53), pt(64.6, 63), pt(64.4, 73))
	return outer, inner
}

func drawSleeve(s *sheet, cloth tint, mirror bool) {
	outer, inner := sleeve()
	if mirror {
		outer, inner = outer.mirrored(middle), inner.mirrored(middle)
	}
	cap := curve(pt(56.8, 37), pt(52.6, 30), pt(53, 22), pt(57.5, 17))
	if mirror {
		cap = cap.mirrored(middle)
	}
	s.cloth(ring(outer, inner.back(), cap), cloth)
	s.hatch(ring(amid(outer, inner, 0.72), inner.back()), 62, 0.9, sepia.at(0.55))
	crease := amid(outer, inner, 0.45)
	s.fold(crease.part(0.44, 0.62), 0.9, cloth)
	s.ink(amid(outer, inner, 0.8).part(0.5, 0.66), thin, sepia)
	s.ink(amid(outer, inner, 0.62).part(0.04, 0.22), thin, sepia)
	s.stitch(amid(outer, inner, 0.9).part(0.02, 0.98), 0.5, 0.35, thin*0.9, sepia.at(0.8))
}

// skirts are the pleated tails below the waist.
func drawSkirts(s *sheet, cloth tint, left, right line, pleats int, split bool) {
	s.cloth(ring(left, right.back()), cloth)
	for i := 1; i < pleats; i++ {
		share := float64(i) / float64(pleats)
		fold := amid(left, right, share)
		if split && i == pleats/2 {
			s.ink(fold, broad, sepia)
			continue
		}
		depth := 1.1
		if share < 0.5 {
			depth = -1.1
		}
		s.fold(fold, depth, cloth)
		s.ink(amid(left, right, share+0.025).part(0, 0.35), thin*0.8, sepia.at(0.6))
	}
}

func jacketBack(s *sheet, cloth tint) {
	s.ground(pt(middle, 91), 24, 2.2)
	drawSleeve(s, cloth, false)
	drawSleeve(s, cloth, true)

	right := curve(pt(51, 61), pt(54, 70), pt(58.5, 80), pt(61, 88))
	waist := curve(pt(51, 61), pt(46, 63.6), pt(middle, 65.6))
	drawSkirts(s, cloth, ring(right.mirrored(middle)), right, 10, true)

	neck := curve(pt(middle, 14.6), pt(44, 14), pt(47.5, 11.8))
	shoulder := straight(pt(47.5, 11.8), pt(57.5, 17))
	armhole := curve(pt(57.5, 17), pt(55, 23), pt(54.6, 30), pt(56.8, 37))
	side := curve(pt(56.8, 37), pt(54.6, 46), pt(52, 54), pt(51, 61))
	half := ring(neck, shoulder, armhole, side, waist)
	body := ring(half, half.mirrored(middle).back())
	s.cloth(body, cloth)

	seam := curve(pt(55, 25), pt(51.6, 36), pt(47.4, 49), pt(43.4, 64.4))
	panel := ring(seam, waist.part(0, 0.68).back(), side.back(), armhole.part(0.4, 1).back())
	s.hatch(panel, 58, 1.0, sepia.at(0.42))
	s.hatch(panel.mirrored(middle), 122, 1.0, sepia.at(0.42))
	for _, l := range []line{seam, armhole} {
		s.piping(l, 0.85, cloth)
		s.piping(l.mirrored(middle), 0.85, cloth)
	}
	s.stitch(seam.beside(-1), 0.5, 0.3, thin, sepia)
	s.stitch(seam.beside(-1).mirrored(middle), 0.5, 0.3, thin, sepia)
	s.ink(straight(pt(middle, 14.8), pt(middle+0.1, 65.5)), medium, sepia)
	s.stitch(straight(pt(middle+0.7, 15.4), pt(middle+0.7, 65)), 0.5, 0.3, thin*0.8, sepia.at(0.8))
	edge := ring(neck.mirrored(middle).back(), neck)
	s.stitch(edge.beside(-0.8), 0.4, 0.4, thin*0.8, sepia.at(0.8))
	s.ink(ring(waist.mirrored(middle), waist.back()), medium, sepia)
	s.fold(curve(pt(51.6, 51.6), pt(49.6, 54.6), pt(47.5, 55.6)), 0.5, cloth)
	s.fold(curve(pt(51.6, 51.6), pt(49.6, 54.6), pt(47.5, 55.6)).mirrored(middle), -0.5, cloth)
}

func jacketFront(s *sheet) {
	s.ground(pt(middle, 91), 24, 2.2)
	drawSleeve(s, madder, false)
	drawSleeve(s, madder, true)
	for _, mirror := range []bool{false, true} {
		cuff := ring(straight(pt(64.1, 68.5), pt(71.6, 68.5), pt(72.2, 74.8), pt(63.7, 74.8)))
		if mirror {
			cuff = cuff.mirrored(middle)
		}
		s.cloth(cuff, madder)
		s.dot(pt(cuff.at(0.13).x, 71.6), 0.45, sepia)
	}

	out := curve(pt(51.4, 60), pt(55, 70), pt(59, 80), pt(61, 88))
	in := curve(pt(40, 65.6), pt(43, 74), pt(45, 82), pt(46, 89.4))
	for _, mirror := range []bool{false, true} {
		a, b := in, out
		if mirror {
			a, b = in.mirrored(middle), out.mirrored(middle)
		}
		drawSkirts(s, madder, a, b, 5, false)
		s.ink(straight(a[len(a)-1], b[len(b)-1]), thin, sepia)
	}

	neck := curve(pt(47.6, 12), pt(48.6, 20), pt(45, 28), pt(39.2, 34.5))
	front := curve(pt(39.2, 34.5), pt(38.6, 45), pt(38.8, 56), pt(39.2, 66))
	waist := curve(pt(39.2, 66), pt(46, 62.8), pt(51.4, 60))
	side := curve(pt(51.4, 60), pt(53, 52), pt(56.4, 44), pt(56.8, 37))
	armhole := curve(pt(56.8, 37), pt(53.6, 30), pt(54.4, 22), pt(57.5, 17))
	shoulder := straight(pt(57.5, 17), pt(47.6, 12))
	half := ring(neck, front, waist, side, armhole, shoulder)
	under := half.mirrored(middle)

	kerchief := ring(curve(pt(47.6, 11.2), pt(50.4, 20), pt(48, 29), pt(40.2, 38)), curve(pt(40.2, 38), pt(32, 29), pt(29.6, 20), pt(32.4, 11.2)), curve(pt(32.4, 11.2), pt(37, 17), pt(43, 17), pt(47.6, 11.2)))
	s.cloth(under, madder)
	s.cloth(half, madder)
	s.hatch(ring(side, armhole.part(0, 0.5), curve(armhole.at(0.5), pt(50.5, 46), pt(48.4, 61.6))), 58, 1, sepia.at(0.42))
	s.hatch(ring(side, armhole.part(0, 0.5), curve(armhole.at(0.5), pt(50.5, 46), pt(48.4, 61.6))).mirrored(middle), 122, 1, sepia.at(0.42))
	s.blank(kerchief)
	s.wash(kerchief, linen.at(0.16))
	s.ink(ring(kerchief, kerchief[:1]), medium, sepia)
	for _, t := range []float64{0.25, 0.5, 0.75} {
		l := amid(curve(pt(47.6, 11.2), pt(50.4, 20), pt(48, 29), pt(40.2, 38)), curve(pt(43, 16), pt(42.4, 22), pt(41.4, 30), pt(40.2, 38)), t)
		s.fold(l, 0.5, linen)
		s.fold(l.mirrored(middle), -0.5, linen)
	}
	s.piping(armhole, 0.8, madder)
	s.piping(armhole.mirrored(middle), 0.8, madder)
	s.stitch(front.beside(1).part(0.06, 1), 0.5, 0.35, thin, sepia)
	for i := range 5 {
		at := front.part(0.1, 0.97).at(float64(i) / 4)
		pin := straight(pt(at.x-1.4, at.y+0.5), pt(at.x+2.2, at.y-0.3))
		s.ink(pin, medium, sepia)
		s.dot(pt(at.x+2.3, at.y-0.35), 0.38, walnut.at(1))
	}
	s.fold(curve(pt(52.4, 54), pt(48.5, 54.5), pt(44, 57)), 0.6, madder)
	s.fold(curve(pt(54, 48), pt(50, 47.8), pt(46, 49)), 0.5, madder)
}

func sleeveSeam(s *sheet) {
	outer := curve(pt(18, 9), pt(30, 5), pt(47, 8), pt(58, 17))
	right := curve(pt(58, 17), pt(61, 36), pt(60, 52), pt(55, 70), pt(50, 92))
	left := curve(pt(18, 9), pt(15, 28), pt(19, 46), pt(24, 58), pt(29, 92))
	cuff := curve(pt(50, 92), pt(39, 94.5), pt(29, 92))
	outline := ring(outer, right, cuff, left.back())
	s.stain(s.cover(outline.moved(1.6, 1.2)), shadow, true)
	s.cloth(outline, grey)
	s.hatch(ring(right, amid(left, right, 0.8).back()), 65, 1.1, sepia.at(0.45))

	seam := amid(left, right, 0.3)
	before := amid(left, right, 0.37)
	s.stain(s.cover(ring(seam.part(0, 0.62), before.part(0, 0.62).back())), dark(grey), true)
	s.stitch(before.part(0.02, 0.62), 1.3, 1.1, medium, red.at(0.8))
	s.ink(seam, medium, sepia)
	s.stitch(seam.beside(0.8).part(0.01, 0.99), 0.9, 0.45, medium, sepia)
	s.piping(outer, 1.3, grey)
	for _, t := range []float64{0.46, 0.52, 0.57} {
		a, b := amid(left, right, 0.5).at(t), right.at(t-0.02)
		s.fold(curve(a, between(pt(a.x, a.y-1.4), b, 0.5), b), 1.1, grey)
	}
	for _, t := range []float64{0.42, 0.45} {
		p := outer.at(t)
		s.ink(straight(pt(p.x, p.y+1), pt(p.x, p.y+3)), medium, sepia)
	}
	p := outer.at(0.8)
	s.ink(straight(pt(p.x-0.4, p.y+1), pt(p.x-1.2, p.y+3)), medium, sepia)
}
