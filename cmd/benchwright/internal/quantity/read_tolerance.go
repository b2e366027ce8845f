package quantity

import (
	"fmt"
	"regexp"
	"strings"
)

// toleranceForm matches a size with one or two tolerance zones: "52 H7", "⌀25
// mm k6", "50 H7/p6".
var toleranceForm = regexp.MustCompile(`^([⌀∅Øø]?[ \x{00A0}\x{202F}]*)([0-9][0-9.,]*)[ \x{00A0}\x{202F}]*(?:(mm|in|cm|["″])[ \x{00A0}\x{202F}]*)?([A-Za-z]|[Jj][Ss]|[Zz][A-Ca-c]|[Cc][Dd]|[Ee][Ff]|[Ff][Gg])([0-9]{1,2})(?: ?/ ?([A-Za-z]{1,2}[0-9]{1,2}))?$`)

// tolerance parses the text as a size with an ISO 286 tolerance. Ok is false
// if it does not have that form.
func (r *reader) tolerance() (b Band, ok bool) {
	start := len(r.text) - len(strings.TrimLeft(r.text, blanks))
	text := strings.Trim(r.text, blanks)
	m := toleranceForm.FindStringSubmatchIndex(text)
	if m == nil {
		return b, false
	}
	part := func(i int) string {
		if m[2*i] < 0 {
			return ""
		}
		return text[m[2*i]:m[2*i+1]]
	}
	at := func(i int) (from, to int) { return start + m[2*i], start + m[2*i+1] }
	sign, size, unit, letter, grade, second := strings.Trim(part(1), blanks), part(2), part(3), part(4), part(5), part(6)
	if _, isUnit := UnitOf(letter + grade); isUnit {
		return b, false
	}
	if unit != "" {
		size += " " + unit
	}
	zoneStart, _ := at(4)
	_, zoneEnd := at(5)
	unknown := func(start, end int, message, fix string) (Band, bool) {
		r.fail("tolerance-unknown", start, end, message, fix)
		return Band{}, true
	}
	if r.want != None && r.want != Length {
		r.fail("measure-kind", start, start+len(text), fmt.Sprintf("%s is the limits of a length, and %s belongs here", quoted(text), r.want), unitsOf(r.want))
		return b, true
	}
	if second != "" {
		from, to := at(6)
		return unknown(from-1, to, "a fit has two limits, one of the hole and one of the shaft",
			"write the one that is measured here, "+quoted(size+" "+letter+grade)+" or "+quoted(size+" "+second))
	}
	if unit != "" && unit != "mm" {
		from, to := at(3)
		return unknown(from, to, "a size with a tolerance of ISO 286 is in mm", "write the size in mm, or write the limits in inches")
	}
	r.pos, _ = at(2)
	n, numbered := r.number()
	if !numbered || r.problem != nil {
		return b, true
	}
	const both = "write both limits in mm, as in `52.00 to 52.03 mm`, from the drawing or the standard"
	t, err := ParseTolerance(n.Text+" "+letter+grade, r.mark)
	if err != nil {
		return unknown(zoneStart, zoneEnd, "a tolerance has a capital for a hole or a small letter for a shaft, not both",
			"write "+quoted(size+" "+strings.ToUpper(letter)+grade)+" for a hole or "+quoted(size+" "+strings.ToLower(letter)+grade)+" for a shaft")
	}
	switch b, err = t.Limits(r.mark); {
	case err == nil:
		r.unit = b.Unit
		b.Written = sign + strings.ReplaceAll(size, " ", nbsp) + nbsp + letter + grade
	case err == ErrToleranceSize || err == ErrToleranceRow && !strings.EqualFold(letter, "j"):
		from, to := at(2)
		return unknown(from, to, fmt.Sprintf("the tables of tolerances here are for sizes above 3 and up to 250 mm, not for %s", n.Text), both)
	case err == ErrToleranceGrade:
		from, to := at(5)
		return unknown(from, to, fmt.Sprintf("the tables of tolerances here are for grades 5 to 12, not for %s", grade), both)
	default:
		return unknown(zoneStart, zoneEnd, fmt.Sprintf("the tables of tolerances here have no row for `%s`", letter+grade), both)
	}
	return b, true
}
