package theme

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"fmt"
	"io/fs"
	"slices"
	"strings"
)

// files holds the look, and the sources of this package and of theme/draw because
// what they say and draw is part of every page.
//
//go:embed templates style fonts scripts
//go:embed cards.go contents.go dossier.go embed.go figures.go frame.go jobs.go menu.go note.go parts.go printer.go
//go:embed prose.go proselink.go record.go render.go search.go sheet.go told.go verdicts.go view.go wardrobe.go worksheet.go
//go:embed draw/*.css draw/*.go
var files embed.FS

// sheets are the parts of the style sheet. The first says in which order the
// layers count.
var sheets = [...]string{
	"tokens", "base", "frame", "page",
	"lists", "verdicts", "marks", "tables", "cards", "entries", "photos", "findings",
	"sheets", "plans", "drawings", "wardrobe", "record", "search", "prose", "worksheet", "print", "paper",
}

// An Asset is a file that every page of a site may ask for.
type Asset struct {
	Path string // below the site's top folder, with slashes
	Data []byte // not to be changed
}

// Assets returns the style sheet, the fonts, the scripts of the search page and the
// licences of what is not ours, in the order of their paths. All lie in the folder
// theme.
func Assets() []Asset {
	var style []byte
	for _, sheet := range sheets {
		style = append(style, mustRead("style/"+sheet+".css")...)
	}
	style = append(style, mustRead("draw/draw.css")...)
	assets := []Asset{{"theme/style.css", style}}
	for _, dir := range []string{"fonts", "scripts"} {
		entries, err := files.ReadDir(dir)
		if err != nil {
			panic(err)
		}
		for _, entry := range entries {
			name := dir + "/" + entry.Name()
			assets = append(assets, Asset{"theme/" + name, mustRead(name)})
		}
	}
	slices.SortFunc(assets, func(a, b Asset) int { return strings.Compare(a.Path, b.Path) })
	return assets
}

// Hash returns a name for the whole look: as long as it is the same, the same
// view makes the same page.
func Hash() string {
	sum := sha256.New()
	err := fs.WalkDir(files, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		data := mustRead(name)
		fmt.Fprintf(sum, "%s %d\n", name, len(data))
		sum.Write(data)
		return nil
	})
	if err != nil {
		panic(err)
	}
	return hex.EncodeToString(sum.Sum(nil))
}

// mustRead returns an embedded file. One that is missing is a fault of this
// program and no trouble of the user's.
func mustRead(name string) []byte {
	data, err := files.ReadFile(name)
	if err != nil {
		panic(err)
	}
	return data
}
