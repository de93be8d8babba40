package export

import (
	"net/url"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"
)

// checkHTML looks for what no page may have in it, with the parser of the HTML Living
// Standard: other elements and attributes, links that lead to no web, and elements that
// are not closed.
func checkHTML(t *testing.T, text string) {
	t.Helper()
	// Whatever follows must stand outside.
	nodes, err := html.ParseFragment(strings.NewReader("<div>"+text+"</div><i>after</i>"), &html.Node{Type: html.ElementNode, Data: "body", DataAtom: atom.Body})
	if err != nil {
		t.Fatal(err)
	}
	if len(nodes) != 2 || nodes[1].Data != "i" {
		t.Errorf("what follows is not left alone: %s", text)
		return
	}
	for n := range nodes[0].Descendants() {
		switch n.Type {
		case html.TextNode:
		case html.ElementNode:
			if n.Namespace != "" || !slices.Contains(elements, n.Data) && n.Data != "tbody" {
				t.Errorf("there is an element %s %s: %s", n.Namespace, n.Data, text)
			}
			for _, a := range n.Attr {
				switch {
				case n.Data == "a" && a.Key == "href":
					if u, err := url.Parse(a.Val); err != nil || !slices.Contains([]string{"http", "https", "mailto"}, u.Scheme) {
						t.Errorf("there is a link to %s: %s", a.Val, text)
					}
				case n.Data == "a" && a.Key == "rel", n.Data == "th" && a.Key == "scope", n.Data == "ol" && a.Key == "start":
				default:
					t.Errorf("there is an attribute %s: %s", a.Key, text)
				}
			}
		default:
			t.Errorf("there is a node of kind %v: %s", n.Type, text)
		}
	}
}
