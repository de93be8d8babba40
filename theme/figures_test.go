package theme

import (
	"strings"
	"testing"
)

func TestFigures(t *testing.T) {
	for text, want := range map[string]string{
		"":                              "",
		"37 1/2 in":                     "37\u00a0[1/2] in",
		"1/4 in":                        "[1/4] in",
		"short by 1 5/16 in":            "short by 1\u00a0[5/16] in",
		"−1/4 in, +63/64 in":            "−[1/4] in, +[63/64] in",
		"1/2-3/4 in":                    "[1/2]-[3/4] in",
		"(1/2)":                         "([1/2])",
		"1780/1789":                     "1780/1789",
		"3/4/26":                        "3/4/26",
		"1/2/3/4":                       "1/2/3/4",
		"4/3":                           "4/3",
		"16/16":                         "16/16",
		"0/8":                           "0/8",
		"1/7":                           "1/7",
		"12/8":                          "12/8",
		"1.1/2":                         "1.1/2",
		"a1/2":                          "a1/2",
		"1/2in":                         "1/2in",
		"builds/1/2":                    "builds/1/2",
		"/":                             "/",
		"1/":                            "1/",
		"/2":                            "/2",
		`<b> 1/2 & "3/8"`:               "&lt;b&gt; [1/2] &amp; &#34;[3/8]&#34;",
		"nothing to see & <i>no</i> / ": "nothing to see &amp; &lt;i&gt;no&lt;/i&gt; / ",
	} {
		var p printer
		p.figures(text)
		got := strings.ReplaceAll(p.String(), `<span class="fraction">`, "[")
		got = strings.ReplaceAll(got, "</span>", "]")
		if got != want {
			t.Errorf("figures(%q) is %s, want %s", text, got, want)
		}
	}
}
