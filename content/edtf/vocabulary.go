package edtf

import (
	"slices"
	"strings"
)

// The words a caption may hold, by what they do. A caption reader compares them
// in lower case and without the dot of an abbreviation.
var (
	// What was dated; none of them changes the date.
	makingWords = []string{"dated", "designed", "made", "woven", "sewn", "worn", "drawn", "painted", "engraved", "printed", "published", "photographed"}

	aboutWords = []string{"ca", "c", "circa", "about", "around", "approximately", "approx"}
	doubtWords = []string{"possibly", "probably", "perhaps", "prob", "poss"}
	fillWords  = []string{"in", "on", "of", "the"}
	boundWords = []string{"later", "after", "earlier", "before"} // of "1784 or later"
	unionWords = []string{"to", "until", "through", "till"}

	centuryWords = []string{"century", "centuries", "cent", "c"}
	seasonWords  = []string{"spring", "summer", "autumn", "winter"}

	ordinalWords = []string{
		"first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh",
		"twelfth", "thirteenth", "fourteenth", "fifteenth", "sixteenth", "seventeenth", "eighteenth", "nineteenth", "twentieth",
	}
	ordinalEndings = []string{"st", "nd", "rd", "th"}
	fractionWords  = []string{"half", "third", "quarter"}

	// otherWords are spelled out where they are read; they are listed here to
	// be found when misspelled.
	otherWords = []string{
		"before", "after", "by", "not", "from", "since", "between", "and", "or", "later", "earlier", "onwards",
		"early", "mid", "middle", "late", "last", "fall",
	}
)

// nearestWord returns the known word a misspelt one is closest to, "" when none
// is close.
func nearestWord(word string) string {
	const shortest, longest = 4, 14
	if len(word) < shortest || len(word) > longest {
		return ""
	}
	nearest, least := "", 1+len(word)/4
	consider := func(known string) {
		if d := editDistance(word, known); d <= least && (nearest == "" || d < least) {
			nearest, least = known, d
		}
	}
	for _, list := range [][]string{makingWords, aboutWords, doubtWords, unionWords, centuryWords, seasonWords, ordinalWords, fractionWords, otherWords} {
		for _, known := range list {
			consider(known)
		}
	}
	for _, name := range monthNames {
		consider(strings.ToLower(name))
	}
	return nearest
}

// editDistance counts the letters to change, add or leave out (Levenshtein).
func editDistance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0]++
		for j := range len(b) {
			change := diagonal
			if a[i] != b[j] {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}

// monthOf returns the month a word names, whole or shortened to three letters
// or to "sept"; 0 for any other word.
func monthOf(word string) int {
	if word == "sept" {
		return 9
	}
	for i, name := range monthNames {
		if strings.EqualFold(word, name) || strings.EqualFold(word, name[:3]) {
			return i + 1
		}
	}
	return 0
}

// seasonCode returns the EDTF code of a northern season; 0 for any other word.
func seasonCode(word string) int {
	if word == "fall" {
		word = "autumn"
	}
	if i := slices.Index(seasonWords, word); i >= 0 {
		return northernSpring + i
	}
	return 0
}
