package compare

import (
	"io"

	"benchwright/cmd/benchwright/internal/sarif"
)

// rules are the classes of change as rules of a SARIF log, in the order of Classes.
var rules = []sarif.Rule{
	{ID: string(Safety), Short: sarif.Say("what is set or accepted, a caution, a hold point or a direction changed"), Default: sarif.Configuration{Level: sarif.Error}},
	{ID: string(Method), Short: sarif.Say("a step, a tool, a part or a record changed"), Default: sarif.Configuration{Level: sarif.Warning}},
	{ID: string(Wording), Short: sarif.Say("prose changed"), Default: sarif.Configuration{Level: sarif.Note}},
}

// unread is the rule for a card that could not be read in full.
var unread = sarif.Rule{ID: "not-compared", Short: sarif.Say("errors keep a card from being compared in full"), Default: sarif.Configuration{Level: sarif.Error}}

var levels = map[Class]string{Safety: sarif.Error, Method: sarif.Warning, Wording: sarif.Note}

// WriteSARIF writes a report as a SARIF log: a change is a result, its class the
// rule. It stands at its place in the new side's procedure, or in the file alone
// where it is gone from there; the other files it comes from are related. Path
// returns the path of a file of the new side from the folder of the run; version
// is that of this program.
func (r *Report) WriteSARIF(w io.Writer, path func(name string) string, version string) error {
	log := sarif.Log{Version: version, Rules: append(rules[:len(rules):len(rules)], unread)}
	for _, c := range r.Cards {
		for _, x := range c.Changes {
			at := sarif.Physical{Artifact: sarif.File(path(c.File))}
			if !x.Gone && x.At.File != nil {
				at = sarif.Physical{Artifact: sarif.File(path(x.At.File.Name)), Region: sarif.At(x.At)}
			}
			result := sarif.Result{Rule: string(x.Class), Level: levels[x.Class],
				Message:    sarif.Say(c.Number + ", " + c.where(x) + ": " + c.text(x, func(s string) string { return s })),
				Locations:  []sarif.Location{{Physical: at}},
				Properties: map[string]any{"card": c.Number, "what": x.What, "before": x.Before, "after": x.After, "variants": some(x.variants())}}
			for _, name := range x.Causes {
				if name != c.File {
					result.Related = append(result.Related, sarif.Location{Physical: sarif.Physical{Artifact: sarif.File(path(name))}})
				}
			}
			log.Results = append(log.Results, result)
		}
		for _, line := range c.unread() {
			log.Results = append(log.Results, sarif.Result{Rule: unread.ID, Level: sarif.Error, Message: sarif.Say(c.Number + ": " + line),
				Locations: []sarif.Location{{Physical: sarif.Physical{Artifact: sarif.File(path(c.File))}}}})
		}
	}
	return log.Write(w)
}
