package photo

import (
	"context"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"fmt"
	"image"
	"io"
	"io/fs"
	"slices"

	"golang.org/x/sync/semaphore"

	"hussif/build/keep"
)

// version is raised whenever other pictures would be made of the same
// original.
const version = 1

// A bench is where the workers of one call to Make stand.
type bench struct {
	*Darkroom
	fsys   fs.FS
	room   *semaphore.Weighted // for the bytes that pictures in work take
	memory int64               // all that room has
}

// work takes one picture from its file to the result.
func (b *bench) work(ctx context.Context, name string) (Result, error) {
	result := Result{Name: name}
	from, fault, err := open(b.fsys, name)
	if fault != nil || err != nil {
		result.Fault = fault
		return result, err
	}
	defer from.Close()
	info, fault, err := look(name, from, from.size)
	if fault != nil || err != nil {
		result.Fault = fault
		return result, err
	}
	content, err := b.contentOf(ctx, name, from)
	if err != nil {
		return result, err
	}
	recipe := keep.NewRecipe("photo", version, content.String())
	blur := b.Blur[name]
	if len(blur) > 0 {
		recipe = keep.NewRecipe("photo, blurred", blurVersion, fmt.Sprint(version), content.String(), fmt.Sprint(blur))
		info.perPixel += 4 // a copy to blur
	}
	if pictures, fault, ok := b.recall(recipe); ok {
		result.Pictures, result.Fault = pictures, fault
		return result, nil
	}

	result.Fresh = true
	cost := min(costOf(info), b.memory)
	if err := b.room.Acquire(ctx, cost); err != nil {
		return result, err
	}
	defer b.room.Release(cost)
	rec, err := b.develop(ctx, from, info, content, blur)
	if errors.Is(err, errChanged) {
		result.Fault = faultf("this file was changed while it was being read; run the same again")
		return result, b.forget(name, from)
	}
	if err != nil {
		return result, err
	}
	kept, err := json.Marshal(rec)
	if err != nil {
		return result, err
	}
	if err := b.Store.Put(recipe, kept); err != nil {
		return result, err
	}
	pictures, ok := b.pictures(rec.Prints)
	if !ok {
		return result, errors.New("a picture was lost from the store right after it was put there")
	}
	result.Pictures, result.Fault = pictures, rec.Fault
	return result, nil
}

// costOf estimates the bytes that making a picture takes: its
// pixels, half-sized planes, and the strip between scaling it across and down.
func costOf(info Info) int64 {
	width, height := info.stored()
	pixels := float64(width) * float64(height)
	largest := widths()[len(widths())-1]
	return int64(pixels*(info.perPixel+1)) + 4*int64(min(width, largest))*int64(height)
}

// errChanged says that a file's content was another the second time.
var errChanged = errors.New("the file was changed while it was read")

// develop decodes a picture, puts its prints into the store and returns what
// to remember of it.
func (b *bench) develop(ctx context.Context, from *original, info Info, content keep.Sum, blur []Region) (record, error) {
	m, fault, err := decodeExactly(ctx, from, info, content)
	if fault != nil || err != nil {
		return record{Fault: fault}, err
	}
	toPNG, ending := asPNG(m), ".jpg"
	if len(blur) > 0 {
		m = blurred(m, info, blur)
	}
	if toPNG {
		ending = ".png"
	}
	var rec record
	for _, scaled := range scale(m, info) {
		if err := ctx.Err(); err != nil {
			return record{}, err
		}
		encoded, err := encode(scaled, toPNG)
		if err != nil {
			return record{}, err
		}
		sum, err := b.Store.PutFile(encoded)
		if err != nil {
			return record{}, err
		}
		size := scaled.Rect.Size()
		rec.Prints = append(rec.Prints, printed{size.X, size.Y, ending, int64(len(encoded)), sum})
	}
	slices.Reverse(rec.Prints)
	return rec, nil
}

// decodeExactly decodes a whole file and makes sure that it is the content
// whose recipe the pictures will be kept under.
func decodeExactly(ctx context.Context, from *original, info Info, content keep.Sum) (image.Image, *Fault, error) {
	r := &reading{ctx: ctx, r: io.NewSectionReader(from, 0, from.size), sum: sha256.New()}
	m, fault, err := decode(r, info)
	if err != nil {
		return nil, nil, err
	}
	if _, err := io.Copy(io.Discard, r); err != nil {
		return nil, nil, err
	}
	if keep.Sum(r.sum.Sum(nil)) != content {
		return nil, nil, errChanged
	}
	return m, fault, nil
}
