package show

import (
	"time"
	"unicode"
	"unicode/utf8"

	"hussif/content/edtf"
	"hussif/content/quantity"
	"hussif/theme"
)

// Facts gathers the facts of a page; those without a value are left out.
type Facts []theme.Fact

// Say adds a fact.
func (f *Facts) Say(name, value string) {
	if value != "" {
		*f = append(*f, theme.Fact{Name: name, Value: value})
	}
}

// Link adds a fact that is links; those without words are left out.
func (f *Facts) Link(name string, links ...theme.Link) {
	var given []theme.Link
	for _, l := range links {
		if l.Text != "" {
			given = append(given, l)
		}
	}
	if len(given) > 0 {
		*f = append(*f, theme.Fact{Name: name, Links: given})
	}
}

// Table makes a table, or none where it has no rows. A column of which every cell is
// empty is left out.
func Table(heads []string, numeric []bool, rows [][]theme.Link) *theme.Table {
	if len(rows) == 0 {
		return nil
	}
	t := &theme.Table{Rows: make([][]theme.Link, len(rows))}
	for c, head := range heads {
		used := false
		for _, r := range rows {
			used = used || r[c] != (theme.Link{})
		}
		if !used {
			continue
		}
		t.Heads = append(t.Heads, head)
		t.Numeric = append(t.Numeric, numeric[c])
		for i, r := range rows {
			t.Rows[i] = append(t.Rows[i], r[c])
		}
	}
	return t
}

// Cell is a cell of a table that leads nowhere.
func Cell(text string) theme.Link { return theme.Link{Text: text} }

// Sentence gives words a capital.
func Sentence(words string) string {
	if words == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(words)
	return string(unicode.ToUpper(first)) + words[size:]
}

// Day writes a calendar day as pages show it: "3 March 2026".
func Day(d edtf.Day) string {
	year, month, dayOfMonth := d.Date()
	return time.Date(year, time.Month(month), dayOfMonth, 0, 0, 0, 0, time.UTC).Format("2 January 2006")
}

// Hours writes a time worked; nothing where there is none.
func Hours(d time.Duration) string {
	if d == 0 {
		return ""
	}
	return quantity.FormatDuration(d)
}
