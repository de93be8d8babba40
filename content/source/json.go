package source

import (
	"encoding/json"
	"io"
)

// A PlaceJSON is a place as other programs read it. Offsets are in bytes of the
// file after its byte order mark, if it has one.
type PlaceJSON struct {
	Path   string `json:"path,omitempty" doc:"the file, from the journal's folder; missing where it is about the journal as a whole"`
	Line   int    `json:"line,omitempty" doc:"the line, from 1"`
	Column int    `json:"column,omitempty" doc:"the character in the line, from 1"`
	Start  int    `json:"start" doc:"where it begins, in bytes of the file"`
	End    int    `json:"end" doc:"where it ends"`
	Text   string `json:"text,omitempty" doc:"what is said about it"`
}

// A FindingJSON is a finding as other programs read it.
type FindingJSON struct {
	PlaceJSON
	Level   string      `json:"level" doc:"error, warning or hint"`
	Rule    string      `json:"rule" doc:"the rule, as hussif check --rules explains it"`
	Instead []string    `json:"instead,omitempty" doc:"what could stand there, best first"`
	Help    string      `json:"help,omitempty" doc:"what to do, where no other words would mend it"`
	Related []PlaceJSON `json:"related,omitempty" doc:"other places that belong to it"`
}

func (s Span) json(text string) PlaceJSON {
	line, column := s.Position()
	return PlaceJSON{Path: s.name(), Line: line, Column: column, Start: s.Start, End: s.End, Text: text}
}

// JSON returns findings as other programs read them.
func JSON(findings []Finding) []FindingJSON {
	out := []FindingJSON{}
	for _, f := range findings {
		j := FindingJSON{PlaceJSON: f.Span.json(f.Text), Level: f.Level.String(), Rule: f.Rule, Instead: f.Instead, Help: f.Help}
		for _, r := range f.Related {
			j.Related = append(j.Related, r.Span.json(r.Text))
		}
		out = append(out, j)
	}
	return out
}

// PrintJSON writes findings as one JSON array for other programs.
func PrintJSON(w io.Writer, findings []Finding) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(JSON(findings))
}
