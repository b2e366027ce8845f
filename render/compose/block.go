package compose

import (
	"strings"

	"benchwright/render"
	"benchwright/render/sheet"
)

// A Slab is a piece of a face that is never split.
type Slab struct {
	Gap    int // above it, where it does not come first on a face
	Height int
	Keep   bool // stays with the slab behind it
	Ops    []sheet.Op
}

// A Block is what one element draws.
type Block struct {
	Slabs []Slab
	Again *Slab // the head, set again where the slabs run on to another face
	Runs  bool  // may run on even in a group that is kept together
	Reach int   // how far down its drawing reaches in the margin, where that is below its height
}

// One returns a block of one slab, an empty block for no height.
func One(height int, c Canvas) Block {
	if height == 0 {
		return Block{}
	}
	return Block{Slabs: []Slab{{Height: height, Ops: c.Ops}}}
}

// Height of a block that starts a face.
func (b Block) Height() int {
	h := 0
	for i, s := range b.Slabs {
		if i > 0 {
			h += s.Gap
		}
		h += s.Height
	}
	return h
}

// Chunk is the slabs from i that stay together: their end and their height.
func (b Block) Chunk(i int) (end, height int) {
	for end = i; end < len(b.Slabs); end++ {
		if end > i {
			height += b.Slabs[end].Gap
		}
		height += b.Slabs[end].Height
		if !b.Slabs[end].Keep {
			return end + 1, height
		}
	}
	return end, height
}

// Resolve checks the links of a block: one that names nothing is a Problem and
// leads nowhere.
func (b *Block) Resolve(c *Compositor) {
	for i := range b.Slabs {
		ops := b.Slabs[i].Ops
		kept := ops[:0]
		for _, op := range ops {
			if l, is := op.(sheet.Link); is && !c.leads(l.To) {
				c.Problem(render.Problem{Kind: render.BadLink, Text: l.To})
				continue
			}
			kept = append(kept, op)
		}
		b.Slabs[i].Ops = kept
	}
}

func (c *Compositor) leads(to string) bool {
	_, known := c.Anchors[to]
	return known || strings.HasPrefix(to, "https://")
}
