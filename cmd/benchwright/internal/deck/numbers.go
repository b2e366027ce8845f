package deck

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/render"
)

const nbsp = "\u00a0"

// value writes a quantity as it was typed, its unit beside it.
func (b *builder) value(v quantity.Value) string { return v.Unit.After(v.Text) }

// marks writes limits that lie on a scale's marks, without their unit:
// "0.15 to 0.25", "max 0.05", "at least 12".
func (b *builder) marks(m quantity.Marks) string { return span(m.Ends(b.card.Shop.Mark())) }

// band writes a manual's band as a range, without its unit: a large figure is
// never a ±.
func (b *builder) band(q quantity.Band) string { return span(q.Ends(b.card.Shop.Mark())) }

// span joins the ends of a band, "" for an open side.
func span(low, high string) string {
	switch {
	case low == "" && high == "":
		return ""
	case low == "":
		return wordAtMost + nbsp + high
	case high == "":
		return wordAtLeast + nbsp + low
	case low == high:
		return low
	}
	return low + " " + wordTo + nbsp + high
}

// engraved is the unit of a scale as it stands on the instrument.
func engraved(marked string, s quantity.Scale) string {
	if marked != "" {
		return marked
	}
	return s.Unit.Symbol
}

// toolRow is the line of what is taken in the hand.
func toolRow(verb string, i *shop.Item, note string) render.ToolRow {
	return render.ToolRow{Verb: verb, Name: bindName(i.Name), Number: i.Number, Place: i.Location, Note: note}
}

// percent writes an exact ratio as per cent: 1/20 → "5".
func (b *builder) percent(r *big.Rat) string {
	return quantity.Decimal(new(big.Rat).Mul(r, big.NewRat(100, 1)), b.card.Shop.Mark())
}
