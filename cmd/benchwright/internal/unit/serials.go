package unit

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
)

// A SerialRange is the serial numbers From to To, both of them in, behind the same
// letters: A100 to A399. To is endless for "4000 up".
type SerialRange struct {
	Prefix   string
	From, To int64
}

// endless is above every serial number: those have 15 digits at most.
const endless = int64(1e15)

// String prints the range as it is written.
func (s SerialRange) String() string {
	number := func(n int64) string { return s.Prefix + strconv.FormatInt(n, 10) }
	switch s.To {
	case s.From:
		return number(s.From)
	case endless:
		return number(s.From) + " up"
	}
	return number(s.From) + " to " + number(s.To)
}

var serialRange = regexp.MustCompile(`^(?:(?:from )?([A-Za-z/-]*)([0-9]{1,15})(?: (?:to|-|–) ([A-Za-z/-]*)([0-9]{1,15})|( (?:and )?up))?|(?:up )?to ([A-Za-z/-]*)([0-9]{1,15}))$`)

// ParseSerials reads the serial numbers of a build: "1 to 3999", "4000 up", "A100 to
// A399", or several of these with commas between them. ok is false for other words, and
// where the ends of a range have other letters.
func ParseSerials(text string) (ranges []SerialRange, ok bool) {
	for part := range strings.SplitSeq(text, ",") {
		m := serialRange.FindStringSubmatch(strings.Join(strings.Fields(part), " "))
		if m == nil {
			return nil, false
		}
		number := func(digits string) int64 { n, _ := strconv.ParseInt(digits, 10, 64); return n }
		s := SerialRange{Prefix: m[1], From: number(m[2]), To: number(m[2])}
		switch {
		case m[7] != "":
			s = SerialRange{Prefix: m[6], From: 0, To: number(m[7])}
		case m[5] != "" || strings.HasPrefix(strings.TrimSpace(part), "from ") && m[4] == "":
			s.To = endless
		case m[4] != "":
			if s.To = number(m[4]); m[3] != m[1] {
				return nil, false
			}
		}
		ranges = append(ranges, s)
	}
	return ranges, true
}

// serials reads the serial numbers of all variants. A number that is in two of them has
// two limits for one drive; one in none has no card.
func (r reader) serials(variants []*Variant) {
	type owned struct {
		SerialRange
		*Variant
	}
	var all []owned
	for _, v := range variants {
		if v.Serials == "" {
			continue
		}
		ranges, ok := ParseSerials(v.Serials)
		if !ok {
			r.Msgs.Report("serials-malformed", v.serialsAt, "write it as in `1 to 3999`, `4000 up` or `A100 to A399`", "`%s` is no range of serial numbers", v.Serials)
			return
		}
		for _, s := range ranges {
			if s.From > s.To {
				r.Msgs.Report("serials-malformed", v.serialsAt, fmt.Sprintf("write the lower number first: `%s%d to %s%d`", s.Prefix, s.To, s.Prefix, s.From),
					"the serial numbers of `%s` run backward", v.ID)
				return
			}
			all = append(all, owned{s, v})
		}
	}
	slices.SortStableFunc(all, func(a, b owned) int {
		return cmp.Or(cmp.Compare(a.Prefix, b.Prefix), cmp.Compare(a.From, b.From))
	})
	for i := 1; i < len(all); i++ {
		low, high := all[i-1], all[i]
		var d *diag.Diagnostic
		switch both := (SerialRange{low.Prefix, high.From, min(low.To, high.To)}); {
		case low.Prefix != high.Prefix:
		case both.From <= both.To:
			d = r.Msgs.Report("serials-overlap", high.serialsAt, "give each number to one variant", "`%s` and `%s` both have the serial numbers %s", low.ID, high.ID, both)
			all[i].To = max(low.To, high.To)
		case high.From > low.To+1:
			d = r.Msgs.Report("serials-gap", high.serialsAt, "let a range reach over them, also where none was built, or add their variant",
				"no variant has the serial numbers %s", SerialRange{low.Prefix, low.To + 1, high.From - 1})
		}
		if d != nil && low.Variant != high.Variant {
			d.Related = append(d.Related, diag.Related{At: low.serialsAt, Message: "the range before it is here"})
		}
	}
}
