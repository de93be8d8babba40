package export

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strings"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/santhosh-tekuri/jsonschema/v6/kind"
	"golang.org/x/text/language"
	"golang.org/x/text/message"

	"hussif/content/edtf"
	"hussif/content/near"
	"hussif/content/source"
)

// NotALog is the rule that [Read] speaks for.
const NotALog = "not a circle's log"

// newer is what to do about a log that this program does not know.
const newer = "ask its maker to make it anew with `hussif site --for circle`"

// Read reads a log that somebody else has written. Where there is an error among the
// findings nothing of it may be used. What it returns is clean: see the package comment.
func Read(name string, data []byte) (*Log, []source.Finding) {
	file, found := source.LoadWithin(name, data, MaxSize, newer)
	if len(found) > 0 {
		return nil, found
	}
	r := reader{file}
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(file.Data))
	if err != nil {
		return nil, []source.Finding{r.syntax(err)}
	}
	if f, ok := r.version(value); !ok {
		return nil, []source.Finding{f}
	}
	if err := compiled().Validate(value); err != nil {
		return nil, r.invalid(err)
	}
	// What was held against the schema is what is taken: of a name given twice the
	// file has more.
	checked, err := json.Marshal(value)
	log := new(Log)
	if err == nil {
		err = json.Unmarshal(checked, log)
	}
	if err != nil {
		return nil, []source.Finding{r.syntax(err)}
	}
	found = slices.Concat(r.clean(log), r.twice(log), r.total(log))
	return log, found
}

// A reader knows where in the file things are.
type reader struct{ file *source.File }

func (r reader) found(path []string, format string, args ...any) source.Finding {
	f := source.Found(place(r.file, path), source.Error, NotALog, format, args...)
	f.Help = newer
	return f
}

// syntax tells of what is no JSON.
func (r reader) syntax(err error) source.Finding {
	f := r.found(nil, "this is no JSON: %v", err)
	f.Span = r.file.Whole().At(0, 1)
	var syntax *json.SyntaxError
	switch {
	case errors.Is(err, io.ErrUnexpectedEOF), errors.Is(err, io.EOF):
		f.Text, f.Span = "the file breaks off here", r.file.Whole().At(max(0, len(r.file.Data)-1), 1)
	case errors.As(err, &syntax):
		f.Span = r.file.Whole().At(int(syntax.Offset)-1, 1)
	}
	return f
}

// version reports whether a log is of a version that is known.
func (r reader) version(value any) (source.Finding, bool) {
	top, _ := value.(map[string]any)
	number, ok := top["hussif_circle"].(json.Number)
	if !ok {
		f := r.found(nil, "this is nothing that `hussif site --for circle` wrote")
		f.Span = r.file.Whole().At(0, 1)
		return f, false
	}
	if n, err := number.Float64(); err != nil || n != Version {
		f := r.found([]string{"hussif_circle"}, "this is of version %s, and this hussif knows version %d", number, Version)
		f.Help = "bring the older of the two programs up to date"
		return f, false
	}
	return source.Finding{}, true
}

// mostFound is how many faults of one log are told.
const mostFound = 10

// invalid tells where a log is not as the schema says.
func (r reader) invalid(err error) []source.Finding {
	var whole *jsonschema.ValidationError
	if !errors.As(err, &whole) {
		return []source.Finding{r.found(nil, "%v", err)}
	}
	var found []source.Finding
	var tell func(*jsonschema.ValidationError)
	tell = func(e *jsonschema.ValidationError) {
		for _, cause := range e.Causes {
			tell(cause)
		}
		if len(e.Causes) == 0 && len(found) < mostFound {
			found = append(found, r.fault(e)...)
		}
	}
	tell(whole)
	return source.Sort(found)
}

// fault puts into words what the schema does not take.
func (r reader) fault(e *jsonschema.ValidationError) []source.Finding {
	at := e.InstanceLocation
	say := func(format string, args ...any) []source.Finding {
		return []source.Finding{r.found(at, format, args...)}
	}
	switch k := e.ErrorKind.(type) {
	case *kind.AdditionalProperties:
		var found []source.Finding
		for _, name := range k.Properties[:min(len(k.Properties), mostFound)] {
			f := r.found(append(at[:len(at):len(at)], name), "there is no field %q here", name)
			f.Span = nameBefore(f.Span, name)
			f.Instead = near.Of(name, fieldsAt(at))
			found = append(found, f)
		}
		return found
	case *kind.Required:
		return say("the field %q is missing", k.Missing[0])
	case *kind.Type:
		return say("this is a value of type %s, and should be of type %s", k.Got, strings.Join(k.Want, " or "))
	case *kind.MaxLength:
		return say("this has %d characters, and %d are the most", k.Got, k.Want)
	case *kind.MaxItems:
		return say("this has %d items, and %d are the most", k.Got, k.Want)
	case *kind.Maximum:
		return say("this is more than %s", k.Want.RatString())
	case *kind.Pattern:
		return say("%q is not %s", k.Got, forms[formAt(at)].about)
	case *kind.Enum:
		var words []string
		for _, want := range k.Want {
			words = append(words, fmt.Sprint(want))
		}
		found := say("%v is none of %s", k.Got, strings.Join(words, ", "))
		found[0].Instead = near.Of(fmt.Sprint(k.Got), words)
		return found
	}
	return say("%s", e.ErrorKind.LocalizedString(message.NewPrinter(language.English)))
}

// clean cleans all texts of a log and tells of those that are not what they should be.
func (r reader) clean(log *Log) []source.Finding {
	var found []source.Finding
	each(log, func(path []string, f reflect.StructField, text string) string {
		var err error
		switch f.Tag.Get("is") {
		case "html":
			text, err = cleanHTML(text)
		case "day":
			if text != "" {
				_, err = edtf.ParseDay(text)
			}
		case "edtf":
			_, err = edtf.Parse(text)
		default:
			text = cleanText(text)
			if f.Tag.Get("is") == "name" && strings.TrimSpace(text) == "" {
				err = errors.New("there is nothing to be read here")
			}
		}
		if err != nil && len(found) < mostFound {
			found = append(found, r.found(path, "%v", err))
		}
		return text
	})
	return found
}

// What a log may have in all, since each of these makes a page or a picture.
const (
	mostFeatures = 5000
	mostPhotos   = 2000
)

// total tells of what there is too much of in all.
func (r reader) total(log *Log) []source.Finding {
	features := make(map[string]bool)
	photos := 0
	for _, b := range log.Builds {
		photos += len(b.Photos)
		for _, f := range b.Features {
			features[f.What] = true
		}
	}
	for _, reference := range log.References {
		for _, what := range append(reference.Shows, reference.Lacks...) {
			features[what] = true
		}
	}
	var found []source.Finding
	if len(features) > mostFeatures {
		found = append(found, r.found([]string{"builds"}, "there are %d features in all, and %d are the most", len(features), mostFeatures))
	}
	if photos > mostPhotos {
		found = append(found, r.found([]string{"builds"}, "there are %d photos in all, and %d are the most", photos, mostPhotos))
	}
	return found
}

// twice tells of IDs that several things of one kind have.
func (r reader) twice(log *Log) []source.Finding {
	var found []source.Finding
	look := func(kind string, n int, id func(int) string) {
		seen := make(map[string]bool)
		for i := range n {
			if seen[id(i)] && len(found) < mostFound {
				found = append(found, r.found([]string{kind, fmt.Sprint(i), "id"}, "the ID %q is given twice", id(i)))
			}
			seen[id(i)] = true
		}
	}
	look("builds", len(log.Builds), func(i int) string { return log.Builds[i].ID })
	look("patterns", len(log.Patterns), func(i int) string { return log.Patterns[i].ID })
	look("techniques", len(log.Techniques), func(i int) string { return log.Techniques[i].ID })
	look("references", len(log.References), func(i int) string { return log.References[i].ID })
	return found
}
