package room

import (
	"fmt"

	"hussif/content/quantity"
)

// Why says why an option stands before the next: "opens 17 in less"; "" for the
// last one.
func (p Plan) Why(option int, f quantity.Format) string {
	if option+1 >= len(p.Options) {
		return ""
	}
	a, b := p.Options[option], p.Options[option+1]
	saved := b.Way.Opening.For + b.Way.Sewing.For - a.Way.Opening.For - a.Way.Sewing.For
	shorter := b.Way.Length - a.Way.Length
	fewer := b.count() - a.count()
	switch {
	case p.ByHours && saved > 0:
		return "takes " + quantity.FormatDuration(saved) + " less"
	case !p.ByHours && shorter > 0 && f.Length(shorter) == f.Length(0):
		return "opens less by a hair"
	case !p.ByHours && shorter > 0:
		return "opens " + f.Length(shorter) + " less"
	case fewer == 1:
		return "opens one seam less"
	case fewer > 1:
		return fmt.Sprintf("opens %d seams less", fewer)
	case a.Largest < b.Largest:
		return "changes no edge by more than " + f.Length(a.Largest) + ", the next one by " + f.Length(b.Largest)
	}
	return "comes first by name"
}

// Words says what is too steep: "side seam: 1/2 in between bust girth and natural
// waist girth, which are 2 in apart; 1 in 8 lies flat".
func (b Blend) Words(f quantity.Format) string {
	return fmt.Sprintf("%s seam: %s between %s and %s, which are %s apart; 1 in %d lies flat",
		b.Seam, f.Length(b.By), b.From, b.To, f.Length(b.Over), Slope)
}
