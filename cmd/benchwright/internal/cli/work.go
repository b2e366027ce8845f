package cli

import (
	"errors"

	"benchwright/cmd/benchwright/internal/work"
)

// workOut works out a computation. Its exit code is 0 where there is an answer,
// 1 where the answer is that it cannot be done, and 2 for wrong use.
func workOut(c *call) int {
	switch err := work.Run(c.rest, c.Out); {
	case err == nil:
		return exitOK
	case errors.Is(err, work.ErrImpossible):
		return exitFound
	default:
		return fail(c.Streams, err)
	}
}
