//go:build !race

package photo

import (
	"context"
	"fmt"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"testing"
	"testing/fstest"
	"time"
)

// peak returns the most bytes that lay in the heap while f ran, above what lay
// there before. What the collector has not found yet counts too; it is made to
// look often.
func peak(f func()) int64 {
	defer debug.SetGCPercent(debug.SetGCPercent(10))
	sample := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
	runtime.GC()
	metrics.Read(sample)
	before := int64(sample[0].Value.Uint64())
	most := before
	stop, stopped := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(stopped)
		for {
			select {
			case <-stop:
				return
			case <-time.After(time.Millisecond):
				metrics.Read(sample)
				most = max(most, int64(sample[0].Value.Uint64()))
			}
		}
	}()
	f()
	close(stop)
	<-stopped
	return most - before
}

// The race detector slows the collector too much to tell anything here.
func TestManyLargePicturesDoNotAddUpInMemory(t *testing.T) {
	const width, height, count = 3000, 2000, 6
	file := asJPEG(t, drawing(width, height))
	fsys := fstest.MapFS{}
	var names []string
	for i := range count {
		name := fmt.Sprintf("%d.jpg", i)
		fsys[name] = &fstest.MapFile{Data: withSegments(file, segment(0xfe, name))}
		names = append(names, name)
	}
	info, fault := lookIn(t, names[0], fsys[names[0]].Data)
	if fault != nil {
		t.Fatal(fault.Reason)
	}
	allowed := costOf(info)
	peakWith := func(memory int64) int64 {
		d := darkroom(t)
		d.Workers, d.memory = count, memory
		return peak(func() {
			if _, err := d.Make(context.Background(), fsys, names); err != nil {
				t.Error(err)
			}
		})
	}
	bounded, unbounded := peakWith(allowed), peakWith(count*allowed)
	t.Logf("one picture is estimated at %d MiB; %d took %d MiB with room for one, %d MiB with room for all", allowed>>20, count, bounded>>20, unbounded>>20)
	// The collector may run behind by some, but never by a second picture.
	if bounded > 2*allowed {
		t.Errorf("%d MiB with room for %d MiB", bounded>>20, allowed>>20)
	}
	if unbounded < 2*bounded {
		t.Errorf("%d MiB without a bound, %d MiB with: this test proves nothing", unbounded>>20, bounded>>20)
	}
}
