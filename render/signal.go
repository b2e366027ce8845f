package render

// A look is how a signal word's panel is drawn. The word, the weight and
// style of the border and the triangle tell one from another on a grey
// printer; the colour only helps.
//
// Colours after ANSI Z535.1 and ISO 3864, from memory; the red and the blue
// are darker than on signs, so that white words on them stand 7:1.
type look struct {
	Ground, Word Color
	Alert        string // code of the triangle; NOTICE has none
	Border       int    // in eighths of the style's frame
	Dashed       bool
}

var looks = [...]look{
	Danger:  {Ground: 0xA81226, Word: white, Alert: "alert-danger", Border: 20},
	Warning: {Ground: safetyOrange, Word: black, Alert: "alert-warning", Border: 13},
	Caution: {Ground: safetyYellow, Word: black, Alert: "alert-caution", Border: 7},
	Notice:  {Ground: 0x0B5596, Word: white, Border: 5, Dashed: true},
}

// lookOf is the look of a signal word.
func lookOf(s Signal) look { return looks[min(s, Notice)] }
