package svg

import "strings"

// A line is the text that is being read: one level line with one look.
type line struct {
	x, y       float64
	frame      frame
	element    *element
	says       strings.Builder
	start, end int  // of what it says
	ended      bool // another line must be given its own place
}

func (r *reader) beginText(e *element, f frame) {
	v, _ := r.numbers(e, 2, "x", "y")
	r.text = &line{x: v[0], y: v[1], frame: f, element: e}
}

// beginSpan begins a tspan. One with a place of its own is another line; one
// without must be the whole of its line.
func (r *reader) beginSpan(e *element, f frame) {
	_, placed := e.get("x")
	y, moved := e.get("y")
	if placed {
		r.flush()
		at := *e
		v, _ := r.numbers(&at, 2, "x", "y")
		if !moved {
			v[1] = r.text.y
		}
		r.text = &line{x: v[0], y: v[1], frame: f, element: e}
		return
	}
	if r.text.ended || strings.TrimSpace(r.text.says.String()) != "" {
		r.refuse(TextParted, e.name, "", e.start, e.end)
		return
	}
	if moved {
		v, ok := length(y.value)
		if !ok {
			r.refuse(Value, e.name, "y", y.start, y.end)
		}
		r.text.y = v
	}
	r.text.frame, r.text.element = f, e
}

// says adds to the line.
func (r *reader) says(text string, start, end int) {
	t := r.text
	if strings.TrimSpace(text) != "" {
		if t.ended {
			r.refuse(TextParted, r.top().name, "", start, end)
			return
		}
		if t.end == 0 {
			t.start = start
		}
		t.end = end
	}
	t.says.WriteString(text)
}

// flush ends the line and adds it to the drawing.
func (r *reader) flush() {
	t := r.text
	if t.ended {
		return
	}
	t.ended = true
	says := strings.Join(strings.Fields(t.says.String()), " ")
	s, name := &t.frame.style, t.element.name
	if says == "" || r.scale == 0 {
		return
	}
	x, y, near := r.steps(t.frame.matrix, t.x, t.y)
	scale, _ := t.frame.matrix.even()
	out := &Text{X: x, Y: y, Anchor: s.anchor, Weight: s.weight, Fill: s.drawn(s.fill), Says: says, Start: t.start, End: t.end}
	out.Size = whole(min(mul(mul(s.size, scale), r.scale), 4*Side))
	switch {
	case s.drawn(s.stroke) != None && s.width > 0:
		r.refuse(TextStroked, name, "", t.element.start, t.element.end)
	case !t.frame.matrix.level():
		r.refuse(TextTurned, name, "", t.element.start, t.element.end)
	case !near, x < 0, y < 0, x > r.out.W, y > r.out.H:
		r.refuse(Outside, name, "", t.element.start, t.element.end)
	case out.Fill == None:
	default:
		r.out.Shapes = append(r.out.Shapes, out)
	}
}
