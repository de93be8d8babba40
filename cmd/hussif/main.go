// Hussif keeps a project journal for costume builds: it checks a folder of notes
// and makes a site of them that says what fits, where it is short, and what to do
// otherwise next time.
package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"
)

func main() { os.Exit(run()) }

// run is main for the tests, which register it as a command.
func run() int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	return Run(ctx, os.Args[1:], Streams{In: os.Stdin, Out: os.Stdout, Err: os.Stderr})
}
