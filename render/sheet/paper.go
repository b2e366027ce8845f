package sheet

import "fmt"

// A Paper is the size of a face or sheet, in micrometers.
type Paper struct {
	Name          string
	Width, Height int
}

// Papers are the sizes of faces and sheets (ISO 216, ANSI).
var Papers = []Paper{
	{"A4", 210000, 297000},
	{"A4-landscape", 297000, 210000},
	{"A5", 148000, 210000},
	{"A6", 105000, 148000},
	{"Letter", 215900, 279400},
	{"Letter-landscape", 279400, 215900},
	{"half-Letter", 139700, 215900},
	{"A3", 297000, 420000},
	{"A3-landscape", 420000, 297000},
}

// Millimeters prints a size in mm for a message.
func Millimeters(w, h int) string {
	return fmt.Sprintf("%g × %g mm", float64(w)/1000, float64(h)/1000)
}
