package site

import (
	"hussif/build/address"
	"hussif/build/decision"
	"hussif/build/show"
	"hussif/content/journal"
	"hussif/theme"
)

// decision shows a settled question and how it turned out. On the page where it is
// written it is a part of that page, elsewhere it leads there.
func (d desk) decision(c decision.Decision, own bool) theme.Decision {
	out := theme.Decision{
		Question: d.Journal.Titled(c.Question), Chose: d.Journal.Titled(c.Chose), InsteadOf: c.InsteadOf,
		Because: c.Because, RestsOn: d.refs(c.RestsOn),
	}
	if own {
		out.Anchor = c.Anchor
	} else if from, ok := d.Journal.Named(string(c.From)); ok {
		out.From = theme.Link{Href: d.href(from, c.Anchor), Text: from.Head().Title}
		if c.Day != 0 {
			out.From.Note = show.Day(c.Day)
		}
	}
	if o, ok := c.Outcome(); ok {
		out.Outcome = &theme.Outcome{Mark: string(o.How), Words: string(o.How), Because: o.Because}
		if from, ok := d.Journal.Named(string(o.From)); ok {
			out.Outcome.From = theme.Link{Href: d.href(from, ""), Text: from.Head().Title, Note: show.Day(o.Day)}
		}
	}
	return out
}

func (d desk) decisionList(list []decision.Decision) []theme.Decision {
	var out []theme.Decision
	for _, c := range list {
		out = append(out, d.decision(c, false))
	}
	return out
}

// ownDecisions shows the decisions of a note's front matter, which are parts of its
// page. Those in its text stand there.
func (d desk) ownDecisions(n *journal.Note) []theme.Decision {
	written := make(map[string]bool)
	for _, c := range n.Decided {
		written[c.Anchor] = true
	}
	var out []theme.Decision
	for _, c := range d.decisionsFor(n.ID) {
		if c.From == n.ID && written[c.Anchor] {
			out = append(out, d.decision(c, true))
		}
	}
	return out
}

// turnedOut shows the earlier decisions of which a note tells how they turned out.
func (d desk) turnedOut(n *journal.Note) []theme.Decision {
	var out []theme.Decision
	for _, t := range n.TurnedOut {
		r, ok := d.Journal.Named(t.Decision.To)
		if !ok {
			continue
		}
		anchor, _ := journal.Anchor(r, t.Decision.Anchor)
		for _, c := range d.decisionsFor(r.Head().ID) {
			if c.From == r.Head().ID && c.Anchor == anchor {
				shown := d.decision(c, false)
				shown.Outcome = &theme.Outcome{Mark: string(t.How), Words: string(t.How), Because: t.Because}
				out = append(out, shown)
			}
		}
	}
	return out
}

func (b *book) decisionsPage() any {
	d := b.at(address.Decisions)
	view := theme.Decisions{
		Frame: b.frame(d.path, "Decisions", "", "decisions"),
	}
	if len(b.allDecisions().All) == 0 {
		view.Empty = b.empty("Nothing yet. Begin a paragraph of a note with \"Decided:\" and it is gathered here.")
	}
	add := func(title, anchor string, groups []decision.Group) {
		if len(groups) == 0 {
			return
		}
		section := theme.DecisionSection{Title: title, Anchor: anchor}
		for _, g := range groups {
			group := theme.DecisionGroup{Title: theme.Link{Text: show.Sentence(g.Name)}, Decisions: d.decisionList(g.Decisions)}
			if r, ok := d.Journal.Named(string(g.ID)); ok {
				group.Title = d.to(r)
			}
			section.Groups = append(section.Groups, group)
		}
		view.Sections = append(view.Sections, section)
	}
	add("By outcome", "by-outcome", b.allDecisions().ByOutcome())
	add("By garment", "by-garment", b.allDecisions().ByGarment())
	add("By technique", "by-technique", b.allDecisions().ByTechnique())
	return view
}
