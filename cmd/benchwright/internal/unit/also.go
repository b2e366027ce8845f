package unit

import (
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
)

// CompareAlso reports a band that does not agree with the first band, beside
// which a manual prints it, or that reaches past it.
func CompareAlso(first, second quantity.Band, firstAt, secondAt source.Place, mark quantity.DecimalMark, msgs *diag.List) {
	var d *diag.Diagnostic
	if a, b := first.Unit.Dimension, second.Unit.Dimension; a != b {
		d = msgs.Report("measure-kind", secondAt, "write it in a unit of measure for "+a.String(), "%s measures %s, and the first measures %s", second.Written, b, a)
		d.Related = append(d.Related, diag.Related{At: firstAt, Message: "it is compared with this"})
		return
	}
	switch quantity.CompareAlso(first, second) {
	case quantity.Disagrees:
		d = msgs.Report("also-disagrees", secondAt, "check both again: "+first.Written+" is "+quantity.InUnitOf(first, second, mark),
			"%s is not %s", second.Written, first.Written)
	case quantity.Wider:
		d = msgs.Report("also-wider", secondAt, "nothing to fix if the source has both: the cards use the first alone",
			"%s reaches past %s", second.Written, first.Written)
	default:
		return
	}
	d.Related = append(d.Related, diag.Related{At: firstAt, Message: "it is compared with this"})
}
