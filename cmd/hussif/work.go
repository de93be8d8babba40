package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"hussif/build/worksheet"
)

func workCommand(say *voice) *cobra.Command {
	var schemas, guide bool
	c := &cobra.Command{
		Use:   "work name",
		Short: "Work out pleats, piping, panels, spacing, skirts and yardage",
		Long: `work does the arithmetic of the workroom: with the numbers in, what to cut, and
what to mind. Each worksheet takes its figures as flags and at a terminal asks for
those that are missing; any one that follows from the others may be left out. A
figure may be taken from the journal: "waist of wren over stays", "left over
striped-linen". The same worksheets stand in notes, in a block of code that begins
with the word work and the name.`,
		Example: `  hussif work knife-pleats
  hussif work knife-pleats --finished "34 in" --shown "1 in" --depth "1 in"
  hussif work spacing --length "14 in" --number 7 --json
  hussif work --guide`,
		ValidArgsFunction: cobra.NoFileCompletions, // the worksheets are commands
	}
	c.Flags().BoolVar(&schemas, "schema", false, "print what each takes as JSON Schema")
	c.Flags().BoolVar(&guide, "guide", false, "print the guide to all of them as Markdown")
	c.RunE = func(_ *cobra.Command, args []string) error {
		switch {
		case len(args) > 0:
			return noSheet(args[0])
		case guide:
			_, err := fmt.Fprint(say.Out, worksheet.Guide())
			return err
		case schemas:
			all := make(map[string]any)
			for _, s := range worksheet.All() {
				all[s.About().Name] = worksheet.Schema(s)
			}
			return say.json(all)
		}
		say.sayf("%s", strings.TrimRight(sheetList(), "\n"))
		say.sayf("")
		say.sayf("`hussif work NAME` works one out; `hussif work NAME --help` tells what it takes.")
		return nil
	}
	for _, s := range worksheet.All() {
		c.AddCommand(sheetCommand(say, s.About()))
	}
	return c
}

// sheetList names the worksheets, one a line.
func sheetList() string {
	var b strings.Builder
	for _, s := range worksheet.All() {
		a := s.About()
		fmt.Fprintf(&b, "  %-16s %s\n", worksheet.Flag(a.Name), a.Short)
	}
	return b.String()
}

func noSheet(name string) error {
	if _, instead := worksheet.Find(name); len(instead) > 0 {
		return fmt.Errorf("no worksheet is called %q; did you mean %s?", name, strings.Join(instead, " or "))
	}
	return fmt.Errorf("no worksheet is called %q; there are %s", name, strings.Join(worksheet.Names(), ", "))
}

// sheetCommand is the command of one worksheet, made of what it says about itself.
func sheetCommand(say *voice, about worksheet.About) *cobra.Command {
	sheet, _ := worksheet.Find(about.Name)
	inputs := sheet.Inputs()
	long := about.Long + "\n\n  " + strings.ReplaceAll(about.Formula, "; ", "\n  ") + "\n\nSource: " + about.Source + "."
	if about.Care != "" {
		long += "\n\nTake care: " + about.Care
	}
	c := &cobra.Command{
		Use:     worksheet.Flag(about.Name),
		Aliases: spellings(about),
		Short:   about.Short,
		Long:    long,
		Example: "  hussif work " + worksheet.Flag(about.Name) + exampleFlags(about.Example),
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 0 {
				return fmt.Errorf("%s takes its figures as flags, such as --%s %q; %q is too much", about.Name, inputs[0].Flag(), inputs[0].Example, args[0])
			}
			return nil
		},
	}
	w := working{name: about.Name, typed: make(map[string]*typedFlag)}
	for _, in := range inputs {
		doc := in.Doc
		if in.Default != "" {
			doc += " (" + in.Default + ")"
		}
		w.typed[in.Name] = &typedFlag{takes: in.Takes()}
		c.Flags().Var(w.typed[in.Name], in.Flag(), doc)
		if options := in.Options(); options != nil {
			_ = c.RegisterFlagCompletionFunc(in.Flag(), cobra.FixedCompletions(options, cobra.ShellCompDirectiveNoFileComp)) // fails for no flag only
		}
	}
	c.Flags().SortFlags = false
	c.Flags().StringVarP(&w.dir, "journal", "j", "", "the journal's `folder`, for its unit and its figures")
	c.Flags().StringVar(&w.unit, "unit", "", "`unit` of bare numbers and of answers: in, cm or mm")
	asJSON := c.Flags().Bool("json", false, "print as JSON")
	asSchema := c.Flags().Bool("schema", false, "print the JSON Schema of what it takes")
	c.RunE = func(c *cobra.Command, _ []string) error {
		if *asSchema {
			return say.json(worksheet.Schema(sheet))
		}
		if err := w.format(); err != nil {
			return err
		}
		paper, err := w.work(c.Context(), say, *asJSON)
		if err != nil {
			return err
		}
		if *asJSON {
			if err := say.json(paper.Record()); err != nil {
				return err
			}
			return faults(about.Name, paper)
		}
		if err := faults(about.Name, paper); err != nil {
			return err
		}
		say.paper(paper)
		return nil
	}
	return c
}

// A typedFlag takes the text of an input, more than once where it has several items.
type typedFlag struct {
	texts []string
	takes string
}

// Set implements pflag.Value.
func (f *typedFlag) Set(text string) error { f.texts = append(f.texts, text); return nil }

func (f *typedFlag) String() string { return strings.Join(f.texts, "; ") }

// Type implements pflag.Value.
func (f *typedFlag) Type() string { return f.takes }

// spellings returns the other ways to write a worksheet's name.
func spellings(about worksheet.About) []string {
	var all []string
	for _, name := range append([]string{about.Name}, about.Also...) {
		for _, spelling := range []string{worksheet.Flag(name), name} {
			if spelling != worksheet.Flag(about.Name) && !slices.Contains(all, spelling) {
				all = append(all, spelling)
			}
		}
	}
	return all
}

// exampleFlags turns the lines of a block into flags.
func exampleFlags(block string) string {
	var b strings.Builder
	for _, line := range strings.Split(block, "\n") {
		name, value, _ := strings.Cut(line, ": ")
		value = strings.Trim(value, "[]{}")
		if strings.Contains(value, " ") {
			value = `"` + value + `"`
		}
		fmt.Fprintf(&b, " --%s %s", worksheet.Flag(name), value)
	}
	return b.String()
}

// faults returns what is wrong with what was given, one a line.
func faults(name string, p *worksheet.Paper) error {
	if len(p.Faults) == 0 {
		return nil
	}
	var all []string
	for _, f := range p.Faults {
		text := f.Text
		if f.Input != "" && !f.Name {
			text = "--" + worksheet.Flag(f.Input) + ": " + text
		}
		switch {
		case len(f.Instead) > 0:
			text += "; did you mean " + strings.Join(f.Instead, " or ") + "?"
		case strings.HasPrefix(f.Help, "add `"): // a line for a note
			text += "; give it with a flag, see `hussif work " + worksheet.Flag(name) + " --help`"
		case f.Help != "":
			text += "; " + f.Help
		}
		all = append(all, text)
	}
	return errors.New(strings.Join(all, "\n        "))
}
