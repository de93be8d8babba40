package edtf

import (
	"regexp"
	"slices"
	"strings"
)

// repaired returns the expressions that a refused text may have been meant as,
// the likeliest first. All of them parse.
func repaired(text string) []string {
	var kept []string
	if len(text) > 100 {
		return nil
	}
	tidy := tidied(text)
	if _, fault := parse(tidy); fault == nil {
		return []string{tidy}
	}
	tries := repairs(tidy)
	if made, fault := captionEDTF(text, Customs{}); fault == nil {
		tries = append(tries, made)
	}
	for _, try := range tries {
		if _, fault := parse(try); fault == nil && !slices.Contains(kept, try) {
			kept = append(kept, try)
		}
	}
	return kept
}

// tidied undoes what makes no difference to the meaning: spaces, lower case,
// typographic dashes, and the spellings of the draft of 2012.
func tidied(text string) string {
	return strings.NewReplacer(
		"unknown", "", "open", "..",
		" ", "", "–", "-", "—", "-", "−", "-", "…", "..",
		"u", "X", "x", "X", "y", "Y", "e", "E", "s", "S", "p", "S",
		"?~", "%", "~?", "%",
	).Replace(strings.TrimSpace(text))
}

var (
	yearHyphen   = regexp.MustCompile(`^(\d\d)(\d\d)-(\d\d|\d{4})$`)
	loneDigit    = regexp.MustCompile(`-(\d)\b`)
	zeroPart     = regexp.MustCompile(`-00\b`)
	fullInterval = regexp.MustCompile(`^([^/]+)/([^/]+)$`)
	bareRange    = regexp.MustCompile(`^[^\[{]*\.\.[^\]}]*$`)
	timeOfDay    = regexp.MustCompile(`T.*$`)
	lastPart     = regexp.MustCompile(`-\d\d$`)
	shortYear    = regexp.MustCompile(`^Y(-?\d{4})$`)
	yearOfThree  = regexp.MustCompile(`^(-?)(\d{3})$`)
)

// repairs tries the slips that are known. Some of what it returns may not parse.
func repairs(text string) []string {
	var tries []string
	if m := yearHyphen.FindStringSubmatch(text); m != nil {
		// 1784-87 is a museum's span.
		to := m[3]
		if len(to) == 2 {
			to = m[1] + to
		}
		if from := m[1] + m[2]; from < to {
			tries = append(tries, from+"/"+to)
		}
	}
	tries = append(tries,
		loneDigit.ReplaceAllString(text, "-0$1"),
		zeroPart.ReplaceAllString(text, "-XX"),
		timeOfDay.ReplaceAllString(text, ""),
		shortYear.ReplaceAllString(text, "$1"),
		yearOfThree.ReplaceAllString(text, "${1}0$2"),
		fullInterval.ReplaceAllString(text, "$2/$1"),
	)
	if bareRange.MatchString(text) {
		tries = append(tries, "["+text+"]", strings.Replace(text, "..", "/", 1))
	}
	if try, ok := spread(text); ok {
		tries = append(tries, try)
	}
	if d, ok := threeNumbers(text); ok {
		fault := &Error{}
		d.explain(fault)
		tries = append(tries, fault.Instead...)
	}
	return append(tries, lastPart.ReplaceAllString(text, ""))
}

// spread writes a masked date with a mark at its end as the interval it covers,
// marked at both ends: 178X~ becomes 1780~/1789~.
func spread(text string) (string, bool) {
	bare := strings.TrimRight(text, "?~%")
	e, fault := parse(bare)
	if fault != nil || e.form != single || len(bare)+1 != len(text) {
		return "", false
	}
	p := e.stretches[0].from
	mark := text[len(bare):]
	return written(p.first, len(p.parts)) + mark + "/" + written(p.last, len(p.parts)) + mark, p.masked()
}

// written gives the first n parts of a day as EDTF.
func written(d Day, n int) string {
	text := d.String()
	return text[:len(text)-[...]int{6, 3, 0}[n-1]]
}
