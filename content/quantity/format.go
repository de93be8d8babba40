package quantity

// A Format is how a journal shows its lengths. The zero value shows inches to
// 1/8.
//
// Every length is rounded once, to the nearest step, halves away from zero, and
// what rounds to nothing has no sign.
type Format struct {
	// Unit is Inches, Feet or Yards, shown in fractions, or Metres or
	// Centimetres, shown to the millimetre in decimals, or Millimetres. Any
	// other stands for Inches.
	Unit Unit
	// Fraction is the least part of an inch, foot or yard that is shown: 8 for
	// 1/8. It is a power of two up to 64; anything else stands for 8.
	Fraction int
}

// Finer returns the format for what is marked on one edge of a seam, where an
// eighth of an inch too much is half an inch round the body: sixteenths of an inch
// where the format is coarser, or millimetres.
func (f Format) Finer() Format {
	switch f.unit() {
	case Metres, Centimetres, Millimetres:
		return Format{Unit: Millimetres}
	}
	return Format{Unit: f.Unit, Fraction: max(int(f.steps()), 16)}
}

// Step returns the least length that is shown: 1/8 in, 1 mm.
func (f Format) Step() Length { return f.unit().Length() / Length(f.steps()) }

// Length writes a length with its unit: "37 1/2 in", "95.3 cm", "952 mm".
func (f Format) Length(l Length) string { return f.text(l, false, true) }

// Signed writes a length that is a change, with its sign even where that is a
// plus: "+3/4 in", "−1/4 in", "0 in".
func (f Format) Signed(l Length) string { return f.text(l, true, true) }

// Bare writes a length without its unit, for columns whose head names it.
func (f Format) Bare(l Length) string { return f.text(l, false, false) }

// Other writes a length in the other system: centimetres beside inches, inches
// beside millimetres.
func (f Format) Other(l Length) string { return f.other().Length(l) }

// Range writes both ends and the unit once, "0 to 1 in", or one length where
// both ends look the same.
func (f Format) Range(r Range) string {
	least, most := f.Bare(r.Least), f.Length(r.Most)
	if least == f.Bare(r.Most) {
		return most
	}
	return least + " to " + most
}

// Estimate writes a length that may be approximate or missing: "12 in", "about
// 12 in", "unknown", "not measured".
func (f Format) Estimate(e Estimate) string {
	switch e.State {
	case Unknown:
		return "unknown"
	case NotMeasured:
		return "not measured"
	case About:
		return "about " + f.Length(e.Length)
	}
	return f.Length(e.Length)
}

// Size writes width and length: "9 × 31 in".
func (f Format) Size(s Size) string { return f.Bare(s.Width) + " × " + f.Length(s.Length) }

// Edges writes a change and what it is counted on: "3/8 in each edge".
func (f Format) Edges(e Edges) string {
	if e.Of.String() == "" {
		return f.Length(e.By)
	}
	return f.Length(e.By) + " " + e.Of.String()
}

// Amount writes how much there is: "2 1/4 yd", "9 × 31 in", "3 skeins". A length
// of a yard or a metre and more is given as cloth is sold, whatever smaller unit
// the journal shows: "2 1/4 yd" or "1 yd 31 in", "2.057 m".
func (f Format) Amount(a Amount) string {
	switch a.Kind {
	case ByLength:
		return f.cloth(a.Length)
	case ByPiece:
		return f.Size(a.Size)
	case ByCount:
		return counted(a.Number, a.Thing)
	}
	return "nothing"
}

// cloth writes a length by the yard or metre where it is that long.
func (f Format) cloth(l Length) string {
	if f.unit().metric() {
		if magnitude(l) >= uint64(Metre) {
			f.Unit = Metres
		}
		return f.Length(l)
	}
	f.Unit = Inches
	l = f.nearest(l)
	yards := Format{Unit: Yards, Fraction: 8}
	switch {
	case magnitude(l) < uint64(Yard):
		return f.Length(l)
	case l%(Yard/8) == 0:
		return yards.Length(l)
	}
	rest := l % Yard
	return yards.Length(l-rest) + " " + f.Length(max(rest, -rest))
}

// counted writes a number of things; up to one of them is singular.
func counted(number Fraction, thing string) string {
	if thing == "" {
		return number.String()
	}
	if n := magnitude(number.Num); n == 0 || n > uint64(max(number.Den, 1)) {
		thing = plural(thing)
	}
	return number.String() + " " + thing
}
