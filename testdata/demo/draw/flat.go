package main

// piece is a pattern piece with its grain, drawn at its own top left corner.
type piece struct {
	name    string
	outline line
	grain   line
	label   point
	notches []point
}

func jacketPieces() (front, back, sleeve, skirt piece) {
	front = piece{
		name: "front",
		outline: ring(straight(pt(0, 14), pt(0, 40)), straight(pt(0, 40), pt(17, 36.5)),
			curve(pt(17, 36.5), pt(18, 28), pt(21, 18)), curve(pt(21, 18), pt(16, 13), pt(16.4, 5)),
			straight(pt(16.4, 5), pt(9, 0)), curve(pt(9, 0), pt(8.4, 7), pt(5, 11.4), pt(0, 14))),
		grain:   straight(pt(3, 19), pt(3, 36)),
		label:   pt(10, 24),
		notches: []point{pt(18.6, 27)},
	}
	back = piece{
		name: "back",
		outline: ring(straight(pt(0, 2), pt(0, 40)), straight(pt(0, 40), pt(5, 38)),
			curve(pt(5, 38), pt(7, 26), pt(14, 14)), curve(pt(14, 14), pt(13, 9), pt(15, 4)),
			straight(pt(15, 4), pt(6, 0)), curve(pt(6, 0), pt(3, 1.8), pt(0, 2))),
		grain:   straight(pt(2, 12), pt(2, 34)),
		label:   pt(7, 16),
		notches: []point{pt(7.4, 26)},
	}
	sleeve = piece{
		name: "sleeve",
		outline: ring(curve(pt(0, 9), pt(6, 1.5), pt(13, 0), pt(20, 3), pt(25, 11)),
			curve(pt(25, 11), pt(24.6, 24), pt(21, 36), pt(19, 46)), straight(pt(19, 46), pt(6, 46)),
			curve(pt(6, 46), pt(5, 34), pt(0.6, 22), pt(0, 9))),
		grain:   straight(pt(6, 32), pt(19, 19)),
		label:   pt(12.4, 12),
		notches: []point{pt(4.4, 3.4), pt(20.8, 3.8), pt(22, 5)},
	}
	skirt = piece{
		name: "skirt",
		outline: ring(curve(pt(8, 0), pt(18, 2.4), pt(28, 1.4)), straight(pt(28, 1.4), pt(38, 21)),
			curve(pt(38, 21), pt(20, 26), pt(0, 23)), straight(pt(0, 23), pt(8, 0))),
		grain: straight(pt(20, 6), pt(20, 21)),
		label: pt(27, 13),
	}
	return front, back, sleeve, skirt
}

// lay draws a piece turned about its middle and moved to a place.
func (s *sheet) lay(p piece, at point, degrees float64, wash tint, allowance float64) {
	low, high := p.outline[0], p.outline[0]
	for _, q := range p.outline {
		low, high = pt(min(low.x, q.x), min(low.y, q.y)), pt(max(high.x, q.x), max(high.y, q.y))
	}
	middle := between(low, high, 0.5)
	place := func(l line) line {
		return l.turned(middle, degrees).moved(at.x-middle.x, at.y-middle.y)
	}
	seam := place(ring(p.outline, p.outline[:1]))
	cut := seam
	if allowance > 0 {
		if area(seam) > 0 {
			allowance = -allowance
		}
		cut = seam.beside(-allowance)
		s.stain(s.cover(cut), wash.at(wash.strength*0.5), false)
		s.ink(cut, thin, sepia)
	}
	s.stain(s.cover(seam), wash, false)
	s.stitch(seam, 0.9, 0.6, medium, sepia)
	grain := place(p.grain)
	s.ink(grain, thin*1.3, sepia)
	for _, t := range []float64{0, 1} {
		tip, shaft := grain.at(t), grain.at(0.5+(t-0.5)*0.86)
		barb := straight(shaft, tip)
		s.ink(barb.turned(tip, 24), medium, sepia)
		s.ink(barb.turned(tip, -24), medium, sepia)
	}
	for _, n := range p.notches {
		spot := place(line{n})[0]
		s.ink(straight(pt(spot.x-0.7, spot.y-0.7), pt(spot.x+0.7, spot.y+0.7)), medium, red)
		s.ink(straight(pt(spot.x-0.7, spot.y+0.7), pt(spot.x+0.7, spot.y-0.7)), medium, red)
	}
	s.label(place(line{p.label})[0], p.name, 2.6)
}

func draftPieces(s *sheet) {
	front, back, sleeve, skirt := jacketPieces()
	tone := linen.at(0.35)
	s.lay(front, pt(26, 33), 0, tone, 0)
	s.lay(back, pt(58, 33), 0, tone, 0)
	s.lay(sleeve, pt(103, 36), 0, tone, 0)
	s.lay(skirt, pt(36, 76), 0, tone, 0)
	facing := piece{
		name:    "neck facing",
		outline: ring(curve(pt(0, 0), pt(22, 7), pt(44, 0)), straight(pt(44, 0), pt(45.6, 4)), curve(pt(45.6, 4), pt(22, 11.4), pt(-1.6, 4)), straight(pt(-1.6, 4), pt(0, 0))),
		grain:   straight(pt(9, 5.4), pt(13, 8)),
		label:   pt(22, 15),
	}
	s.lay(facing, pt(100, 76), 0, tone, 0)
	// The correction at the bust in red, as it stands on the paper.
	s.stitch(curve(pt(34.6, 49), pt(36.8, 41), pt(38.2, 31)), 0.8, 0.6, medium, red)
	s.label(pt(42, 41), "+ 1/8", 2.4)
	s.ink(straight(pt(115, 90), pt(135, 90)), medium, sepia)
	for i := range 6 {
		x := 115 + 4*float64(i)
		s.ink(straight(pt(x, 89), pt(x, 91)), thin, sepia)
	}
	s.label(pt(125, 93.6), "10 in", 2.2)
}

func layout(s *sheet) {
	wide := s.wide()
	cloth := straight(pt(8, 10), pt(wide-8, 10), pt(wide-8, 88), pt(8, 88), pt(8, 10))
	s.stain(s.cover(cloth), grey.at(0.30), false)
	s.ink(cloth, medium, sepia)
	for y := 10.0; y < 88; y += 1.3 {
		s.ink(straight(pt(8.2, y), pt(9.6, y)), thin, sepia.at(0.6))
	}
	s.stitch(straight(pt(8, 88), pt(wide-8, 88)), 1.6, 0.8, broad, sepia)
	s.label(pt(wide/2, 91.6), "fold", 2.6)
	s.label(pt(wide/2, 6.6), "selvedges, 28 in from the fold", 2.6)
	front, back, sleeve, skirt := jacketPieces()
	tone := grey.at(0.40)
	s.lay(front, pt(35, 25), 90, tone, 1)
	s.lay(back, pt(82, 21.6), 90, tone, 1)
	s.lay(sleeve, pt(129, 37), 45, tone, 1)
	s.lay(skirt, pt(36, 66), 90, tone, 1)
	left := straight(pt(63, 62), pt(wide-9, 62), pt(wide-9, 87), pt(63, 87), pt(63, 62))
	s.hatch(left, 45, 2.4, sepia.at(0.35))
	s.label(pt(111, 74.6), "left over: 9 x 40", 2.8)
}
