package main

import (
	"context"
	"errors"
	"io"
	"strings"

	"github.com/spf13/cobra"
)

// version is raised with each release.
const version = "0.1.0"

// Streams are where a command reads and writes.
type Streams struct {
	In       io.Reader
	Out, Err io.Writer
}

// Exit statuses. A maker's words that need mending are told apart from a command
// that could not be carried out.
const (
	exitDone  = 0
	exitFound = 1 // the journal has errors, or pictures were not taken
	exitFault = 2 // wrong usage, or trouble with the disk
)

// errFound ends a command whose findings have been printed.
var errFound = errors.New("the journal has errors")

// Run carries out one command line and returns the exit status.
func Run(ctx context.Context, args []string, s Streams) int {
	say := newVoice(s)
	root := rootCommand(say)
	root.SetArgs(args)
	root.SetIn(s.In)
	root.SetOut(s.Out)
	root.SetErr(s.Err)
	switch err := root.ExecuteContext(ctx); {
	case err == nil:
		return exitDone
	case errors.Is(err, errFound):
		return exitFound
	default:
		say.fault(err)
		return exitFault
	}
}

func rootCommand(say *voice) *cobra.Command {
	root := &cobra.Command{
		Use:   "hussif",
		Short: "A project journal for costume builds",
		Long: `hussif checks a folder of notes about costume builds and makes a site of them:
what fits today and where it is short, what was altered and whether that did what
it should, and all that was to be done otherwise next time.`,
		Example: `  hussif begin my-journal      start a journal
  hussif check                 look through the one in this folder
  hussif preview --open        see its site while you write
  hussif site                  make its site in ./site
  hussif demo                  see a finished one first`,
		Version:       version,
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          cobra.ArbitraryArgs,
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) > 0 {
				return noCommand(c, args[0])
			}
			return c.Help()
		},
	}
	root.AddCommand(
		beginCommand(say), checkCommand(say), siteCommand(say), previewCommand(say), fitCommand(say), takedownCommand(say), nextCommand(say), demoCommand(say),
		tableCommand(say), measureCommand(say), noteCommand(say), photosCommand(say), circleCommand(say), schemaCommand(say), workCommand(say), jsonTopic(say), developCommand(),
	)
	root.SetHelpFunc(say.help)
	root.SetHelpCommand(helpCommand())
	root.SetFlagErrorFunc(flagFault)
	if err := completeFlags(root); err != nil {
		panic(err) // a flag that is not there, or completed twice
	}
	root.InitDefaultHelpCmd()
	root.InitDefaultCompletionCmd()
	for _, c := range root.Commands() {
		if c.Name() == "completion" {
			shells(c)
		}
	}
	return root
}

// shells puts what cobra says of completion into words like our own.
func shells(c *cobra.Command) {
	c.Short = "Write what a shell needs to complete commands, names and dates"
	c.Long = "completion writes a script for a shell, by which the Tab key completes commands, flags, and the names of\n" +
		"builds, people, patterns, seams and tables of the journal around."
	c.Example = `  source <(hussif completion bash)
  hussif completion zsh > ~/.zfunc/_hussif
  hussif completion fish > ~/.config/fish/completions/hussif.fish
  hussif completion powershell | Out-String | Invoke-Expression`
	for line := range strings.SplitSeq(c.Example, "\n") {
		for _, shell := range c.Commands() {
			if strings.Contains(line, "hussif completion "+shell.Name()) {
				shell.Short, shell.Long, shell.Example = "Write the script for "+shell.Name(), "", line
			}
		}
	}
}
