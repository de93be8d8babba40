package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"hussif/build/lesson"
	"hussif/content/journal"
)

func nextCommand(say *voice) *cobra.Command {
	var dir string
	var asJSON bool
	c := &cobra.Command{
		Use:   "next [page or garment]",
		Short: "List what was to be done otherwise next time",
		Long: `next gathers every next-time note of the journal: those of the front matter, and
paragraphs and list items that begin with "Next time:". Named a pattern, a
technique, a person, a material, a build or a kind of garment, it lists those
about it.`,
		Example: `  hussif next
  hussif next jacket-draft
  hussif next jacket --json`,
		Args: atMostOne("page or garment"),
		RunE: func(_ *cobra.Command, args []string) error {
			w, err := openJournal(dir)
			if err != nil {
				return err
			}
			say.warn(w)
			list := lesson.Gather(w.journal)
			if name := firstArg(args); name != "" {
				return say.lessonsAbout(w, list, name, asJSON)
			}
			if asJSON {
				return say.json(lessonsJSON(list.All))
			}
			say.lessons(w, list)
			return nil
		},
	}
	c.ValidArgsFunction = completeLessons(&dir)
	c.Flags().StringVarP(&dir, "journal", "j", "", "the journal's `folder`")
	c.Flags().BoolVar(&asJSON, "json", false, "print as JSON")
	return c
}

// lessonsAbout prints the lessons about one page or kind of garment.
func (v *voice) lessonsAbout(w *workroom, list lesson.List, name string, asJSON bool) error {
	var about []lesson.Lesson
	title := name
	for _, g := range list.ByGarment() {
		if strings.EqualFold(g.Name, name) {
			about = g.Lessons
		}
	}
	if about == nil {
		r, err := w.called(name)
		if err != nil {
			return err
		}
		about, title = list.For(r.Head().ID), r.Head().Title
	}
	if asJSON {
		return v.json(lessonsJSON(about))
	}
	v.sayf("%s", v.bold("Next time: "+title))
	if len(about) == 0 {
		v.sayf("  nothing yet")
	}
	v.lessonLines(w, about)
	return nil
}

// lessons prints all lessons under what they are about.
func (v *voice) lessons(w *workroom, list lesson.List) {
	if len(list.All) == 0 {
		v.sayf("No next-time notes yet. Begin a paragraph of a note with \"Next time:\" and it is gathered here.")
		return
	}
	type named struct {
		from   journal.ID
		anchor string
	}
	shown := make(map[named]bool)
	for _, section := range []struct {
		title  string
		groups []lesson.Group
	}{
		{"pattern", list.ByPattern()}, {"technique", list.ByTechnique()}, {"garment", list.ByGarment()},
		{"person", list.ByPerson()}, {"material", list.ByMaterial()},
	} {
		for _, g := range section.groups {
			title := g.Name
			if r, ok := w.journal.Find(string(g.ID)); ok {
				title = r.Head().Title
			}
			v.sayf("%s", v.bold(strings.ToUpper(section.title[:1])+section.title[1:]+": "+title))
			v.lessonLines(w, g.Lessons)
			for _, l := range g.Lessons {
				shown[named{l.From, l.Anchor}] = true
			}
		}
	}
	others := slices.DeleteFunc(slices.Clone(list.All), func(l lesson.Lesson) bool { return shown[named{l.From, l.Anchor}] })
	if len(others) > 0 {
		v.sayf("%s", v.bold("About nothing named"))
		v.lessonLines(w, others)
	}
}

func (v *voice) lessonLines(w *workroom, lessons []lesson.Lesson) {
	for _, l := range lessons {
		from := string(l.From)
		if r, ok := w.journal.Find(from); ok {
			from = r.Head().Title
		}
		if l.Day != 0 {
			from = l.Day.String() + ", " + from
		}
		v.sayf("  - %s", w.journal.Titled(l.Text))
		v.sayf("    %s", from)
	}
}

type lessonJSON struct {
	Text       string       `json:"text" doc:"what to do"`
	From       journal.ID   `json:"from" doc:"the page that says so, by its ID"`
	Anchor     string       `json:"anchor" doc:"the part of that page"`
	Day        string       `json:"day,omitempty" doc:"the day of that page"`
	Build      journal.ID   `json:"build,omitempty" doc:"the build it was noted on"`
	Patterns   []journal.ID `json:"patterns,omitempty" doc:"patterns it is about"`
	Techniques []journal.ID `json:"techniques,omitempty" doc:"techniques it is about"`
	Materials  []journal.ID `json:"materials,omitempty" doc:"materials it is about"`
	People     []journal.ID `json:"people,omitempty" doc:"people it is about"`
	Garments   []string     `json:"garments,omitempty" doc:"kinds of garment it is about"`
}

func lessonsJSON(lessons []lesson.Lesson) []lessonJSON {
	out := []lessonJSON{}
	for _, l := range lessons {
		j := lessonJSON{
			Text: l.Text, From: l.From, Anchor: l.Anchor, Build: l.Build, Patterns: l.Patterns,
			Techniques: l.Techniques, Materials: l.Materials, People: l.People, Garments: l.Garments,
		}
		if l.Day != 0 {
			j.Day = l.Day.String()
		}
		out = append(out, j)
	}
	return out
}
