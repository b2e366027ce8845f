package deck

import (
	"fmt"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// An itemContent is what an item puts on the faces.
type itemContent struct {
	elements []render.Element // in its step
	tools    []render.ToolRow // to take, if not named in its panel
	record   []recordRow      // its rows of the record strip
	takes    []string         // things to take that only its text mentions
}

// buildItems builds the content of all items of all steps.
func (b *builder) buildItems() {
	for _, s := range b.card.Steps() {
		b.begin(s)
		words := false
		for _, i := range s.Items {
			var tools []render.ToolRow
			if words {
				for _, item := range instruments(i) {
					tools = append(tools, b.nameOnce(item)...)
				}
			}
			out := b.build(i, s.Items)
			out.tools = append(out.tools, tools...)
			b.contents[s.Number] = append(b.contents[s.Number], out)
			if _, prose := i.(*card.Prose); prose {
				words = true
			}
		}
	}
}

// build returns what an item puts on the faces; others are the items of its
// step. It panics if its step says nothing of a complete item: a tool block
// stands among the tools to take, and every other has an element.
func (b *builder) build(i card.Item, others []card.Item) itemContent {
	out := b.buildItem(i, others)
	said := len(out.elements)
	if _, tool := i.(*card.Tool); tool {
		said = len(out.tools)
	}
	if said == 0 && b.card.Complete(i) {
		panic(fmt.Sprintf("no face says anything of a %T", i))
	}
	return out
}

func (b *builder) buildItem(i card.Item, others []card.Item) itemContent {
	switch i := i.(type) {
	case *card.Prose:
		return itemContent{b.prose(i), nil, nil, nil}
	case *card.Picture:
		return itemContent{b.picture(i), nil, nil, nil}
	case *card.Tool:
		return itemContent{nil, toolLines(i), nil, nil}
	case *card.Torque:
		return itemContent{b.torque(i), b.torqueTools(i, others), b.torqueRows(i), torqueTakes(i)}
	case *card.Measurement:
		return itemContent{b.measurement(i), nil, b.measurementRows(i), nil}
	case *card.Lash:
		return itemContent{b.lash(i), nil, b.measurementRows(i.Measurement), nil}
	case *card.Shim:
		return itemContent{b.shim(i), b.shimTools(i), b.shimRows(i), nil}
	case *card.Preload:
		return itemContent{b.preload(i), nil, b.measurementRows(i.Measurement), nil}
	case *card.Fit:
		return itemContent{b.fit(i), b.fitTools(i), b.fitRows(i), nil}
	case *card.Timed:
		return itemContent{b.timed(i), nil, b.timedRows(i), []string{wordClock}}
	case *card.LeakTest:
		return itemContent{b.leakTest(i), nil, b.leakTestRows(i), []string{wordClock}}
	case *card.Fill:
		return itemContent{b.fill(i), nil, b.fillRows(i), nil}
	case *card.Pattern:
		return itemContent{b.pattern(i), nil, b.patternRows(i), nil}
	case *card.Figure:
		return itemContent{b.figure(i), nil, nil, nil}
	case *card.HoldPoint:
		return itemContent{b.holdPoint(i), nil, holdPointRows(i), nil}
	}
	panic(fmt.Sprintf("no face knows a %T", i))
}
