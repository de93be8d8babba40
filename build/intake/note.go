package intake

import (
	"strings"

	"hussif/content/amend"
	"hussif/content/front"
)

// newNote returns a note that shows pictures, named from its folder. Each has room
// for words that say what it shows.
func newNote(pictures []string, kind string) []byte {
	var b strings.Builder
	b.WriteString("---\n")
	if kind != "" {
		b.WriteString("kind: " + kind + "\n")
	}
	b.WriteString("photos:\n")
	for _, p := range pictures {
		b.WriteString("  - file: " + plain(p) + "\n    alt:\n")
	}
	b.WriteString("---\n")
	return []byte(b.String())
}

// plain writes a path so that YAML reads it back.
func plain(path string) string {
	entry := amend.YAML("photos", amend.Group(front.Field{Key: "file", Value: amend.Text(path)}))
	_, value, _ := strings.Cut(entry, "file: ")
	return strings.TrimSuffix(value, "\n")
}

// withPictures returns a note with pictures added to those it shows and nothing
// else changed. The error is an [*amend.Refusal].
func withPictures(name string, note []byte, pictures []string) ([]byte, error) {
	for _, p := range pictures {
		var err error
		note, err = amend.Append(name, note, "photos", amend.Group(front.Field{Key: "file", Value: amend.Text(p)}))
		if err != nil {
			return nil, err
		}
	}
	return note, nil
}
