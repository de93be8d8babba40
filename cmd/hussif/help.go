package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"hussif/content/fold"
	"hussif/content/near"
)

// helpWidth is how wide help is printed where nobody's terminal says.
const helpWidth = 80

// exits explains the exit statuses, at the end of every command's help.
const exits = `Exit status: 0 when all went well, 1 when the journal has errors, 2 when the command could not be carried out.`

// help prints the help of a command, fitted to the terminal.
func (v *voice) help(c *cobra.Command, _ []string) {
	width := v.width
	if width == 0 {
		width = helpWidth
	}
	say := func(text string) {
		for _, line := range fold.Paragraphs(strings.TrimSpace(text), min(width, prose)) {
			v.raw(line)
		}
	}
	long := c.Long
	if long == "" {
		long = c.Short + "."
	}
	say(long)
	if c.Runnable() || c.HasAvailableSubCommands() {
		v.heading("Usage")
		for _, line := range fold.Lines("  "+usageLine(c), width, "    ") {
			v.raw(line)
		}
	}
	if c.HasExample() {
		v.heading("Examples")
		for line := range strings.SplitSeq(strings.Trim(c.Example, "\n"), "\n") {
			for _, part := range fold.Lines(line, width, "      ") {
				v.raw(part)
			}
		}
	}
	v.commandList(c)
	v.flagList("Flags", c.LocalFlags())
	v.flagList("Flags of every command", c.InheritedFlags())
	if c.Runnable() {
		v.raw("")
		say(exits)
	}
	if c.HasAvailableSubCommands() {
		v.raw("")
		say("`" + c.CommandPath() + " COMMAND --help` says more about one of them.")
	}
}

func (v *voice) heading(text string) {
	v.sayf("")
	v.sayf("%s", v.bold(text+":"))
}

// usageLine shows how a command is typed; one that only holds others needs one.
func usageLine(c *cobra.Command) string {
	if c.HasAvailableSubCommands() {
		return c.CommandPath() + " COMMAND"
	}
	return c.UseLine()
}

// commandList lists the commands below one.
func (v *voice) commandList(c *cobra.Command) {
	for _, list := range []struct {
		title string
		holds func(*cobra.Command) bool
	}{
		{"Commands", (*cobra.Command).IsAvailableCommand},
		{"More to read, with `hussif help`", (*cobra.Command).IsAdditionalHelpTopicCommand},
	} {
		var rows [][]string
		for _, sub := range c.Commands() {
			if list.holds(sub) {
				rows = append(rows, []string{"  " + sub.Name(), sub.Short})
			}
		}
		if len(rows) > 0 {
			v.heading(list.title)
			v.table(nil, rows)
		}
	}
}

// flagList lists flags with what they take.
func (v *voice) flagList(title string, flags *pflag.FlagSet) {
	var rows [][]string
	flags.VisitAll(func(f *pflag.Flag) {
		if f.Hidden {
			return
		}
		takes, says := pflag.UnquoteUsage(f)
		name := "      --" + f.Name
		if f.Shorthand != "" {
			name = "  -" + f.Shorthand + ", --" + f.Name
		}
		if takes != "" {
			name += " " + strings.ToUpper(takes)
		}
		rows = append(rows, []string{name, says})
	})
	if len(rows) > 0 {
		v.heading(title)
		v.table(nil, rows)
	}
}

// helpCommand is what `hussif help` does: cobra's own takes a slip for nothing amiss.
func helpCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "help [command]",
		Short: "Say more about a command",
		Long:  "help says what a command does and what it takes, or tells of something that concerns several.",
		Example: `  hussif help site
  hussif help json`,
		ValidArgsFunction: func(c *cobra.Command, args []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
			at, _, err := c.Root().Find(args)
			if err != nil {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			var names []cobra.Completion
			for _, sub := range at.Commands() {
				if sub.IsAvailableCommand() || sub.IsAdditionalHelpTopicCommand() {
					names = append(names, cobra.CompletionWithDesc(sub.Name(), sub.Short))
				}
			}
			return names, cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(c *cobra.Command, args []string) error {
			at, rest, err := c.Root().Find(args)
			if err != nil || len(rest) > 0 {
				return noCommand(c.Root(), args[0])
			}
			at.InitDefaultHelpFlag()
			return at.Help()
		},
	}
}

// noCommand says that there is no such command, and which may have been meant.
func noCommand(root *cobra.Command, name string) error {
	var names []string
	for _, c := range root.Commands() {
		if !c.Hidden {
			names = append(names, c.Name())
		}
	}
	if instead := near.Of(name, names); len(instead) > 0 {
		return fmt.Errorf("unknown command %q; did you mean %s?", name, strings.Join(instead, " or "))
	}
	return fmt.Errorf("unknown command %q; `hussif help` lists them all", name)
}

// flagFault says of a flag that was not taken which may have been meant.
func flagFault(c *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	if !errors.As(err, &unknown) {
		return err
	}
	var names []string
	c.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	if instead := near.Of(unknown.GetSpecifiedName(), names); len(instead) > 0 {
		return fmt.Errorf("%w; did you mean --%s?", err, strings.Join(instead, " or --"))
	}
	return fmt.Errorf("%w; `%s --help` lists what there are", err, c.CommandPath())
}
