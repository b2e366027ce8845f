package svg

import (
	"slices"
	"strconv"
	"strings"
)

// A style is the properties that an element hands down.
type style struct {
	fill, stroke, color Color
	width               float64 // of the stroke
	dash                []float64
	cap                 Cap
	join                Join
	evenOdd             bool
	size                float64 // of text
	weight              int
	anchor              Anchor
}

// initial is what holds where a file says nothing.
var initial = style{fill: 0, stroke: None, color: Ink, width: 1, size: 16, weight: 400}

// properties are those that are drawn: each reads a value and reports whether
// it could.
var properties = map[string]func(*style, string) bool{
	"fill":             func(s *style, v string) bool { return paint(&s.fill, v) },
	"stroke":           func(s *style, v string) bool { return paint(&s.stroke, v) },
	"color":            func(s *style, v string) bool { return v != "none" && v != "currentColor" && paint(&s.color, v) },
	"stroke-width":     func(s *style, v string) bool { return size(&s.width, v, 0) },
	"font-size":        func(s *style, v string) bool { return size(&s.size, v, 1e-6) },
	"stroke-dasharray": (*style).dashes,
	"font-weight":      (*style).heavy,
	"stroke-linecap":   func(s *style, v string) bool { return choose(&s.cap, v, "butt", "round") },
	"stroke-linejoin":  func(s *style, v string) bool { return choose(&s.join, v, "miter", "round") },
	"fill-rule": func(s *style, v string) bool {
		s.evenOdd = v == "evenodd"
		return s.evenOdd || v == "nonzero"
	},
	"text-anchor": func(s *style, v string) bool { return choose(&s.anchor, v, "start", "middle", "end") },
}

// unseen are properties that editors write, with the values that change
// nothing of what is drawn here; none listed stands for any.
var unseen = map[string][]string{
	"opacity": {"1", "1.0", "100%"}, "fill-opacity": {"1", "1.0", "100%"}, "stroke-opacity": {"1", "1.0", "100%"},
	"stroke-miterlimit": {"4"}, "stroke-dashoffset": {"0", "0px"}, "vector-effect": {"none"},
	"display": {"inline", "block"}, "visibility": {"visible"}, "overflow": nil, "isolation": {"auto"}, "mix-blend-mode": {"normal"},
	"filter": {"none"}, "mask": {"none"}, "clip-path": {"none"}, "clip-rule": nil,
	"marker": {"none"}, "marker-start": {"none"}, "marker-mid": {"none"}, "marker-end": {"none"},
	"paint-order": {"normal", "fill", "fill stroke", "fill stroke markers"},
	// What the card's own type decides.
	"font-family": nil, "font-stretch": {"normal"}, "font-style": {"normal"}, "font-variant": {"normal"}, "line-height": nil,
	"letter-spacing": {"normal", "0", "0px"}, "word-spacing": {"normal", "0", "0px"},
	"text-decoration": {"none"}, "text-transform": {"none"}, "text-indent": {"0", "0px"}, "text-align": nil,
	"dominant-baseline": {"auto", "alphabetic"}, "baseline-shift": {"baseline", "0"}, "white-space": nil,
	"writing-mode": {"lr-tb", "horizontal-tb"}, "direction": {"ltr"}, "unicode-bidi": {"normal"},
	"font-kerning": nil, "font-feature-settings": {"normal"}, "font-variant-ligatures": nil, "font-variant-caps": {"normal"},
	"font-variant-numeric": nil, "font-variant-east-asian": nil,
	// How a screen goes about it.
	"shape-rendering": nil, "text-rendering": nil, "image-rendering": nil, "color-rendering": nil,
	"color-interpolation": nil, "color-interpolation-filters": nil, "pointer-events": nil, "cursor": nil,
	"stop-color": nil, "stop-opacity": nil, "solid-color": nil, "solid-opacity": nil, "flood-color": nil, "flood-opacity": nil,
	"enable-background": nil,
}

// isProperty reports whether an attribute or a part of a style is a property
// that set knows.
func isProperty(name string) bool {
	_, ok := unseen[name]
	return ok || properties[name] != nil
}

// set gives a property its value and reports whether that can be drawn.
func (s *style) set(name, value string) bool {
	if value == "inherit" && properties[name] != nil {
		return true // each of them is handed down as it is
	}
	if read := properties[name]; read != nil {
		return read(s, value)
	}
	allowed := unseen[name]
	return allowed == nil || slices.Contains(allowed, strings.ToLower(value))
}

// names of colors: the sixteen of HTML 4, and orange.
var names = map[string]Color{
	"black": 0x000000, "silver": 0xC0C0C0, "gray": 0x808080, "grey": 0x808080, "white": 0xFFFFFF, "maroon": 0x800000,
	"red": 0xFF0000, "purple": 0x800080, "fuchsia": 0xFF00FF, "green": 0x008000, "lime": 0x00FF00, "olive": 0x808000,
	"yellow": 0xFFFF00, "navy": 0x000080, "blue": 0x0000FF, "teal": 0x008080, "aqua": 0x00FFFF, "orange": 0xFFA500,
	"none": None, "currentcolor": current,
}

func paint(c *Color, v string) bool {
	v = strings.ToLower(v)
	if named, ok := names[v]; ok {
		*c = named
		return true
	}
	hex, ok := strings.CutPrefix(v, "#")
	if len(hex) == 3 {
		hex = string([]byte{hex[0], hex[0], hex[1], hex[1], hex[2], hex[2]})
	}
	n, err := strconv.ParseUint(hex, 16, 24)
	if !ok || len(hex) != 6 || err != nil {
		return false
	}
	*c = Color(n)
	return true
}

// drawn returns the color that a paint stands for.
func (s *style) drawn(c Color) Color {
	if c == current {
		return s.color
	}
	return c
}

func size(to *float64, v string, least float64) bool {
	n, ok := length(v)
	if !ok || n < least {
		return false
	}
	*to = n
	return true
}

func choose[T ~uint8](to *T, v string, words ...string) bool {
	i := slices.Index(words, v)
	if i < 0 {
		return false
	}
	*to = T(i)
	return true
}

// dashes reads 1, 2 or 4 lengths; one stands for stroke and gap alike.
func (s *style) dashes(v string) bool {
	if v == "none" {
		s.dash = nil
		return true
	}
	var list []float64
	sum := 0.0
	for _, word := range strings.FieldsFunc(v, func(r rune) bool { return r == ',' || r == ' ' || r == '\t' || r == '\n' }) {
		n, ok := length(word)
		if !ok || n < 0 {
			return false
		}
		list = append(list, n)
		sum += n
	}
	switch {
	case len(list) == 1:
		list = append(list, list[0])
	case len(list) != 2 && len(list) != 4:
		return false
	}
	s.dash = list
	if sum == 0 { // as SVG has it: a full line
		s.dash = nil
	}
	return true
}

func (s *style) heavy(v string) bool {
	switch v {
	case "normal":
		s.weight = 400
		return true
	case "bold":
		s.weight = 700
		return true
	}
	n, err := strconv.Atoi(v)
	if err != nil || n < 100 || n > 900 {
		return false
	}
	s.weight = n
	return true
}
