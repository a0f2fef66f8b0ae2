package proof

import (
	"testing"

	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// TestNoContact reads a studio that makers cannot write to. Its finding stands in studio.toml and not in the pattern.
func TestNoContact(t *testing.T) {
	const name = "testdata/studio-without-contact.toml"
	studio, found := manuscript.ReadStudio(readFile(t, name))
	if len(found) > 0 {
		t.Fatal(found)
	}
	p, _ := manuscript.ReadPattern(readFile(t, faults+"/quiet.md"), "quiet", studio, manuscript.Published())
	g, _ := grade.Work(p)
	all := Check(g, studio)
	if len(all) != 1 || all[0].Rule != "no-contact" || all[0].Severity != source.Query || all[0].Place.File != name {
		t.Errorf("found %v, wanted one query no-contact in %s", all, name)
	}
	studio.Contact = "hello@sallowhythe.example"
	if all := Check(g, studio); len(all) > 0 {
		t.Errorf("found %v in a studio with a contact", all)
	}
}

// TestNothingToCheck holds that a pattern which could not be read is no reason to fall over.
func TestNothingToCheck(t *testing.T) {
	for _, g := range []*grade.Grade{nil, {}} {
		if all := Check(g, pattern.Studio{}); len(all) > 0 {
			t.Errorf("found %v in nothing", all)
		}
	}
}
