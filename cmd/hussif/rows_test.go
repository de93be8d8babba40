package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestTable(t *testing.T) {
	head := []string{"measure", "body", "verdict"}
	rows := [][]string{
		{"bust girth", "36 1/2 in est.", "too close to call (short by 1/2 in, error 5/8 in)"},
		{"着物の裄丈", "-", "fits"},
		{"o\u0301 depth", "3 in", "fits"},
	}
	for _, c := range []struct {
		name  string
		width int
		head  []string
		want  string
	}{
		{"a file", 0, head, `
measure     body            verdict
bust girth  36 1/2 in est.  too close to call (short by 1/2 in, error 5/8 in)
着物の裄丈  -               fits
ó depth     3 in            fits
`},
		{"a wide terminal", 78, head, `
measure     body            verdict
bust girth  36 1/2 in est.  too close to call (short by 1/2 in, error 5/8 in)
着物の裄丈  -               fits
ó depth     3 in            fits
`},
		{"broken into lines", 50, head, `
measure     body            verdict
bust girth  36 1/2 in est.  too close to call
                            (short by 1/2 in,
                            error 5/8 in)
着物の裄丈  -               fits
ó depth     3 in            fits
`},
		{"lists", 32, head, `
bust girth
  body     36 1/2 in est.
  verdict  too close to call
           (short by 1/2 in,
           error 5/8 in)
着物の裄丈
  verdict  fits
ó depth
  body     3 in
  verdict  fits
`},
		{"without a head", 26, nil, `
bust girth
    36 1/2 in est.
    too close to call
    (short by 1/2 in,
    error 5/8 in)
着物の裄丈
    fits
ó depth
    3 in
    fits
`},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out bytes.Buffer
			v := &voice{Streams: Streams{Out: &out}, width: c.width}
			v.table(c.head, rows)
			want := strings.ReplaceAll(strings.TrimPrefix(c.want, "\n"), "ó", "o\u0301")
			if diff := cmp.Diff(want, out.String()); diff != "" {
				t.Error(diff)
			}
		})
	}
}
