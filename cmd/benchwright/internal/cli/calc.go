package cli

import (
	"errors"

	"benchwright/cmd/benchwright/internal/calc"
)

// calculate runs a computation. Its exit code is 0 with a result, 1 if the
// computation is impossible, 2 for wrong use.
func calculate(c *call) int {
	switch err := calc.Run(c.rest, c.Out); {
	case err == nil:
		return exitOK
	case errors.Is(err, calc.ErrImpossible):
		return exitFound
	default:
		return fail(c.Streams, err)
	}
}
