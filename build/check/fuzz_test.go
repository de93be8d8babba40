package check

import (
	"testing"
	"testing/fstest"

	"hussif/content/source"
)

// Whatever a build and two of its notes say, looking them over must not panic, and
// what is found must have its place.
func FuzzRun(f *testing.F) {
	const build = "---\nfor: wren\nseams: [{name: side, count: 2, crosses: {waist: 1 in}, caught by: [side]}]\npieces: [back]\nremakes: cap\n---\n"
	f.Add([]byte(build), []byte("---\nmeasured: {waist: 27 in}\naltered: [{seam: side, was: 1 in, now: 1/2 in}]\n---\n"), []byte("---\nstage: finishing\nmeasured: {waist: 28 in}\n---\n"))
	f.Add([]byte(build), []byte("---\naltered: [{panel: a, widths: {left wrist girth: 1 in}}, {what: b}, {seam: c}]\n---\n"), []byte("---\nmeasured: {waist: unknown}\nphotos: [../x.png, {file: \"\"}]\n---\n"))
	f.Add([]byte("---\nnext time: [a, a]\ncarries: [cap#next-1, \"cap/2026-03-01#next-b\"]\nremakes: cap\n---\n"), []byte("---\nset aside: [{note: cap#next-a-2, because: c}]\n---\nNext time: b\n\nDecided: d"), []byte("---\ncarries: [cap#next-a, wren]\nturned out: [{decision: cap/2026-03-01#decided-1, how: kept}]\n---\n"))
	f.Add([]byte("---\nover: [shift]\n---\n"), []byte("---\nbody: [{over: [shfit], left wrist girth: 9 in}]\n---\n"), []byte("![](a.jpg) [[#x]]"))
	f.Fuzz(func(t *testing.T, build, first, second []byte) {
		fsys := fstest.MapFS{
			"people/wren.md":           {},
			"builds/cap/build.md":      {Data: build},
			"builds/cap/2026-03-01.md": {Data: first},
			"builds/cap/2026-03-08.md": {Data: second},
		}
		for _, f := range checked(t, fsys) {
			spans := []source.Span{f.Span}
			for _, r := range f.Related {
				spans = append(spans, r.Span)
			}
			for _, s := range spans {
				if s.File == nil || s.Start < 0 || s.Start > s.End || s.End > len(s.File.Data) {
					t.Fatalf("%q points outside its file", f.Text)
				}
			}
		}
	})
}
