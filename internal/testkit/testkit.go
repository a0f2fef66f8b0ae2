// Package testkit is for tests only: the judges from outside, and studios made up for measuring.
package testkit
