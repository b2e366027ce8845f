package compile

import (
	"bytes"
	"fmt"

	"benchwright/cmd/benchwright/internal/check"
	"benchwright/cmd/benchwright/internal/compare"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/workspace"
)

// Resolve reads a workspace and resolves its named procedures, variant by
// variant, to be compared: also those with errors, as far as they can be read.
// Nothing is laid out.
func Resolve(w *workspace.Workspace, msgs *diag.List) []compare.Procedure {
	lib := read(w, msgs)
	var out []compare.Procedure
	for _, f := range lib.procedures {
		if f.Named {
			p := lib.side(f)
			if p.Errors > 0 && p.First == "" {
				p.First = first(msgs) // it stands in shop.yaml or unit.yaml
			}
			out = append(out, p)
		}
	}
	return out
}

// side makes the cards of one procedure. A panic leaves it without any.
func (lib *library) side(f *procedureFile) (out compare.Procedure) {
	p := f.procedure
	out = compare.Procedure{Number: p.Number.Name, Title: p.Title.Name, File: f.File.Name, Errors: lib.errorsAround(f)}
	found := &diag.List{}
	defer func() {
		if r := recover(); r != nil {
			out.Cards, out.First = nil, fmt.Sprintf("benchwright itself failed on this card: %v", r)
			out.Errors++
		}
	}()
	found.Join(f.refused)
	out.Errors += f.errors - found.Errors() // a number that another card has, too
	cards, ids, perVariant, ok := lib.resolve(f, found)
	if !ok {
		out.Errors, out.First = max(out.Errors+found.Errors(), 1), first(found)
		return out
	}
	out.Cards = cards
	check.Procedure(p, out.Cards, lib.cards, f.errors == 0, found)
	found.Merge(ids, perVariant)
	out.Errors += found.Errors()
	if out.Errors > 0 {
		out.First = first(found)
	}
	return out
}

// first returns the first error of a list, with its place.
func first(list *diag.List) string {
	for _, d := range list.Sorted() {
		if d.Severity() != diag.Error {
			continue
		}
		var b bytes.Buffer
		if err := diag.WriteText(&b, []diag.Diagnostic{d}, false); err != nil {
			return ""
		}
		line, _, _ := bytes.Cut(b.Bytes(), []byte("\n"))
		return string(line)
	}
	return ""
}
