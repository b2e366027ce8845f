module benchwright

go 1.26.0

toolchain go1.26.8

require golang.org/x/text v0.44.0

require (
	github.com/go-pdf/fpdf v0.9.0 // indirect
	github.com/klippa-app/go-pdfium v1.21.4 // indirect
	github.com/pdfcpu/pdfcpu v0.11.1 // indirect
	github.com/rogpeppe/go-internal v1.16.0 // indirect
	github.com/santhosh-tekuri/jsonschema/v5 v5.3.1 // indirect
	github.com/yuin/goldmark v1.8.7 // indirect
	golang.org/x/image v0.47.0 // indirect
	golang.org/x/sys v0.50.0 // indirect
	golang.org/x/term v0.48.0 // indirect
	gopkg.in/yaml.v3 v3.0.1 // indirect
)
