package show

import (
	"strconv"
	"strings"

	"hussif/build/photo"
	"hussif/theme"
)

// PicturePath returns where in a site a scaled picture lies.
func PicturePath(p photo.Picture) string { return "pictures/" + p.Name }

// Photo returns a picture with its scaled copies, narrowest first, and without words;
// nil where there are no copies.
func Photo(root string, copies []photo.Picture) *theme.Photo {
	if len(copies) == 0 {
		return nil
	}
	var srcset []string
	for _, c := range copies {
		srcset = append(srcset, root+PicturePath(c)+" "+strconv.Itoa(c.Width)+"w")
	}
	smallest, largest := copies[0], copies[len(copies)-1]
	return &theme.Photo{
		Src: root + PicturePath(smallest), Srcset: strings.Join(srcset, ", "),
		Width: smallest.Width, Height: smallest.Height, Full: root + PicturePath(largest),
	}
}
