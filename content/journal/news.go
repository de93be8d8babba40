package journal

import "maps"

// News tell what may be otherwise in a journal than it was before. The zero News are
// that nothing is.
type News struct {
	all      bool        // anything
	records  map[ID]bool // that were read again
	families map[ID]bool // of which facts have changed
	linked   map[ID]bool // that records link to whose facts have changed, or did
	kinds    map[Kind]bool
}

// Add adds later news to earlier ones.
func (n *News) Add(later News) {
	n.all = n.all || later.all
	add(&n.records, later.records)
	add(&n.families, later.families)
	add(&n.linked, later.linked)
	add(&n.kinds, later.kinds)
}

func add[K comparable](to *map[K]bool, more map[K]bool) {
	if *to == nil {
		*to = make(map[K]bool)
	}
	maps.Copy(*to, more)
}

// May reports whether a question about a journal may have another answer than before.
// It cannot tell of aspects that are not the journal's own.
func (n *News) May(q Question) bool {
	if n.all {
		return true
	}
	switch q.About {
	case Facts:
		return n.families[ID(q.Of)]
	case Named, Text:
		return n.records[ID(q.Of)]
	case Linking:
		return n.linked[ID(q.Of)]
	case Shelved:
		switch kind := Kind(q.Of); kind {
		case KindBuild, KindNote:
			return n.kinds[KindBuild] || n.kinds[KindNote]
		default:
			return n.kinds[kind]
		}
	case Called, Present, Within:
		return false // or all may be otherwise
	}
	return true
}

// read notes that a record was read again.
func (n *News) read(r Record) { set(&n.records, r.Head().ID) }

// facts notes that a record's facts have changed.
func (n *News) facts(r Record) {
	n.read(r)
	set(&n.families, Family(r))
	set(&n.kinds, r.Head().Kind)
}

func (n *News) link(to ID) { set(&n.linked, to) }

func set[K comparable](in *map[K]bool, key K) {
	if *in == nil {
		*in = make(map[K]bool)
	}
	(*in)[key] = true
}
