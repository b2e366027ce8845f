package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strings"
)

const namespace = "http://www.w3.org/2000/svg"

// A reader walks a file once, from top to bottom.
type reader struct {
	data    []byte
	out     Drawing
	points  int
	open    []frame
	ended   bool // the root was closed
	text    *line
	refused []Refusal
	seen    map[Refusal]bool // of those, without their places

	minX, minY float64 // of the view box
	scale      float64 // steps to a unit
}

// A frame is an open element with what holds in it.
type frame struct {
	name   string
	style  style
	matrix matrix
}

// refuse notes what is not drawn, once for each thing.
func (r *reader) refuse(kind Kind, element, what string, start, end int) {
	f := Refusal{Kind: kind, Element: element, What: what}
	if r.seen[f] {
		return
	}
	r.seen[f] = true
	f.Start, f.End = start, max(start, end)
	r.refused = append(r.refused, f)
}

// top returns the innermost open element.
func (r *reader) top() *frame { return &r.open[len(r.open)-1] }

func (r *reader) read() {
	d := xml.NewDecoder(bytes.NewReader(bytes.TrimPrefix(r.data, []byte("\uFEFF"))))
	mark := len(r.data) - len(bytes.TrimPrefix(r.data, []byte("\uFEFF")))
	skip, depth := 0, 0 // elements that are open, and of those the ones passed over
	for {
		start := mark + int(d.InputOffset())
		token, err := d.Token()
		end := mark + int(d.InputOffset())
		if err != nil {
			r.broken(err, end)
			return
		}
		switch t := token.(type) {
		case xml.StartElement:
			if depth++; depth > MaxDepth {
				r.refuse(TooLarge, t.Name.Local, "depth", start, end)
				return
			}
			if skip > 0 || r.pass(t) {
				skip++
				continue
			}
			e := r.element(t, start, end)
			if !r.begin(e) {
				skip = 1
			}
		case xml.EndElement:
			depth--
			if skip > 0 {
				skip--
			} else {
				r.end()
			}
		case xml.CharData:
			if r.text != nil && skip == 0 {
				r.says(string(t), start, end)
			}
		case xml.Directive:
			r.refuse(Declared, "", "DOCTYPE", start, end)
		case xml.ProcInst:
			if t.Target != "xml" {
				r.refuse(Declared, "", t.Target, start, end)
			}
		}
		if len(r.out.Shapes) > MaxShapes {
			r.refuse(TooLarge, "", "shapes", start, end)
			return
		}
		if r.points > MaxPoints {
			r.refuse(TooLarge, "", "points", start, end)
			return
		}
	}
}

// broken notes why the walk ended, if not at the file's end.
func (r *reader) broken(err error, at int) {
	var syntax *xml.SyntaxError
	switch {
	case errors.Is(err, io.EOF):
		if !r.ended && len(r.refused) == 0 {
			r.refuse(NotSVG, "", "", 0, 0)
		}
	case errors.As(err, &syntax):
		at = len(bytes.TrimRight(r.data[:at], " \t\r\n"))
		r.refuse(Malformed, "", syntax.Msg, at, at)
	default:
		r.refuse(Malformed, "", err.Error(), at, at)
	}
}

// pass reports whether an element is one that nobody sees: of another
// namespace, as editors write them, or a word about the drawing.
func (r *reader) pass(t xml.StartElement) bool {
	if len(r.open) == 0 {
		return false
	}
	switch t.Name.Local {
	case "title", "desc", "metadata":
		return true
	}
	return foreign(t.Name)
}

func foreign(n xml.Name) bool { return n.Space != namespace && n.Space != "" }

// element returns a start tag with the attributes that count.
func (r *reader) element(t xml.StartElement, start, end int) *element {
	e := &element{name: t.Name.Local, foreign: foreign(t.Name), start: start, end: end}
	spans := places(string(r.data[start:end]))
	for i, a := range t.Attr {
		if a.Name.Space != "" || a.Name.Local == "xmlns" {
			continue
		}
		n := attribute{name: a.Name.Local, value: a.Value, start: start, end: end}
		if i < len(spans) {
			n.start, n.end = start+spans[i][0], start+spans[i][1]
			n.exact = string(r.data[n.start:n.end]) == n.value
		}
		if _, twice := e.get(n.name); twice {
			r.refuse(Twice, e.name, n.name, n.start, n.end)
			continue
		}
		e.attributes = append(e.attributes, n)
	}
	return e
}

// begin opens an element. It reports false where that is refused with all that
// stands in it.
func (r *reader) begin(e *element) bool {
	if len(r.open) == 0 {
		if r.ended || e.foreign || e.name != "svg" {
			r.refuse(NotSVG, e.name, "", e.start, e.end)
			return false
		}
		f := frame{"svg", initial, unmoved}
		r.attributes(e, &f, "width", "height", "viewBox", "x", "y")
		r.box(e)
		r.open = append(r.open, f)
		return true
	}
	f := *r.top()
	inText := f.name == "text" || f.name == "tspan"
	parent, shape := shapes[f.name], shapes[e.name]
	f.name = e.name
	switch {
	case inText != (e.name == "tspan"), parent.draw != nil, r.within("defs"):
		r.refuse(Element, e.name, "", e.start, e.end)
		return false
	case e.name == "g":
		r.attributes(e, &f)
	case e.name == "defs": // an empty one, as editors leave it
	case e.name == "text":
		r.attributes(e, &f, "x", "y")
		r.beginText(e, f)
	case e.name == "tspan":
		r.attributes(e, &f, "x", "y")
		r.beginSpan(e, f)
	case shape.draw != nil:
		r.attributes(e, &f, shape.attributes...)
		r.shape(e, f, shape)
	default:
		r.refuse(Element, e.name, "", e.start, e.end)
		return false
	}
	r.open = append(r.open, f)
	return true
}

// within reports whether an element of that name is open.
func (r *reader) within(name string) bool {
	for _, f := range r.open {
		if f.name == name {
			return true
		}
	}
	return false
}

// end closes the innermost element.
func (r *reader) end() {
	f := *r.top()
	r.open = r.open[:len(r.open)-1]
	switch f.name {
	case "svg":
		r.ended = true
	case "tspan":
		r.flush()
	case "text":
		r.flush()
		r.text = nil
	}
}

// silent are attributes that say nothing of the look where style sheets are
// refused.
var silent = map[string]bool{"id": true, "class": true, "version": true, "baseProfile": true, "lang": true, "role": true,
	"tabindex": true, "preserveAspectRatio": true, "contentScriptType": true, "contentStyleType": true, "zoomAndPan": true}

// attributes works an element's attributes into what holds in it; those that
// it takes as its own are left to the caller.
func (r *reader) attributes(e *element, f *frame, own ...string) {
	known := map[string]bool{}
	for _, name := range own {
		known[name] = true
	}
	for _, a := range e.attributes {
		switch {
		case known[a.name], silent[a.name], a.name == "style",
			strings.HasPrefix(a.name, "data-"), strings.HasPrefix(a.name, "aria-"):
		case a.name == "transform":
			s := scanner{text: a.value}
			m, ok := s.transform()
			if !ok {
				from, to := a.word(s.at)
				r.refuse(Value, e.name, a.name, from, to)
			}
			f.matrix = f.matrix.times(m)
		case isProperty(a.name):
			if !f.style.set(a.name, strings.TrimSpace(a.value)) {
				r.refuse(Value, e.name, a.name, a.start, a.end)
			}
		default:
			r.refuse(Attribute, e.name, a.name, a.start, a.end)
		}
	}
	if a, ok := e.get("style"); ok { // it has the last word
		r.declarations(e, a, &f.style)
	}
}

// declarations works the properties of a style attribute in.
func (r *reader) declarations(e *element, a attribute, s *style) {
	at := 0
	for part := range strings.SplitSeq(a.value, ";") {
		from := at + len(part) - len(strings.TrimLeft(part, " \t\r\n"))
		at += len(part) + 1
		part = strings.TrimSpace(part)
		if part == "" {
			continue
		}
		name, value, _ := strings.Cut(part, ":")
		name, value = strings.TrimSpace(name), strings.TrimSpace(value)
		start, end := a.within(from, from+len(part))
		switch {
		case strings.HasPrefix(name, "-"): // an editor's own
		case !isProperty(name):
			r.refuse(Attribute, e.name, name, start, end)
		case !s.set(name, value):
			r.refuse(Value, e.name, name, start, end)
		}
	}
}

// box reads how large the drawing is.
func (r *reader) box(e *element) {
	var w, h float64
	if a, ok := e.get("viewBox"); ok {
		s := scanner{text: a.value}
		v, ok := s.numbers()
		if !ok || len(v) != 4 || v[2] <= 0 || v[3] <= 0 {
			from, to := a.word(s.at)
			r.refuse(Value, e.name, a.name, from, to)
			return
		}
		r.minX, r.minY, w, h = v[0], v[1], v[2], v[3]
	} else {
		wide, _ := e.get("width")
		high, _ := e.get("height")
		var ok, too bool
		w, ok = length(wide.value)
		h, too = length(high.value)
		if !ok || !too || w <= 0 || h <= 0 {
			r.refuse(NoSize, e.name, "", e.start, e.end)
			return
		}
	}
	r.scale = Side / max(w, h)
	r.out.W, r.out.H = whole(mul(w, r.scale)), whole(mul(h, r.scale))
	if min(r.out.W, r.out.H) < Side/100 || max(math.Abs(r.minX), math.Abs(r.minY)) > 100*max(w, h) {
		r.refuse(NoSize, e.name, "", e.start, e.end)
	}
}

func whole(v float64) int { return int(math.Round(v)) }

// steps returns a place of the file in steps, false if it is far from the view
// box.
func (r *reader) steps(m matrix, x, y float64) (int, int, bool) {
	x, y = m.point(x, y)
	x, y = mul(x-r.minX, r.scale), mul(y-r.minY, r.scale)
	if !(math.Abs(x) <= 4*Side && math.Abs(y) <= 4*Side) {
		return 0, 0, false
	}
	return whole(x), whole(y), true
}
