// Package layouts holds what a reader sees of a studio that has no layouts of its own: one folder a page or part, with its
// template and its style side by side. A studio's own file of the same name takes a part's place; package web puts them
// together and sets pages with them.
package layouts

import "embed"

// Files are the layouts by name: "pattern/pattern.html", "pattern/pattern.css".
//
//go:embed */*.html */*.css */*.js
var Files embed.FS
