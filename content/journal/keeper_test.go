package journal

import (
	"bytes"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"hussif/content/source"
	"hussif/testdata/generate"
)

// A journal that was kept up to date is the same as one read anew, findings included.
func TestKeeperIsLikeReadingAnew(t *testing.T) {
	quick := 0 // updates that did not put the journal together anew
	for seed := range uint64(3) {
		dir := t.TempDir()
		if err := os.CopyFS(dir, generate.Journal(60, seed)); err != nil {
			t.Fatal(err)
		}
		files := os.DirFS(dir)
		folder, err := Read(files)
		if err != nil {
			t.Fatal(err)
		}
		var k Keeper
		k.Update(folder, nil)
		e := generate.NewEditor(dir, seed)
		var done []string
		for range 25 {
			what, folders, err := e.Edit()
			if err != nil {
				t.Fatal(err)
			}
			done = append(done, what)
			if folder, err = folder.Again(files, folders); err != nil {
				t.Fatal(err)
			}
			before := answersOf(k.journal)
			kept := k.Update(folder, nil)
			for q, was := range before {
				if is, _ := k.journal.Answer(q); is != was && !kept.News.May(q) {
					t.Errorf("seed %d, after %q: no news of %v", seed, what, q)
				}
			}
			if len(kept.Again) > 0 {
				quick++
			}
			anew, err := Read(files)
			if err != nil {
				t.Fatal(err)
			}
			want, found := anew.Journal(nil)
			if !slices.Equal(folder.Entries, anew.Entries) {
				t.Fatalf("seed %d, after %q: other files", seed, done)
			}
			if diff := cmp.Diff(lines(found), lines(kept.Findings)); diff != "" {
				t.Fatalf("seed %d, after %q: other findings\n%s", seed, done, diff)
			}
			sameJournal(t, want, kept.Journal)
			if t.Failed() {
				t.Fatalf("seed %d, after %q", seed, done)
			}
		}
	}
	if quick == 0 {
		t.Error("no edit left the facts as they were")
	}
}

// answersOf asks a journal all there is to ask.
func answersOf(j *Journal) map[Question]source.Sum {
	answers := make(map[Question]source.Sum)
	ask := func(about Aspect, of string) {
		q := Question{about, of}
		answers[q], _ = j.Answer(q)
	}
	for _, r := range j.records {
		id := r.Head().ID
		ask(Facts, string(Family(r)))
		ask(Called, strings.ToLower(id.Name()))
		for _, about := range []Aspect{Named, Text, Linking} {
			ask(about, string(id))
		}
	}
	for _, kind := range Kinds() {
		ask(Shelved, string(kind))
	}
	ask(All, "")
	return answers
}

func sameJournal(t *testing.T, want, got *Journal) {
	t.Helper()
	if len(want.records) != len(got.records) {
		t.Errorf("%d records, want %d", len(got.records), len(want.records))
		return
	}
	for i, r := range want.records {
		other := got.records[i]
		if diff := cmp.Diff(r, other, values); diff != "" {
			t.Errorf("%s: %s", r.Head().ID, diff)
		}
		if !bytes.Equal(r.Head().File.Data, other.Head().File.Data) || want.Faulty(r) != got.Faulty(other) {
			t.Errorf("%s is another file, or faulty", r.Head().ID)
		}
		id := r.Head().ID
		if Family(r) != Family(other) {
			t.Errorf("%s belongs to %s, want %s", id, Family(other), Family(r))
		}
		ties := func(j *Journal) string {
			var b strings.Builder
			for _, tie := range j.LinkedFrom(id) {
				fmt.Fprintln(&b, tie.From.Head().ID, tie.Field)
			}
			return b.String()
		}
		if diff := cmp.Diff(ties(want), ties(got)); diff != "" {
			t.Errorf("%s is linked from: %s", id, diff)
		}
	}
}

// What is asked of a journal has another answer after each change that it would see.
func TestAnswers(t *testing.T) {
	before := files("-- people/wren.md --\n-- builds/jacket/build.md --\n---\nfor: wren\n---\n-- builds/jacket/2026-01-02.md --\nCut it.\n")
	asked := []Question{
		{Facts, "builds/jacket"}, {Text, "builds/jacket/2026-01-02"}, {Called, "jacket"}, {Linking, "people/wren"},
		{Shelved, "note"}, {Shelved, "person"}, {Present, "a.jpg"}, {Within, "people"}, {All, ""},
	}
	for _, test := range []struct {
		name, text string
		want       []Aspect
	}{
		{"builds/jacket/2026-01-02.md", "Cut it twice.\n", []Aspect{Facts, Text, Shelved, All}},
		{"patterns/jacket.md", "A draft.\n", []Aspect{Called, All}},
		{"occasions/fair.md", "---\ndate: 2027-01-01\nworn: jacket\n---\n[[wren]]\n", []Aspect{Linking, All}},
		{"people/ottilie.md", "A friend.\n", []Aspect{Shelved, Within, All}},
		{"a.jpg", "", []Aspect{Present}},
	} {
		after := files(test.name)
		for name, f := range before {
			after[name] = f
		}
		after[test.name] = files("-- x --\n" + test.text)["x"]
		a, _, err := Open(before)
		if err != nil {
			t.Fatal(err)
		}
		b, _, err := Open(after)
		if err != nil {
			t.Fatal(err)
		}
		var got []Aspect
		for _, q := range asked {
			was, ok := a.Answer(q)
			is, _ := b.Answer(q)
			if !ok {
				t.Errorf("%v has no answer", q)
			}
			if was != is {
				got = append(got, q.About)
			}
		}
		if got = slices.Compact(got); !slices.Equal(got, test.want) {
			t.Errorf("%s: %q, want %q", test.name, got, test.want)
		}
	}
}
