package compile

import (
	"fmt"
	"slices"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/check"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
)

// procedure makes the cards of one procedure, one a variant, and the decks of
// those that say the same.
func (lib *library) procedure(f *procedureFile, res *Result, o Options, msgs *diag.List) {
	p, u := f.procedure, f.unit()
	// What was wrong while the files were read stops the card too: its numbers
	// cannot be trusted.
	res.Errors = f.errors + lib.shopErrors
	if f.nearest != nil {
		res.Errors += f.nearest.errors
	}
	found := &diag.List{}
	found.Join(f.warned)
	// Without its unit or its shop, where there is one and it could not be read,
	// what the card says cannot be judged.
	if f.unread || u == nil && f.nearest != nil || lib.shop == nil && !lib.workspace.Alone {
		msgs.Join(found)
		return
	}
	if u == nil || f.inline == nil && p.Unit.Name != u.ID && u.ID != "" {
		lib.noUnit(p, u, found)
	}
	var cards []*card.Card
	var ids []string
	var perVariant []*diag.List
	for _, v := range variants(p, u) {
		list := &diag.List{}
		c := card.Make(p, u, lib.shop, v, lib.cards, list)
		check.Card(c, list)
		cards = append(cards, c)
		ids = append(ids, c.VariantID())
		perVariant = append(perVariant, list)
		res.Steps = max(res.Steps, len(c.Steps()))
	}
	res.takes = takes(cards)
	check.Procedure(p, cards, lib.cards, f.errors == 0, found)
	made := lib.decks(f, cards, o, perVariant)
	found.Merge(ids, perVariant)
	accept(p, found)
	unsound := lib.unsound(f)
	found.Keep(func(d diag.Diagnostic) bool { return d.Basis&unsound == 0 })
	msgs.Join(found)
	res.Warnings = found.Len() - found.Errors()
	if res.Errors += found.Errors(); res.Errors > 0 {
		return
	}
	nothingDropped(append(perVariant, found, f.refused)...)
	for _, c := range cards {
		if i := c.FirstIncomplete(); i != nil {
			panic(fmt.Sprintf("nothing was reported, and a %T lacks what it needs", i))
		}
	}
	res.Decks = made
	for _, m := range made {
		if o.Emit != nil && res.Fault == nil {
			res.Fault = o.Emit(m)
		}
		m.Sheets = nil // a result stays as long as the run does
	}
}

// nothingDropped panics where an error was reported while a card was made. It is
// called for a card of which no error is left: one was dropped, and took a block
// along or a number.
func nothingDropped(lists ...*diag.List) {
	for _, l := range lists {
		if n := l.Reported(); n > 0 {
			panic(fmt.Sprintf("%d errors were reported, and none is left", n))
		}
	}
}

// unsound returns which files of a card have an error: a misspelt key takes a
// whole list of tools away, a block that cannot be read takes its callout along.
func (lib *library) unsound(f *procedureFile) diag.Basis {
	var out diag.Basis
	if f.errors > 0 {
		out = diag.OnProcedure
	}
	if f.nearest != nil && f.nearest.errors > 0 || f.inline != nil && f.errors > 0 {
		out |= diag.OnUnit
	}
	if lib.shopErrors > 0 || lib.workspace.Alone && lib.shop != nil && f.errors > 0 {
		out |= diag.OnShop
	}
	return out
}

// variants returns the variants that a procedure serves; one nil where the
// unit has none.
func variants(p *procedure.Procedure, u *unit.Unit) []*unit.Variant {
	if u == nil || len(u.Variants) == 0 {
		return []*unit.Variant{nil}
	}
	var out []*unit.Variant
	for _, v := range u.Variants {
		if p.Variants == nil || slices.ContainsFunc(p.Variants, func(n procedure.Named) bool { return n.Name == v.ID }) {
			out = append(out, v)
		}
	}
	if out == nil {
		return []*unit.Variant{nil} // only unknown names: reported when the card is made
	}
	return out
}

// noUnit reports a procedure whose unit is not there.
func (lib *library) noUnit(p *procedure.Procedure, u *unit.Unit, msgs *diag.List) {
	if p.Unit.Name == "" {
		return // the schema has asked for it
	}
	var ids []string
	for _, other := range lib.units {
		if other.unit != nil {
			ids = append(ids, other.unit.ID)
		}
	}
	slices.Sort(ids)
	if u != nil && !syntax.WellFormed(u.ID) {
		return // which is reported, and may be what is wrong
	}
	if u != nil {
		d := msgs.Report("unit-mismatch", p.Unit.At, "write `unit: "+u.ID+"`, or move the procedure to the folder of its unit",
			"the unit of this folder is `%s`, not `%s`", u.ID, p.Unit.Name)
		d.Related = append(d.Related, diag.Related{At: u.Root.Get("unit").Place(), Message: "the unit is declared here"})
		return
	}
	if lib.workspace.Alone {
		msgs.Report("unit-missing-facts", p.Unit.At, "give the unit's facts in place of its name: `unit:` with `unit`, `title` and the rest below it",
			"this procedure stands alone, and `%s` is only the name of a unit", p.Unit.Name)
		return
	}
	fix := "put a unit.yaml with `unit: " + p.Unit.Name + "` in this folder or above it"
	if near := diag.Nearest(p.Unit.Name, ids); near != "" {
		fix += ", or move the procedure to the folder of `" + near + "`"
	}
	msgs.Report("unit-unknown-here", p.Unit.At, fix, "no unit.yaml stands in this folder or above it")
}
