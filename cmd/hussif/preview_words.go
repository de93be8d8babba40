package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"time"

	"hussif/build/preview"
	"hussif/content/source"
)

// tell says what came of looking at the journal, where that is news. The first time
// no journal could be read the preview is stopped.
func (o *previewing) tell(say *voice, c preview.Change, stop func()) {
	first := !o.begun
	if first && c.Trouble != nil {
		o.failed <- noJournal(o.dir, c.Trouble)
		stop()
		return
	}
	if first {
		o.begun = true
		close(o.read)
		<-o.announced
	}
	o.mu.Lock()
	defer o.mu.Unlock()
	trouble := ""
	if c.Trouble != nil {
		trouble = c.Trouble.Error()
	}
	back := trouble == "" && o.trouble != ""
	switch {
	case trouble != "" && trouble != o.trouble:
		fmt.Fprintf(say.Err, "hussif: the journal cannot be read just now, and the pages stay as they were: %s\n", trouble)
	case trouble != "" || !c.New && !back:
	case !c.New:
		say.sayf("%s the journal can be read again", time.Now().Format(time.TimeOnly))
	case first:
		o.found(say, c, source.Error)
	default:
		say.sayf("%s %s: %s, %d ms", time.Now().Format(time.TimeOnly), o.subject(c.Batch), pagesChanged(c), c.Took.Milliseconds())
		o.found(say, c, source.Hint)
	}
	o.trouble = trouble
}

// found prints the findings that were not there before, down to a level, and counts
// all where their number is another.
func (o *previewing) found(say *voice, c preview.Change, least source.Level) {
	known := make(map[string]bool, len(c.Findings))
	var fresh []source.Finding
	for _, f := range c.Findings {
		// Where it stands may have moved.
		name := ""
		if f.Span.File != nil {
			name = f.Span.File.Name
		}
		key := fmt.Sprintf("%q", []string{name, f.Level.String(), f.Rule, f.Text, f.Span.Line()})
		known[key] = true
		if !o.known[key] && !o.sound[key] && f.Level <= least {
			fresh = append(fresh, f)
		}
	}
	same := o.known != nil && len(fresh) == 0 && len(known) == len(o.known)
	o.known = known
	if c.Sound {
		o.sound = known
	}
	if same {
		return
	}
	if err := say.findings(fresh); err != nil {
		return // nobody listens any more
	}
	switch {
	case c.Sound:
		say.sayf("%s", advice(c.Findings))
	case o.sound == nil:
		say.sayf("%s: the pages are shown as soon as the errors are put right", source.Tally(c.Findings))
	default:
		say.sayf("%s: the pages stay as they were when there were no errors", source.Tally(c.Findings))
	}
}

func pagesChanged(c preview.Change) string {
	switch n := len(c.Pages); {
	case n > 0:
		return number(n, "open page") + " changed"
	case c.Sound:
		return "no open page changed"
	}
	return "looked at"
}

// subject names what a batch is about: the files that are still there, for many
// editors make others while they save.
func (o *previewing) subject(b preview.Batch) string {
	there := slices.DeleteFunc(slices.Clone(b.Files), func(name string) bool {
		_, err := os.Lstat(filepath.Join(o.dir, filepath.FromSlash(name)))
		return err != nil
	})
	for _, names := range [][]string{there, b.Files, b.Folders} {
		if len(names) == 1 {
			return names[0]
		}
		if len(names) > 1 {
			return fmt.Sprintf("%s and %d more", names[0], len(names)-1)
		}
	}
	return "the whole journal"
}

// warn says why something is done in another way than it could be.
func (o *previewing) warn(say *voice, text string) {
	o.mu.Lock()
	defer o.mu.Unlock()
	fmt.Fprintf(say.Err, "hussif: %s\n", text)
}
