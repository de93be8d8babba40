package main

// channels are three pieces of stays laid flat, with a bone going in.
func channels(s *sheet) {
	wide := s.wide()
	s.board(wide)
	pieces := []struct {
		top         line
		waist, hem  float64 // widths
		bones, tabs int
		turn        float64
		dx, dy      float64
	}{
		{curve(pt(0, 0), pt(8, -1), pt(16, 2)), 11, 17, 8, 3, -3, 8, 20},
		{curve(pt(0, 2), pt(7, 4), pt(14, 9)), 9, 14, 6, 2, 3, 30, 22},
		{curve(pt(0, 9), pt(5, 11), pt(11, 7)), 10, 14, 5, 2, 8, 51, 19},
	}
	for _, p := range pieces {
		about := pt(6, 28)
		place := func(l line) line { return l.turned(about, p.turn).moved(p.dx, p.dy) }
		const waist, foot = 39.0, 55.0
		var hem, slits []line
		for i := range p.tabs {
			a, b := p.hem*float64(i)/float64(p.tabs), p.hem*float64(i+1)/float64(p.tabs)
			hem = append(hem, curve(pt(a, foot-3), pt((a+b)/2, foot), pt(b, foot-3)))
			if i > 0 {
				slits = append(slits, place(straight(pt(p.waist*float64(i)/float64(p.tabs), waist+1), pt(a, foot-3))))
			}
		}
		end := p.top[len(p.top)-1]
		outline := place(ring(p.top,
			curve(end, pt(p.waist+0.5, 26), pt(p.waist, waist)),
			curve(pt(p.waist, waist), pt(p.hem*0.9, 46), pt(p.hem, foot-3)),
			ring(hem...).back(),
			curve(pt(0, foot-3), pt(0, waist), p.top[0])))
		s.stain(s.cover(outline.moved(0.9, 0.8)), shadow, true)
		s.cloth(outline, linen)
		inside := s.cover(outline)
		for i := range p.bones {
			share := (float64(i) + 0.6) / float64(p.bones)
			bone := straight(p.top.at(share*0.96), pt(0.5+share*(p.waist-1), waist))
			for _, side := range []float64{-0.36, 0.36} {
				var rows []line
				row := place(bone.beside(side))
				for at := 0.0; at < 0.97; at += 0.027 {
					rows = append(rows, s.pen(row.part(at, at+0.018), thin, 0.2))
				}
				s.stain(s.cover(rows...).within(inside), sepia.at(0.9), false)
			}
		}
		for _, slit := range slits {
			s.ink(slit, broad, sepia)
		}
	}
	// One bone is on its way into its channel.
	bone := ring(straight(pt(15, 6), pt(16.6, 6)), straight(pt(16.9, 34), pt(15.3, 34)))
	bone = bone.turned(pt(16, 20), -4).moved(1.6, 0)
	s.stain(s.cover(bone.moved(0.4, 0.3)), shadow, true)
	s.blank(bone)
	s.wash(bone, tint{0.75, 0.78, 0.78, 0.4})
	s.ink(ring(bone, bone[:1]), thin, sepia)
	awl(s, pt(60, 86))
}

// board is the table top that flat things lie on.
func (s *sheet) board(wide float64) {
	top := straight(pt(0, 0), pt(wide, 0), pt(wide, 100), pt(0, 100))
	s.stain(s.cover(top), tint{0.80, 0.68, 0.52, 0.42}, true)
	for y := 3.0; y < 100; y += 2.6 {
		bend := 3 * noise(y, 4)
		s.ink(curve(pt(0, y), pt(wide*0.3, y+bend), pt(wide*0.7, y-bend), pt(wide, y+bend/2)), thin, walnut.at(0.28))
	}
}

func awl(s *sheet, at point) {
	steel := ring(straight(pt(0, -0.45), pt(-16, 0), pt(0, 0.45))).turned(pt(0, 0), 24).moved(at.x, at.y)
	handle := ring(curve(pt(0, -1), pt(4, -1.9), pt(8, -1.5), pt(9.4, 0)), curve(pt(9.4, 0), pt(8, 1.5), pt(4, 1.9), pt(0, 1))).turned(pt(0, 0), 24).moved(at.x, at.y)
	s.stain(s.cover(handle.moved(0.7, 0.8)), shadow, true)
	s.cloth(steel, grey)
	s.cloth(handle, walnut)
	s.hatch(handle, 100, 0.8, sepia.at(0.3))
}
