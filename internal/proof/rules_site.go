package proof

import "foundrow/internal/source"

// pageRules are what packages site, page, web and publish report: files, links, pictures, and the pages themselves.
var pageRules = []Rule{
	{
		Name: "address", Severity: source.Error, Line: 16,
		Sense: "The name of a folder or file cannot be part of an address.",
		Why:   "It is what makers type and pass on: letters a to z, digits, hyphens and underscores.",
		Wrong: "content/patterns/Millrace Pullover/pattern.md",
		Right: "content/patterns/millrace-pullover/pattern.md",
	},
	{
		Name: "same-address", Severity: source.Error, Line: 16,
		Sense: "Two pages have one address, or a page has one of the site's own.",
		Why:   "Only one of them could be reached.",
		Wrong: "content/patterns/millrace/pattern.md\ncontent/pages/millrace.md",
		Right: "content/patterns/millrace/pattern.md\ncontent/pages/the-millrace.md",
	},
	{
		Name: "misplaced", Severity: source.Error,
		Sense: "A pattern lies beside the folders of the patterns and not in one of its own.",
		Why:   "Its photos and captions lie beside it, and the folder's name is its address.",
		Wrong: "content/patterns/millrace.md",
		Right: "content/patterns/millrace/pattern.md",
	},
	{
		Name: "no-pattern", Severity: source.Query,
		Sense: "A folder among the patterns has no pattern.md.",
		Why:   "The pattern has another name, or the folder is left over.",
		Wrong: "content/patterns/millrace/Pattern.txt",
		Right: "content/patterns/millrace/pattern.md",
	},
	{
		Name: "unreadable", Severity: source.Error,
		Sense: "A file cannot be read, or leads out of the studio.",
		Why:   "What it holds cannot be published.",
		Wrong: "content/patterns/millrace/front.jpg, a link to a file on another disk",
		Right: "content/patterns/millrace/front.jpg, the photo itself",
	},
	{
		Name: "link-outside", Severity: source.Error,
		Sense: "A file is a link that leads out of the studio.",
		Why:   "A studio is copied and published as one folder; what lies elsewhere may be anybody's.",
		Wrong: "content/patterns/millrace/front.jpg -> /home/me/photos/front.jpg",
		Right: "content/patterns/millrace/front.jpg, a copy of the photo",
	},
	{
		Name: "missing-picture", Severity: source.Error, Line: 16,
		Sense: "A picture is named that does not lie in the folder.",
		Why:   "The page would have a hole where it stands.",
		Wrong: "![the yoke](yolk.jpg)",
		Right: "![the yoke](yoke.jpg)",
	},
	{
		Name: "missing-film", Severity: source.Error, Line: 16,
		Sense: "A film is named that does not lie in the folder.",
		Why:   "The stamps of the text would lead nowhere.",
		Wrong: "[film]\nfile = \"millrace.mp4\"    (and the file is called Millrace.mp4)",
		Right: "[film]\nfile = \"Millrace.mp4\"",
	},
	{
		Name: "missing-file", Severity: source.Error, Line: 16,
		Sense: "A link names a file that does not lie in the folder.",
		Why:   "The maker who follows it meets nothing.",
		Wrong: "[the chart](chart.pdf)    (and there is only chart-large.pdf)",
		Right: "[the chart](chart-large.pdf)",
	},
	{
		Name: "not-beside", Severity: source.Error, Line: 16,
		Sense: "A picture, film or file does not lie beside the pattern.",
		Why:   "All that belongs to a pattern lies in its folder, so that nothing is lost when it is moved.",
		Wrong: "![the yoke](../../photos/yoke.jpg)",
		Right: "![the yoke](yoke.jpg)",
	},
	{
		Name: "no-such-heading", Severity: source.Error, Line: 16,
		Sense: "A link leads to a heading that there is not.",
		Why:   "The maker stays where she is, and does not know why.",
		Wrong: "See [the cuffs](#cuff).\n…\n## Cuffs",
		Right: "See [the cuffs](#cuffs).\n…\n## Cuffs",
	},
	{
		Name: "no-such-page", Severity: source.Error, Line: 16,
		Sense: "A link leads to a page of the studio that there is not.",
		Why:   "The maker meets an empty page.",
		Wrong: "[the hat](/patterns/millrace-had/)",
		Right: "[the hat](/patterns/millrace-hat/)",
	},
	{
		Name: "not-released", Severity: source.Query, Line: 16,
		Sense: "A link leads to a pattern that is not released.",
		Why:   "It is shown only while it is written: makers would not find it.",
		Wrong: "It matches [the hat](/patterns/millrace-hat/).",
		Right: "released = 2026-04-02\n…\nIt matches [the hat](/patterns/millrace-hat/).",
	},
	{
		Name: "unknown-layout", Severity: source.Error,
		Sense: "A file in layouts has the name of no part of a page.",
		Why:   "It replaces nothing, and the change that was meant is not seen.",
		Wrong: "layouts/patern/pattern.css",
		Right: "layouts/pattern/pattern.css",
	},
	{
		Name: "layout-syntax", Severity: source.Error,
		Sense: "A template, style or script in layouts cannot be read.",
		Why:   "Every page is set with it.",
		Wrong: "<h1>{{.Pattern.Title}</h1>",
		Right: "<h1>{{.Pattern.Title}}</h1>",
	},
	{
		Name: "not-ours", Severity: source.Error,
		Sense: "A file that is to be written is there already, and was not written by this program.",
		Why:   "Nothing of somebody else's is ever written over or removed.",
		Wrong: "foundrow publish --into ~/Documents",
		Right: "foundrow publish --into public",
	},
}
