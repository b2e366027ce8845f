package render

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"sync"
)

// Canonical returns the content of a deck before layout as text: a line for
// the running head and for each section, group and element, marked technical
// (T) or wording (W). Decks with different content have different texts.
// Running.Variant is left out so that the decks of two variants can be
// compared, as are references and the way a text is divided into runs; apart
// from these, decks with equal texts give equal faces.
func Canonical(d Deck) string {
	var c canon
	r := d.Running
	c.line(Technical, "card", "number", r.Number, "unit", r.Unit, "revision", r.Revision, "date", r.Date, "watch", r.Watch, "boxes", r.Boxes)
	c.line(Wording, "card", "title", r.Title, "note", r.Note, "subject", d.Subject, "language", d.Language)
	c.line(Wording, "words", "", d.Words)
	for _, s := range d.Sections {
		c.line(Technical, "section", "name", s.Name, "follows", s.Follows, "small", s.Small)
		for _, g := range s.Groups {
			c.line(Technical, "group", "anchor", g.Anchor, "join", g.Join, "with", g.With, "breaks", g.Breaks, "wide", g.Wide)
			if g.Bookmark != "" {
				c.line(Wording, "bookmark", "text", g.Bookmark)
			}
			for _, e := range g.Elements {
				c.element(e)
			}
		}
	}
	return string(c.text)
}

// CanonicalElement returns the line of one element in the canonical text,
// without a newline.
func CanonicalElement(e Element) string {
	var c canon
	c.element(e)
	return string(c.text[:len(c.text)-1])
}

// Kind returns the type name of a content in lower case: "step", "hazards".
func Kind(c Content) string {
	if c == nil {
		return "nothing"
	}
	return strings.ToLower(reflect.TypeOf(c).Name())
}

// A canon builds a canonical text by reflection. A struct is written as its
// fields in order, each with its name, a list as its elements in brackets.
// Empty fields are left out, but not empty elements. Strings are quoted so
// that no text can look like structure.
type canon struct{ text []byte }

// line writes a line: class, name, then alternating keys and values. The
// fields of a value without a key are written on the line itself.
func (c *canon) line(class Class, name string, pairs ...any) {
	c.text = append(c.text, "TW"[min(class, Wording)], ' ')
	c.text = append(c.text, name...)
	for i := 0; i+1 < len(pairs); i += 2 {
		key, v := pairs[i].(string), reflect.ValueOf(pairs[i+1])
		switch {
		case !v.IsValid():
		case key == "":
			c.fields(v)
		default:
			c.field(key, v)
		}
	}
	c.text = append(c.text, '\n')
}

func (c *canon) element(e Element) { c.line(e.Class, Kind(e.Content), "", e.Content) }

func (c *canon) field(name string, v reflect.Value) {
	if empty(v) {
		return
	}
	if c.text[len(c.text)-1] != '(' {
		c.text = append(c.text, ' ')
	}
	c.text = append(append(c.text, name...), '=')
	c.value(v)
}

// fields writes the nonempty fields of a struct.
func (c *canon) fields(v reflect.Value) {
	for _, f := range canonFields(v.Type()) {
		c.field(f.name, v.Field(f.index))
	}
}

// value writes a value, even an empty one.
func (c *canon) value(v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		c.text = strconv.AppendQuote(c.text, v.String())
	case reflect.Bool:
		c.text = strconv.AppendBool(c.text, v.Bool())
	case reflect.Int:
		c.text = strconv.AppendInt(c.text, v.Int(), 10)
	case reflect.Uint8:
		c.text = strconv.AppendUint(c.text, v.Uint(), 10)
	case reflect.Pointer:
		c.value(v.Elem())
	case reflect.Struct:
		c.text = append(c.text, '(')
		c.fields(v)
		c.text = append(c.text, ')')
	case reflect.Slice:
		switch v.Type() {
		case runsType:
			c.runs(v.Interface().([]Run))
			return
		case fileType:
			sum := sha256.Sum256(v.Bytes())
			c.text = hex.AppendEncode(c.text, sum[:])
			return
		}
		c.text = append(c.text, '[')
		for i := range v.Len() {
			if i > 0 {
				c.text = append(c.text, ' ')
			}
			c.value(v.Index(i))
		}
		c.text = append(c.text, ']')
	default:
		panic(fmt.Sprintf("render: the canonical text cannot show a %s", v.Type()))
	}
}

// runs writes text, with runs of equal style joined.
func (c *canon) runs(runs []Run) {
	c.text = append(c.text, '[')
	for i := 0; i < len(runs); {
		r := runs[i]
		for i++; i < len(runs) && (runs[i].Text == "" || runs[i].like(r)); i++ {
			r.Text += runs[i].Text
		}
		if r.Text == "" {
			continue
		}
		if c.text[len(c.text)-1] != '[' {
			c.text = append(c.text, ' ')
		}
		c.text = append(c.text, [...]string{Regular: "", Semibold: "+", Bold: "*"}[min(r.Weight, Bold)]...)
		if r.Code {
			c.text = append(c.text, '#')
		}
		if r.Struck {
			c.text = append(c.text, '~')
		}
		c.text = strconv.AppendQuote(c.text, r.Text)
		if r.Link != "" {
			c.text = strconv.AppendQuote(append(c.text, '@'), r.Link)
		}
	}
	c.text = append(c.text, ']')
}

// like reports whether two runs have the same style.
func (r Run) like(s Run) bool {
	return r.Weight == s.Weight && r.Code == s.Code && r.Struck == s.Struck && r.Link == s.Link
}

// empty reports whether a value has no content.
func empty(v reflect.Value) bool {
	if v.Kind() != reflect.Slice {
		return v.IsZero()
	}
	if v.Type() == runsType {
		for _, r := range v.Interface().([]Run) {
			if r.Text != "" {
				return false
			}
		}
		return true
	}
	return v.Len() == 0
}

var (
	runsType = reflect.TypeFor[[]Run]()
	fileType = reflect.TypeFor[[]byte]()
	refType  = reflect.TypeFor[Ref]()
)

// A canonField is a struct field that is part of the canonical text.
type canonField struct {
	index int
	name  string
}

// canonFieldCache holds the canonFields of each type.
var canonFieldCache sync.Map

// canonFields returns the fields of a struct, without references.
func canonFields(t reflect.Type) []canonField {
	if known, ok := canonFieldCache.Load(t); ok {
		return known.([]canonField)
	}
	var all []canonField
	for i := range t.NumField() {
		if f := t.Field(i); f.IsExported() && f.Type != refType {
			all = append(all, canonField{i, strings.ToLower(f.Name)})
		}
	}
	canonFieldCache.Store(t, all)
	return all
}
