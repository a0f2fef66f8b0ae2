package proof

var readingRules, workingRules, rowRules, pageRules []Rule
