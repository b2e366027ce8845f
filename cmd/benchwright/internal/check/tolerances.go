package check

import (
	"regexp"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/quantity"
)

// A measured feature is a hole or a shaft only if its name says so.
var (
	holes  = regexp.MustCompile(`(?i)\b(bores?|holes?|inside diameter)\b`)
	shafts = regexp.MustCompile(`(?i)\b(shafts?|journals?|spindles?|outside diameter)\b`)
)

// toleranceCases checks that a tolerance has the case for what is measured: 52
// H7 is for a hole, 52 h7 for a shaft, with other limits.
func toleranceCases(p *pass) {
	if !p.english() {
		return
	}
	eachReading(p, func(_ card.Item, m *card.Measurement) {
		if m.Limit == nil {
			return
		}
		t, err := quantity.ParseTolerance(m.Limit.Band.Written, p.Shop.Mark())
		hole, shaft := holes.FindString(m.Of), shafts.FindString(m.Of)
		if err != nil || (hole == "") == (shaft == "") || t.Hole() == (hole != "") {
			return
		}
		written := strings.ReplaceAll(m.Limit.Band.Written, "\u00a0", " ")
		size, zone := written[:strings.LastIndex(written, " ")+1], written[strings.LastIndex(written, " ")+1:]
		of, other := "shaft", size+strings.ToUpper(zone)
		if t.Hole() {
			of, other = "hole", size+strings.ToLower(zone)
		}
		d := p.msgs.Report("tolerance-case", m.Limits.At, "look it up again, and write `"+other+"` if the drawing does",
			"`%s` is of a %s, and what is measured is called %s", written, of, strings.ToLower(hole+shaft))
		if m.Limits.Named.Name != "" {
			d.Related = append(d.Related, related(m.Limit.At, "the limits stand here"))
		}
	})
}
