package main

import (
	"reflect"
	"strings"

	"github.com/spf13/cobra"

	"hussif/build/table"
	"hussif/build/worksheet"
	"hussif/content/schema"
	"hussif/content/source"
)

// printouts are what commands print for other programs, by the command.
func printouts() []printout {
	return []printout{
		{"check", reflect.TypeFor[[]source.FindingJSON]()},
		{"check --for circle", reflect.TypeFor[seenJSON]()},
		{"site", reflect.TypeFor[siteJSON]()},
		{"circle", reflect.TypeFor[circleJSON]()},
		{"fit", reflect.TypeFor[[]fitJSON]()},
		{"takedown", reflect.TypeFor[takeDownJSON]()},
		{"next", reflect.TypeFor[[]lessonJSON]()},
		{"photos", reflect.TypeFor[photosReport]()},
		{"work", reflect.TypeFor[worksheet.Record]()},
		{"schema", reflect.TypeFor[[]kindSchema]()},
	}
}

type printout struct {
	command string
	of      reflect.Type
}

// A jsonField is one field of a printout, by its path: "rows[].measure".
type jsonField struct {
	path, kind, doc string
	optional        bool
}

// fields lists the fields of a printout in the order printed.
func (a printout) fields() []jsonField {
	of := a.of
	if of.Kind() == reflect.Slice {
		of = of.Elem()
	}
	return fieldsOf(of, "")
}

func fieldsOf(t reflect.Type, before string) []jsonField {
	var out []jsonField
	for i := range t.NumField() {
		f := t.Field(i)
		tag, tagged := f.Tag.Lookup("json")
		if f.Anonymous && !tagged {
			out = append(out, fieldsOf(f.Type, before)...)
			continue
		}
		if !tagged {
			continue
		}
		name, options, _ := strings.Cut(tag, ",")
		field := jsonField{path: before + name, doc: f.Tag.Get("doc"), optional: strings.Contains(options, "omitempty")}
		of := f.Type
		for of.Kind() == reflect.Pointer || of.Kind() == reflect.Slice {
			if of.Kind() == reflect.Slice {
				field.path += "[]"
			}
			of = of.Elem()
		}
		field.kind = jsonKind(of)
		out = append(out, field)
		// Findings within an answer are those of check.
		if field.kind == "group" && of != reflect.TypeFor[source.FindingJSON]() {
			out = append(out, fieldsOf(of, field.path+".")...)
		}
	}
	return out
}

// jsonKind names what JSON has for a value of a type.
func jsonKind(t reflect.Type) string {
	switch t.Kind() {
	case reflect.String:
		return "text"
	case reflect.Bool:
		return "true or false"
	case reflect.Struct:
		if t == reflect.TypeFor[schema.Schema]() {
			return "JSON Schema"
		}
		return "group"
	}
	return "number"
}

// jsonTopic is what `hussif help json` prints.
func jsonTopic(say *voice) *cobra.Command {
	c := &cobra.Command{Use: "json", Short: "What commands print for other programs, field by field"}
	c.SetHelpFunc(func(*cobra.Command, []string) { say.printouts() })
	return c
}

// answers explains what commands print with --json.
func (v *voice) printouts() {
	v.sayf("With --json a command prints one value for another program, on standard output, and nothing else there. " +
		"Fields keep their names and meanings from version to version; others may be added. " +
		"Those marked with ? are missing where there is nothing to say. [] stands for each item of a list. " +
		"Names that end in _mm are lengths in millimetres, those in _hours are hours.")
	for _, a := range printouts() {
		title := "hussif " + a.command + " --json: a group"
		if a.of.Kind() == reflect.Slice {
			title = "hussif " + a.command + " --json: a list, and in each item"
		}
		v.heading(title)
		var rows [][]string
		for _, f := range a.fields() {
			if f.optional {
				f.path += "?"
			}
			rows = append(rows, []string{"  " + f.path, f.kind, f.doc})
		}
		v.table(nil, rows)
	}
	v.heading("hussif table NAME --json: a list, and in each item the columns of that table")
	var rows [][]string
	for _, s := range table.Subjects() {
		rows = append(rows, []string{"  " + s.Name, "`hussif table " + s.Name + " --columns` explains them"})
	}
	v.table(nil, rows)
}
