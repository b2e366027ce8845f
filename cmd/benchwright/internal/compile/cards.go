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

// errorsAround counts the errors of shop.yaml and of the procedure's unit.yaml.
func (lib *library) errorsAround(f *procedureFile) int {
	n := lib.shopErrors
	if f.nearest != nil {
		n += f.nearest.errors
	}
	return n
}

// resolve makes and checks the cards of a procedure, one for each variant, with
// the variant's id and what was found in it; what holds for all goes to found. Ok
// is false if its unit or shop exists but was unreadable: the content of the card
// cannot be judged.
func (lib *library) resolve(f *procedureFile, found *diag.List) (cards []*card.Card, ids []string, perVariant []*diag.List, ok bool) {
	p, u := f.procedure, f.unit()
	if f.unreadable || u == nil && f.nearest != nil || lib.shop == nil && !lib.workspace.Standalone {
		return nil, nil, nil, false
	}
	if u == nil || f.inline == nil && p.Unit.Name != u.ID && u.ID != "" {
		lib.noUnit(p, u, found)
	}
	for _, v := range variants(p, u) {
		list := &diag.List{}
		c := card.Make(p, u, lib.shop, v, lib.cards, list)
		check.Card(c, list)
		cards, ids, perVariant = append(cards, c), append(ids, c.VariantID()), append(perVariant, list)
	}
	return cards, ids, perVariant, true
}

// procedure makes the cards of a procedure, one for each variant, and the
// decks, one for each group of equal cards.
func (lib *library) procedure(f *procedureFile, res *Result, o Options, msgs *diag.List) {
	p := f.procedure
	// An error in a file that was read stops the card too, because its numbers
	// cannot be trusted.
	res.Errors = f.errors + lib.errorsAround(f)
	found := &diag.List{}
	found.Join(f.warned)
	cards, ids, perVariant, ok := lib.resolve(f, found)
	if !ok {
		msgs.Join(found)
		return
	}
	for _, c := range cards {
		res.Steps = max(res.Steps, len(c.Steps()))
	}
	res.toolIDs = toolsTaken(cards)
	check.Procedure(p, cards, lib.cards, f.errors == 0, found)
	made := lib.decks(f, cards, o, perVariant)
	if f.errors == 0 && found.Errors() == 0 {
		lib.changedSinceRelease(p, made, perVariant, found)
	}
	found.Merge(ids, perVariant)
	accept(p, found)
	unsound := lib.filesWithErrors(f)
	found.Keep(func(d diag.Diagnostic) bool { return d.Basis&unsound == 0 })
	msgs.Join(found)
	res.Warnings = found.Len() - found.Errors()
	if res.Errors += found.Errors(); res.Errors > 0 {
		return
	}
	panicIfDropped(append(perVariant, found, f.refused)...)
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
		m.Sheets, m.deck = nil, nil // results are kept until the run ends
	}
}

// panicIfDropped panics if an error was reported while a card was made. It is
// called for a card without errors: one must have been dropped, with a block
// or number.
func panicIfDropped(lists ...*diag.List) {
	for _, l := range lists {
		if n := l.Reported(); n > 0 {
			panic(fmt.Sprintf("%d errors were reported, and none is left", n))
		}
	}
}

// filesWithErrors returns the files of a card that have errors: a misspelled
// key loses a whole list of tools, an unreadable block its callout.
func (lib *library) filesWithErrors(f *procedureFile) diag.Basis {
	var out diag.Basis
	if f.errors > 0 {
		out = diag.OnProcedure
	}
	if f.nearest != nil && f.nearest.errors > 0 || f.inline != nil && f.errors > 0 {
		out |= diag.OnUnit
	}
	if lib.shopErrors > 0 || lib.workspace.Standalone && lib.shop != nil && f.errors > 0 {
		out |= diag.OnShop
	}
	return out
}

// variants returns the variants of a procedure; a single nil if the unit has
// none.
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
		return []*unit.Variant{nil} // only unknown names, reported when the card is made
	}
	return out
}

// noUnit reports a procedure whose unit is missing.
func (lib *library) noUnit(p *procedure.Procedure, u *unit.Unit, msgs *diag.List) {
	if p.Unit.Name == "" {
		return // the schema reports it
	}
	var ids []string
	for _, other := range lib.units {
		if other.unit != nil {
			ids = append(ids, other.unit.ID)
		}
	}
	slices.Sort(ids)
	if u != nil && !syntax.WellFormed(u.ID) {
		return // reported, and may be the cause
	}
	if u != nil {
		d := msgs.Report("unit-mismatch", p.Unit.At, "write `unit: "+u.ID+"`, or move the procedure to the folder of its unit",
			"the unit of this folder is `%s`, not `%s`", u.ID, p.Unit.Name)
		d.Related = append(d.Related, diag.Related{At: u.Root.Get("unit").Place(), Message: "the unit is declared here"})
		return
	}
	if lib.workspace.Standalone {
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
