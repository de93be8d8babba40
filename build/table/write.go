package table

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

// CSV writes a table as RFC 4180 has it, with a head row and CRLF. Text that a
// spreadsheet would take for a formula is kept from being one, as the package
// comment tells. The names of a list are joined by "; ". An error is the writer's.
func (t Table) CSV(w io.Writer) error {
	c := csv.NewWriter(w)
	c.UseCRLF = true
	record := make([]string, len(t.Columns))
	for i, column := range t.Columns {
		record[i] = harmless(column.Name)
	}
	if err := c.Write(record); err != nil {
		return fmt.Errorf("writing table %s: %w", t.Name, err)
	}
	for _, row := range t.Rows {
		for i, cell := range row {
			record[i] = cell.csv()
		}
		if err := c.Write(record); err != nil {
			return fmt.Errorf("writing table %s: %w", t.Name, err)
		}
	}
	c.Flush()
	if err := c.Error(); err != nil {
		return fmt.Errorf("writing table %s: %w", t.Name, err)
	}
	return nil
}

func (c Cell) csv() string {
	switch {
	case c.number:
		return c.text
	case c.list != nil:
		return harmless(strings.Join(c.list, "; "))
	}
	return harmless(c.text)
}

// formula holds what a formula begins with, in plain and full-width form.
const formula = "=+-@＝＋－＠"

// harmless puts an apostrophe before what a spreadsheet would take for a formula.
func harmless(s string) string {
	begin := strings.TrimLeftFunc(s, func(r rune) bool { return r == '\'' || unicode.IsSpace(r) || unicode.IsControl(r) })
	if first, _ := utf8.DecodeRuneInString(begin); begin != "" && strings.ContainsRune(formula, first) {
		return "'" + s
	}
	return s
}

// JSON writes a table as a list of objects, one a line, as the package comment
// tells. An error is the writer's.
func (t Table) JSON(w io.Writer) error {
	var out bytes.Buffer
	out.WriteString("[")
	for i, row := range t.Rows {
		if i > 0 {
			out.WriteString(",")
		}
		out.WriteString("\n  {")
		for k, cell := range row {
			if k > 0 {
				out.WriteString(", ")
			}
			fmt.Fprintf(&out, "%s: %s", quoted(t.Columns[k].Name), cell.json())
		}
		out.WriteString("}")
	}
	if len(t.Rows) > 0 {
		out.WriteString("\n")
	}
	out.WriteString("]\n")
	if _, err := out.WriteTo(w); err != nil {
		return fmt.Errorf("writing table %s: %w", t.Name, err)
	}
	return nil
}

func (c Cell) json() string {
	switch {
	case c.number:
		return c.text
	case c.list != nil:
		names := make([]string, len(c.list))
		for i, n := range c.list {
			names[i] = quoted(n)
		}
		return "[" + strings.Join(names, ", ") + "]"
	case c.text == "":
		return "null"
	}
	return quoted(c.text)
}

// quoted writes text as JSON, with "<" and "&" as they are.
func quoted(s string) string {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	if err := e.Encode(s); err != nil {
		panic(err) // a string always has a form in JSON
	}
	return strings.TrimSuffix(out.String(), "\n")
}
