package compose

import (
	"benchwright/render"
	"benchwright/render/sheet"
	"benchwright/render/symbol"
)

// A Look is how a signal word's panel is drawn. The word, the weight and
// style of the border and the triangle tell one from another on a gray
// printer; the color only helps.
//
// Colors after ANSI Z535.1 and ISO 3864, from memory; the red and the blue
// are darker than on signs, so that white words on them stand 7:1.
type Look struct {
	Ground, Word sheet.Color
	Alert        string // code of the triangle; NOTICE has none
	Border       int    // in eighths of the style's frame
	Dashed       bool
}

var looks = [...]Look{
	render.Danger:  {Ground: 0xA81226, Word: White, Alert: "alert-danger", Border: 20},
	render.Warning: {Ground: symbol.SafetyOrange, Word: Black, Alert: "alert-warning", Border: 13},
	render.Caution: {Ground: symbol.SafetyYellow, Word: Black, Alert: "alert-caution", Border: 7},
	render.Notice:  {Ground: 0x0B5596, Word: White, Border: 5, Dashed: true},
}

// LookOf returns the look of a signal word.
func LookOf(s render.Signal) Look { return looks[min(s, render.Notice)] }
