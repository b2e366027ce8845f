package deck

import (
	"fmt"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// A saying is what an item says on the faces.
type saying struct {
	elements []render.Element // in its step
	tools    []render.ToolRow // taken in the hand, where they do not stand in its panel
	record   []recordRow      // what it leaves on record
	takes    []string         // what its words alone tell to take
}

// sayAll finds what the items of each step say.
func (b *builder) sayAll() {
	for _, s := range b.card.Steps() {
		b.begin(s)
		words := false
		for _, i := range s.Items {
			var tools []render.ToolRow
			if words {
				for _, item := range instruments(i) {
					tools = append(tools, b.take(item)...)
				}
			}
			out := b.says(i, s.Items)
			out.tools = append(out.tools, tools...)
			b.said[s.Number] = append(b.said[s.Number], out)
			if _, prose := i.(*card.Prose); prose {
				words = true
			}
		}
	}
}

// says finds what an item says, which stands with others. What is whole says
// something.
func (b *builder) says(i card.Item, others []card.Item) saying {
	out := b.words(i, others)
	if len(out.elements)+len(out.tools)+len(out.record) == 0 && b.card.Complete(i) {
		panic(fmt.Sprintf("no face says anything of a %T", i))
	}
	return out
}

func (b *builder) words(i card.Item, others []card.Item) saying {
	switch i := i.(type) {
	case *card.Prose:
		return saying{b.prose(i), nil, nil, nil}
	case *card.Picture:
		return saying{b.picture(i), nil, nil, nil}
	case *card.Tool:
		return saying{nil, toolLines(i), nil, nil}
	case *card.Torque:
		return saying{b.torque(i), b.torqueTools(i, others), b.torqueRows(i), torqueTakes(i)}
	case *card.Measurement:
		return saying{b.measurement(i), nil, b.measurementRows(i), nil}
	case *card.Lash:
		return saying{b.lash(i), nil, b.measurementRows(i.Measurement), nil}
	case *card.Shim:
		return saying{b.shim(i), b.shimTools(i), b.shimRows(i), nil}
	case *card.Preload:
		return saying{b.preload(i), nil, b.measurementRows(i.Measurement), nil}
	case *card.Fit:
		return saying{b.fit(i), b.fitTools(i), b.fitRows(i), nil}
	case *card.Timed:
		return saying{b.timed(i), nil, b.timedRows(i), []string{wordClock}}
	case *card.LeakTest:
		return saying{b.leakTest(i), nil, b.leakTestRows(i), []string{wordClock}}
	case *card.Fill:
		return saying{b.fill(i), nil, b.fillRows(i), nil}
	case *card.Pattern:
		return saying{b.pattern(i), nil, b.patternRows(i), nil}
	case *card.Figure:
		return saying{b.figure(i), nil, nil, nil}
	case *card.HoldPoint:
		return saying{b.holdPoint(i), nil, holdPointRows(i), nil}
	}
	panic(fmt.Sprintf("no face knows a %T", i))
}
