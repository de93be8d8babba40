package main

import (
	"context"
	"errors"
	"io"

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
	exitFound = 1 // the journal has errors
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
		RunE:          func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	root.AddCommand(
		beginCommand(say), checkCommand(say), siteCommand(say), previewCommand(say), fitCommand(say), takedownCommand(say), nextCommand(say), demoCommand(say),
		tableCommand(say),
	)
	return root
}
