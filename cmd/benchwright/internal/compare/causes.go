package compare

import (
	"maps"
	"slices"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
)

// causes names the files that a procedure's cards are made from and that differ:
// its own first, then the others by name. One that is there on one side alone is
// named where the procedure itself did not change.
func (p both) causes() []string {
	var out []string
	own := p.a.File != p.b.File || p.a.Rests[p.a.File] != p.b.Rests[p.b.File]
	if own {
		out = append(out, p.b.File)
	}
	others := map[string]bool{}
	for _, side := range []map[string]string{p.a.Rests, p.b.Rests} {
		for name := range side {
			was, is := p.a.Rests[name], p.b.Rests[name]
			if name != p.a.File && name != p.b.File && was != is && (!own || was != "" && is != "") {
				others[name] = true
			}
		}
	}
	return append(out, slices.Sorted(maps.Keys(others))...)
}

// attribute says of each change which of the files that differ it comes from: the
// old card is made again with one of them new, and what changes in it then comes
// from that file. A change that no file makes alone comes from all of them.
func attribute(all []Change, files []string, a, b *Made) {
	for i := range all {
		all[i].Causes = files
	}
	if len(files) < 2 || len(all) == 0 {
		return
	}
	found := make([][]string, len(all))
	for _, file := range files {
		for _, alone := range changes(a, mixed(a, b, file)) {
			for i := range all {
				if like(all[i], alone) && !slices.Contains(found[i], file) {
					found[i] = append(found[i], file)
				}
			}
		}
	}
	for i := range all {
		if len(found[i]) > 0 {
			all[i].Causes = found[i]
		}
	}
}

// telling returns those of a card's files that a change comes from; all without a
// change, for one may hide in any.
func telling(files []string, all []Change) []string {
	if len(all) == 0 {
		return files
	}
	return slices.DeleteFunc(slices.Clone(files), func(file string) bool {
		return !slices.ContainsFunc(all, func(x Change) bool { return slices.Contains(x.Causes, file) })
	})
}

// like reports whether a change is one that was found with a single file new.
// The steps may have other numbers then.
func like(x, alone Change) bool {
	return x.What == alone.What && x.Place == alone.Place && x.key.old == alone.key.old && x.key.before == alone.key.before && x.key.after == alone.key.after &&
		slices.ContainsFunc(x.Reaches, func(r Reach) bool {
			return slices.ContainsFunc(alone.Reaches, func(s Reach) bool { return r.Variant == s.Variant })
		})
}

// mixed makes the old cards with one file of the new side.
func mixed(a, b *Made, file string) (out *Made) {
	out = &Made{Library: a.Library}
	defer func() {
		if recover() != nil {
			out = &Made{} // what cannot be made says nothing
		}
	}()
	for _, x := range a.Cards {
		y := b.variant(x.VariantID())
		if y == nil {
			continue
		}
		p, u, s, v, lib := x.Procedure, x.Unit, x.Shop, x.Variant, a.Library
		switch {
		case file == y.Procedure.File.Name:
			p = y.Procedure
		case y.Unit != nil && y.Unit.File != nil && file == y.Unit.File.Name:
			u, v = y.Unit, y.Variant
		case y.Shop != nil && y.Shop.File != nil && file == y.Shop.File.Name:
			s = y.Shop
		default:
			lib = b.Library // a picture, or another procedure
		}
		out.Cards = append(out.Cards, card.Make(p, u, s, v, lib, &diag.List{}))
	}
	return out
}
