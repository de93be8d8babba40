package worksheet

// Schema returns the JSON Schema (draft 2020-12) of a worksheet's inputs, as they
// stand in a block of a note. It is a little wider than the sheet itself, which
// alone reads quantities and knows which of them belong together.
func Schema(s Sheet) map[string]any {
	about := s.About()
	properties := make(map[string]any)
	required := []string{}
	for _, in := range s.Inputs() {
		one := in.Into.schema()
		doc := in.Doc
		if more, ok := one["description"].(string); ok {
			doc += " (" + more + ")"
		}
		one["description"] = doc
		one["examples"] = []string{in.Example}
		if in.Default != "" {
			one["default"] = in.Default
		}
		properties[in.Name] = one
		if in.Need == Always {
			required = append(required, in.Name)
		}
	}
	return map[string]any{
		"$schema":              "https://json-schema.org/draft/2020-12/schema",
		"title":                about.Name,
		"description":          about.Short,
		"type":                 "object",
		"properties":           properties,
		"required":             required,
		"additionalProperties": false,
	}
}
