package main

import "math"

// pipedSeam is a corded edge between two cloths, very close.
func pipedSeam(s *sheet, cord, under tint) {
	wide := s.wide()
	seam := curve(pt(-4, 66), pt(wide*0.3, 58), pt(wide*0.62, 47), pt(wide+4, 24))
	upper := ring(straight(pt(-4, -4), pt(wide+4, -4)), seam.back())
	lower := ring(straight(pt(wide+4, 104), pt(-4, 104)), seam)
	s.wash(lower, under)
	s.wash(upper, cord)
	weave(s, lower, 1.9, -12)
	weave(s, upper, 1.9, 8)
	s.stain(s.cover(ring(seam.beside(-5), seam.beside(-11).back())), dark(under), true)
	s.piping(seam.beside(-1.5), 7.5, cord)
	s.stain(s.cover(ring(seam.beside(-3.2), seam.beside(-5.1).back())), dark(cord), true)
	s.ink(seam.beside(2.3), broad, sepia)
	s.ink(seam.beside(-5.3), broad, sepia)
	for i := range 18 {
		t := 0.03 + float64(i)*0.054
		a, b := seam.beside(5.6).at(t), seam.beside(5.6).at(t+0.034)
		s.ink(straight(a, b), broad*1.9, linen.at(1))
		s.ink(straight(a, b), broad*0.9, sepia.at(0.85))
	}
	s.stitch(seam.beside(-15), 5, 2.6, broad, linen.at(0.95))
	needle := straight(pt(wide*0.56, 84), pt(wide*0.80, 60))
	s.ink(needle.moved(0.8, 1), broad*1.6, shadow)
	s.ink(needle, broad*1.8, sepia.at(0.75))
	s.ink(straight(pt(wide*0.565, 83), pt(wide*0.585, 81)), thin, linen.at(0.2))
	s.ink(curve(pt(wide*0.565, 83.4), pt(wide*0.5, 93), pt(wide*0.36, 84), pt(wide*0.24, 90), pt(wide*0.1, 86), seam.beside(-15).at(0.04)), medium, linen.at(1))
	s.ink(curve(pt(wide*0.565, 83.4), pt(wide*0.5, 93), pt(wide*0.36, 84), pt(wide*0.24, 90), pt(wide*0.1, 86), seam.beside(-15).at(0.04)), thin, sepia)
}

// weave scatters short threads over a cloth.
func weave(s *sheet, outline line, apart, degrees float64) {
	inside := s.cover(outline)
	centre := pt(s.wide()/2, 50)
	var threads []line
	for y := -60.0; y < 160; y += apart {
		for x := -60.0; x < s.wide()+60; x += apart * 1.6 {
			dx := 2 * (noise(x*3.1, y*1.7) - 0.5)
			long := apart * (0.5 + 0.6*noise(y*2.3, x*1.1))
			threads = append(threads, s.pen(straight(pt(x+dx, y), pt(x+dx+long, y)).turned(centre, degrees), thin*0.7, 0.4))
		}
	}
	s.stain(s.cover(threads...).within(inside), sepia.at(0.28), false)
}

func waistInside(s *sheet) {
	wide := s.wide()
	whole := straight(pt(-2, -2), pt(wide+2, -2), pt(wide+2, 102), pt(-2, 102))
	s.wash(whole, linen)
	weave(s, whole, 1.7, 3)
	skirt := ring(curve(pt(-2, 62), pt(wide*0.5, 66), pt(wide+2, 61)), straight(pt(wide+2, 102), pt(-2, 102)))
	s.blank(skirt)
	s.wash(skirt, grey)
	weave(s, skirt, 2.1, -4)
	waist := curve(pt(-2, 62), pt(wide*0.5, 66), pt(wide+2, 61))
	side := curve(pt(wide*0.5, -2), pt(wide*0.485, 30), pt(wide*0.5, 65))
	// The cloth let out behind the lining lies in a fold along the seam.
	bulge := ring(side.beside(-1.5), curve(pt(wide*0.5+1.4, 65), pt(wide*0.56, 46), pt(wide*0.53, 22), pt(wide*0.51, -2)))
	s.stain(s.cover(bulge), dark(linen), true)
	s.hatch(bulge, 70, 1.2, sepia.at(0.35))
	for _, d := range []float64{4, 8, 12, 16, 21} {
		s.fold(curve(pt(wide*0.5+1, 63.6), pt(wide*0.5+d*0.8, 55-d*0.5), pt(wide*0.5+d*1.9, 40-d)), 0.9, linen)
		s.fold(curve(pt(wide*0.5-1, 63.6), pt(wide*0.5-d*0.8, 55-d*0.5), pt(wide*0.5-d*1.9, 40-d)), -0.9, linen)
	}
	s.ink(side, broad, sepia)
	s.stitch(side.beside(1.4), 1.1, 0.7, medium, sepia)
	s.stitch(side.beside(-3.4), 1.4, 1.2, medium, red.at(0.75))
	s.fold(waist, -1.4, grey)
	s.ink(waist, broad, sepia)
	for t := 0.01; t < 0.99; t += 0.014 {
		p := waist.at(t)
		s.ink(straight(pt(p.x-0.5, p.y-1.6), pt(p.x+0.6, p.y+1)), medium, sepia)
	}
	for _, x := range []float64{0.16, 0.3, 0.68, 0.84} {
		s.fold(curve(pt(wide*x, 66), pt(wide*x-1, 82), pt(wide*x-3, 101)), 2.2, grey)
	}
	s.ink(oval(pt(wide*0.5, 64.6), 9, 7), broad, red)
	tape := ring(curve(pt(wide*0.08, 12), pt(wide*0.26, 17), pt(wide*0.46, 12)), curve(pt(wide*0.46, 16.6), pt(wide*0.26, 21.6), pt(wide*0.08, 16.6)))
	s.stain(s.cover(tape.moved(0.8, 1)), shadow, true)
	s.blank(tape)
	s.wash(tape, tint{0.93, 0.80, 0.40, 0.5})
	s.ink(ring(tape, tape[:1]), medium, sepia)
	edge := curve(pt(wide*0.08, 12), pt(wide*0.26, 17), pt(wide*0.46, 12))
	for i := 1; i < 40; i++ {
		p := edge.at(float64(i) / 40)
		long := 1.2
		if i%4 == 0 {
			long = 2.4
		}
		s.ink(straight(p, pt(p.x, p.y+long)), thin, sepia)
	}
}

func swatches(s *sheet) {
	wide := s.wide()
	s.board(wide)
	card := straight(pt(10, 8), pt(wide-10, 8), pt(wide-10, 92), pt(10, 92), pt(10, 8)).turned(pt(wide/2, 50), -1)
	s.stain(s.cover(card.moved(1.2, 1.4)), shadow, true)
	s.blank(card)
	s.wash(card, linen.at(0.10))
	s.ink(card, thin, sepia)
	for i, swatch := range []struct {
		at    point
		turn  float64
		dye   tint
		weave float64
	}{
		{pt(37, 32), -4, grey, 4}, {pt(80, 30), 3, madder, 2}, {pt(123, 33), -2, blue, 45},
		{pt(54, 70), 5, linen, 0}, {pt(104, 70), -3, tint{0.80, 0.72, 0.52, 0.85}, 1},
	} {
		edge := pinked(swatch.at, 17, 14).turned(swatch.at, swatch.turn)
		s.stain(s.cover(edge.moved(0.7, 0.9)), shadow, true)
		s.blank(edge)
		s.wash(edge, swatch.dye)
		weave(s, edge, 1.15, swatch.weave+swatch.turn)
		if i > 2 {
			weave(s, edge, 1.3, 90+swatch.turn)
		}
		s.ink(edge, thin, sepia)
		s.fold(curve(pt(swatch.at.x-14, swatch.at.y+6), pt(swatch.at.x, swatch.at.y+9), pt(swatch.at.x+12, swatch.at.y+7)).turned(swatch.at, swatch.turn), 1.2, swatch.dye)
		pin := straight(pt(swatch.at.x-4, swatch.at.y-12.4), pt(swatch.at.x+5, swatch.at.y-11))
		s.ink(pin.moved(0.3, 0.6), medium, shadow)
		s.ink(pin, medium, sepia)
		s.dot(pt(swatch.at.x-4, swatch.at.y-12.4), 0.8, red)
	}
}

// pinked is a rectangle with a sawtooth edge.
func pinked(at point, rx, ry float64) line {
	const tooth = 1.1
	frame := straight(pt(at.x-rx, at.y-ry), pt(at.x+rx, at.y-ry), pt(at.x+rx, at.y+ry), pt(at.x-rx, at.y+ry), pt(at.x-rx, at.y-ry))
	n := int(math.Round(frame.length()/tooth/2)) * 2
	var corners []point
	for i := range n + 1 {
		p := frame.at(float64(i) / float64(n))
		if i%2 == 1 {
			p = between(p, at, 0.05)
		}
		corners = append(corners, p)
	}
	return straight(corners...)
}
