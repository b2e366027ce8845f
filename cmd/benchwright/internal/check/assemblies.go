package check

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
)

// assemblies follows each assembly of tools from the step that makes it to the
// step that takes it apart.
func assemblies(p *pass) {
	made := map[string]*card.Tool{}       // assembled now
	takenApart := map[string]*card.Tool{} // already taken apart
	use := func(n procedure.Named) {
		if _, known := p.Assemblies[n.Name]; !known || made[n.Name] != nil {
			return
		}
		d := p.msgs.Report("assembly-not-there", n.At, "assemble it first, with `assemble:` and `as: "+n.Name+"`", "`%s` is not assembled at this step", n.Name)
		d.Basis = diag.OnProcedure
		if before := takenApart[n.Name]; before != nil {
			d.Related = append(d.Related, related(before.TakeApart.At, "it is taken apart here"))
		}
	}
	var order []string
	each(p, func(_ *card.Step, t *card.Tool) {
		for _, n := range append(append([]procedure.Named{t.With}, t.Use...), t.Assemble...) {
			use(n)
		}
		if t.AssemblyName.Name != "" {
			made[t.AssemblyName.Name] = t
			order = append(order, t.AssemblyName.Name)
		}
		if n := t.TakeApart; n.Name != "" {
			if _, known := p.Assemblies[n.Name]; !known {
				p.msgs.Report("assembly-not-there", n.At, "name what an earlier step assembled with `as:`", "no step assembles `%s`", n.Name).Basis = diag.OnProcedure
				return
			}
			use(n)
			delete(made, n.Name)
			takenApart[n.Name] = t
		}
	})
	for _, name := range order {
		if t := made[name]; t != nil {
			p.msgs.Report("assembly-left", t.AssemblyName.At, "add a `tool` block with `take-apart: "+name+"` where it is no longer needed", "`%s` is assembled and never taken apart", name).Basis = diag.OnProcedure
			delete(made, name)
		}
	}
}
