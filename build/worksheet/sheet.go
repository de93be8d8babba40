package worksheet

import (
	"slices"
	"strings"

	"hussif/content/near"
)

// A Sheet is one worksheet with the figures that it is worked with.
type Sheet interface {
	// About says what it is for.
	About() About
	// Inputs describes the fields of this very sheet and reads into them.
	Inputs() []Input
	// Solve works it out on paper. All inputs have been read and lie in their range.
	Solve(p *Paper)
}

// An About is what the help and the guide say of a worksheet.
type About struct {
	Name    string   // as in a note: "knife pleats"
	Also    []string // other names that makers use
	Short   string   // what it answers, in one line
	Long    string   // how to use it, in a paragraph
	Example string   // the lines of a block that is worked without a fault
	Formula string
	Source  string // of the formula
	Care    string // where the work can hurt; "" elsewhere
}

// All returns every worksheet, without figures, in the order in which they are
// listed.
func All() []Sheet {
	return []Sheet{
		new(Gauging), new(KnifePleats), new(BoxPleats), new(InvertedPleats), new(Gathers),
		new(BiasStrips), new(StraightStrips), new(Piping),
		new(LetOut), new(LetInPanel), new(Spacing), new(CircleSkirt), new(HemLevel), new(Yardage),
	}
}

// Find returns the worksheet of a name, in capitals or not, with blanks or hyphens.
// Where there is none it returns the names that could have been meant.
func Find(name string) (Sheet, []string) {
	wanted := Plain(name)
	var names []string
	for _, s := range All() {
		about := s.About()
		for _, known := range append([]string{about.Name}, about.Also...) {
			if Plain(known) == wanted {
				return s, nil
			}
			names = append(names, known)
		}
	}
	return nil, near.Of(wanted, names)
}

// Names returns the names of all worksheets.
func Names() []string {
	var names []string
	for _, s := range All() {
		names = append(names, s.About().Name)
	}
	return names
}

// Plain returns a name as all spellings of it have it: in lower case, with blanks.
func Plain(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return r == ' ' || r == '-' || r == '_' || r == '\t' })
	return strings.Join(words, " ")
}

// find returns the input of a name.
func find(inputs []Input, name string) (Input, bool) {
	i := slices.IndexFunc(inputs, func(in Input) bool { return in.Name == Plain(name) })
	if i < 0 {
		return Input{}, false
	}
	return inputs[i], true
}
