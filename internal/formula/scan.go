package formula

import (
	"unicode"
	"unicode/utf8"
)

// A token is one word, number or sign of a formula.
type token struct {
	kind     tokenKind
	from, to int
}

// tokenKind is the sign itself for the signs of the language.
type tokenKind rune

const (
	end     tokenKind = 0
	number  tokenKind = '0' // digits with a point at most
	word    tokenKind = 'a' // letters, digits and underscores, with dots between: the name of a value, or a word of the language
	unknown tokenKind = '?' // a character that means nothing here
)

// scan returns the token that begins at or after an offset of the text.
func scan(text string, at int) token {
	for at < len(text) && isSpace(text[at]) {
		at++
	}
	if at == len(text) {
		return token{end, at, at}
	}
	switch c := text[at]; {
	case isDigit(c) || c == '.' && at+1 < len(text) && isDigit(text[at+1]):
		return token{number, at, scanNumber(text, at)}
	case c == '+' || c == '-' || c == '*' || c == '/' || c == '(' || c == ')' || c == ',' || c == '%' || c == '"':
		return token{tokenKind(c), at, at + 1}
	}
	if n := letter(text[at:]); n > 0 {
		return token{word, at, scanWord(text, at+n)}
	}
	_, n := utf8.DecodeRuneInString(text[at:])
	return token{unknown, at, at + n}
}

func scanNumber(text string, at int) int {
	for at < len(text) && isDigit(text[at]) {
		at++
	}
	if at+1 < len(text) && text[at] == '.' && isDigit(text[at+1]) {
		at++
		for at < len(text) && isDigit(text[at]) {
			at++
		}
	}
	return at
}

// scanWord returns the end of a word; a dot belongs to it when a letter follows.
func scanWord(text string, at int) int {
	for at < len(text) {
		n := letter(text[at:])
		switch {
		case n > 0:
			at += n
		case isDigit(text[at]):
			at++
		case text[at] == '.' && letter(text[at+1:]) > 0:
			at++
		default:
			return at
		}
	}
	return at
}

// letter returns the length of the letter or underscore that a text begins with, 0 when it begins otherwise.
func letter(s string) int {
	if s == "" {
		return 0
	}
	if c := s[0]; c < utf8.RuneSelf {
		if c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_' {
			return 1
		}
		return 0
	}
	r, n := utf8.DecodeRuneInString(s)
	if unicode.IsLetter(r) {
		return n
	}
	return 0
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

func isSpace(c byte) bool { return c == ' ' || c == '\t' || c == '\n' || c == '\r' }
