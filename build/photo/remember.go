package photo

import (
	"context"
	"crypto/sha256"
	"io"
	"strconv"
	"time"

	"hussif/build/keep"
)

// settled is how old a file's time stamp must be before it is believed to tell
// this content from the next: some file systems count in two seconds, and one
// may write twice within a tick.
const settled = 3 * time.Second

// stampOf returns the recipe under which a file's content is remembered, and
// whether its time stamp is to be believed.
func (b *bench) stampOf(name string, from *original) (stamp keep.Recipe, trusted bool) {
	stamp = keep.NewRecipe("photo content", 1,
		b.Journal, name, strconv.FormatInt(from.size, 10), strconv.FormatInt(from.changed.UnixNano(), 10))
	return stamp, b.Journal != "" && !from.changed.IsZero() && time.Since(from.changed) > settled
}

// contentOf returns the hash of a file's bytes. It reads the file unless the
// store remembers one of this name, size and time stamp.
func (b *bench) contentOf(ctx context.Context, name string, from *original) (keep.Sum, error) {
	// The clock is read before the file: what is written from here on gets a
	// younger stamp.
	stamp, trusted := b.stampOf(name, from)
	var content keep.Sum
	if trusted {
		if known, ok := b.Store.Get(stamp); ok && content.UnmarshalText(known) == nil {
			return content, nil
		}
	}
	r := &reading{ctx: ctx, r: io.NewSectionReader(from, 0, from.size), sum: sha256.New()}
	if _, err := io.Copy(io.Discard, r); err != nil {
		return content, err
	}
	content = keep.Sum(r.sum.Sum(nil))
	if !trusted {
		return content, nil
	}
	return content, b.Store.Put(stamp, []byte(content.String()))
}

// forget makes the next contentOf read a file whose content was not the one
// remembered. Some programs set back the time stamp of what they change.
func (b *bench) forget(name string, from *original) error {
	stamp, trusted := b.stampOf(name, from)
	if !trusted {
		return nil
	}
	return b.Store.Put(stamp, nil)
}
