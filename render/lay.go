package render

import "fmt"

// Lay draws what an element shows, to the compositor's width.
func Lay(c *compositor, content Content) block {
	switch v := content.(type) {
	case Stage:
		return v.lay(c)
	case Step:
		return v.lay(c)
	case Text:
		return v.lay(c)
	case List:
		return v.lay(c)
	case Table:
		return v.lay(c)
	case Listing:
		return v.lay(c)
	case Facts:
		return v.lay(c)
	case Callout:
		return v.lay(c)
	case Hazards:
		return v.lay(c)
	case Tools:
		return v.lay(c)
	case Setting:
		return v.lay(c)
	case Order:
		return v.lay(c)
	case Reading:
		return v.lay(c)
	case Pack:
		return v.lay(c)
	case Cord:
		return v.lay(c)
	case Hold:
		return v.lay(c)
	case Picture:
		return v.lay(c)
	case Contact:
		return v.lay(c)
	case Indicator:
		return v.lay(c)
	case Records:
		return v.lay(c)
	case End:
		return v.lay(c)
	}
	panic(fmt.Sprintf("render: nothing draws %T", content))
}
