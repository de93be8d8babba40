package worksheet

import (
	"fmt"
	"strings"
)

// Fence is the word with which a block of a note becomes a worksheet; the name of
// the sheet follows it.
const Fence = "work"

// Guide returns the guide to all worksheets as Markdown. It is made of nothing but
// what each says about itself.
func Guide() string {
	var b strings.Builder
	b.WriteString("# Worksheets\n\nThe arithmetic of the workroom, worked and drawn where it belongs: in the note of the garment that it is for, or at a prompt.\n\n")
	fmt.Fprintf(&b, "In a note, a block of code whose first line says `%s` and the name of a worksheet is worked out. At a prompt, `hussif work` asks for what it needs. Lengths are written as everywhere: `1/4 in`, `37½\"`, `95,3 cm`; a bare number takes the journal's unit.\n\n", Fence)
	for _, s := range All() {
		a := s.About()
		fmt.Fprintf(&b, "* [%s](#%s): %s\n", a.Name, strings.ReplaceAll(a.Name, " ", "-"), a.Short)
	}
	for _, s := range All() {
		guide(&b, s)
	}
	return b.String()
}

func guide(b *strings.Builder, s Sheet) {
	a := s.About()
	fmt.Fprintf(b, "\n## %s\n\n", a.Name)
	fmt.Fprintf(b, "%s.", strings.ToUpper(a.Short[:1])+a.Short[1:])
	if len(a.Also) > 0 {
		fmt.Fprintf(b, " Also called %s.", list(a.Also, "or"))
	}
	fmt.Fprintf(b, "\n\n%s\n\n", a.Long)
	fmt.Fprintf(b, "    %s\n\nSource: %s.\n\n", strings.ReplaceAll(a.Formula, "; ", "\n    "), a.Source)
	if a.Care != "" {
		fmt.Fprintf(b, "Take care: %s\n\n", a.Care)
	}
	b.WriteString("| input | what it is | as in |\n| --- | --- | --- |\n")
	for _, in := range s.Inputs() {
		doc := in.Doc
		switch {
		case in.Need == Always:
			doc += "; always needed"
		case in.Need == Solved:
			doc += "; may be worked out"
		case in.Default != "":
			doc += "; " + in.Default + " where it is not given"
			if in.Metric != "" && in.Metric != in.Default && in.Default != "0 in" {
				doc += ", or " + in.Metric
			}
		}
		fmt.Fprintf(b, "| %s | %s | `%s` |\n", in.Name, doc, in.Example)
	}
	fmt.Fprintf(b, "\n```%s %s\n%s\n```\n", Fence, a.Name, a.Example)
}
