package panel

import "math"

// MitreLimit is how many allowances a mitred corner may reach beyond the
// finished corner before it is cut square.
const MitreLimit = 2

// A vec is a place or a direction in nanometres.
type vec struct{ x, y float64 }

func (v vec) plus(w vec) vec              { return vec{v.x + w.x, v.y + w.y} }
func (v vec) times(f float64) vec         { return vec{v.x * f, v.y * f} }
func (v vec) dot(w vec) float64           { return v.x*w.x + v.y*w.y }
func (v vec) cross(w vec) float64         { return v.x*w.y - v.y*w.x }
func (v vec) from(w vec) vec              { return vec{v.x - w.x, v.y - w.y} }
func (v vec) unit() vec                   { return v.times(1 / math.Hypot(v.x, v.y)) }
func (v vec) along(n vec, by float64) vec { return v.plus(n.times(by)) }

// A stretch is a straight part of an edge, from top to bottom.
type stretch struct{ top, foot vec }

func (s stretch) at(y float64) float64 {
	if y == s.foot.y {
		return s.foot.x
	}
	return s.top.x + (y-s.top.y)*(s.foot.x-s.top.x)/(s.foot.y-s.top.y)
}

// moved returns the right-hand side of the cutting outline, given the finished
// one. Each straight part is moved outwards and lengthened to its mitres where
// the corner points outwards; what lies furthest from the grain line at each
// height is the outline. So a part that is too short to show between two inward
// corners vanishes by itself.
func moved(edge []vec, allow Allowance) []vec {
	sides, last := float64(allow.Sides), len(edge)-1
	up, down := vec{0, -1}, vec{0, 1}
	normals := make([]vec, last)
	top, foot := edge[0].y-float64(allow.Top), edge[last].y+float64(allow.Foot)
	for i := range normals {
		d := edge[i+1].from(edge[i]).unit()
		normals[i] = vec{d.y, -d.x}
		top = min(top, edge[i].y+sides*normals[i].y)
		foot = max(foot, edge[i+1].y+sides*normals[i].y)
	}

	join := turn(edge[0], up, normals[0], float64(allow.Top), sides)
	var parts []stretch
	for i, n := range normals {
		parts = append(parts, between(join)...)
		start := join[len(join)-1]
		if i < last-1 {
			join = turn(edge[i+1], n, normals[i+1], sides, sides)
		} else {
			join = turn(edge[last], n, down, sides, float64(allow.Foot))
		}
		parts = append(parts, stretch{start, join[0]})
		if i < last-1 && inward(n, normals[i+1]) {
			join = join[1:]
		}
	}
	parts = append(parts, between(join)...)
	return furthest(parts, top, foot)
}

// flat is the sine of an angle too small to make a corner of.
const flat = 1e-9

// inward reports whether the outline turns inwards between two edges.
func inward(n, next vec) bool { return n.cross(next) < -flat }

// turn returns where an edge moved outwards by a ends and where the next, moved
// by b, begins, with n and next the directions outwards: one point, or two with a
// straight cut between them. At an inward corner both points lie beyond the
// crossing of the two.
func turn(corner, n, next vec, a, b float64) []vec {
	sin, cos := n.cross(next), n.dot(next)
	ends := []vec{corner.along(n, a), corner.along(next, b)}
	if math.Abs(sin) <= flat && a == b {
		return ends[:1]
	}
	// A mitre would take from the larger allowance what the smaller lacks.
	if sin < 0 || a < b*cos || b < a*cos {
		return ends
	}
	along, back := vec{-n.y, n.x}, vec{next.y, -next.x}
	mitre := ends[0].along(along, (b-a*cos)/sin)
	reach := max(a, b)
	if out := mitre.from(corner); math.Hypot(out.x, out.y) <= MitreLimit*reach {
		return []vec{mitre}
	}
	halfSin, halfCos := math.Sqrt((1-cos)/2), math.Sqrt((1+cos)/2)
	return []vec{
		ends[0].along(along, (reach-a*halfCos)/halfSin),
		ends[1].along(back, (reach-b*halfCos)/halfSin),
	}
}

// between returns the cut between the two points of a corner, if there is one
// that runs downwards.
func between(join []vec) []stretch {
	if len(join) < 2 || join[0].y >= join[1].y {
		return nil
	}
	return []stretch{{join[0], join[1]}}
}
