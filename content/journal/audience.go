package journal

import (
	"reflect"
	"slices"

	"hussif/content/front"
	"hussif/content/near"
	"hussif/content/source"
)

// An Audience is who may see a thing. Nothing said leaves it to what holds it.
type Audience string

// Audiences, narrowest first.
const (
	Self   Audience = "self"   // the maker alone
	Circle Audience = "circle" // the maker's sewing group
	Public Audience = "public" // anyone
)

// Audiences lists them, narrowest first.
var Audiences = []Audience{Self, Circle, Public}

// MaySee reports whether who belongs to an audience may see what is shared with
// another: the maker sees all, and the circle what anyone sees.
func (a Audience) MaySee(shared Audience) bool {
	return slices.Index(Audiences, a) <= slices.Index(Audiences, shared)
}

// Narrowest returns the narrowest of some audiences. What says nothing does not
// count; where none says anything it is "".
func Narrowest(of ...Audience) Audience {
	narrowest := Audience("")
	for _, a := range of {
		if a != "" && (narrowest == "" || a.MaySee(narrowest)) {
			narrowest = a
		}
	}
	return narrowest
}

// A Matter is what a field tells of beside the work, as its tag `tells` says. Who may
// know that is not for the page alone to say.
type Matter string

// The matters.
const (
	OfBody    Matter = "body"    // what a body measures, or would give it away
	OfChange  Matter = "change"  // by how much a garment was made larger or smaller
	OfFit     Matter = "fit"     // how a garment sits, and what its wearer can do in it
	OfMoney   Matter = "money"   // what was paid
	OfPlace   Matter = "place"   // where somebody lives, shops or goes
	OfSharing Matter = "sharing" // who may see what
)

// Shares says of fields, by name, who may see them.
type Shares []FieldShare

// A FieldShare is who may see one field.
type FieldShare struct {
	Field string
	With  Audience
	Span  source.Span // of the field's name
}

// With returns who may see a field, or "" where that is not said.
func (s Shares) With(field string) Audience {
	for _, f := range s {
		if f.Field == field {
			return f.With
		}
	}
	return ""
}

func readShares(d *front.Decoder, n front.Node) (Shares, bool) {
	fields, ok := group(d, n, "write `share fields: {hours: self}`")
	var out Shares
	for _, f := range fields {
		share := FieldShare{Field: f.Key, Span: f.KeySpan}
		ok = d.Into(f.Value, &share.With) && ok
		out = append(out, share)
	}
	return out, ok
}

// neverApart are the fields without which a page is none, or which its path tells.
var neverApart = []string{"kind", "title", "date", "build", "share", "share fields"}

// notFields reports what `share fields` names that is no field of the page: a slip
// there would show what was to be hidden.
func (p *Parser) notFields(r Record) []source.Finding {
	names := slices.DeleteFunc(p.schema.Fields(reflect.ValueOf(r).Elem().Interface()), func(name string) bool {
		return slices.Contains(neverApart, name)
	})
	var findings []source.Finding
	for _, share := range r.Head().Fields {
		switch {
		case slices.Contains(names, share.Field):
		case slices.Contains(neverApart, share.Field):
			f := source.Found(share.Span, source.Error, front.UnknownField, "%q cannot be hidden apart from its page", share.Field)
			f.Help = "write `share: " + string(share.With) + "` for the page"
			findings = append(findings, f)
		default:
			f := source.Found(share.Span, source.Error, front.UnknownField, "%s has no field %q", r.Head().Kind, share.Field)
			f.Instead = near.Of(share.Field, names)
			findings = append(findings, f)
		}
	}
	return findings
}
