package diag

import (
	"io"
	"strings"

	"benchwright/cmd/benchwright/internal/sarif"
	"benchwright/cmd/benchwright/internal/source"
)

// WriteSARIF writes all messages as a SARIF log, with the pages of those that
// occur as its rules. Path returns the path of a file from the folder of the
// run; version is that of this program.
func WriteSARIF(w io.Writer, messages []Diagnostic, path func(*source.File) string, version string) error {
	log := sarif.Log{Version: version}
	known := map[string]bool{}
	at := func(p source.Place) sarif.Physical {
		if p.File == nil {
			return sarif.Physical{Artifact: sarif.File(".")}
		}
		return sarif.Physical{Artifact: sarif.File(path(p.File)), Region: sarif.At(p)}
	}
	for _, d := range messages {
		level := sarif.Error
		if d.Severity() == Warning {
			level = sarif.Warning
		}
		if p, ok := PageOf(d.Slug); ok && !known[d.Slug] {
			known[d.Slug] = true
			text := sarif.Say(p.WithCarets())
			text.Markdown = text.Text
			log.Rules = append(log.Rules, sarif.Rule{ID: d.Slug, Short: sarif.Say(p.Summary),
				Default: sarif.Configuration{Level: level}, Help: &text})
		}
		said := Printable(d.Message)
		if d.Fix != "" {
			said += ". Fix: " + strings.ReplaceAll(d.Fix, "\n", " ")
		}
		r := sarif.Result{Rule: d.Slug, Level: level, Message: sarif.Say(said), Locations: []sarif.Location{{Physical: at(d.At)}}}
		for _, other := range d.Related {
			text := sarif.Say(Printable(other.Message))
			r.Related = append(r.Related, sarif.Location{Physical: at(other.At), Message: &text})
		}
		if e := d.Edit; e != nil && sarif.At(e.At) != nil {
			r.Fixes = []sarif.Fix{{Description: sarif.Say(Printable(d.Fix)), Changes: []sarif.Change{{Artifact: sarif.File(path(e.At.File)),
				Replacements: []sarif.Replacement{{Deleted: *sarif.At(e.At), Inserted: sarif.Text{Text: e.Text}}}}}}}
		}
		log.Results = append(log.Results, r)
	}
	return log.Write(w)
}
