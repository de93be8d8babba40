package leaf

import (
	"strings"

	"hussif/content/amend"
	"hussif/content/front"
	"hussif/content/journal"
)

var blank front.Node

// stages fill a leaf with what each stage of the work asks for.
var stages = map[journal.Stage]func(*sheet){
	"planning": func(s *sheet) {
		s.ask("What was settled, instead of what, and why: in a year only the outcome can be seen.")
		s.entries("decided", "as in {question: cuffs or a plain wrist, chose: plain, because: the strip is too narrow}", group("question", blank, "chose", blank, "instead of", amend.List(), "because", blank, "rests on", amend.List()))
		s.carried()
		s.materials("bought", "cost", "from")
		s.ask("Measure first, over what is worn under it: " + s.measureCommand())
	},
	"mock-up": func(s *sheet) {
		s.ask("Before it comes off, mark on it the waist, the grain, the balance lines and where the edges met: laid flat, nobody finds them again.")
		s.measured()
		s.fitted()
		s.ask("What goes onto the pattern, by measure, and whether it has reached the paper.")
		s.patternChanged()
		s.materials("used")
	},
	"cutting": func(s *sheet) {
		s.ask("Which edge of each piece is the front, which side of the cloth the right one, its grain and its marks: to be seen now, and not when it is sewn. They go onto the build's page, under pieces.")
		s.piecesToTell()
		s.materials("used")
		s.materials("left over", "size", "grain")
		s.ask("What was changed while cutting, by measure, and whether it has reached the paper.")
		s.patternChanged()
		s.carried()
	},
	"sewing": func(s *sheet) {
		s.ask("Which seams are piped, boned, trimmed or clipped, with what stitch and thread: hidden as soon as it is lined. They go onto the build's page, under seams.")
		s.seamsToTell()
		s.seamList("sewed", s.unsewn())
		s.materials("used")
	},
	"fitting": func(s *sheet) {
		s.ask("Before the pins come out: over which layers, with what gap or lap, and how much was pinned where.")
		s.measured()
		s.fitted()
		s.altered()
	},
	"unpicking": func(s *sheet) {
		s.ask("Before the first stitch is cut: which piece sat where, which edge faced the front, which side was out, how deep the pleats lay and which way. " + s.takedownCommand())
		s.piecesToTell()
		s.ask("Cut away from your hand and from the cloth, in good light; ask a conservator about anything old or of value.")
		s.seamList("opened", s.seamNames())
	},
	"altering": func(s *sheet) {
		s.ask("How wide the allowance was on each edge and is now, and at which measure: nobody can tell a let-out seam afterwards.")
		s.altered()
		s.seamList("opened", s.seamNames())
		s.seamList("sewed", s.seamNames())
		s.ask("Measured when it was done, to see whether it did what it should.")
		s.measured()
	},
	"finishing": func(s *sheet) {
		s.ask("Measure it now that it is done: every later fit rests on it. On the build's page: state: finished, and finished: " + s.Day.String())
		s.measured()
		s.materials("used")
		s.materials("left over", "size", "grain")
		s.entries("spent", "as in {amount: 12.50, what: hooks}", group("amount", blank, "what", blank))
	},
	"worn": func(s *sheet) {
		s.ask("What rode up, gaped, rubbed, was hot or came undone, while it is remembered, and what wants mending before the next time.")
		s.field("occasion", s.occasion(), "")
		s.fitted()
	},
	"cleaned": func(s *sheet) {
		s.ask("How it was cleaned, what ran, what shrank and what came loose. Try anything on a hidden seam first; solvents want fresh air and no flame, and what is old or of value a conservator.")
		s.measured()
		s.materials("used")
	},
}

func (s *sheet) measureCommand() string {
	if s.Build.For.IsZero() {
		return "hussif measure, with the wearer's name"
	}
	text := "hussif measure " + s.Build.For.To
	if len(s.Build.Over) > 0 {
		text += " --over " + oneLine(strings.Join(s.Build.Foundation(), ","))
	}
	return text
}

func (s *sheet) takedownCommand() string {
	if len(s.Build.Seams) == 0 {
		return ""
	}
	return "Try hussif takedown " + s.Build.ID.Name() + " first."
}
