package stock

import (
	"slices"
	"strings"

	"hussif/content/edtf"
	"hussif/content/near"
)

// A Lot is one purchase or dye bath of a material, told apart by its name.
type Lot struct {
	Name      string   // as first written
	Suppliers []string // as written, in order
	Since     edtf.Day // of its first row; 0 where that has no date
	OnHand    []Held

	key string
}

// onlyLot returns the lot that all of a material was bought in, or "".
func onlyLot(ledger []Row) string {
	only := ""
	for i := range ledger {
		if ledger[i].Way != Bought {
			continue
		}
		lot := near.Folded(ledger[i].Lot)
		if lot == "" || only != "" && lot != only {
			return ""
		}
		only = lot
	}
	return only
}

// lotOf returns the folded name of the lot that a written one means.
func (b *bookkeeper) lotOf(written string) string {
	if lot := near.Folded(written); lot != "" {
		return lot
	}
	return b.lot
}

func (b *bookkeeper) lots() []Lot {
	var out []Lot
	for i := range b.rows {
		r := &b.rows[i]
		key := near.Folded(r.Lot)
		if key == "" {
			continue
		}
		at := slices.IndexFunc(out, func(l Lot) bool { return l.key == key })
		if at < 0 {
			at = len(out)
			out = append(out, Lot{Name: strings.Join(strings.Fields(r.Lot), " "), Since: r.Day, key: key})
		}
		if r.Supplier != "" && !slices.Contains(out[at].Suppliers, r.Supplier) {
			out[at].Suppliers = append(out[at].Suppliers, r.Supplier)
		}
	}
	for i := range out {
		for _, k := range b.kinds() {
			if h := b.held(k, scope{lot: out[i].key}); h.Known || !none(h.Used) {
				out[i].OnHand = append(out[i].OnHand, h)
			}
		}
	}
	return out
}
