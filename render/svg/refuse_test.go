package svg

import (
	"fmt"
	"strings"
	"testing"
)

// What is not drawn is refused at its place, which stands between « and ».
func TestRefused(t *testing.T) {
	for _, c := range []struct {
		in   string
		want Refusal
	}{
		// Elements
		{`«<script>»alert(1)</script>`, Refusal{Kind: Element, Element: "script"}},
		{`«<style>»path{fill:red}</style>`, Refusal{Kind: Element, Element: "style"}},
		{`<g>«<image href="a.png"/>»</g>`, Refusal{Kind: Element, Element: "image"}},
		{`«<use href="#a"/>»`, Refusal{Kind: Element, Element: "use"}},
		{`«<foreignObject>»<p xmlns="http://www.w3.org/1999/xhtml">x</p></foreignObject>`, Refusal{Kind: Element, Element: "foreignObject"}},
		{`«<linearGradient id="a">»<stop offset="0"/></linearGradient>`, Refusal{Kind: Element, Element: "linearGradient"}},
		{`<defs>«<path d="M0 0"/>»</defs>`, Refusal{Kind: Element, Element: "path"}},
		{`<defs><g/></defs>`, Refusal{Kind: Element, Element: "g"}},
		{`«<clipPath>»<path d="M0 0"/></clipPath>`, Refusal{Kind: Element, Element: "clipPath"}},
		{`«<mask/>»`, Refusal{Kind: Element, Element: "mask"}},
		{`«<filter/>»`, Refusal{Kind: Element, Element: "filter"}},
		{`«<symbol/>»`, Refusal{Kind: Element, Element: "symbol"}},
		{`«<marker/>»`, Refusal{Kind: Element, Element: "marker"}},
		{`«<pattern/>»`, Refusal{Kind: Element, Element: "pattern"}},
		{`«<a href="https://a.example">»<path d="M1 1"/></a>`, Refusal{Kind: Element, Element: "a"}},
		{`«<switch/>»`, Refusal{Kind: Element, Element: "switch"}},
		{`«<svg/>»`, Refusal{Kind: Element, Element: "svg"}},
		{`<rect width="1" height="1">«<animate attributeName="x"/>»</rect>`, Refusal{Kind: Element, Element: "animate"}},
		{`<rect width="1" height="1">«<rect width="1" height="1"/>»</rect>`, Refusal{Kind: Element, Element: "rect"}},
		{`<text>«<textPath>»a</textPath></text>`, Refusal{Kind: Element, Element: "textPath"}},
		{`«<tspan>»a</tspan>`, Refusal{Kind: Element, Element: "tspan"}},
		{`«<Path d="M0 0"/>»`, Refusal{Kind: Element, Element: "Path"}},
		// Attributes and properties
		{`<path onclick="«go()»" d="M1 1"/>`, Refusal{Kind: Attribute, Element: "path", What: "onclick"}},
		{`<text x="1" y="1" dx="«1 2»">a</text>`, Refusal{Kind: Attribute, Element: "text", What: "dx"}},
		{`<text rotate="«5»">a</text>`, Refusal{Kind: Attribute, Element: "text", What: "rotate"}},
		{`<text textLength="«5»">a</text>`, Refusal{Kind: Attribute, Element: "text", What: "textLength"}},
		{`<path pathLength="«5»" d="M1 1"/>`, Refusal{Kind: Attribute, Element: "path", What: "pathLength"}},
		{`<text style="fill:red; «shape-inside:url(#a)»">a</text>`, Refusal{Kind: Attribute, Element: "text", What: "shape-inside"}},
		{`<path fill="«url(#a)»" d="M1 1"/>`, Refusal{Kind: Value, Element: "path", What: "fill"}},
		{`<path fill="«#12»" d="M1 1"/>`, Refusal{Kind: Value, Element: "path", What: "fill"}},
		{`<path fill="«#1x2»" d="M1 1"/>`, Refusal{Kind: Value, Element: "path", What: "fill"}},
		{`<path fill="«rgb(1,2,3)»" d="M1 1"/>`, Refusal{Kind: Value, Element: "path", What: "fill"}},
		{`<path style="stroke : red ;«opacity:.5»;" d="M1 1"/>`, Refusal{Kind: Value, Element: "path", What: "opacity"}},
		{`<g display="«none»"/>`, Refusal{Kind: Value, Element: "g", What: "display"}},
		{`<g clip-path="«url(#a)»"/>`, Refusal{Kind: Value, Element: "g", What: "clip-path"}},
		{`<g filter="«url(#a)»"/>`, Refusal{Kind: Value, Element: "g", What: "filter"}},
		{`<g mask="«url(#a)»"/>`, Refusal{Kind: Value, Element: "g", What: "mask"}},
		{`<g marker-end="«url(#a)»"/>`, Refusal{Kind: Value, Element: "g", What: "marker-end"}},
		{`<g stroke-dasharray="«1 2 3»"/>`, Refusal{Kind: Value, Element: "g", What: "stroke-dasharray"}},
		{`<g stroke-linecap="«square»"/>`, Refusal{Kind: Value, Element: "g", What: "stroke-linecap"}},
		{`<g stroke-linejoin="«bevel»"/>`, Refusal{Kind: Value, Element: "g", What: "stroke-linejoin"}},
		{`<g stroke-width="«5%»"/>`, Refusal{Kind: Value, Element: "g", What: "stroke-width"}},
		{`<g stroke-width="«-1»"/>`, Refusal{Kind: Value, Element: "g", What: "stroke-width"}},
		{`<g font-size="«2em»"/>`, Refusal{Kind: Value, Element: "g", What: "font-size"}},
		{`<g font-weight="«bolder»"/>`, Refusal{Kind: Value, Element: "g", What: "font-weight"}},
		{`<g font-style="«italic»"/>`, Refusal{Kind: Value, Element: "g", What: "font-style"}},
		{`<g transform="scale(1) «turn(3)»"/>`, Refusal{Kind: Value, Element: "g", What: "transform"}},
		{`<g transform="«scale(1»"/>`, Refusal{Kind: Value, Element: "g", What: "transform"}},
		{`<g fill="red" fill="«blue»"/>`, Refusal{Kind: Twice, Element: "g", What: "fill"}},
		// Numbers and path data
		{`<path d="M1 1 L2 «x»"/>`, Refusal{Kind: Value, Element: "path", What: "d"}},
		{`<path d="«L1» 1"/>`, Refusal{Kind: Value, Element: "path", What: "d"}},
		{`<path d="M1 1 A1 1 0 «2» 0 3 3"/>`, Refusal{Kind: Value, Element: "path", What: "d"}},
		{`<path d="M1 1 z «1» 1"/>`, Refusal{Kind: Value, Element: "path", What: "d"}},
		{`<path d="M1 1 L1e300 1"/>`, Refusal{Kind: Value, Element: "path", What: "d"}},
		{`<path d="M1 NaN"/>`, Refusal{Kind: Value, Element: "path", What: "d"}},
		{`<polygon points="«1 1 2»"/>`, Refusal{Kind: Value, Element: "polygon", What: "points"}},
		{`<circle r="«-1»"/>`, Refusal{Kind: Value, Element: "circle", What: "r"}},
		{`<rect width="«10%»" height="1"/>`, Refusal{Kind: Value, Element: "rect", What: "width"}},
		{`<text x="«1 2 3»" y="1">abc</text>`, Refusal{Kind: Value, Element: "text", What: "x"}},
		// What cannot be drawn as it stands
		{`«<path d="M1 1H17"/>»`, Refusal{Kind: Outside, Element: "path"}},
		{`«<path d="M0 1C8 -9 8 -9 16 1"/>»`, Refusal{Kind: Outside, Element: "path"}},
		{`«<text x="1" y="17">»a</text>`, Refusal{Kind: Outside, Element: "text"}},
		{`<g transform="scale(2 1)">«<path stroke="red" d="M1 1"/>»</g>`, Refusal{Kind: StrokeBent, Element: "path"}},
		{`«<text x="1" y="1" transform="rotate(1)">»a</text>`, Refusal{Kind: TextTurned, Element: "text"}},
		{`«<text x="1" y="1" transform="matrix(-1 0 0 1 9 9)">»a</text>`, Refusal{Kind: TextTurned, Element: "text"}},
		{`«<text x="1" y="1" transform="scale(1 1.1)">»a</text>`, Refusal{Kind: TextTurned, Element: "text"}},
		{`«<text x="1" y="1" stroke="red">»a</text>`, Refusal{Kind: TextStroked, Element: "text"}},
		{`<text x="1" y="1">a«<tspan font-weight="bold">»b</tspan></text>`, Refusal{Kind: TextParted, Element: "tspan"}},
		{`<text x="1" y="1"><tspan>a</tspan>« b »</text>`, Refusal{Kind: TextParted, Element: "text"}},
		{`«<path stroke="red" stroke-dasharray=".0001" d="M1 1H9"/>»`, Refusal{Kind: Value, Element: "path", What: "stroke-dasharray"}},
		// The XML itself
		{`«<?xml-stylesheet href="a.css"?>»`, Refusal{Kind: Declared, What: "xml-stylesheet"}},
		{`<text x="1" y="1">&bogus;«»</text>`, Refusal{Kind: Malformed, What: "invalid character entity &bogus;"}},
		{`<g>«»`, Refusal{Kind: Malformed, What: "element <g> closed by </svg>"}},
	} {
		const head, tail = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16">`, `</svg>`
		in := head + strings.NewReplacer("«", "", "»", "").Replace(c.in) + tail
		d, refused := Read([]byte(in))
		if d != nil || len(refused) != 1 {
			t.Errorf("%s: %+v, want one refusal", c.in, refused)
			continue
		}
		got := refused[0]
		if c.want.Kind == Malformed { // the parser's own place is not ours to hold
			got.Start, got.End = 0, 0
		} else if from := strings.Index(c.in, "«"); from >= 0 {
			c.want.Start = len(head) + from
			c.want.End = len(head) + strings.Index(c.in, "»") - len("«")
		} else {
			got.Start, got.End = 0, 0
		}
		if got != c.want {
			t.Errorf("%s\n got %+v %q\nwant %+v", c.in, got, in[got.Start:got.End], c.want)
		}
	}
}

// Whole files that are no drawing.
func TestRefusedFiles(t *testing.T) {
	deep := strings.Repeat("<g>", MaxDepth) + strings.Repeat("</g>", MaxDepth)
	for _, c := range []struct {
		in   string
		want Refusal
	}{
		{"", Refusal{Kind: NotSVG}},
		{"just words", Refusal{Kind: NotSVG}},
		{"<html/>", Refusal{Kind: NotSVG, Element: "html"}},
		{`<svg xmlns="https://other.example"/>`, Refusal{Kind: NotSVG, Element: "svg"}},
		{`<svg viewBox="0 0 1 1"/><svg viewBox="0 0 1 1"/>`, Refusal{Kind: NotSVG, Element: "svg"}},
		{`<!DOCTYPE svg [<!ENTITY a "b">]><svg viewBox="0 0 1 1"/>`, Refusal{Kind: Declared, What: "DOCTYPE"}},
		{`<svg viewBox="0 0 1 1">` + "\xff</svg>", Refusal{Kind: Malformed, What: "invalid UTF-8"}},
		{`<?xml version="1.0" encoding="latin1"?><svg viewBox="0 0 1 1"/>`, Refusal{Kind: Malformed, What: `xml: encoding "latin1" declared but Decoder.CharsetReader is nil`}},
		{`<svg viewBox="0 0 1 1">`, Refusal{Kind: Malformed, What: "unexpected EOF"}},
		{`<svg/>`, Refusal{Kind: NoSize, Element: "svg"}},
		{`<svg width="10"/>`, Refusal{Kind: NoSize, Element: "svg"}},
		{`<svg width="100%" height="100%"/>`, Refusal{Kind: NoSize, Element: "svg"}},
		{`<svg viewBox="0 0 1000 1"/>`, Refusal{Kind: NoSize, Element: "svg"}},
		{`<svg viewBox="0 0 0 1"/>`, Refusal{Kind: Value, Element: "svg", What: "viewBox"}},
		{`<svg viewBox="0 0 1"/>`, Refusal{Kind: Value, Element: "svg", What: "viewBox"}},
		{`<svg viewBox="0 0 9 9">` + strings.Repeat(" ", MaxBytes) + `</svg>`, Refusal{Kind: TooLarge, What: "bytes"}},
		{`<svg viewBox="0 0 9 9">` + deep + `</svg>`, Refusal{Kind: TooLarge, Element: "g", What: "depth"}},
		{`<svg viewBox="0 0 9 9"><path d="M0 0` + strings.Repeat("h0", MaxPoints) + `"/></svg>`, Refusal{Kind: TooLarge, What: "points"}},
		{`<svg viewBox="0 0 9 9">` + strings.Repeat(`<path d="M0 0h1"/>`, MaxShapes+1) + `</svg>`, Refusal{Kind: TooLarge, What: "shapes"}},
	} {
		d, refused := Read([]byte(c.in))
		if d != nil || len(refused) != 1 {
			t.Errorf("%.60s: %+v, want one refusal", c.in, refused)
			continue
		}
		refused[0].Start, refused[0].End = 0, 0
		if refused[0] != c.want {
			t.Errorf("%.60s\n got %+v\nwant %+v", c.in, refused[0], c.want)
		}
	}
}

// The same thing is refused once, other things each.
func TestRefusedOnce(t *testing.T) {
	_, refused := Read([]byte(`<svg viewBox="0 0 9 9"><image/><image/><use/><g opacity=".5"/><g opacity=".6"/></svg>`))
	if got, want := fmt.Sprint(refused), "[{3 image  23 31} {3 use  39 45} {5 g opacity 57 59}]"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}
