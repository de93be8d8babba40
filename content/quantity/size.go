package quantity

// A Size is that of a piece of cloth: its width and its length.
type Size struct{ Width, Length Length }

// ParseSize reads a width and a length with "x", "×" or "by" between them:
// "9 in x 31 in", "9 x 31 in". The unit may stand once, at the end. Both must be
// more than nothing.
func ParseSize(text string, bare Unit) (Size, error) {
	return parse(text, func(s *scanner) (Size, *Error) {
		width, e := s.reading()
		if e != nil {
			return Size{}, e
		}
		s.skipSpace()
		if !s.by() {
			if s.done() {
				return Size{}, s.fail(s.at, "a size is a width and a length, such as 9 x 31 in")
			}
			return Size{}, s.leftOver()
		}
		return s.sizeFrom(width, bare)
	})
}

// by moves past what stands between a width and a length.
func (s *scanner) by() bool {
	if r, size := s.peek(); r == '×' {
		s.at += size
		return true
	}
	return s.take("x", "by")
}

// sizeFrom reads the length that goes with a width, up to the end of the text.
func (s *scanner) sizeFrom(width reading, bare Unit) (Size, *Error) {
	length, e := s.reading()
	if e != nil {
		return Size{}, e
	}
	if !s.done() {
		return Size{}, s.leftOver()
	}
	var size Size
	if size.Width, size.Length, e = s.closeBoth(width, length, bare); e != nil {
		return Size{}, e
	}
	switch {
	case size.Width <= 0:
		return Size{}, s.fail(width.start, "a piece is wider than nothing")
	case size.Length <= 0:
		return Size{}, s.fail(length.start, "a piece is longer than nothing")
	}
	return size, nil
}
