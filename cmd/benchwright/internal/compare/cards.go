package compare

import (
	"cmp"
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
)

// A comparison is of one card with another, both for one variant.
type comparison struct {
	a, b    *reader
	matched pairing        // of the steps
	number  map[int]string // what a reference to a step of the new card is compared as: the number on the old one
	shifted bool           // some step has another number
	changes []Change

	place  string // where what is compared stands
	was    *step  // in which steps; nil for what stands in none, or is not there
	is     *step
	placed [2]source.Place // of the element in hand, on the old and the new side
	gone   []single        // elements that one side alone has
	come   []single
}

// A single is an element that one side alone has, and the change that says so.
type single struct {
	change int
	says   string
}

// An across is what makes a change the same one in another variant, where its
// step may have another number.
type across struct {
	old, new                         *procedure.Step
	place, what, before, after, note string
}

// cards compares two cards for one variant.
func cards(x, y *card.Card) []Change {
	c := &comparison{a: read(x), b: read(y), number: map[int]string{}}
	broken := x.Procedure.Doc.Front.Broken || y.Procedure.Doc.Front.Broken // what the front matter says is not known
	if !broken {
		c.head(x, y)
	}
	c.printed()
	c.matched = matched(c.a.steps, c.b.steps)
	for j, i := range c.matched.new {
		c.number[j+1] = "new " + strconv.Itoa(j+1)
		if i >= 0 {
			c.number[j+1] = strconv.Itoa(i + 1)
		}
		c.shifted = c.shifted || i != j
	}
	if c.a.text != c.b.text {
		c.pages(broken)
	}
	if !broken {
		c.rests()
	}
	return c.changes
}

// pages compares what the pages show, but for what a broken front matter says.
func (c *comparison) pages(broken bool) {
	c.place = onLayOut
	if !broken {
		c.elements(c.a.layOut, c.b.layOut)
	}
	c.place = onLead
	c.stages()
	c.elements(c.a.lead, c.b.lead)
	c.place = ""
	c.steps()
	c.moves()
	c.place, c.was, c.is = onStrip, nil, nil
	if len(c.changes) == 0 {
		c.elements(c.a.strip, c.b.strip) // what it has from the card is reported there
	}
}

func (c *comparison) report(class Class, what, before, after, note string) {
	x := Change{Class: class, Place: c.place, What: what, Before: before, After: after, Note: note}
	x.key = across{place: c.place, what: what, before: c.named(c.a, before), after: c.named(c.b, after), note: note}
	r := Reach{Variant: c.b.card.VariantID()}
	x.before, x.At = c.placed[0], c.placed[1]
	if s := c.was; s != nil {
		x.Title, r.Old.Step, x.key.old = s.title, s.number, s.source
		if x.before.File == nil {
			x.before = s.at
		}
	}
	if s := c.is; s != nil {
		x.Title, r.New.Step, x.key.new = s.title, s.number, s.source
		if x.At.File == nil {
			x.At = s.at
		}
	}
	if x.Gone = x.At.File == nil; x.Gone {
		x.At = x.before
	}
	if what == stepMoved {
		x.key.before, x.key.after = "", "" // numbers, which the other variant has otherwise
	}
	x.Reaches = []Reach{r}
	c.changes = append(c.changes, x)
}

// named returns a text with the steps that it refers to by their titles.
func (c *comparison) named(r *reader, text string) string {
	return stepNumber.ReplaceAllStringFunc(text, func(found string) string {
		m := stepNumber.FindStringSubmatch(found)
		if n, _ := strconv.Atoi(m[2]); n > 0 && n <= len(r.steps) {
			return m[1] + "“" + r.steps[n-1].title + "”"
		}
		return found
	})
}

// head compares what every page repeats.
func (c *comparison) head(x, y *card.Card) {
	c.place = onHead
	a, b := c.a.deck.Running, c.b.deck.Running
	for _, f := range []struct {
		class         Class
		what          string
		before, after string
	}{
		{Method, "card number", a.Number, b.Number},
		{Safety, "serials", serials(x), serials(y)},
		{Method, "mark", a.Watch, b.Watch},
		{Wording, "title", a.Title, b.Title},
		{Wording, "unit", a.Unit, b.Unit},
		{Wording, "revision", a.Revision, b.Revision},
		{Wording, "date", a.Date, b.Date},
		{Wording, "note", a.Note, b.Note},
	} {
		if f.before != f.after {
			c.report(f.class, f.what, tidy(f.before), tidy(f.after), "")
		}
	}
}

// printed compares how the shop has its cards printed.
func (c *comparison) printed() {
	x, y := c.a.card.Shop, c.b.card.Shop
	if x == nil || y == nil {
		return
	}
	c.place = onCard
	if x.Paper != y.Paper {
		c.report(Method, pageSize, cmp.Or(x.Paper, "A4"), cmp.Or(y.Paper, "A4"), "")
	}
	if x.Distance != y.Distance {
		far := func(s *shop.Shop) string {
			if s.Distance == 0 {
				return "as usual for the page"
			}
			return fmt.Sprintf("%d mm", s.Distance/1000)
		}
		c.report(Method, readingDistance, far(x), far(y), "")
	}
	if x.AvoidFirst != y.AvoidFirst {
		first := map[bool]string{false: "the hazard", true: "how to avoid it"}
		c.report(Wording, "callouts say first", first[x.AvoidFirst], first[y.AvoidFirst], "")
	}
}

// What sets a whole card anew.
const (
	pageSize        = "page size"
	readingDistance = "reading distance"
)

// serials returns the title and the serial numbers of the card's variant.
func serials(c *card.Card) string {
	if c.Variant == nil {
		return ""
	}
	return strings.TrimSpace(c.Variant.Title + " " + c.Variant.Serials)
}

// stages compares the headings of the stages; a step that goes from one to
// another is compared with the steps.
func (c *comparison) stages() {
	gone, come := without(c.a.stages, c.b.stages), without(c.b.stages, c.a.stages)
	for i := range max(len(gone), len(come)) {
		switch {
		case i >= len(come):
			c.report(Method, "stage removed", gone[i], "", "")
		case i >= len(gone):
			c.report(Method, "stage added", "", come[i], "")
		default:
			c.report(Wording, "stage renamed", gone[i], come[i], "")
		}
	}
}

// without returns the texts that the other list does not have.
func without(list, other []string) []string {
	var out []string
	for _, s := range list {
		if !slices.Contains(other, s) {
			out = append(out, s)
		}
	}
	return out
}

// steps compares the steps: what was removed, added, moved and renamed, and
// what those say that are on both sides.
func (c *comparison) steps() {
	goes := moved(c.matched.old)
	for i, s := range c.a.steps {
		j := c.matched.old[i]
		if j < 0 {
			c.was, c.is = s, nil
			note := s.holds()
			if slices.ContainsFunc(steps(c.b.card.Procedure), func(o *procedure.Step) bool { return o.ID == s.id && o.Text == s.title }) {
				note = strings.Trim(note+"; other variants keep it", "; ")
			}
			c.report(gravest(s), "step removed", s.title, "", note)
			continue
		}
		t := c.b.steps[j]
		c.was, c.is = s, t
		if goes[i] {
			c.report(graver(gravest(s), gravest(t)), stepMoved, behind(c.a.steps, i), behind(c.b.steps, j), "")
		} else if s.stage != t.stage && slices.Contains(c.b.stages, s.stage) && slices.Contains(c.a.stages, t.stage) {
			c.report(Method, "stage", s.stage, t.stage, "")
		}
		if c.key(c.a, s.title) != c.key(c.b, t.title) {
			c.changed(fact{what: "step renamed", class: Method}, fact{class: Method}, s.title, t.title)
		}
		c.elements(s.elements, t.elements)
	}
	for j, s := range c.b.steps {
		if c.matched.new[j] < 0 {
			c.was, c.is = nil, s
			c.report(gravest(s), "step added", "", s.title, s.holds())
		}
	}
}

const stepMoved = "step moved"

// behind says where a step stands.
func behind(steps []*step, i int) string {
	if i == 0 {
		return fmt.Sprintf("step %d, the first", steps[i].number)
	}
	return fmt.Sprintf("step %d, after “%s”", steps[i].number, steps[i-1].title)
}

// moves makes one change of an element that left one step and came to another
// as it was.
func (c *comparison) moves() {
	var drop []int
	for _, g := range c.gone {
		for i, e := range c.come {
			if e.says != g.says || e.says == "" {
				continue
			}
			was, is := c.changes[g.change], &c.changes[e.change]
			is.What = strings.TrimSuffix(is.What, "added") + "moved"
			is.Class = graver(was.Class, is.Class)
			is.Note, is.Before, is.After = is.After, in(was), in(*is)
			is.key.what, is.key.note, is.key.old = is.What, is.key.after, was.key.old
			is.key.before, is.key.after = was.Title, is.Title
			is.Reaches[0].Old, is.before = was.Reaches[0].Old, was.before
			c.come[i].says = ""
			drop = append(drop, g.change)
			break
		}
	}
	slices.Sort(drop)
	for _, i := range slices.Backward(drop) {
		c.changes = slices.Delete(c.changes, i, i+1)
	}
}

// in says in which step a change stands.
func in(x Change) string {
	if n := max(x.Reaches[0].Old.Step, x.Reaches[0].New.Step); n > 0 {
		return fmt.Sprintf("step %d, %s", n, x.Title)
	}
	return x.Place
}

// steps returns the steps of a procedure, for all its variants.
func steps(p *procedure.Procedure) []*procedure.Step {
	var out []*procedure.Step
	for _, st := range p.Stages {
		out = append(out, st.Steps...)
	}
	return out
}

// gravest returns the class of a step that is added, removed or moved.
func gravest(s *step) Class {
	if s.grave() {
		return Safety
	}
	return Method
}

var stepNumber = regexp.MustCompile(`(?i)(\bsteps? )(\d+)`)

// key returns a text as it is compared: a reference to a step stands for that
// step, whatever its number has become.
func (c *comparison) key(r *reader, text string) string {
	if r == c.b {
		text = stepNumber.ReplaceAllStringFunc(text, func(found string) string {
			m := stepNumber.FindStringSubmatch(found)
			n, _ := strconv.Atoi(m[2])
			return m[1] + cmp.Or(c.number[n], m[2])
		})
	}
	return keyed(text, r.mark)
}

// elements compares two lists of elements that stand in one place.
func (c *comparison) elements(as, bs []render.Element) {
	if !c.shifted && slices.EqualFunc(as, bs, func(a, b render.Element) bool { return reflect.DeepEqual(a.Content, b.Content) }) {
		return
	}
	says := func(r *reader, e render.Element) string {
		out := []string{c.key(r, identity(e))}
		for _, f := range r.facts(e) {
			for _, l := range f.lines {
				out = append(out, f.what+": "+c.key(r, l))
			}
		}
		return strings.Join(out, "\n")
	}
	texts := func(r *reader, list []render.Element) (known, all []string) {
		for _, e := range list {
			known, all = append(known, c.key(r, identity(e))), append(all, says(r, e))
		}
		return known, all
	}
	knownA, textsA := texts(c.a, as)
	knownB, textsB := texts(c.b, bs)
	p := newPairing(len(as), len(bs))
	pair := func(alike func(i, j int) bool) {
		p.join(func(i, j int) bool {
			return reflect.TypeOf(as[i].Content) == reflect.TypeOf(bs[j].Content) && alike(i, j)
		})
	}
	pair(func(i, j int) bool { return textsA[i] == textsB[j] })
	pair(func(i, j int) bool { return knownA[i] == knownB[j] })
	pair(func(i, _ int) bool {
		_, listing := as[i].Content.(render.Listing)
		return !listing
	})
	for i, a := range as {
		if j := p.old[i]; j >= 0 {
			c.at(a, bs[j])
			c.element(a, bs[j])
			continue
		}
		c.at(a, render.Element{})
		class, text := c.summary(c.a, a)
		switch {
		case text == "":
		case c.b.lacks(c.is):
			c.report(Safety, kind(a), text, unknown, "")
		default:
			c.gone = append(c.gone, single{len(c.changes), textsA[i]})
			c.report(class, kind(a)+" removed", text, "", "")
			c.changes[len(c.changes)-1].lost[1] = true
		}
	}
	for j, b := range bs {
		if p.new[j] >= 0 {
			continue
		}
		c.at(render.Element{}, b)
		class, text := c.summary(c.b, b)
		switch {
		case text == "":
		case c.a.lacks(c.was):
			c.report(Safety, kind(b), unknown, text, "")
		default:
			c.come = append(c.come, single{len(c.changes), textsB[j]})
			c.report(class, kind(b)+" added", "", text, "")
			c.changes[len(c.changes)-1].lost[0] = true
		}
	}
	c.at(render.Element{}, render.Element{})
	c.order(as, bs, p.old)
}

// at notes where the element in hand stands.
func (c *comparison) at(a, b render.Element) {
	c.placed = [2]source.Place{c.a.deck.Place(a.Ref), c.b.deck.Place(b.Ref)}
}

// unknown stands for what an error in a step keeps from being made.
const unknown = "unknown, because of the error"

// order reports elements that stand in another order: a prose text that
// changed its place among its like is of class wording.
func (c *comparison) order(as, bs []render.Element, old []int) {
	var across []int
	class := Wording
	for i := range old {
		for k := i + 1; k < len(old); k++ {
			if old[i] < 0 || old[k] < 0 || old[k] > old[i] {
				continue
			}
			for _, at := range []int{i, k} {
				if !slices.Contains(across, at) {
					across = append(across, at)
				}
				if as[at].Class == render.Technical {
					class = Safety
				}
			}
		}
	}
	if len(across) == 0 {
		return
	}
	list := func(r *reader, pick func(int) render.Element) string {
		var out []string
		for _, at := range across {
			e := pick(at)
			_, text := c.summary(r, e)
			out = append(out, kind(e)+" ("+short(text)+")")
		}
		return strings.Join(out, ", then ")
	}
	slices.Sort(across)
	before := list(c.a, func(i int) render.Element { return as[i] })
	slices.SortFunc(across, func(x, y int) int { return cmp.Compare(old[x], old[y]) })
	c.report(class, "order within the step", before, list(c.b, func(i int) render.Element { return bs[old[i]] }), "")
}

// short cuts a text for a line that names several.
func short(text string) string {
	if r := []rune(text); len(r) > 40 {
		return string(r[:39]) + "…"
	}
	return text
}

func kind(e render.Element) string { return names[reflect.TypeOf(e.Content).Name()] }

// identity returns what an element is known by among those of its kind.
func identity(e render.Element) string {
	switch x := e.Content.(type) {
	case render.Setting:
		return plain(x.Title)
	case render.Reading:
		return plain(x.Title)
	case render.Callout:
		return plain(x.Hazard)
	case render.Listing:
		return x.Title
	case render.Contact:
		return plain(x.Title)
	case render.Text:
		return fmt.Sprint(x.Role)
	}
	return ""
}

// summary returns in one line what an element says, and how grave it is.
func (c *comparison) summary(r *reader, e render.Element) (Class, string) {
	class, all := Wording, []string(nil)
	for _, f := range r.facts(e) {
		class = graver(class, r.grave(f))
		all = append(all, f.lines...)
	}
	if len(all) > 6 {
		all = append(all[:5:5], fmt.Sprintf("and %d more lines", len(all)-5))
	}
	return class, strings.ReplaceAll(strings.Join(all, "; "), ".; ", ". ")
}

// element compares an element with what it has become, fact by fact.
func (c *comparison) element(a, b render.Element) {
	x, y := c.a.facts(a), c.b.facts(b)
	if listing, ok := a.Content.(render.Listing); ok {
		for _, f := range [][]fact{x, y} {
			for i := range f {
				f[i].what = strings.ToLower(listing.Title)
			}
		}
	}
	var all []string
	for _, f := range slices.Concat(x, y) {
		if !slices.Contains(all, f.what) {
			all = append(all, f.what)
		}
	}
	for _, what := range all {
		f, g := merged(x, what), merged(y, what)
		f.what, g.what = what, what
		if _, ok := a.Content.(render.Table); ok {
			c.table(f, g)
			continue
		}
		c.lines(f, g)
	}
}

// merged joins the facts of one name.
func merged(list []fact, what string) fact {
	out := fact{what: what, class: Wording}
	for _, f := range list {
		if f.what == what {
			out.lines = append(out.lines, f.lines...)
			out.class = graver(out.class, f.class)
		}
	}
	return out
}

// lines compares two lists of lines: what is on both sides is found, the rest
// is paired in its order.
func (c *comparison) lines(f, g fact) {
	gone, come := c.rest(f.lines, g.lines)
	for i := range max(len(gone), len(come)) {
		before, after := "", ""
		if i < len(gone) {
			before = gone[i]
		}
		if i < len(come) {
			after = come[i]
		}
		c.changed(f, g, before, after)
	}
	if x, y := c.keys(c.a, f.lines), c.keys(c.b, g.lines); len(gone)+len(come) == 0 && !slices.Equal(x, y) {
		before, after := reordered(f.lines, g.lines, x, y)
		c.report(graver(f.class, g.class), f.what+" in another order", before, after, "")
	}
}

// reordered says of the lines that changed their places behind which one they
// stood and stand. The lines are those that x and y are the keys of.
func reordered(old, new []string, x, y []string) (before, after string) {
	places := make([]int, len(x))
	used := make([]bool, len(y))
	for i, k := range x {
		for j := range y {
			if !used[j] && y[j] == k {
				places[i], used[j] = j, true
				break
			}
		}
	}
	follows := func(lines []string, i int) string {
		if i == 0 {
			return lines[i] + ", first"
		}
		return lines[i] + ", after “" + lines[i-1] + "”"
	}
	var was, is []string
	for i, goes := range moved(places) {
		if goes {
			was, is = append(was, follows(old, i)), append(is, follows(new, places[i]))
		}
	}
	return strings.Join(was, "; "), strings.Join(is, "; ")
}

func (c *comparison) keys(r *reader, lines []string) []string {
	var out []string
	for _, l := range lines {
		out = append(out, c.key(r, l))
	}
	return out
}

// rest returns the lines of each side that the other one does not have.
func (c *comparison) rest(as, bs []string) (gone, come []string) {
	x, y := c.keys(c.a, as), c.keys(c.b, bs)
	left := slices.Clone(y)
	for i, k := range x {
		if at := slices.Index(left, k); at >= 0 {
			left = slices.Delete(left, at, at+1)
		} else {
			gone = append(gone, as[i])
		}
	}
	for i, k := range y {
		if at := slices.Index(left, k); at >= 0 {
			left = slices.Delete(left, at, at+1)
			come = append(come, bs[i])
		}
	}
	return gone, come
}

// changed reports one line that became another, in the class that it has by
// what it says: prose that states another number, or the opposite, is safety, as
// a tool is that carries a hazard, in the place of another.
func (c *comparison) changed(f, g fact, before, after string) {
	class := graver(f.class, g.class)
	old, new := quantities(before, c.a.mark), quantities(after, c.b.mark)
	measured := !slices.EqualFunc(old, new, func(x, y quantity.Band) bool { return exact(x) == exact(y) })
	takes := c.a.takes(before) || c.b.takes(after)
	switch {
	case class == Wording && (!slices.Equal(numbers(c.key(c.a, before)), numbers(c.key(c.b, after))) || turned(before, after)),
		class == Method && !slices.Equal(c.a.risks(before), c.b.risks(after)),
		class == Method && measured && !takes && f.what != "facts":
		class = Safety
	}
	if f.what == "pack" && class == Safety && c.stockOnly() {
		class = Method
	}
	switch {
	case after == "" && c.b.lacks(c.is):
		after = unknown
	case before == "" && c.a.lacks(c.was):
		before = unknown
	}
	c.report(class, f.what, before, after, how(before, after, c.a.mark, c.b.mark))
}
