// Package site turns a studio into the named files of its site. It reads the studio through Files and hands what it makes to a
// Sink as it comes, so that the pages of a large studio are never in memory together; it touches no disk itself, which is
// package publish's job. What a page says and how it looks is known to packages page and web.
//
// # Reuse between builds
//
// This is the contract that a Memory stands on.
//
//  1. A result is named by the digests of everything it was made from. Each thing looked at is noted as it is looked at: files
//     that were read, files that were looked for and are absent, folders that were listed, the size table that was named, the
//     address a link leads to; of studio.toml what it says, not how it is written. A result holds as long as all of that is seen
//     again. No graph of what depends on what is kept.
//  2. Build asks for every page, a Preview for those that somebody looks at. Results of two generations are remembered, so that
//     going back is free. What is remembered is findings, summaries and digests: no trees, no values, no pages.
//  3. Findings are part of a result and are replayed with it. What was looked at is the list of what to watch.
//  4. The catalogue, the menu and links take summaries, not pages.
//  5. Forgetting everything changes how long a build takes and nothing else. A pattern with an error keeps the files and the
//     catalogue card that were published of it before, with the styles that those files ask for: that is told by a list of what
//     stands (Job.Before), which lies beside what is published and is no part of the memory.
//  6. A build counts its work (Work), and tests look at the counts, not at the clock.
//
// The same files give the same outputs, byte for byte, and the same findings in the same order, on however many processors.
package site
