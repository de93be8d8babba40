package theme

import (
	"strings"
	"testing"
)

// A heading that stands for several rows is said of each of them to who does not see
// the table: it spans them. An empty heading would be said of the row alone.
func TestHeadingOfSeveralRows(t *testing.T) {
	var p printer
	p.rows(Table{Heads: []string{"Seam", "Crosses"}, Rows: [][]Link{
		{{Text: "side"}, {Text: "bust girth"}}, {{}, {Text: "waist girth"}}, {{}, {Text: "hip girth"}}, {{Text: "hem"}, {}},
	}})
	html := p.String()
	for _, want := range []string{
		`<tr><th scope="row" rowspan="3">side</th><td>bust girth</td></tr>`,
		`<tr><td>waist girth</td></tr>`, `<tr><td>hip girth</td></tr>`,
		`<tr><th scope="row">hem</th><td></td></tr>`,
	} {
		if !strings.Contains(html, want) {
			t.Errorf("%s lacks %s", html, want)
		}
	}
}
