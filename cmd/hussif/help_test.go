package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/spf13/cobra"

	"hussif/content/fold"
)

// eachCommand visits all commands and those below them.
func eachCommand(c *cobra.Command, visit func(*cobra.Command)) {
	for _, sub := range c.Commands() {
		if !sub.Hidden {
			visit(sub)
			eachCommand(sub, visit)
		}
	}
}

func TestEveryCommandExplainsItself(t *testing.T) {
	var out bytes.Buffer
	say := newVoice(Streams{Out: &out, Err: &out})
	root := rootCommand(say)
	seen := 0
	eachCommand(root, func(c *cobra.Command) {
		seen++
		if c.Short == "" || strings.HasSuffix(c.Short, ".") {
			t.Errorf("%s: in short: %q", c.CommandPath(), c.Short)
		}
		if c.Runnable() && !strings.Contains(c.Example, c.CommandPath()) {
			t.Errorf("%s has no example", c.CommandPath())
		}
		for _, width := range []int{0, 40, 80, 120} {
			out.Reset()
			say.width = width
			if err := c.Help(); err != nil {
				t.Fatal(err)
			}
			for line := range strings.SplitSeq(out.String(), "\n") {
				if width > 0 && fold.Width(line) > width && len(strings.Fields(line)) > 1 {
					t.Errorf("%s on %d columns: %q", c.CommandPath(), width, line)
				}
			}
			if c.Runnable() && !strings.Contains(out.String(), "Exit status:") {
				t.Errorf("the help of %s says nothing of its exit status", c.CommandPath())
			}
		}
	})
	if seen < 10 {
		t.Errorf("%d commands", seen)
	}
}

// A shell completes every flag that takes a value, and every argument.
func TestEveryValueIsCompleted(t *testing.T) {
	root := rootCommand(newVoice(Streams{Out: t.Output(), Err: t.Output()}))
	for _, c := range root.Commands() {
		if c.Name() == "completion" || c.Hidden || !c.Runnable() {
			continue
		}
		if c.ValidArgsFunction == nil && len(c.ValidArgs) == 0 {
			t.Errorf("the arguments of %s are not completed", c.Name())
		}
		for _, name := range []string{"journal", "on", "output"} {
			f := c.Flag(name)
			if f == nil || c.Name() == "table" && name == "output" {
				continue // a file, as shells complete by themselves
			}
			if _, ok := c.GetFlagCompletionFunc(name); !ok && len(f.Annotations) == 0 {
				t.Errorf("the flag --%s of %s is not completed", name, c.Name())
			}
		}
	}
}
