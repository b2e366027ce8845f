package element

import (
	"benchwright/render"
	"benchwright/render/compose"
)

// tools draws the tools of a step, one behind another, on a line or two.
func tools(t render.Tools, c *compose.Compositor) compose.Block {
	var k compose.Canvas
	p := c.Set(runIn(t.Rows), c.Small, c.Measure(), 0)
	k.Para(p, 0, 0)
	return compose.One(p.Height(), k)
}

// runIn sets tools behind one another: what to do with them, then name, number,
// place of each. The name is what the eye looks for.
func runIn(rows []render.ToolRow) []render.Run {
	var runs []render.Run
	verb := ""
	for _, r := range rows {
		switch {
		case len(runs) == 0:
			runs = toolRuns(r)
		case r.Verb == verb:
			runs = append(runs, render.Run{Text: ", "})
			r.Verb = ""
			runs = append(runs, toolRuns(r)...)
			continue
		default:
			runs = append(append(runs, render.Run{Text: ". "}), toolRuns(r)...)
		}
		verb = r.Verb
	}
	return runs
}

// toolRuns names a tool on one line: the place stays with the number before it.
func toolRuns(t render.ToolRow) []render.Run {
	var runs []render.Run
	for _, r := range []render.Run{{Text: t.Verb}, {Text: t.Name, Weight: render.Semibold}, {Text: t.Number, Code: true}, {Text: t.Place}, {Text: t.Note}} {
		if r.Text == "" {
			continue
		}
		if len(runs) > 0 {
			runs = append(runs, render.Run{Text: " "})
		}
		runs = append(runs, r)
	}
	return runs
}
