package evidence

import (
	"fmt"
	"strings"
	"testing"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/journal/journaltest"
	"hussif/content/source"
)

func read(t testing.TB, archive string) (*journal.Journal, []source.Finding) {
	t.Helper()
	j, findings, err := journal.Open(journaltest.Files(archive))
	if err != nil {
		t.Fatal(err)
	}
	return j, findings
}

// page writes a file of a journal whose front matter is the lines.
func page(name string, lines ...string) string {
	return fmt.Sprintf("-- %s.md --\n---\n%s\n---\n", name, strings.Join(lines, "\n"))
}

// dated makes references that show or lack a feature called frill, each one of an
// object of its own, at a date; "" is no date.
func dated(field string, dates ...string) string {
	var b strings.Builder
	for i, date := range dates {
		lines := []string{field + ": frill"}
		if date != "" {
			lines = append(lines, fmt.Sprintf("date: %q", date))
		}
		b.WriteString(page(fmt.Sprintf("references/%s-%d", field, i), lines...))
	}
	return b.String()
}

func date(t testing.TB, text string) edtf.Date {
	t.Helper()
	if text == "" {
		return edtf.Date{}
	}
	d, err := edtf.Read(text, edtf.Customs{})
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func ids(o *Object) []string {
	var all []string
	for _, r := range o.References {
		all = append(all, r.ID.Name())
	}
	return all
}

// faulty reads a journal in which something is wrong.
func faulty(t testing.TB, archive string) *journal.Journal {
	t.Helper()
	j, findings := read(t, archive)
	if len(findings) == 0 {
		t.Fatal("nothing is wrong")
	}
	return j
}
