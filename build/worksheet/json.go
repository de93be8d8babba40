package worksheet

// A Record is a worked worksheet for programs: lengths in millimetres and as they
// are shown.
type Record struct {
	Worksheet string         `json:"worksheet" doc:"its name"`
	Inputs    []InputRecord  `json:"inputs" doc:"the figures that it was worked with"`
	Formula   []LineRecord   `json:"formula,omitempty" doc:"the formulas with the numbers in"`
	Answers   []AnswerRecord `json:"answers,omitempty" doc:"what came out"`
	Cut       []string       `json:"cut,omitempty" doc:"what to cut and to mark, in order"`
	Cautions  []string       `json:"cautions,omitempty" doc:"what to mind"`
	Care      string         `json:"take_care,omitempty" doc:"where the work can hurt"`
	Drawings  []ShownRecord  `json:"drawings,omitempty" doc:"what would be drawn"`
	Faults    []FaultRecord  `json:"faults,omitempty" doc:"what is wrong with the figures; then there are no answers"`
}

// An InputRecord is a [Fact] for programs.
type InputRecord struct {
	Name  string `json:"name" doc:"its name"`
	Value string `json:"value" doc:"as given"`
	From  string `json:"from,omitempty" doc:"where the figure is from"`
}

// A LineRecord is a [Line] for programs.
type LineRecord struct {
	Rule   string `json:"rule" doc:"in words"`
	Filled string `json:"filled" doc:"with the numbers in"`
	Out    string `json:"out" doc:"what comes out"`
}

// An AnswerRecord is an [Answer] for programs; only one of its figures is there.
type AnswerRecord struct {
	Name   string   `json:"name" doc:"its name"`
	Words  string   `json:"words" doc:"as it is measured, in the trade's fractions"`
	MM     *float64 `json:"length_mm,omitempty" doc:"of a length"`
	Count  *int     `json:"count,omitempty" doc:"of a number of things"`
	Number *float64 `json:"number,omitempty" doc:"of another number, such as a ratio"`
	Main   bool     `json:"main,omitempty" doc:"whether it is what the sheet was asked for"`
}

// A ShownRecord is what a drawing shows, in words.
type ShownRecord struct {
	Title string `json:"title" doc:"what is drawn"`
	Shows string `json:"shows" doc:"in words"`
}

// A FaultRecord is a [Fault] for programs.
type FaultRecord struct {
	Input   string   `json:"input,omitempty" doc:"the input it is about"`
	Text    string   `json:"text" doc:"what is wrong"`
	Instead []string `json:"instead,omitempty" doc:"what could stand there"`
	Help    string   `json:"help,omitempty" doc:"what to do"`
}

// Record returns a paper for programs.
func (p *Paper) Record() Record {
	r := Record{Worksheet: p.Title, Inputs: []InputRecord{}, Cut: p.Cut, Cautions: p.Cautions, Care: p.Care}
	for _, g := range p.Given {
		r.Inputs = append(r.Inputs, InputRecord(g))
	}
	for _, l := range p.Formula {
		r.Formula = append(r.Formula, LineRecord(l))
	}
	for _, a := range p.Answers {
		out := AnswerRecord{Name: a.Name, Words: a.Words, Main: a.Main}
		switch a.Kind {
		case ACount:
			out.Count = &a.Count
		case ANumber:
			out.Number = &a.Number
		default:
			out.MM = new(mm(a.Length))
		}
		r.Answers = append(r.Answers, out)
	}
	for _, d := range p.Drawings {
		r.Drawings = append(r.Drawings, ShownRecord{d.Title, d.Desc})
	}
	for _, f := range p.Faults {
		r.Faults = append(r.Faults, FaultRecord{f.Input, f.Text, f.Instead, f.Help})
	}
	return r
}
