package wayin

import (
	"slices"
	"strings"
	"unicode"

	"hussif/content/journal"
	"hussif/content/near"
	"hussif/content/quantity"
)

// Loose is a piece that comes off.
type Loose struct {
	Name     string
	Piece    *journal.Piece // nil where the build does not list it
	Recorded []Mark
	Missing  []Mark // to be marked before the first stitch is cut
}

// A Mark is what must be told of a loose piece to put it back as it was.
type Mark int

// Marks.
const (
	FrontEdge Mark = iota + 1 // which edge faces the front
	RightSide                 // which side of the cloth is the right one
	BodySide                  // which side of the body it is of, where several were cut
)

func (m Mark) String() string {
	switch m {
	case FrontEdge:
		return "which edge faces the front"
	case RightSide:
		return "which side of the cloth is the right one"
	case BodySide:
		return "which side of the body it is of"
	}
	return ""
}

// loose returns the pieces that come off, in the order in which the build lists
// them. What no seam held before does not come loose.
func (g *Garment) loose(state []opened) []Loose {
	names := g.pieceNames()
	before := g.parts(names, func(int) bool { return true })
	after := g.parts(names, func(i int) bool { return state[i].how != whole })
	stays := g.stays(names, before, after, state)
	var out []Loose
	for k, name := range names {
		if stays[before[k]] != after[k] {
			out = append(out, g.marks(name))
		}
	}
	return out
}

// pieceNames returns the listed pieces, then those that only seams name.
func (g *Garment) pieceNames() []string {
	var names []string
	add := func(name string) {
		if !slices.ContainsFunc(names, func(known string) bool { return near.Folded(known) == near.Folded(name) }) {
			names = append(names, name)
		}
	}
	for i := range g.build.Pieces {
		add(g.build.Pieces[i].Name.Text)
	}
	for i := range g.build.Seams {
		for _, w := range g.build.Seams[i].Joins {
			add(w.Text)
		}
	}
	return names
}

// parts returns for each piece the first of all that the seams hold it together
// with.
func (g *Garment) parts(names []string, sewn func(int) bool) []int {
	part := make([]int, len(names))
	for k := range part {
		part[k] = k
	}
	for i := range g.build.Seams {
		if !sewn(i) {
			continue
		}
		joins := g.joined(names, i)
		for _, k := range joins {
			a, b := part[joins[0]], part[k]
			for n := range part {
				if part[n] == a || part[n] == b {
					part[n] = min(a, b)
				}
			}
		}
	}
	return part
}

// joined returns the places of the pieces that a seam joins.
func (g *Garment) joined(names []string, i int) []int {
	var joins []int
	for _, w := range g.build.Seams[i].Joins {
		joins = append(joins, slices.IndexFunc(names, func(name string) bool { return near.Folded(name) == near.Folded(w.Text) }))
	}
	return joins
}

// stays returns for each part of the whole garment which of what it falls into
// the rest comes loose from: that with the most sewn length, then with the most
// pieces, then the first listed. Two sleeves are two parts and not one of twice
// the length.
func (g *Garment) stays(names []string, before, after []int, state []opened) map[int]int {
	sewn := make(map[int]quantity.Length)
	size := make(map[int]int)
	equal := make(map[int]int) // how many of the part there are
	for k, part := range after {
		cut := 1
		if p := g.piece(names[k]); p != nil {
			cut = max(p.Cut, 1)
		}
		if size[part]++; size[part] == 1 || cut < equal[part] {
			equal[part] = cut
		}
	}
	for i := range g.seams {
		joins := g.joined(names, i)
		if len(joins) == 0 || state[i].how == whole {
			continue
		}
		part := after[joins[0]]
		sewn[part] += g.seams[i].length
		if count(&g.build.Seams[i])%equal[part] != 0 {
			equal[part] = 1 // it joins the left to the right
		}
	}
	for part, n := range equal {
		sewn[part] /= quantity.Length(n)
	}
	stays := make(map[int]int)
	for k, part := range after {
		best, ok := stays[before[k]]
		if !ok || sewn[part] > sewn[best] || sewn[part] == sewn[best] && size[part] > size[best] {
			stays[before[k]] = part
		}
	}
	return stays
}

// marks tells what is recorded of a piece. Marks in words count for what they
// name: an edge at the front or back, a side of the cloth, or left and right.
func (g *Garment) marks(name string) Loose {
	l := Loose{Name: name, Piece: g.piece(name)}
	var told [BodySide + 1]bool
	wanted := []Mark{FrontEdge, RightSide}
	if p := l.Piece; p != nil {
		told[FrontEdge] = p.Front != ""
		told[RightSide] = p.RightSide != ""
		for _, words := range p.Marks {
			read(words, &told)
		}
		if p.Cut > 1 {
			wanted = append(wanted, BodySide)
		}
	}
	for _, m := range wanted {
		if told[m] {
			l.Recorded = append(l.Recorded, m)
		} else {
			l.Missing = append(l.Missing, m)
		}
	}
	return l
}

// read notes what a mark in words tells. "Right" is a side of the body unless
// "side" comes after it, which is the cloth's.
func read(mark string, told *[BodySide + 1]bool) {
	words := strings.FieldsFunc(mark, func(r rune) bool { return !unicode.IsLetter(r) })
	for i, word := range words {
		ofCloth := i+1 < len(words) && strings.EqualFold(words[i+1], "side")
		switch strings.ToLower(word) {
		case "front", "back":
			told[FrontEdge] = true
		case "wrong", "face", "reverse":
			told[RightSide] = true
		case "left":
			told[BodySide] = true
		case "right":
			if ofCloth {
				told[RightSide] = true
			} else {
				told[BodySide] = true
			}
		}
		if word == "L" || word == "R" {
			told[BodySide] = true
		}
	}
}
