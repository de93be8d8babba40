package journal

import (
	"reflect"

	"hussif/content/front"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// figure matches the characters that a number begins with.
const figure = "0-9¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞↉"

// number matches a text in which no word stands before the number.
const number = "^[^A-Za-z]*[" + figure + "]"

// How the values of a journal are written, in the order of their readers.
var (
	textForm = front.Form{Name: "words", Bare: front.BareAny}
	linkForm = front.Form{Name: "a link", Doc: "the name of a page: its file's name without the ending, or the folder of a build",
		Pattern: `[^\s|#]`, Bare: front.BareAny}
	answerForm = front.Form{Name: "yes or no", Words: []string{"yes", "no"},
		Pattern: front.AnyCase("yes", "no", "true", "false"), Bare: front.BareAnswer}
	countForm = front.Form{Name: "a whole number", Examples: []string{"2"},
		Pattern: `^\+?0*[1-9][0-9]{0,5}$`, Bare: front.BareCount}
	addressForm = front.Form{Name: "a web address", Examples: []string{"https://example.org/green-jacket"},
		Pattern: `^[Hh][Tt][Tt][Pp][Ss]?://[^/]`}
	lengthForm = front.Form{Name: "a length", Doc: "a number takes the journal's unit",
		Examples: []string{"37 1/2 in", "95,3 cm", "1 ft 3 in"}, Pattern: number, Bare: front.BareNumber}
	rangeForm = front.Form{Name: "a length, or a range of them", Examples: []string{"0 to 1 in", "1/2 in"},
		Pattern: number, Bare: front.BareNumber}
	sizeForm = front.Form{Name: "a width and a length", Examples: []string{"9 x 31 in"},
		Pattern: number + "[\\s\\S]*([xX×]|[bB][yY])[\\s\\S]*[" + figure + "]"}
	amountForm = front.Form{Name: "an amount", Doc: "a length, a size, or a number with the word for what is counted",
		Examples: []string{"2 1/4 yd", "9 x 31 in", "3 skeins"}, Pattern: number, Bare: front.BareNumber}
	edgesForm = front.Form{Name: "a length with what it is counted on", Doc: "each edge, each seam or all round",
		Examples: []string{"3/8 in each edge", "1 in all round"},
		Pattern:  number + "[\\s\\S]*([Ee][Dd][Gg][Ee]|[Ss][Ee][Aa][Mm]|[Rr][Oo][Uu][Nn][Dd])"}
	moneyForm = front.Form{Name: "money", Doc: "a number takes the journal's currency", Examples: []string{"12.50 EUR", "£3"},
		Pattern: "[0-9]", Bare: front.BareNumber}
	durationForm = front.Form{Name: "hours and minutes", Doc: "a number is hours", Examples: []string{"3 h 20 min", "3.5", "3:20"},
		Pattern: number, Bare: front.BareNumber}
	dayForm = front.Form{Name: "a day", Examples: []string{"2026-03-01"}, Pattern: `^[0-9]{4}-[0-9]{2}-[0-9]{2}$`}
	// The dates without a figure are centuries, or have an X for each.
	dateForm = front.Form{Name: "a date", Doc: "in EDTF, or as the label of a museum says it",
		Examples: []string{"1784", "178X", "1784~", "1780/1789", "ca. 1785", "late 18th century"}, Pattern: "[0-9Xx]|[Cc]", Bare: front.BareNumber}
	estimateForm = front.Form{Name: "a reading", Doc: `a length, also "about 12 in", "unknown" and "not measured"`,
		Examples: []string{"29 in", "about 12 in", "unknown", "not measured"},
		Pattern:  "[" + figure + "]|" + front.AnyCase("unknown", "not known", "?", "not measured", "unmeasured"), Bare: front.BareNumber}
	unitForm = front.Form{Name: "a unit", Words: []string{"in", "cm", "mm"},
		Pattern: "^[^A-Za-z]*([Ii][Nn]|[Cc][Mm]|[Mm][Mm]|[Cc][Ee][Nn]|[Mm][Ii][Ll]|[^A-Za-z]*$)"}
	currencyForm = front.Form{Name: "a currency", Doc: "a code of ISO 4217", Examples: []string{"EUR", "GBP", "USD"}, Pattern: `\S`}
	yearsForm    = front.Form{Name: "a count of years", Examples: []string{"5 years"}, Pattern: "[1-9]", Bare: front.BareCount}
	classForm    = front.Form{Name: "a class of measures", Examples: classNames(measure.Classes())}
	shortForm    = front.Form{Name: "short names", Each: "", Keys: []front.Key{
		{Name: "waist", Doc: "what is meant by waist alone"}, {Name: "hip", Doc: "what is meant by hip alone"},
	}}
	errorsForm = front.Form{Name: "errors of measuring", Each: quantity.Length(0),
		Keys: keysOf(append(measure.Classes(), measure.LaidFlat))}
	sharesForm = front.Form{Name: "audiences by field", Each: Audience("")}
	regionForm = front.Form{Name: "a region of a picture", Doc: "from the left, from the top, width and height in hundredths of the picture",
		Examples: []string{"40% 5% 20% 25%"}, Pattern: number}
	garmentForm = front.Form{Name: "ease by garment", Each: Wants{}}
)

// byMeasure is the form of a group with a value of a type under the name of each
// measure. named tells whether a list of names may stand for it.
func (t terms) byMeasure(name string, each any, named bool) front.Form {
	form := front.Form{Name: name, Each: each, Named: named}
	for _, m := range t.catalogue.All() {
		form.Keys = append(form.Keys, front.Key{Name: m.Name, Doc: m.Taken})
	}
	return form
}

// pointForm is the form of a measure's name as a value. It may be one of the
// journal's own, or written in another way, so no name is refused.
func (t terms) pointForm() front.Form {
	return front.Form{Name: "a measure", Examples: []string{"bust girth", "waist girth", "left upper arm girth"}, Bare: front.BareNumber}
}

func classNames(classes []measure.Class) []string {
	var names []string
	for _, c := range classes {
		names = append(names, c.String())
	}
	return names
}

func keysOf(classes []measure.Class) []front.Key {
	var keys []front.Key
	for _, c := range classes {
		keys = append(keys, front.Key{Name: c.String(), Doc: "two readings of a " + c.String()})
	}
	return keys
}

// Type returns the type that front matter of the kind is read into.
func (k Kind) Type() reflect.Type { return reflect.TypeOf(newRecord(k)).Elem() }

// Files returns patterns of the paths at which the files of the kind lie, from the
// journal's folder.
func (k Kind) Files() []string {
	switch k {
	case KindBuild:
		return []string{"builds/*/build.md", "builds/*.md"}
	case KindNote:
		return []string{"builds/*/*.md", "notes/*.md"}
	}
	for folder, kind := range folders {
		if kind == k {
			return []string{folder + "/*.md"}
		}
	}
	return nil
}

// Shapes returns how the front matter of pages is written in a journal without
// settings of its own.
func Shapes() *front.Schema {
	plain, _ := ParseSettings(nil)
	return NewParser(plain).schema
}

// SettingsShapes returns how the settings file is written.
func SettingsShapes() *front.Schema {
	plain, _ := ParseSettings(nil)
	return settingsSchema(plain)
}
