package measure

// A Measure is one thing that can be read with a tape on a body or a garment.
type Measure struct {
	Name    string   // as in ISO 8559-1:2017, where it has one
	Aliases []string // short forms of the workroom and titles in other editions
	Class   Class
	Paired  bool   // of a part the body has two of, and read on one side
	Source  string // where the name is from
	Taken   string // where on the body, and how the tape lies
}

// Where the names are from. "From memory" is said where the measure is sure but
// the wording of its title was not compared with the edition named.
const (
	iso2017       = "ISO 8559-1:2017"
	iso2017Memory = "ISO 8559-1:2017, title from memory"
	iso1989       = "ISO 8559:1989"
	iso7250       = "ISO 7250-1:2017, title from memory"
	practice      = "common practice"
	thisJournal   = "this journal"
)

const (
	paired = true
	single = false
)

func standardMeasures() []Measure {
	var all []Measure
	for _, group := range [][]Measure{
		trunkGirths(), limbGirths(), heights(), widths(), trunkLengths(), limbLengths(), headHandFoot(), garmentLengths(),
	} {
		all = append(all, group...)
	}
	return all
}
