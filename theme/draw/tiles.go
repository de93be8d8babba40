package draw

import (
	"fmt"
	"html/template"
	"math"
	"strconv"
)

// A Paper is a size of paper, in millimetres, upright.
type Paper struct {
	Name       string
	Wide, High float64
}

// The papers: ISO 216 A4, and Letter of ANSI/ASME Y14.1, 8 1/2 by 11 in.
func A4() Paper     { return Paper{"A4", 210, 297} }
func Letter() Paper { return Paper{"Letter", 215.9, 279.4} }

// Measures of a sheet, in millimetres. The drawing ends a millimetre short of
// the margins at the right and at the foot, so that no rounding of a printer's
// makes a second page of it.
const (
	Margin  = 10.0 // round each page, left to the printer
	Overlap = 10.0 // of neighbouring pages
	short   = 1.0
)

// mostSheets is more paper than anyone will join.
const mostSheets = 120

// A FullSize is a panel to be drawn at its real size.
type FullSize struct {
	Words         // of the whole; each page adds its own name
	Label         string
	Finished, Cut []Point // the grain line at X 0, Y downwards
	Levels        []Level
}

// Sheets are the pages of a full-size drawing, row by row. Page B3 is the third
// of the second row.
type Sheets struct {
	Pages        []template.HTML
	Across, Down int
}

// Tiles splits a panel over as many pages as it takes at its real size. It fails
// where that is more paper than anyone will join.
func Tiles(v FullSize, paper Paper) (Sheets, error) {
	wide, high := paper.Wide-2*Margin-short, paper.High-2*Margin-short
	f := around(v.Cut, v.Finished)
	across, down := pages(f.wide(), wide), pages(f.high(), high)
	if float64(across)*float64(down) > mostSheets {
		return Sheets{}, fmt.Errorf("at full size this takes %d by %d pages of %s, more than the %d that can be joined with care",
			across, down, paper.Name, mostSheets)
	}
	s := sheet{
		FullSize: v, wide: wide, high: high, across: across, down: down,
		left: f.left - before(f.wide(), wide, across), top: f.top - before(f.high(), high, down),
	}
	sheets := Sheets{Across: across, Down: down}
	for row := range down {
		for column := range across {
			sheets.Pages = append(sheets.Pages, s.page(row, column))
		}
	}
	return sheets, nil
}

// pages returns how many pages hold a length, each after the first adding its own
// less the overlap. A millimetre and a half is kept at both ends for the line.
func pages(length, one float64) int {
	const line = 1.5
	return max(1, int(math.Ceil((length+2*line-Overlap)/(one-Overlap))))
}

// before returns where a length begins on the first of its pages: near the edge,
// or in the middle of a single page.
func before(length, one float64, pages int) float64 {
	const edge = 6
	rest := (float64(pages)*(one-Overlap) + Overlap - length) / 2
	if pages == 1 {
		return rest
	}
	return min(rest, edge)
}

// name returns what a page is called: rows have letters, columns numbers.
func name(row, column int) string {
	letters := ""
	for n := row + 1; n > 0; n = (n - 1) / 26 {
		letters = string(rune('A'+(n-1)%26)) + letters
	}
	return letters + strconv.Itoa(column+1)
}
