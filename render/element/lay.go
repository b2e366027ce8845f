// Package element draws each content of a deck to the compositor's width, one
// content a file; package figure has the pictures.
package element

import (
	"fmt"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/figure"
)

// Lay draws what an element shows, to the compositor's width.
func Lay(c *compose.Compositor, content render.Content) compose.Block {
	switch v := content.(type) {
	case render.Stage:
		return stage(v, c)
	case render.Step:
		return step(v, c)
	case render.Text:
		return text(v, c)
	case render.List:
		return list(v, c)
	case render.Table:
		return table(v, c)
	case render.Listing:
		return listing(v, c)
	case render.Facts:
		return facts(v, c)
	case render.Callout:
		return callout(v, c)
	case render.Hazards:
		return hazards(v, c)
	case render.Tools:
		return tools(v, c)
	case render.Setting:
		return setting(v, c)
	case render.Order:
		return figure.Order(v, c)
	case render.Reading:
		return reading(v, c)
	case render.Pack:
		return figure.Pack(v, c)
	case render.Cord:
		return figure.Cord(v, c)
	case render.Hold:
		return hold(v, c)
	case render.Picture:
		return figure.Picture(v, c)
	case render.Contact:
		return figure.Contact(v, c)
	case render.Indicator:
		return figure.Indicator(v, c)
	case render.Records:
		return records(v, c)
	case render.Ticks:
		return ticks(v, c)
	case render.End:
		return end(v, c)
	}
	panic(fmt.Sprintf("render: nothing draws %T", content))
}
