package main

// fist is a closed hand that hangs from a wrist.
func (s *sheet) fist(at point, degrees float64) {
	palm := ring(curve(pt(-0.9, 0), pt(-1.2, 1.6), pt(-0.8, 3.2), pt(0, 4.1)), curve(pt(0, 4.1), pt(0.9, 3.2), pt(1.1, 1.6), pt(0.9, 0))).turned(pt(0, 0), degrees).moved(at.x, at.y)
	s.cloth(palm, skin)
	s.ink(straight(pt(0.1, 2), pt(0.1, 3.8)).turned(pt(0, 0), degrees).moved(at.x, at.y), thin, sepia)
}

// head is a face turned a little aside, without features but for a hint.
func (s *sheet) head(at point, size float64) {
	face := ring(curve(pt(-3, -3.6), pt(-3.3, 0), pt(-2.2, 3.2), pt(-0.3, 4.6)), curve(pt(-0.3, 4.6), pt(2, 3.6), pt(3.1, 0.6), pt(3, -3.6)), curve(pt(3, -3.6), pt(0, -5), pt(-3, -3.6)))
	for i, p := range face {
		face[i] = pt(at.x+p.x*size, at.y+p.y*size)
	}
	s.cloth(face, skin)
	put := func(l line, w float64, t tint) {
		for i, p := range l {
			l[i] = pt(at.x+p.x*size, at.y+p.y*size)
		}
		s.ink(l, w, t)
	}
	put(curve(pt(-2.1, -0.7), pt(-1.5, -1), pt(-0.9, -0.7)), thin, sepia)
	put(curve(pt(0.7, -0.7), pt(1.3, -1), pt(1.9, -0.7)), thin, sepia)
	put(curve(pt(-0.5, -0.4), pt(-0.9, 1.2), pt(-0.4, 1.4)), thin, sepia)
	put(curve(pt(-1, 2.6), pt(-0.3, 2.9), pt(0.6, 2.5)), thin*1.5, red)
}

func plate1786(s *sheet) {
	mid := s.wide() / 2
	frame(s)
	s.ground(pt(mid, 91), 24, 2)
	for _, x := range []float64{-4.2, 3.6} {
		shoe := ring(curve(pt(mid+x-2.4, 90.6), pt(mid+x-1.4, 87.6), pt(mid+x+1.6, 87.4), pt(mid+x+2, 90.6)), straight(pt(mid+x+2, 90.6), pt(mid+x-2.4, 90.6)))
		s.cloth(shoe, walnut)
	}
	left := curve(pt(mid-6.4, 45), pt(mid-14, 52), pt(mid-19, 68), pt(mid-22, 87))
	right := left.mirrored(mid)
	skirt := ring(left, curve(pt(mid-22, 87), pt(mid-8, 89.6), pt(mid+8, 89.4), pt(mid+22, 87)), right.back(), straight(pt(mid+6.4, 45), pt(mid-6.4, 45)))
	s.cloth(skirt, blue)
	s.hatch(ring(amid(left, right, 0.85), right.back()), 64, 0.9, sepia.at(0.45))
	for i := 1; i < 14; i++ {
		share := float64(i) / 14
		depth := 1.1
		if share < 0.5 {
			depth = -1.1
		}
		s.fold(amid(left, right, share).part(0.03, 0.6+0.38*noise(float64(i)*2.3, 8)), depth, blue)
	}
	for _, up := range []float64{0.88, 0.91} {
		s.ink(levelLine(left, right, up, 2.2), thin, sepia)
	}
	apron := ring(curve(pt(mid-5, 46), pt(mid-8.6, 58), pt(mid-9.4, 78)), curve(pt(mid-9.4, 78), pt(mid, 80), pt(mid+9.4, 78)), curve(pt(mid+9.4, 78), pt(mid+8.6, 58), pt(mid+5, 46)))
	s.blank(apron)
	s.wash(apron, linen.at(0.22))
	s.ink(ring(apron, apron[:1]), medium, sepia)
	for _, x := range []float64{-0.5, -0.2, 0.15, 0.5} {
		s.fold(curve(pt(mid+x*7, 48), pt(mid+x*11, 60), pt(mid+x*13, 78)), 0.6*x/max(x, -x), linen)
	}

	tail := ring(curve(pt(mid-6, 45), pt(mid-11, 50), pt(mid-15, 57)), curve(pt(mid-15, 57), pt(mid-10, 58.6), pt(mid-6.2, 57)), curve(pt(mid-6.2, 57), pt(mid-4, 51), pt(mid-1.6, 46.6)))
	for _, l := range []line{tail, tail.mirrored(mid)} {
		s.cloth(l, madder)
	}
	for _, x := range []float64{3.6, 6, 8.4} {
		f := curve(pt(mid+x*0.8, 46.6), pt(mid+x*1.1, 51), pt(mid+x*1.5, 57.2))
		s.fold(f, 0.6, madder)
		s.fold(f.mirrored(mid), -0.6, madder)
	}
	arm := ring(curve(pt(mid+8.6, 26.6), pt(mid+13.4, 33), pt(mid+15.4, 42), pt(mid+11.4, 51.4)), straight(pt(mid+11.4, 51.4), pt(mid+8.6, 50)), curve(pt(mid+8.6, 50), pt(mid+11.3, 42.5), pt(mid+9, 37), pt(mid+7, 33.4)))
	s.fist(pt(mid+9.9, 50.4), 38)
	s.fist(pt(mid-9.9, 50.4), -38)
	for _, l := range []line{arm, arm.mirrored(mid)} {
		s.cloth(l, madder)
	}
	s.hatch(arm, 60, 0.8, sepia.at(0.4))
	s.fold(curve(pt(mid+14.9, 41), pt(mid+13, 41), pt(mid+11.4, 42.4)), 0.6, madder)
	s.fold(curve(pt(mid-14.9, 41), pt(mid-13, 41), pt(mid-11.4, 42.4)), -0.6, madder)
	body := curve(pt(mid+3.6, 23.4), pt(mid+8.6, 26.4), pt(mid+7.6, 35), pt(mid+5.8, 43), pt(mid+5.4, 45.4))
	bodice := ring(body, curve(pt(mid+5.4, 45.4), pt(mid, 47.4), pt(mid-5.4, 45.4)), body.mirrored(mid).back())
	s.cloth(bodice, madder)
	s.hatch(ring(body, curve(pt(mid+5.4, 45.4), pt(mid+4.6, 36), pt(mid+6.6, 28))), 60, 0.8, sepia.at(0.45))
	s.ink(straight(pt(mid, 33), pt(mid+0.1, 46.8)), medium, sepia)
	for i := range 5 {
		y := 34.6 + 2.6*float64(i)
		s.ink(straight(pt(mid-1.4, y), pt(mid+0.6, y-0.2)), medium, sepia)
		s.dot(pt(mid+0.7, y-0.2), 0.24, walnut.at(1))
	}
	neck := ring(straight(pt(mid-1.8, 17), pt(mid-1.8, 25), pt(mid+1.8, 25), pt(mid+1.8, 17)))
	s.cloth(neck, skin)
	puff := ring(curve(pt(mid-3.4, 21.6), pt(mid-8.4, 25.6), pt(mid-6.8, 31), pt(mid, 34.6)), curve(pt(mid, 34.6), pt(mid+6.8, 31), pt(mid+8.4, 25.6), pt(mid+3.4, 21.6)), curve(pt(mid+3.4, 21.6), pt(mid, 24.6), pt(mid-3.4, 21.6)))
	s.blank(puff)
	s.wash(puff, linen.at(0.12))
	s.ink(ring(puff, puff[:1]), medium, sepia)
	for _, x := range []float64{2, 3.7, 5.4} {
		f := curve(pt(mid+x*0.7+1, 22.6), pt(mid+x, 27), pt(mid+0.6, 33.6))
		s.fold(f, 0.4, linen)
		s.fold(f.mirrored(mid), -0.4, linen)
	}
	hair := oval(pt(mid, 13), 5.2, 5.2)
	s.cloth(hair, walnut)
	for i := range 9 {
		x := -4.4 + 1.1*float64(i)
		s.ink(curve(pt(mid+x, 10), pt(mid+x*1.1, 13.6), pt(mid+x*0.95, 17)), thin, sepia)
	}
	s.head(pt(mid, 15), 0.95)
	brim := oval(pt(mid+0.4, 10.4), 12.6, 2.5).turned(pt(mid, 10), -5)
	s.cloth(brim, linen)
	s.hatch(brim, 20, 0.6, sepia.at(0.35))
	crown := ring(curve(pt(mid-4.4, 10), pt(mid-3.8, 6.6), pt(mid, 5.6), pt(mid+4, 6.4), pt(mid+4.8, 9.3)), curve(pt(mid+4.8, 9.3), pt(mid, 10.9), pt(mid-4.4, 10)))
	s.cloth(crown, linen)
	ribbon := ring(curve(pt(mid-4.5, 9), pt(mid, 10), pt(mid+4.7, 8.4)), curve(pt(mid+4.8, 9.5), pt(mid, 11.1), pt(mid-4.5, 10.2)))
	s.cloth(ribbon, blue)
}

// frame is the plate mark of an engraving.
func frame(s *sheet) {
	w := s.wide()
	for _, d := range []float64{3, 3.8} {
		s.ink(straight(pt(d, d), pt(w-d, d)), thin, sepia.at(0.7))
		s.ink(straight(pt(d, 100-d), pt(w-d, 100-d)), thin, sepia.at(0.7))
		s.ink(straight(pt(d, d), pt(d, 100-d)), thin, sepia.at(0.7))
		s.ink(straight(pt(w-d, d), pt(w-d, 100-d)), thin, sepia.at(0.7))
	}
}
