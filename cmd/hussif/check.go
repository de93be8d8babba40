package main

import (
	"strings"

	"github.com/spf13/cobra"

	"hussif/build/check"
	"hussif/content/fold"
	"hussif/content/source"
)

func checkCommand(say *voice) *cobra.Command {
	var asJSON, rules bool
	var who audienceFlag
	c := &cobra.Command{
		Use:   "check [journal]",
		Short: "Look through a journal for slips and loose ends",
		Long: `check reads every file of a journal and tells all that is amiss at once: each
finding with its file, line and column, the line itself, and what could stand
there. Errors keep a site from being made; warnings and hints do not. Nothing in
the journal is changed. The exit status is 1 where there are errors.

With --for circle or --for public it tells instead what these will see of the journal:
every page, with its photos and measures, and what only you can judge: measures
and money told in words, and photos that may show a face.`,
		Example: `  hussif check
  hussif check ~/costumes --json
  hussif check --for circle
  hussif check --rules`,
		Args: atMostOne("journal"),
		RunE: func(_ *cobra.Command, args []string) error {
			if rules {
				say.rules()
				return nil
			}
			w, err := openJournal(firstArg(args))
			if err != nil {
				return err
			}
			if others := who.others(); others != "" {
				return say.seenBy(w, others, asJSON)
			}
			if asJSON {
				err = source.PrintJSON(say.Out, w.findings)
			} else if err = say.findings(w.findings); err == nil {
				say.sayf("%s in %s", tally(w.findings), number(len(w.journal.Records()), "page"))
			}
			if err == nil && source.Count(w.findings, source.Error) > 0 {
				err = errFound
			}
			return err
		},
	}
	c.ValidArgsFunction = completeFolder
	c.Flags().BoolVar(&asJSON, "json", false, "print the findings as JSON")
	c.Flags().Var(&who, "for", "tell what `others` will see: circle or public")
	completeAudience(c)
	c.Flags().BoolVar(&rules, "rules", false, "explain every rule, with an example of each")
	return c
}

// longestExample is how much of an example's line is shown, in columns.
const longestExample = 77

// rules explains every rule of check.
func (v *voice) rules() {
	for i, r := range check.Rules() {
		if i > 0 {
			v.sayf("")
		}
		v.sayf("%s", v.bold(r.Name))
		v.sayf("  %s", r.Doc)
		v.example("found in", r.Bad)
		v.example("not in", r.Good)
	}
}

func (v *voice) example(what, files string) {
	if files == "" {
		return
	}
	longest := longestExample
	if v.width > 0 {
		longest = min(longest, v.width-len("    "))
	}
	v.sayf("  %s:", what)
	for line := range strings.Lines(strings.Trim(files, "\n")) {
		line = strings.ToValidUTF8(strings.TrimRight(line, "\n"), "\uFFFD")
		v.raw("    " + fold.Cut(line, longest))
	}
}
