package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"hussif/build/fit"
	"hussif/build/room"
	"hussif/build/wayin"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/near"
	"hussif/content/quantity"
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
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return errors.New("which garment? Name a build, as in `hussif takedown grey-jacket`")
			}
			return nil
		},
	}
	c.Flags().StringVarP(&dir, "journal", "j", "", "the journal's `folder`")
	c.Flags().BoolVar(&asJSON, "json", false, "print as JSON")
	on := onFlag(c, today())
	c.RunE = func(_ *cobra.Command, args []string) error {
		w, err := openJournal(dir)
		if err != nil {
			return err
		}
		say.warn(w)
		r, err := w.called(args[0], journal.KindBuild)
		if err != nil {
			return err
		}
		d, err := w.takeDown(r.(*journal.Build), args[1:], on.day)
		if err != nil {
			return err
		}
		if asJSON {
			return say.json(d.json())
		}
		say.takedown(w.journal, d)
		return nil
	}
	c.ValidArgsFunction = completeSeams(&dir)
	return c
}

// A takeDown is what is taken down, for what.
type takeDown struct {
	build *journal.Build
	asked []string    // seams to reach; none where closings alone are moved
	moves []room.Move // where nobody named a seam, what the plan moves too
	way   wayin.Way
}

// takeDown finds the way in to some seams, or to those of the best plan where none
// are named.
func (w *workroom) takeDown(b *journal.Build, seams []string, day edtf.Day) (takeDown, error) {
	rates := wayin.RatesOf(w.journal)
	if len(seams) > 0 {
		for _, s := range seams {
			if err := knownSeam(b, s); err != nil {
				return takeDown{}, err
			}
		}
		return takeDown{build: b, asked: seams, way: wayin.Find(b, rates, seams...)}, nil
	}
	p := room.For(w.journal, b, fit.Of(w.journal, b, day), rates)
	d := takeDown{build: b, moves: p.Moves}
	switch {
	case len(p.Options) > 0:
		d.way = p.Options[0].Way
		for _, s := range p.Options[0].Seams {
			d.asked = append(d.asked, s.Seam)
		}
	case len(p.Moves) == 0:
		return d, fmt.Errorf("by what the journal knows on %s no seam of %s has to be opened; name the seams to reach", day, b.Title)
	}
	return d, nil
}

func knownSeam(b *journal.Build, name string) error {
	var names []string
	for _, s := range b.Seams {
		if strings.EqualFold(strings.Join(strings.Fields(s.Name.Text), " "), strings.Join(strings.Fields(name), " ")) {
			return nil
		}
		names = append(names, s.Name.Text)
	}
	switch instead := near.Of(name, names); {
	case len(names) == 0:
		return fmt.Errorf("%s lists no seams yet; add them under `seams:`", b.Title)
	case len(instead) > 0:
		return fmt.Errorf("%s has no seam called %q; did you mean %s?", b.Title, name, strings.Join(instead, " or "))
	}
	return fmt.Errorf("%s has no seam called %q; it has %s", b.Title, name, strings.Join(names, ", "))
}

func (v *voice) takedown(j *journal.Journal, d takeDown) {
	f := j.Settings.Format
	if len(d.asked) == 0 {
		v.sayf("%s", v.bold(fmt.Sprintf("No seam of %s has to be opened", d.build.Title)))
		v.moves(f, d.moves)
		return
	}
	v.sayf("%s", v.bold(fmt.Sprintf("Take-down of %s, to reach %s", d.build.Title, strings.Join(d.asked, ", "))))
	for _, fault := range d.way.Faults {
		v.sayf("mind: %s", fault.Text())
	}
	v.moves(f, d.moves)
	v.marks(d.way.Loose)
	ordered := !d.way.Circular()
	v.steps("open", d.way.Out, ordered, func(s wayin.Step) string { return s.Words(f) })
	v.sayf("%s", d.way.Load.Words(f))
	v.steps("sew back", d.way.Back, ordered, func(s wayin.Step) string { return s.Seam.Sewn })
	v.sayf("take care: cut away from your hand and from the cloth, in good light; ask a conservator about anything old or of value")
}

func (v *voice) moves(f quantity.Format, moves []room.Move) {
	for _, m := range moves {
		v.sayf("%s", m.Words(f))
	}
}

// marks lists what has to be marked on what comes loose.
func (v *voice) marks(loose []wayin.Loose) {
	marked := false
	for _, l := range loose {
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
}

// steps lists seams in their order, or without one where none can be right.
func (v *voice) steps(what string, steps []wayin.Step, ordered bool, words func(wayin.Step) string) {
	if ordered {
		v.sayf("%s, in this order:", what)
	} else {
		v.sayf("%s, in an order that the journal cannot tell:", what)
	}
	for i, s := range steps {
		line := s.Seam.Name.Text
		if ordered {
			line = fmt.Sprintf("%d. %s", i+1, line)
		}
		if said := words(s); said != "" {
			line += ": " + said
		}
		v.sayf("  [ ] %s", line)
	}
}

type takeDownJSON struct {
	Build journal.ID `json:"build" doc:"the build, by its ID"`
	Seams []string   `json:"seams" doc:"the seams to reach"`
	Moves []moveJSON `json:"moves,omitempty" doc:"closings to be moved first"`
	wayJSON
}

func (d takeDown) json() takeDownJSON {
	return takeDownJSON{Build: d.build.ID, Seams: append([]string{}, d.asked...), Moves: movesOf(d.moves), wayJSON: wayOf(d.way)}
}

type wayJSON struct {
	Out           []stepJSON  `json:"out" doc:"seams to open, in this order"`
	Back          []string    `json:"back" doc:"seams to sew again, in this order"`
	Length        float64     `json:"length_mm" doc:"how much is opened in all"`
	LengthUnknown []string    `json:"length_unknown,omitempty" doc:"seams whose length nobody wrote down"`
	OpeningHours  *float64    `json:"opening_hours,omitempty" doc:"how long opening takes"`
	SewingHours   *float64    `json:"sewing_hours,omitempty" doc:"how long sewing again takes"`
	Loose         []looseJSON `json:"loose,omitempty" doc:"pieces that come loose"`
	Faults        []string    `json:"faults,omitempty" doc:"why the order cannot be right"`
}

type stepJSON struct {
	Seam   string   `json:"seam" doc:"the seam"`
	Asked  bool     `json:"asked" doc:"whether it was asked for, and is not only in the way"`
	Side   string   `json:"side,omitempty" doc:"the side of the body; both where missing"`
	Whole  bool     `json:"whole" doc:"whether all of it is opened"`
	Across []string `json:"across,omitempty" doc:"the seams at whose crossing it is opened, where not all of it is"`
	Length *float64 `json:"length_mm,omitempty" doc:"how much of it is opened"`
	Sewn   string   `json:"sewn,omitempty" doc:"stitch and thread"`
}

type looseJSON struct {
	Piece    string   `json:"piece" doc:"the piece"`
	Recorded []string `json:"recorded,omitempty" doc:"what was marked on it"`
	Missing  []string `json:"missing,omitempty" doc:"what must be marked before the first stitch is cut"`
}

func wayOf(w wayin.Way) wayJSON {
	out := wayJSON{Out: []stepJSON{}, Back: []string{}, Length: millimetres(w.Length), LengthUnknown: w.LengthUnknown}
	for _, s := range w.Out {
		step := stepJSON{Seam: s.Seam.Name.Text, Asked: s.Asked, Side: sideOf(s.Side), Whole: s.Whole, Across: s.Across, Sewn: s.Seam.Sewn}
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
