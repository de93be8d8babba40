package draw

// A keyEntry explains a kind of bar.
type keyEntry struct {
	class   string
	reaches bool
	open    bool
	words   string
}

const keyHigh = 19.0

// keyOf explains the kinds of bar that occur; where all are plain, nothing.
func keyOf(v Scale) []keyEntry {
	var plain, about, unsure, open bool
	for _, g := range v.Groups {
		for _, t := range g.Things {
			if !t.Known {
				continue
			}
			plain = plain || !t.wider() && !t.Unsure
			about = about || t.wider()
			unsure = unsure || t.Unsure
			open = open || t.Stated.OpenFrom || t.Stated.OpenTo
		}
	}
	if !about && !unsure && !open {
		return nil
	}
	var key []keyEntry
	for _, k := range []struct {
		occurs bool
		keyEntry
	}{
		{plain, keyEntry{class: "date-bar", words: "as dated"}},
		{about, keyEntry{class: "date-bar about", reaches: true, words: "about then, and as far as that is counted"}},
		{unsure, keyEntry{class: "date-bar unsure", words: "dated with a question mark"}},
		{open, keyEntry{class: "date-bar", open: true, words: "no known beginning or end"}},
	} {
		if k.occurs {
			key = append(key, k.keyEntry)
		}
	}
	return key
}

func (p *pen) keyLine(k keyEntry, y float64) {
	left, right := scaleLeft+10, scaleLeft+26
	if k.reaches {
		p.line("reach", scaleLeft, y, left, y)
		p.line("reach", right, y, scaleLeft+36, y)
		p.line("reach", scaleLeft, y-4, scaleLeft, y+4)
		p.line("reach", scaleLeft+36, y-4, scaleLeft+36, y+4)
	}
	if k.open {
		right = scaleLeft + 36
	}
	p.bar(k.class, left, right, y, false, k.open)
	p.text("minor", "start", scaleLeft+46, y+4, k.words)
}
