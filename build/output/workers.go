package output

import (
	"context"
	"os"
	"path"
	"runtime"
	"strconv"
	"sync/atomic"

	"golang.org/x/sync/errgroup"
)

// makeAll makes the files of the plan. Its error is not the fault of any.
func (r *run) makeAll(ctx context.Context) error {
	r.made = make([]made, len(r.plan.Files))
	group, ctx := errgroup.WithContext(ctx)
	var next atomic.Int64
	for worker := range min(runtime.GOMAXPROCS(0), len(r.made)) {
		group.Go(func() error {
			s := newSpool(path.Join(partsName, strconv.Itoa(worker)), r.createPart)
			defer s.close()
			for {
				i := int(next.Add(1)) - 1
				if i >= len(r.made) {
					return nil
				}
				if err := ctx.Err(); err != nil {
					return err
				}
				s.reset()
				m, err := r.makeOne(ctx, r.plan.Files[i], s)
				if err != nil {
					return err
				}
				r.made[i] = m
			}
		})
	}
	return group.Wait()
}

// createPart makes a part file anew.
func (r *run) createPart(name string) (*os.File, error) {
	if err := r.parts(); err != nil {
		return nil, err
	}
	return r.root.Create(name)
}
