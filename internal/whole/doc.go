// Package whole has tests only: the whole program over the demonstration studio and the handbook that lie in content/. It holds
// what the program says of itself in the handbook, that the figures of the demonstration patterns are those counted by hand, that
// a changed number is noticed, and that nothing is lost between two terms.
//
// What one stage does with made-up input, that stage's own tests hold; published facts and outside programs are package judges'
// business.
package whole
