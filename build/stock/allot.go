package stock

import (
	"slices"

	"hussif/build/fit"
	"hussif/content/journal"
	"hussif/content/quantity"
)

// An Allotment is what each of several builds gets out of the stash, and is short of.
type Allotment struct{ lacks map[journal.ID][]Lack }

// A Lack is a material that a build is short of, or of which that cannot be told.
type Lack struct {
	Material journal.ID
	Need     quantity.Amount // in all
	Used     quantity.Amount // by the build's own notes
	OnHand   quantity.Amount // of the same kind, before any build's claim; Nothing where none ever was
	AtMost   bool            // whether OnHand may be less
	Claims   []Claim         // of the builds before this one
	Short    quantity.Amount // Nothing where it cannot be told
	Unsure   Unsure
	Pieces   []Piece // left, and not counted
	Doubts   []Fault // of the material's ledger
}

// A Claim is what a build gets of a material.
type Claim struct {
	Build  journal.ID
	Amount quantity.Amount
}

// Unsure says why a shortage cannot be told; zero where it can.
type Unsure int

// The reasons.
const (
	UnlikeStash Unsure = iota + 1 // what is on hand is of another kind than the need
	UnlikeUse                     // what the build used is of another kind than its need
	NoPurchase                    // some was used, and none is written down as bought
	NoNeed                        // the build names the material and no amount
)

// Allot gives each build what it still needs, in the order of the builds: the first
// is served first. So builds should come by the date of their next occasion, and
// only those planned or under way, for a finished garment needs nothing more.
//
// What a build still needs is its need less what its own notes used, never below
// nothing. Builds that can get only part get that part.
func Allot(j *journal.Journal, s Stash, builds []*journal.Build) Allotment {
	a := allotter{j, s, make(map[claimed][]Claim), make(map[fit.Reason]int)}
	out := Allotment{make(map[journal.ID][]Lack, len(builds))}
	for _, b := range builds {
		for _, n := range a.needs(b) {
			if l, short := a.serve(b, n); short {
				out.lacks[b.ID] = append(out.lacks[b.ID], l)
			}
		}
	}
	return out
}

// Of returns what a build lacks, in the order of its needs.
func (a Allotment) Of(build journal.ID) []Lack { return a.lacks[build] }

type allotter struct {
	journal *journal.Journal
	stash   Stash
	claims  map[claimed][]Claim
	pieces  map[fit.Reason]int // claimed of each left-over piece
}

// A claimed is what builds compete for: one kind of amount of one material.
type claimed struct {
	material journal.ID
	kind     kind
}

// needs returns what a build needs, each kind of each material once.
func (a allotter) needs(b *journal.Build) []Lack {
	var out []Lack
	for i := range b.Needs {
		m := a.journal.Material(b.Needs[i].Material)
		if m == nil {
			continue
		}
		need := b.Needs[i].Amount
		at := slices.IndexFunc(out, func(l Lack) bool {
			return l.Material == m.ID && kindOf(l.Need) == kindOf(need) && need.Kind != quantity.ByPiece
		})
		if at < 0 {
			out = append(out, Lack{Material: m.ID, Need: need})
		} else if sum, err := out[at].Need.Add(need); err == nil {
			out[at].Need = sum
		}
	}
	return out
}

// serve claims what a build gets and reports whether that leaves it short.
func (a allotter) serve(b *journal.Build, l Lack) (Lack, bool) {
	sheet, _ := a.stash.Of(l.Material)
	l.Pieces, l.Doubts = sheet.Left(), sheet.Faults
	switch l.Need.Kind {
	case quantity.Nothing:
		l.Unsure = NoNeed
		return l, true
	case quantity.ByPiece:
		return a.servePiece(b, l, sheet)
	}
	var otherwise bool
	l.Used, otherwise = sheet.used(b.ID, kindOf(l.Need))
	rest, err := l.Need.Sub(l.Used)
	if err == nil && none(rest) {
		return l, false
	}
	held, _ := sheet.held(l.Need)
	if held.Known {
		l.OnHand, l.AtMost = held.OnHand, held.AtMost
	}
	key := claimed{l.Material, kindOf(l.Need)}
	l.Claims = slices.Clone(a.claims[key])
	free := l.OnHand
	for _, c := range l.Claims {
		free, _ = free.Sub(c.Amount)
	}
	l.Short = rest
	if !none(free) {
		l.Short, _ = rest.Sub(free)
	}
	got := rest
	if !none(l.Short) {
		got = free
	}
	if !none(got) {
		a.claims[key] = append(a.claims[key], Claim{b.ID, got})
	}
	switch {
	case none(l.Short):
		l.Short = kindOf(l.Need).zero()
		return l, l.AtMost
	case otherwise || err != nil:
		l.Unsure, l.Short = UnlikeUse, quantity.Amount{}
	case !held.Known && onHandOtherwise(sheet):
		l.Unsure, l.Short = UnlikeStash, quantity.Amount{}
	case !held.Known && len(sheet.Builds) > 0:
		l.Unsure, l.Short = NoPurchase, quantity.Amount{}
	}
	return l, true
}

// onHandOtherwise reports whether a material of which none of the kind asked for is
// on hand is there in another kind, or in pieces.
func onHandOtherwise(s Sheet) bool { return s.any() || len(s.Left()) > 0 }

// servePiece serves a need of a piece of a size. A piece as large will do; whether one
// can be cut from a length is for the cutter to say.
func (a allotter) servePiece(b *journal.Build, l Lack, s Sheet) (Lack, bool) {
	for i := range s.Rows {
		if r := &s.Rows[i]; r.Way == Used && r.Build == b.ID && r.sized() && sameSize(r.Size, l.Need.Size) {
			return l, false
		}
	}
	for _, p := range l.Pieces {
		if holds(p.Size, l.Need.Size) && a.pieces[p.From] < p.Left() {
			a.pieces[p.From]++
			return l, false
		}
	}
	if s.any() {
		l.Unsure = UnlikeStash
		return l, true
	}
	l.Short = l.Need
	return l, true
}

// holds reports whether one size can be cut from another, either way round.
func holds(large, small quantity.Size) bool {
	return large.Width >= small.Width && large.Length >= small.Length ||
		large.Width >= small.Length && large.Length >= small.Width
}
