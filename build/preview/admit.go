package preview

import (
	"net"
	"net/http"
	"slices"
	"strconv"
	"strings"
)

// policy is the Content Security Policy of what is served: that of the pages
// themselves, with the preview's script and its stream of events.
const policy = "default-src 'none'; img-src 'self' data:; style-src 'self'; font-src 'self'; " +
	"script-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"

// protect sets what every answer has, so that no page of another site can show,
// read or embed anything of the journal.
func protect(h http.Header) {
	h.Set("Content-Security-Policy", policy)
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Referrer-Policy", "no-referrer")
}

// hosts are the names by which a browser on this machine asks for a port.
func hosts(port int) []string {
	var names []string
	for _, host := range []string{"localhost", "127.0.0.1", "::1"} {
		names = append(names, net.JoinHostPort(host, strconv.Itoa(port)))
	}
	if port == 80 { // which browsers leave out
		names = append(names, "localhost", "127.0.0.1", "[::1]")
	}
	return names
}

// admit answers a request that must not be served, and returns false. It is
//   - one for another host: a site whose name was made to stand for this machine
//     (DNS rebinding) could read the journal otherwise;
//   - one by another method than GET and HEAD: there is nothing to change here;
//   - one that a page of another site makes (Fetch Metadata Request Headers, W3C,
//     and the Origin header of RFC 6454), but for following a link.
func admit(rw http.ResponseWriter, r *http.Request, own []string) bool {
	refuse := func(status int, text string) bool {
		rw.Header().Set("Cache-Control", "no-store")
		http.Error(rw, text, status)
		return false
	}
	host := strings.ToLower(r.Host)
	switch {
	case !slices.Contains(own, host):
		return refuse(http.StatusMisdirectedRequest, "this preview answers only as "+own[0])
	case r.Method != http.MethodGet && r.Method != http.MethodHead:
		rw.Header().Set("Allow", "GET, HEAD")
		return refuse(http.StatusMethodNotAllowed, "there is nothing to change here")
	case foreign(r, host):
		return refuse(http.StatusForbidden, "this preview answers no page of another site")
	}
	return true
}

// foreign reports whether a page of another site asks. Other ports of this machine
// are other sites: anybody's program may answer there.
func foreign(r *http.Request, host string) bool {
	if origin := r.Header.Get("Origin"); origin != "" && origin != "http://"+host {
		return true
	}
	switch r.Header.Get("Sec-Fetch-Site") {
	case "", "same-origin", "none":
		return false
	}
	link := r.Header.Get("Sec-Fetch-Mode") == "navigate" && r.Header.Get("Sec-Fetch-Dest") == "document"
	return !link || strings.HasPrefix(r.URL.Path, reserved)
}
