package value

import (
	"cmp"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// reserved lists device names of operating systems, which no file may have
// (Microsoft, "Naming Files, Paths, and Namespaces", from memory).
var reserved = []string{"con", "prn", "aux", "nul", "com1", "com2", "com3", "com4", "com5", "com6", "com7", "com8", "com9",
	"lpt1", "lpt2", "lpt3", "lpt4", "lpt5", "lpt6", "lpt7", "lpt8", "lpt9"}

// ID reports an id that is malformed or reserved, and whether it is valid. An
// invalid id is still used, so that references to it do not fail as well.
func (r *Reader) ID(id string, at source.Place) bool {
	lower := strings.ToLower(id)
	switch {
	case slices.Contains(reserved, lower):
		r.Msgs.Report("id-reserved", at, "choose another, such as `"+lower+"-a`", "`%s` is a name that an operating system keeps for itself", id)
	case utf8.RuneCountInString(id) > syntax.MaxID:
		r.Msgs.Report("id-malformed", at, "shorten it", "the id is longer than %d characters", syntax.MaxID)
	case !syntax.WellFormed(id):
		fix := "write small letters and digits, words joined by `-`, a letter first"
		fixed := syntax.MeantID(id)
		if fixed != "" {
			fix = "write `" + fixed + "`"
		}
		d := r.Msgs.Report("id-malformed", at, fix, "`%s` is not an id", id)
		if fixed != "" {
			d.Edit = &diag.Edit{At: at, Text: fixed}
		}
	default:
		return true
	}
	return false
}

var wellNumbered = regexp.MustCompile(`^[A-Z0-9]+(-[A-Z0-9]+)*$`)

// CardNumber reports a card number that is malformed or reserved; output files
// are named by it.
func (r *Reader) CardNumber(number string, at source.Place) {
	upper := strings.ToUpper(number)
	switch {
	case slices.Contains(reserved, strings.ToLower(number)):
		r.Msgs.Report("id-reserved", at, "choose another, such as `"+upper+"-1`", "`%s` is a name that an operating system keeps for itself", number)
	case utf8.RuneCountInString(number) > syntax.MaxID:
		r.Msgs.Report("id-malformed", at, "shorten it", "the card number is longer than %d characters", syntax.MaxID)
	case !wellNumbered.MatchString(number):
		fix := "write capitals and digits, joined by `-`"
		if words := syntax.MeantID(number); words != "" || wellNumbered.MatchString(upper) {
			fix = "write `" + cmp.Or(strings.ToUpper(words), upper) + "`"
		}
		r.Msgs.Report("id-malformed", at, fix, "`%s` is not a card number", number)
	}
}

// NameOf derives a name from an id: "pinion-nut" gives "Pinion nut".
func NameOf(id string) string {
	s := strings.ReplaceAll(id, "-", " ")
	first, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return ""
	}
	return string(unicode.ToUpper(first)) + s[size:]
}

// Name returns the text at key of a declared thing, or the name that its id
// gives.
func (r *Reader) Name(f syntax.Field, key string) string {
	if s := r.Text(f.Value.Get(key)); s != "" {
		return s
	}
	return NameOf(f.Key)
}

// Key returns the place of a field's key.
func (r *Reader) Key(f syntax.Field) source.Place {
	return source.Place{File: f.Value.Place().File, Span: f.KeySpan}
}
