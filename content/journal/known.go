package journal

import "sync"

// Known returns what was worked out from a journal under a key, worked out now for the
// first who asks. It must rest on nothing but the journal's facts, and nobody may
// change it. Keys are like those of a context: of a type of the caller's own.
func Known[T any](j *Journal, key any, work func() T) T {
	entry, _ := j.known.LoadOrStore(key, sync.OnceValue(work))
	return entry.(func() T)()
}
