package edtf

import "slices"

// A captionReader reads the tokens of a caption from left to right.
type captionReader struct {
	text    string
	tokens  []token
	at      int
	customs Customs
}

// captionEDTF returns the expression a museum caption stands for. It makes no
// suggestions except where a caption has two readings.
func captionEDTF(text string, c Customs) (string, *Error) {
	r := &captionReader{text: text, tokens: tokens(text), customs: c}
	made, fault := r.caption()
	if fault != nil {
		return "", fault
	}
	if _, fault := parse(made); fault != nil {
		// The words were understood but name no date, such as 31 April.
		return "", refuse(text, r.tokens[0].at, "%s", fault.Reason)
	}
	return made, nil
}

func (r *captionReader) peek() token { return r.tokens[r.at] }

// peek2 returns the token after the one that peek returns.
func (r *captionReader) peek2() token { return r.tokens[min(r.at+1, len(r.tokens)-1)] }

// word steps over the next token if it is one of the words.
func (r *captionReader) word(words ...string) bool {
	t := r.peek()
	if t.kind != wordToken || !slices.Contains(words, t.text) {
		return false
	}
	r.at++
	return true
}

// sign steps over the next token if it is of the kind.
func (r *captionReader) sign(kind tokenKind) bool {
	if r.peek().kind != kind {
		return false
	}
	r.at++
	return true
}

// stuck refuses the next token.
func (r *captionReader) stuck() *Error {
	t := r.peek()
	switch t.kind {
	case endToken:
		return refuse(r.text, t.at, "the date is not finished")
	case wordToken:
		if t.text == "bc" || t.text == "bce" {
			return refuse(r.text, t.at, "a year BC is written in EDTF, as -0043 for 44 BC")
		}
		return refuse(r.text, t.at, "%q does not fit into a date here", t.text)
	}
	return refuse(r.text, t.at, "nothing can be made of %q here", t.text)
}

// caption reads the whole of a caption.
func (r *captionReader) caption() (string, *Error) {
	lead := r.leadMarks()
	if r.word(makingWords...) {
		r.skip()
		lead |= r.leadMarks()
	}
	limit := r.bound()
	between := limit == noBound && r.word("between")
	list, by, fault := r.dates(lead)
	if fault != nil {
		return "", fault
	}
	if limit == noBound {
		limit = r.boundAfter()
	}
	if r.peek().kind != endToken {
		return "", r.stuck()
	}
	if fault := r.complete(list, by); fault != nil {
		return "", fault
	}
	switch {
	case between && (len(list) != 2 || by != joinAnd):
		return "", refuse(r.text, list[0].at, "between is followed by two dates with and")
	case between:
		return r.writtenBetween(list)
	case limit == onwards && by == joinTo:
		// "from 1784 to 1787" is a span.
		return r.writtenList(list, by)
	case limit != noBound && len(list) > 1:
		return "", refuse(r.text, list[1].at, "only one date can be before, after or by")
	case limit != noBound:
		return r.writtenBound(list[0], limit)
	}
	return r.writtenList(list, by)
}

// A bound says on which side of a date something lies.
type bound int

const (
	noBound bound = iota
	before        // earlier than the date
	after         // later than the date
	upTo          // not later
	onwards       // not earlier
)

func (r *captionReader) bound() bound {
	switch {
	case r.word("not", "no"):
		switch {
		case r.word("before"):
			return onwards
		case r.word("after"):
			return upTo
		case r.word("earlier"):
			r.word("than")
			return onwards
		case r.word("later"):
			r.word("than")
			return upTo
		}
		r.at--
	case r.word("before"):
		return before
	case r.word("after"):
		return after
	case r.word("pre"):
		r.sign(dashToken)
		return before
	case r.word("post"):
		r.sign(dashToken)
		return after
	case r.word("by", "until", "till"):
		return upTo
	case r.word("from", "since"):
		return onwards
	}
	return noBound
}

// boundAfter reads what may follow a date: "or later", "onwards".
func (r *captionReader) boundAfter() bound {
	from := r.at
	switch {
	case r.word("onwards", "onward"):
		return onwards
	case !r.word("or"):
		return noBound
	case r.word("later", "after"):
		return onwards
	case r.word("earlier", "before"):
		return upTo
	}
	r.at = from
	return noBound
}

// A joint is what stands between the dates of a caption.
type joint int

const (
	noJoint joint = iota
	joinTo        // a dash, a slash or "to"
	joinOr
	joinAnd
)

// dates reads one date, two with a span between them, or a list.
func (r *captionReader) dates(lead marks) ([]atom, joint, *Error) {
	first, fault := r.date()
	if fault != nil {
		return nil, noJoint, fault
	}
	first.lead |= lead
	list := []atom{first}
	if r.sign(dashToken) || r.sign(slashToken) || r.word(unionWords...) {
		last, fault := r.date()
		return append(list, last), joinTo, fault
	}
	by := noJoint
	for by == noJoint {
		follows := r.peek2()
		switch {
		case r.peek().kind == wordToken && r.peek().text == "or" && slices.Contains(boundWords, follows.text):
			return list, noJoint, nil
		case r.word("or"):
			by = joinOr
		case r.word("and"):
			by = joinAnd
		case !r.sign(commaToken):
			if len(list) > 1 {
				return nil, noJoint, refuse(r.text, r.peek().at, "put or, or and, before the last of several dates")
			}
			return list, noJoint, nil
		}
		next, fault := r.date()
		if fault != nil {
			return nil, noJoint, fault
		}
		list = append(list, next)
	}
	return list, by, nil
}
