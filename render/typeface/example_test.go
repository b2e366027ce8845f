package typeface_test

import (
	"fmt"

	"benchwright/render/typeface"
)

// Figures are all as wide as each other, so that columns of them stand true.
func ExampleWidth() {
	fmt.Println(typeface.Width(typeface.Bold, 5000, "111"), typeface.Width(typeface.Bold, 5000, "888"))
	fmt.Println(typeface.Has('Ø'), typeface.Has('⌀'))
	// Output:
	// 7920 7920
	// true false
}
