package procedure

import (
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/syntax"
)

// A blockType is a block type of the language.
type blockType struct {
	name string
	read func(reader, Base) Item // nil for a type that is planned but not built
}

// types lists the block types, in the order in which messages name them.
var types = []blockType{
	{"tool", reader.tool},
	{"torque", reader.torque},
	{"measurement", reader.measurement},
	{"caution", reader.caution},
	{"hold-point", reader.holdPoint},
	{"figure", reader.figure},
	{"preload", reader.preload},
	{"lash", reader.lash},
	{"shim", reader.shim},
	{"pattern", reader.pattern},
	{"leak-test", reader.leakTest},
	{"fit", reader.fit},
	{"timed", reader.timed},
	{"fill", reader.fill},
	{"part", nil},
	{"inspect", nil},
	{"decide", nil},
	{"repeat", nil},
}

// Built lists the block types that this version reads, Planned those that it
// knows only by name.
var Built, Planned = func() (built, later []string) {
	for _, t := range types {
		if t.read != nil {
			built = append(built, t.name)
		} else {
			later = append(later, t.name)
		}
	}
	return
}()

// PageOf returns the page of a message, with a block type that is planned where
// it shows one.
func PageOf(slug string) (diag.Page, bool) {
	p, ok := diag.PageOf(slug)
	if len(Planned) > 0 {
		p.Text = strings.ReplaceAll(p.Text, "PLANNED", Planned[0])
	}
	return p, ok
}

func (r *Reader) block(base Base, b *syntax.Block) Item {
	i := slices.IndexFunc(types, func(t blockType) bool { return t.name == b.Type })
	switch {
	case i < 0 || types[i].read == nil:
		return invalid(base, b.Type, r.unknownType(base, b.Type))
	case b.Tree == nil:
		return invalid(base, b.Type, b.Unread)
	case b.Tree.Refused.IsSet():
		return invalid(base, b.Type, b.Tree.Refused)
	}
	base.Node = b.Tree.Root
	in := r.of(b.Tree)
	base.Only = in.names(base.Node.Get("only"))
	in.refuseMarkup(base.Node)
	item := types[i].read(in, base)
	if bad := in.Bad(); bad.IsSet() {
		return invalid(base, b.Type, bad)
	}
	return item
}

// synonyms maps other trade names of a block to its block type.
var synonyms = map[string]string{
	"holdpoint": "hold-point", "witness": "hold-point", "witness-point": "hold-point", "sign-off": "hold-point",
	"danger": "caution", "warning": "caution", "notice": "caution", "hazard": "caution",
	"measure": "measurement", "reading": "measurement", "gauge": "measurement",
	"leaktest": "leak-test", "pressure-test": "leak-test", "air-test": "leak-test", "vacuum-test": "leak-test",
	"turning-torque": "preload", "rotating-torque": "preload", "rolling-torque": "preload", "pour": "fill",
	"tighten": "torque", "tightening": "torque", "tools": "tool", "wrench": "tool", "socket": "tool",
}

// unknownType reports a block type that is unknown or only planned.
func (r *Reader) unknownType(base Base, kind string) diag.Reported {
	if slices.Contains(Planned, kind) {
		return r.Msgs.Report("block-not-yet", base.At, "say it in the step's text until then",
			"`%s` blocks are part of the language, but this version does not build them yet", kind).Proof()
	}
	fix := "use one of: " + strings.Join(Built, ", ")
	if ours := synonyms[strings.ToLower(kind)]; ours != "" {
		fix = "write `" + ours + "`"
		if level := strings.ToLower(kind); ours == "caution" && level != "hazard" {
			fix += ", with `level: " + level + "` in it"
		}
	} else if near := diag.Nearest(kind, slices.Concat(Built, Planned)); near != "" {
		fix = "write `" + near + "`"
	}
	return r.Msgs.Report("block-unknown", base.At, fix, "no block is called `%s`", kind).Proof()
}
