package main

// The right half of stays, seen from the front or from behind: the middle edge,
// the outer edge, and the tabs below the waist.
type half struct {
	middle, outer line
	waist         line // from the middle out
	top           line
}

func staysHalf(gap float64) half {
	return half{
		middle: straight(pt(50+gap, 15), pt(50+gap*1.15, 62)),
		outer:  curve(pt(72, 30), pt(70.5, 42), pt(67.2, 54), pt(65, 60)),
		waist:  curve(pt(50+gap*1.15, 62), pt(58, 61.6), pt(65, 60)),
		top:    curve(pt(50+gap, 15), pt(58, 15.6), pt(65, 19), pt(69.6, 24.5), pt(72, 30)),
	}
}

// tabs are cut apart up to the waist.
func (h half) tabs(n int) []line {
	tabs := make([]line, n)
	for i := range n {
		a, b := h.waist.at(float64(i)/float64(n)), h.waist.at(float64(i+1)/float64(n))
		spread := 1.35 * float64(i)
		low := 15.5 - 1.3*float64(i)
		tabs[i] = ring(
			straight(a, b),
			curve(b, pt(b.x+spread+1.0, b.y+low*0.6), pt(b.x+spread+1.5, b.y+low-2)),
			curve(pt(b.x+spread+1.5, b.y+low-2), pt((a.x+b.x)/2+spread+0.6, b.y+low+0.4), pt(a.x+spread*0.9+0.2, a.y+low-1.6)),
			curve(pt(a.x+spread*0.9+0.2, a.y+low-1.6), pt(a.x+spread*0.5, a.y+low*0.5), a),
		)
	}
	return tabs
}

func (s *sheet) staysHalf(h half, cloth tint, mirror bool, bones int) {
	turn := func(l line) line {
		if mirror {
			return l.mirrored(50)
		}
		return l
	}
	body := ring(h.top, h.outer, h.waist.back(), h.middle.back())
	for _, tab := range h.tabs(4) {
		s.cloth(turn(tab), cloth)
		edge := tab.part(0.3, 0.98)
		s.stitch(turn(edge.beside(-0.8)), 0.5, 0.4, thin, sepia.at(0.8))
	}
	s.blank(turn(body))
	s.wash(turn(body), cloth)
	s.hatch(turn(ring(amid(h.middle, h.outer, 0.72), h.outer.back())), 60, 1, sepia.at(0.35))
	for i := range bones {
		share := (float64(i) + 0.7) / (float64(bones) + 0.6)
		bone := straight(h.top.at(share), h.waist.at(share))
		for _, side := range []float64{-0.42, 0.42} {
			s.stitch(turn(bone.beside(side).part(0.035, 1)), 0.55, 0.3, thin, sepia.at(0.85))
		}
	}
	for _, share := range []float64{0.36, 0.68} {
		s.ink(turn(straight(h.top.at(share), h.waist.at(share))), medium, sepia)
	}
	for _, l := range []line{h.top, h.outer} {
		s.piping(turn(l), 1.1, linen.at(0.25))
	}
	s.ink(turn(h.middle), medium, sepia)
	s.ink(turn(h.waist), thin, sepia)
}

func staysFront(s *sheet) {
	s.left = 50 - s.wide()/2
	s.ground(pt(50, 82), 30, 2.4)
	h := staysHalf(0)
	h.middle = curve(pt(50, 17), pt(50, 40), pt(50, 66))
	h.waist = curve(pt(50, 66), pt(57, 63), pt(65, 60))
	h.top = curve(pt(50, 17), pt(57, 15.8), pt(64, 18), pt(69.6, 24.5), pt(72, 30))
	s.staysHalf(h, walnut, false, 9)
	s.staysHalf(h, walnut, true, 9)
	s.stitch(straight(pt(50.8, 19), pt(50.8, 65)), 0.6, 0.35, thin, sepia)
	const pairs, apart = 9, 4.2
	for i := range pairs {
		y := 20.5 + float64(i)*apart
		for _, x := range []float64{48.6, 51.4} {
			s.eyelet(pt(x, y))
		}
		if i < pairs-1 {
			s.ink(curve(pt(48.6, y), pt(50, y+1.7), pt(51.4, y+apart)), medium, linen.at(0.9))
			s.ink(curve(pt(51.4, y), pt(50, y+1.5), pt(48.6, y+apart)), medium, sepia.at(0.8))
		}
	}
	s.ink(curve(pt(48.6, 54.1), pt(45, 57), pt(46, 62), pt(43.6, 66)), medium, sepia)
	s.ink(curve(pt(51.4, 54.1), pt(54, 58), pt(52.8, 63), pt(55.8, 67.5)), medium, sepia)
}

func (s *sheet) eyelet(at point) {
	s.dot(at, 0.62, linen.at(0.9))
	s.dot(at, 0.36, sepia)
	for i := range 8 {
		ray := straight(pt(at.x+0.4, at.y), pt(at.x+0.72, at.y)).turned(at, float64(i)*45)
		s.ink(ray, thin, sepia)
	}
}

func staysBack(s *sheet) {
	s.left = 50 - s.wide()/2
	s.ground(pt(50, 82), 30, 2.4)
	shift := ring(curve(pt(45.4, 13.6), pt(50, 14.6), pt(54.6, 13.6)), curve(pt(54.6, 13.6), pt(54, 40), pt(56, 75)), curve(pt(56, 75), pt(50, 76), pt(44, 75)), curve(pt(44, 75), pt(46, 40), pt(45.4, 13.6)))
	s.blank(shift)
	s.wash(shift, linen.at(0.14))
	s.ink(ring(shift, shift[:1]), thin, sepia)
	for _, x := range []float64{-2.2, 0, 1.8} {
		s.fold(curve(pt(50+x, 15), pt(50+x*0.7, 40), pt(50+x, 60), pt(50+x*1.5, 74.6)), 0.7, linen)
	}
	h := staysHalf(3.2)
	h.top = curve(pt(53.2, 15), pt(59, 17), pt(65, 23), pt(69.6, 27), pt(72, 30))
	s.staysHalf(h, linen, false, 8)
	s.staysHalf(h, linen, true, 8)
	left := h.middle.mirrored(50).beside(1.2)
	right := h.middle.beside(-1.2)
	const pairs = 13
	for i := range pairs {
		t := 0.03 + 0.93*float64(i)/float64(pairs-1)
		s.eyelet(left.at(t))
		s.eyelet(right.at(t))
		a, b := right.at(t), left.at(t)
		s.ink(straight(a, b), medium, sepia)
		if i < pairs-1 {
			next := 0.03 + 0.93*float64(i+1)/float64(pairs-1)
			s.ink(straight(b, right.at(next)), broad, linen.at(1))
			s.ink(straight(b, right.at(next)), medium, sepia)
		}
	}
	s.ink(curve(left.at(0.96), pt(44.5, 66), pt(47, 71), pt(44, 77), pt(45.4, 82)), medium, sepia)
	measure := straight(pt(46.4, 51), pt(53.6, 51))
	s.ink(measure, medium, red)
	for _, x := range []float64{46.4, 53.6} {
		s.ink(straight(pt(x, 50), pt(x, 52)), medium, red)
	}
}
