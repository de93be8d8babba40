package main

import (
	"os"
	"os/exec"

	"github.com/spf13/cobra"

	"hussif/build/develop"
)

// developing is the command of the process in which HEIC pictures are developed. It
// is for photos to call, not for a maker.
const developing = "develop-heic"

func developCommand() *cobra.Command {
	return &cobra.Command{
		Use:    developing,
		Hidden: true,
		Args:   cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			return develop.Serve(os.Stdin, os.Stdout)
		},
	}
}

// developProcess returns the command that runs this program as that process.
func developProcess() (*exec.Cmd, error) {
	self, err := os.Executable()
	if err != nil {
		return nil, err
	}
	c := exec.Command(self, developing)
	c.Args[0] = "hussif"
	return c, nil
}
