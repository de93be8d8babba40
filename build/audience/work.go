package audience

import (
	"hussif/content/journal"
	"hussif/content/prose"
)

// mayWork reports whether the audience may see a worksheet. What is worked out for a
// garment is mostly as long or as wide as a part of its wearer, whatever it is called:
// it goes with her measures. Elsewhere a worksheet is hidden only where it takes a
// measure, or anything of a hidden page, from the record.
func (k *knife) mayWork(w prose.Work) bool {
	switch k.record.(type) {
	case *journal.Build, *journal.Note:
		if !k.allowedOn(k.record, journal.OfBody, k.wearers(k.record)) {
			return false
		}
	}
	for _, work := range k.record.Head().Works {
		if work.Typed != w.Typed {
			continue
		}
		for _, figure := range work.Figures {
			for _, item := range figure.Items {
				if item.Borrowed != nil && !k.mayBorrow(item.Borrowed) {
					return false
				}
			}
		}
	}
	return true
}

// mayBorrow reports whether the audience may see what a worksheet takes from the record.
func (k *knife) mayBorrow(b *journal.Borrowed) bool {
	from := k.record
	if !b.This && !b.Wearer {
		found, ok := k.full.Find(b.From.To, b.Kinds()...)
		if !ok {
			return false
		}
		from = found
	}
	if !k.seen[from] {
		return false
	}
	return b.What != journal.Measured || k.allowedOn(from, journal.OfBody, k.wearers(from))
}
