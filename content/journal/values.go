package journal

import (
	"errors"
	"fmt"
	"net/url"
	"strconv"
	"strings"
	"time"

	"hussif/content/edtf"
	"hussif/content/front"
	"hussif/content/measure"
	"hussif/content/near"
	"hussif/content/quantity"
	"hussif/content/source"
)

// terms is what the values of a journal's files are read by.
type terms struct {
	unit      quantity.Unit
	currency  string
	customs   edtf.Customs
	catalogue measure.Catalogue
}

func (t terms) readers() []front.Reader {
	return []front.Reader{
		front.As(textForm, readText),
		front.As(textForm, readWord),
		front.As(linkForm, readRef),
		front.As(sharesForm, readShares),
		front.As(regionForm, readRegion),
		front.As(answerForm, readAnswer),
		front.As(countForm, readCount),
		front.As(addressForm, readAddress),
		front.As(lengthForm, t.length),
		front.As(rangeForm, t.rangeOf),
		front.As(sizeForm, t.size),
		front.As(amountForm, t.amount),
		front.As(edgesForm, t.edges),
		front.As(moneyForm, t.money),
		front.As(durationForm, readDuration),
		front.As(dayForm, readDay),
		front.As(dateForm, t.date),
		front.As(estimateForm, t.estimate),
		front.As(estimateForm, t.estimate),
		front.As(t.pointForm(), t.pointRef),
		front.As(t.byMeasure("lengths by measure", quantity.Estimate{}, false), t.readings),
		front.As(t.byMeasure("changes by measure", quantity.Length(0), false), t.changes),
		front.As(t.byMeasure("wanted ease by measure", Want{}, true), t.wants),
		front.As(t.byMeasure("allowances by measure", Crossing{}, true), t.crossings),
		front.As(t.byMeasure("levels by measure", Level{}, true), t.levels),
		oneOf("an audience", Audiences...),
		oneOf("a state of a build", StatePlanned, StateUnderWay, StateFinished, StateRepair, StateApart, StateGone),
		oneOf("a stage of the work", Stages...),
		oneOf("a type of reference", ReferenceTypes...),
		oneOf("what a wearer may allow", FitNothing, FitWords, FitDeltas),
		oneOf("what can be accepted", AcceptsAmple),
		oneOf("a part of a seam", ExtentWhole, ExtentEnds),
		oneOf("how a decision turns out", Kept, Regretted, Changed),
	}
}

// text returns what a node says, or reports that it is no single value.
func text(d *front.Decoder, n front.Node) (string, bool) {
	if n.Kind != front.Text {
		return "", d.Shape(n, "a single value", "")
	}
	return n.Text, true
}

func readText(d *front.Decoder, n front.Node) (string, bool) { return text(d, n) }

func readWord(d *front.Decoder, n front.Node) (Word, bool) {
	s, ok := text(d, n)
	return Word{Text: s, Span: n.Span}, ok
}

func readRef(d *front.Decoder, n front.Node) (Ref, bool) {
	s, ok := text(d, n)
	if !ok {
		return Ref{}, false
	}
	ref := ParseRef(s)
	if ref.IsZero() {
		return Ref{}, d.Refuse(n.Span, NotALink, "this names no page of the journal")
	}
	ref.Span = n.Span
	return ref, true
}

// ParseRef reads a link as it is written in a field. It is zero where that names no
// page.
func ParseRef(s string) Ref {
	to := strings.TrimSuffix(strings.TrimPrefix(s, "[["), "]]")
	to, _, _ = strings.Cut(to, "|") // words for the reader mean nothing in a field
	to, anchor, _ := strings.Cut(to, "#")
	to = strings.TrimSuffix(strings.TrimSpace(to), ".md")
	if to == "" {
		return Ref{}
	}
	return Ref{To: to, Anchor: strings.ToLower(strings.TrimSpace(anchor))}
}

func readAnswer(d *front.Decoder, n front.Node) (Answer, bool) {
	s, ok := text(d, n)
	if !ok {
		return Unsaid, false
	}
	switch strings.ToLower(s) {
	case "yes", "true":
		return Yes, true
	case "no", "false":
		return No, true
	}
	return Unsaid, d.Refuse(n.Span, NotYesOrNo, fmt.Sprintf("%q is neither yes nor no", s), "yes", "no")
}

// maxCount is more than a garment has of anything, and keeps sums small.
const maxCount = 100_000

func readCount(d *front.Decoder, n front.Node) (int, bool) {
	s, ok := text(d, n)
	if !ok {
		return 0, false
	}
	count, err := strconv.Atoi(s)
	if err != nil || count < 1 || count > maxCount {
		return 0, d.Refuse(n.Span, NotACount, fmt.Sprintf("%q is not a whole number from 1 up", s))
	}
	return count, true
}

func readAddress(d *front.Decoder, n front.Node) (Address, bool) {
	s, ok := text(d, n)
	if !ok {
		return "", false
	}
	u, err := url.Parse(s)
	if err != nil || u.Host == "" || u.Scheme != "http" && u.Scheme != "https" {
		var instead []string
		if err == nil && u.Scheme == "" && strings.Contains(s, ".") && !strings.ContainsAny(s, " \t") {
			instead = append(instead, "https://"+s)
		}
		return "", d.Refuse(n.Span, NotAnAddress, fmt.Sprintf("%q is no address on the web", s), instead...)
	}
	return Address(s), true
}

func readDuration(d *front.Decoder, n front.Node) (time.Duration, bool) {
	return parsed(d, n, NotADuration, quantity.ParseDuration)
}

func readDay(d *front.Decoder, n front.Node) (edtf.Day, bool) {
	return parsed(d, n, NotADay, edtf.ParseDay)
}

func (t terms) date(d *front.Decoder, n front.Node) (edtf.Date, bool) {
	return parsed(d, n, NotADate, func(s string) (edtf.Date, error) { return edtf.Read(s, t.customs) })
}

func (t terms) length(d *front.Decoder, n front.Node) (quantity.Length, bool) {
	return parsed(d, n, NotALength, func(s string) (quantity.Length, error) { return quantity.ParseLength(s, t.unit) })
}

func (t terms) estimate(d *front.Decoder, n front.Node) (quantity.Estimate, bool) {
	return parsed(d, n, NotALength, func(s string) (quantity.Estimate, error) { return quantity.ParseEstimate(s, t.unit) })
}

func (t terms) rangeOf(d *front.Decoder, n front.Node) (quantity.Range, bool) {
	return parsed(d, n, NotALength, func(s string) (quantity.Range, error) { return quantity.ParseRange(s, t.unit) })
}

func (t terms) size(d *front.Decoder, n front.Node) (quantity.Size, bool) {
	return parsed(d, n, NotALength, func(s string) (quantity.Size, error) { return quantity.ParseSize(s, t.unit) })
}

func (t terms) edges(d *front.Decoder, n front.Node) (quantity.Edges, bool) {
	return parsed(d, n, NotALength, func(s string) (quantity.Edges, error) { return quantity.ParseEdges(s, t.unit) })
}

func (t terms) amount(d *front.Decoder, n front.Node) (quantity.Amount, bool) {
	return parsed(d, n, NotAnAmount, func(s string) (quantity.Amount, error) { return quantity.ParseAmount(s, t.unit) })
}

func (t terms) money(d *front.Decoder, n front.Node) (quantity.Money, bool) {
	return parsed(d, n, NotMoney, func(s string) (quantity.Money, error) { return quantity.ParseMoney(s, t.currency) })
}

// parsed reads a single value with one of the parsers of quantities and dates
// and turns their errors, which know an offset in the value, into findings.
func parsed[T any](d *front.Decoder, n front.Node, rule string, parse func(string) (T, error)) (T, bool) {
	var zero T
	s, ok := text(d, n)
	if !ok {
		return zero, false
	}
	v, err := parse(s)
	if err == nil {
		return v, true
	}
	var q *quantity.Error
	var e *edtf.Error
	switch {
	case errors.As(err, &q):
		return zero, d.Refuse(from(n, q.Offset), rule, q.Reason, q.Instead...)
	case errors.As(err, &e):
		return zero, d.Refuse(from(n, e.Offset), rule, e.Reason, e.Instead...)
	}
	return zero, d.Refuse(n.Span, rule, err.Error())
}

// from returns the place from an offset in a value to its end.
func from(n front.Node, offset int) source.Span {
	if offset <= 0 || offset >= len(n.Text) {
		return n.Span
	}
	return n.At(offset, len(n.Text)-offset)
}

// oneOf reads one of a few words.
func oneOf[T ~string](what string, words ...T) front.Reader {
	names := make([]string, len(words))
	for i, w := range words {
		names[i] = string(w)
	}
	return front.As(front.Form{Name: what, Words: names, Pattern: front.AnyCase(names...)}, func(d *front.Decoder, n front.Node) (T, bool) {
		s, ok := text(d, n)
		if !ok {
			return "", false
		}
		folded := strings.Join(strings.Fields(strings.ToLower(s)), " ")
		for _, name := range names {
			if folded == name {
				return T(name), true
			}
		}
		f := source.Found(n.Span, source.Error, NotOneOf, "%q is not %s", s, what)
		if f.Instead = near.Of(folded, names); len(f.Instead) == 0 {
			f.Help = "one of: " + strings.Join(names, ", ")
		}
		d.Report(f)
		return "", false
	})
}
