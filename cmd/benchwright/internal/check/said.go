package check

import (
	"fmt"
	"regexp"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/unit"
)

// The rules of this file compare what a step's words say with its blocks. Each
// looks only at sentences that begin with the verb: the orders of the card.

var (
	tightening = regexp.MustCompile(`^(?:tighten|torque) (?:down )?(?:(?:the|all|both|each|of|new|old|two|three|four|five|six|eight|[0-9]+) )*`)
	// loosely matches what ends a tightening without a torque.
	loosely = regexp.MustCompile(`\b(by hand|fingers?|finger-tight|until|lightly|snug|step|as in|later)\b`)
	// behind matches what may follow a fastener's name where no longer name begins.
	behind = regexp.MustCompile(`^(?:$|[ ,]?[,(]| (?:to|and|with|again|in|at|evenly|crosswise|fully|hard|firmly|securely|properly|well)\b)`)
	oiling = regexp.MustCompile(`^oil (?:(?:the|each|all|both|its|their|every|new) )*(?:(?:bolt|screw|nut|stud) )?threads?\b(?: (?:of|on) ([^.,;]*))?`)
)

// saidIn calls f with each sentence of a step in lower case.
func (p *pass) saidIn(s *card.Step, f func(said string, at sentence)) {
	if !p.english() {
		return
	}
	for _, i := range p.instructions(s) {
		f(strings.ToLower(i.text.text[i.from:i.to]), i)
	}
}

// has reports whether a step has a block of type T, or one of that name that is
// unreadable, which is reported.
func has[T card.Item](s *card.Step, name string) bool {
	for _, i := range s.Items {
		if _, ok := i.(T); ok {
			return true
		}
	}
	for _, i := range s.Source.Items {
		if bad, ok := i.(*procedure.Invalid); ok && bad.Type == name {
			return true
		}
	}
	return false
}

// tightenSaid warns of an order to tighten a fastener in a step without a torque.
func tightenSaid(p *pass) {
	if p.Unit == nil {
		return
	}
	for _, s := range p.Steps() {
		if has[*card.Torque](s, "torque") {
			continue
		}
		said := map[*unit.Fastener]bool{}
		p.saidIn(s, func(text string, i sentence) {
			what := text[len(tightening.FindString(text)):]
			if what == text || linked(i.text) || loosely.MatchString(what) {
				return
			}
			for _, f := range p.Unit.Fasteners {
				name := strings.ToLower(f.Name)
				if strings.HasPrefix(what, name) && behind.MatchString(what[len(name):]) && !said[f] {
					said[f] = true
					at := i.to - len(what)
					p.msgs.Report("torque-missing", i.text.place(at, at+len(name)), fmt.Sprintf("add a `torque` block with `fastener: %s`, or say by what sign it is tight enough, as in `until …` or `by hand`", f.ID),
						"this step tightens `%s` and gives no torque", f.ID)
				}
			}
		})
	}
}

// linked reports whether a text has a link.
func linked(t text) bool {
	for _, r := range t.runs {
		if r.Link != "" {
			return true
		}
	}
	return false
}

// showSaid warns of a step that shows the work to the shop lead without a hold
// point.
func showSaid(p *pass) {
	who := []string{"shop lead"}
	if call := strings.ToLower(p.Procedure.Call); call != "" {
		who = append(who, strings.TrimPrefix(call, "the "))
	}
	for _, s := range p.Steps() {
		if has[*card.HoldPoint](s, "hold-point") {
			continue
		}
		done := false
		p.saidIn(s, func(text string, i sentence) {
			for _, w := range who {
				if !done && strings.HasPrefix(text, "show ") && indexWord(text, "to the "+w) > 0 {
					done = true
					p.msgs.Report("hold-point-missing", i.place(), "add a `hold-point` block with `who: "+w+"`, what he `sees:`, and `before:` what", "this step shows something to the %s, and nobody signs", w)
				}
			}
		})
	}
}

// oilSaid refuses a step that oils a thread whose torque is for another state.
func oilSaid(p *pass) {
	for _, s := range p.Steps() {
		var torque *card.Torque
		oiled := false
		for _, i := range s.Items {
			if t, ok := i.(*card.Torque); ok {
				oiled = oiled || t.Thread.Name == "" || t.Thread.Name == string(procedure.Oiled) || t.Fastener == nil
				torque = t
			}
		}
		if torque == nil || oiled || p.anyInvalid("torque") {
			continue
		}
		p.saidIn(s, func(text string, i sentence) {
			at := oiling.FindStringSubmatchIndex(text)
			if at == nil || at[2] >= 0 && !names(text[at[2]:at[3]], torque.Fastener) {
				return
			}
			d := p.msgs.Report("thread-disagrees", i.text.place(i.from, i.from+at[1]), "look up for which thread the torque is, and keep the one that agrees", "this step oils a thread, and its torque is for `thread: %s`", torque.Thread.Name)
			d.Related = append(d.Related, related(torque.Thread.At, "the torque's thread stands here"))
		})
	}
}

// names reports whether words name the fastener by the last word of its name.
func names(words string, f *unit.Fastener) bool {
	name := strings.Fields(strings.ToLower(f.Name))
	if len(name) == 0 {
		return false
	}
	last := strings.TrimSuffix(name[len(name)-1], "s")
	return indexWord(words, last) >= 0 || indexWord(words, last+"s") >= 0
}
