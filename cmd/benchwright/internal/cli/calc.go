package cli

import (
	"errors"

	"benchwright/cmd/benchwright/internal/calc"
)

// calculate works out a computation. Its exit code is 0 where there is an answer,
// 1 where the answer is that it cannot be done, and 2 for wrong use.
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
