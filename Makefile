# The README's two commands are all that is needed; these are the longer ones of whoever works on the program.
.PHONY: test judged bench fuzz tidy

test:            ## what a change is tried with
	go test ./...

judged:          ## as .ci/run does: with a browser and the validators
	.ci/run

bench:           ## every benchmark once, ratios beside them
	go test -run '^$$' -bench . -benchtime 1x ./...

fuzz:            ## every fuzz target for a minute
	@for target in $$(grep -rlE '^func Fuzz' --include='*_test.go' internal | xargs -n1 dirname | sort -u); do \
	  for f in $$(grep -rhoE '^func Fuzz[A-Za-z]+' $$target | sed 's/func //' | sort -u); do \
	    echo "== $$target $$f"; go test -run '^$$' -fuzz "^$$f$$" -fuzztime 60s ./$$target || exit 1; \
	  done; done

tidy:            ## formatting and the wanted results
	gofmt -w $$(git ls-files '*.go')
	UPDATE=1 go test ./...
