package compare

import (
	"fmt"
	"maps"
	"math/big"
	"reflect"
	"slices"
	"strings"
	"unicode"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/unit"
)

// A card rests on more than its pages show: the range of a wrench, the friction
// of a thread, the mass that decides whether one person lifts a part. Such a
// number lets a bad card through when it changes, so it is reported where it is
// used, with the note that no page shows it.

// A holding is one thing that a card rests on.
type holding struct {
	path  string // types and field: "Torque.Fastener.NutFactor"
	owner string // name of the part, tool or fastener that it belongs to; "" for a block
	id    string // the owner's
	class Class
	what  string // "nut factor"
	value string // "" for nothing
}

// onPages are the fields that the pages tell wherever they matter, in other
// words than their own, and those that stand for a thing compared elsewhere.
var onPages = []string{
	"Item.Location", "Item.OldNumber", "Item.ReplacedBy", "Item.Number", "Item.Name",
	"Wrench.EngravedUnit", "Gauge.EngravedUnit",
	"Procedure.Number", "Procedure.Title", "Procedure.Unit", "StopPoint.Say",
	"Shop.Paper", "Shop.Distance", "Shop.AvoidFirst",
}

// inOtherWords are the fields that the pages tell in other words where they come
// to bear: an arrow, a figure. Where nothing else of the step changed, they did not.
var inOtherWords = []string{"Fastener.Hand", "Fastener.Count", "Fastener.Pattern"}

// unheld are the types that say where a thing stands or which name was written
// for it: what the name stands for is compared.
var unheld = []reflect.Type{reflect.TypeFor[procedure.Named](), reflect.TypeFor[procedure.Limits](), reflect.TypeFor[*card.Step](), reflect.TypeFor[procedure.Prose](), reflect.TypeFor[procedure.Branch]()}

// A holder lists what a part of a card rests on.
type holder struct {
	out  []holding
	path []string
	of   holding // the owner
	met  map[any]bool
}

// holds returns what things of a card rest on.
func holds(things []any) []holding {
	h := &holder{met: map[any]bool{}}
	for _, t := range things {
		h.walk(reflect.ValueOf(t))
	}
	return h.out
}

// room is the last element of a type's package path.
func room(t reflect.Type) string {
	return t.PkgPath()[strings.LastIndexByte(t.PkgPath(), '/')+1:]
}

func (h *holder) walk(v reflect.Value) {
	for v.IsValid() && (v.Kind() == reflect.Pointer || v.Kind() == reflect.Interface) {
		if v.IsNil() || slices.Contains(unheld, v.Type()) {
			return
		}
		if v.Kind() == reflect.Pointer {
			if h.met[v.Interface()] {
				return
			}
			h.met[v.Interface()] = true
		}
		v = v.Elem()
	}
	if !v.IsValid() || slices.Contains(unheld, v.Type()) {
		return
	}
	switch v.Kind() {
	case reflect.Slice:
		for i := range v.Len() {
			h.walk(v.Index(i))
		}
	case reflect.Map:
		for _, k := range slices.SortedFunc(slices.Values(v.MapKeys()), func(a, b reflect.Value) int { return strings.Compare(fmt.Sprint(a), fmt.Sprint(b)) }) {
			h.walk(v.MapIndex(k))
		}
	case reflect.Struct:
		h.fields(v)
	}
}

// fields walks a struct. Of one that the card computed, only what it was
// computed from is looked at: the rest is on the pages.
func (h *holder) fields(v reflect.Value) {
	t := v.Type()
	of, computed := h.of, room(t) == "card"
	if id := v.FieldByName("ID"); id.IsValid() && id.Kind() == reflect.String {
		h.of.id = id.String()
		if name := v.FieldByName("Name"); name.IsValid() {
			h.of.owner = name.String()
		}
	}
	h.path = append(h.path, t.Name())
	for i := range t.NumField() {
		f := t.Field(i)
		if !f.IsExported() || slices.Contains(onPages, t.Name()+"."+f.Name) || slices.Contains([]string{"ID", "At", "Node", "Only", "Root", "File", "Bad"}, f.Name) {
			continue
		}
		if n, named := v.Field(i).Interface().(procedure.Named); named && t == reflect.TypeFor[procedure.Procedure]() {
			h.add(f.Name, n.Name, Method) // another card, which is looked up by nobody
			continue
		}
		if s, ok := v.Field(i).Interface().(quantity.Scale); ok {
			if !computed {
				h.scale(s)
			}
			continue
		}
		if text, class, ok := told(v.Field(i)); ok {
			if !computed {
				h.add(f.Name, text, class)
			}
			continue
		}
		elem := f.Type
		for elem.Kind() == reflect.Pointer || elem.Kind() == reflect.Slice || elem.Kind() == reflect.Map {
			elem = elem.Elem()
		}
		if room(elem) == "shop" && room(t) != "shop" {
			continue // what is taken up is looked at where it is laid out
		}
		if elem.Kind() == reflect.Interface || slices.Contains([]string{"card", "procedure", "unit", "shop"}, room(elem)) {
			h.walk(v.Field(i))
		}
	}
	h.path = h.path[:len(h.path)-1]
	h.of = of
}

func (h *holder) add(field, text string, class Class) {
	if strings.HasSuffix(field, "Source") || strings.HasSuffix(field, "Because") {
		class = Safety
	}
	x := h.of
	x.path, x.class, x.what, x.value = strings.Join(h.path, ".")+"."+field, class, spaced(field), text
	h.out = append(h.out, x)
}

// called are the fields whose name is not what the shop calls them.
var called = map[string]string{
	"MarksWarn":  "fewest marks within the limits before a warning",
	"MarksError": "fewest marks within the limits", "Gas": "test cap", "HeatSource": "source of the highest temperature",
	"HeatBecause": "why it may get hotter", "Due": "next calibration", "Accept": "accepted warnings", "MovesGear": "gear that it moves",
}

// spaced is the name of a field as words: "nut factor".
func spaced(field string) string {
	if name := called[field]; name != "" {
		return name
	}
	var b strings.Builder
	for i, r := range field {
		if unicode.IsUpper(r) && i > 0 {
			b.WriteByte(' ')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}

// told returns what a value says that is one thing: a quantity, a number, a
// word. Words are of class method, all that is set, accepted or computed with of
// class safety.
func told(v reflect.Value) (text string, class Class, ok bool) {
	nothing := v.Kind() == reflect.Pointer && v.IsNil()
	switch v.Interface().(type) {
	case *big.Rat, *quantity.Value, *quantity.Band:
		if nothing {
			return "", Safety, true
		}
	}
	switch x := v.Interface().(type) {
	case *big.Rat:
		return quantity.Decimal(x, quantity.Point), Safety, true
	case *quantity.Value:
		return amount(*x), Safety, true
	case quantity.Value:
		return amount(x), Safety, true
	case *quantity.Band:
		return x.Written, Safety, true
	case quantity.Band:
		return x.Written, Safety, true
	case []string:
		return strings.Join(x, ", "), Safety, true
	case [2]int:
		return fmt.Sprintf("%d, %d", x[0], x[1]), Safety, true
	case []shop.Shim:
		sorted := slices.SortedStableFunc(slices.Values(x), func(a, b shop.Shim) int {
			return quantity.Convert(a.Thickness.Value, a.Thickness.Unit, b.Thickness.Unit).Cmp(b.Thickness.Value)
		})
		return list(sorted, func(s shop.Shim) string {
			return amount(s.Thickness) + map[bool]string{true: fmt.Sprintf(" (at most %d)", s.MaxCount)}[s.MaxCount > 0]
		}), Method, true
	case []procedure.Accept:
		return list(x, func(a procedure.Accept) string {
			return strings.TrimSpace(a.Slug.Name+" "+a.Step.Name) + ": " + a.Because
		}), Method, true
	case []*unit.Dependency:
		return list(x, func(d *unit.Dependency) string {
			return d.Limit + ": " + strings.Join(slices.Sorted(slices.Values(d.VoidedBy)), ", ")
		}), Method, true
	case []*unit.Job:
		return list(x, func(j *unit.Job) string {
			return j.Title + ": " + list(j.Cards, func(c unit.CardRef) string { return c.Number })
		}), Method, true
	}
	switch v.Kind() {
	case reflect.String:
		if v.Type().PkgPath() != "" { // a word of a list
			return v.String(), Safety, true
		}
		return v.String(), Method, true
	case reflect.Bool:
		return map[bool]string{true: "yes", false: "no"}[v.Bool()], Safety, true
	case reflect.Int:
		return fmt.Sprint(v.Int()), Safety, true
	}
	return "", "", false
}

// amount is a value as typed, or as computed.
func amount(v quantity.Value) string {
	if v.Text == "" && v.Value != nil {
		return v.Unit.After(quantity.Decimal(v.Value, quantity.Point))
	}
	return v.Unit.After(v.Text)
}

// list joins what is said of each thing.
func list[T any](things []T, say func(T) string) string {
	var out []string
	for _, t := range things {
		out = append(out, say(t))
	}
	return strings.Join(out, ", ")
}

// scale adds the marks of an instrument.
func (h *holder) scale(s quantity.Scale) {
	text := func(x *big.Rat) string {
		if x == nil {
			return ""
		}
		return s.Unit.After(quantity.Decimal(x, quantity.Point))
	}
	h.add("MarksEvery", text(s.Step), Safety)
	h.add("LowestMark", text(s.Low), Safety)
	h.add("HighestMark", text(s.High), Safety)
}

// rests compares what two cards rest on, step by step, and what no step holds:
// the rules of the shop, the caps of the unit, the tools and parts to lay out.
func (c *comparison) rests() {
	c.placed = [2]source.Place{}
	c.place, c.was, c.is = onCard, nil, nil
	c.beneath(overall(c.a.card), overall(c.b.card))
	c.place = onLayOut
	c.beneath(laidOut(c.a.card), laidOut(c.b.card))
	c.place = ""
	for i, s := range c.a.steps {
		if j := c.matched.old[i]; j >= 0 {
			c.was, c.is = s, c.b.steps[j]
			c.beneath(items(c.was), items(c.is))
		}
	}
}

func items(s *step) []any {
	var out []any
	for _, i := range s.items {
		out = append(out, i)
	}
	return out
}

// beneath reports what changed in what things of the card rest on and that the
// changes found there do not show.
func (c *comparison) beneath(before, after []any) {
	old, new := byPath(holds(before)), byPath(holds(after))
	for _, path := range slices.Sorted(maps.Keys(old)) {
		xs, ys := old[path], new[path]
		// What is on both sides is no change, in whatever order it stands.
		for i := 0; i < len(xs); i++ {
			if j := slices.IndexFunc(ys, func(y holding) bool { return y.of(xs[i]) && c.equal(xs[i], y) }); j >= 0 {
				xs, ys = slices.Delete(xs, i, i+1), slices.Delete(ys, j, j+1)
				i--
			}
		}
		for _, x := range xs {
			if j := slices.IndexFunc(ys, func(y holding) bool { return y.of(x) }); j >= 0 {
				c.unseen(x, ys[j])
				ys = slices.Delete(ys, j, j+1)
			}
		}
	}
}

func byPath(list []holding) map[string][]holding {
	out := map[string][]holding{}
	for _, x := range list {
		out[x.path] = append(out[x.path], x)
	}
	return out
}

// of says whether two things belong to one part, tool or block.
func (x holding) of(y holding) bool {
	return x.id == y.id || x.owner == y.owner && x.owner != ""
}

func (c *comparison) equal(x, y holding) bool {
	return x.value == y.value && c.a.mark == c.b.mark || keyed(x.value, c.a.mark) == keyed(y.value, c.b.mark)
}

// unseen reports a thing that changed, but for what a change there shows.
func (c *comparison) unseen(x, y holding) {
	before, after := keyed(x.value, c.a.mark), keyed(y.value, c.b.mark)
	class, what := graver(x.class, y.class), x.what
	drawn := slices.ContainsFunc(inOtherWords, func(field string) bool { return strings.HasSuffix(x.path, "."+field) })
	shows := func(o Change) bool {
		if drawn && !o.Behind && c.was != nil && o.key.old == c.was.source {
			return true
		}
		return (o.Place == c.place || c.place == onCard && o.Place != "") && (c.was == nil || o.key.old == c.was.source && o.key.new == c.is.source) &&
			strings.Contains(keyed(o.Before, c.a.mark), before) && strings.Contains(keyed(o.After, c.b.mark), after)
	}
	if slices.ContainsFunc(c.changes, shows) {
		return
	}
	if x.owner != "" {
		what = x.owner + ", " + what
	}
	c.report(class, what, x.value, y.value, noPage)
	c.changes[len(c.changes)-1].Behind = true
}

const noPage = "no page shows it"

// overall is what holds for a card as a whole.
func overall(c *card.Card) []any {
	var out []any
	p := *c.Procedure
	p.Lead, p.Stages = nil, nil
	out = append(out, p)
	if c.Unit != nil {
		u := *c.Unit
		u.Variants, u.Parts, u.Fasteners, u.Packs, u.Gears, u.Limits = nil, nil, nil, nil, nil, nil
		out = append(out, u)
	}
	if c.Shop != nil {
		s := *c.Shop
		s.Name, s.Tools, s.Wrenches, s.Gauges, s.Stock = "", nil, nil, nil, nil
		out = append(out, s)
	}
	return out
}

// laidOut is what a card has ready that no step holds.
func laidOut(c *card.Card) []any {
	var out []any
	for _, k := range c.Kit {
		out = append(out, k.Thing)
	}
	for _, p := range c.Parts {
		out = append(out, p)
	}
	return out
}
