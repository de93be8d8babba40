package main

import (
	"strings"
	"unicode"
)

// longestStem is as many letters as a file's name keeps of a title.
const longestStem = 60

// stem makes the name of a file, without its ending, of somebody's words: letters
// and digits in lower case, with a hyphen for whatever stands between them. Long
// words are cut between two of them. It is empty where there are none.
func stem(words string) string {
	parts := strings.FieldsFunc(strings.ToLower(words), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !unicode.IsMark(r) && r != '\'' && r != '’'
	})
	out := ""
	for _, part := range parts {
		part = strings.NewReplacer("'", "", "’", "").Replace(part)
		next := strings.Trim(out+"-"+part, "-")
		if len([]rune(next)) > longestStem && out != "" {
			break
		}
		out = next
	}
	if runes := []rune(out); len(runes) > longestStem {
		out = string(runes[:longestStem])
	}
	return out
}
