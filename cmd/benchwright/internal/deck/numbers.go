package deck

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/render"
)

const nbsp = "\u00a0"

// value prints a quantity as typed, with its unit.
func (b *builder) value(v quantity.Value) string { return v.Unit.After(v.Text) }

// marks prints limits on marks of a scale without the unit: "0.15 to 0.25",
// "max 0.05", "at least 12".
func (b *builder) marks(m quantity.Marks) string { return span(m.Ends(b.card.Shop.Mark())) }

// band prints a band of the manual as a range without the unit: a large figure
// never has a ±.
func (b *builder) band(q quantity.Band) string { return span(q.Ends(b.card.Shop.Mark())) }

// span joins the ends of a band; "" is an open end.
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

// engravedUnit returns the unit as engraved on an instrument.
func engravedUnit(marked string, s quantity.Scale) string {
	if marked != "" {
		return marked
	}
	return s.Unit.Symbol
}

// toolRow returns the row for a tool.
func toolRow(verb string, i *shop.Item, note string) render.ToolRow {
	return render.ToolRow{Verb: verb, Name: bindName(i.Name), Number: i.Number, Place: bindName(i.Location), Note: note}
}

// percent prints a ratio in percent, exactly: 1/20 → "5".
func (b *builder) percent(r *big.Rat) string {
	return quantity.Decimal(new(big.Rat).Mul(r, big.NewRat(100, 1)), b.card.Shop.Mark())
}
