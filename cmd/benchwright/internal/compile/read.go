package compile

import (
	"regexp"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/check"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/cmd/benchwright/internal/workspace"
	"benchwright/schema"
)

// commas finds the decimal mark of a shop.yaml that cannot be read.
var commas = regexp.MustCompile(`(?m)^decimal:[ \t]*["']?comma\b`)

// Read reads shop, units and procedures of a workspace and checks each against
// its schema. It reports what is wrong with the named procedures and with what
// they use; the others are read for what the named ones refer to.
func Read(w *workspace.Workspace, msgs *diag.List) *Library {
	lib := &Library{Workspace: w, units: map[*source.File]*unit.Unit{},
		entries: map[*procedure.Procedure]*workspace.Entry{}, inline: map[*procedure.Procedure]*unit.Unit{},
		faults: map[*source.File]int{}, unread: map[*procedure.Procedure]bool{},
		warned: map[*procedure.Procedure]*diag.List{}, refused: map[*procedure.Procedure]*diag.List{}}
	used, all := map[*source.File]bool{}, true
	for _, e := range w.Procedures {
		all = all && e.Named
		if e.Named && e.Unit != nil {
			used[e.Unit] = true
		}
	}
	// file runs read for one file, with its own list of messages.
	file := func(f *source.File, wanted bool, read func(*diag.List)) {
		list := &diag.List{}
		read(list)
		if w.Shop != nil {
			fitCommas(list, lib.decimal)
		}
		lib.faults[f] += list.Errors()
		if wanted {
			msgs.Join(list)
		}
	}
	lib.decimal = quantity.Point
	if w.Shop != nil {
		if commas.Match(w.Shop.Text) { // where it cannot be read, every number of its other files would be wrong
			lib.decimal = quantity.Comma
		}
		file(w.Shop, true, func(list *diag.List) {
			if t := syntax.ReadTree(w.Shop, list); t != nil {
				validate("shop", t, firstLine(w.Shop), list)
				lib.Shop = shop.Read(t, list)
				lib.decimal = lib.Shop.Mark()
			}
		})
	}
	byID := map[string]*unit.Unit{}
	for _, f := range w.Units {
		file(f, all || used[f], func(list *diag.List) {
			t := syntax.ReadTree(f, list)
			if t == nil {
				return
			}
			validate("unit", t, firstLine(f), list)
			u := unit.Read(t, lib.decimal, list)
			check.Unit(u, lib.decimal, list)
			lib.units[f] = u
			if first := byID[u.ID]; first != nil && u.ID != "" {
				d := list.Report("id-twice", u.Root.Get("unit").Place(), "give each unit its own id", "two units are called `%s`", u.ID)
				d.Related = append(d.Related, diag.Related{At: first.Root.Get("unit").Place(), Message: "the other one"})
				return
			}
			byID[u.ID] = u
		})
	}
	for _, e := range w.Procedures {
		file(e.File, e.Named, func(list *diag.List) {
			p := lib.read(e, list)
			lib.Procedures = append(lib.Procedures, p)
			lib.entries[p] = e
			if e.Named { // the front matter may accept a warning
				lib.warned[p] = list.Take(func(d diag.Diagnostic) bool { return d.Severity() == diag.Warning })
				lib.refused[p] = list
			}
		})
	}
	lib.cards = &card.Library{Procedures: lib.Procedures, Units: lib.UnitOf, Picture: lib.picture}
	lib.unique(msgs)
	lib.jobs(used, all, msgs)
	return lib
}

// fitCommas leaves of the two mends of a number that fell apart at its comma the
// one that the shop's decimal mark calls for.
func fitCommas(list *diag.List, mark quantity.Mark) {
	for _, d := range list.Take(func(d diag.Diagnostic) bool { return d.Slug == "flow-comma" }).Sorted() {
		if comma, point := syntax.CommaMends(d.At.Text()); mark == quantity.Comma || point == "" {
			d.Help = comma
		} else {
			d.Help = point
		}
		list.Add(d)
	}
}

// read reads one procedure. One of which nothing can be made is no more than
// its file, and is noted as unread.
func (lib *Library) read(e *workspace.Entry, msgs *diag.List) *procedure.Procedure {
	doc := syntax.ReadDoc(e.File, msgs)
	if doc == nil || doc.Front == nil {
		p := &procedure.Procedure{File: e.File}
		lib.unread[p] = true
		return p
	}
	refused := map[*syntax.Tree]bool{}
	valid := func(kind string, t *syntax.Tree, head source.Place) {
		if t != nil && validate(kind, t, head, msgs) > 0 {
			refused[t] = true
		}
	}
	if !doc.Front.Broken {
		valid("front", doc.Front, firstLine(e.File))
	}
	blocks := func(content []syntax.Content) {
		for _, c := range content {
			if b, ok := c.(*syntax.Block); ok && slices.Contains(procedure.Built, b.Type) {
				valid("block-"+b.Type, b.Tree, e.File.At(b.TypeSpan.Start, b.TypeSpan.End))
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
	decimal := lib.decimal
	if own := doc.Front.Root.Get("shop"); own != nil && own.Kind == syntax.Mapping {
		if lib.Workspace.Alone {
			lib.Shop = shop.FromNode(own, msgs)
			decimal = lib.Shop.Mark()
		} else {
			msgs.Report("shop-twice", doc.Front.Root.KeyPlace("shop"), "take `shop:` out: shop.yaml holds for every procedure here",
				"a procedure inside a workspace brings its own shop")
		}
	}
	r := procedure.Reader{Mark: decimal, Refused: func(t *syntax.Tree) bool { return refused[t] }, Msgs: msgs}
	p := r.Read(doc)
	if p.InlineUnit != nil {
		if e.Unit != nil {
			msgs.Report("unit-twice", doc.Front.Root.KeyPlace("unit"), "name the unit by its id, or take unit.yaml away",
				"a procedure brings its own unit beside `%s`", e.Unit.Name)
		} else {
			lib.inline[p] = unit.FromNode(p.InlineUnit, decimal, msgs)
			check.Unit(lib.inline[p], decimal, msgs)
		}
	}
	return p
}

// UnitOf returns the unit that a procedure is about, nil when it has none that
// could be read.
func (lib *Library) UnitOf(p *procedure.Procedure) *unit.Unit {
	if u := lib.inline[p]; u != nil {
		return u
	}
	if e := lib.entries[p]; e != nil && e.Unit != nil {
		return lib.units[e.Unit]
	}
	return nil
}

// unique reports card numbers that two procedures share.
func (lib *Library) unique(msgs *diag.List) {
	first := map[string]*procedure.Procedure{}
	for _, p := range lib.Procedures {
		key := strings.ToUpper(p.Number.Name)
		if key == "" {
			continue
		}
		other := first[key]
		if other == nil {
			first[key] = p
			continue
		}
		if !lib.entries[p].Named && lib.entries[other].Named {
			p, other = other, p
		}
		lib.faults[p.File]++
		if lib.entries[p].Named {
			d := msgs.Report("card-twice", p.Number.At, "give each card its own number", "two cards have the number `%s`", p.Number.Name)
			d.Related = append(d.Related, diag.Related{At: other.Number.At, Message: "the other one"})
		}
	}
}

// jobs reports cards that a job names and that are not there.
func (lib *Library) jobs(used map[*source.File]bool, all bool, msgs *diag.List) {
	var numbers []string
	for _, p := range lib.Procedures {
		numbers = append(numbers, p.Number.Name)
	}
	for _, f := range lib.Workspace.Units {
		u := lib.units[f]
		if u == nil || !all && !used[f] {
			continue
		}
		for _, j := range u.Jobs {
			for _, c := range j.Cards {
				if slices.Contains(numbers, c.Number) {
					continue
				}
				d := msgs.Report("card-unknown", c.At, "write the procedure, or take the card out of the job", "no card is called `%s`", c.Number)
				if near := diag.Nearest(c.Number, numbers); near != "" {
					d.Help = "write `" + near + "`"
				}
			}
		}
	}
}

// picture reads a picture that a procedure names.
func (lib *Library) picture(from *source.File, path string) (string, []byte, error) {
	name, err := workspace.Resolve(from.Name, path)
	if err != nil {
		return "", nil, err
	}
	data, err := workspace.Read(lib.Workspace.Root, name, workspace.MaxPicture)
	return name, data, err
}

// validate checks a tree against a schema and reports each breach at its
// place. A key that is missing from the tree's root is reported at head. It
// returns how many breaches there were.
func validate(kind string, t *syntax.Tree, head source.Place, msgs *diag.List) int {
	found := schema.Validate(kind, t.Root.Value(), diag.Nearest)
	for _, v := range found {
		at := head
		key, value, ok := t.Find(v.Path)
		switch {
		case !ok || v.Slug == schema.KeyMissing && len(v.Path) == 0:
		case v.Key || v.Slug == schema.KeyMissing:
			at = t.File.At(key.Start, key.End)
		default:
			at = t.File.At(value.Start, value.End)
		}
		msgs.Report(v.Slug, at, v.Help, "%s", v.Message)
	}
	return len(found)
}

// firstLine is the place of a file's first line.
func firstLine(f *source.File) source.Place { return source.Place{File: f, Span: f.LineSpan(1)} }
