package wayin

import (
	"fmt"
	"slices"
	"strings"

	"hussif/content/journal"
	"hussif/content/near"
)

// A Fault is something for which no way in, or not the whole of it, can be told.
type Fault struct {
	Kind  FaultKind
	Word  journal.Word // what the fault is about, where it is written
	Round []string     // of a Circle: the seams, the first again at the end
}

// A FaultKind is what is wrong.
type FaultKind int

// Kinds of fault.
const (
	Circle        FaultKind = iota + 1 // seams are said to catch each other in a circle
	UnknownSeam                        // asked for or said to catch another, but not listed
	UnknownPiece                       // joined by a seam, but not listed
	UnjoinedPiece                      // listed, but joined by no seam
)

// Text says the fault: "each of these is said to be sewn later than the one
// before: side, armhole, side".
func (f Fault) Text() string {
	switch f.Kind {
	case Circle:
		return "each of these is said to be sewn later than the one before: " + strings.Join(f.Round, ", ")
	case UnknownSeam:
		return fmt.Sprintf("no seam is called %q", f.Word.Text)
	case UnknownPiece:
		return fmt.Sprintf("no piece is called %q", f.Word.Text)
	case UnjoinedPiece:
		return fmt.Sprintf("no seam joins the piece %q", f.Word.Text)
	}
	return ""
}

// findCircles reports, for each set of seams that catch each other, one shortest
// circle through the first of them by name.
func (g *Garment) findCircles() {
	told := make([]bool, len(g.seams))
	for _, first := range g.byName() {
		if told[first] {
			continue
		}
		from := g.reached(first)
		if from[first] < 0 {
			continue
		}
		for i := range told {
			told[i] = told[i] || from[i] >= 0 && g.reached(i)[first] >= 0
		}
		round := []string{g.name(first)}
		second := first
		for i := from[first]; i != first; i = from[i] {
			round = append(round, g.name(i))
			second = i
		}
		round = append(round, g.name(first))
		slices.Reverse(round)
		caught := g.seams[first].caught
		k := slices.IndexFunc(caught, func(c catch) bool { return c.by == second })
		g.faults = append(g.faults, Fault{Circle, caught[k].said, round})
	}
}

// reached returns, for each seam that catches another one or catches what does,
// the seam before it on a shortest way there; -1 where there is no way.
func (g *Garment) reached(start int) []int {
	from := make([]int, len(g.seams))
	for i := range from {
		from[i] = -1
	}
	for queue := []int{start}; len(queue) > 0; queue = queue[1:] {
		for _, c := range g.seams[queue[0]].caught {
			if from[c.by] < 0 {
				from[c.by] = queue[0]
				queue = append(queue, c.by)
			}
		}
	}
	return from
}

// findPieces compares the pieces that seams join with those that are listed. A
// build that lists no pieces, or whose seams join none, is asked nothing: its
// maker has not come to that yet.
func (g *Garment) findPieces() {
	joined := make(map[string]bool)
	for i := range g.build.Seams {
		for _, w := range g.build.Seams[i].Joins {
			joined[near.Folded(w.Text)] = true
			if len(g.build.Pieces) > 0 && g.piece(w.Text) == nil {
				g.faults = append(g.faults, Fault{Kind: UnknownPiece, Word: w})
			}
		}
	}
	for i := range g.build.Pieces {
		if name := g.build.Pieces[i].Name; len(joined) > 0 && !joined[near.Folded(name.Text)] {
			g.faults = append(g.faults, Fault{Kind: UnjoinedPiece, Word: name})
		}
	}
}

// piece returns the piece of that name, or nil.
func (g *Garment) piece(name string) *journal.Piece {
	for i := range g.build.Pieces {
		if near.Folded(g.build.Pieces[i].Name.Text) == near.Folded(name) {
			return &g.build.Pieces[i]
		}
	}
	return nil
}
