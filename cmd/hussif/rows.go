package main

import (
	"strings"

	"hussif/content/fold"
)

// between stands between two columns of a table.
const between = "  "

// tallest is into how many lines a cell may be broken and still be read across.
const tallest = 4

// columns prints rows of cells under each other, the first of which is their head.
// Where they are too wide for the terminal the cells are broken into lines, and
// where that is not enough each row becomes a list of its own. Colour is kept out
// of the cells, whose widths are measured.
func (v *voice) columns(rows [][]string) { v.table(rows[0], rows[1:]) }

// table is [voice.columns] for rows that may have no head.
func (v *voice) table(head []string, rows [][]string) {
	all := rows
	if head != nil {
		all = append([][]string{head}, rows...)
	}
	widths := natural(all)
	if v.width > 0 && !narrow(all, widths, v.width) {
		v.lists(head, rows)
		return
	}
	for i, row := range all {
		for _, line := range inColumns(row, widths) {
			if i == 0 && head != nil {
				line = v.bold(line)
			}
			v.raw(line)
		}
	}
}

// natural returns how wide the columns of some rows are.
func natural(rows [][]string) []int {
	var widths []int
	for _, row := range rows {
		for i, cell := range row {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], fold.Width(cell))
		}
	}
	return widths
}

// narrow takes from the widest columns until all fit into a width. It reports
// whether they do and the rows can still be read across.
func narrow(rows [][]string, widths []int, width int) bool {
	least := make([]int, len(widths))
	total := len(between) * (len(widths) - 1)
	for i, w := range widths {
		total += w
		for _, row := range rows {
			if i < len(row) {
				least[i] = max(least[i], len(indentOf(row[i]))+fold.Longest(row[i]))
			}
		}
	}
	for ; total > width; total-- {
		at := -1
		for i, w := range widths {
			if w > least[i] && (at < 0 || w > widths[at]) {
				at = i
			}
		}
		if at < 0 {
			return false
		}
		widths[at]--
	}
	for _, row := range rows {
		if len(inColumns(row, widths)) > tallest {
			return false
		}
	}
	return true
}

// indentOf returns the blanks that a cell begins with.
func indentOf(cell string) string { return cell[:len(cell)-len(strings.TrimLeft(cell, " "))] }

// inColumns returns the lines of a row.
func inColumns(row []string, widths []int) []string {
	var out []string
	for i, cell := range row {
		for n, part := range fold.Lines(cell, widths[i], indentOf(cell)) {
			if n == len(out) {
				out = append(out, "")
			}
			out[n] += strings.Repeat(" ", startOf(i, widths)-fold.Width(out[n])) + part
		}
	}
	for i := range out {
		out[i] = strings.TrimRight(out[i], " ")
	}
	return out
}

// startOf returns where a column begins.
func startOf(column int, widths []int) int {
	at := 0
	for _, w := range widths[:column] {
		at += w + len(between)
	}
	return at
}

// lists prints each row as a list under its first cell, with the words of the head
// beside the others. What is not known is left out.
func (v *voice) lists(head []string, rows [][]string) {
	label := 0
	for _, h := range head {
		label = max(label, fold.Width(h))
	}
	for _, row := range rows {
		for _, line := range fold.Lines(row[0], v.width, between) {
			v.raw(line)
		}
		for i, cell := range row[1:] {
			if cell == "" || cell == unknownCell {
				continue
			}
			start := between + between
			if head != nil {
				start = between + head[i+1] + strings.Repeat(" ", label-fold.Width(head[i+1])) + between
			}
			for _, line := range fold.Lines(start+cell, v.width, strings.Repeat(" ", len(start))) {
				v.raw(line)
			}
		}
	}
}

// unknownCell stands in a table for what is not known.
const unknownCell = "-"
