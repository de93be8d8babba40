package edtf

import (
	"fmt"
	"strconv"
	"strings"
)

// bracketed says a date so that more words can follow it.
func (p *partial) bracketed() string { return p.words(" (", ")") }

// words says a date with its marks: a mark on every part is said of the whole,
// any other after the part's name. What is doubted stands between before and
// after.
func (p *partial) words(before, after string) string {
	shared := p.shared()
	words := p.plainWords()
	if shared&approximate != 0 {
		words = "about " + words
	}
	var doubts []string
	if shared&uncertain != 0 {
		doubts = append(doubts, "uncertain")
	}
	for _, m := range []marks{uncertain, approximate} {
		if names := p.partsMarked(m); shared&m == 0 && names != "" {
			doubts = append(doubts, names+" "+markWords[m])
		}
	}
	if doubts == nil {
		return words
	}
	return words + before + strings.Join(doubts, ", ") + after
}

var markWords = [...]string{uncertain: "uncertain", approximate: "approximate"}

// partsMarked names the parts that carry a mark: "year and month".
func (p *partial) partsMarked(m marks) string {
	var names []string
	for i, part := range p.parts {
		switch {
		case part.marks&m == 0:
		case i == monthPart && p.season() != nil:
			names = append(names, "season")
		default:
			names = append(names, [...]string{"year", "month", "day"}[i])
		}
	}
	return strings.Join(names, " and ")
}

// plainWords says a date without its marks.
func (p *partial) plainWords() string {
	year := p.yearWords()
	if s := p.season(); s != nil {
		return s.words + year
	}
	join := " "
	if strings.Contains(p.parts[yearPart].mask, "X") {
		join = ", "
	}
	switch len(p.parts) {
	case 1:
		return year
	case 2:
		if p.parts[monthPart].mask == "XX" {
			return "some month of " + year
		}
		return p.monthWords() + join + year
	}
	day, month := p.parts[dayPart].mask, p.parts[monthPart].mask
	switch {
	case day == "XX" && month == "XX":
		return "some day of " + year
	case day == "XX":
		return "some day of " + p.monthWords() + join + year
	case month == "XX":
		return "day " + maskWords(day) + " of some month, " + year
	}
	return maskWords(day) + " " + p.monthWords() + join + year
}

// yearWords says a decade as 1780s, but the first of a century as 1700 to 1709:
// 1700s might be the century.
func (p *partial) yearWords() string {
	mask := p.parts[yearPart].mask
	low, high := yearName(p.low), yearName(p.high)
	switch x := strings.IndexByte(mask, 'X'); {
	case p.rough:
		return fmt.Sprintf("%s to %s, put at %s", low, high, yearName(p.estimate))
	case x < 0:
		return low
	case x == 3 && !p.negative && mask[2] != '0':
		return low + "s"
	case strings.Trim(mask[x:], "X") == "":
		return low + " to " + high
	}
	if p.negative {
		mask = "-" + mask
	}
	return "a year like " + mask
}

// yearName says a year before year 1 as the year BC that it is.
func yearName(year int) string {
	if year <= 0 {
		return strconv.Itoa(1-year) + " BC"
	}
	return strconv.Itoa(year)
}

func (p *partial) monthWords() string {
	mask := p.parts[monthPart].mask
	if n, plain := number(mask); plain {
		return monthNames[n-1]
	}
	switch mask {
	case "0X":
		return "January to September"
	case "1X":
		return "October to December"
	case "X1":
		return "January or November"
	case "X2":
		return "February or December"
	case "X0":
		return "October"
	}
	return monthNames[mask[1]-'1']
}

func maskWords(mask string) string {
	if n, plain := number(mask); plain {
		return strconv.Itoa(n)
	}
	return mask
}
