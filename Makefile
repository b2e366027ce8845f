# What a newcomer needs: make cards, make test.

BIN := bin/benchwright

.PHONY: cards test lint gate bench fuzz mutants pdf clean

cards: ## compile the demo workspace into out/
	go run ./cmd/benchwright build procedures -o out

test: ## every test; nothing beyond Go is needed
	go test ./...

lint: ## what go itself can say about the code
	@test -z "$$(gofmt -l cmd schema render)" || { gofmt -l cmd schema render; echo "not gofmt-clean: run gofmt -w on these"; exit 1; }
	go vet ./...

gate: ## rewrite every golden and require that nothing changed
	UPDATE=1 go test ./...
	@test -z "$$(git status --porcelain -- testdata cmd schema render)" || { git status --short -- testdata cmd schema render; echo "the goldens above changed: look at them, then commit them"; exit 1; }

bench: ## speed and memory for workspaces of 10, 100 and 1 000 procedures; a comparison; the shim search
	go test -run '^$$' -bench 'Workspace|Compare' -benchtime 1x ./cmd/benchwright/internal/compile
	go test -run '^$$' -bench 'Make200' ./cmd/benchwright/internal/bench

fuzz: ## hostile values at every place of the blocks' examples; 30 s for each fuzz target
	SWEEP=all go test -run Sweep ./cmd/benchwright
	@for t in $$(git grep -lE '^func Fuzz' -- '*_test.go' | xargs -n1 dirname | sort -u); do \
	  for f in $$(grep -hoE '^func Fuzz[A-Za-z]+' $$t/*_test.go | cut -d' ' -f2); do \
	    echo "$$t $$f"; go test -run '^$$' -fuzz "^$$f\$$" -fuzztime 30s ./$$t || exit 1; \
	  done; done

mutants: ## one thing changed at a time, in the demo and the blocks' examples: is each change seen? out/mutants.txt
	@mkdir -p out; rm -f out/mutants.txt; MUTANTS=$(CURDIR)/out/mutants.txt go test -count=1 -timeout 60m -run '^TestMutants$$' ./cmd/benchwright/internal/compile >out/mutants.log; \
	  rc=$$?; grep -E '^(missed|wrongly reported):' out/mutants.txt; tail -n 1 out/mutants.txt; exit $$rc

pdf: cards ## check the demo's PDFs with an outside checker (qpdf, poppler)
	@for f in out/*.pdf; do qpdf --check "$$f" >/dev/null || exit 1; pdftotext -q "$$f" - >/dev/null || exit 1; done; echo "all PDFs are sound"

clean:
	rm -rf bin out/*.pdf out/decks.json out/mutants.*
