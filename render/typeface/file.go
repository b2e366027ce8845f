package typeface

import _ "embed"

// The faces as their makers gave them (fonts/LICENSE_FONT, SIL OFL 1.1).
var (
	//go:embed fonts/SourceSans3_400Regular.ttf
	regularTTF []byte
	//go:embed fonts/SourceSans3_600SemiBold.ttf
	semiboldTTF []byte
	//go:embed fonts/SourceSans3_700Bold.ttf
	boldTTF []byte
)

// File is the uncut TrueType file of a face. It is shared: read only.
func File(f Font) []byte {
	switch f {
	case Semibold:
		return semiboldTTF
	case Bold:
		return boldTTF
	}
	return regularTTF
}
