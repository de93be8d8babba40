package panel

import "hussif/content/quantity"

// Words says what more of a piece would do, the least first: "1 in more length would
// do, or 12 in more width".
func (l Lack) Words(f quantity.Format) string {
	wider, longer := f.Length(l.Wider)+" more width", f.Length(l.Longer)+" more length"
	switch {
	case l.Wider > 0 && l.Longer > 0 && l.Wider < l.Longer:
		return wider + " would do, or " + longer
	case l.Wider > 0 && l.Longer > 0:
		return longer + " would do, or " + wider
	case l.Wider > 0:
		return wider + " would do"
	case l.Longer > 0:
		return longer + " would do"
	}
	return f.Size(l.Both) + " more, across and along, would do"
}
