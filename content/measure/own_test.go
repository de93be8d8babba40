package measure

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestAJournalsOwnMeasures(t *testing.T) {
	c, faults := Standard().With([]Measure{
		{Name: "gusset width", Class: Breadth, Paired: true, Aliases: []string{"gusset", "nape to waist"}},
		{Name: "over stomacher", Class: SegmentLength, Source: "an old draft"},
	}, nil)
	if len(faults) > 0 {
		t.Fatalf("faults: %+v", faults)
	}
	for name, want := range map[string]Point{
		"gusset":         {Measure: "gusset width"},
		"left gusset":    {Measure: "gusset width", Side: Left},
		"nape to waist":  {Measure: "gusset width"},
		"over-stomacher": {Measure: "over stomacher"},
		"bust":           {Measure: "bust girth"},
	} {
		if got, ok := c.Find(name); !ok || got != want {
			t.Errorf("Find(%q) = %v, %v, want %v", name, got, ok, want)
		}
	}
	if m, _ := c.Measure("gusset width"); m.Source != "this journal" {
		t.Errorf("the source of a journal's measure is %q", m.Source)
	}
	if m, _ := c.Measure("over stomacher"); m.Source != "an old draft" {
		t.Errorf("the source the journal names became %q", m.Source)
	}
	if m, _ := c.Measure("back neck point to waist"); strings.Contains(strings.Join(m.Aliases, ","), "nape to waist") {
		t.Errorf("%q keeps an alias that now means another: %q", m.Name, m.Aliases)
	}
}

func TestWhatWaistIsShortFor(t *testing.T) {
	c, faults := Standard().With(nil, map[string]string{"waist": "waist girth", "Wst": "natural waist"})
	if len(faults) > 0 {
		t.Fatalf("faults: %+v", faults)
	}
	for name, want := range map[string]string{
		"waist": "waist girth", "wst": "natural waist girth", "natural waist": "natural waist girth",
	} {
		if got, _ := c.Find(name); got.Measure != want {
			t.Errorf("%q is short for %q, want %q", name, got.Measure, want)
		}
	}
	if got, _ := Standard().Find("waist"); got.Measure != "natural waist girth" {
		t.Errorf("unless said otherwise, waist is short for %q", got.Measure)
	}
}

func TestFaultsOfAJournalsMeasures(t *testing.T) {
	width := func(name string, aliases ...string) Measure {
		return Measure{Name: name, Class: Breadth, Paired: true, Aliases: aliases}
	}
	for _, c := range []struct {
		name   string
		own    []Measure
		shorts map[string]string
		about  string
		text   string
		near   []string
	}{
		{"no name", []Measure{width(" - ")}, nil, " - ", "needs a name", nil},
		{"no class", []Measure{{Name: "gusset"}}, nil, "gusset", "what kind of measure", []string{
			"small girth", "large girth", "height", "breadth", "segment length", "body depth", "head", "hand", "foot",
		}},
		{"laid flat is no class", []Measure{{Name: "gusset", Class: LaidFlat}}, nil, "gusset", "what kind of measure", []string{
			"small girth", "large girth", "height", "breadth", "segment length", "body depth", "head", "hand", "foot",
		}},
		{"a standard name", []Measure{width("Bust-girth")}, nil, "Bust-girth", `known already as "bust girth"`, nil},
		{"a side of a standard name", []Measure{width("left bicep")}, nil, "left bicep", "names a side", []string{"bicep"}},
		{"the same name twice", []Measure{width("gusset"), width("Gussets")}, nil, "Gussets", `known already as "gusset"`, nil},
		{"a side behind", []Measure{width("Gusset (L)")}, nil, "Gusset (L)", "names a side", []string{"Gusset"}},
		{"an alias of two", []Measure{width("gusset", "gore"), width("godet", "gore")}, nil, "gore", `already means "gusset"`, nil},
		{"an alias that is a later name", []Measure{width("gusset", "godet"), width("godet")}, nil, "godet", `already means "godet"`, nil},
		{"an alias that is a standard name", []Measure{width("gusset", "knee girth")}, nil, "knee girth", `already means "knee girth"`, nil},
		{"an empty alias", []Measure{width("gusset", "")}, nil, "", `a short form for "gusset" needs a name`, nil},
		{"a short form for nothing", nil, map[string]string{"waist": "wast girth"}, "waist", "no measure is called that", []string{"waist girth"}},
		{"a short form for one side", nil, map[string]string{"arm": "left bicep"}, "arm", "one side only", []string{"upper arm girth"}},
		{"a short form that is a name", nil, map[string]string{"waist girth": "natural waist girth"}, "waist girth", `already means "waist girth"`, nil},
		{"a short form that is a side", nil, map[string]string{"left wrist": "hand girth"}, "left wrist", "names a side", []string{"wrist"}},
		{"one short form for two", nil, map[string]string{"Belt": "waist girth", "belt": "hip girth"}, "belt", `already means "waist girth"`, nil},
	} {
		_, faults := Standard().With(c.own, c.shorts)
		if len(faults) != 1 {
			t.Errorf("%s: faults %+v, want one", c.name, faults)
			continue
		}
		f := faults[0]
		if f.Name != c.about || !strings.Contains(f.Text, c.text) {
			t.Errorf("%s: %q: %q, want %q: ...%q...", c.name, f.Name, f.Text, c.about, c.text)
		}
		if diff := cmp.Diff(c.near, f.Instead); diff != "" {
			t.Errorf("%s: instead (-want +got):\n%s", c.name, diff)
		}
	}
}

// Whatever a journal says, no name may come to mean two measures, and each
// point must be found again by what it is called.
func FuzzWith(f *testing.F) {
	f.Add("gusset", "gore", "left gusset", "waist", "waist girth")
	f.Add("gusset", "leftgusset", "rightgusset", "leftgusset", "hip")
	f.Add("0 L", "0", "0", "lefts a", "hips")
	f.Add("left left wrist", "l", "left wrist girth", "left", "hip")
	f.Fuzz(func(t *testing.T, name, alias, other, short, meant string) {
		c, _ := Standard().With([]Measure{
			{Name: name, Class: Breadth, Paired: true, Aliases: []string{alias}},
			{Name: other, Class: Breadth, Paired: true, Aliases: []string{name}},
		}, map[string]string{short: meant})
		means := make(map[string]string)
		for _, m := range c.All() {
			for _, name := range append([]string{m.Name}, m.Aliases...) {
				if other, taken := means[keyOf(name)]; taken && other != m.Name {
					t.Errorf("%q means both %q and %q", name, other, m.Name)
				}
				means[keyOf(name)] = m.Name
			}
			for _, side := range []Side{Both, Left, Right} {
				p := Point{m.Name, side}
				if got, ok := c.Find(p.String()); (m.Paired || side == Both) && (!ok || got != p) {
					t.Errorf("Find(%q) = %#v, %v", p.String(), got, ok)
				}
			}
		}
	})
}
