package theme

import "strings"

// ShortForm returns the short form as plain text, a line a fact, to be copied in
// one piece.
func (d Documentation) ShortForm() string {
	lines := make([]string, len(d.Short))
	for i, fact := range d.Short {
		value := fact.Value
		if len(fact.Links) > 0 {
			var words []string
			for _, link := range fact.Links {
				words = append(words, link.Text)
			}
			value = strings.Join(words, ", ")
		}
		lines[i] = fact.Name + ": " + value
	}
	return strings.Join(lines, "\n")
}

// Web returns a link to where the source is on the web, in words that can be
// typed from paper.
func (s Source) Web() Link { return Link{Href: s.Address, Text: s.Address} }
