package panel

import (
	"math"
	"slices"
)

// furthest returns, from top to foot, the line of what lies furthest right at
// each height.
func furthest(parts []stretch, top, foot float64) []vec {
	heights := []float64{top, foot}
	for _, p := range parts {
		heights = append(heights, p.top.y, p.foot.y)
	}
	slices.Sort(heights)
	var line []vec
	for i := 1; i < len(heights); i++ {
		above, below := max(heights[i-1], top), min(heights[i], foot)
		if below > above {
			line = append(line, within(parts, above, below)...)
		}
	}
	return straightened(line)
}

// within does so between two heights, between which no part begins or ends.
func within(parts []stretch, above, below float64) []vec {
	var there []stretch
	for _, p := range parts {
		if p.top.y <= above && p.foot.y >= below {
			there = append(there, p)
		}
	}
	if len(there) == 0 {
		return nil
	}
	var line []vec
	y := above
	best := there[0]
	for _, p := range there[1:] {
		if x, b := p.at(y), best.at(y); x > b || x == b && p.at(below) > best.at(below) {
			best = p
		}
	}
	line = append(line, vec{best.at(y), y})
	for range there {
		cross, next := below, best
		for _, p := range there {
			if at := crossing(best, p, y, below); at < cross {
				cross, next = at, p
			}
		}
		if next == best {
			break
		}
		y, best = cross, next
		line = append(line, vec{best.at(y), y})
	}
	return append(line, vec{best.at(below), below})
}

// crossing returns the height between two others at which p comes to lie outside
// best; below where it does not.
func crossing(best, p stretch, above, below float64) float64 {
	lead, behind := best.at(above)-p.at(above), p.at(below)-best.at(below)
	if p == best || behind <= 0 || lead < 0 {
		return below
	}
	return above + (below-above)*lead/(lead+behind)
}

// straightened leaves out the points at which a line does not bend by as much as
// half a nanometre.
func straightened(line []vec) []vec {
	const least = 0.5
	var kept []vec
	for i, p := range line {
		if i > 0 && i < len(line)-1 && len(kept) > 0 {
			a, b := kept[len(kept)-1], line[i+1]
			if d := b.from(a); math.Abs(d.cross(p.from(a))) < least*math.Hypot(d.x, d.y) {
				continue
			}
			if p == a {
				continue
			}
		}
		kept = append(kept, p)
	}
	return kept
}
