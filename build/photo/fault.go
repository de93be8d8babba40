package photo

import (
	"fmt"
	"path"
	"strings"
)

// A Fault says what is wrong with one picture.
type Fault struct {
	Reason  string   // in the maker's words, what is wrong and what would help
	Instead []string `json:",omitempty"` // names the file could have, best first
}

func faultf(format string, args ...any) *Fault {
	return &Fault{Reason: fmt.Sprintf(format, args...)}
}

// cutShort is the fault of a file that ends before its picture does.
func cutShort(k *kind) *Fault {
	return faultf("this %s ends too early; copy it from the camera or phone again", k.name)
}

// damaged is the fault of a file that contradicts its format.
func damaged(k *kind, what string) *Fault {
	return faultf("this %s is damaged (%s); copy it again, or open it and save it anew", k.name, what)
}

// unreadable is the fault of a sound file in a form that no decoder here reads.
func unreadable(k *kind, what string) *Fault {
	return faultf("this %s is of a sort that cannot be read here (%s); open it and save it as %s", k.name, what, k.saveAs)
}

// withEnding returns name with its last ending exchanged.
func withEnding(name, ending string) string {
	return strings.TrimSuffix(name, path.Ext(name)) + ending
}
