package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"github.com/spf13/cobra"

	"hussif/build/table"
	"hussif/content/near"
)

func tableCommand(say *voice) *cobra.Command {
	var dir, file string
	var asJSON, columns bool
	c := &cobra.Command{
		Use:   "table name",
		Short: "Write records as rows for a spreadsheet or a program",
		Long: `table writes every record of one sort as a row:

` + tableList() + `
They are CSV with a head row, or JSON with --json. Lengths stand in millimetres
and as the journal shows them; what is not known is left empty. In CSV an
apostrophe stands before text that a spreadsheet would take for a formula. All of
it is meant for your own eyes: it has body measures and prices.`,
		Example: `  hussif table measures
  hussif table fit --on 2026-03-01 -o fit.csv
  hussif table materials --json
  hussif table hours --columns`,
		Args: atMostOne("name"),
	}
	c.Flags().StringVarP(&dir, "journal", "j", "", "the journal's `folder`")
	c.Flags().BoolVar(&asJSON, "json", false, "write JSON")
	c.Flags().BoolVar(&columns, "columns", false, "explain the columns instead")
	c.Flags().StringVarP(&file, "output", "o", "", "write to a `file` that is not there yet")
	on := onFlag(c, today())
	c.ValidArgsFunction = completeTables
	c.RunE = func(c *cobra.Command, args []string) error {
		subject, err := tableCalled(firstArg(args))
		if err != nil {
			return err
		}
		if columns {
			say.tableColumns(subject)
			return nil
		}
		if c.Flags().Changed("on") && !subject.AsOf {
			return fmt.Errorf("%s is the same on every day; leave out --on", subject.Name)
		}
		w, err := openJournal(dir)
		if err != nil {
			return err
		}
		t := subject.Of(w.journal, on.day)
		write := t.CSV
		if asJSON {
			write = t.JSON
		}
		if file == "" {
			return write(say.Out)
		}
		var out bytes.Buffer
		if err := write(&out); err != nil {
			return err
		}
		return say.tableFile(t, file, out.Bytes())
	}
	return c
}

// tableCalled returns the subject of that name, or says which there are.
func tableCalled(name string) (table.Subject, error) {
	for _, s := range table.Subjects() {
		if s.Name == strings.ToLower(name) {
			return s, nil
		}
	}
	names := tableNames()
	if name == "" {
		return table.Subject{}, fmt.Errorf("which table? There are %s", strings.Join(names, ", "))
	}
	if instead := near.Of(name, names); len(instead) > 0 {
		return table.Subject{}, fmt.Errorf("no table is called %q; did you mean %s?", name, strings.Join(instead, " or "))
	}
	return table.Subject{}, fmt.Errorf("no table is called %q; there are %s", name, strings.Join(names, ", "))
}

func tableNames() []string {
	var names []string
	for _, s := range table.Subjects() {
		names = append(names, s.Name)
	}
	return names
}

// tableList names the tables, one a line, with what their rows are.
func tableList() string {
	var list strings.Builder
	for _, s := range table.Subjects() {
		fmt.Fprintf(&list, "  %-10s %s\n", s.Name, s.Doc)
	}
	return list.String()
}

// tableColumns explains the columns of a table.
func (v *voice) tableColumns(s table.Subject) {
	v.sayf("%s", v.bold(s.Name+": "+s.Doc))
	var rows [][]string
	for _, c := range s.Columns {
		rows = append(rows, []string{"  " + c.Name, c.Doc})
	}
	v.table(nil, rows)
}

// tableFile writes a table to a file of its own.
func (v *voice) tableFile(t table.Table, file string, data []byte) error {
	switch err := writeNew(file, data); {
	case errors.Is(err, fs.ErrExist):
		return fmt.Errorf("%s is there already and is left as it is; name another file", file)
	case err != nil:
		return fmt.Errorf("writing the table: %w", err)
	}
	v.sayf("%s of %s written to %s.", number(len(t.Rows), "row"), t.Name, file)
	return nil
}
