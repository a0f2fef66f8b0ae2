// Package judges has tests only: what is published is put before judges that are not ours, the Nu HTML Checker, axe-core in
// Chromium, poppler, xmllint and GNU units. Each is named where it speaks; .ci/tools installs them all.
package judges
