package main

import (
	"context"
	"fmt"
	"os/exec"
	"path/filepath"
	"runtime"
	"sync"
	"time"

	"github.com/spf13/cobra"

	"hussif/build/photo"
	"hussif/build/preview"
)

func previewCommand(say *voice) *cobra.Command {
	var o previewing
	c := &cobra.Command{
		Use:   "preview [journal]",
		Short: "Show the site of a journal while you write",
		Long: `preview shows the site of a journal in your browser and keeps it as the journal is
while you write: save a note, and the page that is open shows it, where you were
reading. What is found amiss stands at the foot of the page and here; while there
are errors the pages stay as they were. Photos are made ready when a page shows
them. Only this computer can see it. Nothing is written but to your cache folder.
Ctrl-C ends it.`,
		Example: `  hussif preview
  hussif preview ~/costumes --open`,
		Args: atMostOne("journal"),
		RunE: func(c *cobra.Command, args []string) error {
			o.dir = firstArg(args)
			if o.dir == "" {
				o.dir = journalAround(".")
			}
			if !c.Flags().Changed("port") {
				o.port = -1
			}
			return o.run(c.Context(), say)
		},
	}
	c.ValidArgsFunction = completeFolder
	c.Flags().IntVar(&o.port, "port", preview.Port, "the `port` to show it at; the next free one where this one is not asked for")
	c.Flags().BoolVar(&o.open, "open", false, "open it in your browser")
	c.Flags().BoolVar(&o.poll, "poll", false, "look at all files every second, for folders that cannot be watched, as on some network drives")
	return c
}

// previewing is a preview that runs.
type previewing struct {
	dir        string
	port       int
	open, poll bool

	mu        sync.Mutex      // held while something is said
	known     map[string]bool // the findings there were last
	sound     map[string]bool // those there were when the journal was last sound
	trouble   string          // that was told last
	begun     bool            // whether the journal has been looked at
	read      chan struct{}   // closed then
	announced chan struct{}   // closed when the address has been told
	failed    chan error      // that the journal could not even be looked at once
}

// soon is how long the address waits for the journal to be read, so that for what is
// no journal none is told.
const soon = 300 * time.Millisecond

func (o *previewing) run(ctx context.Context, say *voice) error {
	if err := isFolder(o.dir); err != nil {
		return err
	}
	store, err := openStore(say)
	if err != nil {
		return err
	}
	absolute, err := filepath.Abs(o.dir)
	if err != nil {
		return err
	}
	maker, err := preview.NewBench(absolute, &photo.Darkroom{Store: store, Journal: absolute}, today)
	if err != nil {
		return err
	}
	defer maker.Close()
	l, err := preview.Listen(o.port)
	if err != nil {
		return err
	}
	o.read, o.announced, o.failed = make(chan struct{}), make(chan struct{}), make(chan error, 1)

	ctx, stop := context.WithCancel(ctx)
	batches := make(chan preview.Batch)
	window := preview.NewWindow(maker, func(c preview.Change) { o.tell(say, c, stop) })
	watcher := preview.Watcher{Dir: absolute, Poll: o.poll, Warn: func(text string) { o.warn(say, text) }}
	var working sync.WaitGroup
	working.Go(func() { watcher.Run(ctx, batches) })
	working.Go(func() { eachDay(ctx, batches) })
	working.Go(func() { window.Follow(ctx, batches) })
	var serving error
	working.Go(func() {
		serving = window.Serve(ctx, l)
		stop()
	})
	o.announce(ctx, say, "http://"+l.Addr().String()+"/")
	working.Wait()
	select {
	case err := <-o.failed:
		return err
	default:
	}
	if serving == nil {
		say.sayf("The preview has ended.")
	}
	return serving
}

// announce tells the address, unless there turns out to be no journal.
func (o *previewing) announce(ctx context.Context, say *voice, address string) {
	defer close(o.announced)
	select {
	case <-o.read:
	case <-time.After(soon):
	case <-ctx.Done():
		return
	}
	o.mu.Lock()
	defer o.mu.Unlock()
	say.sayf("The journal in %s is shown at %s until you press Ctrl-C", place(o.dir), say.bold(address))
	if o.open {
		if err := openInBrowser(address); err != nil {
			fmt.Fprintf(say.Err, "hussif: no browser could be opened; type the address into one yourself (%v)\n", err)
		}
	}
}

// eachDay has the journal looked at when another day begins, since pages tell what
// is true today.
func eachDay(ctx context.Context, out chan<- preview.Batch) {
	day := today()
	look := time.NewTicker(time.Minute)
	defer look.Stop()
	for {
		select {
		case <-ctx.Done():
			return
		case <-look.C:
		}
		if now := today(); now != day {
			day = now
			select {
			case out <- preview.Batch{All: true}:
			case <-ctx.Done():
			}
		}
	}
}

// openInBrowser opens an address in the browser that the system would.
func openInBrowser(address string) error {
	switch runtime.GOOS {
	case "darwin":
		return exec.Command("open", address).Start()
	case "windows":
		return exec.Command("rundll32", "url.dll,FileProtocolHandler", address).Start()
	}
	return exec.Command("xdg-open", address).Start()
}
