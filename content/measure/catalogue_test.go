package measure

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestNoNameMeansTwoMeasures(t *testing.T) {
	means := make(map[string]string)
	for _, m := range Standard().All() {
		for _, name := range append([]string{m.Name}, m.Aliases...) {
			if other, taken := means[keyOf(name)]; taken {
				t.Errorf("%q means both %q and %q", name, other, m.Name)
			}
			means[keyOf(name)] = m.Name
		}
	}
}

func TestNoNameBeginsOrEndsAsASide(t *testing.T) {
	for _, m := range Standard().All() {
		for _, name := range append([]string{m.Name}, m.Aliases...) {
			if _, side := fold(nil, name).withoutSide(); side != Both {
				t.Errorf("%q reads as the %s of something", name, side)
			}
		}
	}
}

func TestEveryMeasureIsToldInFull(t *testing.T) {
	for _, m := range Standard().All() {
		if m.Name == "" || m.Source == "" || m.Taken == "" || !m.Class.valid() {
			t.Errorf("incomplete: %+v", m)
		}
	}
}

func TestFind(t *testing.T) {
	upperArm := Point{Measure: "upper arm girth"}
	for _, c := range []struct {
		name string
		want Point
	}{
		{"bust", Point{Measure: "bust girth"}},
		{"Bust Girth", Point{Measure: "bust girth"}},
		{"bust circumference", Point{Measure: "bust girth"}},
		{"under-bust girth", Point{Measure: "underbust girth"}},
		{"under bust", Point{Measure: "underbust girth"}},
		{"hips", Point{Measure: "hip girth"}},
		{"mid thigh", Point{Measure: "mid-thigh girth"}},
		{"nape to waist", Point{Measure: "back neck point to waist"}},
		{"Center Front Length", Point{Measure: "front neck point to waist"}},
		{"sleeve", Point{Measure: "arm length"}},
		{"over-stomacher", Point{Measure: "front length over stomacher"}},
		{"natural waist circumference", Point{Measure: "natural waist girth"}},
		{"biceps", upperArm},
		{" upper_arm  girth ", upperArm},
		{"left bicep", Point{"upper arm girth", Left}},
		{"Left upper-arm girth", Point{"upper arm girth", Left}},
		{"bicep, left", Point{"upper arm girth", Left}},
		{"bicep (l)", Point{"upper arm girth", Left}},
		{"R. wrist", Point{"wrist girth", Right}},
		{"right hand", Point{"hand girth", Right}},
	} {
		if got, ok := Standard().Find(c.name); !ok || got != c.want {
			t.Errorf("Find(%q) = %v, %v, want %v", c.name, got, ok, c.want)
		}
	}
}

func TestFindRefuses(t *testing.T) {
	for _, name := range []string{
		"", " - ", "left", "l r", "wast girth",
		"left waist girth", // the body has one waist
		"left right bicep", // one side or the other
		"lacing gap",       // how a garment was worn
	} {
		if got, ok := Standard().Find(name); ok {
			t.Errorf("Find(%q) = %v, want nothing", name, got)
		}
	}
	if _, ok := (Catalogue{}).Find("bust girth"); ok {
		t.Error("the zero catalogue knows a measure")
	}
}

// The list of ISO 8559:1989 as reprinted in "Anthropometry, Apparel Sizing and
// Design", table 4.1, in its order; weight is no length and left out.
func TestTitlesOfTheOlderEditionAreKnown(t *testing.T) {
	titles := []string{
		"height", "under arm length", "scye depth", "neck shoulder point to breast point", "cervical to breast point",
		"neck shoulder to waist", "cervical to waist(front)", "cervical to waist(back)", "cervical height(sitting)",
		"trunk length", "body rise", "cervical to knee hollow", "cervical height", "waist height", "outside leg length",
		"waist to hips", "hip height", "crotch", "trunk circumference", "thigh length", "inside leg length",
		"crotch height", "knee height", "ankle height",
		"shoulder length", "shoulder width", "back width", "upper arm length", "arm length",
		"seventh cervical to wrist length", "hand length", "foot length",
		"head girth", "neck girth", "neck-base girth", "chest girth", "bust girth", "upper arm girth", "armscye girth",
		"elbow girth", "wrist girth", "hand girth", "waist girth", "hip girth", "thigh girth", "mid-thigh girth",
		"knee girth", "lower knee girth", "calf girth", "minimum leg girth", "ankle girth",
	}
	points := make(map[Point]string)
	for _, title := range titles {
		p, ok := Standard().Find(title)
		if !ok {
			t.Errorf("no measure is called %q; near are %q", title, Standard().Nearest(title))
			continue
		}
		if other := points[p]; other != "" && title != "crotch height" {
			t.Errorf("%q and %q are two measures of the list, but both are %v here", other, title, p)
		}
		points[p] = title
	}
}

// The headings of a US size table as reprinted in a sewing scholar's notes of
// 2011: bust, waist, hip, back waist length.
func TestSizeTableHeadings(t *testing.T) {
	var got []string
	for _, heading := range []string{"Bust", "Waist", "Hip", "Back waist length"} {
		p, ok := Standard().Find(heading)
		if !ok {
			t.Fatalf("no measure is called %q", heading)
		}
		got = append(got, p.Measure)
	}
	want := []string{"bust girth", "natural waist girth", "hip girth", "back neck point to waist"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestMeasure(t *testing.T) {
	m, ok := Standard().Measure("upper arm girth")
	if !ok || !m.Paired || m.Class != SmallGirth || m.Source != "ISO 8559-1:2017" {
		t.Errorf("upper arm girth = %+v, %v", m, ok)
	}
	for _, name := range []string{"bicep", "Upper arm girth", ""} {
		if m, ok := Standard().Measure(name); ok {
			t.Errorf("Measure(%q) = %q, want only canonical names to be known", name, m.Name)
		}
	}
}

func TestACatalogueNeverChanges(t *testing.T) {
	c := Standard()
	before := c.All()
	changed := c.All()
	changed[0].Name = "x"
	changed[0].Aliases[0] = "x"
	m, _ := c.Measure("bust girth")
	m.Aliases[0] = "x"
	c.With([]Measure{{Name: "nape to waist", Class: SegmentLength}}, map[string]string{"waist": "waist girth"})
	if diff := cmp.Diff(before, c.All()); diff != "" {
		t.Error(diff)
	}
}

func TestNearest(t *testing.T) {
	for _, c := range []struct {
		name string
		want []string
	}{
		{"wast girth", []string{"waist girth"}},
		{"bicept", []string{"bicep"}},
		{"left bicept", []string{"left bicep"}},
		{"Shoudler-Lenght", []string{"shoulder length", "shoulder height"}},
		{"left bust", []string{"bust"}},
		{"thig", []string{"thigh"}},
		{"crinoline", nil},
		{"", nil},
	} {
		if diff := cmp.Diff(c.want, Standard().Nearest(c.name)); diff != "" {
			t.Errorf("Nearest(%q) (-want +got):\n%s", c.name, diff)
		}
	}
}

func TestEverySlipOfOneLetterIsNearItsMeasure(t *testing.T) {
	c := Standard()
	for _, m := range c.All() {
		if len(m.Name) < 4 {
			continue
		}
		slip := m.Name[:2] + m.Name[3:]
		if _, known := c.Find(slip); known {
			continue
		}
		if got := c.Nearest(slip); !slices.Contains(got, m.Name) {
			t.Errorf("Nearest(%q) = %q, want %q among them", slip, got, m.Name)
		}
	}
}

func FuzzFind(f *testing.F) {
	for _, name := range []string{"bust", "left bicep", "bicep, left", "bicep (l)", "under-bust girths", "L", "ß İ\u0301 \xff", "right right wrist"} {
		f.Add(name)
	}
	c := Standard()
	f.Fuzz(func(t *testing.T, name string) {
		p, ok := c.Find(name)
		if !ok {
			for _, near := range c.Nearest(name) {
				if _, known := c.Find(near); !known {
					t.Errorf("Nearest(%q) offers %q, which Find does not know", name, near)
				}
			}
			return
		}
		if again, ok := c.Find(p.String()); !ok || again != p {
			t.Errorf("Find(%q) = %v, but Find(%q) = %v, %v", name, p, p.String(), again, ok)
		}
		if m, ok := c.Measure(p.Measure); !ok || p.Side != Both && !m.Paired {
			t.Errorf("Find(%q) = %v, but its measure is %+v, %v", name, p, m, ok)
		}
	})
}

func BenchmarkFind(b *testing.B) {
	c := Standard()
	b.ReportAllocs()
	for b.Loop() {
		if _, ok := c.Find("Left upper-arm girth"); !ok {
			b.Fatal("not found")
		}
	}
}

func BenchmarkStandard(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		Standard()
	}
}
