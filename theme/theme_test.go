package theme

import (
	"bytes"
	"io"
	"sync"
	"testing"

	"github.com/jba/templatecheck"
)

// views has a bare view of each kind.
func views() []any {
	return []any{Start{}, List{}, Build{}, Note{}, Person{}, Thing{}, NextTime{}, Tags{}, Found{}, Sheet{}, TakeDown{}, Wardrobe{}, Tiles{}, Decisions{}, Evidence{}, FeaturePage{}, Documentation{}, Stash{}, ToDo{}, Search{}}
}

func newTheme(t testing.TB) *Theme {
	t.Helper()
	look, err := New()
	if err != nil {
		t.Fatal(err)
	}
	return look
}

func TestTemplatesMatchTheirViews(t *testing.T) {
	for _, view := range views() {
		if _, ok := view.(Note); ok {
			continue // printed without a template
		}
		name, err := templateOf(view)
		if err != nil {
			t.Fatal(err)
		}
		var unrun Theme // one that has run cannot be checked
		if err := unrun.parse(); err != nil {
			t.Fatal(err)
		}
		if err := templatecheck.CheckHTML(unrun.templates.Lookup(name), view); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestRenderRefusesOtherViews(t *testing.T) {
	look := newTheme(t)
	for _, view := range []any{nil, "a page", Card{}, (*Card)(nil)} {
		var page bytes.Buffer
		if err := look.Render(&page, view); err == nil || page.Len() > 0 {
			t.Errorf("a %T: error %v and a page of %d bytes", view, err, page.Len())
		}
	}
}

func TestRenderTellsOfAWriterThatFails(t *testing.T) {
	r, w := io.Pipe()
	r.Close()
	if err := newTheme(t).Render(w, Note{}); err != io.ErrClosedPipe {
		t.Errorf("error %v, want %v", err, io.ErrClosedPipe)
	}
}

func TestManyMayRenderAtOnce(t *testing.T) {
	look := newTheme(t)
	pages := gallery()
	var group sync.WaitGroup
	for name, view := range pages {
		var want bytes.Buffer
		if err := look.Render(&want, view); err != nil {
			t.Fatal(err)
		}
		for range 4 {
			group.Go(func() {
				var got bytes.Buffer
				if err := look.Render(&got, view); err != nil {
					t.Error(err)
				}
				if !bytes.Equal(got.Bytes(), want.Bytes()) {
					t.Errorf("%s comes out otherwise beside others", name)
				}
			})
		}
	}
	group.Wait()
}

// A note as most are, and one with everything that a note can have.
func BenchmarkNote(b *testing.B) {
	look := newTheme(b)
	full := firstFitting()
	plain := &Note{Frame: full.Frame, Day: full.Day, Of: full.Of, Facts: full.Facts, Body: full.Body, Earlier: full.Earlier, Later: full.Later, Next: full.Next, Photos: full.Photos[:1]}
	for name, note := range map[string]*Note{"plain": plain, "full": full} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := look.Render(io.Discard, note); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
