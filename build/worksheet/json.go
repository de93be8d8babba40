package worksheet

// A Record is a worked worksheet for programs: lengths in millimetres and as they
// are shown.
type Record struct {
	Worksheet string         `json:"worksheet"`
	Inputs    []InputRecord  `json:"inputs"`
	Formula   []LineRecord   `json:"formula,omitempty"`
	Answers   []AnswerRecord `json:"answers,omitempty"`
	Cut       []string       `json:"cut,omitempty"`
	Cautions  []string       `json:"cautions,omitempty"`
	Care      string         `json:"take_care,omitempty"`
	Drawings  []ShownRecord  `json:"drawings,omitempty"`
	Faults    []FaultRecord  `json:"faults,omitempty"`
}

// An InputRecord is a [Fact] for programs.
type InputRecord struct {
	Name  string `json:"name"`
	Value string `json:"value"`
	From  string `json:"from,omitempty"`
}

// A LineRecord is a [Line] for programs.
type LineRecord struct {
	Rule   string `json:"rule"`
	Filled string `json:"filled"`
	Out    string `json:"out"`
}

// An AnswerRecord is an [Answer] for programs; only one of its figures is there.
type AnswerRecord struct {
	Name   string   `json:"name"`
	Words  string   `json:"words"`
	MM     *float64 `json:"mm,omitempty"`
	Count  *int     `json:"count,omitempty"`
	Number *float64 `json:"number,omitempty"`
	Main   bool     `json:"main,omitempty"`
}

// A ShownRecord is what a drawing shows, in words.
type ShownRecord struct {
	Title string `json:"title"`
	Shows string `json:"shows"`
}

// A FaultRecord is a [Fault] for programs.
type FaultRecord struct {
	Input   string   `json:"input,omitempty"`
	Text    string   `json:"text"`
	Instead []string `json:"instead,omitempty"`
	Help    string   `json:"help,omitempty"`
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
