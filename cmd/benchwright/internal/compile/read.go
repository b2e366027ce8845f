package compile

import (
	"path"
	"regexp"
	"slices"
	"strings"
	"sync"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/check"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/release"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/cmd/benchwright/internal/value"
	"benchwright/cmd/benchwright/internal/workspace"
	"benchwright/schema"
)

// A library is a workspace that has been read.
type library struct {
	workspace  *workspace.Workspace
	shop       *shop.Shop           // nil without one, or if unreadable
	shopErrors int                  // number of errors in shop.yaml
	decimal    quantity.DecimalMark // of the shop
	units      []*unitFile
	procedures []*procedureFile
	cards      *card.Library
	releases   map[string]*release.Record // by card number
	drawings   sync.Map                   // drawings by name, *source.File; cards are made concurrently
}

// A unitFile is a unit.yaml.
type unitFile struct {
	file   *source.File
	unit   *unit.Unit // nil if unreadable
	needed bool       // a named procedure uses it, or every procedure is named
	errors int        // number of errors found when it was read
}

// A procedureFile is a procedure and the messages from reading it.
type procedureFile struct {
	*workspace.Entry
	procedure  *procedure.Procedure
	unreadable bool       // nothing could be read: procedure has only its file
	inline     *unit.Unit // the unit in its front matter; nil without one
	nearest    *unitFile  // nearest unit.yaml in its folder or above; nil without one
	errors     int
	refused    *diag.List // the errors
	warned     *diag.List // the warnings, which the front matter may accept
}

// unit returns the procedure's unit, nil without a readable one.
func (f *procedureFile) unit() *unit.Unit {
	if f.inline == nil && f.nearest != nil {
		return f.nearest.unit
	}
	return f.inline
}

// read reads the shop, units and procedures of a workspace and validates them.
// It reports errors in the named procedures and in what they use; other
// procedures are read only because named ones refer to them.
func read(w *workspace.Workspace, msgs *diag.List) *library {
	lib := &library{workspace: w, decimal: quantity.Point}
	lib.readShop(msgs)
	lib.readUnits(msgs)
	lib.readProcedures(msgs)
	lib.cards = &card.Library{Picture: lib.picture}
	for _, f := range lib.procedures {
		lib.cards.Procedures = append(lib.cards.Procedures, f.procedure)
	}
	lib.readReleases(msgs)
	lib.sharedNumbers(msgs)
	lib.missingCards(msgs)
	return lib
}

// commaShop matches the decimal mark in a shop.yaml that is unreadable.
var commaShop = regexp.MustCompile(`(?m)^decimal:[ \t]*["']?comma\b`)

func (lib *library) readShop(msgs *diag.List) {
	f := lib.workspace.Shop
	if f == nil {
		if !lib.workspace.Standalone {
			lib.shopErrors = 1 // the workspace has reported it
		}
		return
	}
	if commaShop.Match(f.Text) { // otherwise every number in the other files would be wrong
		lib.decimal = quantity.Comma
	}
	list := &diag.List{}
	if t := syntax.ReadTree(f, list); t != nil {
		validate("shop", t, firstLine(f), list)
		lib.shop = shop.Read(t, list)
		lib.decimal = lib.shop.Mark()
	}
	lib.shopErrors = list.Errors()
	lib.chooseFixes(list)
	msgs.Join(list)
}

func (lib *library) readUnits(msgs *diag.List) {
	used, all := map[*source.File]bool{}, true
	for _, e := range lib.workspace.Procedures {
		all = all && e.Named
		if e.Named {
			used[e.Unit] = true
		}
	}
	byID := map[string]*unit.Unit{}
	for _, file := range lib.workspace.Units {
		f := &unitFile{file: file, needed: all || used[file]}
		lib.units = append(lib.units, f)
		list := &diag.List{}
		if t := syntax.ReadTree(file, list); t != nil {
			validate("unit", t, firstLine(file), list)
			u := unit.Read(t, lib.decimal, list)
			check.Unit(u, lib.decimal, list)
			f.unit = u
			if first := byID[u.ID]; first != nil && u.ID != "" {
				d := list.Report("id-twice", u.Root.Get("unit").Place(), "give each unit its own id", "two units are called `%s`", u.ID)
				d.Related = append(d.Related, diag.Related{At: first.Root.Get("unit").Place(), Message: "the other one"})
			} else {
				byID[u.ID] = u
			}
		}
		f.errors = list.Errors()
		if lib.chooseFixes(list); f.needed {
			msgs.Join(list)
		}
	}
}

func (lib *library) readProcedures(msgs *diag.List) {
	units := map[*source.File]*unitFile{}
	for _, u := range lib.units {
		units[u.file] = u
	}
	for _, e := range lib.workspace.Procedures {
		f := &procedureFile{Entry: e, nearest: units[e.Unit], refused: &diag.List{}}
		if e.Unit != nil && f.nearest == nil {
			f.nearest = &unitFile{file: e.Unit, errors: 1} // the workspace has reported it
		}
		lib.procedures = append(lib.procedures, f)
		lib.readProcedure(f, f.refused)
		f.errors = f.refused.Errors()
		lib.chooseFixes(f.refused)
		f.warned = f.refused.Extract(func(d diag.Diagnostic) bool { return d.Severity() == diag.Warning })
		if e.Named {
			msgs.Join(f.refused)
		}
	}
}

// chooseFixes sets the fixes that depend on the shop\'s decimal mark.
func (lib *library) chooseFixes(list *diag.List) {
	if lib.workspace.Shop != nil {
		list.ChooseFixes(lib.decimal == quantity.Comma)
	}
}

func (lib *library) readProcedure(f *procedureFile, msgs *diag.List) {
	doc := syntax.ReadDoc(f.File, msgs)
	if doc == nil || doc.Front == nil {
		f.procedure, f.unreadable = &procedure.Procedure{File: f.File}, true
		return
	}
	validateAll(doc, msgs)
	decimal := lib.decimal
	if inline := doc.Front.Root.Get("shop"); inline != nil && inline.Kind == syntax.Mapping {
		if lib.workspace.Standalone {
			lib.shop = shop.FromNode(inline, &value.Reader{Msgs: msgs, SchemaRefused: doc.Front.Refused})
			decimal = lib.shop.Mark()
		} else {
			msgs.Report("shop-twice", doc.Front.Root.KeyPlace("shop"), "take `shop:` out: shop.yaml holds for every procedure here",
				"a procedure inside a workspace brings its own shop")
		}
	}
	r := procedure.Reader{Mark: decimal, Msgs: msgs}
	f.procedure = r.Read(doc)
	switch node := f.procedure.InlineUnit; {
	case node == nil:
	case f.Unit != nil:
		msgs.Report("unit-twice", doc.Front.Root.KeyPlace("unit"), "name the unit by its id, or take unit.yaml away",
			"a procedure brings its own unit beside `%s`", f.Unit.Name)
	default:
		f.inline = unit.FromNode(node, &value.Reader{Mark: decimal, Msgs: msgs, SchemaRefused: doc.Front.Refused})
		check.Unit(f.inline, decimal, msgs)
	}
}

// validateAll validates the front matter and blocks of a procedure.
func validateAll(doc *syntax.Doc, msgs *diag.List) {
	if !doc.Front.Broken {
		validate("front", doc.Front, firstLine(doc.File), msgs)
	}
	blocks := func(content []syntax.Content) {
		for _, c := range content {
			if b, ok := c.(*syntax.Block); ok && b.Tree != nil && slices.Contains(procedure.Built, b.Type) {
				validate("block-"+b.Type, b.Tree, doc.File.At(b.TypeSpan.Start, b.TypeSpan.End), msgs)
			}
		}
	}
	blocks(doc.Lead)
	for _, st := range doc.Stages {
		blocks(st.Content)
		for _, s := range st.Steps {
			blocks(s.Content)
		}
	}
}

// sharedNumbers reports card numbers used by two procedures.
func (lib *library) sharedNumbers(msgs *diag.List) {
	first := map[string]*procedureFile{}
	for _, f := range lib.procedures {
		key := strings.ToUpper(f.procedure.Number.Name)
		if key == "" {
			continue
		}
		other := first[key]
		if other == nil {
			first[key] = f
			continue
		}
		if !f.Named && other.Named {
			f, other = other, f
		}
		f.errors++
		if f.Named {
			d := msgs.Report("card-twice", f.procedure.Number.At, "give each card its own number", "two cards have the number `%s`", f.procedure.Number.Name)
			d.Related = append(d.Related, diag.Related{At: other.procedure.Number.At, Message: "the other one"})
		}
	}
}

// missingCards reports missing cards that a job names.
func (lib *library) missingCards(msgs *diag.List) {
	var numbers []string
	for _, f := range lib.procedures {
		numbers = append(numbers, f.procedure.Number.Name)
	}
	for _, f := range lib.units {
		if f.unit == nil || !f.needed {
			continue
		}
		for _, j := range f.unit.Jobs {
			for _, c := range j.Cards {
				if slices.Contains(numbers, c.Number) {
					continue
				}
				d := msgs.Report("card-unknown", c.At, "write the procedure, or take the card out of the job", "no card is called `%s`", c.Number)
				if near := diag.Nearest(c.Number, numbers); near != "" {
					d.Fix = "write `" + near + "`"
				}
			}
		}
	}
}

// picture reads a picture that a procedure names.
func (lib *library) picture(from *source.File, named string) (string, []byte, error) {
	name, err := workspace.Resolve(from.Name, named)
	if err != nil {
		return "", nil, err
	}
	data, err := lib.workspace.Read(name, workspace.MaxPicture)
	if strings.EqualFold(path.Ext(name), ".svg") && err == nil {
		f, _ := lib.drawings.LoadOrStore(name, source.NewFile(name, data))
		data = f.(*source.File).Text
	}
	return name, data, err
}

// validate validates a tree and reports each violation at its place, or at
// head if a key is missing from the root. It records in the tree that there
// were any.
func validate(kind string, t *syntax.Tree, head source.Place, msgs *diag.List) {
	for _, v := range schema.Validate(kind, t.Root.Value(), diag.Nearest) {
		at := head
		key, value, ok := t.Find(v.Path)
		switch {
		case !ok || v.Slug == schema.KeyMissing && len(v.Path) == 0:
		case v.Key || v.Slug == schema.KeyMissing:
			at = t.File.At(key.Start, key.End)
		default:
			at = t.File.At(value.Start, value.End)
		}
		t.Refused = msgs.Report(v.Slug, at, v.Fix, "%s", v.Message).Proof()
	}
}

// firstLine returns the place of a file's first line.
func firstLine(f *source.File) source.Place { return source.Place{File: f, Span: f.LineSpan(1)} }
