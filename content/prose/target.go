package prose

import (
	"net/url"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A LinkForm says what kind of target a link has.
type LinkForm int

// The forms of a link.
const (
	Tie      LinkForm = iota // [[id]]
	Relative                 // a path from the note's own folder
	Outside                  // http, https or mailto
	Refused                  // any other scheme, an absolute path, another host, or no sensible address
)

// place finds where in src a part lies that was sliced out of it: the capacity of
// a slice reaches to the end of what it was cut from. It must not be asked of a
// src whose capacity is larger than its length.
func place(src, part []byte) (int, bool) {
	at := cap(src) - cap(part)
	if len(part) == 0 || at < 0 || at+len(part) > len(src) || &src[at] != &part[0] {
		return 0, false
	}
	return at, true
}

// longestTarget bounds a target, since one definition may serve thousands of
// links. Common practice among browsers and servers is about 2,000 characters.
const longestTarget = 2000

// target reads a destination of CommonMark: it takes out the escapes, and from a
// relative path the anchor and the percent signs.
func target(destination []byte) Link {
	if len(destination) > longestTarget {
		return Link{Form: Refused}
	}
	address := unescape(destination)
	l := Link{To: address, Form: formOf(address)}
	if l.Form != Relative {
		return l
	}
	path, anchor, _ := strings.Cut(address, "#")
	l.To, l.Anchor = percentDecoded(path), slug(percentDecoded(anchor))
	// What was hidden behind percent signs may be no relative path at all.
	if form := formOf(l.To); form != Relative {
		return Link{To: address, Form: Refused}
	}
	return l
}

func percentDecoded(s string) string {
	if decoded, err := url.PathUnescape(s); err == nil && utf8.ValidString(decoded) {
		return decoded
	}
	return s
}

var scheme = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9+.-]*:`)

// formOf sorts an address without escapes. Browsers drop control characters and
// leading blanks from an address and take a backslash for a slash (WHATWG URL
// Standard, "basic URL parser"), so none of these may stand where they could hide
// a scheme or a host.
func formOf(address string) LinkForm {
	if strings.ContainsFunc(address, unicode.IsControl) {
		return Refused
	}
	address = strings.TrimSpace(address)
	if found := scheme.FindString(address); found != "" {
		switch strings.ToLower(found) {
		case "http:", "https:", "mailto:":
			return Outside
		}
		return Refused
	}
	if strings.HasPrefix(address, "/") || strings.HasPrefix(address, `\`) {
		return Refused
	}
	return Relative
}
