package cli

import "fmt"

// languageVersion is the version of the procedure language, programVersion
// that of this program.
const (
	programVersion  = "0.1.0"
	languageVersion = 1
)

func version(c *call) int {
	if code, ok := c.parse(); !ok {
		return code
	}
	fmt.Fprintf(c.Out, "%s %s, procedure language %d\n", program, programVersion, languageVersion)
	return exitOK
}
