package stock

import (
	"fmt"
	"strings"

	"hussif/content/quantity"
)

// Words says how much is on hand: "1/4 yd", "at most 9 in", "0 in, and
// 18 in more used than there was", "not known: none is written down as bought, and 2 reels
// as used".
func (h Held) Words(f quantity.Format) string {
	switch {
	case !h.Known:
		return fmt.Sprintf("not known: none is written down as bought, and %s as used", f.Amount(h.Used))
	case negative(h.OnHand):
		over, _ := h.kind.zero().Sub(h.OnHand)
		return fmt.Sprintf("%s, and %s more used than there was", f.Amount(h.kind.zero()), f.Amount(over))
	case h.AtMost:
		return "at most " + f.Amount(h.OnHand)
	}
	return f.Amount(h.OnHand)
}

// SumWords says what the figure on hand is made of: "bought 3 yd, used 2 3/4 yd".
func (h Held) SumWords(f quantity.Format) string {
	said := []string{"bought " + f.Amount(h.Bought)}
	if !none(h.Back) {
		said = append(said, "come back "+f.Amount(h.Back))
	}
	said = append(said, "used "+f.Amount(h.Used))
	if !none(h.Cut) {
		said = append(said, "cut from left-over pieces "+f.Amount(h.Cut))
	}
	return strings.Join(said, ", ")
}

// Words says what a piece is: "2 pieces, 6 × 38 in, straight grain", with how many are
// left where some were used.
func (p Piece) Words(f quantity.Format) string {
	words := f.Size(p.Size)
	if p.Count > 1 {
		words = fmt.Sprintf("%d pieces, %s", p.Count, words)
	}
	if p.Grain != "" {
		words += ", " + p.Grain
		if !strings.Contains(strings.ToLower(p.Grain), "grain") {
			words += " grain"
		}
	}
	switch left := p.Left(); {
	case left == 0:
		words += ", used since"
	case left < p.Count:
		words += fmt.Sprintf(", %d of them left", left)
	}
	return words
}

// Words says what is short and what that rests on: "4 yd short: needs 14 yd, 6 1/2 yd
// used, 3 1/2 yd on hand".
func (l Lack) Words(f quantity.Format) string {
	if l.Unsure == NoNeed {
		return "how much is needed is not said"
	}
	said := []string{"needs " + f.Amount(l.Need)}
	if !none(l.Used) {
		said = append(said, f.Amount(l.Used)+" used")
	}
	said = append(said, l.onHand(f))
	for _, c := range l.Claims {
		said = append(said, fmt.Sprintf("%s of it for %s", f.Amount(c.Amount), c.Build.Name()))
	}
	words := l.verdict(f) + ": " + strings.Join(said, ", ")
	if len(l.Pieces) > 0 {
		var pieces []string
		for _, p := range l.Pieces {
			pieces = append(pieces, p.Words(f))
		}
		words += "; left over, and not counted: " + strings.Join(pieces, "; ")
	}
	for _, d := range l.Doubts {
		if d.Why != NoSuchPiece && d.Why != NeverBought {
			return words + "; but " + d.Words(f)
		}
	}
	return words
}

func (l Lack) verdict(f quantity.Format) string {
	switch {
	case l.Unsure != 0:
		return "whether enough is there cannot be told"
	case l.Need.Kind == quantity.ByPiece:
		return "short"
	case none(l.Short):
		return "perhaps short"
	case l.AtMost:
		return "at least " + f.Amount(l.Short) + " short"
	}
	return f.Amount(l.Short) + " short"
}

func (l Lack) onHand(f quantity.Format) string {
	switch {
	case l.Unsure == UnlikeUse:
		return "and what was used for it is written another way"
	case l.Unsure == UnlikeStash:
		return "and what is on hand is counted another way"
	case l.Unsure == NoPurchase:
		return "and it was used before, but none is written down as bought"
	case l.Need.Kind == quantity.ByPiece:
		return "and no piece so large is left that is for no other build"
	case l.OnHand.Kind == quantity.Nothing:
		return "none is written down as bought"
	case none(l.OnHand):
		return "none on hand"
	case l.AtMost:
		return "at most " + f.Amount(l.OnHand) + " on hand"
	}
	return f.Amount(l.OnHand) + " on hand"
}

// Words says what is wrong, and what could be written.
func (t Fault) Words(f quantity.Format) string {
	words := t.said(f)
	if t.Lot != "" {
		words += fmt.Sprintf(" (lot %q)", t.Lot)
	}
	return words
}

func (t Fault) said(f quantity.Format) string {
	amount := f.Amount(t.Amount)
	switch t.Why {
	case MoreThanBought:
		return amount + " more used than was ever bought"
	case BeforeBought:
		return amount + " more used by this day than was bought by then"
	case NeverBought:
		return amount + " used, and none is written down as bought"
	case UnlikeKinds:
		if t.Book.Kind == quantity.ByPiece {
			return fmt.Sprintf("%s used, but what there was is a piece of %s, so what is left cannot be told", amount, f.Amount(t.Book))
		}
		return fmt.Sprintf("%s used, but %s bought, so what is left cannot be told", amount, f.Amount(t.Book))
	case UnknownLot:
		return amount + " used of a lot of which none is written down as bought"
	case NoSuchPiece:
		if t.Pieces > 1 {
			return fmt.Sprintf("%d pieces of %s used, but so many are not written down as left over", t.Pieces, f.Size(t.Size))
		}
		return fmt.Sprintf("a piece of %s used, but none is written down as left over", f.Size(t.Size))
	case CountDiffers:
		if c, err := t.Book.Compare(t.Amount); err == nil && c > 0 {
			rest, _ := t.Book.Sub(t.Amount)
			return fmt.Sprintf("%s left over, but bought less used makes %s: is a use of %s not written down?", amount, f.Amount(t.Book), f.Amount(rest))
		}
		return fmt.Sprintf("%s left over, but bought less used makes only %s", amount, f.Amount(t.Book))
	case NoAmount:
		return "how much it was is not said"
	case TooLarge:
		return amount + " is too much to be added to the rest"
	}
	return ""
}
