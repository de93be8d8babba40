package preview

import (
	"errors"
	"fmt"
	"syscall"

	"github.com/fsnotify/fsnotify"
)

// A notifier tells of what happens in the folders added to it, not below them.
type notifier interface {
	Add(dir string) error
	Remove(dir string) error
	Events() <-chan fsnotify.Event
	Errors() <-chan error
	Close() error
}

// system is the notifier that the system has.
type system struct{ *fsnotify.Watcher }

func openNotifier() (notifier, error) {
	w, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, err
	}
	return system{w}, nil
}

func (s system) Events() <-chan fsnotify.Event { return s.Watcher.Events }
func (s system) Errors() <-chan error          { return s.Watcher.Errors }

// limitWords says why folders cannot be watched and what to do. The names of the
// limits are those of inotify(7).
func limitWords(err error) string {
	const instead = "the journal is looked through every second instead, which takes a little longer to show"
	switch {
	case errors.Is(err, syscall.ENOSPC):
		return "this system lets no more folders be watched, so " + instead +
			"; `sudo sysctl fs.inotify.max_user_watches=524288` raises the limit until it is next started"
	case errors.Is(err, syscall.EMFILE), errors.Is(err, syscall.ENFILE):
		return "too many programs watch folders, or too many files are open, so " + instead +
			"; close some, or raise the limit with `sudo sysctl fs.inotify.max_user_instances=512` or `ulimit -n 4096`"
	}
	return fmt.Sprintf("folders cannot be watched here (%v), so %s", err, instead)
}
