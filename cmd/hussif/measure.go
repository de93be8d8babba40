package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"hussif/build/sitting"
	"hussif/content/amend"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/near"
)

// A measureOrder is what was said at the prompt about a sitting.
type measureOrder struct {
	dir        string
	day        edtf.Day
	over, by   string
	dayGiven   bool
	overGiven  bool
	byGiven    bool
	sure       bool
	readings   []string
	personName string
}

func measureCommand(say *voice) *cobra.Command {
	var o measureOrder
	c := &cobra.Command{
		Use:   "measure person [\"measure=length\"...]",
		Short: "Measure somebody, one question a measure",
		Long: `measure asks for one measure after the other, with where the tape lies and what
it said the last time over the same layers, and adds the answers to the person's
page. Nothing else on that page is touched. It can be stopped at any time and goes
on another day. Where measures are named it asks nothing and adds those.

Measure over the layers that are worn under the garment, with a friend where you
can, and never lace tighter for the tape's sake: whoever is measured breathes and
sits at ease.`,
		Example: `  hussif measure ada
  hussif measure ada --over shift,stays --by mim
  hussif measure ada "waist=29 in" "bust=36 1/2 in" --over shift,stays`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return errors.New("who is to be measured? name a page of people/, as in `hussif measure ada`")
			}
			return nil
		},
	}
	c.Flags().StringVarP(&o.dir, "journal", "j", "", "the journal's folder")
	c.Flags().StringVar(&o.over, "over", "", "what is worn, from the skin out, as in shift,stays (as the last time)")
	c.Flags().StringVar(&o.by, "by", "", "who measures")
	c.Flags().BoolVar(&o.sure, "sure", false, "take values that look like a slip too")
	on := onFlag(c, today())
	c.RunE = func(c *cobra.Command, args []string) error {
		o.personName, o.readings, o.day = args[0], args[1:], on.day
		o.dayGiven, o.overGiven, o.byGiven = c.Flags().Changed("on"), c.Flags().Changed("over"), c.Flags().Changed("by")
		return measurePerson(c.Context(), say, o)
	}
	c.ValidArgsFunction = completeNames(&o.dir, journal.KindPerson)
	return c
}

// measurePerson finds or begins the person's page and has the measures taken.
func measurePerson(ctx context.Context, say *voice, o measureOrder) error {
	w, err := openJournal(o.dir)
	if err != nil {
		return err
	}
	say.warn(w)
	m := &measuring{say: say, ask: newAsker(ctx, say.Streams), w: w, order: o}
	m.ask.stop = "stop"
	r, err := w.called(o.personName, journal.KindPerson)
	if err != nil {
		if len(o.readings) > 0 && !m.ask.typed {
			return err
		}
		if r, err = m.newPerson(o.personName, err); err != nil {
			return m.ended(err)
		}
	}
	m.person = r.(*journal.Person)
	if len(o.readings) > 0 {
		return m.given()
	}
	if m.state, err = keptFile(w.dir, m.person.ID); err != nil {
		m.notKept(err)
	}
	return m.ended(m.asked())
}

// newPerson offers to begin a page for somebody who has none; unknown says so.
func (m *measuring) newPerson(name string, unknown error) (journal.Record, error) {
	named := stem(name)
	if named == "" {
		return nil, unknown
	}
	page := "people/" + named + ".md"
	file := filepath.Join(m.w.dir, filepath.FromSlash(page))
	if _, err := os.Lstat(file); err == nil {
		return nil, fmt.Errorf("%w; %s is there but is no page of the journal (see `hussif check`)", unknown, page)
	}
	if err := throughLink(m.w.dir, page); err != nil {
		return nil, fmt.Errorf("%w; %w", unknown, err)
	}
	m.ask.sayf("%v", unknown)
	if yes, err := m.ask.yes("begin a page for "+name+" in "+page+"?", false); err != nil {
		return nil, err
	} else if !yes {
		return nil, errors.New("nobody was measured")
	}
	title := ""
	if named != name {
		title = "title: " + amend.Inline(amend.Text(name)) + "\n"
	}
	if err := writeNew(file, []byte("---\n"+title+"measured:\n---\n")); err != nil {
		if errors.Is(err, fs.ErrExist) {
			return nil, fmt.Errorf("%s is there already", page)
		}
		return nil, fmt.Errorf("beginning a page: %w", err)
	}
	var err error
	if m.w, err = openJournal(m.order.dir); err != nil {
		return nil, err
	}
	return m.w.called(named, journal.KindPerson)
}

// layers reads what is worn, from the skin out, with commas or "and" between.
func layers(text string) []string {
	out := []string{}
	for _, part := range strings.Split(text, ",") {
		var layer []string
		for _, word := range append(strings.Fields(part), "and") {
			if word != "and" {
				layer = append(layer, word)
			} else if len(layer) > 0 {
				out, layer = append(out, strings.Join(layer, " ")), nil
			}
		}
	}
	if f := measure.Foundation(out); f.Key() == "" {
		return []string{} // "nothing" and "unclothed" are no layers
	}
	return out
}

// stranger returns a layer that the journal has nowhere and that is almost like one
// it has, with that.
func (m *measuring) stranger(over []string) (layer string, instead []string) {
	known := sitting.Layers(m.w.journal)
	worn := make(map[string]bool)
	for _, k := range known {
		worn[layerName(k)] = true
	}
	for _, layer := range over {
		if worn[layerName(layer)] {
			continue
		}
		if instead := near.Of(layer, known); len(instead) > 0 {
			return layer, instead
		}
	}
	return "", nil
}

// layerName tells layers apart as a foundation does, however many are worn.
func layerName(layer string) string {
	_, name, _ := strings.Cut(measure.Foundation{layer}.Key(), " ")
	return name
}
