package table

import (
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"hussif/content/quantity"
)

func made(names []string, rows ...[]Cell) Table {
	t := Table{Name: "made", Rows: rows}
	for _, n := range names {
		t.Columns = append(t.Columns, Column{Name: n})
	}
	return t
}

// The examples of RFC 4180, section 2: a head row and two records (rules 1 to 4), and
// fields that need quotes for a line break or a quote in them (rules 6 and 7). Where
// quotes are allowed and not needed (rule 5) there are none.
func TestCSVAsPublished(t *testing.T) {
	head := []string{"field_name", "field_name", "field_name"}
	table := made(head,
		[]Cell{Text("aaa"), Text("bbb"), Text("ccc")},
		[]Cell{Text("zzz"), Text("yyy"), Text("xxx")},
		[]Cell{Text("aaa"), Text("b\r\nbb"), Text("ccc")},
		[]Cell{Text("aaa"), Text(`b"bb`), Text("ccc")},
	)
	got := csvOf(t, table)
	want := "field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n" +
		"aaa,\"b\r\nbb\",ccc\r\naaa,\"b\"\"bb\",ccc\r\n"
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	back, err := csv.NewReader(strings.NewReader(got)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	// The reader of the standard library makes one kind of line break of all.
	rows := [][]string{head, {"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}, {"aaa", "b\nbb", "ccc"}, {"aaa", `b"bb`, "ccc"}}
	if diff := cmp.Diff(rows, back); diff != "" {
		t.Errorf("read back (-want +got):\n%s", diff)
	}
}

// The signs are those of OWASP's page on CSV injection; the full-width forms and
// U+2212 are common practice.
func TestCSVHoldsNoFormulas(t *testing.T) {
	for in, want := range map[string]string{
		"=1+1":             "'=1+1",
		"+44":              "'+44",
		"-1/4 in":          "'-1/4 in",
		"@home":            "'@home",
		"\t=1+1":           "'\t=1+1",
		"\r=1+1":           "'\n=1+1",
		" =1+1":            "' =1+1",
		"\x00=1+1":         "'\x00=1+1",
		"＝1+1":             "'＝1+1",
		"＋1":               "'＋1",
		"－1":               "'－1",
		"＠SUM(A1)":         "'＠SUM(A1)",
		"'=1+1":            "''=1+1",
		"'tis the season":  "'tis the season",
		"\u22121/4 in":     "\u22121/4 in",
		"1+1":              "1+1",
		"a=b":              "a=b",
		"":                 "",
		"'":                "'",
		"let out, not in=": "let out, not in=",
	} {
		got := Text(in).csv()
		if got != want {
			t.Errorf("%q is written %q, want %q", in, got, want)
		}
	}
	if got := List([]string{"=1", "b"}).csv(); got != "'=1; b" {
		t.Errorf("a list is written %q", got)
	}
	if got := mm(-quantity.Inch / 4).csv(); got != "-6.35" {
		t.Errorf("a number is written %q", got)
	}
	if got := csvOf(t, made([]string{"=name", "b"})); got != "'=name,b\r\n" {
		t.Errorf("a head is written %q", got)
	}
}

func TestNumbersAreExact(t *testing.T) {
	minus := func(m int64, currency string) string {
		cell, _ := price(quantity.Money{Minor: m, Currency: currency})
		return cell.csv()
	}
	for got, want := range map[string]string{
		mm(quantity.Inch).csv():                            "25.4", // NIST SP 811, appendix B
		mm(36*quantity.Inch + 1).csv():                     "914.400001",
		mm(0).csv():                                        "0",
		mm(quantity.Inch / 64).csv():                       "0.396875",
		mm(-952 * quantity.Millimetre).csv():               "-952",
		mm(1000 * quantity.Millimetre).csv():               "1000",
		Count(120).csv():                                   "120",
		fraction(quantity.Fraction{}).csv():                "0",
		fraction(quantity.Fraction{Num: 1, Den: 2}).csv():  "0.5",
		fraction(quantity.Fraction{Num: -2, Den: 3}).csv(): "-0.666667",
		inHours(3*3600e9 + 20*60e9).csv():                  "3.3333",
		inHours(1).csv():                                   "0",
		inHours(-1).csv():                                  "0",
		minus(1250, "EUR"):                                 "12.50",
		minus(-5, "EUR"):                                   "-0.05",
		minus(1200, "JPY"):                                 "1200",
		minus(0, ""):                                       "",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestJSON(t *testing.T) {
	if got := jsonOf(t, made([]string{"a"})); got != "[]\n" {
		t.Errorf("an empty table is %q", got)
	}
	got := jsonOf(t, made([]string{"z", "a", "m"},
		[]Cell{Text("=1 <& \"\n"), mm(-quantity.Inch), List([]string{"b", "a"})},
		[]Cell{{}, Count(3), List([]string(nil))},
	))
	want := `[
  {"z": "=1 <& \"\n", "a": -25.4, "m": ["b", "a"]},
  {"z": null, "a": 3, "m": null}
]
`
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("no space left") }

func TestWritersTellOfTrouble(t *testing.T) {
	table := made([]string{"a", "b"}, []Cell{Text("1"), Text("2")})
	for _, write := range []func() error{func() error { return table.CSV(broken{}) }, func() error { return table.JSON(broken{}) }} {
		if err := write(); err == nil || !strings.Contains(err.Error(), "table made: no space left") {
			t.Errorf("%v", err)
		}
	}
}

// plain undoes what harmless does.
func plain(s string) string {
	if rest, ok := strings.CutPrefix(s, "'"); ok && harmless(rest) == s {
		return rest
	}
	return s
}

// FuzzCSV writes two cells and reads them with the reader of the standard library:
// what comes back is what went in, and no text begins as a formula does.
func FuzzCSV(f *testing.F) {
	for _, s := range []string{"", "a", "=1", "'=1", "''", " ", "a,b", `"`, `""`, "a\nb", "\r\n", "\r", "\\.", "\t-", "＝", "\ufeffa", "\xff", "\x00+"} {
		f.Add(s, "b")
		f.Add("=", s)
	}
	f.Fuzz(func(t *testing.T, a, b string) {
		table := made([]string{"one", "two"}, []Cell{Text(a), Text(b)})
		back, err := csv.NewReader(strings.NewReader(csvOf(t, table))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		if len(back) != 2 || len(back[1]) != 2 {
			t.Fatalf("read back as %q", back)
		}
		lines := strings.NewReplacer("\r\n", "\n", "\r", "\n")
		for i, in := range []string{a, b} {
			got := back[1][i]
			if want := lines.Replace(in); plain(got) != want {
				t.Errorf("%q comes back as %q", want, got)
			}
			begin := strings.TrimFunc(got, unicode.IsSpace)
			if first, _ := utf8.DecodeRuneInString(begin); begin != "" && strings.ContainsRune("=+-@", first) {
				t.Errorf("%q begins as a formula does", got)
			}
		}
		var objects []map[string]any
		if err := json.Unmarshal([]byte(jsonOf(t, table)), &objects); err != nil {
			t.Fatal(err)
		}
		want := any(strings.ToValidUTF8(lines.Replace(a), "\ufffd"))
		if want == "" {
			want = nil
		}
		if got := objects[0]["one"]; fmt.Sprint(got) != fmt.Sprint(want) && utf8.ValidString(a) {
			t.Errorf("%q comes back from JSON as %q", want, got)
		}
	})
}
