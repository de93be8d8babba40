package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"hussif/build/fit"
	"hussif/build/room"
	"hussif/build/wayin"
	"hussif/content/journal"
	"hussif/content/near"
)

func takedownCommand(say *voice) *cobra.Command {
	var dir string
	var asJSON bool
	c := &cobra.Command{
		Use:   "takedown build [seam...]",
		Short: "Say which seams to open, in what order, and what to mark first",
		Long: `takedown says what must be opened to reach some seams of a garment, in which
order, and how they go back; and which pieces come loose without a recorded mark,
to be marked before the first stitch is cut. Where no seam is named it takes those
of the best plan for what is short.`,
		Example: `  hussif takedown grey-jacket
  hussif takedown grey-jacket side sleeve
  hussif takedown grey-jacket --json`,
		Args: cobra.MinimumNArgs(1),
	}
	c.Flags().StringVarP(&dir, "journal", "j", "", "the journal's folder")
	c.Flags().BoolVar(&asJSON, "json", false, "print as JSON")
	on := onFlag(c, today())
	c.RunE = func(_ *cobra.Command, args []string) error {
		w, err := openJournal(dir)
		if err != nil {
			return err
		}
		r, ok := w.journal.Find(args[0], journal.KindBuild)
		if !ok {
			return w.noSuch(args[0])
		}
		b := r.(*journal.Build)
		seams := args[1:]
		rates := wayin.RatesOf(w.journal)
		if len(seams) == 0 {
			p := room.For(w.journal, b, fit.Of(w.journal, b, on.day), rates)
			if len(p.Options) == 0 {
				return fmt.Errorf("by what the journal knows on %s no seam of %s has to be opened; name the seams to reach", on.day, b.Title)
			}
			for _, s := range p.Options[0].Seams {
				seams = append(seams, s.Seam)
			}
		}
		for _, s := range seams {
			if err := knownSeam(b, s); err != nil {
				return err
			}
		}
		way := wayin.Find(b, rates, seams...)
		if asJSON {
			return say.json(wayOf(way))
		}
		say.takedown(w.journal, b, seams, way)
		return nil
	}
	return c
}

func knownSeam(b *journal.Build, name string) error {
	var names []string
	for _, s := range b.Seams {
		if strings.EqualFold(s.Name.Text, name) {
			return nil
		}
		names = append(names, s.Name.Text)
	}
	if instead := near.Of(name, names); len(instead) > 0 {
		return fmt.Errorf("%s has no seam called %q; did you mean %s?", b.Title, name, strings.Join(instead, " or "))
	}
	return fmt.Errorf("%s has no seam called %q; it has %s", b.Title, name, strings.Join(names, ", "))
}

func (v *voice) takedown(j *journal.Journal, b *journal.Build, seams []string, w wayin.Way) {
	f := j.Settings.Format
	v.sayf("%s", v.bold(fmt.Sprintf("Take-down of %s, to reach %s", b.Title, strings.Join(seams, ", "))))
	marked := false
	for _, l := range w.Loose {
		if len(l.Missing) == 0 {
			continue
		}
		if !marked {
			v.sayf("mark before the first stitch is cut:")
			marked = true
		}
		var missing []string
		for _, m := range l.Missing {
			missing = append(missing, m.String())
		}
		v.sayf("  [ ] %s: %s", l.Name, strings.Join(missing, "; "))
	}
	v.sayf("open, in this order:")
	v.steps(w.Out, func(s wayin.Step) string {
		words := "whole"
		if !s.Whole {
			words = "at the crossings with " + strings.Join(s.Across, " and ")
		}
		if s.Known {
			words += ", " + f.Length(s.Length)
		} else {
			words += ", length not noted"
		}
		return words
	})
	v.sayf("%s", loadWords(f, w.Load))
	v.sayf("sew back, in this order:")
	v.steps(w.Back, func(s wayin.Step) string { return s.Seam.Sewn })
	for _, fault := range w.Faults {
		v.sayf("mind: %s", fault.Text())
	}
	v.sayf("take care: cut away from your hand and from the cloth, in good light; ask a conservator about anything old or of value")
}

func (v *voice) steps(steps []wayin.Step, words func(wayin.Step) string) {
	for i, s := range steps {
		line := fmt.Sprintf("  [ ] %d. %s", i+1, s.Seam.Name.Text)
		if said := words(s); said != "" {
			line += ": " + said
		}
		v.sayf("%s", line)
	}
}

type wayJSON struct {
	Out           []stepJSON  `json:"out"`
	Back          []string    `json:"back"`
	Length        float64     `json:"length_mm"`
	LengthUnknown []string    `json:"length_unknown,omitempty"`
	OpeningHours  *float64    `json:"opening_hours,omitempty"`
	SewingHours   *float64    `json:"sewing_hours,omitempty"`
	Loose         []looseJSON `json:"loose,omitempty"`
	Faults        []string    `json:"faults,omitempty"`
}

type stepJSON struct {
	Seam   string   `json:"seam"`
	Whole  bool     `json:"whole"`
	Across []string `json:"across,omitempty"`
	Length *float64 `json:"length_mm,omitempty"`
	Sewn   string   `json:"sewn,omitempty"`
}

type looseJSON struct {
	Piece    string   `json:"piece"`
	Recorded []string `json:"recorded,omitempty"`
	Missing  []string `json:"missing,omitempty"`
}

func wayOf(w wayin.Way) wayJSON {
	out := wayJSON{Out: []stepJSON{}, Back: []string{}, Length: millimetres(w.Length), LengthUnknown: w.LengthUnknown}
	for _, s := range w.Out {
		step := stepJSON{Seam: s.Seam.Name.Text, Whole: s.Whole, Across: s.Across, Sewn: s.Seam.Sewn}
		if s.Known {
			step.Length = new(millimetres(s.Length))
		}
		out.Out = append(out.Out, step)
	}
	for _, s := range w.Back {
		out.Back = append(out.Back, s.Seam.Name.Text)
	}
	if w.Opening.Known {
		out.OpeningHours = new(w.Opening.For.Hours())
	}
	if w.Sewing.Known {
		out.SewingHours = new(w.Sewing.For.Hours())
	}
	for _, l := range w.Loose {
		loose := looseJSON{Piece: l.Name}
		for _, m := range l.Recorded {
			loose.Recorded = append(loose.Recorded, m.String())
		}
		for _, m := range l.Missing {
			loose.Missing = append(loose.Missing, m.String())
		}
		out.Loose = append(out.Loose, loose)
	}
	for _, fault := range w.Faults {
		out.Faults = append(out.Faults, fault.Text())
	}
	return out
}
