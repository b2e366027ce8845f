package deck

import (
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/render"
)

const nbsp = "\u00a0"

// mark returns the shop's decimal mark.
func (b *builder) mark() quantity.Mark {
	if b.card.Shop != nil && b.card.Shop.Decimal != 0 {
		return b.card.Shop.Decimal
	}
	return quantity.Point
}

// value writes a quantity as it was typed, its unit beside it.
func (b *builder) value(v quantity.Value) string { return v.Text + nbsp + v.Unit.Symbol }

// marks writes limits that lie on a scale's marks, without their unit:
// "0.15 to 0.25", "max 0.05", "at least 12".
func (b *builder) marks(m quantity.Marks) string {
	text := func(v *big.Rat) string { return m.Scale.Number(v, b.mark()) }
	switch {
	case m.Low == nil && m.High == nil:
		return ""
	case m.Low == nil:
		return "max" + nbsp + text(m.High)
	case m.High == nil:
		return "at least " + text(m.Low)
	case m.Low.Cmp(m.High) == 0:
		return text(m.Low)
	}
	return text(m.Low) + " to" + nbsp + text(m.High)
}

// engraved is the unit of a scale as it stands on the instrument.
func engraved(marked string, s quantity.Scale) string {
	if marked != "" {
		return marked
	}
	return s.Unit.Symbol
}

// band writes a manual's band as a range, without its unit: a large figure is
// never a ±.
func (b *builder) band(q quantity.Band) string {
	return strings.TrimSpace(strings.TrimSuffix(q.Range(b.mark()), q.Unit.Symbol))
}

// sides returns the ends of a band as its range writes them, "" for an open one.
func (b *builder) sides(q quantity.Band) (low, high string) {
	one := func(v *big.Rat) string {
		if v == nil {
			return ""
		}
		return b.band(quantity.Band{Form: quantity.Bare, Nominal: &quantity.Number{Value: v}, Numbers: q.Numbers, Unit: q.Unit})
	}
	return one(q.Low), one(q.High)
}

func toolRow(verb string, i *shop.Item, note string) render.ToolRow {
	return render.ToolRow{Verb: verb, Name: i.Name, Number: i.Number, Place: i.Place, Note: note}
}

// lower makes a name fit inside a line: "Pinion nut" → "pinion nut"; a name
// that begins with two capitals or a figure stays.
func lower(name string) string {
	r, n := utf8.DecodeRuneInString(name)
	next, _ := utf8.DecodeRuneInString(name[n:])
	if !unicode.IsUpper(r) || unicode.IsUpper(next) || unicode.IsDigit(next) || next == '-' {
		return name
	}
	return strings.ToLower(name[:n]) + name[n:]
}

// percent writes an exact ratio as per cent: 1/20 → "5".
func (b *builder) percent(r *big.Rat) string {
	p := new(big.Rat).Mul(r, big.NewRat(100, 1))
	return quantity.Format(p, new(big.Rat).SetFrac(big.NewInt(1), p.Denom()), b.mark())
}
