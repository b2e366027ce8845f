package quantity_test

import (
	"fmt"
	"math/big"
	"strings"

	"benchwright/cmd/benchwright/internal/quantity"
)

// Four ways in which limits are written, and one value, which has none.
func ExampleParseBand() {
	for _, text := range []string{"95 to 105 Nm", "100 ±5 N·m", "max 0.05 mm", "at least 12 mm", "52 H7", "100 N·m"} {
		b, problem := quantity.ParseBand(text, quantity.Point)
		if problem != nil {
			fmt.Println(problem.Message)
			continue
		}
		printLine(b.Written, "is", b.Range(quantity.Point))
	}
	// Output:
	// 95 to 105 N·m is 95 to 105 N·m
	// 100 ±5 N·m is 95 to 105 N·m
	// max 0.05 mm is max 0.05 mm
	// at least 12 mm is at least 12 mm
	// 52 H7 is 52.000 to 52.030 mm
	// 100 N·m is 100 N·m
}

// A problem says what is wrong and how to fix it.
func ExampleParseBand_problem() {
	_, problem := quantity.ParseBand("95-105 Nm", quantity.Point)
	fmt.Printf("%s: %s: %s\n", problem.Slug, problem.Message, problem.Fix)
	// Output: range-hyphen: a range is not written with `-`: write `95 to 105 Nm`
}

// Limits in N·m on a wrench with marks of 1 lbf·ft: whatever lies between the
// marks lies between the limits. The numbers are invented.
func ExampleBand_Inward() {
	b, _ := quantity.ParseBand("55 to 65 N·m", quantity.Point)
	wrench := quantity.Scale{Unit: quantity.MustUnit("lbf·ft"), Step: big.NewRat(1, 1)}
	marks, ok := b.Inward(wrench)
	printLine(marks.Print(quantity.Point), ok)
	// Output: 41 to 47 lbf·ft true
}

// A manual prints limits in two units, rounded; the second is checked against
// the first. The limits are invented.
func ExampleCompareAlso() {
	first, _ := quantity.ParseBand("55 to 65 N·m", quantity.Point)
	for _, text := range []string{"41 to 48 lbf·ft", "45 to 50 lbf·ft"} {
		second, _ := quantity.ParseBand(text, quantity.Point)
		if quantity.CompareAlso(first, second) == quantity.Disagrees {
			printLine(text, "is not", first.Written, "but", quantity.InUnitOf(first, second, quantity.Point))
		} else {
			fmt.Println(text, "agrees")
		}
	}
	// Output:
	// 41 to 48 lbf·ft agrees
	// 45 to 50 lbf·ft is not 55 to 65 N·m but 41 to 48 lbf·ft
}

// Conversion is exact: 1 in is 25.4 mm (the international inch, 1959).
func ExampleConvert() {
	x := quantity.Convert(big.NewRat(5, 16), quantity.MustUnit("in"), quantity.MustUnit("mm"))
	fmt.Println(x, "=", quantity.Decimal(x, quantity.Point), "mm")
	// Output: 127/16 = 7.9375 mm
}

// A scale prints its marks with the decimals that they need, or as fractions,
// and with the shop's decimal mark.
func ExampleScale_Print() {
	dial := quantity.Scale{Unit: quantity.MustUnit("mm"), Step: big.NewRat(1, 100)}
	tape := quantity.Scale{Unit: quantity.MustUnit("in"), Step: big.NewRat(1, 16), Fractions: true}
	printLine(dial.Print(big.NewRat(3, 20), quantity.Point))
	printLine(dial.Print(big.NewRat(3, 20), quantity.Comma))
	printLine(tape.Print(big.NewRat(133, 16), quantity.Point))
	// Output:
	// 0.15 mm
	// 0,15 mm
	// 8-5/16 in
}

// A number keeps the digits that were typed; one that can be read in two ways is
// refused.
func ExampleParseNumber() {
	for _, text := range []string{"8-5/16", "0.150", "1,500"} {
		n, problem := quantity.ParseNumber(text, quantity.Point)
		if problem != nil {
			fmt.Println(text+":", problem.Message)
			continue
		}
		fmt.Println(text, "is", n.Value, "to the nearest", n.DigitStep())
	}
	// Output:
	// 8-5/16 is 133/16 to the nearest 1/16
	// 0.150 is 3/20 to the nearest 1/1000
	// 1,500: `1,500` can be read two ways
}

// printLine prints with a plain blank where a unit has a no-break space.
func printLine(args ...any) { fmt.Print(strings.ReplaceAll(fmt.Sprintln(args...), "\u00a0", " ")) }
