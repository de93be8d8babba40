package panel

import (
	"fmt"
	"slices"

	"hussif/content/quantity"
)

// A Layout says where panels lie on a left-over piece, or what the piece lacks.
type Layout struct {
	// Found reports that all panels lie on the asked grain, checked for overlap
	// and for the piece's edges.
	Found bool
	// Placements has one for each panel, in the piece's own directions: X along
	// its width and Y along its length, from one corner.
	Placements []Placement
	// Used is what the placements take of the piece.
	Used quantity.Size
	// GrainUnknown reports that the grain of the piece was not given although one
	// is asked for. Nothing is Found then; what Placements there are suppose that
	// its length is on the straight grain.
	GrainUnknown bool
	// Lacks is what would help where there are no placements.
	Lacks Lack
}

// A Lack is by how much a piece would have to be larger for the layouts that
// were tried.
type Lack struct {
	Wider  quantity.Length // this alone would do; 0 where no width would
	Longer quantity.Length // this alone would do; 0 where no length would
	Both   quantity.Size   // this much in each direction, where neither alone would do
}

// A Placement is where one panel lies. The panel's origin, which is its grain
// line at level 0, lies at At, turned clockwise by Turn degrees: at 0 its upper
// end points to the piece's Y 0.
//
// The panels of a pair are mirror images, so every second one is Flipped. As a
// panel is symmetric this does not change its outline: it says which face of the
// cloth is the right side.
type Placement struct {
	At      Point
	Turn    int
	Flipped bool
}

// LayOut places n panels on a piece with their grain lines on the asked grain.
// Where the cloth has a nap or a print that runs one way, all panels point the
// same way. The same question always has the same answer, and a larger piece
// never loses what a smaller one holds. It fails with an [*Error] where n or the piece
// is nothing or beyond all use.
func LayOut(s Shape, n int, piece Piece, grain Grain, oneWay bool) (Layout, error) {
	if err := refusePiece(n, piece.Size); err != nil {
		return Layout{}, err
	}
	layout := Layout{GrainUnknown: piece.Grain == UnknownGrain && grain != UnknownGrain}
	if len(s.Cut) == 0 {
		return layout, nil
	}
	rows := rowsOf(s.Cut, turns(piece.Grain, grain), oneWay)
	for _, row := range rows {
		placements, used, ok := row.fill(n, piece.Size)
		if !ok || layout.Placements != nil && !smaller(used, layout.Used) {
			continue
		}
		if sound(s.Cut, placements, piece.Size) {
			layout.Placements, layout.Used = placements, used
		}
	}
	if layout.Placements == nil {
		layout.Lacks = lack(rows, n, piece.Size)
	}
	layout.Found = layout.Placements != nil && !layout.GrainUnknown
	return layout, nil
}

func refusePiece(n int, size quantity.Size) error {
	switch {
	case n < 1:
		return &Error{Field: "pieces", Reason: "one panel or more can be cut"}
	case n > mostPieces:
		return &Error{Field: "pieces", Reason: fmt.Sprintf("at most %d panels are laid out at once", mostPieces)}
	case size.Width <= 0 || size.Width > longestCloth:
		return &Error{Field: "piece width", Reason: "a piece is wider than nothing, up to 1 km"}
	case size.Length <= 0 || size.Length > longestCloth:
		return &Error{Field: "piece length", Reason: "a piece is longer than nothing, up to 1 km"}
	}
	return nil
}

// smaller reports whether a takes less cloth than b.
func smaller(a, b quantity.Size) bool {
	return float64(a.Width)*float64(a.Length) < float64(b.Width)*float64(b.Length)
}

// lack returns the least enlargements by which one of the rows would hold n.
func lack(rows []row, n int, size quantity.Size) Lack {
	var l Lack
	for _, row := range rows {
		for _, need := range row.needs(n) {
			wider, longer := max(0, need.Width-size.Width), max(0, need.Length-size.Length)
			switch {
			case longer == 0 && (l.Wider == 0 || wider < l.Wider):
				l.Wider = wider
			case wider == 0 && (l.Longer == 0 || longer < l.Longer):
				l.Longer = longer
			case longer > 0 && wider > 0 && (l.Both == quantity.Size{} || wider+longer < l.Both.Width+l.Both.Length):
				l.Both = quantity.Size{Width: wider, Length: longer}
			}
		}
	}
	if l.Wider > 0 || l.Longer > 0 {
		l.Both = quantity.Size{}
	}
	return l
}

// sound checks placements against the piece and one another.
func sound(cut []Point, placements []Placement, size quantity.Size) bool {
	outlines := make([][]Point, len(placements))
	for i, p := range placements {
		outlines[i] = p.Put(cut)
		inside := func(q Point) bool {
			return q.X >= -touching && q.Y >= -touching && q.X <= size.Width+touching && q.Y <= size.Length+touching
		}
		if slices.ContainsFunc(outlines[i], func(q Point) bool { return !inside(q) }) {
			return false
		}
		for _, other := range outlines[:i] {
			if overlap(other, outlines[i]) {
				return false
			}
		}
	}
	return true
}
