package output

import (
	"context"
	"fmt"
	"os"
	"runtime"

	"github.com/rogpeppe/go-internal/lockedfile"
)

// lock waits until no other run holds the lock file, or until ctx is done.
// The returned function gives the lock up and takes the file away.
func lock(ctx context.Context, name string) (unlock func(), err error) {
	type held struct {
		file *lockedfile.File
		err  error
	}
	got := make(chan held, 1)
	go func() {
		file, err := take(ctx, name)
		got <- held{file, err}
	}()
	select {
	case h := <-got:
		if h.err != nil {
			return nil, fmt.Errorf("lock %s against other runs: %w", name, h.err)
		}
		return func() { release(h.file) }, nil
	case <-ctx.Done():
		// The waiting itself cannot be broken off.
		go func() {
			if h := <-got; h.err == nil {
				release(h.file)
			}
		}()
		return nil, ctx.Err()
	}
}

// take waits for the lock file. Once ctx is done it makes no further file, but
// a wait that has begun lasts until the holder gives up.
func take(ctx context.Context, name string) (*lockedfile.File, error) {
	for {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if info, err := os.Lstat(name); err == nil && !info.Mode().IsRegular() {
			return nil, fmt.Errorf("%s is not a file", name)
		}
		f, err := lockedfile.OpenFile(name, os.O_RDWR|os.O_CREATE, 0o666)
		if err != nil {
			return nil, err
		}
		// Whoever held the lock before may have taken away the file we waited
		// for; then somebody else may hold a new one of the same name.
		mine, err := f.Stat()
		if err == nil {
			if now, err := os.Lstat(name); err == nil && os.SameFile(mine, now) {
				return f, nil
			}
		}
		f.Close()
		if err != nil {
			return nil, err
		}
	}
}

func release(f *lockedfile.File) {
	// Nothing depends on the file being gone, so its errors do not count.
	if runtime.GOOS == "windows" {
		// An open file cannot be removed there, nor one that another run waits for.
		f.Close()
		os.Remove(f.Name())
		return
	}
	os.Remove(f.Name())
	f.Close()
}
