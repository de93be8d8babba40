package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"hussif/build/export"
	"hussif/content/journal"
	"hussif/content/near"
	"hussif/content/schema"
)

func schemaCommand(say *voice) *cobra.Command {
	var dir string
	var asJSON bool
	c := &cobra.Command{
		Use:   "schema [kind]",
		Short: "Write what the fields may hold, for an editor to complete and check",
		Long: `schema writes JSON Schema (draft 2020-12) for the front matter of each kind of
page, and for ` + journal.SettingsFile + `: every field with what it is, an example, and what it may
hold; and for the ` + export.Path + ` that a site for a sewing circle has. Editors with a YAML language server complete and mark fields by it. It takes
some things that ` + "`hussif check`" + ` finds fault with, which alone knows the other pages
and the measures of your own.

Named a kind it prints that schema, and with -o it writes all of them into a folder;
one whose name begins with an underscore is no part of a journal. Schemas of an
earlier version are written anew there, and no other file is touched.`,
		Example: `  hussif schema
  hussif schema note
  hussif schema -o _schema
  hussif schema --json`,
		Args: atMostOne("kind"),
		RunE: func(_ *cobra.Command, args []string) error {
			schemas := everySchema()
			if name := firstArg(args); name != "" {
				s, err := schemaCalled(schemas, name)
				if err != nil {
					return err
				}
				if dir == "" {
					return say.schema(s)
				}
				schemas = []kindSchema{s}
			}
			switch {
			case dir != "":
				return say.schemaFiles(schemas, dir)
			case asJSON:
				return say.json(schemas)
			}
			say.schemas(schemas)
			return nil
		},
	}
	c.ValidArgsFunction = completeKinds
	c.Flags().StringVarP(&dir, "output", "o", "", "write files into this `folder`")
	c.Flags().BoolVar(&asJSON, "json", false, "print all as one JSON list")
	return c
}

// A kindSchema is the schema of a kind of page, or of the settings file, which is
// called by the name of its file, or of what a site hands to a sewing circle.
type kindSchema struct {
	Kind   string         `json:"kind" doc:"the kind of page, journal for the settings, or circle for what a site hands to a sewing circle"`
	Files  []string       `json:"files" doc:"patterns of the paths of its files, from the journal's folder"`
	Schema *schema.Schema `json:"schema" doc:"its JSON Schema"`
}

func (s kindSchema) file() string { return s.Kind + ".schema.json" }

func everySchema() []kindSchema {
	settings := strings.TrimSuffix(journal.SettingsFile, filepath.Ext(journal.SettingsFile))
	all := []kindSchema{{settings, []string{journal.SettingsFile}, schema.Settings()}}
	for _, k := range journal.Kinds() {
		all = append(all, kindSchema{string(k), k.Files(), schema.Of(k)})
	}
	return append(all, kindSchema{"circle", []string{export.Path}, export.Schema()})
}

func schemaCalled(schemas []kindSchema, name string) (kindSchema, error) {
	var names []string
	for _, s := range schemas {
		if strings.EqualFold(s.Kind, name) || strings.EqualFold(s.Files[0], name) {
			return s, nil
		}
		names = append(names, s.Kind)
	}
	if instead := near.Of(name, names); len(instead) > 0 {
		return kindSchema{}, fmt.Errorf("there are no fields of %q; did you mean %s?", name, strings.Join(instead, " or "))
	}
	return kindSchema{}, fmt.Errorf("there are no fields of %q; there are those of %s", name, strings.Join(names, ", "))
}

// schema prints one schema.
func (v *voice) schema(s kindSchema) error {
	data, err := s.Schema.JSON()
	if err != nil {
		return err
	}
	_, err = v.Out.Write(data)
	return err
}

// schemas lists them.
func (v *voice) schemas(all []kindSchema) {
	rows := [][]string{{"kind", "of the files"}}
	for _, s := range all {
		rows = append(rows, []string{s.Kind, strings.Join(s.Files, ", ")})
	}
	v.columns(rows)
	v.sayf("")
	v.sayf("`hussif schema note` prints the schema of notes, `hussif schema -o _schema` writes all of them into a folder.")
}

// schemaFiles writes schemas into a folder, all of them or none.
func (v *voice) schemaFiles(all []kindSchema, dir string) error {
	type file struct {
		name string
		data []byte
	}
	var changed []file
	kept := 0
	for _, s := range all {
		data, err := s.Schema.JSON()
		if err != nil {
			return err
		}
		name := filepath.Join(dir, s.file())
		switch old, err := os.ReadFile(name); {
		case errors.Is(err, fs.ErrNotExist):
			changed = append(changed, file{name, data})
		case err != nil:
			return fmt.Errorf("writing the schemas: %w", err)
		case bytes.Equal(old, data):
			kept++
		case !madeBySchema(old):
			return fmt.Errorf("%s is no schema of hussif's and is left as it is; name another folder", name)
		default:
			changed = append(changed, file{name, data})
		}
	}
	for _, f := range changed {
		if err := replace(f.name, f.data); err != nil {
			return fmt.Errorf("writing the schemas: %w", err)
		}
	}
	v.sayf("%s: %s written, %d kept.", dir, number(len(changed), "schema"), kept)
	if all[0].Files[0] == journal.SettingsFile {
		v.sayf("For an editor with a YAML language server, put this on top of %s where the folder lies beside it:", journal.SettingsFile)
		v.raw("  # yaml-language-server: $schema=" + filepath.ToSlash(filepath.Base(dir)) + "/" + all[0].file())
	}
	return nil
}

// madeBySchema reports whether a file is a schema that was written here.
func madeBySchema(data []byte) bool {
	var head struct {
		Comment string `json:"$comment"`
	}
	return json.Unmarshal(data, &head) == nil && strings.HasPrefix(head.Comment, schema.Mark)
}

// replace writes a file whole, under another name first.
func replace(name string, data []byte) error {
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		return err
	}
	beside, err := writeBeside(name, 0o666, func(f *os.File) error {
		_, err := f.Write(data)
		return err
	})
	if err != nil {
		return err
	}
	if err := os.Rename(beside, name); err != nil {
		return errors.Join(err, os.Remove(beside))
	}
	return nil
}
