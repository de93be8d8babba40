package source

import (
	"encoding/json"
	"io"
)

type jsonPlace struct {
	Path   string `json:"path,omitempty"`
	Line   int    `json:"line,omitempty"`
	Column int    `json:"column,omitempty"`
	Start  int    `json:"start"`
	End    int    `json:"end"`
	Text   string `json:"text,omitempty"`
}

func (s Span) json(text string) jsonPlace {
	line, column := s.Position()
	return jsonPlace{Path: s.name(), Line: line, Column: column, Start: s.Start, End: s.End, Text: text}
}

// PrintJSON writes findings as one JSON array for other programs. Offsets are in
// bytes of the file after its byte order mark, if it has one.
func PrintJSON(w io.Writer, findings []Finding) error {
	type jsonFinding struct {
		jsonPlace
		Level   string      `json:"level"`
		Rule    string      `json:"rule"`
		Instead []string    `json:"instead,omitempty"`
		Help    string      `json:"help,omitempty"`
		Related []jsonPlace `json:"related,omitempty"`
	}
	out := []jsonFinding{}
	for _, f := range findings {
		j := jsonFinding{jsonPlace: f.Span.json(f.Text), Level: f.Level.String(), Rule: f.Rule, Instead: f.Instead, Help: f.Help}
		for _, r := range f.Related {
			j.Related = append(j.Related, r.Span.json(r.Text))
		}
		out = append(out, j)
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(out)
}
