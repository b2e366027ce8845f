package unit

import (
	"cmp"
	"regexp"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
)

// Read converts a unit.yaml whose numbers use the decimal mark of the shop. It
// reports unreadable parts and leaves them out. A nil tree gives nil.
func Read(t *syntax.Tree, mark quantity.DecimalMark, msgs *diag.List) *Unit {
	if t == nil {
		return nil
	}
	return FromNode(t.Root, &value.Reader{Mark: mark, Msgs: msgs, SchemaRefused: t.Refused})
}

// FromNode converts a mapping that describes a unit, as in a procedure that
// has no unit.yaml. It reports unreadable parts and leaves them out. A nil
// node gives nil.
func FromNode(n *syntax.Node, read *value.Reader) *Unit {
	if n == nil {
		return nil
	}
	r := reader{Reader: read}
	u := &Unit{ID: r.Text(n.Get("unit")), Title: r.Text(n.Get("title")), Note: r.Text(n.Get("note")), File: n.File, Root: n}
	r.unit = u
	if u.ID != "" {
		r.ID(u.ID, n.Get("unit").Place())
	}
	for _, f := range r.entries(n.Get("variants")) {
		v := &Variant{ID: f.Key, Serials: r.Text(f.Value.Get("serials")), Title: r.Name(f, "title"), At: r.Key(f)}
		if v.Serials != "" {
			v.serialsAt = f.Value.Get("serials").Place()
		}
		u.Variants = append(u.Variants, v)
	}
	r.serials(u.Variants)
	for _, f := range r.entries(n.Get("parts")) {
		u.Parts = append(u.Parts, r.part(f))
	}
	for _, f := range r.entries(n.Get("fasteners")) {
		u.Fasteners = append(u.Fasteners, r.fastener(f))
	}
	for _, f := range r.entries(n.Get("gears")) {
		u.Gears = append(u.Gears, r.pair(f))
	}
	for _, f := range r.entries(n.Get("packs")) {
		u.Packs = append(u.Packs, r.pack(f))
	}
	for _, g := range u.Gears {
		r.contacts(g)
	}
	for _, f := range r.entries(n.Get("limits")) {
		u.Limits = append(u.Limits, r.limit(f))
	}
	if c := n.Get("test-cap"); c != nil && r.Require(c, "gas") {
		if gas := r.Value(c.Get("gas"), quantity.Pressure); gas != nil {
			u.TestCap = &TestCap{*gas, r.Text(c.Get("source")), c.Get("gas").Place()}
		}
	}
	r.dependencies(n.Get("depends-on"))
	for _, f := range r.entries(n.Get("jobs")) {
		u.Jobs = append(u.Jobs, r.job(f))
	}
	r.twins()
	for _, p := range u.Parts {
		if m := p.Node.Get("matched-with"); p.MatchedWith != "" {
			r.KnownName("part-unknown", "part", m, u.PartIDs(), "parts")
		}
	}
	return u
}

type reader struct {
	*value.Reader
	unit *Unit
}

// forPart returns a reader for a part that is marked as bad on its own.
func (r reader) forPart() reader { return reader{r.ForPart(), r.unit} }

// entries returns the fields of a section and checks that their keys are ids.
func (r reader) entries(n *syntax.Node) []syntax.Field {
	fields := r.Fields(n)
	for _, f := range fields {
		r.ID(f.Key, r.Key(f))
		r.Mapping(f.Value)
	}
	return fields
}

// only reads the ids of the variants to which a thing applies.
func (r reader) only(n *syntax.Node) []string {
	for _, v := range r.List(n) {
		r.variant(syntax.Field{Key: r.Text(v), KeySpan: v.Span, Value: v})
	}
	return r.Texts(n)
}

// variant reports an undeclared variant, unless the declared ones could not be
// read.
func (r reader) variant(f syntax.Field) {
	if n := r.unit.Root.Get("variants"); n == nil || n.Kind == syntax.Mapping {
		r.KnownKey("variant-unknown", "variant", f, r.unit.VariantIDs(), "variants")
	}
}

func (r reader) part(f syntax.Field) *Part {
	n := f.Value
	return &Part{
		ID: f.Key, Name: r.Name(f, "name"), Number: r.Text(n.Get("number")),
		Count: r.Count(n.Get("count"), 1), Renew: value.OneOf(r.Reader, n.Get("renew"), "always") != "",
		MatchedWith: r.Text(n.Get("matched-with")), Mass: r.Value(n.Get("mass"), quantity.Mass),
		Tray: r.Text(n.Get("tray")), Kind: value.OneOf(r.Reader, n.Get("kind"), Bearing, Race, Seal), Material: r.material(n.Get("material")),
		MaxHeat: r.Value(n.Get("max-heat"), quantity.Temperature), HeatSource: r.Text(n.Get("max-heat-source")),
		HeatBecause: r.Text(n.Get("max-heat-because")), Only: r.only(n.Get("only")), At: r.Key(f), Node: n,
	}
}

func (r reader) material(n *syntax.Node) Material {
	n = r.Mapping(n)
	m := Material{r.Positive(n.Get("expansion"), quantity.Expansion, "an expansion is", "check it again: steel has about `11.7e-6 /°C`"),
		r.Positive(n.Get("modulus"), quantity.Pressure, "a modulus is", "check it again: steel has about `207 GPa`"),
		r.Number(n.Get("poisson")), r.Text(n.Get("source"))}
	if n != nil && m.Source == "" {
		r.Msgs.Report("source-missing", n.Place(), "add `source:` to the material: published values differ by a tenth", "these numbers of a material have no source")
	}
	return m
}

// threadX matches the x in a thread designation: M24x1.5.
var threadX = regexp.MustCompile(`([0-9]) ?[xX*] ?([0-9])`)

func (r reader) fastener(f syntax.Field) *Fastener {
	n := f.Value
	out := &Fastener{
		ID: f.Key, Name: r.Name(f, "name"), Thread: threadX.ReplaceAllString(r.Text(n.Get("thread")), "$1×$2"),
		Class: r.Text(n.Get("class")), Count: r.Count(n.Get("count"), 1),
		Hand: cmp.Or(value.OneOf(r.Reader, n.Get("hand"), RightHand, LeftHand), RightHand), SeenFrom: r.Text(n.Get("seen-from")), AcrossFlats: r.Value(n.Get("across-flats"), quantity.Length), Drive: value.OneOf(r.Reader, n.Get("drive"), Hex, Socket, Special),
		Pattern: value.OneOf(r.Reader, n.Get("pattern"), Circle, Rectangle, Row), Duty: value.OneOf(r.Reader, n.Get("duty"), duties...),
		NutFactor: r.Number(n.Get("nut-factor")), NutFactorSource: r.Text(n.Get("nut-factor-source")),
		Only: r.only(n.Get("only")), At: r.Key(f), Node: n,
	}
	if out.NutFactor != nil && out.NutFactorSource == "" {
		r.Msgs.Report("source-missing", n.KeyPlace("nut-factor"), "add `nut-factor-source:` with where it comes from", "the nut factor has no source")
	}
	return out
}

func (r reader) pack(f syntax.Field) *Pack {
	n := f.Value
	out := &Pack{
		ID: f.Key, Name: r.Name(f, "name"), Location: r.Text(n.Get("sits")), Between: r.Texts(n.Get("between")),
		Reading: r.Text(n.Get("reading")), MoreShim: value.OneOf(r.Reader, n.Get("more-shim"), Opens, Closes, Raises, Lowers),
		MovesGear: value.OneOf(r.Reader, n.Get("moves"), PinionGear, LargeGear), Gears: r.Text(n.Get("gears")),
		SafeSide: value.OneOf(r.Reader, n.Get("safe-side"), More, Less), Only: r.only(n.Get("only")), At: r.Key(f), Node: n,
	}
	if out.Gears != "" {
		r.KnownName("part-unknown", "gear pair", n.Get("gears"), r.unit.PairIDs(), "gears")
	}
	if rate := n.Get("rate"); r.Text(rate) == "theory" {
		out.RateFromGears = true
	} else {
		out.Rate = r.Number(rate)
	}
	if out.Rate != nil && out.Rate.Sign() <= 0 {
		r.Refuse("quantity-malformed", n.Get("rate").Place(), "write how far the reading moves; `more-shim:` says which way", "a rate must be greater than zero, without a sign")
		out.Rate = nil
	}
	return out
}

func (r reader) pair(f syntax.Field) *Pair {
	n := f.Value
	radius := r.Mapping(n.Get("pitch-radius"))
	angle := func(key string) *quantity.Value { return r.Value(n.Get(key), quantity.Angle) }
	out := &Pair{
		ID: f.Key, Name: r.Name(f, "name"), Module: r.Positive(n.Get("module"), quantity.Length, "a module is", "look it up again, such as `4 mm`"),
		DiametralPitch: r.Number(n.Get("diametral-pitch")), PressureAngle: angle("pressure-angle"),
		Spiral: angle("spiral"), ShaftAngle: angle("shaft-angle"),
		PinionRadius: r.Positive(radius.Get("pinion"), quantity.Length, "a pitch radius is", "look it up again, such as `36 mm`"),
		GearRadius:   r.Positive(radius.Get("gear"), quantity.Length, "a pitch radius is", "look it up again, such as `72 mm`"),
		DriveSide:    r.Text(n.Get("drive-side")),
		At:           r.Key(f), Node: n,
	}
	if teeth := r.Pair(n.Get("teeth"), "write the teeth of the pinion and of the gear, as in `[9, 41]`"); teeth != nil {
		out.Teeth = [2]int{r.Count(teeth[0], 0), r.Count(teeth[1], 0)}
	}
	return out
}

// twins warns of a part and a fastener of one id, which are one thing, whose
// names or counts differ.
func (r reader) twins() {
	for _, f := range r.unit.Fasteners {
		part := r.unit.Part(f.ID)
		if part == nil {
			continue
		}
		for _, t := range []struct {
			key    string
			differ bool
		}{{"count", part.Count != f.Count}, {"name", !strings.EqualFold(part.Name, f.Name)}} {
			if a, b := part.Node.Get(t.key), f.Node.Get(t.key); t.differ && a != nil && b != nil {
				d := r.Msgs.Report("twin-differs", b.Place(), "look it up again, or give one of them an id of its own", "the part `%s` has another %s, `%s`", f.ID, t.key, a.Text)
				d.Related = append(d.Related, diag.Related{At: a.Place(), Message: "the part's stands here"})
			}
		}
	}
}

// dependencies reads which changes void the measurement of a limit.
func (r reader) dependencies(n *syntax.Node) {
	u := r.unit
	have := slices.Concat(u.PartIDs(), u.PackIDs(), u.FastenerIDs(), u.LimitIDs())
	for _, f := range r.Fields(n) {
		r.KnownKey("limit-unknown", "limit", f, u.LimitIDs(), "limits")
		for _, on := range r.List(f.Value) {
			r.KnownName("part-unknown", "part, pack, fastener or limit", on, have, "parts")
		}
		u.DependsOn = append(u.DependsOn, &Dependency{f.Key, r.Texts(f.Value), r.Key(f)})
	}
}

func (r reader) job(f syntax.Field) *Job {
	job := &Job{ID: f.Key, Title: r.Name(f, "title"), At: r.Key(f)}
	for _, c := range r.List(f.Value.Get("cards")) {
		job.Cards = append(job.Cards, CardRef{r.Text(c), c.Place()})
	}
	return job
}
