package almanac

import (
	"testing"

	"hussif/content/journal"
)

// RFC 9562, appendix A.4, with the name space for domain names of its section 6.6.
func TestNamedAsPublished(t *testing.T) {
	dns := uuid{0x6b, 0xa7, 0xb8, 0x10, 0x9d, 0xad, 0x11, 0xd1, 0x80, 0xb4, 0x00, 0xc0, 0x4f, 0xd4, 0x30, 0xc8}
	const want = "2ed6657d-e927-568b-95e1-2665a8aea6a2"
	if got := named(dns, "www.example.com").String(); got != want {
		t.Errorf("named %s, want %s", got, want)
	}
}

func TestNamesTellJournalsApart(t *testing.T) {
	ours := &journal.Journal{Settings: &journal.Settings{Title: "Ours"}}
	theirs := &journal.Journal{Settings: &journal.Settings{Title: "Theirs"}}
	const id = "occasions/market-day"
	seen := map[uuid]string{}
	for what, u := range map[string]uuid{
		"ours":        nameOf(ours, "occasion", id),
		"theirs":      nameOf(theirs, "occasion", id),
		"another":     nameOf(ours, "occasion", id+"-2"),
		"other sort":  nameOf(ours, "ready", id),
		"ours, still": nameOf(theirs, "occasion", "Ours\n"+id),
	} {
		if other, ok := seen[u]; ok {
			t.Errorf("%s and %s have one name", what, other)
		}
		seen[u] = what
	}
	if nameOf(ours, "occasion", id) != nameOf(ours, "occasion", id) {
		t.Error("one record has two names")
	}
}
