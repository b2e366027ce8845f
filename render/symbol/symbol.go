// Package symbol draws safety symbols according to the meanings registered in
// ISO 7010.
package symbol

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"sync"

	"benchwright/render/sheet"
)

// Safety colors, from memory or secondary sources. Word, border and shape
// carry the meaning on a black-and-white printer.
const (
	SafetyRed    sheet.Color = 0xBE192D
	SafetyOrange sheet.Color = 0xFF8200
	SafetyYellow sheet.Color = 0xF9A800
	SafetyBlue   sheet.Color = 0x0B5FA5
	inkBlack     sheet.Color = 0x111111
	inkWhite     sheet.Color = 0xFFFFFF
)

// A sign is the outline around a symbol's picture, whose shape and color tell
// the kind of message.
type sign uint8

const (
	warning     sign = iota // yellow triangle, black rim and picture
	mandatory               // blue disc, white picture
	prohibition             // white disc, black picture under a red ring with a bar
	octagon                 // red octagon, white rim and picture
	alertDanger             // safety alert triangle, on a panel of the color of its signal word
	alertWarning
	alertCaution
)

// A symbol is our own picture for the meaning of an ISO 7010 code. Parts are
// drawn in order, on a square of 1000 units.
type symbol struct {
	meaning string
	sign    sign
	parts   string
}

// Draw draws a symbol into the square with the given side whose top left
// corner is x, y. Codes are those of ISO 7010 (W012, M009, P003), "stop" for
// the octagon of a hold point, and the safety alert triangle: "alert" in the
// colors of a warning sign, "alert-danger", "alert-warning" and
// "alert-caution" for a panel in that word's color. It returns false for any
// other code.
func Draw(code string, x, y, size int) ([]sheet.Op, bool) {
	paths, ok := all()[code]
	if !ok {
		return nil, false
	}
	at := func(v, origin int) int { return origin + (v*size+500)/1000 }
	ops := make([]sheet.Op, len(paths))
	for i, p := range paths {
		segs := make([]sheet.Seg, len(p.Segs))
		for j, s := range p.Segs {
			segs[j] = sheet.Seg{Verb: s.Verb, X1: at(s.X1, x), Y1: at(s.Y1, y), X2: at(s.X2, x), Y2: at(s.Y2, y), X: at(s.X, x), Y: at(s.Y, y)}
		}
		p.Segs = segs
		p.StrokeWidth = (p.StrokeWidth*size + 500) / 1000
		ops[i] = p
	}
	return ops, true
}

// Codes returns the codes that Draw knows, sorted.
func Codes() []string { return slices.Sorted(maps.Keys(all())) }

// all parses the symbols, once per process. Their data is constant, and a test
// proves that it parses.
var all = sync.OnceValue(func() map[string][]sheet.Path {
	all := map[string][]sheet.Path{}
	for _, table := range []map[string]symbol{warningSymbols, mandatorySymbols, otherSymbols} {
		for code, s := range table {
			all[code], _ = s.paths()
		}
	}
	return all
})

// paths returns the sign with its picture.
func (s symbol) paths() ([]sheet.Path, error) {
	const triangle = "M 500 96 L 964 899 L 36 899 Z"
	ink, ground := inkBlack, SafetyYellow
	var before string
	switch s.sign {
	case warning:
		before = "hole " + triangle + "\nline62 " + triangle
	case mandatory:
		ink, ground = inkWhite, SafetyBlue
		before = "hole O 500 500 495"
	case prohibition:
		ground = inkWhite
		before = "hole O 500 500 495"
	case octagon:
		ink, ground = inkWhite, SafetyRed
		before = "hole M 295 5 L 705 5 L 995 295 L 995 705 L 705 995 L 295 995 L 5 705 L 5 295 Z\n" +
			"line24 M 310 45 L 690 45 L 955 310 L 955 690 L 690 955 L 310 955 L 45 690 L 45 310 Z"
	case alertDanger, alertWarning, alertCaution:
		ink, ground = inkBlack, [...]sheet.Color{SafetyRed, SafetyOrange, SafetyYellow}[s.sign-alertDanger]
		if s.sign == alertDanger {
			ink = inkWhite
		}
		before = "fill " + triangle + "\nline62 " + triangle
	}
	paths, err := parseParts(before+"\n"+s.parts, ink, ground)
	if s.sign == prohibition && err == nil {
		var ring []sheet.Path
		// The white beside the bar separates it from a black picture when
		// printed in gray.
		ring, err = parseParts("gap120 M 240 240 L 760 760\nline100 O 500 500 445\nline80 M 192 192 L 808 808", SafetyRed, ground)
		paths = append(paths, ring...)
	}
	return paths, err
}

// parseParts reads parts, one a line: how to paint, then an outline.
//
//	fill …      filled with the sign's ink
//	hole …      filled with the sign's ground
//	line40 …    an ink stroke 40 units wide, with round ends and joins
//	gap40 …     a stroke in the ground
//
// An outline is a run of M x y, L x y (repeated pairs go on), C x1 y1 x2 y2 x y,
// Z, O cx cy r (a circle), E cx cy rx ry (an ellipse), B x y w h r (a box with
// rounded corners).
func parseParts(parts string, ink, ground sheet.Color) ([]sheet.Path, error) {
	var paths []sheet.Path
	for line := range strings.Lines(parts) {
		how, outline, _ := strings.Cut(strings.TrimSpace(line), " ")
		if how == "" {
			continue
		}
		segs, err := parseOutline(outline)
		if err != nil {
			return nil, err
		}
		p := sheet.Path{Segs: segs, Fill: sheet.NoColor, Stroke: sheet.NoColor}
		kind := strings.TrimRight(how, "0123456789")
		switch kind {
		case "fill":
			p.Fill = ink
		case "hole":
			p.Fill = ground
		case "line":
			p.Stroke = ink
		case "gap":
			p.Stroke = ground
		default:
			return nil, fmt.Errorf("no way of painting is called %q", how)
		}
		if p.Fill == sheet.NoColor {
			if p.StrokeWidth, err = strconv.Atoi(how[len(kind):]); err != nil {
				return nil, err
			}
		}
		paths = append(paths, p)
	}
	return paths, nil
}

func parseOutline(outline string) ([]sheet.Seg, error) {
	var segs []sheet.Seg
	var verb byte
	words := strings.Fields(outline)
	for len(words) > 0 {
		if w := words[0]; len(w) == 1 && w[0] >= 'A' {
			verb, words = w[0], words[1:]
		}
		count, ok := map[byte]int{'M': 2, 'L': 2, 'C': 6, 'Z': 0, 'O': 3, 'E': 4, 'B': 5}[verb]
		if !ok || len(words) < count || len(segs) == 0 && strings.IndexByte("LCZ", verb) >= 0 {
			return nil, fmt.Errorf("outline %q fails at %q", outline, words)
		}
		n := make([]int, count)
		for i := range n {
			var err error
			if n[i], err = strconv.Atoi(words[i]); err != nil {
				return nil, err
			}
		}
		words = words[count:]
		switch verb {
		case 'M', 'L':
			segs = append(segs, sheet.Seg{Verb: verb, X: n[0], Y: n[1]})
		case 'C':
			segs = append(segs, sheet.Seg{Verb: 'C', X1: n[0], Y1: n[1], X2: n[2], Y2: n[3], X: n[4], Y: n[5]})
		case 'Z':
			segs = append(segs, sheet.Seg{Verb: 'Z'})
			verb = 0
		case 'O':
			segs = append(segs, ellipse(n[0], n[1], n[2], n[2])...)
		case 'E':
			segs = append(segs, ellipse(n[0], n[1], n[2], n[3])...)
		case 'B':
			segs = append(segs, sheet.Rect{X: n[0], Y: n[1], W: n[2], H: n[3], Radius: n[4]}.Outline()...)
		}
		if verb == 'M' {
			verb = 'L' // further pairs are lines
		}
	}
	return segs, nil
}

// ellipse returns an ellipse as four cubic curves.
func ellipse(cx, cy, rx, ry int) []sheet.Seg {
	kx, ky := (rx*5523+5000)/10000, (ry*5523+5000)/10000
	return []sheet.Seg{
		{Verb: 'M', X: cx + rx, Y: cy},
		{Verb: 'C', X1: cx + rx, Y1: cy + ky, X2: cx + kx, Y2: cy + ry, X: cx, Y: cy + ry},
		{Verb: 'C', X1: cx - kx, Y1: cy + ry, X2: cx - rx, Y2: cy + ky, X: cx - rx, Y: cy},
		{Verb: 'C', X1: cx - rx, Y1: cy - ky, X2: cx - kx, Y2: cy - ry, X: cx, Y: cy - ry},
		{Verb: 'C', X1: cx + kx, Y1: cy - ry, X2: cx + rx, Y2: cy - ky, X: cx + rx, Y: cy},
		{Verb: 'Z'},
	}
}
