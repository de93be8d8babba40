package draw_test

import (
	"encoding/xml"
	"errors"
	"flag"
	"html/template"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"hussif/theme/draw"
)

var update = flag.Bool("update", false, "write the goldens anew")

var number = regexp.MustCompile(`-?\d+(\.\d+)?`)

// parsed reads a drawing as XML and checks what holds for all of them: text
// alternatives that the image refers to, no inline style, no name twice, only
// finite numbers, and, unless it is cut off by its page, nothing outside.
func parsed(t *testing.T, svg template.HTML, cutOff bool) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(string(svg)))
	ids := map[string]bool{}
	var labels, texts []string
	var wide, high float64
	var inDefs, inTitle int
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("no XML: %v", err)
		}
		switch e := token.(type) {
		case xml.CharData:
			if inTitle > 0 && strings.TrimSpace(string(e)) != "" {
				texts = append(texts, string(e))
			}
		case xml.EndElement:
			switch e.Name.Local {
			case "defs":
				inDefs--
			case "title", "desc":
				inTitle--
			}
		case xml.StartElement:
			switch e.Name.Local {
			case "defs":
				inDefs++
			case "title", "desc":
				inTitle++
			}
			for _, a := range e.Attr {
				switch a.Name.Local {
				case "style":
					t.Errorf("inline style: %s", a.Value)
				case "id":
					if ids[a.Value] {
						t.Errorf("two things are called %q", a.Value)
					}
					ids[a.Value] = true
				case "aria-labelledby":
					labels = strings.Fields(a.Value)
				case "role":
					if a.Value != "img" {
						t.Errorf("role %q", a.Value)
					}
				case "viewBox":
					box := number.FindAllString(a.Value, -1)
					wide, _ = strconv.ParseFloat(box[2], 64)
					high, _ = strconv.ParseFloat(box[3], 64)
				case "d", "x", "y", "cx", "cy":
					if strings.Contains(a.Value, "NaN") || strings.Contains(a.Value, "Inf") {
						t.Errorf("%s has no number: %s", e.Name.Local, a.Value)
					}
					if !cutOff && inDefs == 0 {
						inside(t, a.Name.Local, a.Value, wide, high)
					}
				}
			}
		}
	}
	if len(labels) != 2 || !ids[labels[0]] || !ids[labels[1]] || len(texts) != 2 {
		t.Errorf("the image is labelled by %q, with the texts %q", labels, texts)
	}
}

func inside(t *testing.T, attribute, value string, wide, high float64) {
	t.Helper()
	for i, text := range number.FindAllString(value, -1) {
		f, _ := strconv.ParseFloat(text, 64)
		most := wide
		if strings.HasSuffix(attribute, "y") || attribute == "d" && i%2 == 1 {
			most = high
		}
		if f < 0 || f > most+0.001 {
			t.Errorf("%s=%q lies outside of %g by %g", attribute, value, wide, high)
		}
	}
}

func TestEveryDrawingIsSound(t *testing.T) {
	for name, svg := range samples(t) {
		t.Run(name, func(t *testing.T) { parsed(t, svg, false) })
	}
	for _, paper := range []draw.Paper{draw.A4(), draw.Letter()} {
		ids := map[string]bool{}
		for _, page := range sheetsOf(t, paper).Pages {
			parsed(t, page, true)
			id := regexp.MustCompile(` id="[^"]+-title"`).FindString(string(page))
			if ids[id] {
				t.Errorf("%s stands on two pages", id)
			}
			ids[id] = true
		}
	}
}

// What is no number, or beyond all cloth, and words that are markup do no harm.
func TestDrawingsOfNonsense(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	w := words("x", `<b>"&`, `</desc><script>`)
	bad := []draw.Point{{X: nan, Y: inf}, {X: 1e300, Y: -inf}, {X: 3, Y: 4}}
	for name, svg := range map[string]template.HTML{
		"empty panel":  draw.DrawPanel(draw.Panel{Words: w}),
		"panel":        draw.DrawPanel(draw.Panel{Words: w, Cut: bad, Finished: bad, Levels: []draw.Level{{At: nan, Width: inf, Name: "</text>", Size: "<"}}}),
		"empty layout": draw.DrawLayout(draw.Layout{Words: w}),
		"layout":       draw.DrawLayout(draw.Layout{Words: w, Width: nan, Length: inf, Panels: []draw.Placed{{Cut: bad, Label: "&"}}, Warp: nan, WarpKnown: true}),
		"empty tape":   draw.DrawTape(draw.Tape{Words: w}),
		"tape":         draw.DrawTape(draw.Tape{Words: w, Body: draw.Mark{Least: nan, Most: inf, Error: nan, Label: "body"}, Wanted: draw.Mark{Least: -inf, Label: "wanted"}}),
		"empty figure": draw.DrawFigure(draw.Figure{Words: w}),
		"figure":       draw.DrawFigure(draw.Figure{Words: w, Shapes: []draw.Shape{{Kind: "cut-line", Points: bad, Closed: true}}, Spans: []draw.Span{{From: nan, To: inf, Words: "<"}, {From: inf, Upright: true}}, Labels: []draw.Label{{At: bad[0], Words: "&"}}, Key: []string{"<"}}),
		"empty series": draw.DrawSeries(draw.Series{Words: w}),
		"series":       draw.DrawSeries(draw.Series{Words: w, Runs: []draw.Run{{Label: "<&>", Values: []draw.Value{{Size: inf, Known: true}, {Size: nan, Known: true}}}}}),
	} {
		t.Run(name, func(t *testing.T) { parsed(t, svg, true) })
	}
	sheets, err := draw.Tiles(draw.FullSize{Words: w, Cut: bad}, draw.A4())
	if err != nil {
		t.Fatal(err)
	}
	parsed(t, sheets.Pages[0], true)
}

func TestGoldens(t *testing.T) {
	all := samples(t)
	for _, name := range []string{"tape-laces", "panel-gusset"} {
		golden := filepath.Join("testdata", name+".svg")
		got := strings.ReplaceAll(string(all[name]), "><", ">\n<") + "\n"
		if *update {
			write(t, golden, []byte(got))
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s differs; look at it and renew it with -update:\n%s", golden, got)
		}
	}
}

// Pages overlap by 10 mm and keep 10 mm of margin: one page of A4 holds 189 mm,
// each further one 179 mm more.
func TestTilesCountPages(t *testing.T) {
	for _, c := range []struct {
		wide, high   float64
		paper        draw.Paper
		across, down int
	}{
		{100, 100, draw.A4(), 1, 1},
		{186, 273, draw.A4(), 1, 1},
		{187, 274, draw.A4(), 2, 2},
		{365, 273, draw.A4(), 2, 1},
		{366, 273, draw.A4(), 3, 1},
		{191, 255, draw.Letter(), 1, 1},
		{192, 256, draw.Letter(), 2, 2},
	} {
		outline := []draw.Point{{X: -c.wide / 2}, {X: c.wide / 2}, {X: c.wide / 2, Y: c.high}, {X: -c.wide / 2, Y: c.high}}
		got, err := draw.Tiles(draw.FullSize{Words: words("x", "a", "b"), Cut: outline}, c.paper)
		if err != nil || got.Across != c.across || got.Down != c.down || len(got.Pages) != c.across*c.down {
			t.Errorf("%g by %g mm on %s: %d across, %d down, %d pages, %v; want %d across, %d down",
				c.wide, c.high, c.paper.Name, got.Across, got.Down, len(got.Pages), err, c.across, c.down)
		}
	}
	_, err := draw.Tiles(draw.FullSize{Cut: []draw.Point{{}, {X: 20000, Y: 20000}}}, draw.A4())
	if err == nil || !strings.Contains(err.Error(), "more than the 120") {
		t.Errorf("20 by 20 m: %v", err)
	}
}

// A place on the panel keeps its distance from the register marks on every page
// that shows it: what lies at x on one page lies 179 mm further left on the next.
func TestSheetsMeet(t *testing.T) {
	sheets := sheetsOf(t, draw.A4())
	const across, down = 179, 266
	at := func(page template.HTML) (x, y float64) {
		found := number.FindAllString(regexp.MustCompile(`class="cut-line" d="M\S+ [^L]+`).FindString(string(page)), -1)
		x, _ = strconv.ParseFloat(found[0], 64)
		y, _ = strconv.ParseFloat(found[1], 64)
		return x, y
	}
	x0, y0 := at(sheets.Pages[0])
	for i, page := range sheets.Pages {
		x, y := at(page)
		column, row := float64(i%sheets.Across), float64(i/sheets.Across)
		if math.Abs(x0-x-across*column) > 0.002 || math.Abs(y0-y-down*row) > 0.002 {
			t.Errorf("page %d is off by (%g, %g)", i+1, x0-x-across*column, y0-y-down*row)
		}
		for _, mark := range []struct {
			there bool
			at    string
		}{{column > 0, `cx="5" `}, {int(column) < sheets.Across-1, `cx="184" `}, {row > 0, `cy="5" `}, {int(row) < sheets.Down-1, `cy="271" `}} {
			if strings.Contains(string(page), mark.at) != mark.there {
				t.Errorf("page %d: register mark at %s is there: %v", i+1, mark.at, !mark.there)
			}
		}
	}
}
