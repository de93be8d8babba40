package edtf

import "slices"

// Advice gives no more than so many texts, and looks through no caption of more
// words: a paragraph put where a date belongs must cost no time.
const (
	mostAdvice = 3
	mostWords  = 16
)

// advice returns texts that Read takes, near to the one it refused. When fault
// has its own suggestions those are all.
func advice(text string, fault *Error, c Customs) []string {
	var kept []string
	consider := func(try string) {
		if len(kept) == mostAdvice || slices.Contains(kept, try) {
			return
		}
		if _, fault := read(try, c); fault == nil {
			kept = append(kept, try)
		}
	}
	if fault.Instead != nil {
		for _, try := range fault.Instead {
			consider(try)
		}
		return kept
	}
	for _, try := range repaired(text) {
		consider(try)
	}
	list := tokens(text)
	if len(list) > mostWords {
		return kept
	}
	for _, t := range list {
		if word := nearestWord(t.text); t.kind == wordToken && word != "" {
			consider(text[:t.at] + word + text[t.end:])
		}
	}
	// The longest runs of words that are a date by themselves.
	for length := len(list) - 2; length > 0 && len(kept) == 0; length-- {
		for i := range len(list) - length {
			first, last := list[i], list[i+length-1]
			whole := (i == 0 || !glued(list[i-1], first)) && !glued(last, list[i+length])
			if whole && first.kind != dashToken && !slices.Contains(fillWords, first.text) {
				consider(text[first.at:last.end])
			}
		}
	}
	return kept
}

// glued reports whether two tokens are one word to the eye, as in 1780s.
func glued(a, b token) bool {
	lettered := func(t token) bool { return t.kind == wordToken || t.kind == numberToken }
	return a.end == b.at && lettered(a) && lettered(b)
}
