package check

import (
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
)

// strengths reports threads and classes that cannot be read, and tightened fasteners of
// which too little is stated: no torque can be compared with what they bear.
func strengths(p *pass) {
	if p.Unit == nil {
		return
	}
	for _, f := range p.Unit.Fasteners {
		p.readable(f)
	}
	said := map[*unit.Fastener]bool{}
	each(p, func(_ *card.Step, t *card.Torque) {
		if f := t.Fastener; f != nil && f.Node.Kind == syntax.Mapping && !said[f] && len(t.Tightenings()) > 0 {
			said[f] = true
			p.comparable(f, t)
		}
	})
}

// readable reports a thread or a class that is none.
func (p *pass) readable(f *unit.Fastener) {
	thread, ok := bench.ParseThread(f.Thread)
	switch {
	case f.Thread == "" || bench.OtherThread(f.Thread):
	case !ok:
		p.msgs.Report("thread-unknown", f.Node.Get("thread").Place(), "write diameter and pitch, as in `M12`, `M24x1.5`, `1/2-13 UNC` or `G 1/2`",
			"no thread is called `%s`", f.Thread)
	case f.Class != "":
		if _, ok := thread.ParseClass(f.Class); !ok {
			p.msgs.Report("class-unknown", f.Node.Get("class").Place(), "write "+diag.Series(thread.Classes(), "or"), "no class of %s is called `%s`", f.Thread, f.Class)
		}
	}
}

// comparable reports a tightened fastener of which the unit does not state what it is
// for, or how strong a clamp it is.
func (p *pass) comparable(f *unit.Fastener, t *card.Torque) {
	duty, stated := bench.ParseDuty(string(f.Duty))
	thread, read := bench.ParseThread(f.Thread)
	var missing []string
	switch {
	case !stated && f.Node.Get("duty") == nil:
		missing = append(missing, "duty")
	case stated && duty == bench.Clamp:
		if f.Thread == "" {
			missing = append(missing, "thread")
		}
		if f.Class == "" {
			missing = append(missing, "class")
		}
	}
	verb := "is"
	if len(missing) > 1 {
		verb = "are"
	}
	var d *diag.Diagnostic
	if len(missing) > 0 {
		d = p.msgs.Report("strength-missing", t.Torque.Fastener.At, "add `"+strings.Join(missing, ":` and `")+":` to `"+f.ID+"` in unit.yaml",
			"the %s of `%s` %s not stated, so its torque cannot be compared with what it can bear", diag.Series(missing, "and"), f.ID, verb)
	} else if _, _, known := thread.ProofLoad(f.Class); stated && duty == bench.Clamp && read && !known {
		if _, named := thread.ParseClass(f.Class); named {
			d = p.msgs.Report("strength-missing", t.Torque.Fastener.At, "compare it with the maker's table yourself, and accept this warning with that as the reason",
				"the standard has no proof load of class %s for %s, so the torque of `%s` cannot be compared with what it can bear", f.Class, f.Thread, f.ID)
		}
	}
	if d != nil {
		d.Related = append(d.Related, related(f.At, "the fastener is declared here"))
	}
}
