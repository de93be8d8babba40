package panel

import "hussif/content/quantity"

// A row is a way to lay panels: along one direction of the piece, each as near
// to the one before as the two allow, and row beside row by their bounding
// rectangles. Its outlines begin at 0 in both directions.
type row struct {
	turn   [2]int             // of the first panel and of every other one
	corner [2]Point           // of each before it was brought to 0
	step   [2]quantity.Length // from a first panel to the next, and from that on
	one    quantity.Size      // what one panel takes
	down   bool               // along the piece's length instead of its width
	stairs bool               // each panel also lies a step lower; one row only
}

// rowsOf returns the rows that are tried, in a fixed order.
func rowsOf(cut []Point, turns []int, oneWay bool) []row {
	var rows []row
	for _, turn := range turns {
		for _, back := range []int{0, 180} {
			if back > 0 && oneWay {
				continue
			}
			pair := [2]int{turn, (turn + back) % 360}
			rows = append(rows, newRow(cut, pair, false), newRow(cut, pair, true))
			if turn == 45 && back == 0 {
				rows = append(rows, stairs(cut, pair))
			}
		}
	}
	return rows
}

func newRow(cut []Point, turn [2]int, down bool) row {
	r := row{turn: turn, down: down}
	var outlines [2][]Point
	for i := range turn {
		outline := (Placement{Turn: turn[i]}).Put(cut)
		r.corner[i] = least(outline)
		r.one = size(outline)
		outlines[i] = (Placement{At: Point{-r.corner[i].X, -r.corner[i].Y}}).Put(outline)
		if down {
			outlines[i] = swapped(outlines[i])
		}
	}
	if down {
		r.one = swappedSize(r.one)
	}
	r.step = [2]quantity.Length{apart(outlines[0], outlines[1]), apart(outlines[1], outlines[0])}
	return r
}

// stairs returns the row in which panels on the bias lie side by side, square to
// their own grain lines.
func stairs(cut []Point, turn [2]int) row {
	r := newRow(cut, turn, false)
	r.stairs = true
	// sqrt(1/2) of the width each way, and so much more that rounding cannot close it.
	side := float64(size(cut).Width)
	step := quantity.Length(side*0.70710678118654757) + 2
	r.step = [2]quantity.Length{step, step}
	return r
}

// start returns how far along its row a panel begins.
func (r row) start(i int) quantity.Length {
	pairs := quantity.Length(i / 2)
	return pairs*(r.step[0]+r.step[1]) + quantity.Length(i%2)*r.step[0]
}

// takes returns what a number of full rows of so many panels take, first along
// the row.
func (r row) takes(inRow, rows int) quantity.Size {
	along := r.start(inRow - 1)
	s := quantity.Size{Width: r.one.Width + along, Length: r.one.Length * quantity.Length(rows)}
	if r.stairs {
		s.Length += along
	}
	return s
}

// needs returns the sizes of the pieces that just hold n panels, in fewer and
// fewer rows.
func (r row) needs(n int) []quantity.Size {
	var sizes []quantity.Size
	for inRow := 1; inRow <= n; inRow++ {
		rows := (n + inRow - 1) / inRow
		if r.stairs && rows > 1 {
			continue
		}
		sizes = append(sizes, r.inPiece(r.takes(inRow, rows)))
	}
	return sizes
}

func (r row) inPiece(s quantity.Size) quantity.Size {
	if r.down {
		return swappedSize(s)
	}
	return s
}

// fill places n panels, taking the least cloth of the ways to break them into
// rows, and reports whether the piece has room for them.
func (r row) fill(n int, piece quantity.Size) (placements []Placement, used quantity.Size, ok bool) {
	inRow := 0
	for k := 1; k <= n; k++ {
		rows := (n + k - 1) / k
		if r.stairs && rows > 1 {
			continue
		}
		takes := r.inPiece(r.takes(k, rows))
		if takes.Width > piece.Width || takes.Length > piece.Length {
			continue
		}
		if inRow == 0 || smaller(takes, used) {
			inRow, used = k, takes
		}
	}
	if inRow == 0 {
		return nil, used, false
	}
	for i := range n {
		placements = append(placements, r.place(i, inRow))
	}
	return placements, used, true
}

// place returns where the i-th panel lies.
func (r row) place(i, inRow int) Placement {
	along := r.start(i % inRow)
	at := Point{X: along, Y: r.one.Length * quantity.Length(i/inRow)}
	if r.stairs {
		at.Y = along
	}
	if r.down {
		at.X, at.Y = at.Y, at.X
	}
	which := i % inRow % 2
	at.X -= r.corner[which].X
	at.Y -= r.corner[which].Y
	return Placement{At: at, Turn: r.turn[which], Flipped: i%2 == 1}
}
