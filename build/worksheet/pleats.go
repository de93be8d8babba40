package worksheet

import (
	"fmt"

	"hussif/content/quantity"
)

// A pleating is what all flat pleats have in common: a number of them, each showing
// so much and taking up so many folds of its depth.
//
//	finished = pleats × shown
//	cloth    = finished + folds × pleats × depth
//
// Any three of the five give the rest, but for finished, pleats and shown, which say
// nothing of the depth.
type pleating struct {
	Cloth, Finished Length
	Pleats          Count
	Shown, Depth    Length

	folds quantity.Length // 2 for a knife pleat, 4 for a box
	over  quantity.Length // what is left of the cloth
}

func (s *pleating) inputs(one string) []Input {
	return []Input{
		{Name: "finished", Doc: "how wide the pleated edge is to be, without turnings", Into: &s.Finished, Need: Solved, Example: "34 in"},
		{Name: "cloth", Doc: "how wide the cloth is before it is pleated, without turnings", Into: &s.Cloth, Need: Solved, Example: "102 in"},
		{Name: "pleats", Doc: "how many pleats", Into: &s.Pleats, Need: Solved, Example: "34"},
		{Name: "shown", Doc: "how much of each " + one + " shows on the right side", Into: &s.Shown, Need: Solved, Example: "1 in"},
		{Name: "depth", Doc: "how deep each fold is: from its outer edge to its inner one, not the cloth that it takes up", Into: &s.Depth, Need: Solved, Example: "1 in"},
	}
}

// solve finds what was not given. It reports whether all is known and agrees.
func (s *pleating) solve(p *Paper) bool {
	k := s.folds
	countFirst := s.Pleats.Known
	if !countFirst && !s.byFinished(p) && !s.byCloth(p) {
		return false
	}
	n := quantity.Length(s.Pleats.Is)
	// With the number known, two linear equations are left.
	switch {
	case s.Finished.Known && s.Shown.Known:
		if !p.agree("finished", s.Finished.Is, n*s.Shown.Is, n, "%d pleats that show %s", n, p.exact(s.Shown.Is)) {
			return false
		}
	case s.Finished.Known:
		s.Shown.set(s.Finished.Is / n)
	case s.Shown.Known:
		s.Finished.set(n * s.Shown.Is)
	case s.Cloth.Known && s.Depth.Known:
		s.Finished.set(s.Cloth.Is - k*n*s.Depth.Is)
		if s.Finished.Is <= 0 {
			p.fault("depth", "%d pleats %s deep take up all of the cloth", n, p.exact(s.Depth.Is))
			return false
		}
		s.Shown.set(s.Finished.Is / n)
	}
	switch {
	case !s.Finished.Known:
		p.wants("the width cannot be told by the number of pleats alone", "finished", "shown")
	case s.Cloth.Known && s.Depth.Known:
		return p.agree("cloth", s.Cloth.Is-s.over, s.Finished.Is+k*n*s.Depth.Is, n, "%d pleats %s deep into %s", n, p.exact(s.Depth.Is), p.exact(s.Finished.Is))
	case s.Depth.Known:
		s.Cloth.set(s.Finished.Is + k*n*s.Depth.Is)
		return true
	case s.Cloth.Known:
		s.Depth.set((s.Cloth.Is - s.Finished.Is) / (k * n))
		if s.Depth.Is <= 0 {
			p.fault("cloth", "the cloth is not wider than the finished edge, so nothing is left for pleats")
			return false
		}
		return true
	default:
		p.wants("how deep the pleats are, or how much cloth there is, has to be known", "depth", "cloth")
	}
	return false
}

// byFinished finds the number by the finished width. The nearest whole one is taken
// and what shows of each is changed to fit, for the finished width is the one that
// cannot be.
func (s *pleating) byFinished(p *Paper) bool {
	if !s.Finished.Known {
		return false
	}
	switch {
	case s.Shown.Known:
		n := nearest(s.Finished.Is, s.Shown.Is)
		s.changed(p, &s.Shown, "shown", s.Finished.Is, n)
		s.Pleats.set(int(n))
		return true
	case s.Cloth.Known && s.Depth.Known:
		more := s.Cloth.Is - s.Finished.Is
		if more <= 0 {
			return false
		}
		n := nearest(more, s.folds*s.Depth.Is)
		s.changed(p, &s.Depth, "depth", more/s.folds, n)
		s.Pleats.set(int(n))
		return true
	}
	return false
}

func (s *pleating) changed(p *Paper, l *Length, name string, of, n quantity.Length) {
	if n*l.Is != of {
		was := l.Is
		l.set(of / n)
		p.caution("%s does not come out in whole pleats: with %d pleats %s becomes %s instead of %s", name, n, name, p.exact(l.Is), p.exact(was))
	}
}

// byCloth finds as many whole pleats as the cloth holds.
func (s *pleating) byCloth(p *Paper) bool {
	if s.Finished.Known || !s.Cloth.Known || !s.Shown.Known || !s.Depth.Known {
		switch {
		case s.Finished.Known && s.Cloth.Known && s.Cloth.Is <= s.Finished.Is:
			p.fault("cloth", "the cloth is not wider than the finished edge, so nothing is left for pleats")
		default:
			p.wants("the pleats cannot be told by this alone", s.unknown()...)
		}
		return false
	}
	each := s.Shown.Is + s.folds*s.Depth.Is
	n := s.Cloth.Is / each
	if n == 0 {
		p.fault("cloth", "one pleat takes %s of cloth", p.exact(each))
		return false
	}
	s.Pleats.set(int(n))
	if s.over = s.Cloth.Is - n*each; s.over > 0 {
		p.caution("%s of the cloth is over", p.exact(s.over))
	}
	return true
}

func (s *pleating) unknown() []string {
	var names []string
	for _, in := range s.inputs("") {
		if !in.Into.given() {
			names = append(names, in.Name)
		}
	}
	return names
}

// nearest returns a ÷ b to the nearest whole number, one at least.
func nearest(a, b quantity.Length) quantity.Length { return max(1, (2*a+b)/(2*b)) }

// agree checks a figure that was given against what the others make, with so much
// play as the trade's fractions have on each of n things.
func (p *Paper) agree(input string, is, makes, n quantity.Length, format string, args ...any) bool {
	if off := is - makes; max(off, -off) > n*p.f.Finer().Step() {
		p.fault(input, "%s make %s, not %s", fmt.Sprintf(format, args...), p.exact(makes), p.exact(is))
		return false
	}
	return true
}

// answers writes what all flat pleats have in common.
func (s *pleating) answers(p *Paper, layers int, t *Thickness, w *Widths) {
	n := s.Pleats.Is
	p.line("finished = pleats × shown", p.exact(s.Finished.Is), "%d × %s", n, p.exact(s.Shown.Is))
	p.line(fmt.Sprintf("cloth = finished + %d × pleats × depth", s.folds), p.exact(s.Cloth.Is-s.over),
		"%s + %d × %d × %s", p.exact(s.Finished.Is), s.folds, n, p.exact(s.Depth.Is))
	p.say("finished", s.Finished.Is)
	p.say("cloth", s.Cloth.Is)
	p.count("pleats", n)
	p.say("shown", s.Shown.Is)
	p.say("depth", s.Depth.Is)
	p.say("each pleat takes", s.Shown.Is+s.folds*s.Depth.Is)
	ratio := float64(s.Cloth.Is) / float64(s.Finished.Is)
	p.number("cloth to finished", ratio, plainNumber(ratio)+" to 1")
	p.count("layers at the thickest", layers)
	if one, ok := t.of(p); ok {
		p.bulk(layers, one)
	}
	p.cut("cut the cloth %s wide, and add the turnings at both ends", p.trade(s.Cloth.Is))
	w.pieces(p, s.Cloth.Is)
}
