package photo

import (
	"fmt"
	"io/fs"
	"strconv"

	"hussif/build/keep"
)

// Expect says from a picture's header which pictures [Darkroom.Make] will make of
// it, the narrowest first, so that a page can name them before any is made. Their
// names stand for the file's name, size and time stamp, since what they will hold
// is not known yet; they have no path, size and sum, and where the ending is not
// known either, none. A fault is one that [Look] finds.
func Expect(fsys fs.FS, name string) ([]Picture, *Fault, error) {
	o, fault, err := open(fsys, name)
	if fault != nil || err != nil {
		return nil, fault, err
	}
	defer o.Close()
	info, fault, err := look(name, o, o.size)
	if fault != nil {
		return nil, fault, nil
	}
	if err != nil {
		return nil, nil, fmt.Errorf("reading the picture %s: %w", name, err)
	}
	stamp := keep.NewRecipe("photo expected", version,
		name, strconv.FormatInt(o.size, 10), strconv.FormatInt(o.changed.UnixNano(), 10))
	ending := ""
	if info.Format == "JPEG" { // which has no transparency and no palette
		ending = ".jpg"
	}
	var pictures []Picture
	for _, width := range widthsOf(info.Width) {
		pictures = append(pictures, Picture{
			Name:   fmt.Sprintf("%x-%d%s", stamp[:6], width, ending),
			Width:  width,
			Height: heightFor(width, info),
		})
	}
	return pictures, nil, nil
}
