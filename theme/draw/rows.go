package draw

// A scalePlan is where everything stands on a scale of years, from above.
type scalePlan struct {
	eraName []string
	eraFoot float64 // of the last line of the era's name
	axis    float64
	rows    []scaleRow
	foot    float64 // of the rows
	key     []keyEntry
	high    float64
}

// A scaleRow is a heading or a thing.
type scaleRow struct {
	heading    bool
	words      []string
	top, first float64 // first is the first line's height below the top
	thing      Thing
	beside     bool    // the date stands behind the name's last line
	dateY      float64 // where it stands below the name; 0 where it does not
	barY       float64
}

func planScale(v Scale, dated bool) scalePlan {
	plan := scalePlan{axis: 18}
	if dated && v.EraName != "" {
		plan.eraName = wrapped(v.EraName, 12, page-12)
		plan.eraFoot = float64(len(plan.eraName))*lineHigh - 2
		plan.axis = plan.eraFoot + 18
	}
	y := plan.axis + 8
	if dated {
		y += 20
	}
	for _, g := range v.Groups {
		y = plan.heading(g.Label, y)
		for _, t := range g.Things {
			y = plan.thing(t, y, dated)
		}
		y += 4
	}
	plan.foot = y
	plan.high = y + 6
	if dated {
		plan.key = keyOf(v)
	}
	if n := len(plan.key); n > 0 {
		plan.high = plan.foot + 14 + float64(n)*keyHigh
	}
	return plan
}

func (plan *scalePlan) heading(label string, y float64) float64 {
	words := wrapped(label, 12, scaleRight-scaleLeft)
	plan.rows = append(plan.rows, scaleRow{heading: true, words: words, top: y, first: 20})
	return y + 12 + float64(len(words))*lineHigh
}

// thing puts the date behind the name where there is room, else below it.
func (plan *scalePlan) thing(t Thing, y float64, dated bool) float64 {
	row := scaleRow{words: wrapped(t.Label, 12, scaleRight-scaleLeft), top: y, first: 14, thing: t}
	lines := len(row.words)
	if t.Date != "" {
		const gap = 8
		row.beside = lines > 0 && wide(row.words[lines-1], 12)+gap+wide(t.Date, 11) <= scaleRight-scaleLeft
		if !row.beside {
			row.dateY = y + row.first + float64(lines)*lineHigh
			lines++
		}
	}
	y += row.first + float64(max(lines, 1)-1)*lineHigh
	if dated && t.Known {
		row.barY = y + 11
		y = row.barY + barHigh/2
	}
	plan.rows = append(plan.rows, row)
	return y + 8
}
