package symbol_test

import (
	"fmt"

	"benchwright/render/symbol"
)

func ExampleDraw() {
	hot, ok := symbol.Draw("W017", 10000, 20000, 12000)
	fmt.Println(len(hot), ok)
	none, ok := symbol.Draw("W999", 0, 0, 12000)
	fmt.Println(len(none), ok)
	// Output:
	// 6 true
	// 0 false
}
