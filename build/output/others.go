package output

import "fmt"

// Others is the error for a folder that holds a site for somebody else.
type Others struct {
	Dir string
	For string // as in [Site]
}

func (o *Others) Error() string {
	whose := "the maker's own site"
	if o.For != "" {
		whose = "a site for the " + o.For
	}
	return fmt.Sprintf("%s holds %s, and a site for others is never put in its place or it in theirs; choose another folder", o.Dir, whose)
}
