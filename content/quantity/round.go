package quantity

import "strconv"

// minus is U+2212: as wide as the plus sign, and no line is broken after it.
const minus = "−"

func (f Format) unit() Unit {
	switch f.Unit {
	case Feet, Yards, Millimetres, Centimetres, Metres:
		return f.Unit
	}
	return Inches
}

func (f Format) other() Format {
	if f.unit().metric() {
		f.Unit = Inches
	} else {
		f.Unit = Centimetres
	}
	return f
}

// steps returns how many steps a unit is shown in.
func (f Format) steps() uint64 {
	switch f.unit() {
	case Millimetres:
		return 1
	case Centimetres:
		return 10
	case Metres:
		return 1000
	}
	switch f.Fraction {
	case 1, 2, 4, 8, 16, 32, 64:
		return uint64(f.Fraction)
	}
	return 8
}

// nearest rounds a length as it will be shown.
func (f Format) nearest(l Length) Length {
	unit, steps := f.unit().Length(), f.steps()
	whole, part := split(l, unit, steps)
	rounded := Length(whole)*unit + Length(part)*unit/Length(steps)
	if l < 0 {
		return -rounded
	}
	return rounded
}

// split rounds a length, without its sign, to whole units and steps of a unit.
func split(l, unit Length, steps uint64) (whole, part uint64) {
	n, size := magnitude(l), uint64(unit)
	whole = n / size
	part = (2*(n%size)*steps + size) / (2 * size)
	if part == steps {
		return whole + 1, 0
	}
	return whole, part
}

func (f Format) text(l Length, plus, unit bool) string {
	var buf [40]byte
	dst := buf[:0]
	u, steps := f.unit(), f.steps()
	whole, part := split(l, u.Length(), steps)
	switch {
	case whole == 0 && part == 0:
	case l < 0:
		dst = append(dst, minus...)
	case plus:
		dst = append(dst, '+')
	}
	if u.metric() {
		dst = appendDecimal(dst, whole, part, steps)
	} else {
		low := reduced(int64(part), int64(steps))
		dst = appendMixed(dst, whole, uint64(low.Num), uint64(low.Den))
	}
	if unit {
		dst = append(dst, ' ')
		dst = append(dst, u.String()...)
	}
	return string(dst)
}

// appendDecimal writes a whole number and a part in steps, a power of ten,
// without zeros at the end.
func appendDecimal(dst []byte, whole, part, steps uint64) []byte {
	dst = strconv.AppendUint(dst, whole, 10)
	if part == 0 {
		return dst
	}
	dst = append(dst, '.')
	for part > 0 {
		steps /= 10
		dst = append(dst, byte('0'+part/steps))
		part %= steps
	}
	return dst
}
